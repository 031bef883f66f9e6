using PlatformForge.Clearance.Requests;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Geometry;
using PlatformForge.Verification.Poses;
using PlatformForge.Verification.Written;

namespace PlatformForge.Verification.Distances;

/// <summary>Finds the least distance of placed sections to every vehicle on one track.</summary>
internal sealed class TrackSearch
{
    // Poses are visited in this many passes, so that a near one is met early and the rest is passed over quickly.
    private const int Passes = 16;

    // The best pose is approached in rounds of finer steps, each a fraction of the last.
    private const int FinerRounds = 3;
    private const int FinerSteps = 8;

    // Between two poses a vehicle comes nearer than at either by less than this, mm: what is farther off than the best known by more cannot beat it.
    private const double Nearby = 0.05;

    // Places are as near as one another within this, mm: twice what facets and the sweep's error leave between them.
    private const double Alike = 0.02;

    // Steps along a stretch of equal places, mm of track, and how many of them in a row may miss: a facet's corner is nearer than its middle.
    private const double Stride = 4;
    private const int Misses = 4;

    private readonly TrackRun stock;
    private readonly DesignFacts facts;
    private readonly double railTop;
    private readonly IReadOnlyList<WrittenSection> sections;
    private readonly IReadOnlyList<Mesh> placed;
    private readonly RideField field;
    private readonly CancellationToken cancel;
    private readonly double[] levels;

    public TrackSearch(TrackRun stock, DesignFacts facts, IReadOnlyList<WrittenSection> sections, IReadOnlyList<Mesh> placed,
        CancellationToken cancel = default)
    {
        (this.stock, this.facts, this.sections, this.placed, this.cancel) = (stock, facts, sections, placed, cancel);
        field = new(stock.Ride);
        railTop = stock.RailTop ?? facts.RailTop;
        levels = facts.Play.Roll == 0 && facts.Play.Cant == 0 ? [] : MeshLevels.Of(placed);
    }

    /// <summary>The verdict on each vehicle in order; null for one that finds no place on the track.</summary>
    public VehicleVerdict?[] Run()
    {
        var (from, to) = Extent();
        var runs = Runs(from, to);
        var parts = Array.ConvertAll(runs, r => r is null ? [] : r.True.Vehicle.Parts.Select(p => HeldPart.Of(p, facts, railTop, levels)).ToArray());
        var loose = Array.ConvertAll(runs, r => r is null ? []
            : r.Loose.Select(l => l.Vehicle.Parts.Select(p => HeldPart.Of(p, facts, railTop, levels, l.Rolls)).ToArray()).ToArray());
        var trees = Trees(runs, [.. parts.SelectMany(p => p).Select(p => p.Bare), .. loose.SelectMany(l => l).SelectMany(p => p).SelectMany(p => p.Loose)]);
        var found = new (Nearness? Closest, Nearness? Tightest)[runs.Length];
        Parallel.For(0, runs.Length, i => found[i] = runs[i] is { } run ? Search(run, parts[i], loose[i], trees) : default);

        cancel.ThrowIfCancellationRequested();
        var verdicts = new VehicleVerdict?[stock.Vehicles.Count];
        for (int v = 0; v < verdicts.Length; v++)
        {
            int ahead = 2 * v, back = ahead + 1;
            bool stands = runs[ahead] is { IsPlaced: true } && (runs[back] is { IsPlaced: true } || !RunsTurned(stock.Vehicles[v]));
            verdicts[v] = stands
                ? new(stock.Vehicles[v].Name, stock.Ride.Name, Nearness.Less(found[ahead].Closest, found[back].Closest),
                    Nearness.Less(found[ahead].Tightest, found[back].Tightest))
                { Key = stock.Vehicles[v].Key }
                : null;
        }

        return verdicts;
    }

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

    // A vehicle that looks the same turned end for end is tried one way round.
    private static bool RunsTurned(Vehicle vehicle) => vehicle.EitherWayRound && !WayRound.IsAlike(vehicle);

    // Two for each vehicle: as drawn and turned; null where there is no pose to be had or none to be made.
    private VehicleRuns?[] Runs(double from, double to)
    {
        var runs = new VehicleRuns?[2 * stock.Vehicles.Count];
        Parallel.For(0, runs.Length, i =>
        {
            var vehicle = stock.Vehicles[i / 2];
            bool backwards = i % 2 == 1;
            if ((!backwards || RunsTurned(vehicle)) && PoseRun.Of(stock, vehicle, backwards, from, to) is { } standing
                && (PoseRun.IsAllOf(vehicle, facts.Play) ? [standing] : PoseRun.Loose(stock, vehicle, facts.Play, backwards, from, to)) is { } loose)
            {
                runs[i] = new(standing, loose);
            }
        });
        return runs;
    }

    private Dictionary<Slab, SegmentTree> Trees(VehicleRuns?[] runs, HeldOutline[] outlines)
    {
        double halfWidth = runs.OfType<VehicleRuns>().Select(r => HalfWidth(r.True)).DefaultIfEmpty(0).Max();
        double[][] away = [.. placed.Select(m => Array.ConvertAll(m.Vertices, v => field.Distance(new(v.X, v.Y))))];

        // Most bands reach above all that was printed: they hold the same edges, and one tree serves them.
        double top = placed.SelectMany(m => m.Vertices).Select(v => v.Z).DefaultIfEmpty(0).Max();
        List<Slab> slabs = [], cuts = [];
        foreach (var outline in outlines)
        {
            AddNew(slabs, outline.Slab);
            AddNew(cuts, outline.Slab.Below(top));
        }

        var grown = new SegmentTree[cuts.Count];
        Parallel.For(0, cuts.Count, i => grown[i] = BandEdges.Of(placed, away, cuts[i], field, halfWidth));
        var trees = new Dictionary<Slab, SegmentTree>();
        for (int i = 0; i < cuts.Count; i++)
        {
            trees[cuts[i]] = grown[i];
        }

        foreach (var slab in slabs)
        {
            trees.TryAdd(slab, trees[slab.Below(top)]);
        }

        return trees;
    }

    // A few at most: gone through, not hashed.
    private static void AddNew(List<Slab> known, Slab slab)
    {
        if (!known.Exists(s => s == slab))
        {
            known.Add(slab);
        }
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

    // Standing true, and in every way in which its play lets it be off. Each search only has to beat the one before.
    private (Nearness? Closest, Nearness? Tightest) Search(VehicleRuns runs, HeldPart[] parts, HeldPart[][] loose, Dictionary<Slab, SegmentTree> trees)
    {
        Found? closest = null, tightest = null;
        foreach (var part in parts)
        {
            closest = Less(closest, new(Least(runs.True, part, part.Bare, trees, 0, closest?.Near), runs.True, part, part.Bare));
        }

        if (closest is not null && IsOneWay(runs, parts, trees))
        {
            var found = closest with { Near = closest.Near is { } near ? near with { Clearance = near.Clearance - facts.Asked } : null };
            return found.Near is null ? default : (Along(closest, trees, 0), Along(found, trees, facts.Asked));
        }

        for (int way = 0; way < loose.Length; way++)
        {
            foreach (var part in loose[way])
            {
                foreach (var outline in part.Loose)
                {
                    tightest = Less(tightest, new(Least(runs.Loose[way], part, outline, trees, facts.Asked, tightest?.Near), runs.Loose[way], part, outline));
                }
            }
        }

        return (closest is null ? null : Along(closest, trees, 0), tightest is null ? null : Along(tightest, trees, facts.Asked));
    }

    // Without play it stands true in its only way. Where the bands hold the same edges too, nothing else comes out than for the bare vehicle.
    private static bool IsOneWay(VehicleRuns runs, HeldPart[] parts, Dictionary<Slab, SegmentTree> trees) => ReferenceEquals(runs.Loose[0], runs.True)
        && parts.All(p => p.Loose is [var only] && only.Outline == p.Bare.Outline && trees[only.Slab] == trees[p.Bare.Slab]);

    // What came nearest, and what it was measured with.
    private sealed record Found(Nearness? Near, PoseRun Run, HeldPart Part, HeldOutline Held);

    private static Found? Less(Found? a, Found b) => b.Near is null || a?.Near!.Clearance <= b.Near.Clearance ? a : b;

    // The stretch of places as near as the nearest, found by going on from it either way for as long as the part comes as near.
    private Nearness Along(Found found, Dictionary<Slab, SegmentTree> trees, double asked)
    {
        var (near, run) = (found.Near!, found.Run);
        var (tree, outline) = (trees[found.Held.Slab], found.Held.Outline);
        var walker = new StandingVehicle(stock.Ride, run.Vehicle, run.Off);
        var reached = new List<double> { near.Chainage };
        foreach (int way in (int[])[-1, 1])
        {
            int missed = 0;
            for (double at = near.Front; missed < Misses && !cancel.IsCancellationRequested && at >= run.Fronts[0] && at <= run.Fronts[^1]; at += way * Stride)
            {
                double bound = near.Clearance + asked + Alike;
                Point3 nearest = default;
                if (walker.At(at) is not { } pose || tree.Nearest(outline, pose.Of(found.Part.Carrier), ref bound, ref nearest) < 0)
                {
                    missed++;
                    continue;
                }

                var plan = new Point2(nearest.X, nearest.Y);
                reached.Add(stock.Ride.Locate(plan, field.Chainage(plan)).Chainage);
                missed = 0;
            }
        }

        // A vehicle reaches with one end and then with the other: of all places reached, those that hang together with the nearest.
        reached.Sort();
        int low = reached.IndexOf(near.Chainage), high = low;
        while (low > 0 && reached[low] - reached[low - 1] <= Misses * Stride)
        {
            low--;
        }

        while (high + 1 < reached.Count && reached[high + 1] - reached[high] <= Misses * Stride)
        {
            high++;
        }

        return near with { Stretch = (reached[low], reached[high]) };
    }

    private Nearness? Least(PoseRun run, HeldPart part, HeldOutline held, Dictionary<Slab, SegmentTree> trees, double asked, Nearness? sofar)
    {
        double bound = sofar is null ? double.PositiveInfinity : sofar.Clearance + asked + Nearby;
        var closest = new Closest(trees[held.Slab], held.Outline, part.Carrier, bound);
        for (int pass = 0; pass < Passes && !cancel.IsCancellationRequested; pass++)
        {
            for (int i = pass; i < run.Poses.Length; i += Passes)
            {
                closest.Try(run.Poses[i], run.Fronts[i]);
            }
        }

        if (closest.Section < 0)
        {
            return null;
        }

        Refine(run, closest);
        return Told(run, part, closest, asked);
    }

    // The part of a vehicle at the pose at which it comes nearest, of all that were tried.
    private sealed class Closest(SegmentTree tree, OutlineDistance outline, PartCarrier carrier, double bound)
    {
        private double bound = bound;
        private Point3 nearest;

        // Nearest distance found, mm, and the place of what is nearest.
        public (double Distance, Point3 Place) Found => (bound, nearest);

        public int Section { get; private set; } = -1;

        public double Front { get; private set; }

        public void Try(in VehiclePose pose, double at)
        {
            int owner = tree.Nearest(outline, pose.Of(carrier), ref bound, ref nearest);
            if (owner >= 0)
            {
                (Section, Front) = (owner, at);
            }
        }
    }

    // Ever smaller steps about the nearest pose.
    private void Refine(PoseRun run, Closest closest)
    {
        var walker = new StandingVehicle(stock.Ride, run.Vehicle, run.Off);
        double step = PoseRun.Step;
        for (int round = 0; round < FinerRounds; round++)
        {
            double middle = closest.Front;
            step /= FinerSteps;
            for (int i = -FinerSteps; i <= FinerSteps; i++)
            {
                double at = Math.Clamp(middle + (i * step), run.Fronts[0], run.Fronts[^1]);
                if (walker.At(at) is { } pose)
                {
                    closest.Try(pose, at);
                }
            }
        }
    }

    private Nearness Told(PoseRun run, HeldPart part, Closest closest, double asked)
    {
        var (distance, nearest) = closest.Found;
        var section = sections[closest.Section];
        var plan = new Point2(nearest.X, nearest.Y);
        var place = stock.Ride.Locate(plan, field.Chainage(plan));

        // Up an upright face every height is as near: the highest is told, whatever order its triangles come in.
        double? meets = MeetingHeight.At(placed[closest.Section], part.Own, nearest with { Z = part.Own.High + 1 });
        return new(distance - asked, run.Vehicle.Name, part.Name, stock.Ride.Name, section.Name, place.Chainage, place.Offset,
            (meets ?? nearest.Z) - railTop, nearest with { Z = meets ?? nearest.Z }, run.Backwards)
        {
            Platform = section.Platform,
            Front = closest.Front,
            Stretch = (place.Chainage, place.Chainage),
            InPlan = meets is null,
            Underside = part.Own.Low - railTop,
        };
    }

    // A vehicle's poses standing true, and those in every way in which it is off.
    private sealed record VehicleRuns(PoseRun True, IReadOnlyList<PoseRun> Loose)
    {
        // Whether it stands beside the stretch, or halts before it ever comes there.
        public bool IsPlaced => True.Poses.Length > 0 || True.HaltsShort;
    }
}
