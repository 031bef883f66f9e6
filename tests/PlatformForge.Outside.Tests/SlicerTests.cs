using System.Globalization;
using System.IO.Compression;
using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace PlatformForge.Outside.Tests;

/// <summary>A slicer as an independent reader. Its exit code says nothing about meshes: what it prints does.</summary>
[Collection("samples sliced")]
public class SlicerTests(WrittenSamples samples)
{
    // With three lines a wall and full infill everything but gaps narrower than a line becomes plastic; lines squashed into corners
    // and the rounding of thin walls to whole lines move the sum by a per cent or two.
    private const double FilamentShare = 0.04;

    [Fact]
    public void A_slicer_finds_every_section_manifold_and_of_one_part()
    {
        Assert.All(samples.Files(".stl"), file =>
        {
            string told = AssertManifold(file);
            Assert.Equal(1, Figure(told, "number_of_parts"));
            double volume = WrittenSamples.ReadStl(file).Number("volume");
            Assert.Equal(volume, Figure(told, "volume"), 2e-4 * volume);
        });
    }

    [Fact]
    public void A_slicer_finds_every_3MF_manifold() => Assert.All(samples.Files(".3mf"), file => AssertManifold(file));

    /// <summary>What a slicer makes of colours, as docs/printing-in-colour.md says: bodies by name, each an object that can be given an extruder; colours of
    /// triangles are dropped.</summary>
    [Fact]
    public void A_slicer_reads_each_body_by_its_name_and_gives_it_back_without_colours()
    {
        int bodies = 0;
        foreach (string file in samples.Files("-plate-01.3mf")
            .Where(f => ThreeMfTests.Manifest(Path.GetDirectoryName(Path.GetDirectoryName(f))!).TryGetProperty("lines", out _)))
        {
            string back = Path.Combine(Path.GetTempPath(), $"platformforge-{Guid.NewGuid():N}.3mf");
            try
            {
                var said = Tool.Run("prusa-slicer", "--export-3mf", "--output", back, file);
                Assert.True(File.Exists(back), said.All);
                var (written, read) = (Parts(file), Parts(back));
                string[] names = [.. written.Where(p => p.Triangles > 0).Select(p => p.Name)];
                // A body that is alone on its plate is called as the file is.
                Assert.Equal(names.Length == 1 ? [Path.GetFileNameWithoutExtension(file)] : names.Order(), Objects(back).Order());
                Assert.Equal(written.Sum(p => p.Triangles), read.Sum(p => p.Triangles));
                Assert.True(written.Sum(p => p.Coloured) > 0 && read.Sum(p => p.Coloured) == 0);
                bodies += names.Count(n => n.Contains("line", StringComparison.Ordinal));
            }
            finally
            {
                File.Delete(back);
            }
        }

        Assert.True(bodies > 1, $"{bodies}");
    }

    // Names of bodies, their triangles, and how many of these have a material of their own.
    private static List<(string Name, int Triangles, int Coloured)> Parts(string file)
    {
        using var zip = ZipFile.OpenRead(file);
        using var stream = zip.GetEntry("3D/3dmodel.model")!.Open();
        return [.. XDocument.Load(stream).Root!.Descendants().Where(e => e.Name.LocalName == "object").Select(o => (
            o.Attribute("name")?.Value ?? "",
            o.Descendants().Count(t => t.Name.LocalName == "triangle"),
            o.Descendants().Count(t => t.Name.LocalName == "triangle" && t.Attributes().Any(a => !a.Name.LocalName.StartsWith('v')))))];
    }

    // What the slicer's own list calls its objects.
    private static List<string> Objects(string file)
    {
        using var zip = ZipFile.OpenRead(file);
        using var stream = zip.Entries.Single(e => e.FullName.EndsWith("_model.config", StringComparison.Ordinal)).Open();
        return [.. XDocument.Load(stream).Root!.Elements("object")
            .Select(o => o.Elements("metadata").Single(m => m.Attribute("key")?.Value == "name").Attribute("value")!.Value)];
    }

    [Fact]
    public void Slicing_a_section_takes_the_filament_that_its_volume_is()
    {
        // Of every second sample a section, the first of one and the last of the next: ramps of either end.
        var chosen = samples.Different.Where((_, i) => i % 2 == 0).Select((name, i) =>
            samples.Files(".stl").Where(f => f.StartsWith(Path.Combine(samples.Folder, name) + Path.DirectorySeparatorChar, StringComparison.Ordinal))
            .ToArray()[i % 2 == 0 ? 0 : ^1]).ToArray();
        Assert.All(chosen, file =>
        {
            string gcode = Path.Combine(Path.GetTempPath(), $"platformforge-{Guid.NewGuid():N}.gcode");
            try
            {
                var said = Tool.Run(
                    "prusa-slicer", "--export-gcode", "--output", gcode, "--bed-shape", "0x0,400x0,400x400,0x400", "--center", "200,200", "--layer-height",
                    "0.2",
                    "--nozzle-diameter", "0.4", "--fill-density", "100%", "--fill-pattern", "rectilinear", "--perimeters", "3", "--skirts", "0",
                    "--brim-width", "0",
                    "--no-thick-bridges", file); // threads that span a gap are round, so thicker than the layer that they stand for
                Assert.True(File.Exists(gcode), said.All);
                double used = Filament(gcode);
                double volume = WrittenSamples.ReadStl(file).Number("volume");
                Assert.Equal(volume, used, FilamentShare * volume);
            }
            finally
            {
                File.Delete(gcode);
            }
        });
    }

    private static double Filament(string gcode)
    {
        string line = File.ReadLines(gcode).First(l => l.StartsWith("; filament used [cm3]", StringComparison.Ordinal));
        return 1000 * double.Parse(line.Split('=')[1], CultureInfo.InvariantCulture);
    }

    // What the slicer tells of a file, which has to be that it is sound as it is.
    private static string AssertManifold(string file)
    {
        string[] lines = SlicerInfo.Of(file);
        var verdicts = lines.Where(l => l.StartsWith("manifold", StringComparison.Ordinal)).ToArray();
        Assert.True(verdicts.Length > 0, file);
        Assert.All(verdicts, l => Assert.Equal("manifold = yes", l));
        foreach (string repair in new[] { "open_edges", "edges_fixed", "degenerate_facets", "facets_removed", "facets_reversed", "backwards_edges" })
        {
            // A line of a repair is printed only when there was one.
            Assert.DoesNotContain(lines, l => l.StartsWith(repair, StringComparison.Ordinal));
        }

        return string.Join('\n', lines);
    }

    private static double Figure(string told, string name)
    {
        var match = Regex.Match(told, $@"^{name}\s*=\s*(?<figure>\S+)", RegexOptions.Multiline | RegexOptions.ExplicitCapture, TimeSpan.FromSeconds(5));
        Assert.True(match.Success, told);
        return double.Parse(match.Groups["figure"].Value, CultureInfo.InvariantCulture);
    }
}
