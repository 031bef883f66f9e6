using PlatformForge.Projects;
using PlatformForge.Projects.Runs;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Backs;

/// <summary>Banks that turn round ends, from the project file on: sections reach past the platform's ends there, and are held to its edge.</summary>
public class TurnedBankProjectTests
{
    [Theory]
    [InlineData("4mm", "both", "right")]
    [InlineData("7mm", "start", "left")]
    [InlineData("3.5mm", "end", "right")]
    public void A_bank_that_turns_round_an_end_is_accepted(string scale, string returns, string side)
    {
        string text = $$"""
            [layout]
            name = "Marrowby Cross"
            scale = "{{scale}}"
            rail_top = 8

            [[track]]
            name = "main"
            alignment = [{ straight = 900 }]

            [[vehicle]]
            name = "coach"
            length = 240
            pivots = 170
            width = 34
            sill = { height = 13 }

            [clearance]
            running = 0.7
            print = 0.2
            fitting = 0.2

            [[platform]]
            name = "main platform"
            height = 12
            face = { track = "main", side = "{{side}}", from = 350, to = 500 }
            deck = { width = 48 }
            back = { kind = "bank", returns = "{{returns}}" }

            [printer]
            bed = [220, 220]
            """;
        var design = DesignRun.Design(ProjectReader.Read(text, "halt.toml", null, []).Value!, RunWatch.None);
        Assert.True(design.Succeeded, string.Join('\n', design.Findings.Select(f => f.Message)));
        Assert.NotEmpty(design.Value!.Platforms[0].Plan.Bank!.Returns);
        Assert.DoesNotContain(TrialVerdict.Of(design.Value).Findings, f => f.Severity == Severity.Error);
    }
}
