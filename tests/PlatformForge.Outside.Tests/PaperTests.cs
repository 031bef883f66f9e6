using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using PlatformForge.Geometry;

namespace PlatformForge.Outside.Tests;

/// <summary>Full-size sheets as others read them: poppler's tools for the pages, their words, lines and dots, and the written solids for what the lines should
/// be.</summary>
public sealed class PaperTests : IDisposable
{
    private const double PointsPerMm = 72 / 25.4;
    private const int Dpi = 600;

    private readonly string folder = Directory.CreateTempSubdirectory("platformforge-paper-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Theory]
    [InlineData("A4", 297, 210)]
    [InlineData("A3", 420, 297)]
    [InlineData("Letter", 279.4, 215.9)]
    public void A_page_is_as_large_as_its_paper_and_a_bar_of_100_mm_is_as_long_in_dots(string size, double longer, double shorter)
    {
        string pdf = Paper("pendlewick", "up-side", "--size", size);
        var info = Tool.Run("pdfinfo", "-box", "-l", "99", pdf).Lines;
        var boxes = info.Where(l => l.Contains("MediaBox", StringComparison.Ordinal)).ToArray();
        Assert.True(boxes.Length > 2);
        Assert.All(boxes, line =>
        {
            double[] sides = [.. Regex.Matches(line, @"\d+\.\d+").TakeLast(2).Select(m => double.Parse(m.Value, CultureInfo.InvariantCulture) / PointsPerMm)
                .OrderDescending()];
            Assert.InRange(sides[0], longer - 0.01, longer + 0.01);
            Assert.InRange(sides[1], shorter - 0.01, shorter + 0.01);
        });
        AssertBars(pdf);
    }

    [Fact]
    public void A_corrected_bar_is_longer_by_what_the_printer_makes_it_shorter()
    {
        string pdf = Paper("pendlewick", "up-side", "--bars", "99.2,100.5");
        AssertBars(pdf, 100 / 99.2, 100 / 100.5);
    }

    [Fact]
    public void Words_and_outline_are_found_by_a_reader()
    {
        string pdf = Paper("quillhaven", null);
        string words = Tool.Run("pdftotext", pdf, "-").Out;
        Assert.Contains("measure between the ticks", words, StringComparison.Ordinal);
        Assert.Contains("Print at 100 %", words, StringComparison.Ordinal);
        Assert.Contains("For model railways only", words, StringComparison.Ordinal);
        Assert.Contains("section 1 of", words, StringComparison.Ordinal);
        var check = Tool.Run("pdfinfo", pdf);
        Assert.True(check.Exit == 0 && check.Error.Length == 0, check.All);
    }

    /// <summary>
    /// The coping edge of the PDF, as poppler reads its vectors, put on the layout by the crosses' printed figures alone, against the outline of the sections'
    /// own files where they lie on the layout.
    /// </summary>
    [Fact]
    public void A_drawn_coping_edge_lies_on_that_of_the_printed_sections()
    {
        string built = Path.Combine(folder, "built");
        var said = WrittenSamples.CommandLine("build", WrittenSamples.SampleFile("pendlewick"), "--output", built, "--sets", "prints,paper", "--quiet");
        Assert.True(said.Exit == 0, said.All);
        var solids = Solids(built);
        var list = Written.Parse(File.ReadAllText(Path.Combine(built, "paper", "up-side.json")));
        int looked = 0;
        foreach (var sheet in list.GetProperty("sheets").EnumerateArray())
        {
            int page = sheet.GetProperty("number").GetInt32() + 1;
            Point2 corner = new(sheet.Number("corner_x"), sheet.Number("corner_y")), along = new(sheet.Number("along_x"), sheet.Number("along_y"));
            var edge = Lines(Path.Combine(built, "paper", "up-side.pdf"), page).Where(l => l.Width is > 0.29 and < 0.31 && l.Points.Count > 12).ToArray();
            Assert.NotEmpty(edge);
            foreach (var p in edge.SelectMany(l => l.Points))
            {
                var at = corner + (along * p.X) + (along.Left * -p.Y);
                // At a cut the line runs over the gap that both sections are trimmed by (joint.end_trim, 0.1 mm each): there it lies between two of them.
                double[] off = [.. solids.Select(s => s.Distance(at)).Order()];
                bool isCut = off[0] + off[1] < 0.25;
                Assert.True(off[0] < 0.05 || isCut, $"page {page}: {at} lies {off[0]:0.000} mm off");
                looked += isCut ? 0 : 1;
            }
        }

        Assert.True(looked > 100);
    }

    [Fact]
    public void All_drawings_are_one_document_with_an_outline_and_labels()
    {
        string built = Path.Combine(folder, "drawn");
        var said = WrittenSamples.CommandLine("build", WrittenSamples.SampleFile("quillhaven"), "--output", built, "--sets", "drawings", "--quiet");
        Assert.True(said.Exit == 0, said.All);
        string pdf = Path.Combine(built, "drawings", "all.pdf");
        int sheets = Directory.GetFiles(Path.Combine(built, "drawings"), "*.svg").Length;
        Assert.Contains(Tool.Run("pdfinfo", pdf).Lines, l => Regex.IsMatch(l, $@"^Pages:\s+{sheets}$"));
        var said2 = Tool.Run("pdftoppm", "-r", "40", "-png", pdf, Path.Combine(folder, "page"));
        Assert.True(said2.Exit == 0 && said2.Error.Length == 0, said2.All);
        Assert.All(Written.Parse(Tool.Node("read-png.mjs", Directory.GetFiles(folder, "page*.png"))), p => Assert.True(p.Number("shades") > 8, p.ToString()));
    }

    // Ticks at both ends of both bars, in dots.
    private void AssertBars(string pdf, double across = 1, double up = 1)
    {
        string png = Path.Combine(folder, "bars");
        Assert.Equal(0, Tool.Run("pdftoppm", "-r", $"{Dpi}", "-f", "2", "-l", "2", "-gray", "-singlefile", pdf, png).Exit);
        var (width, height, dots) = Pgm(png + ".pgm");
        double mm = Dpi / 25.4;
        var lines = Lines(pdf, 2);
        foreach (var (stretch, isAcross) in new[] { (across, true), (up, false) })
        {
            // The long line of the bar says where to look; its ticks are measured in dots beside it.
            var bar = lines.First(l => l.Points.Count == 2 && Math.Abs((l.Points[1] - l.Points[0]).Length - (101.6 * stretch)) < 0.05
                && (Math.Abs(l.Points[1].Y - l.Points[0].Y) < 0.01) == isAcross);
            var from = bar.Points[0];
            bool Dark(double along, double aside)
            {
                double x = isAcross ? from.X + along : from.X - aside, y = isAcross ? from.Y - aside : from.Y - along;
                int px = (int)Math.Floor(x * mm), py = (int)Math.Floor(y * mm);
                return px >= 0 && py >= 0 && px < width && py < height && dots[(py * width) + px] < 128;
            }

            double Tick(double near)
            {
                var dark = Enumerable.Range(-60, 121).Select(i => near + (i / 100.0)).Where(a => Dark(a, 2.6)).ToArray();
                Assert.NotEmpty(dark);
                return (dark.Min() + dark.Max()) / 2;
            }

            double length = Tick(100 * stretch) - Tick(0);
            Assert.InRange(length, (100 * stretch) - 0.1, (100 * stretch) + 0.1);
        }
    }

    private string Paper(string sample, string? name, params string[] options)
    {
        string to = Path.Combine(folder, "paper");
        var said = WrittenSamples.CommandLine(["paper", WrittenSamples.SampleFile(sample), "--output", to, "--quiet", .. options]);
        Assert.True(said.Exit == 0, said.All);
        return name is null ? Directory.GetFiles(Path.Combine(to, "paper"), "*.pdf").Order(StringComparer.Ordinal).First()
            : Path.Combine(to, "paper", name + ".pdf");
    }

    private sealed record DrawnLine(double Width, IReadOnlyList<Point2> Points);

    // A page's lines in mm from its top left corner, as poppler writes them down.
    private List<DrawnLine> Lines(string pdf, int page)
    {
        string svg = Path.Combine(folder, $"page-{Guid.NewGuid():N}.svg");
        Assert.Equal(0, Tool.Run("pdftocairo", "-svg", "-origpagesizes", "-noshrink", "-nocenter", "-f", $"{page}", "-l", $"{page}", pdf, svg).Exit);
        var lines = new List<DrawnLine>();
        foreach (var path in XDocument.Load(svg).Descendants().Where(e => e.Name.LocalName == "path"))
        {
            // Versions of the program write the look as attributes or as one style.
            string? Look(string name) =>
                (string?)path.Attribute(name) ?? (Regex.Match((string?)path.Attribute("style") ?? "", $@"(?:^|;){name}:([^;]*)") is { Success: true } found
                    ? found.Groups[1].Value : null);
            if (Look("stroke") is null or "none")
            {
                continue;
            }

            double[] m = [1, 0, 0, 1, 0, 0];
            if ((string?)path.Attribute("transform") is { } transform)
            {
                m = [.. Regex.Matches(transform, @"-?\d+(\.\d+)?(e-?\d+)?").Select(f => double.Parse(f.Value, CultureInfo.InvariantCulture))];
            }

            double[] numbers = [.. Regex.Matches((string)path.Attribute("d")!, @"-?\d+(\.\d+)?(e-?\d+)?")
                .Select(f => double.Parse(f.Value, CultureInfo.InvariantCulture))];
            if (((string)path.Attribute("d")!).Contains('C', StringComparison.Ordinal))
            {
                continue;
            }

            double scale = Math.Sqrt(Math.Abs((m[0] * m[3]) - (m[1] * m[2])));
            lines.Add(new(
                double.Parse(Look("stroke-width")!, CultureInfo.InvariantCulture) * scale / PointsPerMm,
                [.. Enumerable.Range(0, numbers.Length / 2).Select(i => new Point2(
                    ((m[0] * numbers[2 * i]) + (m[2] * numbers[(2 * i) + 1]) + m[4]) / PointsPerMm,
                    ((m[1] * numbers[2 * i]) + (m[3] * numbers[(2 * i) + 1]) + m[5]) / PointsPerMm))]));
        }

        return lines;
    }

    private static (int Width, int Height, byte[] Dots) Pgm(string file)
    {
        byte[] bytes = File.ReadAllBytes(file);
        var head = Regex.Match(System.Text.Encoding.Latin1.GetString(bytes, 0, 60), @"^P5\s+(\d+)\s+(\d+)\s+255\s");
        Assert.True(head.Success);
        return (int.Parse(head.Groups[1].Value, CultureInfo.InvariantCulture), int.Parse(head.Groups[2].Value, CultureInfo.InvariantCulture),
            bytes[head.Length..]);
    }

    // The written solids on the layout, as the shadow that each casts in plan.
    private static List<Shadow> Solids(string built)
    {
        var manifest = Written.Parse(File.ReadAllText(Path.Combine(built, "manifest.json")));
        return [.. manifest.GetProperty("sections").EnumerateArray().Select(s =>
        {
            var rows = s.GetProperty("to_layout").EnumerateArray().Select(r => r.EnumerateArray().Select(v => v.GetDouble()).ToArray()).ToArray();
            byte[] stl = File.ReadAllBytes(Path.Combine(built, s.Text("stl")));
            var triangles = new List<Point2[]>();
            for (int at = 84; at < stl.Length; at += 50)
            {
                triangles.Add([.. Enumerable.Range(0, 3).Select(k =>
                {
                    double X(int i) => BitConverter.ToSingle(stl, at + 12 + (12 * k) + (4 * i));
                    double Row(double[] r) => (r[0] * X(0)) + (r[1] * X(1)) + (r[2] * X(2)) + r[3];
                    return new Point2(Row(rows[0]), Row(rows[1]));
                })]);
            }

            return new Shadow(triangles);
        })];
    }

    /// <summary>A solid's shadow: the sides of its triangles that have nothing of it on one side.</summary>
    private sealed class Shadow
    {
        private const double Probe = 0.03; // mm beside a side
        private const double Cell = 4; // mm
        private readonly List<(Point2 A, Point2 B)> rim = [];
        private readonly Dictionary<(int X, int Y), List<Point2[]>> cells = [];

        public Shadow(List<Point2[]> triangles)
        {
            foreach (var t in triangles.Where(t => Math.Abs(Point2.Cross(t[1] - t[0], t[2] - t[0])) > 1e-6))
            {
                for (int x = CellOf(t.Min(p => p.X)); x <= CellOf(t.Max(p => p.X)); x++)
                {
                    for (int y = CellOf(t.Min(p => p.Y)); y <= CellOf(t.Max(p => p.Y)); y++)
                    {
                        (cells.TryGetValue((x, y), out var here) ? here : cells[(x, y)] = []).Add(t);
                    }
                }
            }

            foreach (var t in triangles)
            {
                for (int i = 0; i < 3; i++)
                {
                    Point2 a = t[i], b = t[(i + 1) % 3], d = b - a;
                    if (d.Length < 0.05)
                    {
                        continue;
                    }

                    var aside = d.Left * (Probe / d.Length);
                    var middle = (a + b) * 0.5;
                    if (Covers(middle + aside) != Covers(middle - aside))
                    {
                        rim.Add((a, b));
                    }
                }
            }
        }

        public double Distance(Point2 p) => rim.Min(s =>
        {
            var d = s.B - s.A;
            double t = Math.Clamp(Point2.Dot(p - s.A, d) / Point2.Dot(d, d), 0, 1);
            return (p - s.A - (d * t)).Length;
        });

        private static int CellOf(double mm) => (int)Math.Floor(mm / Cell);

        private bool Covers(Point2 p) => cells.TryGetValue((CellOf(p.X), CellOf(p.Y)), out var here) && here.Exists(t =>
        {
            double a = Point2.Cross(t[1] - t[0], p - t[0]), b = Point2.Cross(t[2] - t[1], p - t[1]), c = Point2.Cross(t[0] - t[2], p - t[2]);
            return (a >= 0 && b >= 0 && c >= 0) || (a <= 0 && b <= 0 && c <= 0);
        });
    }
}
