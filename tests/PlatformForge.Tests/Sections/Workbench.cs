using PlatformForge.Clearance;
using PlatformForge.Platforms;
using PlatformForge.Sections;
using PlatformForge.Tests.Fixtures;
using Xunit;

namespace PlatformForge.Tests.Sections;

/// <summary>Plans and section sets that several tests of this folder look at, made once.</summary>
internal static class Workbench
{
    private static readonly Lazy<PlatformPlan> PendlewickOnce = new(() =>
    {
        var sweep = EnvelopeSweeper.Sweep(new(Pendlewick.Track, 270, 1000, [Pendlewick.Run]));
        Assert.True(sweep.Succeeded, string.Join("; ", sweep.Findings.Select(f => f.Message)));
        return Planned(PlatformPlanner.Plan(new(Pendlewick.Platform(), Pendlewick.Site, Pendlewick.Track, sweep.Value!, Pendlewick.Budget)));
    });

    private static readonly Lazy<SectionSet> PendlewickSectionsOnce = new(() => Made(PendlewickPlan, Printer, new()));

    /// <summary>The 220 class bed of STANDARDS 5.3.</summary>
    public static PrinterSpec Printer { get; } = PrinterSpec.Oblong(220, 220, 250);

    public static PlatformPlan PendlewickPlan => PendlewickOnce.Value;

    public static SectionSet PendlewickSections => PendlewickSectionsOnce.Value;

    public static SectionSet Made(PlatformPlan plan, PrinterSpec printer, SectionSpec spec)
    {
        var outcome = SectionMaker.Make(plan, printer, spec);
        Assert.True(outcome.Succeeded, string.Join("; ", outcome.Findings.Select(f => f.Code + " " + f.Key + " " + f.Message + " " + f.Remedy)));
        return outcome.Value!;
    }

    private static PlatformPlan Planned(PlatformForge.Units.Outcome<PlatformPlan> outcome)
    {
        Assert.True(outcome.Succeeded, string.Join("; ", outcome.Findings.Select(f => f.Message)));
        return outcome.Value!;
    }
}
