using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Files;
using PlatformForge.Exports.Paper;
using PlatformForge.Exports.Paper.FullSize;
using PlatformForge.Exports.Pdf;
using PlatformForge.Geometry;
using PlatformForge.Track;
using Xunit;

namespace PlatformForge.Tests.Exports;

public class PaperTests
{
    private const double PointsPerMm = 72 / 25.4; // of an inch, by definition

    private static readonly Dossier Dossier = HandDossier.Pendlewick();

    // Sides by ISO 216 and, for the others, in inches by ANSI/ASME Y14.1 and common office use.
    [Theory]
    [InlineData("A4", 210, 297)]
    [InlineData("A3", 297, 420)]
    [InlineData("Letter", 8.5 * 25.4, 11 * 25.4)]
    [InlineData("Legal", 8.5 * 25.4, 14 * 25.4)]
    [InlineData("Tabloid", 11 * 25.4, 17 * 25.4)]
    public void Page_boxes_are_those_of_the_paper_within_a_hundredth_of_a_millimetre(string name, double shorter, double longer)
    {
        foreach (var bars in (Point2?[])[null, new(99.3, 100.9)])
        {
            string text = Encoding.Latin1.GetString(Pdf(new() { SizeName = name, Size = PaperSizes.Of(name)!.Value, MeasuredBars = bars }));
            var boxes = Regex.Matches(text, @"/(Media|Crop|Trim)Box \[0 0 (\S+) (\S+)\]");
            Assert.True(boxes.Count >= 6);
            Assert.All(boxes, box =>
            {
                double[] sides = [.. new[] { 2, 3 }.Select(g => double.Parse(box.Groups[g].Value, CultureInfo.InvariantCulture) / PointsPerMm).Order()];
                Assert.InRange(sides[0], shorter - 0.01, shorter + 0.01);
                Assert.InRange(sides[1], longer - 0.01, longer + 0.01);
            });
        }
    }

    [Theory]
    [InlineData("de-DE")]
    [InlineData("ar-SA")]
    public void Bytes_repeat_whatever_the_culture(string culture)
    {
        byte[] once = Pdf(new()), again = [];
        var worker = new Thread(() => again = Pdf(new())) { CurrentCulture = CultureInfo.GetCultureInfo(culture) };
        worker.Start();
        worker.Join();
        Assert.Equal(once, again);
    }

    [Theory]
    [InlineData(PaperLayout.Track, Side.Right)]
    [InlineData(PaperLayout.Track, Side.Left)]
    [InlineData(PaperLayout.Page, Side.Right)]
    public void Crosses_of_a_join_are_the_same_places_of_the_layout_on_both_of_its_sheets(PaperLayout layout, Side side)
    {
        var set = Made(HandDossier.Pendlewick(side), new() { Layout = layout });
        var places = new List<(string Sheet, Point2 At)>();
        foreach (var (sheet, place) in set.Sheets.Zip(set.Places))
        {
            places.AddRange(sheet.Items.OfType<SheetCircle>().Where(c => c.Radius == 2).Select(c => (sheet.Title, Layout(place, c.Middle))));
        }

        foreach (string join in set.Places.SelectMany(p => p.Joins).Distinct())
        {
            var two = set.Places.Where(p => p.Joins.Contains(join)).ToArray();
            Assert.Equal(2, two.Length);
            Assert.True(Shared(set, two[0].Number, two[1].Number) >= 2, join);
        }

        // No cross stands alone.
        Assert.All(places, p => Assert.Contains(places, q => q.Sheet != p.Sheet && (q.At - p.At).Length < 0.001));
    }

    [Theory]
    [InlineData(PaperLayout.Track)]
    [InlineData(PaperLayout.Page)]
    public void The_coping_edge_is_drawn_where_the_plan_has_it_and_from_end_to_end(PaperLayout layout)
    {
        var set = Made(Dossier, new() { Layout = layout });
        var plan = Dossier.Platforms[0].Plan;
        Point2[] edge = [.. plan.Stations.Select(s => plan.ToLayout(s, plan.CopingFront.At(s)))];
        var pen = PaperLooks.Of(FullSizeLine.CopingEdge).Pen!;
        var drawn = set.Sheets.Zip(set.Places).SelectMany(s => s.First.Items.OfType<SheetPath>().Where(p => p.Pen == pen).SelectMany(p => p.Points)
            .Select(p => Layout(s.Second, p))).ToArray();
        Assert.All(edge, p => Assert.Contains(drawn, q => (p - q).Length < 1e-6));
    }

    [Fact]
    public void A_corrected_print_comes_out_true_on_the_printer_that_was_measured()
    {
        // A printer that makes 99.2 of 100 across and 100.6 up.
        Point2 printer = new(0.992, 1.006);
        PaperSpec paper = new() { MeasuredBars = new(99.2, 100.6), Turn = PaperTurn.Lying };
        var set = Made(Dossier, paper);
        foreach (var sheet in set.Sheets.Append(set.Key))
        {
            Assert.Equal(297, sheet.PaperWidth, 9);
            Assert.Equal(210, sheet.PaperHeight, 9);
            var bars = sheet.Items.OfType<SheetPath>().Where(p => p.Points.Count == 2 && Math.Abs((p.Points[1] - p.Points[0]).Length - 101.6) < 1e-9).ToArray();
            Assert.Equal(2, bars.Length);
            Assert.All(bars, bar =>
            {
                var long_ = bar.Points[1] - bar.Points[0];
                Assert.Equal(101.6, new Point2(long_.X * sheet.Stretch.X * printer.X, long_.Y * sheet.Stretch.Y * printer.Y).Length, 6);
            });
        }

        Assert.Contains("99.2", string.Join(' ', set.Sheets[0].Items.OfType<SheetText>().Select(t => t.Text)), StringComparison.Ordinal);
    }

    [Fact]
    public void A_corrected_print_lies_as_the_one_that_was_measured()
    {
        foreach (string size in (string[])["A4", "A3", "Letter"])
        {
            PaperSpec paper = new() { SizeName = size, Size = PaperSizes.Of(size)!.Value };
            var set = Made(Dossier, paper);
            Assert.All((Point2[])[new(91, 109), new(109, 91)], bars =>
                Assert.Equal(set.Key.PaperWidth, Made(Dossier, paper with { MeasuredBars = bars }).Key.PaperWidth, 6));
        }
    }

    [Fact]
    public void Nothing_is_drawn_outside_a_sheets_window_but_bars_and_words()
    {
        var set = Made(Dossier, new());
        Assert.All(set.Sheets, sheet => Assert.All(sheet.Items.OfType<SheetPath>().SelectMany(p => p.Points)
            .Concat(sheet.Items.OfType<SheetText>().SelectMany(t => t.Box())), p =>
            Assert.True(p.X > 7.9 && p.Y > 7.9 && p.X < sheet.Width - 7.9 && p.Y < sheet.Height - 7.9, $"{sheet.Title}: {p}")));
    }

    [Fact]
    public void Words_on_a_sheet_keep_off_one_another()
    {
        var set = Made(Dossier, new());
        Assert.All(set.Sheets, sheet =>
        {
            var boxes = sheet.Items.OfType<SheetText>().Select(t => (t.Text, Box: t.Box())).ToArray();
            for (int i = 0; i < boxes.Length; i++)
            {
                Assert.AllOrNone(boxes.Skip(i + 1), other => Assert.False(Apart(boxes[i].Box, other.Box) < 0, $"'{boxes[i].Text}' runs into '{other.Text}'"));
            }
        });
    }

    [Theory]
    [InlineData(60, 8, 12, "PF7440")]
    [InlineData(210, 60, 12, "PF7440")]
    [InlineData(210, 8, 150, "PF7442")]
    public void Paper_that_will_not_do_is_refused_with_a_figure_that_does(double shorter, double margin, double overlap, string code)
    {
        PaperSpec paper = new() { SizeName = "", Size = new(shorter, Math.Max(shorter, 297)), Margin = margin, Overlap = overlap };
        var fault = Assert.Single(PaperSet.Objections(paper));
        Assert.Equal(code, fault.Code);
        var cure = Assert.IsType<PlatformForge.Units.Cure>(fault.Cure);
        double Value() => double.Parse(cure.Value, CultureInfo.InvariantCulture);
        var mended = fault.Key switch
        {
            "paper.margin" => paper with { Margin = Value() },
            "paper.overlap" => paper with { Overlap = Value() },
            _ => paper with { Size = new(210, 297) },
        };
        Assert.Empty(PaperSet.Objections(mended));
        Assert.NotEmpty(Made(Dossier, mended).Sheets);
    }

    [Theory]
    [InlineData(3.94, 100, "inches")]
    [InlineData(100, 9.98, "cm")]
    [InlineData(double.NaN, 100, "100 mm")]
    [InlineData(100, 0, "100 mm")]
    [InlineData(140, 100, "fitted")]
    public void What_is_no_measurement_of_a_bar_is_refused(double across, double up, string says)
    {
        var fault = Assert.Single(PaperSet.Objections(new() { MeasuredBars = new(across, up) }));
        Assert.Equal("PF7441", fault.Code);
        Assert.Contains(says, fault.Message + fault.Remedy, StringComparison.Ordinal);
    }

    /// <summary>Lines cut at a window: what is kept lies in it, lies on the line, and is as long as a count of fine steps says.</summary>
    [Property(MaxTest = 200)]
    public Property A_line_is_cut_at_the_window_and_nowhere_else() => Prop.ForAll(
        Gen.Choose(-150, 150).Select(v => v / 10.0).Two().Select(p => new Point2(p.Item1, p.Item2)).ListOf(6).ToArbitrary(),
        points =>
        {
            var window = new SheetWindow(-8, -5, 7, 6);
            var pieces = WindowCutter.Lines([.. points], window).ToArray();
            double kept = pieces.Sum(p => p.Zip(p.Skip(1)).Sum(q => (q.Second - q.First).Length)), counted = 0;
            const int Steps = 4000;
            foreach (var (a, b) in points.Zip(points.Skip(1)))
            {
                counted += Enumerable.Range(0, Steps).Count(i => window.Holds(a + ((b - a) * ((i + 0.5) / Steps)))) * (b - a).Length / Steps;
            }

            return pieces.SelectMany(p => p).All(p => window.Holds(p, -1e-9)) && Math.Abs(kept - counted) < 0.1;
        });

    private static double Apart(IReadOnlyList<Point2> a, IReadOnlyList<Point2> b)
    {
        // Greatest distance by which a side of one parts the two; below nil they meet.
        double best = double.NegativeInfinity;
        foreach (var (ring, other) in new[] { (a, b), (b, a) })
        {
            double turn = Math.Sign(Point2.Cross(ring[1] - ring[0], ring[2] - ring[1]));
            for (int i = 0; i < ring.Count; i++)
            {
                var side = ring[(i + 1) % ring.Count] - ring[i];
                best = Math.Max(best, other.Min(p => -turn * Point2.Cross(side, p - ring[i]) / side.Length));
            }
        }

        return best;
    }

    [Fact]
    public void Both_ends_of_the_platform_are_told_by_their_chainage()
    {
        string[] said = [.. Made(Dossier, new()).Sheets.SelectMany(s => s.Items.OfType<SheetText>()).Select(t => t.Text)];
        var face = Dossier.Platforms[0].Plan.Spec.Face;
        Assert.All((double[])[face.From, face.To], end => Assert.Contains(string.Create(CultureInfo.InvariantCulture, $"end of the platform at {end:0.0}"),
            said));
    }

    private static PlatformPaper Made(Dossier dossier, PaperSpec paper)
    {
        var made = PaperSet.Of(dossier, dossier.Platforms[0], paper);
        Assert.Empty(made.Findings);
        return made.Value!;
    }

    private static byte[] Pdf(PaperSpec paper)
    {
        var set = Made(HandDossier.Pendlewick(), paper);
        return PdfWriter.ToBytes(new("Pendlewick", "PlatformForge",
            [new(set.Platform, set.Platform, [set.Key, .. set.Sheets]) { FirstLabel = "key" }])
        { IsTrueSize = true });
    }

    private static Point2 Layout(SheetPlace place, Point2 on) => place.Corner + (place.Along * on.X) + (place.Along.Left * -on.Y);

    private static int Shared(PlatformPaper set, int one, int other)
    {
        Point2[] Crosses(int number) => [.. set.Sheets[number - 1].Items.OfType<SheetCircle>().Where(c => c.Radius == 2)
            .Select(c => Layout(set.Places[number - 1], c.Middle))];
        return Crosses(one).Count(p => Crosses(other).Any(q => (p - q).Length < 0.001));
    }
}
