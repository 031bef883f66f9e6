using PlatformForge.Platforms.Rules;
using PlatformForge.Projects.Runs;
using PlatformForge.Projects.Watches;
using PlatformForge.Tests.Cli;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Projects;

/// <summary>Published rules named in a project file, from the file to the warning.</summary>
public class PublishedRulesTests
{
    private static readonly string British = Samples.With(4, "rail_top = 8\nrules = \"british\"") + "height = 10\n";

    /// <summary>915 and 865 mm at 1:76.2 are 12.01 and 11.35 mm; 1447.5 mm is 19.00 mm, and a coach 34 mm wide needs 18.1.</summary>
    [Fact]
    public void A_platform_below_and_nearer_than_published_is_warned_of_with_clause_source_and_place()
    {
        var design = DesignRun.Design(Samples.Sound(British), RunWatch.None);
        Assert.True(design.Succeeded);
        var warnings = design.Findings.Where(f => f.Severity == Severity.Warning).ToArray();
        Assert.Equal(["PF3050", "PF3051", "PF3060"], warnings.Select(w => w.Code)); // 1 ft of overhang is 4 mm, the usual 1 mm of a model is less
        Assert.Contains("below the published 11.35 mm (915 mm above rail, down to 865 on upgraded lines; Track Design Handbook", warnings[0].Message,
            StringComparison.Ordinal);
        Assert.Equal(("halt.toml", 19, "platform[0].height"), (warnings[0].File, warnings[0].Line, warnings[0].Key));
        Assert.Contains("the published least is 19.00 mm", warnings[1].Message, StringComparison.Ordinal);
        Assert.Contains("3 of 6 published figures are missed", Assert.Single(design.Findings, f => f.Code == "PF3059").Message, StringComparison.Ordinal);
        Assert.Equal(design.Findings.Select(f => f.Message), design.Value!.Findings.Select(f => f.Message));
    }

    [Fact]
    public void Without_rules_nothing_published_is_held_against_a_design() =>
        Assert.DoesNotContain(DesignRun.Design(Samples.Sound(Samples.Small + "height = 3"), RunWatch.None).Findings,
            f => f.Code.StartsWith("PF305", StringComparison.Ordinal));

    [Fact]
    public void A_plan_is_looked_at_with_its_own_figures()
    {
        string text = Samples.Small.Replace("[{ straight = 900 }]",
            "[{ straight = 350 }, { curve = 1000, length = 300, hand = \"right\" }, { straight = 300 }]")
            + "deck = { width = 60, crossfall = 80 }\nramps = { end = { gradient = 9 } }\n";
        var project = Samples.Sound(text);
        var plan = DesignRun.Design(project, RunWatch.None).Value!.Platforms[0].Plan;
        var subject = PublishedRules.Subject(project.Layout.Gauge, plan);
        Assert.Equal(60, subject.Width!.Value, 1e-9);
        Assert.Equal(1.0 / 9, subject.RampGradient!.Value, 1e-9);
        Assert.Equal(1.0 / 80, subject.Crossfall, 1e-12);
        Assert.Equal(16.5, subject.Gauge);

        // On the left of a curve to the right: the outside, told by a curvature below 0.
        var place = subject.Edge.First(e => e.Chainage > 450);
        Assert.Equal(-1.0 / 1000, place.Curvature, 1e-12);
        Assert.Equal(plan.CopingFront.At(place.Chainage), place.Distance, 1e-12);
    }

    [Fact]
    public void A_name_that_is_none_is_told_with_the_names_there_are()
    {
        var finding = Assert.Single(Samples.Read(British.Replace("\"british\"", "\"britsh\"")).Findings);
        Assert.Equal(("PF1011", 5), (finding.Code, finding.Line));
        Assert.Contains("Did you mean \"british\"?", finding.Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void Warnings_end_with_0_and_with_4_where_asked_to_be_strict()
    {
        using var folder = new TempFolder();
        string file = folder.Write("halt.toml", British);
        var run = CliRun.Of("check", file);
        Assert.Equal(0, run.Exit);
        Assert.Contains("halt.toml:19:10  warning PF3050  platform[0].height", run.Error, StringComparison.Ordinal);
        Assert.Equal(4, CliRun.Of("check", file, "--strict").Exit);
        string listing = CliRun.Of("presets", "rules").Out;
        Assert.Contains("british-traditional", listing, StringComparison.Ordinal);
        Assert.Contains("Track Design Handbook", listing, StringComparison.Ordinal);
        Assert.All(CliRun.Of("presets", "--json").Json().GetProperty("rules").EnumerateArray(),
            r => Assert.NotEqual(0, r.GetProperty("figures").GetArrayLength()));
    }
}
