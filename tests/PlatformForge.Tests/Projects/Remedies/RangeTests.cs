using PlatformForge.Projects.Keys;
using PlatformForge.Projects.Keys.Grammar;
using Xunit;

namespace PlatformForge.Tests.Projects.Remedies;

/// <summary>The ranges of a platform's keys and those of the rules of its room are one: no value is offered by one and refused by the other.</summary>
public class RangeTests
{
    private const string Fitted = """
        ramps = { start = { length = 40 } }
        line = { width = 1 }
        fence = { pitch = 32 }
        board = [{ at = 440, inset = 8 }]
        hole = [{ at = 460, inset = 8 }]

        """;

    public static TheoryData<string, double, double> Ends()
    {
        var ends = new TheoryData<string, double, double>();
        foreach (var (key, rule) in Numbers(PlatformKeys.Table.AsRule("", ""), ""))
        {
            ends.Add(key, rule.Range.Open ? rule.Range.Nearest(0) : rule.Range.Least, rule.Range.Most);
        }

        return ends;
    }

    [Theory]
    [MemberData(nameof(Ends))]
    public void What_a_rule_offers_its_key_takes(string key, double least, double most)
    {
        foreach (double value in new[] { least, most, Math.Round(least + 1), Math.Round((least + most) / 2) })
        {
            var read = Samples.Read(Samples.Small + Fitted, FormattableString.Invariant($"platform[0].{key}={value}"));
            if (read.Value is not { } project)
            {
                // Two figures that do not go together; the range itself was kept.
                Assert.DoesNotContain(read.Findings, f => f.Code == "PF1008");
                continue;
            }

            var spec = project.Platforms[0];
            var told = PlatformForge.Platforms.PlatformPlanner.Check(spec, new(project.Layout.Scale, project.Layout.RailTop),
                PlatformForge.Track.TrackLayer.Lay(project.Tracks[0].Alignment).Value!, project.Vehicles);
            foreach (var finding in told.Where(f => f.Code == "PF4001"))
            {
                var cured = Samples.Read(Samples.Small + Fitted, $"platform[0].{key}={finding.Cure!.Value}");
                Assert.DoesNotContain(cured.Findings, f => f.Code == "PF1008");
                Assert.True(value == 0 || finding.Cure.Value != FormattableString.Invariant($"{most}"), $"{key} = {value}: {finding.Message} {finding.Remedy}");
            }
        }
    }

    private static IEnumerable<(string Key, NumberRule Rule)> Numbers(TableRule table, string home) => table.Keys.SelectMany(rule => rule switch
    {
        NumberRule number => [(home + number.Name, number)],
        TableRule inner => Numbers(inner, $"{home}{inner.Name}."),
        ListRule { Item: TableRule item } => Numbers(item, $"{home}{rule.Name}[0]."),
        _ => Array.Empty<(string, NumberRule)>(),
    });
}
