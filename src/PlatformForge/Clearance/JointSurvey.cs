using PlatformForge.Clearance.Requests;
using PlatformForge.Clearance.Sets;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Geometry;
using PlatformForge.Track;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Clearance;

/// <summary>
/// Runs the sets of a platform's own track past it and measures the space between their bodies: what a passenger sees between two coaches,
/// and whether their ends, gangways or buffers meet on the inside of the curve.
/// </summary>
public static class JointSurvey
{
    /// <summary>Distance between the poses tried, mm: an opening changes with the curvature only, slowly.</summary>
    private const double PoseStep = 4;

    /// <summary>Openings of every joint while it passes the stations of a request, in order of sets and joints.</summary>
    /// <param name="request">The same request that was swept without fault.</param>
    /// <param name="side">Side of the platform.</param>
    public static IReadOnlyList<JointOpening> Over(EnvelopeRequest request, Side side)
    {
        var openings = new List<JointOpening>();
        foreach (var set in request.Runs[0].Sets)
        {
            var both = new (OpeningRange Platform, OpeningRange Away)[set.Joints.Count];
            Array.Fill(both, (OpeningRange.None, OpeningRange.None));
            foreach (bool turned in set.EitherWayRound ? [false, true] : (ReadOnlySpan<bool>)[false])
            {
                Run(request, set, turned, side, both);
            }

            openings.AddRange(both.Select((o, i) => new JointOpening(set.Name, set.Bodies[i].Name, set.Bodies[i + 1].Name, set.Joints[i], o.Platform, o.Away))
                .Where(o => double.IsFinite(o.Platform.Least)));
        }

        return openings;
    }

    /// <summary>Warnings where the ends of two bodies run into one another.</summary>
    public static IEnumerable<Finding> Findings(EnvelopeRequest request, IReadOnlyList<JointOpening> openings)
    {
        foreach (var o in openings.Where(o => o.Least.Least < 0))
        {
            var set = request.Runs[0].Sets.First(s => s.Name == o.Set);
            int behind = Enumerable.Range(1, set.Bodies.Count - 1).First(i => set.Bodies[i].Name == o.Behind);
            yield return Finding.Warning("PF3024", set.Bodies[behind].Key + ".gap", Invariant($"The ends of {o.Ahead} and {o.Behind} run {-o.Least.Least:F2} ")
                + Invariant($"mm into one another at chainage {o.Least.LeastAt:F0} mm of track '{request.Runs[0].Ride.Name}': ")
                + Invariant($"the curve closes their gap of {o.Joint.Gap:0.##} mm."),
                Invariant($"A gap of {Math.Ceiling((o.Joint.Gap - o.Least.Least) * 10) / 10:0.0} mm keeps them apart, or ends that taper."))
                .Curing(Math.Ceiling((o.Joint.Gap - o.Least.Least) * 10) / 10);
        }
    }

    private static void Run(EnvelopeRequest request, VehicleSet set, bool turned, Side side, (OpeningRange Platform, OpeningRange Away)[] both)
    {
        var ride = request.Runs[0].Ride;
        double length = set.Bodies.Sum(b => b.Length + b.PivotCentres) + set.Joints.Sum(j => j.Gap), guess = request.From;
        double first = ride.Locate(request.Chart.PointAt(request.From)).Chainage, last = ride.Locate(request.Chart.PointAt(request.To)).Chainage + length;
        for (double u = first; u <= last; u += PoseStep)
        {
            if (SetSolver.Place(ride, set, u, turned) is not { } poses)
            {
                continue;
            }

            for (int i = 0; i < set.Joints.Count; i++)
            {
                var (ahead, behind) = turned ? (i + 1, i) : (i, i + 1);
                var middle = Middle(set.Bodies[ahead], poses[ahead], turned, rear: true);
                double chainage = request.Chart.Locate(middle, Math.Clamp(guess, 0, request.Chart.Length)).Chainage;
                guess = chainage;
                if (chainage >= request.From && chainage <= request.To)
                {
                    var (left, right) = Opening((set.Bodies[ahead], poses[ahead]), (set.Bodies[behind], poses[behind]), turned);
                    var (near, far) = side == Side.Left ? (left, right) : (right, left);
                    both[i] = (both[i].Platform.With(near, chainage), both[i].Away.With(far, chainage));
                }
            }
        }
    }

    /// <summary>Distance between the near corners of two bodies on the left and on the right of the way they run, along the mean of their
    /// directions.</summary>
    internal static (double Left, double Right) Opening((Vehicle Body, VehiclePose Pose) ahead, (Vehicle Body, VehiclePose Pose) behind, bool turned)
    {
        var mean = (ahead.Pose.Body.Forward + behind.Pose.Body.Forward) * (turned ? -1 : 1);
        double Along(bool left) => Point2.Dot(Corner(ahead.Body, ahead.Pose, turned, rear: true, left)
            - Corner(behind.Body, behind.Pose, turned, rear: false, left), mean) / mean.Length;
        return (Along(true), Along(false));
    }

    private static Point2 Middle(Vehicle body, in VehiclePose pose, bool turned, bool rear) =>
        (Corner(body, pose, turned, rear, true) + Corner(body, pose, turned, rear, false)) * 0.5;

    // Corner of the box's end, as the body runs.
    private static Point2 Corner(Vehicle body, in VehiclePose pose, bool turned, bool rear, bool left)
    {
        var outline = body.Parts[0].Outline;
        double x = rear == turned ? outline.Max(p => p.X) : outline.Min(p => p.X);
        var end = outline.Where(p => p.X == x).Select(p => p.Y);
        return pose.Body.Apply(new(x, left == turned ? end.Min() : end.Max()));
    }
}
