using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;

namespace PlatformForge.Outside.Tests;

/// <summary>
/// Grams and hours told for the first plate of every platform of the samples against a slicer that is set to what the report states: in the gate of every
/// second sample, with PLATFORMFORGE_FORECASTS=all of each.
/// </summary>
[Collection("samples sliced")]
public class ForecastTests(WrittenSamples samples)
{
    private const double GramsWithin = 0.1, HoursWithin = 0.2, NoneBeyond = 0.35, ShareWithin = 0.8;

    private sealed record Measured(string Plate, double Grams, double Hours)
    {
        public bool Near => Math.Abs(Grams) <= GramsWithin && Math.Abs(Hours) <= HoursWithin;

        public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Plate}: grams {Grams:+0.0%;-0.0%}, hours {Hours:+0.0%;-0.0%}");
    }

    [Fact]
    public void Eight_of_ten_plates_take_the_grams_and_the_time_that_the_report_tells()
    {
        bool each = Environment.GetEnvironmentVariable("PLATFORMFORGE_FORECASTS") == "all";
        string[] taken = [.. samples.Different.Where((_, i) => each || i % 2 == 0)];
        Measured[] all = [.. taken.SelectMany(Plates)];
        string told = string.Join("\n", all.Select(m => m.ToString()));
        Assert.True(all.Length >= taken.Length, told);
        Assert.True(all.Count(m => m.Near) >= ShareWithin * all.Length, told);
        Assert.True(all.All(m => Math.Abs(m.Grams) <= NoneBeyond && Math.Abs(m.Hours) <= NoneBeyond), told);
    }

    private IEnumerable<Measured> Plates(string sample)
    {
        string folder = Path.Combine(samples.Folder, sample);
        using var report = JsonDocument.Parse(File.ReadAllBytes(Path.Combine(folder, "report.json")));
        foreach (var platform in report.RootElement.GetProperty("platforms").EnumerateArray())
        {
            string name = platform.GetProperty("name").GetString()!.Replace(' ', '-');
            foreach (var plate in platform.GetProperty("plates").EnumerateArray().Take(1))
            {
                string file = Path.Combine(folder, "3mf",
                    string.Create(CultureInfo.InvariantCulture, $"{name}-plate-{plate.GetProperty("number").GetInt32():00}.3mf"));
                var (grams, hours) = Sliced(file, platform.GetProperty("print"));
                var told = plate.GetProperty("estimate");
                yield return new(Path.GetFileName(file), (told.Number("grams") / grams) - 1, (told.Number("hours") / hours) - 1);
            }
        }
    }

    private static (double Grams, double Hours) Sliced(string file, JsonElement print)
    {
        string gcode = Path.Combine(Path.GetTempPath(), $"platformforge-{Guid.NewGuid():N}.gcode");
        try
        {
            var said = Tool.Run("prusa-slicer", ["--export-gcode", "--output", gcode, "--dont-arrange", "--bed-shape", "0x0,400x0,400x400,0x400", "--skirts",
                "0", "--filament-density", "1.24", .. Settings(print), file]);
            Assert.True(File.Exists(gcode), said.All);
            string[] lines = [.. File.ReadLines(gcode).Where(l => l.StartsWith("; ", StringComparison.Ordinal))];
            string mass = lines.First(l => l.StartsWith("; total filament used [g]", StringComparison.Ordinal));
            string time = lines.First(l => l.StartsWith("; estimated printing time (normal mode)", StringComparison.Ordinal));
            return (double.Parse(mass.Split('=')[1], CultureInfo.InvariantCulture), Hours(time));
        }
        finally
        {
            File.Delete(gcode);
        }
    }

    private static IEnumerable<string> Settings(JsonElement print)
    {
        var speeds = print.GetProperty("speeds");
        string S(string name) => speeds.Number(name).ToString(CultureInfo.InvariantCulture);
        string P(string name) => print.Number(name).ToString(CultureInfo.InvariantCulture);
        double drawn = speeds.Number("retraction") / 2 * RetractSpeed;
        return
        [
            "--layer-height", P("layer"), "--first-layer-height", P("first_layer"), "--nozzle-diameter", P("nozzle"), "--perimeters", P("walls"),
            "--top-solid-layers", P("solid_layers"), "--bottom-solid-layers", P("solid_layers"), "--fill-density",
            string.Create(CultureInfo.InvariantCulture, $"{100 * print.Number("infill")}%"),
            "--external-perimeter-speed", S("outer_wall"), "--perimeter-speed", S("wall"), "--small-perimeter-speed", S("small_wall"), "--infill-speed",
            S("infill"),
            "--solid-infill-speed", S("infill"), "--top-solid-infill-speed", S("infill"), "--gap-fill-speed", S("wall"), "--bridge-speed", S("bridge"),
            "--first-layer-speed", S("first_layer"),
            "--travel-speed", S("travel"), "--filament-max-volumetric-speed", S("flow"), "--gcode-flavor", "marlin", "--default-acceleration",
            S("acceleration"),
            "--machine-max-acceleration-x", S("acceleration"), "--machine-max-acceleration-y", S("acceleration"), "--machine-max-acceleration-extruding",
            S("acceleration"),
            "--machine-max-acceleration-travel", S("acceleration"), "--machine-max-jerk-x", S("corner_jump"), "--machine-max-jerk-y", S("corner_jump"),
            "--retract-length", drawn.ToString(CultureInfo.InvariantCulture), "--retract-speed", RetractSpeed.ToString(CultureInfo.InvariantCulture),
        ];
    }

    private const double RetractSpeed = 40;

    private static double Hours(string line)
    {
        double hours = 0;
        foreach (Match part in Regex.Matches(line, @"(?<n>\d+)(?<unit>[dhms])\b", RegexOptions.ExplicitCapture, TimeSpan.FromSeconds(5)))
        {
            hours += double.Parse(part.Groups["n"].Value, CultureInfo.InvariantCulture)
                / part.Groups["unit"].Value switch { "d" => 1 / 24.0, "h" => 1, "m" => 60, _ => 3600 };
        }

        return hours;
    }
}
