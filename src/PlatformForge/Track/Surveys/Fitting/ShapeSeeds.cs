using PlatformForge.Track.Surveys.Fitting.Lines;

namespace PlatformForge.Track.Surveys.Fitting;

/// <summary>
/// The commonest shapes of track (a curve between eases, reverse curves), their changes of curvature at those places of a coarse grid that meet the
/// readings best: starts
/// for the search. Adding one change at a time can miss them, since one alone brings next to nothing.
/// </summary>
internal static class ShapeSeeds
{
    // Places of the grid, and of more readings than this none are tried: their search finds changes by itself.
    private const int Places = 12, MostReadings = 90;

    // Handed on of each kind.
    private const int Kept = 2;

    // Stretches of a shape, straight or curved.
    private static readonly string[] Kinds = ["SCS", "CCC", "SCSC", "CSCS", "SCCS", "CCCC", "SCSCS"];

    /// <summary>The best places for each kind of shape; none where readings are too few or too many, or no places.</summary>
    /// <param name="observations">The readings, told by place.</param>
    /// <param name="leftOut">Which of them are left out.</param>
    /// <param name="length">Length of the line, mm.</param>
    public static IReadOnlyList<CurvatureProfile> Among(IReadOnlyList<Observation> observations, bool[] leftOut, double length)
    {
        int used = leftOut.Count(x => !x);
        if (observations.Count > MostReadings || observations[0].At.Length > 1)
        {
            return [];
        }

        return [.. Kinds.AsParallel().AsOrdered().SelectMany(kind => Grids(kind.Length - 1, 0)
            .Select(at => Eased(kind, [.. at.Select(g => length * (g + 0.5) / Places)], length))
            .Where(p => Free(p).Freedom < used).Select(p => ProfileFit.Polish(p, leftOut, observations)).OrderBy(f => f.SquareSum).Take(Kept)
                .Select(f => Free(f.Profile)))];
    }

    private static IEnumerable<int[]> Grids(int count, int from) => count == 0 ? [[]]
        : Enumerable.Range(from, Places - from).SelectMany(first => Grids(count - 1, first + 1).Select(rest => (int[])[first, .. rest]));

    // Changes as long as there is room for, and where they are: only curvatures are fitted.
    private static CurvatureProfile Eased(string kind, double[] middles, double length)
    {
        double[] ends = [0, .. middles, length];
        return new()
        {
            Length = length,
            Placed = true,
            Knotted = true,
            Curvatures = new double[kind.Length],
            Straight = [.. kind.Select(k => k == 'S')],
            Middles = middles,
            Squares = [.. middles.Select((m, i) => Math.Pow(Math.Min(m - ends[i], ends[i + 2] - m), 2))],
            Sudden = new bool[middles.Length],
        };
    }

    private static CurvatureProfile Free(CurvatureProfile p) => new()
    {
        Length = p.Length,
        Placed = true,
        Offset = p.Offset,
        Heading = p.Heading,
        Curvatures = p.Curvatures,
        Straight = p.Straight,
        Middles = p.Middles,
        Squares = p.Squares,
        Sudden = p.Sudden,
    };
}
