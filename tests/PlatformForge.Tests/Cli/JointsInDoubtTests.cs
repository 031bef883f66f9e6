using Xunit;

namespace PlatformForge.Tests.Cli;

/// <summary>What the survey command tells of stated joints that may as well lie elsewhere.</summary>
public sealed class JointsInDoubtTests : IDisposable
{
    // Seven pieces of 168 mm, three of them of R 505; the third joint is 453 mm along the string.
    private const string Readings = """
        distance,offset
        0,0
        50,27.25
        100,55.25
        150,82.75
        200,109.5
        250,136.75
        300,163.75
        350,187
        400,203.5
        450,214.5
        500,221.25
        550,223
        600,219.5
        650,211
        700,197.25
        750,177.25
        800,151.5
        850,123.75
        900,95.5
        950,68.25
        1000,40.5
        1050,12.5
        """;

    private const string Project = """
        [layout]
        name = "Thistle End"
        scale = "4mm"
        rail_top = 8.0

        [[track]]
        name = "main"
        start = { x = 0, y = 0, heading = 0 }
        survey = { kind = "string", file = "main.csv", side = "right", ruler_error = 0.25, laid = "sectional", radii = [505],
            joints = [147, 295, 453, 620, 779, 926] }

        [[vehicle]]
        name = "coach"
        length = 262
        pivots = 188
        width = 34
        low = 3

        [clearance]
        running = 0.7

        [[platform]]
        name = "down side"
        face = { track = "main", side = "right", from = 330, to = 850 }

        [printer]
        bed = [220, 220]
        """;

    private readonly TempFolder folder = new();

    public void Dispose() => folder.Dispose();

    /// <summary>Stated 30 mm off, a joint between pieces that turn by little contradicts nothing; the place that the readings like better is allowed for and
    /// named. Stated where it is, none is.</summary>
    [Fact]
    public void A_joint_that_may_as_well_lie_elsewhere_is_named_with_the_place()
    {
        var known = new PlatformForge.Units.Memories.Memory();
        folder.Write("main.csv", Readings);
        var off = CliRun.In(known, "survey", folder.Write("off.toml", Project.Replace("453", "423")));
        var told = System.Text.RegularExpressions.Regex.Match(off.Out,
            @"over all lines of the stated pieces that meet the readings, also with the joint stated at 423 mm at about (\d+), since the readings cannot tell");
        Assert.True(told.Success, off.Out + off.Error);
        Assert.InRange(int.Parse(told.Groups[1].Value, System.Globalization.CultureInfo.InvariantCulture), 438, 468);
        Assert.Contains("\"stated_mm\": 423", CliRun.In(known, "survey", folder["off.toml"], "--json").Out, StringComparison.Ordinal);
        var right = CliRun.Of("survey", folder.Write("true.toml", Project));
        Assert.Contains("over all lines of the stated pieces that meet the readings, and the edge keeps clear", right.Out, StringComparison.Ordinal);
    }
}
