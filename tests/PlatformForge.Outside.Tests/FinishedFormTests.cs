using System.Collections.Concurrent;
using System.Globalization;
using System.Text.RegularExpressions;
using PlatformForge.Exports.Files;
using PlatformForge.Exports.Stl;
using PlatformForge.Geometry;
using PlatformForge.Projects;
using PlatformForge.Projects.Runs;
using PlatformForge.Projects.Watches;
using PlatformForge.Sections.Forms;

namespace PlatformForge.Outside.Tests;

/// <summary>
/// Banks, retaining walls, skew ends and trestles of presets/finished, as programs of others have them: the STL of every piece is sound, the walking
/// surface is in the
/// first layer, plastic is what the volume says, a slicer that may set supports sets none under walls and trestles, and a trestle's posts are closed lines in
/// its path.
/// </summary>
public sealed class FinishedFormTests : IDisposable
{
    private const double LeastHeld = 0.99, FilamentShare = 0.04;

    private static readonly ConcurrentDictionary<string, Dossier> Once = [];

    private readonly string folder = Directory.CreateTempSubdirectory("platformforge-forms-").FullName;

    public static TheoryData<string> Samples => ["ottermoss", "cindlemoor", "wrenlow", "ollingshaw", "marrowby-stone"];

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Theory]
    [MemberData(nameof(Samples))]
    public void Every_piece_is_sound_to_a_mesh_checker_and_to_a_slicer(string name)
    {
        string[] files = [.. Pieces(Designed(name)).Select(p => Write(p.Name, p.Mesh))];
        var read = Written.Parse(Tool.Node("stl-strict.mjs", files)).ToDictionary(r => r.Text("file"));
        Assert.All(files, file =>
        {
            Assert.Equal((0, 0, 0), (read[file].Number("openEdges"), read[file].Number("degenerate"), read[file].Number("slantedNormals")));
            var checker = Tool.Run("admesh", file);
            Assert.Equal(0, checker.Exit);
            foreach (string zero in new[] { "Total disconnected facets", "Edges fixed", "Facets removed", "Facets added", "Facets reversed",
                "Degenerate facets", "Normals fixed" })
            {
                Assert.Matches(Regex.Escape(zero) + @"\s*:\s*0\b", checker.Out);
            }

            string told = string.Join('\n', SlicerInfo.Of(file));
            Assert.Matches(@"(?m)^manifold = yes\s*$", told);
            Assert.Matches(@"(?m)^number_of_parts =\s*1\s*$", told);
            Assert.Equal(read[file].Number("volume"), Figure(told, @"^volume\s*=\s*(\S+)"), 2e-4 * read[file].Number("volume"));
        });
    }

    /// <summary>Of each platform its last section, most of them ramps on their slopes.</summary>
    [Theory]
    [MemberData(nameof(Samples))]
    public void The_first_layer_holds_the_walking_surface(string name)
    {
        var design = Designed(name);
        Assert.All(design.Platforms, platform =>
        {
            var section = platform.Sections.Sections[^1];
            Assert.Equal(PrintPose.DeckDown, section.Pose);
            double held = FirstLayer.Held(platform.Plan, section, Read(name).Sections.Joint);
            Assert.True(held >= LeastHeld, FormattableString.Invariant($"{section.Name}: {held:P2}"));
        });
    }

    /// <summary>Sliced with supports allowed where a face lies flatter than 44 degrees, bridges left to the printer: the last section of each
    /// platform, or a print of its own.</summary>
    [Theory]
    [InlineData("ottermoss", "3 of 3", 250.0)] // at the joint's bores and under the kerb's rebate, none under the bank: 218, and 1,488 were its slope 1 in 1
    [InlineData("cindlemoor", "retaining wall", 1.0)]
    [InlineData("ollingshaw", "3 of 3", 2.0)]
    public void Plastic_is_what_the_volume_says_and_walls_and_trestles_want_no_supports(string name, string piece, double? supports)
    {
        var mesh = Pieces(Designed(name)).First(p => p.Name.Contains(piece, StringComparison.Ordinal)).Mesh;
        string[] allowed = supports is null ? [] : ["--support-material", "--support-material-threshold", "44", "--support-material-buildplate-only"];
        string[] path = Slice(Write(piece, mesh),
            ["--fill-density", "100%", "--fill-pattern", "rectilinear", "--perimeters", "3", "--no-thick-bridges", .. allowed]);
        double volume = mesh.Volume(), used = 1000 * Figure(string.Join('\n', path.Where(l => l.StartsWith("; filament used [cm3]",
            StringComparison.Ordinal))), @"=\s*(\S+)");
        Assert.Equal(volume, used, FilamentShare * volume);
        double laid = Laid(path, "Support material");
        Assert.True(laid <= (supports ?? 0), FormattableString.Invariant($"{laid:0.0} mm of filament in supports"));
    }

    /// <summary>In the middle of its posts, clear of caps and braces, a trestle's section is its posts and nothing else.</summary>
    [Fact]
    public void A_slicers_path_of_a_trestle_has_its_posts_as_closed_lines()
    {
        var design = Designed("wrenlow");
        var platform = Assert.Single(design.Platforms);
        var section = platform.Sections.Sections[1];
        int bents = platform.Sections.Plan.Trestle!.Bents.Count(b => b.Middle > section.From && b.Middle < section.To);
        string[] path = Slice(Write("posts", section.PrintMesh()), "--fill-density", "0%", "--perimeters", "1", "--top-solid-layers", "0");
        var (loops, top) = OuterLoops(path);
        Assert.True(bents > 5 && loops[top].Count % bents == 0, $"{bents} bents, {loops[top].Count} lines");
        Assert.InRange(loops[top].Count / bents, 2, 4);
        Assert.All(loops[top], gap => Assert.InRange(gap, 0, 0.5));
    }

    // Of each layer its outer lines, each by the distance from its end to its start, mm; and the last layer but two.
    private static (Dictionary<double, List<double>> Loops, double Top) OuterLoops(string[] path)
    {
        var loops = new Dictionary<double, List<double>>();
        double z = 0;
        bool outer = false, inLine = false;
        Point2 at = default, start = default;
        foreach (string line in path)
        {
            if (line.StartsWith(";Z:", StringComparison.Ordinal))
            {
                z = double.Parse(line[3..], CultureInfo.InvariantCulture);
            }

            if (line.StartsWith(";TYPE:", StringComparison.Ordinal))
            {
                outer = line.Contains("xternal perimeter", StringComparison.Ordinal);
            }

            if (!line.StartsWith("G1 ", StringComparison.Ordinal))
            {
                continue;
            }

            var words = line.Split(';')[0].Split(' ', StringSplitOptions.RemoveEmptyEntries).Skip(1).ToDictionary(w => w[0],
                w => double.Parse(w[1..], CultureInfo.InvariantCulture));
            Point2 to = new(words.GetValueOrDefault('X', at.X), words.GetValueOrDefault('Y', at.Y));
            bool lays = words.GetValueOrDefault('E') > 0 && to != at;
            if (lays && outer && !inLine)
            {
                (inLine, start) = (true, at);
            }
            else if (!lays && inLine && to != at)
            {
                (loops.TryGetValue(z, out var all) ? all : loops[z] = []).Add((at - start).Length);
                inLine = false;
            }

            at = to;
        }

        return (loops, loops.Keys.Order().ElementAt(loops.Count - 3));
    }

    // Filament pressed out under a heading of the path, mm.
    private static double Laid(string[] path, string heading)
    {
        double laid = 0;
        bool counts = false;
        foreach (string line in path)
        {
            counts = line.StartsWith(";TYPE:", StringComparison.Ordinal) ? line.Contains(heading, StringComparison.Ordinal) : counts;
            var pressed = counts ? Regex.Match(line, @"^G1 .*X.* E(?<pressed>[.\d]+)", RegexOptions.ExplicitCapture, TimeSpan.FromSeconds(5)) : Match.Empty;
            laid += pressed.Success ? double.Parse(pressed.Groups["pressed"].Value, CultureInfo.InvariantCulture) : 0;
        }

        return laid;
    }

    private string[] Slice(string file, params string[] more)
    {
        var said = Tool.Run("prusa-slicer",
            [
                "--export-gcode", "--output", file + ".gcode", "--bed-shape", "0x0,500x0,500x500,0x500", "--center", "250,250", "--layer-height",
                    "0.2", "--first-layer-height", "0.2",
                "--nozzle-diameter", "0.4", "--skirts", "0", "--brim-width", "0", "--use-relative-e-distances", "--layer-gcode", "G92 E0",
                    "--gcode-comments", .. more, file,
            ]);
        Assert.True(File.Exists(file + ".gcode"), said.All);
        return File.ReadAllLines(file + ".gcode");
    }

    private string Write(string name, Mesh mesh)
    {
        string file = Path.Combine(folder, name.Replace(' ', '-').Replace(',', '-') + ".stl");
        File.WriteAllBytes(file, StlWriter.ToBytes(mesh, name));
        return file;
    }

    private static IEnumerable<(string Name, Mesh Mesh)> Pieces(Dossier design) => design.Platforms
        .SelectMany(p => p.Sections.Sections.Select(s => (s.Name, s.PrintMesh()))
        .Concat(p.Sections.Lines.Pieces.Select(l => (l.Name(p.Sections.Sections.Single(s => s.Number == l.Section)), l.WrittenMesh()))));

    private static Dossier Designed(string name) => Once.GetOrAdd(name, n =>
    {
        var design = DesignRun.Design(Read(n), RunWatch.None);
        Assert.True(design.Value is not null, string.Join("\n", design.Findings.Select(f => f.Code + " " + f.Message)));
        return design.Value;
    });

    private static ProjectSpec Read(string name) => ProjectReader.ReadFile(Path.Combine(Tree.Root, "presets", "finished", name + ".toml")).Value!;

    private static double Figure(string text, string pattern)
    {
        var match = Regex.Match(text, pattern, RegexOptions.Multiline, TimeSpan.FromSeconds(5));
        Assert.True(match.Success, text);
        return double.Parse(match.Groups[1].Value, CultureInfo.InvariantCulture);
    }
}
