using PlatformForge.Clearance;
using PlatformForge.Geometry;
using PlatformForge.Verification.Poses;

namespace PlatformForge.Verification.Distances;

/// <summary>Finds the least distance of placed sections to every vehicle on one track.</summary>
internal sealed class TrackSearch
{
    // Poses are visited in this many passes, so that a near one is met early and the rest is passed over quickly.
    private const int Passes = 16;

    // The best pose is approached in rounds of finer steps, each a fraction of the last.
    private const int FinerRounds = 3;
    private const int FinerSteps = 8;

    private readonly TrackRun stock;
    private readonly DesignFacts facts;
    private readonly IReadOnlyList<WrittenSection> sections;
    private readonly IReadOnlyList<Mesh> placed;
    private readonly RideField field;
    private readonly CancellationToken cancel;

    public TrackSearch(TrackRun stock, DesignFacts facts, IReadOnlyList<WrittenSection> sections, IReadOnlyList<Mesh> placed, CancellationToken cancel = default)
    {
        (this.stock, this.facts, this.sections, this.placed, this.cancel) = (stock, facts, sections, placed, cancel);
        field = new(stock.Ride);
    }

    /// <summary>The verdict on each vehicle in order; null for one that finds no place on the track.</summary>
    public VehicleVerdict?[] Run()
    {
        var (from, to) = Extent();
        var runs = Runs(from, to);
        var parts = Array.ConvertAll(runs, r => r is null ? [] : r.Vehicle.Parts.Select(p => HeldPart.Of(p, r.Vehicle, facts)).ToArray());
        var trees = Trees(runs, parts);
        var found = new (Nearness? Closest, Nearness? Tightest)[runs.Length];
        Parallel.For(0, runs.Length, i => found[i] = runs[i] is { } run ? Search(run, parts[i], trees) : default);

        cancel.ThrowIfCancellationRequested();
        var verdicts = new VehicleVerdict?[stock.Vehicles.Count];
        for (int v = 0; v < verdicts.Length; v++)
        {
            int ahead = 2 * v, back = ahead + 1;
            bool stands = runs[ahead] is { Poses.Length: > 0 } && (runs[back] is { Poses.Length: > 0 } || !stock.Vehicles[v].EitherWayRound);
            verdicts[v] = stands
                ? new(stock.Vehicles[v].Name, stock.Ride.Name, Less(found[ahead].Closest, found[back].Closest), Less(found[ahead].Tightest, found[back].Tightest)) { Key = stock.Vehicles[v].Key }
                : null;
        }

        return verdicts;
    }

    /// <summary>The nearer of two; the first where they are alike.</summary>
    public static Nearness? Less(Nearness? a, Nearness? b) => b is null || a?.Clearance <= b.Clearance ? a : b;

    // Stretch of the track that the sections lie beside.
    private (double From, double To) Extent()
    {
        double from = double.PositiveInfinity, to = double.NegativeInfinity;
        foreach (var v in placed.SelectMany(m => m.Vertices))
        {
            double s = field.Chainage(new(v.X, v.Y));
            (from, to) = (Math.Min(from, s), Math.Max(to, s));
        }

        return (from - RideField.Roughness, to + RideField.Roughness);
    }

    // Two for each vehicle: as drawn and turned; null where there is no pose to be had or none to be made.
    private PoseRun?[] Runs(double from, double to)
    {
        var runs = new PoseRun?[2 * stock.Vehicles.Count];
        Parallel.For(0, runs.Length, i =>
        {
            var vehicle = stock.Vehicles[i / 2];
            bool backwards = i % 2 == 1;
            runs[i] = backwards && !vehicle.EitherWayRound ? null : PoseRun.Of(stock.Ride, vehicle, backwards, from, to);
        });
        return runs;
    }

    private Dictionary<Slab, SegmentTree> Trees(PoseRun?[] runs, HeldPart[][] parts)
    {
        double halfWidth = runs.OfType<PoseRun>().Select(HalfWidth).DefaultIfEmpty(0).Max();
        var trees = new Dictionary<Slab, SegmentTree>();
        foreach (var slab in parts.SelectMany(p => p).Select(p => p.Slab).Distinct())
        {
            trees.Add(slab, BandEdges.Of(placed, slab, field, halfWidth));
        }

        return trees;
    }

    // How far the vehicle reaches from the track's middle at some of its poses; the rest is within the field's roughness.
    private double HalfWidth(PoseRun run)
    {
        double most = 0;
        for (int i = 0; i < run.Poses.Length; i += Passes)
        {
            foreach (var part in run.Vehicle.Parts)
            {
                var carrier = run.Poses[i].Of(part.Carrier);
                most = Math.Max(most, part.Outline.Max(p => field.Distance(carrier.Apply(p))));
            }
        }

        return most + RideField.Roughness + facts.Play.Wheelset + facts.Play.Pivot;
    }

    private (Nearness? Closest, Nearness? Tightest) Search(PoseRun run, HeldPart[] parts, Dictionary<Slab, SegmentTree> trees)
    {
        Nearness? closest = null, tightest = null;
        foreach (var part in parts)
        {
            var tree = trees[part.Slab];
            closest = Less(closest, Least(run, part, part.Bare, tree, 0));
            tightest = Less(tightest, Least(run, part, part.Played, tree, facts.Asked));
        }

        return (closest, tightest);
    }

    private Nearness? Least(PoseRun run, HeldPart part, OutlineDistance outline, SegmentTree tree, double asked)
    {
        double bound = double.PositiveInfinity, front = 0;
        int section = -1;
        Point3 nearest = default;

        void Try(in VehiclePose pose, double at)
        {
            int owner = tree.Nearest(outline, pose.Of(part.Carrier), ref bound, ref nearest);
            if (owner >= 0)
            {
                (section, front) = (owner, at);
            }
        }

        for (int pass = 0; pass < Passes && !cancel.IsCancellationRequested; pass++)
        {
            for (int i = pass; i < run.Poses.Length; i += Passes)
            {
                Try(run.Poses[i], run.Fronts[i]);
            }
        }

        if (section < 0)
        {
            return null;
        }

        var walker = new StandingVehicle(stock.Ride, run.Vehicle);
        double step = PoseRun.Step;
        for (int round = 0; round < FinerRounds; round++)
        {
            double middle = front;
            step /= FinerSteps;
            for (int i = -FinerSteps; i <= FinerSteps; i++)
            {
                double at = Math.Clamp(middle + (i * step), run.Fronts[0], run.Fronts[^1]);
                if (walker.At(at) is { } pose)
                {
                    Try(pose, at);
                }
            }
        }

        var plan = new Point2(nearest.X, nearest.Y);
        var place = stock.Ride.Locate(plan, field.Chainage(plan));
        double? meets = MeetingHeight.At(placed[section], part.Own, nearest);
        return new(bound - asked, run.Vehicle.Name, part.Name, stock.Ride.Name, sections[section].Name, place.Chainage, place.Offset, (meets ?? nearest.Z) - facts.RailTop, nearest with { Z = meets ?? nearest.Z }, run.Backwards)
        {
            Platform = sections[section].Platform,
            InPlan = meets is null,
            Underside = part.Own.Low - facts.RailTop,
        };
    }
}
