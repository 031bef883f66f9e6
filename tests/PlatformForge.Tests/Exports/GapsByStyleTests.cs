using System.Text;
using System.Text.Json;
using PlatformForge.Exports.Tables;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Projects.Runs;
using PlatformForge.Projects.Watches;
using PlatformForge.Tests.Projects;
using Xunit;

namespace PlatformForge.Tests.Exports;

/// <summary>The series behind the gap plot, per vehicle and style.</summary>
public class GapsByStyleTests
{
    private static readonly Lazy<PlatformPlan> Plan = new(() => DesignRun.Design(
        Samples.Sound(Samples.Small.Replace("[{ straight = 900 }]", "[{ straight = 300 }, { curve = 800, length = 150, hand = \"right\" }, { straight = 500 }]")
            .Replace("width = 34\n", "width = 34\nsill = { height = 13 }\n")
            + "[[vehicle]]\nname = \"van\"\nlength = 84\npivots = 40\nwidth = 32\nsill = { height = 14 }\n"),
        RunWatch.None).Value!.Platforms[0].Plan);

    [Fact]
    public void Every_style_has_every_vehicle_at_every_station_and_agrees_with_the_summary()
    {
        var plan = Plan.Value;
        var series = GapsByStyle.Of(plan);
        Assert.Equal([EdgeStyle.Fitted, EdgeStyle.Faired, EdgeStyle.Uniform], series.Styles.Select(s => s.Style));
        foreach (var style in series.Styles)
        {
            Assert.Equal(["coach", "van"], style.Vehicles.Select(v => v.Vehicle));
            foreach (var vehicle in style.Vehicles)
            {
                var row = plan.Gaps.Rows.Single(r => r.Style == style.Style && r.Vehicle == vehicle.Vehicle);
                Assert.Equal(series.Chainage.Count, vehicle.Nearest.Count);
                Assert.Equal(row.Least, vehicle.Nearest.Min()!.Value, 2e-3);
                Assert.Equal(row.Largest, vehicle.Farthest.Max()!.Value, 2e-3);
            }
        }
    }

    [Fact]
    public void No_station_of_a_closer_style_has_a_larger_gap_and_none_goes_below_what_is_required()
    {
        var series = GapsByStyle.Of(Plan.Value);
        for (int i = 0; i < series.Chainage.Count; i++)
        {
            double?[] edge = [.. series.Styles.Select(s => s.CopingReach[i])];
            Assert.True(edge[0] <= edge[1] + 0.0021 && edge[1] <= edge[2] + 0.0021, $"{series.Chainage[i]}: {string.Join(" ", edge)}");
            Assert.True(edge[0] >= series.RequiredReach[i] - 0.0021);
        }
    }

    [Fact]
    public void Bare_reach_and_allowances_come_to_what_is_required_and_full_size_is_the_model_times_its_ratio()
    {
        var series = GapsByStyle.Of(Plan.Value);
        for (int i = 0; i < series.Chainage.Count; i++)
        {
            Assert.Equal(series.RequiredReach[i]!.Value, series.BareReach[i]!.Value + series.Allowances.Sum(a => a.Amount[i]!.Value), 5e-3);
        }

        Assert.Equal((275, 10.83), (series.SteppingLimit.LevelFullSizeMm, series.SteppingLimit.LevelFullSizeIn));
        string[] cells = Encoding.UTF8.GetString(series.ToCsv()).Split('\n')[21].Split(',');
        double gap = series.Styles[2].Vehicles[1].Farthest[20]!.Value * 76.2;
        Assert.Equal(gap, double.Parse(cells[^2], System.Globalization.CultureInfo.InvariantCulture), 0.51);
        Assert.Equal(gap / 25.4, double.Parse(cells[^1], System.Globalization.CultureInfo.InvariantCulture), 0.051);
    }

    [Fact]
    public void The_two_forms_hold_the_same_figures()
    {
        var series = GapsByStyle.Of(Plan.Value);
        string[] lines = Encoding.UTF8.GetString(series.ToCsv()).Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(series.Chainage.Count + 1, lines.Length);
        Assert.StartsWith("chainage_mm,bare_reach_mm,running clearance mm,print tolerance mm,fitting of the sections "
            + "mm,swept_reach_mm,required_reach_mm,governing_vehicle,governing_part,governing_track,stepping_limit_full_size_mm,fitted coping_reach_mm,fitted "
            + "coach nearest_gap_mm,", lines[0], StringComparison.Ordinal);
        using var json = JsonDocument.Parse(series.ToJson());
        var uniform = json.RootElement.GetProperty("styles")[2];
        Assert.Equal("uniform", uniform.GetProperty("style").GetString());
        string[] cells = lines[21].Split(',');
        Assert.Equal(cells[^3], uniform.GetProperty("vehicles")[1].GetProperty("farthest")[20].GetDouble()
            .ToString("F3", System.Globalization.CultureInfo.InvariantCulture));
        Assert.Equal(cells[0], json.RootElement.GetProperty("chainage")[20].GetDouble().ToString("F3", System.Globalization.CultureInfo.InvariantCulture));
    }
}
