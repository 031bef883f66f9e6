using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Files;
using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Track;
using static System.FormattableString;

namespace PlatformForge.Exports.Drawings.Plans;

/// <summary>The other tracks beside a platform, quieter than its own.</summary>
/// <param name="dossier">All tracks.</param>
/// <param name="plan">The platform.</param>
/// <param name="from">Chainage from which track is drawn, mm.</param>
/// <param name="to">Chainage up to which it is, mm.</param>
internal sealed class PlanNeighbours(Dossier dossier, PlatformPlan plan, double from, double to)
{
    // mm: pieces of a line; nearer to the platform's own track than this a line is that track; farther behind the platform than this one is none of its
    // business.
    private const double Facet = 4, Own = 0.5, CloseBehind = 60;

    private const double LeastNamed = 30; // mm of paper that a track shows to be named

    /// <summary>Places of tracks that run close behind the platform, mm: what has to fall on the paper, so that no track seems to end.</summary>
    public IEnumerable<Point2> Extent() =>
        from ride in Others
        from i in Enumerable.Range(0, (int)Math.Ceiling(ride.Length / Facet) + 1)
        let point = ride.PointAt(Math.Min(ride.Length, i * Facet), dossier.Gauge / 2)
        let place = plan.Chart.Locate(point)
        where place.Chainage > plan.Spec.Face.From && place.Chainage < plan.Spec.Face.To && plan.Side.Reach(place.Offset) is var reach
        && reach > plan.Back.At(place.Chainage) && reach < plan.Back.At(place.Chainage) + CloseBehind
        select point;

    /// <summary>Whether there is any in the drawing.</summary>
    public bool Any => Others.Any(r => Enumerable.Range(0, (int)Math.Ceiling(r.Length / Facet) + 1).Any(i =>
        plan.Chart.Locate(r.PointAt(Math.Min(r.Length, i * Facet))) is var (chainage, offset) && chainage > from && chainage < to && Math.Abs(offset) > Own));

    /// <summary>Places of their rails on paper.</summary>
    public IEnumerable<Point2> Rails(PlanView view, DrawingWindow window) =>
        Others.SelectMany(r => Stretches(r, view, window)
            .SelectMany(s => s.SelectMany(u => new[] { dossier.Gauge / 2, 0, -dossier.Gauge / 2 }.Select(rail => view.Of(r.PointAt(u, rail))))));

    /// <summary>Draws what of them falls into a window of the sheet.</summary>
    public void DrawOn(Sheet sheet, PlanView view, DrawingWindow window)
    {
        foreach (var (ride, stretch) in Others.SelectMany(r => Stretches(r, view, window).Select(s => (r, s))))
        {
            foreach (double rail in (double[])[dossier.Gauge / 2, -dossier.Gauge / 2])
            {
                sheet.Lines(stretch.Select(u => view.Of(ride.PointAt(u, rail))), new(0.25, HouseStyle.Quiet));
            }

            sheet.Lines(stretch.Select(u => view.Of(ride.PointAt(u))), HouseStyle.Centre);
        }
    }

    /// <summary>Writes their names where nothing else is written.</summary>
    public void Name(PlanView view, Labels labels, DrawingWindow window)
    {
        foreach (var ride in Others)
        {
            if (Stretches(ride, view, window).MaxBy(s => s.Length) is { } longest && (longest[^1] - longest[0]) / view.Reduction > LeastNamed)
            {
                labels.PutOver(Invariant($"track '{ride.Name}'"), HouseStyle.Small, new(HouseStyle.Paper, 0.85),
                    ((double[])[0.5, 0.35, 0.65, 0.2, 0.8, 0.93]).Select(share =>
                {
                    double u = longest[0] + (share * (longest[^1] - longest[0])), angle = view.AngleOf(ride.At(u).Tangent);
                    return (view.Of(ride.PointAt(u)) + new Point2(0, 0.8), TextAnchor.Middle,
                        angle is > 90 or < -90 ? angle - (Math.Sign(angle) * 180) : angle);
                }));
            }
        }
    }

    private IEnumerable<Centreline> Others => dossier.Tracks.Select(t => t.Ride).Where(r => r.Name != plan.Spec.Face.Track);

    private IEnumerable<double[]> Stretches(Centreline ride, PlanView view, DrawingWindow window)
    {
        var stretch = new List<double>();
        int facets = (int)Math.Ceiling(ride.Length / Facet);
        for (int i = 0; i <= facets; i++)
        {
            double u = ride.Length * i / facets;
            var point = ride.PointAt(u);
            var (chainage, offset) = plan.Chart.Locate(point);
            bool shows = chainage > from && chainage < to && Math.Abs(offset) > Own
                && ((double[])[dossier.Gauge / 2, -dossier.Gauge / 2]).All(rail => window.Holds(view.Of(ride.PointAt(u, rail))));
            if (shows)
            {
                stretch.Add(u);
            }

            if ((!shows || i == facets) && stretch.Count > 0)
            {
                if (stretch.Count > 1)
                {
                    yield return [.. stretch];
                }

                stretch.Clear();
            }
        }
    }
}
