using System.Globalization;
using System.Text.Json;
using PlatformForge.Exports;
using PlatformForge.Projects.Runs;
using PlatformForge.Tests.House;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Projects;

/// <summary>
/// Every figure in its key's range builds or is refused in words: each numeric key of the schema at either end of its range, through all rooms and every
/// writer. A few by lot here; all of them with the environment variable PLATFORMFORGE_ALL_KEYS set to 1.
/// </summary>
public class KeyEndTests
{
    private const string Full = """
        [layout]
        name = "Quillhaven"
        scale = "4mm"
        rail_top = 8
        [[track]]
        name = "main"
        alignment = [{ straight = 330 }, { transition = 60, to_radius = 900, hand = "left" }, { curve = 900, length = 260, hand = "left" }, { straight = 500 }]
        [[vehicle]]
        name = "coach"
        length = 228
        pivots = 162
        bogie_wheelbase = 30
        width = 34
        low = 4
        taper = { length = 5, width = 31 }
        sill = { height = 13 }
        part = [{ name = "steps", from = -60, to = 60, width = 34.5, low = 3, high = 8 }]
        [clearance]
        running = 0.7
        wheelset_play = 0.2
        pivot_play = 0.1
        roll = 0.4
        roll_centre = 6
        cant = 0.2
        [[platform]]
        name = "halt"
        face = { track = "main", side = "left", from = 350, to = 500 }
        height = 12
        ramps = { end = { gradient = 8, foot = 9 } }
        coping = { overhang = 1 }
        line = { width = 1 }

        """;

    private static readonly string[] Ends = [.. Keys()];

    [Fact]
    public void A_coping_that_ends_with_the_wall_is_drawn_and_written() => BuildsOrSaysWhy("platform.coping.overhang=0");

    [Fact]
    public void The_design_that_is_varied_is_sound() => Assert.NotNull(DesignRun.Design(Samples.Sound(Full), Samples.Known).Value);

    [SimulatedProperty(10)]
    public void A_key_at_an_end_of_its_range_builds_or_is_refused_in_words(int seed)
    {
        if (Environment.GetEnvironmentVariable("PLATFORMFORGE_ALL_KEYS") != "1")
        {
            BuildsOrSaysWhy(Ends[new Random(seed).Next(Ends.Length)]);
        }
    }

    [Fact]
    public void All_keys_at_both_ends()
    {
        Assert.True(Ends.Length > 200, $"{Ends.Length} ends of keys");
        if (Environment.GetEnvironmentVariable("PLATFORMFORGE_ALL_KEYS") == "1")
        {
            Assert.All(Ends, BuildsOrSaysWhy);
        }
    }

    private static void BuildsOrSaysWhy(string set)
    {
        var read = Samples.Read(Full, set);
        if (read.Value is null)
        {
            Assert.NotEmpty(read.Findings);
            return;
        }

        var design = DesignRun.Design(read.Value, Samples.Known);
        if (design.Value is { } dossier)
        {
            Assert.NotEmpty(OutputFiles.Of(dossier).Files);
        }
        else
        {
            Assert.Contains(design.Findings, f => f.Severity == Severity.Error && f.Message.Length > 0);
        }
    }

    // A key without a figure at one end has that end left out; one that has to be more than a figure is tried a little above it.
    private static IEnumerable<string> Keys()
    {
        using var schema = JsonDocument.Parse(File.ReadAllText(Path.Combine(SourceTree.Root, "presets", "project.schema.json")));
        return [.. Walk(schema.RootElement, "").Distinct()];
    }

    private static IEnumerable<string> Walk(JsonElement node, string path)
    {
        foreach (var property in node.TryGetProperty("properties", out var properties) ? properties.EnumerateObject() : default)
        {
            foreach (string end in Walk(property.Value, path.Length == 0 ? property.Name : path + "." + property.Name))
            {
                yield return end;
            }
        }

        foreach (string end in node.TryGetProperty("items", out var items) ? Walk(items, path) : [])
        {
            yield return end;
        }

        foreach (var choice in node.TryGetProperty("anyOf", out var any) ? any.EnumerateArray() : default)
        {
            foreach (string end in Walk(choice, path))
            {
                yield return end;
            }
        }

        if (node.TryGetProperty("type", out var type) && type.ToString() is var name
            && (name.Contains("number", StringComparison.Ordinal) || name.Contains("integer", StringComparison.Ordinal)))
        {
            foreach (var (bound, nudge) in new[] { ("minimum", 0.0), ("exclusiveMinimum", 0.001), ("maximum", 0.0) })
            {
                if (node.TryGetProperty(bound, out var value) && value.ValueKind == JsonValueKind.Number)
                {
                    yield return string.Create(CultureInfo.InvariantCulture, $"{path}={value.GetDouble() + nudge}");
                }
            }
        }
    }
}
