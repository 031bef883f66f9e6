using System.Globalization;
using PlatformForge.Tests.Cli;
using Xunit;

namespace PlatformForge.Tests.Track.Surveys.Admissible;

/// <summary>Track that comes and goes a little faster than was said: whatever the search for a middle does, the user gets an answer.</summary>
public class RunawayTests
{
    // A made-up string every 50 mm, ruler error 0.25: radius 400 reversed into 900 over 245 mm, which is a little more than 380 over 200 allows.
    private static readonly double[] Offsets =
    [
        0.2382, 25.8404, 51.7876, 77.6400, 103.7127, 129.8695, 155.8816, 181.5333, 207.0188, 230.3948, 249.1279, 261.7481, 268.0263,
        267.9146, 261.5857, 248.4088, 228.9778, 203.3826, 174.9537, 146.6036, 120.8555, 99.4953, 81.2364, 66.1329, 53.8616, 44.9563,
        37.9678, 32.6162, 28.0492, 23.1857, 18.6690, 14.1085, 9.4250, 4.5232, 0.2928,
    ];

    private const string Project = """
        [layout]
        name = "Trial"
        scale = "4mm"
        rail_top = 8
        [[track]]
        name = "up"
        start = { x = 0, y = 0, heading = 0 }
        survey = { kind = "string", file = "up.csv", side = "left", ruler_error = 0.25LAID }
        [[vehicle]]
        name = "long coach"
        length = 262
        pivots = 188
        width = 34.5
        low = 3
        [clearance]
        running = 0.7
        [[platform]]
        name = "p"
        height = 12
        face = { track = "up", side = "left", from = 450, to = 1000 }
        """;

    [Theory]
    [InlineData("")]
    [InlineData(", laid = \"flexible\"")]
    public void A_search_that_runs_away_ends_in_an_answer(string laid)
    {
        using var folder = new TempFolder();
        folder.Write("up.csv", "distance,offset\n" + string.Join('\n', Offsets.Select((o, i) => string.Create(CultureInfo.InvariantCulture, $"{50 * i},{o}"))));
        var run = CliRun.Of("survey", folder.Write("up.toml", Project.Replace("LAID", laid, StringComparison.Ordinal)));
        Assert.True(run.Exit == 0, run.Error);
        Assert.Contains("35 readings", run.Out, StringComparison.Ordinal);
    }
}
