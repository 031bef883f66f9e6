using PlatformForge.Projects.Overrides;
using PlatformForge.Projects.Presets;
using PlatformForge.Projects.Remedies;
using PlatformForge.Projects.Runs;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Projects.Remedies;

/// <summary>What is asked for of walls and backs and cannot be made: the value that the message names is put in, and no error is left.</summary>
public class WallCureTests
{
    private static readonly TrialLimits NoClock = TrialLimits.Usual with { Time = TimeSpan.FromHours(1) };

    [Theory]
    [InlineData("PF5041", "platform[0].fence.inset", "platform[0].back={ retaining = {} }", "platform[0].fence={ inset = 2.5 }")]
    [InlineData("PF5041", "platform[0].hole[0].inset", "platform[0].back={ retaining = {} }", "platform[0].hole=[{ at = 440, inset = 3, diameter = 2 }]")]
    [InlineData("PF5042", "platform[0].back.retaining.thickness", "platform[0].back={ retaining = { thickness = 0.5, oversail = 0.6 } }")]
    [InlineData("PF5057", "platform[0].facing.front", "platform[0].facing={ front = \"planks\", plinth = {} }")]
    [InlineData("PF5057", "platform[0].facing.ends", "platform[0].facing={ front = \"brick\", ends = \"panels\", corbel = {} }")]
    [InlineData("PF5057", "platform[0].facing.plinth", "platform[0].facing={ front = \"planks\", back = \"panels\", plinth = {} }")]
    [InlineData("PF5054", "platform[0].facing.front", "platform[0].facing={ front = \"planks\", opening = [{ kind = \"cable\" }] }")]
    [InlineData("PF4159", "platform[0].facing.opening[0].height", "platform[0].facing={ opening = [{ kind = \"refuge\", height = 30 }] }")]
    [InlineData("PF4159", "platform[0].facing.opening[0].sill", "platform[0].facing={ opening = [{ kind = \"cable\", height = 3, sill = 17 }] }")]
    [InlineData("PF4175", "platform[0].skew", "platform[0].skew={ start = 40, end = -40 }", "platform[0].face.to=400")]
    [InlineData("PF4175", "platform[0].skew.start", "platform[0].skew={ start = 40, end = -5 }", "platform[0].face.to=400")]
    [InlineData("PF1007", "platform[0].facing", "platform[0].facing=\"brick\"")]
    [InlineData("PF1007", "platform[0].back.retaining", "platform[0].back={ retaining = 16 }")]
    public void A_wall_that_is_refused_is_made_once_the_value_told_is_put_in(string code, string cured, params string[] sets)
    {
        var source = new ProjectSource(PresetShelf.Sample("straight-halt")!, "halt.toml", null, [.. sets.Select(s => Override.Parse(s).Value!)]);
        var told = CureTrial.Of(source, FaultyDesign.FindingsOf(source), NoClock).Where(f => f.Severity == Severity.Error).ToArray();
        var first = told.FirstOrDefault(f => f.Code == code);
        Assert.True(first is { Cure: { Tried: true } cure } && cure.Key == cured,
            string.Join('\n', told.Select(f => $"{f.Code} {f.Key}: {f.Message} {f.Remedy} [{f.Cure}]")));
        var after = FaultyDesign.FindingsOf(source, first!.Cure!);
        Assert.True(after.All(f => f.Severity != Severity.Error && f.Code != "PF5035"), string.Join('\n', after.Select(f => $"{f.Code} {f.Key}: {f.Message}")));
    }

    /// <summary>A slope written as a ratio means its second figure.</summary>
    [Theory]
    [InlineData("platform[0].back.slope", "1.5", "platform[0].back={ kind = \"bank\", apart = true, slope = \"1:1.5\" }")]
    [InlineData("platform[0].back.slope", "1.5", "platform[0].back={ kind = \"bank\", apart = true, slope = \"1 in 1,5\" }")]
    [InlineData("platform[0].ramps.end.gradient", "8", "platform[0].ramps={ end = { gradient = \"1/8\" } }")]
    public void A_slope_that_is_written_as_a_ratio_is_given_as_the_figure_that_its_key_takes(string key, string value, string set)
    {
        var source = new ProjectSource(PresetShelf.Sample("straight-halt")!, "halt.toml", null, [Override.Parse(set).Value!]);
        var told = Assert.Single(CureTrial.Of(source, FaultyDesign.FindingsOf(source), NoClock), f => f.Severity == Severity.Error);
        Assert.Equal(("PF1007", key, value, true), (told.Code, told.Cure!.Key, told.Cure.Value, told.Cure.Tried));
        Assert.DoesNotContain(FaultyDesign.FindingsOf(source, told.Cure), f => f.Severity == Severity.Error);
    }

    /// <summary>Unasked posts keep a printed line of 0.4 before the rebate: a lip of 0.8, the wall's 2.4 with air of 0.1 on either side, and half a hole of
    /// 1.2.</summary>
    [Theory]
    [InlineData("platform[0].back={ retaining = {} }", 0.8 + 2.6 + 0.4 + 0.6)]
    [InlineData("platform[0].back={ kind = \"wall\" }", 2.5)]
    public void A_fence_whose_inset_is_not_stated_keeps_before_a_retaining_wall(string back, double inset)
    {
        var design = DesignRun.Design(Samples.Sound(PresetShelf.Sample("straight-halt")!, back, "platform[0].fence={}"), Samples.Known);
        Assert.DoesNotContain(design.Findings, f => f.Severity == Severity.Error);
        var plan = design.Value!.Platforms[0].Sections.Plan;
        Assert.All(plan.Features.Single(f => f.Name == "fence").Openings,
            o => Assert.Equal(inset, plan.Body.Back.At(o.Middle.Chainage) - o.Middle.Reach, 1e-6));
    }
}
