using PlatformForge.Clearance.Rules;
using Xunit;

namespace PlatformForge.Tests.Clearance;

/// <summary>What a published rule says when it is broken: the figure found, the figure published, and one that does.</summary>
public class RuleWordTests
{
    /// <summary>Bane NOR, TRV:03995: 2 %, that is 1 in 50. ABA 810.5.1: no slope over 1 in 48.</summary>
    [Theory]
    [InlineData("norwegian", 1.0 / 33, "falls 1 in 33 across, steeper than the published 1 in 50", "Give it 1 in 50 or flatter.", 1.0 / 50)]
    [InlineData("american", 1.0 / 40, "falls 1 in 40 across, steeper than the published 1 in 48", "Give it 1 in 48 or flatter.", 1.0 / 48)]
    public void A_deck_that_falls_too_steeply_is_told_both_slopes(string rules, double fall, string message, string remedy, double published)
    {
        var subject = new RuleSubject(new(87), 16.5, 8.7, []) { Crossfall = fall };
        var warning = NationalRules.Find(rules)!.Hold(subject).Single(w => w.Code == "PF3054");
        Assert.Contains(message, warning.Message, StringComparison.Ordinal);
        Assert.Contains(remedy, warning.Remedy, StringComparison.Ordinal);
        Assert.DoesNotContain(NationalRules.Find(rules)!.Hold(subject with { Crossfall = published }), w => w.Code == "PF3054");
        Assert.DoesNotContain(NationalRules.Find(rules)!.Hold(subject with { Crossfall = 0 }), w => w.Code == "PF3054");
    }
}
