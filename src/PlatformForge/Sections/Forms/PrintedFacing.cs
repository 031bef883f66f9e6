using PlatformForge.Masonry;
using PlatformForge.Masonry.Finishes;
using PlatformForge.Platforms.Plans;
using PlatformForge.Solids.Bodies.Layers;
using PlatformForge.Solids.Bodies.Walls;
using PlatformForge.Solids.Reliefs;

namespace PlatformForge.Sections.Forms;

/// <summary>A platform's facing as a printer makes it.</summary>
/// <param name="Finishes">What its walls are faced with.</param>
/// <param name="Returns">Names of the walls that are returns of the others.</param>
public sealed record PrintedFacing(IReadOnlyList<PrintedFinish> Finishes, IReadOnlyList<string> Returns)
{
    /// <summary>Least joint where a wall stops, mm: far more than numbers of files, far less than a line of plastic.</summary>
    private const double LeastStop = 0.05;

    /// <summary>The same finishes on what stands out of the walls along a part of their height.</summary>
    public IReadOnlyList<PrintedFinish> Standing { get; init; } = [];

    /// <summary>What is open in the walls.</summary>
    public IReadOnlyList<PlacedOpening> Openings { get; init; } = [];

    /// <summary>Cuts and ends askew.</summary>
    public IReadOnlyList<AskewLine> Askew { get; init; } = [];

    /// <summary>What the front under the first coping is faced with.</summary>
    public WallFinish Front { get; init; }

    /// <summary>Names of the faces that nothing is laid on, with what each shows.</summary>
    public IReadOnlyList<(string Name, Solids.Paint Shows)> Plain { get; init; } = [];

    /// <summary>The brickwork; null where there is none.</summary>
    public BrickworkSpec? Brickwork => Finishes.Select(f => f.Work).OfType<BrickworkSpec>().FirstOrDefault();

    /// <summary>Of a plan; null where its walls are plain or nothing of the facing can be printed.</summary>
    /// <param name="plan">The plan, its walking surface hinged at its cuts.</param>
    /// <param name="printer">The printer.</param>
    /// <param name="joint">How sections meet: half the joint between two is what both ends are trimmed by.</param>
    public static PrintedFacing? Of(PlatformPlan plan, PrinterSpec printer, JointSpec joint)
    {
        var walls = WallNames.Faced(plan).Concat(WallNames.Smooth(plan)).ToArray();
        if (plan.Spec.Facing is not { } spec || walls.Length == 0)
        {
            return null;
        }

        double under = WallProfiles.Under(plan);
        var laying = Laying(spec, under, Math.Max(LeastStop, (spec.Joint / 2) - joint.EndTrim), printer) with { Room = under - Coursing.Foot };
        var fronts = walls.ToDictionary(w => w.Wall, w => WallNames.OfFronts(plan, w.Wall));
        var profile = WallProfiles.Of(plan);
        var faces = walls.SelectMany(w => fronts[w.Wall].SelectMany(p => new[] { p.Front, p.Sides }).Prepend(w.Wall).Select(n => (w.Finish, Wall: n)));
        PrintedFinish[] all = [.. faces.GroupBy(w => w.Finish, w => w.Wall)
            .SelectMany(g => profile.Zones.Select(z => new PrintedFinish(
                Work(g.Key, spec, Within(laying, z), plan.Site.Scale, printer)!, [.. g.Select(w => WallNames.OfZone(w, z))]) { Zone = z }))
            .Where(f => f.Work is not null)];
        string[] returns = [WallNames.AtStart, WallNames.AtEnd, .. fronts.Values.SelectMany(p => p).Select(p => p.Sides)];
        string[] named = [.. profile.Zones.SelectMany(z => returns.Select(r => WallNames.OfZone(r, z)))];
        return all.Length == 0 ? null : new([.. all.Where(f => f.Zone.IsDeepest)], named)
        {
            Standing = [.. all.Where(f => !f.Zone.IsDeepest)],
            Openings = [.. Open(plan, profile, laying, printer)],
            Askew = AskewLine.Of(plan),
            Front = spec.Front,
            Plain = [.. WallNames.AllRound(plan).SelectMany(w => WallNames.OfFronts(plan, w).SelectMany(p => new[] { p.Front, p.Sides }).Prepend(w))
                .SelectMany(w => profile.Zones.Select(z => WallNames.OfZone(w, z))).Except(all.SelectMany(f => f.Walls))
                .Select(w => (w, WallNames.ShownBy(plan, w)))],
        };
    }

    // Courses hang from a height, down to the ground under the lowest.
    private static WallLaying Laying(FacingSpec spec, double under, double stop, PrinterSpec printer) =>
        new(spec.Joint, spec.Depth, under - spec.Joint, stop, spec.Joint, printer.Nozzle / 2) { Foot = Coursing.Foot };

    // What is laid on a part of the walls' height keeps its beds over and under the ledges there.
    private static WallLaying Within(WallLaying laying, in WallZone zone) => laying with
    {
        Bed = zone.BedOver ?? laying.Bed,
        Foot = zone.BedUnder ?? laying.Foot,
        Beyond = zone.Out,
    };

    /// <summary>The face of a retaining wall over the deck, laid as the front is, its courses from its coping down; null where there is none, or it is
    /// plain.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="printer">The printer.</param>
    /// <param name="trim">What sections are trimmed by at a cut, mm.</param>
    public static PrintedFacing? OfRetaining(PlatformPlan plan, PrinterSpec printer, double trim)
    {
        LineBand[] bands = [.. plan.Body.Lines.Where(l => l.Made.Wall is not null)];
        if (plan.Spec.Facing is not { } spec || bands.Length == 0)
        {
            return null;
        }

        // Courses go on beside ramps as beside the level deck, whose coping is the highest.
        double under = bands.Max(b => Math.Min(plan.TopAt(b.From, b.Near.At(b.From)), plan.TopAt(b.To, b.Near.At(b.To))) + b.Made.Rise - b.Made.Wall!.Coping);
        double high = bands.Max(b => b.Made.Rise - b.Made.Wall!.Coping);
        var laying = Laying(spec, under, Math.Max(LeastStop, (spec.Joint / 2) - trim), printer) with { Room = high - Coursing.Foot };
        return spec.Front != WallFinish.Plain && Work(spec.Front, spec, laying, plan.Site.Scale, printer) is { } work
            ? new([new(work, [WallNames.Retaining])], []) { Front = spec.Front, Askew = AskewLine.Of(plan) } : null;
    }

    // A finish with its figures; null for brickwork whose courses are too low to print.
    private static WallWork? Work(WallFinish finish, FacingSpec spec, WallLaying laying, Units.ModelScale scale, PrinterSpec printer)
    {
        var fit = FacingFit.Of(spec, scale, printer);
        double shortest = (FacingFit.LeastLines * printer.Nozzle) + spec.Joint;
        return finish switch
        {
            WallFinish.Brick => fit.Courses ? new BrickworkSpec(spec.Bond, spec.StretcherCourses, fit.Module, fit.Perpends, laying) : null,
            WallFinish.Stone => new StoneworkSpec(spec.StoneCourse, spec.StoneLength, spec.Seed, laying),
            WallFinish.Rubble => new RubbleSpec(spec.RubbleSize, spec.Seed, laying),
            WallFinish.Planks => new LevelTimberSpec(finish, spec.PlankWidth, spec.PlankLength, shortest, laying),
            WallFinish.Sleepers => new LevelTimberSpec(finish, spec.SleeperWidth, spec.SleeperLength, shortest, laying),
            WallFinish.UprightPlanks => new UprightPlankSpec(spec.PlankWidth, laying),
            WallFinish.Panels => new PanelSpec(spec.Bay, spec.PostWidth, spec.PanelHeight, laying),
            WallFinish.Sheet => new SheetSpec(laying),
            WallFinish.Plain => new PlainSpec(laying with { Joint = 0, Depth = 0 }),
            _ => null,
        };
    }

    /// <summary>What takes the place of each wall, by its name; those of one finish share one relief, which goes round their corners.</summary>
    internal (Dictionary<string, IWallRelief> ByName, FacingRelief[] All) Reliefs()
    {
        PrintedFinish[] finishes = [.. Finishes, .. Standing];
        FacingRelief[] all = [.. finishes.Select(f => new FacingRelief(f.Work, Returns, Openings) { Zone = f.Zone, Askew = Askew })];
        var byName = finishes.SelectMany((f, i) => f.Walls.Select(w => (w, i))).ToDictionary(p => p.w, p => (IWallRelief)all[p.i]);
        foreach (string behind in Openings.Select(o => o.Shape.Behind).OfType<string>())
        {
            byName[behind] = new WallBehind();
        }

        foreach (var (plain, shows) in Plain.Where(p => p.Shows != FacingRelief.PaintOf(Front)))
        {
            byName[plain] = WallPaints.Plain(shows);
        }

        return (byName, all);
    }

    // Openings in the places of the plan, with voussoirs where the nozzle shows them.
    private static IEnumerable<PlacedOpening> Open(PlatformPlan plan, WallProfile profile, WallLaying laying, PrinterSpec printer)
    {
        var chart = new FacetedPlan(plan);
        double least = (FacingFit.LeastLines * printer.Nozzle) + laying.Joint;
        foreach (var (_, place) in plan.Holes)
        {
            var hole = place.Hole!;
            double wall = place.IsFar && !plan.Spec.IsIsland ? plan.Spec.Walls.BackThickness : plan.Spec.Walls.FrontThickness;
            if (profile.IsParted(hole.Sill, hole.Height))
            {
                continue;
            }

            var zone = profile.Taking(hole.Sill, hole.Height) ?? profile.Deepest;
            var line = place.IsFar ? plan.Body.FarWallLine.Shifted(zone.Out) : plan.Body.WallLine.Shifted(-zone.Out);
            yield return new(WallNames.OfZone(WallNames.Of(plan, place.IsFar), zone), chart.On(line, place.Middle), new(
                place.Width, hole.Sill, hole.Height, hole.Rise, hole.Depth ?? (wall + zone.Out + hole.Pad.Depth),
                hole.Ring >= least - laying.Joint ? hole.Ring : 0, Math.Max(least, hole.Voussoir))
            { Number = place.Number, Bearing = zone.IsDeepest ? hole.Bearing : 0, Behind = hole.IsThrough ? WallNames.BehindHole(place.Number) : null });
        }
    }
}

/// <summary>What some of its walls are faced with.</summary>
/// <param name="Work">How it is laid.</param>
/// <param name="Walls">Names of those walls.</param>
public sealed record PrintedFinish(WallWork Work, IReadOnlyList<string> Walls)
{
    /// <summary>The part of the walls' height that it is on.</summary>
    public WallZone Zone { get; init; } = WallProfile.Flat.Zones[0];
}

/// <summary>What of brickwork a printer makes.</summary>
/// <param name="Module">Bricks with their joints, mm.</param>
/// <param name="Header">What is left of a header without its joint, mm.</param>
/// <param name="Layers">Layers to a course.</param>
/// <param name="Courses">Whether courses are high enough.</param>
/// <param name="Perpends">Whether bricks are long enough.</param>
public sealed record FacingFit(BrickModule Module, double Header, double Layers, bool Courses, bool Perpends)
{
    /// <summary>Least length of a header without its joint, in lines of the nozzle; least layers to a course (by trial with a slicer: less does not
    /// show).</summary>
    public const double LeastLines = 2, LeastLayers = 4;

    // Sums that are a limit but for their last digits.
    private const double Rounding = Units.Tolerances.Rounding;

    public static FacingFit Of(FacingSpec spec, Units.ModelScale scale, PrinterSpec printer)
    {
        var module = BrickModule.Of(spec.Gauge, scale);
        double header = module.Header - spec.Joint, layers = module.Course / printer.Layer;
        return new(module, header, layers, layers >= LeastLayers - Rounding && module.Course - spec.Joint >= printer.Layer,
            header >= (LeastLines * printer.Nozzle) - Rounding);
    }
}
