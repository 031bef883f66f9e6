using PlatformForge.Clearance;
using PlatformForge.Clearance.Requests;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Platforms.Edges;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Requests;
using PlatformForge.Track;
using PlatformForge.Units;

namespace PlatformForge.Platforms.OwnTrack;

/// <summary>A place of the outline that stands in what vehicles need where the faced track comes back.</summary>
/// <param name="Beside">The place, and where on the track.</param>
/// <param name="Depth">How far it reaches into what is needed, mm.</param>
/// <param name="Part">What needs it.</param>
internal sealed record FouledPlace(PlaceBeside Beside, double Depth, PartReach Part);

/// <summary>Sweeps the stretches of a face's own track that come back beside the platform, and holds its outline against them.</summary>
internal static class TrackBack
{
    // Stretches farther apart than this, mm, are swept each by itself.
    private const double Apart = 60;

    /// <summary>What stands in the way, in no order.</summary>
    /// <param name="request">The platform by the face.</param>
    /// <param name="face">The face as it was planned.</param>
    /// <param name="plan">The platform.</param>
    /// <param name="findings">Takes what is wrong with the track where it comes back.</param>
    public static List<FouledPlace> Fouled(PlatformRequest request, FacePlan face, PlatformPlan plan, List<Finding> findings)
    {
        var run = request.Own;
        var (over, within) = (run.Vehicles.Select(Overhang).DefaultIfEmpty(0).Max(), Widest(request, run));
        var known = (run.StartsAtBuffers ? 0 : -over, face.Chart.Length + (run.EndsAtBuffers ? 0 : over));
        var beside = PlaceBeside.Of(face.Chart, (face.Stations[0], face.Stations[^1]), known, within, OutlinePlace.Of(plan));
        beside.Sort((a, b) => a.Chainage.CompareTo(b.Chainage));
        var fouled = new List<FouledPlace>();
        for (int first = 0, next; first < beside.Count; first = next)
        {
            for (next = first + 1; next < beside.Count && beside[next].Chainage - beside[next - 1].Chainage < Apart;)
            {
                next++;
            }

            Hold(request, run, plan, beside.GetRange(first, next - first), fouled, findings);
        }

        return fouled;
    }

    private static void Hold(
        PlatformRequest request, TrackRun run, PlatformPlan plan, List<PlaceBeside> places, List<FouledPlace> fouled, List<Finding> findings)
    {
        var swept = EnvelopeSweeper.Sweep(new(request.Chart, places[0].Chainage - Ends, places[^1].Chainage + Ends, [run])
        {
            Beyond = HeldHeights.Beyond(request.Budget),
            Play = request.Budget.Play,
            Edge = HeldHeights.Edge(request.Spec),
            StraightBeyondEnds = true,
            Key = request.Spec.Key,
        });
        findings.AddRange(swept.Findings.Where(f => f.Severity == Severity.Error));
        if (swept.Value is not { } envelope)
        {
            return;
        }

        var kept = new Dictionary<(int, Side), double[]>();
        fouled.AddRange(places.Select(p => Worst(request, plan, envelope, p, kept)).OfType<FouledPlace>());
    }

    // What needs most of a place; null where nothing does.
    private static FouledPlace? Worst(
        PlatformRequest request, PlatformPlan plan, SweptEnvelope envelope, PlaceBeside place, Dictionary<(int, Side), double[]> kept)
    {
        var side = place.Offset > 0 ? Side.Left : Side.Right;
        var heights = Heights(request, plan, place.Place.Chainage);
        FouledPlace? worst = null;
        for (int i = 0; i < envelope.Parts.Count; i++)
        {
            var part = envelope.Parts[i];
            if (heights.PassesOver(part))
            {
                continue;
            }

            if (!kept.TryGetValue((i, side), out double[]? reach))
            {
                kept[(i, side)] = reach = Kept(request, envelope, part, side);
            }

            double depth = Between(reach, (place.Chainage - envelope.From) / envelope.Spacing) - Math.Abs(place.Offset);
            worst = depth > (worst?.Depth ?? Tolerances.Rounding) ? new(place, depth, part) : worst;
        }

        return worst;
    }

    // Stations go on by so much, mm, beyond the first and the last place.
    private const double Ends = 2;

    // The budget is kept in every direction, as it is beside the face.
    private static double[] Kept(PlatformRequest request, SweptEnvelope envelope, PartReach part, Side side) => BudgetDisc.Roll(
        [.. Enumerable.Range(0, envelope.Count).Select(i => envelope.From + (i * envelope.Spacing))],
        part.Towards(side),
        request.Budget.Margin,
        s => side.Bend(request.Chart.CurvatureAt(s)));

    // Where nothing comes to one of two stations, what comes to the other is taken.
    private static double Between(double[] reach, double at)
    {
        int i = Math.Clamp((int)Math.Floor(at), 0, reach.Length - 2);
        double a = reach[i], b = reach[i + 1];
        return double.IsFinite(a) && double.IsFinite(b) ? a + ((b - a) * Math.Clamp(at - i, 0, 1)) : Math.Max(a, b);
    }

    // Deck and back are held as if they were as high as the coping beside them.
    private static HeldHeights Heights(PlatformRequest request, PlatformPlan plan, double chainage)
    {
        double near = Math.Max(0, request.Budget.Margin), rails = request.Site.RailTop;
        double[] tops = [.. new[] { chainage - near, chainage, chainage + near }.Select(s => plan.Profile.At(s) - rails)];
        return HeldHeights.Over(request.Spec, tops.Min(), tops.Max());
    }

    // How far ahead of its foremost axle, or behind its last, anything of a vehicle may be, mm.
    private static double Overhang(Vehicle vehicle) => Math.Max(0, HalfLength(vehicle)
        - ((vehicle.PivotCentres + Math.Min(vehicle.LeadingWheelbase, vehicle.TrailingWheelbase)) / 2));

    private static double HalfLength(Vehicle vehicle) => vehicle.Parts.Select(p => p.Outline.Max(c => Math.Abs(c.X))
        + (p.Carrier == PartCarrier.Body ? 0 : vehicle.PivotCentres / 2)).DefaultIfEmpty(0).Max();

    // Farther from the middle of its track than this, mm, no vehicle asks for room: its half width, what curves and kinks throw it by, play, lean and budget.
    private static double Widest(PlatformRequest request, TrackRun run)
    {
        double bend = run.Ride.Elements.Max(e => Math.Max(Math.Abs(e.StartCurvature), Math.Abs(e.EndCurvature))),
            kink = run.Ride.Kinks.Select(k => Math.Abs(k.Turn)).DefaultIfEmpty(0).Max();
        var play = request.Budget.Play;
        double Of(Vehicle vehicle)
        {
            double half = HalfLength(vehicle), tall = vehicle.Parts.Max(p => p.ZHigh), wide = vehicle.Parts.Max(p => p.Outline.Max(c => Math.Abs(c.Y)));
            double lever = Math.Max(1, 2 * half / vehicle.PivotCentres);
            double thrown = Math.Min(half, half * half * bend) + (half * kink), loose = lever * (play.Wheelset + play.Pivot);
            return wide + thrown + loose + (tall * Math.Sin(play.Roll + play.Cant));
        }

        return run.Vehicles.Select(Of).DefaultIfEmpty(0).Max() + request.Budget.Margin;
    }
}
