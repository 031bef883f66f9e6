using PlatformForge.Track.Surveys.Fitting.Lines;

namespace PlatformForge.Track.Surveys.Fitting;

/// <summary>Small alterations of a profile that the search tries.</summary>
internal static class ProfileMoves
{
    /// <summary>Adds a change of curvature; the stretch it falls in becomes two of the same curvature, both free.</summary>
    public static CurvatureProfile AddChange(CurvatureProfile p, double at, bool sudden)
    {
        int j = p.Middles.Count(m => m <= at);
        double before = j == 0 ? 0 : p.Middles[j - 1], after = j == p.Middles.Length ? p.Length : p.Middles[j];
        double length = sudden ? 0 : Math.Min(at - before, after - at);
        return Copy(
            p,
            [.. p.Curvatures[..(j + 1)], .. p.Curvatures[j..]],
            [.. p.Straight[..j], false, false, .. p.Straight[(j + 1)..]],
            [.. p.Middles[..j], at, .. p.Middles[j..]],
            [.. p.Squares[..j], length * length, .. p.Squares[j..]],
            [.. p.Sudden[..j], sudden, .. p.Sudden[j..]]);
    }

    /// <summary>Takes a change away; the two stretches become one of their mean curvature.</summary>
    public static CurvatureProfile DropChange(CurvatureProfile p, int j) => Copy(
        p,
        [.. p.Curvatures[..j], (p.Curvatures[j] + p.Curvatures[j + 1]) / 2, .. p.Curvatures[(j + 2)..]],
        [.. p.Straight[..j], p.Straight[j] && p.Straight[j + 1], .. p.Straight[(j + 2)..]],
        [.. p.Middles[..j], .. p.Middles[(j + 1)..]],
        [.. p.Squares[..j], .. p.Squares[(j + 1)..]],
        [.. p.Sudden[..j], .. p.Sudden[(j + 1)..]]);

    /// <summary>Takes the first or the last change away; the stretch beyond it goes on as the one before.</summary>
    public static CurvatureProfile DropEnd(CurvatureProfile p, bool first) => first
        ? Copy(p, p.Curvatures[1..], p.Straight[1..], p.Middles[1..], p.Squares[1..], p.Sudden[1..])
        : Copy(p, p.Curvatures[..^1], p.Straight[..^1], p.Middles[..^1], p.Squares[..^1], p.Sudden[..^1]);

    /// <summary>Makes a change sudden, or gives it a length.</summary>
    public static CurvatureProfile TurnChange(CurvatureProfile p, int j)
    {
        double before = j == 0 ? 0 : p.Middles[j - 1], after = j == p.Middles.Length - 1 ? p.Length : p.Middles[j + 1];
        double length = p.Sudden[j] ? Math.Min(p.Middles[j] - before, after - p.Middles[j]) : 0;
        return Copy(p, p.Curvatures, p.Straight, p.Middles, Set(p.Squares, j, length * length), Set(p.Sudden, j, !p.Sudden[j]));
    }

    /// <summary>Holds a stretch straight.</summary>
    public static CurvatureProfile Straighten(CurvatureProfile p, int j) =>
        Copy(p, Set(p.Curvatures, j, 0), Set(p.Straight, j, true), p.Middles, p.Squares, p.Sudden);

    /// <summary>Lets a straight stretch bend.</summary>
    public static CurvatureProfile Free(CurvatureProfile p, int j) =>
        Copy(p, p.Curvatures, Set(p.Straight, j, false), p.Middles, p.Squares, p.Sudden);

    public static CurvatureProfile AddKink(CurvatureProfile p, double at, double turn = 0) =>
        Copy(p, p.Curvatures, p.Straight, p.Middles, p.Squares, p.Sudden, [.. p.KinkAt, at], [.. p.KinkTurn, turn]);

    public static CurvatureProfile DropKink(CurvatureProfile p, int k) => Copy(
        p, p.Curvatures, p.Straight, p.Middles, p.Squares, p.Sudden, [.. p.KinkAt[..k], .. p.KinkAt[(k + 1)..]],
        [.. p.KinkTurn[..k], .. p.KinkTurn[(k + 1)..]]);

    /// <summary>
    /// Takes an inner stretch for a kink: what it turns by happens at its middle, and the stretches before and behind it meet
    /// there.
    /// </summary>
    public static CurvatureProfile StretchToKink(CurvatureProfile p, int j)
    {
        double from = p.Middles[j - 1], to = p.Middles[j], at = (from + to) / 2;
        double turn = (p.Curvatures[j] - ((p.Curvatures[j - 1] + p.Curvatures[j + 1]) / 2)) * (to - from);
        bool one = p.Straight[j - 1] && p.Straight[j + 1];
        var joined = one
            ? Copy(p, [.. p.Curvatures[..j], .. p.Curvatures[(j + 2)..]], [.. p.Straight[..j], .. p.Straight[(j + 2)..]],
                [.. p.Middles[..(j - 1)], .. p.Middles[(j + 1)..]], [.. p.Squares[..(j - 1)], .. p.Squares[(j + 1)..]],
                [.. p.Sudden[..(j - 1)], .. p.Sudden[(j + 1)..]])
            : Copy(p, [.. p.Curvatures[..j], .. p.Curvatures[(j + 1)..]], [.. p.Straight[..j], .. p.Straight[(j + 1)..]],
                [.. p.Middles[..(j - 1)], at, .. p.Middles[(j + 1)..]], [.. p.Squares[..(j - 1)], 0, .. p.Squares[(j + 1)..]],
                [.. p.Sudden[..(j - 1)], true, .. p.Sudden[(j + 1)..]]);
        return Copy(joined, joined.Curvatures, joined.Straight, joined.Middles, joined.Squares, joined.Sudden, [.. p.KinkAt, at], [.. p.KinkTurn, turn]);
    }

    /// <summary>Takes an inner stretch for a kink within one curve: the stretches on either side become one.</summary>
    public static CurvatureProfile StretchToKinkWithin(CurvatureProfile p, int j)
    {
        double from = p.Middles[j - 1], to = p.Middles[j], before = from - (j == 1 ? 0 : p.Middles[j - 2]),
            after = (j == p.Middles.Length - 1 ? p.Length : p.Middles[j + 1]) - to;
        double curvature = ((p.Curvatures[j - 1] * before) + (p.Curvatures[j + 1] * after)) / (before + after),
            turn = (p.Curvatures[j] - curvature) * (to - from);
        return Copy(
            p,
            [.. p.Curvatures[..(j - 1)], curvature, .. p.Curvatures[(j + 2)..]],
            [.. p.Straight[..(j - 1)], p.Straight[j - 1] && p.Straight[j + 1], .. p.Straight[(j + 2)..]],
            [.. p.Middles[..(j - 1)], .. p.Middles[(j + 1)..]],
            [.. p.Squares[..(j - 1)], .. p.Squares[(j + 1)..]],
            [.. p.Sudden[..(j - 1)], .. p.Sudden[(j + 1)..]],
            [.. p.KinkAt, (from + to) / 2],
            [.. p.KinkTurn, turn]);
    }

    /// <summary>
    /// Takes the change nearest to a kink for a transition that begins or ends at the kink, without the kinks within it: a sudden
    /// change with a kink on either side of it is the nearest that a profile without transitions comes to one.
    /// </summary>
    public static CurvatureProfile KinkToTransition(CurvatureProfile p, int k)
    {
        int j = Enumerable.Range(0, p.Middles.Length).MinBy(m => Math.Abs(p.Middles[m] - p.KinkAt[k]));
        double half = Math.Abs(p.Middles[j] - p.KinkAt[k]);
        int[] kept = [.. Enumerable.Range(0, p.KinkAt.Length).Where(i => i != k && Math.Abs(p.KinkAt[i] - p.Middles[j]) > Within * half)];
        return Copy(
            p, p.Curvatures, p.Straight, p.Middles, Set(p.Squares, j, 4 * half * half), Set(p.Sudden, j, false), [.. kept.Select(i => p.KinkAt[i])],
            [.. kept.Select(i => p.KinkTurn[i])]);
    }

    // The kinks on either side of a change stand at nearly the same distance from it.
    private const double Within = 1.5;

    /// <summary>Takes an inner stretch between two changes for the middle of one transition over both: two steps half a transition
    /// apart are the nearest that sudden changes come to it.</summary>
    public static CurvatureProfile StretchToTransition(CurvatureProfile p, int j)
    {
        double from = p.Middles[j - 1], to = p.Middles[j], length = 2 * (to - from);
        return Copy(p, [.. p.Curvatures[..j], .. p.Curvatures[(j + 1)..]], [.. p.Straight[..j], .. p.Straight[(j + 1)..]],
            [.. p.Middles[..(j - 1)], (from + to) / 2, .. p.Middles[(j + 1)..]], [.. p.Squares[..(j - 1)], length * length, .. p.Squares[(j + 1)..]],
            [.. p.Sudden[..(j - 1)], false, .. p.Sudden[(j + 1)..]]);
    }

    /// <summary>A copy of an array with one entry set.</summary>
    public static T[] Set<T>(T[] array, int at, T value)
    {
        T[] copy = [.. array];
        copy[at] = value;
        return copy;
    }

    private static CurvatureProfile Copy(
        CurvatureProfile p, double[] curvatures, bool[] straight, double[] middles, double[] squares, bool[] sudden, double[]? kinkAt = null,
        double[]? kinkTurn = null) => new()
        {
            Length = p.Length,
            Placed = p.Placed,
            Offset = p.Offset,
            Heading = p.Heading,
            Curvatures = curvatures,
            Straight = straight,
            Middles = middles,
            Squares = squares,
            Sudden = sudden,
            KinkAt = kinkAt ?? p.KinkAt,
            KinkTurn = kinkTurn ?? p.KinkTurn,
        };
}
