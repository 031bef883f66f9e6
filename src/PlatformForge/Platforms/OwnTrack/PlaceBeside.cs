using PlatformForge.Geometry;
using PlatformForge.Track;

namespace PlatformForge.Platforms.OwnTrack;

/// <summary>A place of an outline that lies beside a stretch of its own track which it does not serve.</summary>
/// <param name="Place">The place.</param>
/// <param name="Chainage">Chainage of that stretch square beside it, along the chart, mm.</param>
/// <param name="Offset">How far from its middle the place lies, mm, left positive.</param>
internal readonly record struct PlaceBeside(OutlinePlace Place, double Chainage, double Offset)
{
    // The track is looked at this often, mm, beyond the stretch that is served.
    private const double Look = 4;

    /// <summary>
    /// All places that lie within a distance of the track square beside it, somewhere before or after the stretch that is served: where the track, on its way
    /// on, draws away from a place and comes back to it. What only begins or ends there is the served stretch's own.
    /// </summary>
    /// <param name="chart">The track.</param>
    /// <param name="served">First and last chainage that the platform serves, mm.</param>
    /// <param name="known">First and last chainage at which anything may stand, mm.</param>
    /// <param name="within">The distance, mm.</param>
    /// <param name="places">The outline.</param>
    public static List<PlaceBeside> Of(
        Centreline chart, (double From, double To) served, (double From, double To) known, double within, List<OutlinePlace> places)
    {
        var found = new List<PlaceBeside>();
        foreach (var (near, far) in new[] { (served.From, known.From), (served.To, known.To) })
        {
            int count = (int)Math.Ceiling(Math.Abs(far - near) / Look);
            if (count > 0)
            {
                Add(found, chart, [.. Enumerable.Range(0, count + 1).Select(i => near + ((far - near) * i / count))], within, places);
            }
        }

        return found;
    }

    // Of places along the track, from the one that is served on, those nearer to a place than both beside them.
    private static void Add(List<PlaceBeside> found, Centreline chart, double[] looks, double within, List<OutlinePlace> places)
    {
        double cell = within + Look;
        var (low, high) = (new Point2(places.Min(p => p.At.X), places.Min(p => p.At.Y)), new Point2(places.Max(p => p.At.X), places.Max(p => p.At.Y)));
        var at = Array.ConvertAll(looks, s => chart.PointAt(s));
        var cells = new Dictionary<(int, int), List<int>>();
        for (int i = 1; i < at.Length; i++)
        {
            if (at[i].X > low.X - cell && at[i].X < high.X + cell && at[i].Y > low.Y - cell && at[i].Y < high.Y + cell)
            {
                var key = Cell(at[i]);
                (cells.TryGetValue(key, out var held) ? held : cells[key] = []).Add(i);
            }
        }

        foreach (var place in cells.Count == 0 ? [] : places)
        {
            var (x, y) = Cell(place.At);
            for (int k = 0; k < 9; k++)
            {
                foreach (int i in cells.GetValueOrDefault((x + (k % 3) - 1, y + (k / 3) - 1)) ?? [])
                {
                    double off = (at[i] - place.At).Length;
                    if (off < cell && off < (at[i - 1] - place.At).Length && (i + 1 == at.Length || off <= (at[i + 1] - place.At).Length)
                        && chart.Locate(place.At, looks[i]) is var foot && Math.Abs(foot.Chainage - looks[i]) < 2 * Look && Math.Abs(foot.Offset) < within)
                    {
                        found.Add(new(place, foot.Chainage, foot.Offset));
                    }
                }
            }
        }

        (int X, int Y) Cell(Point2 p) => ((int)Math.Floor(p.X / cell), (int)Math.Floor(p.Y / cell));
    }
}
