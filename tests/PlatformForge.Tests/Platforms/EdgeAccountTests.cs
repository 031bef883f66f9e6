using PlatformForge.Clearance;
using PlatformForge.Platforms;
using PlatformForge.Platforms.Accounts;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Specs;
using PlatformForge.Projects.Runs;
using PlatformForge.Projects.Watches;
using PlatformForge.Tests.Cli;
using PlatformForge.Tests.Projects;
using Xunit;

namespace PlatformForge.Tests.Platforms;

/// <summary>What makes up the coping's place: bare reach, play, budget, direction.</summary>
public class EdgeAccountTests
{
    private const string Playful = "running = 0.7\nwheelset_play = 0.15\npivot_play = 0.1\nroll = 1\ncant = 0.2\nlaying = 0.3";

    private static readonly Lazy<PlatformPlan> Plan = new(() => DesignRun.Design(
        Samples.Sound(Samples.Small.Replace("running = 0.7", Playful).Replace("[{ straight = 900 }]",
            "[{ straight = 260 }, { curve = 700, length = 300, hand = \"right\" }, { straight = 400 }]")
            .Replace("width = 34\n", "width = 34\nbogie_wheelbase = 30\nsill = { height = 13 }\n")),
        RunWatch.None).Value!.Platforms[0].Plan);

    [Fact]
    public void At_every_chainage_bare_reach_and_allowances_add_up_to_what_is_required()
    {
        for (double s = Plan.Value.Spec.Face.From; s <= Plan.Value.Spec.Face.To; s += 7.3)
        {
            var account = EdgeAccount.At(Plan.Value, s);
            Assert.Equal(["wheelset play", "pivot play", "suspension roll", "cant", "running clearance", "print tolerance", "fitting of the sections",
                "track laying"], account.Allowances.Select(a => a.Name).Where(n => n != AllowanceCost.EveryDirection));
            Assert.All(account.Allowances, a => Assert.True(a.Mm >= -1e-9));
            Assert.Equal(account.Required, account.Bare + account.Allowances.Sum(a => a.Mm), 0.0025);
            Assert.All(account.Styles, style => Assert.True(style.Reach >= account.Required - 0.011));
        }
    }

    /// <summary>On straight track a coach without play has its sills at half its width, 17 mm, so that a coping at a reach leaves that less 17, whatever its
    /// style.</summary>
    [Theory]
    [InlineData("fitted")]
    [InlineData("faired")]
    [InlineData("uniform")]
    public void Every_style_is_told_the_gap_that_its_own_edge_leaves(string built)
    {
        string text = Samples.Small.Replace("[{ straight = 900 }]", "[{ straight = 620 }, { curve = 700, length = 300, hand = \"right\" }, { straight = 300 }]")
            .Replace("width = 34\n", "width = 34\nsill = { height = 13 }\n").Replace("to = 540 }", $"to = 800, edge = \"{built}\" }}");
        var account = EdgeAccount.At(DesignRun.Design(Samples.Sound(text), RunWatch.None).Value!.Platforms[0].Plan, 400);
        Assert.All(account.Styles, style =>
        {
            var gap = Assert.Single(style.Gaps);
            Assert.Equal(style.Reach - 17, gap.Nearest, 0.011);
            Assert.Equal(style.Reach - 17, gap.Farthest, 0.011);
        });
        Assert.True(account.Styles.Single(s => s.Style == EdgeStyle.Uniform).Reach > account.Styles.Single(s => s.Style == EdgeStyle.Fitted).Reach + 1);
        Assert.Equal(built, account.Styles.Single(s => s.Chosen).Style.ToString().ToLowerInvariant());
    }

    [Fact]
    public void What_play_costs_is_what_a_design_without_it_would_save()
    {
        // Side play of q at mid-pivots is q·max(1, 2|x|/a) at a distance x from them: body ends 114 mm, pivots 162 mm apart.
        var account = EdgeAccount.At(Plan.Value, 300);
        double lever = 228.0 / 162;
        Assert.InRange(account.Allowances.Single(a => a.Name == "wheelset play").Mm, 0.15 - 0.01, (0.15 * lever) + 0.01);
        Assert.InRange(account.Allowances.Single(a => a.Name == "pivot play").Mm, 0.1 - 0.01, (0.1 * lever) + 0.01);
    }

    [Theory]
    [InlineData(BudgetRule.Sum)]
    [InlineData(BudgetRule.RootOfSquares)]
    public void The_shares_of_a_budget_add_up_to_its_margin_by_either_rule(BudgetRule rule)
    {
        var budget = ClearanceBudget.Of(0.7, 0.3, 0.4) with { Rule = rule };
        var shares = AllowanceCosts.Shares(budget).ToArray();
        Assert.Equal(budget.Margin, shares.Sum(s => s.Amount), 1e-12);

        // 0.3 and 0.4 have a root of squares of 0.5, in shares of 0.09/0.5 and 0.16/0.5.
        Assert.Equal(rule == BudgetRule.Sum ? 0.3 : 0.18, shares[1].Amount, 1e-12);
    }

    [Fact]
    public void The_command_line_says_at_a_chainage_why_the_edge_is_there_and_what_each_style_would_leave()
    {
        using var folder = new TempFolder();
        string file = folder.Write("halt.toml", Samples.Small.Replace("width = 34\n", "width = 34\nbogie_wheelbase = 30\nsill = { height = 13 }\n"));
        var run = CliRun.Of("check", file, "--at", "400");
        Assert.Equal(0, run.Exit);
        Assert.Contains("halt at chainage 400 mm: the coping needs 18.1", run.Out, StringComparison.Ordinal);
        Assert.Contains("for coach (body)", run.Out, StringComparison.Ordinal);
        Assert.Matches(@"bare reach 17\.0\d \+ running clearance 0\.70 \+ print tolerance 0\.20 \+ fitting of the sections 0\.20 = 18\.1\d mm", run.Out);

        // 1.1 mm at 1:76.2 is 84 mm, 3.3 in.
        Assert.Matches(@"fitted \(chosen\) +18\.1\d +0\.0\d +1\.1 to 1\.1 +84 mm \(3\.3 in\) +kept", run.Out);
        Assert.Contains("275 mm (10.8 in)", run.Out, StringComparison.Ordinal);
        var account = CliRun.Of("check", file, "--at", "400", "--json").Json().GetProperty("accounts")[0];
        Assert.Equal("body", account.GetProperty("part").GetString());
        Assert.Equal(3, account.GetProperty("styles").GetArrayLength());
        var beyond = CliRun.Of("check", file, "--at", "900");
        Assert.Equal(2, beyond.Exit);
        Assert.Contains("350 to 540", beyond.Error, StringComparison.Ordinal);
    }
}
