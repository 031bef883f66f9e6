using PlatformForge.Track.Surveys.Readings;

namespace PlatformForge.Track.Surveys.Admissible;

/// <summary>
/// The rows that a set of admissible lines has about a reference line: readings by their offsets from it, bends and rates less its own.
/// </summary>
internal static class BandRows
{
    // Bounds on bend and rate are a little wider than stated, for what a line beside the reference differs from the sum of its curvature
    // and the second
    // derivative of its offset: parts of some thousandths for offsets of a few millimetres and slopes of some hundredths.
    private const double Wider = 1.02;

    /// <summary>Greatest curvature that rows allow, 1/mm.</summary>
    public static double Bend(Laying laying) => Wider * laying.Curvature;

    /// <summary>Greatest rate of change of curvature that rows allow, 1/mm².</summary>
    public static double Rate(Laying laying) => Wider * laying.Rate;

    /// <summary>The rows over some cells of a reference.</summary>
    /// <param name="laying">How the track was laid.</param>
    /// <param name="reference">Curvature at every node of the whole grid, 1/mm.</param>
    /// <param name="whole">The grid.</param>
    /// <param name="first">First cell.</param>
    /// <param name="cells">Number of cells.</param>
    /// <param name="places">Readings on the reference, in order along it.</param>
    public static BandedRows Of(Laying laying, double[] reference, SplineGrid whole, int first, int cells, IReadOnlyList<BandPlace> places)
    {
        var grid = new SplineGrid(whole.Node(first), whole.Step, cells);
        var rows = new BandedRows(grid);
        double bend = Bend(laying), rate = Rate(laying);
        for (int j = 0; j <= cells; j++)
        {
            double own = reference[first + j];
            rows.AddBend(j, -bend - own, bend - own);
        }

        for (int j = 0; j < cells; j++)
        {
            double own = (reference[first + j + 1] - reference[first + j]) / whole.Step;
            rows.AddRate(j, -rate - own, rate - own);
        }

        int from = Lower(places, grid.From), to = from;
        for (int j = 0; j < cells; j++)
        {
            int begin = to;
            while (to < places.Count && (places[to].Chainage < grid.Node(j + 1) || (j == cells - 1 && places[to].Chainage <= grid.To)))
            {
                to++;
            }

            foreach (int i in Telling(places, begin, to))
            {
                rows.AddValue(places[i].Chainage, places[i].Offset - places[i].Error, places[i].Offset + places[i].Error, i);
            }
        }

        return rows;
    }

    // More readings than this in one cell are sifted.
    private const int FewInCell = 8;

    // Of many readings in a cell only those that come nearest to either side can hold a line that is all but straight there: the hull of
    // the lower bounds and of the
    // upper ones. To leave one out makes the set no smaller.
    private static IEnumerable<int> Telling(IReadOnlyList<BandPlace> places, int from, int to)
    {
        if (to - from <= FewInCell)
        {
            return Enumerable.Range(from, to - from);
        }

        return Hull(places, from, to, 1).Concat(Hull(places, from, to, -1)).Distinct().Order();
    }

    private static List<int> Hull(IReadOnlyList<BandPlace> places, int from, int to, int side)
    {
        // The bounds that press from one side: from below the greatest, from above the least.
        double Pressing(int i) => (side * places[i].Offset) - places[i].Error;
        var hull = new List<int>();
        for (int i = from; i < to; i++)
        {
            while (hull.Count > 1 && Turn(hull[^2], hull[^1], i) >= 0)
            {
                hull.RemoveAt(hull.Count - 1);
            }

            if (hull.Count == 1 && places[hull[0]].Chainage == places[i].Chainage)
            {
                hull[0] = Pressing(i) > Pressing(hull[0]) ? i : hull[0];
                continue;
            }

            hull.Add(i);
        }

        return hull;

        double Turn(int a, int b, int c) =>
            ((places[b].Chainage - places[a].Chainage) * (Pressing(c) - Pressing(a)))
            - ((places[c].Chainage - places[a].Chainage) * (Pressing(b) - Pressing(a)));
    }

    private static int Lower(IReadOnlyList<BandPlace> places, double chainage)
    {
        int low = 0, high = places.Count;
        while (low < high)
        {
            int middle = (low + high) / 2;
            (low, high) = places[middle].Chainage < chainage ? (middle + 1, high) : (low, middle);
        }

        return low;
    }
}

/// <summary>A reading on a reference line.</summary>
/// <param name="Chainage">Chainage of its foot, mm.</param>
/// <param name="Offset">Offset of the centre that it tells from the reference, mm, left positive.</param>
/// <param name="Error">The most by which it is off, mm.</param>
/// <param name="Band">Index of the reading.</param>
internal readonly record struct BandPlace(double Chainage, double Offset, double Error, int Band);
