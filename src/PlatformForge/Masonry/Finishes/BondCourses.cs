using PlatformForge.Units;

namespace PlatformForge.Masonry.Finishes;

/// <summary>
/// Which bricks a course is laid of. Lengths are quarters of a brick: a stretcher has 4, a three-quarter bat 3, a header 2, a closer 1. Every course
/// begins and ends alike,
/// and no perpend stands over one of the course below.
/// </summary>
internal static class BondCourses
{
    public const int Stretcher = 4, Bat = 3, Header = 2, Closer = 1;

    // Half bricks that a wall has to be long for closers beside both quoins: less is laid of stretchers and half bricks.
    private const int LeastForClosers = 6;

    /// <summary>Half bricks that fill a length: as many as go in, so that none has to be smaller; in English garden wall bond an even number.</summary>
    public static int Halves(Bond bond, double length, double header)
    {
        int halves = (int)Math.Floor((length / header) + Tolerances.Rounding);
        return bond == Bond.EnglishGardenWall && halves >= LeastForClosers ? halves - (halves % 2) : halves;
    }

    /// <summary>The bricks of a course from left to right.</summary>
    /// <param name="bond">The bond.</param>
    /// <param name="stretcherCourses">Of English garden wall bond.</param>
    /// <param name="halves">Half bricks that it is long, 2 or more.</param>
    /// <param name="course">Number of the course, from any on.</param>
    /// <param name="isReturn">Whether what begins with a header elsewhere begins with a stretcher here.</param>
    public static IReadOnlyList<int> Of(Bond bond, int stretcherCourses, int halves, int course, bool isReturn)
    {
        bool first = (course % 2 == 0) != isReturn;
        if (bond == Bond.Stretcher || halves < LeastForClosers)
        {
            return first ? FromHeader(halves) : FromStretcher(halves);
        }

        if (bond == Bond.EnglishGardenWall)
        {
            int above = ((course % (stretcherCourses + 1)) + stretcherCourses + 1) % (stretcherCourses + 1);
            return above == 0 ? isReturn ? HeadersFromBat(halves) : Headers(halves) : (above % 2 == 1) != isReturn ? FromStretcher(halves)
                : FromHeader(halves);
        }

        return (bond, first) switch
        {
            (Bond.English, true) => Headers(halves),
            (Bond.English, false) => FromStretcher(halves),
            (_, true) => FlemishFromHeader(halves),
            _ => FlemishFromStretcher(halves),
        };
    }

    // Perpends at 2, 3, 5, 7 ...
    private static int[] Headers(int halves) => [Header, Closer, .. Enumerable.Repeat(Header, halves - 3), Closer, Header];

    // The header's end on the return of a quoin that is three quarters long: perpends at 3, 5, 7 ...
    private static int[] HeadersFromBat(int halves) => [Bat, .. Enumerable.Repeat(Header, halves - 3), Bat];

    // Perpends at 4, 8 ...; an odd half brick stands in the middle.
    private static int[] FromStretcher(int halves)
    {
        var bricks = Enumerable.Repeat(Stretcher, halves / 2).ToList();
        if (halves % 2 == 1)
        {
            bricks.Insert(Middle(halves), Header);
        }

        return [.. bricks];
    }

    // Perpends at 2, 6, 10 ...; with an odd number of half bricks two bats meet over the odd one of the courses beside it.
    private static int[] FromHeader(int halves)
    {
        if (halves % 2 == 0)
        {
            return halves == 2 ? [Header, Header] : [Header, .. Enumerable.Repeat(Stretcher, (halves / 2) - 1), Header];
        }

        if (halves < 5)
        {
            return [Header, Stretcher];
        }

        var bricks = Enumerable.Repeat(Stretcher, (halves - 5) / 2).ToList();
        bricks.InsertRange(Math.Max(0, Middle(halves) - 1), [Bat, Bat]);
        return [Header, .. bricks, Header];
    }

    // Whole stretchers before the odd half brick.
    private static int Middle(int halves) => ((halves / 2) + 1) / 2;

    // S H S H ... S; what is left over, one half brick or two, goes beside a header in the middle.
    private static int[] FlemishFromStretcher(int halves)
    {
        var (pairs, left) = ((halves - 2) / 3, (halves - 2) % 3);
        var bricks = new List<int> { Stretcher };
        for (int i = 0; i < pairs; i++)
        {
            bricks.AddRange(Enumerable.Repeat(Header, i == Beside(pairs) ? 1 + left : 1));
            bricks.Add(Stretcher);
        }

        return [.. bricks];
    }

    // H C S H S H ... S C H, its headers over the middles of the stretchers below.
    private static int[] FlemishFromHeader(int halves)
    {
        var (pairs, left) = ((halves - 2) / 3, (halves - 2) % 3);
        var bricks = new List<int> { Header, Closer, Stretcher };
        for (int i = 0; i + 1 < pairs; i++)
        {
            bricks.AddRange(Enumerable.Repeat(Header, i == Beside(pairs) ? 1 + left : 1));
            bricks.Add(Stretcher);
        }

        bricks.AddRange(pairs == 1 ? Enumerable.Repeat(Header, left) : []);
        return [.. bricks, Closer, Header];
    }

    private static int Beside(int pairs) => Math.Max(0, Math.Min(pairs / 2, pairs - 2));
}
