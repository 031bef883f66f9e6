using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Solids.Bodies.Layers;
using PlatformForge.Track;

namespace PlatformForge.Proofs;

/// <summary>
/// A place on a track where something stands square to it, and what lies round it: u away from the track's middle towards the platform, v along the third axis
/// of
/// that frame, both in mm.
/// </summary>
internal sealed class GaugePlace
{
    // A rail is looked at this often over a gauge's length: its curve leaves the chords by less than a micrometre.
    private const int Looks = 24;

    private readonly Centreline ride;
    private readonly FacetedPlan chart;
    private readonly Point2 outward;
    private readonly Point2 across;
    private readonly Point2 origin;
    private readonly double at;

    /// <param name="ride">The line that wheels follow.</param>
    /// <param name="plan">The platform as this track's face sees it.</param>
    /// <param name="chainage">Along the plan's chart.</param>
    public GaugePlace(Centreline ride, PlatformPlan plan, double chainage)
    {
        (this.ride, Plan, Chainage) = (ride, plan, chainage);
        chart = new(plan);
        at = ride.Locate(plan.Chart.PointAt(chainage), chainage).Chainage;
        var frame = ride.At(at);
        (origin, outward) = (frame.Position, plan.Side.Outward(frame.Tangent));
        across = outward.Left * -1; // the third axis of u and height
        Forward = Math.Sign(Point2.Dot(across, frame.Tangent));
    }

    public PlatformPlan Plan { get; }

    public double Chainage { get; }

    /// <summary>1 where the third axis runs along increasing chainage, else −1.</summary>
    public int Forward { get; }

    /// <summary>From a frame of u, height above rail top, and v to the layout.</summary>
    public RigidTransform ToLayout => new(
        new(outward.X, 0, across.X), new(outward.Y, 0, across.Y), new(0, 1, 0), new(origin.X, origin.Y, Plan.Site.RailTop));

    /// <summary>Where a line of the plan crosses the place, u in mm.</summary>
    public double At(PlanLine line) => Over(line, 0, 0).Least;

    /// <summary>Least and greatest u of a line of the plan between two v.</summary>
    public (double Least, double Greatest) Over(PlanLine line, double from, double to)
    {
        double[] stations = [.. chart.Stations.Where(s => Math.Abs(s - Chainage) < Near), Math.Max(chart.Stations[0], Chainage - Near),
            Math.Min(chart.Stations[^1], Chainage + Near)];
        Point2[] points = [.. stations.Distinct().Order().Select(s => Local(chart.On(line, s)))];
        var found = new List<double>();
        for (int i = 0; i + 1 < points.Length; i++)
        {
            var (a, b) = points[i].Y <= points[i + 1].Y ? (points[i], points[i + 1]) : (points[i + 1], points[i]);
            double low = Math.Max(from, a.Y), high = Math.Min(to, b.Y);
            if (low <= high && b.Y > a.Y)
            {
                found.Add(a.X + ((b.X - a.X) * (low - a.Y) / (b.Y - a.Y)));
                found.Add(a.X + ((b.X - a.X) * (high - a.Y) / (b.Y - a.Y)));
            }
        }

        return found.Count == 0 ? (line.At(Chainage), line.At(Chainage)) : (found.Min(), found.Max());
    }

    /// <summary>How near to the middle a rail's running face comes between two v, on the platform's side and on the other, u in mm.</summary>
    public (double Near, double Far) RailFaces(double gauge, double from, double to)
    {
        double near = double.PositiveInfinity, far = double.NegativeInfinity;
        for (int i = 0; i <= Looks; i++)
        {
            double s = at + (Forward * (from + ((to - from) * i / Looks)));
            foreach (double half in (double[])[gauge / 2, -gauge / 2])
            {
                double u = Local(ride.PointAt(s, half)).X;
                (near, far) = u > 0 ? (Math.Min(near, u), far) : (near, Math.Max(far, u));
            }
        }

        return (near, far);
    }

    /// <summary>Height of the coping's top above rail top where the edge crosses the place, mm.</summary>
    public double CopingTop => Plan.TopAt(Chainage, Plan.CopingFront.At(Chainage)) - Plan.Site.RailTop;

    /// <summary>The highest of the walking surface above rail top between two v, from the coping's front so far inwards, mm.</summary>
    public double Highest(double least, double most, double inward) =>
        (from p in (double[])[least, 0, most]
         let s = Math.Clamp(Chainage + (Forward * p), Plan.Stations[0], Plan.Stations[^1])
         let front = Plan.CopingFront.At(s)
         from t in (double[])[front, front + inward]
         select Plan.TopAt(s, t)).Max() - Plan.Site.RailTop;

    // Stations farther off than this, mm, are not beside a gauge.
    private const double Near = 60;

    private Point2 Local(Point2 p) => new(Point2.Dot(p - origin, outward), Point2.Dot(p - origin, across));
}
