using PlatformForge.Projects.Runs;
using PlatformForge.Projects.Watches;
using PlatformForge.Tests.Projects;
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
        string text = Samples.Small.Replace("scale = \"4mm\"", $"scale = \"{scale}\"", StringComparison.Ordinal)
            .Replace("side = \"left\"", $"side = \"{side}\"", StringComparison.Ordinal)
            + $"height = 12\ndeck = {{ width = 48 }}\nback = {{ kind = \"bank\", returns = \"{returns}\" }}\n";
        var design = DesignRun.Design(Samples.Sound(text), RunWatch.None);
        Assert.True(design.Succeeded, string.Join('\n', design.Findings.Select(f => f.Message)));
        Assert.NotEmpty(design.Value!.Platforms[0].Plan.Bank!.Returns);
        Assert.DoesNotContain(TrialVerdict.Of(design.Value).Findings, f => f.Severity == Severity.Error);
    }
}
