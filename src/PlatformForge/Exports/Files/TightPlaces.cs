using PlatformForge.Clearance;
using PlatformForge.Clearance.Requests;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Requests;
using PlatformForge.Track;
using PlatformForge.Units;

namespace PlatformForge.Exports.Files;

/// <summary>Finds where each vehicle of the faced track, and those of other tracks that govern the edge anywhere, come nearest to the coping, and how they
/// stand there.</summary>
internal static class TightPlaces
{
    /// <param name="request">What was swept.</param>
    /// <param name="envelope">What came of it on the lines stated or found.</param>
    /// <param name="doubted">The same with what surveys leave uncertain; null where they do not.</param>
    /// <param name="plan">The platform.</param>
    public static IReadOnlyList<TightPlace> Of(EnvelopeRequest request, SweptEnvelope envelope, SweptEnvelope? doubted, PlatformPlan plan)
    {
        var places = new List<TightPlace>();
        var need = plan.Requirement;
        foreach (var parts in envelope.Parts.Where(p => p.IsFaced || need.GoverningVehicle.Contains(need.IndexOf(p))).GroupBy(p => (p.Run, p.Vehicle)))
        {
            (PartReach? Part, double[] Left) tightest = (null, [double.PositiveInfinity]);
            foreach (var part in parts)
            {
                double[] left = Left(envelope, plan, part);
                tightest = left.Min() < tightest.Left.Min() - (tightest.Part is null ? 0 : Alike / 2) ? (part, left) : tightest;
            }

            var (first, last) = Longest(tightest.Left);
            int station = (first + last) / 2;
            double at = envelope.From + (station * envelope.Spacing);
            if (tightest.Part is { } near && PoseFinder.Farthest(request.Runs[near.Run], request.Chart, near.Vehicle, near.Part, plan.Side, at) is { } pose)
            {
                double reach = Counted(plan, near, at, near.Towards(plan.Side)[station]);
                places.Add(new(pose with { OtherTrack = near.OtherTrack }, near.Part.Name, at, reach, plan.CopingFront.At(at) - reach)
                {
                    OnAnyLine = doubted is null ? null
                        : OnAnyLine(doubted, plan,
                            [.. doubted.Parts.Where(p => p.Run == near.Run && ReferenceEquals(p.Vehicle, near.Vehicle)
                                && (p.IsFaced || need.GoverningVehicle.Contains(need.IndexOf(p))))]),
                    Stretch = (envelope.From + (first * envelope.Spacing), envelope.From + (last * envelope.Spacing)),
                });
            }
        }

        return places;
    }

    // The least of all parts and stations; null where none counts.
    private static SurveyedLeft? OnAnyLine(SweptEnvelope doubted, PlatformPlan plan, PartReach[] parts)
    {
        var least = parts.SelectMany(p => Left(doubted, plan, p, onRamp: 0).Select((left, i) => new SurveyedLeft(left, doubted.From + (i * doubted.Spacing))))
            .MinBy(l => l.Left);
        return least is { Left: < double.PositiveInfinity } ? least : null;
    }

    // From a part's reach to the coping at every station; without end where it does not count.
    private static double[] Left(SweptEnvelope envelope, PlatformPlan plan, PartReach part, double onRamp = OnRamp)
    {
        double[] reach = part.Towards(plan.Side), left = new double[reach.Length];
        for (int i = 0; i < reach.Length; i++)
        {
            double s = envelope.From + (i * envelope.Spacing);
            left[i] = double.IsFinite(reach[i]) && Within(plan, s) && (part.IsFaced || Governs(plan.Requirement, part, s))
                ? plan.CopingFront.At(s) - Counted(plan, part, s, reach[i]) : double.PositiveInfinity;

            // Of places as tight as one another the level part tells more than a ramp, whose foot lies under most vehicles.
            left[i] += s < plan.Profile.StartHead || s > plan.Profile.EndHead ? onRamp : 0;
        }

        return left;
    }

    // The longest stretch of stations as tight as the tightest, the first of equal ones.
    private static (int First, int Last) Longest(double[] left)
    {
        double limit = left.Min() + Alike;
        (int First, int Last) longest = (0, -1);
        for (int from = 0; from < left.Length; from++)
        {
            if (left[from] > limit)
            {
                continue;
            }

            int to = from;
            while (to + 1 < left.Length && left[to + 1] <= limit)
            {
                to++;
            }

            longest = to - from > longest.Last - longest.First ? (from, to) : longest;
            from = to;
        }

        return longest;
    }

    // Places are as tight as one another within this, mm: twice the sweep's error.
    private const double Alike = 2 * Tolerances.EnvelopeError;

    /// <summary>The vehicles that govern the edge somewhere, each with all its set in its tightest place, where the tables have it too.</summary>
    /// <param name="request">What was swept.</param>
    /// <param name="envelope">What came of it.</param>
    /// <param name="side">Side of the track that the platform is on.</param>
    /// <param name="places">Where each vehicle comes nearest.</param>
    public static IReadOnlyList<VehicleOutlinePose> Governing(EnvelopeRequest request, SweptEnvelope envelope, Side side, IReadOnlyList<TightPlace> places) =>
        [.. PoseFinder.Tightest(request, envelope, envelope.Composite(side))
            .Select(pose => places.FirstOrDefault(t => t.Pose.OtherTrack.Length == 0 && ReferenceEquals(t.Pose.Vehicle, pose.Vehicle)) is { } place
                ? PoseFinder.WithSet(request.Runs[0], place.Pose) : pose)
            .DistinctBy(pose => pose.Vehicle.Name, StringComparer.Ordinal)
            .Concat(places.Where(t => t.Pose.OtherTrack.Length > 0)
                .Select(t => PoseFinder.WithSet(request.Runs.First(r => r.Ride.Name == t.Pose.OtherTrack), t.Pose)))];

    // mm by which a ramp has to be tighter to be shown.
    private const double OnRamp = 0.05;

    // At the station of the requirement nearest to a chainage. A vehicle of another track passes behind the platform at other places.
    private static bool Governs(RequirementTrace need, PartReach part, double s)
    {
        int i = (int)Math.Round((s - need.Stations[0]) / (need.Stations[1] - need.Stations[0]));
        return i >= 0 && i < need.Stations.Length && need.GoverningVehicle[i] == need.IndexOf(part) && need.GoverningPart[i] == part.Part.Name;
    }

    private static bool Within(PlatformPlan plan, double s) => s >= plan.Spec.Face.From && s <= plan.Spec.Face.To;

    private static double Counted(PlatformPlan plan, PartReach part, double s, double reach) =>
        HeldHeights.At(plan.Spec, plan.Profile.At(s) - plan.Site.RailTop).Counted(part, reach);
}
