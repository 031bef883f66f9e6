using System.Globalization;
using System.IO.Compression;
using System.Text.Json;
using System.Xml.Linq;
using PlatformForge.Geometry;

namespace PlatformForge.Outside.Tests;

[Collection("samples")]
public class ThreeMfTests(WrittenSamples samples)
{
    // The loader keeps 32-bit floats.
    private const double Single = 1e-3;

    [Fact]
    public void A_loader_by_others_finds_on_the_plates_just_the_sections_of_the_manifest()
    {
        Assert.All(samples.Names, name =>
        {
            string folder = Path.Combine(samples.Folder, name);
            var sections = Manifest(folder).GetProperty("sections").EnumerateArray().ToArray();
            var lines = Manifest(folder).TryGetProperty("lines", out var listed) ? listed.EnumerateArray().ToArray() : [];
            string[] plates = [.. sections.Select(s => s.Text("plate")).Distinct()];
            JsonElement[] read = [.. plates.Select(p => WrittenSamples.Read3Mf(Path.Combine(folder, p)))];
            var solids = sections.Concat(lines).Select(s => WrittenSamples.ReadStl(Path.Combine(folder, s.Text("stl"))))
                .ToDictionary(r => Path.GetFileName(r.Text("file")));

            for (int plate = 0; plate < plates.Length; plate++)
            {
                var wanted = sections.Where(s => s.Text("plate") == plates[plate]).ToArray();
                var items = read[plate].GetProperty("items").EnumerateArray().ToArray();
                Assert.Equal(wanted.Length, items.Length);
                foreach (var section in wanted)
                {
                    // With it lie its inlaid lines, and nothing else.
                    var own = lines.Where(l => l.GetProperty("is_inlay").GetBoolean() && l.Text("platform") == section.Text("platform")
                        && l.Number("section") == section.Number("number"));
                    var bodies = own.Prepend(section).Select(b => solids[Path.GetFileName(b.Text("stl"))]).ToArray();
                    var item = Assert.Single(items, i => i.Text("name") == section.Text("name"));
                    Assert.Equal(bodies.Sum(b => b.Number("triangles")), item.Number("triangles"));
                    Assert.Equal(bodies.Sum(b => b.Number("volume")), item.Number("volume"), 1e-4 * bodies.Sum(b => b.Number("volume")));
                }
            }
        });
    }

    [Fact]
    public void Everything_on_a_plate_stands_on_the_bed_in_the_positive_octant()
    {
        foreach (var file in samples.Files(".3mf").Select(WrittenSamples.Read3Mf))
        {
            Assert.NotEmpty(file.GetProperty("items").EnumerateArray());
            Assert.All(file.GetProperty("items").EnumerateArray(), item =>
            {
                Assert.Equal(0, item.Numbers("low")[2], Single);
                Assert.All(item.Numbers("low"), x => Assert.True(x > -Single, file.Text("file")));
            });
        }
    }

    [Fact]
    public void Deck_coping_and_line_have_colours_of_their_own()
    {
        Assert.All(samples.Names, name =>
        {
            var read = Directory.EnumerateFiles(Path.Combine(samples.Folder, name), "*.3mf", SearchOption.AllDirectories).Select(WrittenSamples.Read3Mf);
            int colours = read.SelectMany(f => f.GetProperty("items").EnumerateArray()).SelectMany(i => i.GetProperty("colours").EnumerateArray())
                .Select(c => c.GetString()).Distinct().Count();
            Assert.InRange(colours, 3, 8);
        });
    }

    /// <summary>What a general loader would show of each colour, against the markup: triangles with their materials, of all bodies of a file.</summary>
    [Fact]
    public void A_loader_by_others_shows_each_triangle_in_its_own_colour()
    {
        int colours = 0;
        foreach (string file in samples.Different.Select(n => Directory.GetFiles(Path.Combine(samples.Folder, n, "3mf"), "*-all.3mf")
            .Order(StringComparer.Ordinal).First()))
        {
            var shown = WrittenSamples.Read3Mf(file).GetProperty("items").EnumerateArray().SelectMany(i => i.GetProperty("areas").EnumerateObject())
                .GroupBy(a => a.Name, a => a.Value.GetDouble()).ToDictionary(g => g.Key, g => g.Sum());
            var written = AreasByColour(file);
            Assert.Equal(written.Keys.Order(), shown.Keys.Order());
            Assert.All(written, w => Assert.Equal(w.Value, shown[w.Key], (1e-4 * w.Value) + 0.01));
            colours += written.Count;
        }

        Assert.True(colours > 25, $"{colours}");
    }

    private static Dictionary<string, double> AreasByColour(string file)
    {
        using var zip = ZipFile.OpenRead(file);
        using var stream = zip.GetEntry("3D/3dmodel.model")!.Open();
        var root = XDocument.Load(stream).Root!;
        string[] colours = [.. root.Descendants().Where(e => e.Name.LocalName == "base")
            .Select(e => e.Attribute("displaycolor")!.Value[1..].ToLowerInvariant())];
        var areas = new Dictionary<string, double>();
        foreach (var part in root.Descendants().Where(e => e.Name.LocalName == "object" && e.Descendants().Any(t => t.Name.LocalName == "triangle")))
        {
            double N(XElement e, string at) => double.Parse(e.Attribute(at)!.Value, CultureInfo.InvariantCulture);
            Point3[] points = [.. part.Descendants().Where(e => e.Name.LocalName == "vertex").Select(v => new Point3(N(v, "x"), N(v, "y"), N(v, "z")))];
            foreach (var t in part.Descendants().Where(e => e.Name.LocalName == "triangle"))
            {
                var (a, b, c) = (points[(int)N(t, "v1")], points[(int)N(t, "v2")], points[(int)N(t, "v3")]);
                string colour = colours[(int)(t.Attribute("p1") is null ? N(part, "pindex") : N(t, "p1"))];
                areas[colour] = areas.GetValueOrDefault(colour) + (Point3.Cross(b - a, c - a).Length / 2);
            }
        }

        return areas;
    }

    internal static JsonElement Manifest(string folder) => Written.Parse(File.ReadAllText(Path.Combine(folder, "manifest.json")));
}
