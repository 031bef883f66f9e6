using System.Globalization;
using System.Xml.Linq;

namespace PlatformForge.Outside.Tests;

/// <summary>
/// Cut lines as others read them: a DXF parser of others (dxf-parser, npm) finds in every sheet the lines that its SVG has, layer by layer, to a
/// hundredth of a mm.
/// </summary>
public sealed class StockTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("platformforge-sheet-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public void Sheets_are_read_by_others_and_hold_what_their_pictures_show()
    {
        var said = WrittenSamples.CommandLine("build", WrittenSamples.SampleFile("pendlewick"), "--output", folder, "--sets", "sheet", "--force", "--quiet");
        Assert.True(said.Exit == 0, said.Error);
        string[] files = Directory.GetFiles(Path.Combine(folder, "sheet"), "*.dxf");
        Assert.True(files.Length >= 4, string.Join(", ", files));
        foreach (string file in files)
        {
            var layers = Written.Parse(Tool.Node("read-dxf.mjs", file)).ToDictionary(l => l.Text("layer"), l => (X: l.Numbers("x").ToArray(), Y: l.Numbers("y").ToArray()));
            Assert.All(layers.Keys, name => Assert.Contains(name, (string[])["CUT", "SCORE", "MARK"]));
            var svg = XDocument.Load(Path.ChangeExtension(file, ".svg")).Root!;
            double height = double.Parse(svg.Attribute("height")!.Value.Replace("mm", "", StringComparison.Ordinal), CultureInfo.InvariantCulture);
            foreach (var (layer, colour) in (ReadOnlySpan<(string, string)>)[("CUT", "#FF0000"), ("SCORE", "#0000FF"), ("MARK", "#008000")])
            {
                double[] xs = [.. Points(svg, colour).Select(p => p.X)], ys = [.. Points(svg, colour).Select(p => height - p.Y)];
                Assert.Equal(layers.ContainsKey(layer), xs.Length > 0);
                if (xs.Length > 0)
                {
                    var (x, y) = layers[layer];
                    Assert.Equal(xs.Min(), x.Min(), 0.01);
                    Assert.Equal(xs.Max(), x.Max(), 0.01);
                    Assert.Equal(ys.Min(), y.Min(), 0.01);
                    Assert.Equal(ys.Max(), y.Max(), 0.01);
                }
            }
        }
    }

    private static IEnumerable<(double X, double Y)> Points(XElement svg, string colour) =>
        from path in svg.Descendants()
        where path.Name.LocalName == "path" && string.Equals((string?)path.Attribute("stroke"), colour, StringComparison.OrdinalIgnoreCase)
        from pair in ((string)path.Attribute("d")!).Split(['M', 'L', 'Z', ' '], StringSplitOptions.RemoveEmptyEntries)
        let two = pair.Split(',')
        where two.Length == 2
        select (double.Parse(two[0], CultureInfo.InvariantCulture), double.Parse(two[1], CultureInfo.InvariantCulture));
}
