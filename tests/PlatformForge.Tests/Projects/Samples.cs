using PlatformForge.Projects;
using PlatformForge.Projects.Overrides;
using PlatformForge.Projects.Presets;
using PlatformForge.Projects.Watches;
using PlatformForge.Units;

namespace PlatformForge.Tests.Projects;

/// <summary>Project texts that the tests of this room share.</summary>
internal static class Samples
{
    private static readonly Lazy<RunWatch> Remembered = new(() => RunWatch.None with { Memory = new() });

    /// <summary>For tests that design one project many times over, each a little otherwise: what none of the changes touches is worked out once. That a run
    /// with a memory says what one from nothing says is a law of its own, see SessionLaws.</summary>
    public static RunWatch Known => Remembered.Value;

    /// <summary>A project with nothing but what has to be stated. Tests refer to its lines by number.</summary>
    public const string Small = """
        [layout]
        name = "Quillhaven"
        scale = "4mm"
        rail_top = 8
        [[track]]
        name = "main"
        alignment = [{ straight = 900 }]
        [[vehicle]]
        name = "coach"
        length = 228
        pivots = 162
        width = 34
        [clearance]
        running = 0.7
        [[platform]]
        name = "halt"
        face = { track = "main", side = "left", from = 350, to = 540 }

        """;

    public static string Pendlewick => PresetShelf.Sample("pendlewick")!;

    public static Outcome<ProjectSpec> Read(string text, params string[] sets) =>
        ProjectReader.Read(text, "halt.toml", null, [.. sets.Select(s => Override.Parse(s).Value!)]);

    /// <summary>The project read, which must be without fault.</summary>
    public static ProjectSpec Sound(string text, params string[] sets)
    {
        var read = Read(text, sets);
        Xunit.Assert.Empty(read.Findings.Select(f => f.Message));
        return read.Value!;
    }

    /// <summary>The small project with one line replaced, by its number.</summary>
    public static string With(int line, string text)
    {
        string[] lines = Small.Split('\n');
        lines[line - 1] = text;
        return string.Join('\n', lines);
    }
}
