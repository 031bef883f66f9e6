using PlatformForge.Clearance;
using PlatformForge.Platforms;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Sections;
using PlatformForge.Sections.Forms;
using PlatformForge.Tests.Fixtures;
using PlatformForge.Track;

namespace PlatformForge.Tests.Sections;

/// <summary>Plans and section sets that several tests of this folder look at, made once.</summary>
internal static class Workbench
{
    /// <summary>A bed of the 220 class (a published size).</summary>
    public static PrinterSpec Printer { get; } = PrinterSpec.Oblong(220, 220, 250);

    private static readonly Lazy<PlatformPlan> PendlewickOnce = new(() => PendlewickAs(p => p));

    private static readonly Lazy<SectionSet> PendlewickSectionsOnce = new(() => Made(PendlewickPlan, Printer, new()));

    public static PlatformPlan PendlewickPlan => PendlewickOnce.Value;

    public static SectionSet PendlewickSections => PendlewickSectionsOnce.Value;

    /// <summary>Pendlewick with a change of its platform.</summary>
    public static PlatformPlan PendlewickAs(Func<PlatformSpec, PlatformSpec> change) => Swept(Pendlewick.Track, change(Pendlewick.Platform()));

    /// <summary>Pendlewick in a looking-glass: curves and side exchanged.</summary>
    public static PlatformPlan PendlewickMirrored()
    {
        static AlignmentElementSpec Turned(AlignmentElementSpec e) => e switch
        {
            CurveSpec c => c with { Hand = (Hand)(-(int)c.Hand) },
            TransitionSpec t => t with { Hand = (Hand)(-(int)t.Hand) },
            _ => e,
        };
        var track = TrackLayer.Lay(Pendlewick.Alignment with { Elements = [.. Pendlewick.Alignment.Elements.Select(Turned)] }).Value!;
        var spec = Pendlewick.Platform();
        return Swept(track, spec with { Face = spec.Face with { Side = (Side)(-(int)spec.Face.Side) } });
    }

    /// <summary>A straight platform whose coping front lies 19 mm from the centreline, its deck 20 mm over the baseboard, bare of all furniture. Its
    /// plan dimensions are whole steps of the kernel's plan grid, so that volumes can be held to rounding.</summary>
    public static PlatformPlan Straight(double length, Side side = Side.Left, Func<PlatformSpec, PlatformSpec>? change = null, double? railTop = null)
    {
        var track = TrackLayer.Lay(new("up", new(0, 0), 0, [new StraightSpec(length + 400)])).Value!;
        var spec = new PlatformSpec("straight", new FaceSpec("up", side, 200, 200 + length, EdgeStyle.Uniform))
        {
            Height = 12,
            Coping = new() { Width = 8, Thickness = 1.2, Overhang = 1, SlabLength = 25, JointDepth = 0, ArrisChamfer = 0 },
            Deck = new() { Width = 60, Thickness = 1.5 },
            Walls = new() { FrontThickness = 1.625, BackThickness = 1.625, EndThickness = 1.625 },
            Ribs = new() { Pitch = 0, LongitudinalCount = 0 },
        };
        var envelope = Platforms.Bench.Envelope(track, side, _ => 18);
        return Planned(PlatformPlanner.Plan(new(change?.Invoke(spec) ?? spec, railTop is { } top ? Pendlewick.Site with { RailTop = top } : Pendlewick.Site,
            track, envelope, ClearanceBudget.Of(running: 1))));
    }

    /// <summary>The bare straight platform at a height in all over the baseboard, mm; wide enough for joints.</summary>
    public static PlatformPlan Low(double height) => Straight(400, change: s => s with { Height = height, Deck = s.Deck with { Width = 40 } }, railTop: 0);

    public static SectionSet Made(PlatformPlan plan, PrinterSpec printer, SectionSpec spec)
    {
        var outcome = SectionMaker.Make(plan, printer, spec);
        Assert.True(outcome.Succeeded, string.Join("; ", outcome.Findings.Select(f => f.Code + " " + f.Key + " " + f.Message + " " + f.Remedy)));
        return outcome.Value!;
    }

    private static PlatformPlan Swept(Centreline track, PlatformSpec spec)
    {
        var sweep = EnvelopeSweeper.Sweep(new(track, spec.Face.From, spec.Face.To, [Pendlewick.Run with { Ride = track }]));
        Assert.True(sweep.Succeeded, string.Join("; ", sweep.Findings.Select(f => f.Message)));
        return Planned(PlatformPlanner.Plan(new(spec, Pendlewick.Site, track, sweep.Value!, Pendlewick.Budget)));
    }

    private static PlatformPlan Planned(Units.Outcome<PlatformPlan> outcome)
    {
        Assert.True(outcome.Succeeded, string.Join("; ", outcome.Findings.Select(f => f.Message)));
        return outcome.Value!;
    }
}
