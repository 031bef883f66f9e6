using PlatformForge.Exports.Files;
using PlatformForge.Exports.Workshop;
using PlatformForge.Masonry;
using PlatformForge.Platforms.Specs;
using Xunit;

namespace PlatformForge.Tests.Exports;

/// <summary>Steps of the work are those of the platform that is built.</summary>
public class WorkListTests
{
    private static readonly Dossier Dossier = HandDossier.Pendlewick();

    [Theory]
    [InlineData(PavingKind.Flags, "flags")]
    [InlineData(PavingKind.Setts, "setts")]
    [InlineData(PavingKind.Planks, "planks")]
    [InlineData(PavingKind.Bricks, "bricks")]
    public void A_paved_deck_is_painted_as_what_it_is_paved_with(PavingKind kind, string told)
    {
        string smooth = Said(WorkStage.Paint, s => s),
            paved = Said(WorkStage.Paint, s => s with { Deck = s.Deck with { Paving = PavingSpec.For(new(76.2)) with { Kind = kind } } });
        Assert.Contains("both greys", smooth, StringComparison.Ordinal);
        Assert.DoesNotContain("both greys", paved, StringComparison.Ordinal);
        Assert.Contains(told, paved, StringComparison.Ordinal);
    }

    /// <summary>The guide to pavings promises both for a smooth deck.</summary>
    [Fact]
    public void A_smooth_deck_has_mixes_for_tarmac_and_for_ash()
    {
        double[] areas = new double[Enum.GetValues<PlatformForge.Solids.Paint>().Length];
        areas[(int)PlatformForge.Solids.Paint.Deck] = 10_000;
        string[] mixed = [.. PaintTables.Mixes(areas, []).Rows.Select(r => r[0].Words).Distinct()];
        Assert.Contains(mixed, m => m.Contains("tarmac", StringComparison.Ordinal));
        Assert.Contains(mixed, m => m.Contains("ash", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(WallFinish.Brick, true)]
    [InlineData(WallFinish.Rubble, true)]
    [InlineData(WallFinish.Planks, false)]
    public void Mortar_is_painted_where_there_is_any(WallFinish finish, bool has) =>
        Assert.Equal(has, Said(WorkStage.Paint, s => s with { Facing = new() { Front = finish } }).Contains("mortar", StringComparison.Ordinal));

    [Fact]
    public void Joints_over_those_of_the_baseboard_are_told_of_where_there_are_any()
    {
        double cut = Dossier.Platforms[0].Sections.Cuts[0];
        Assert.Contains("over baseboard joints", Said(WorkStage.Join, s => s with { BaseboardJoints = [cut] }), StringComparison.Ordinal);
        Assert.DoesNotContain("over baseboard joints", Said(WorkStage.Join, s => s with { BaseboardJoints = [] }), StringComparison.Ordinal);
    }

    /// <summary>What is pushed past is what stands on the rails by itself: sets whole, and no truck of an engine.</summary>
    [Fact]
    public void Sets_are_pushed_whole_and_trucks_with_their_engines()
    {
        var engine = Fixtures.Pendlewick.TankEngine with { SetName = "tank engine and coach" };
        PlatformForge.Clearance.Vehicles.Vehicle[] vehicles = [engine, engine with { Name = "its truck", TruckOf = engine.Name },
            Fixtures.Pendlewick.LongCoach with { SetName = engine.SetName }, Fixtures.Pendlewick.Van];
        var dossier = Dossier with { Tracks = [Dossier.Tracks[0] with { Vehicles = vehicles }] };
        Assert.Contains(": tank engine and coach, van.", string.Join("\n", WorkList.Steps(WorkStage.Test, dossier, dossier.Platforms[0])),
            StringComparison.Ordinal);
    }

    private static string Said(WorkStage stage, Func<PlatformSpec, PlatformSpec> change)
    {
        var platform = Dossier.Platforms[0];
        var plan = platform.Sections.Plan;
        return string.Join("\n",
            WorkList.Steps(stage, Dossier, platform with { Sections = platform.Sections with { Plan = plan with { Spec = change(plan.Spec) } } }));
    }
}
