using System.Globalization;
using System.Text;
using System.Xml.Linq;
using PlatformForge.Exports.Drawings.Gaps;
using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Drawings.Plans;
using PlatformForge.Exports.Drawings.Sections;
using PlatformForge.Geometry;
using PlatformForge.Track;
using Xunit;

namespace PlatformForge.Tests.Exports;

public class DrawingTests
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    public static TheoryData<string, Side> Drawings()
    {
        var data = new TheoryData<string, Side>();
        foreach (string name in (string[])["plan", "gaps", "cross-section", "plates", "isometric", "assembly"])
        {
            data.Add(name, Side.Left);
            data.Add(name, Side.Right);
        }

        return data;
    }

    [Theory]
    [MemberData(nameof(Drawings))]
    public void Words_stay_on_the_paper_and_off_one_another(string name, Side side)
    {
        var sheet = Draw(name, side);
        var texts = sheet.Items.OfType<SheetText>().ToArray();
        Assert.True(texts.Length > 10);
        foreach (var text in texts)
        {
            Assert.All(text.Box(), c => Assert.True(c.X >= 5 && c.Y >= 5 && c.X <= sheet.Width - 5 && c.Y <= sheet.Height - 5,
                $"'{text.Text}' leaves the paper"));
        }

        for (int i = 0; i < texts.Length; i++)
        {
            for (int j = i + 1; j < texts.Length; j++)
            {
                Assert.False(Overlap(texts[i].Box(), texts[j].Box()), $"'{texts[i].Text}' runs into '{texts[j].Text}'");
            }
        }
    }

    [Theory]
    [MemberData(nameof(Drawings))]
    public void Every_line_stays_on_the_paper(string name, Side side)
    {
        var sheet = Draw(name, side);
        Assert.All(sheet.Items.OfType<SheetPath>().SelectMany(p => p.Points),
            p => Assert.True(p.X >= 0 && p.Y >= 0 && p.X <= sheet.Width && p.Y <= sheet.Height, $"{p} is off the paper"));
    }

    [Theory]
    [MemberData(nameof(Drawings))]
    public void The_SVG_is_well_formed_true_to_size_and_needs_nothing_from_outside(string name, Side side)
    {
        var sheet = Draw(name, side);
        byte[] bytes = SvgWriter.ToBytes(sheet);
        var root = XDocument.Parse(Encoding.UTF8.GetString(bytes)).Root!;
        Assert.Equal(Svg + "svg", root.Name);
        Assert.Equal(sheet.Width, double.Parse(((string)root.Attribute("width")!).Replace("mm", "", StringComparison.Ordinal), CultureInfo.InvariantCulture),
            3);
        Assert.Equal(sheet.Title, (string?)root.Element(Svg + "title"));
        Assert.NotEmpty(((string?)root.Element(Svg + "desc"))!);
        Assert.DoesNotContain(root.Descendants(), e => e.Name.LocalName is "script" or "image" or "use" or "foreignObject");
        Assert.DoesNotContain(root.Descendants().Attributes(), a => a.Name.LocalName == "href" || a.Value.Contains("NaN", StringComparison.Ordinal));
        var patterns = root.Descendants(Svg + "pattern").Select(p => $"url(#{(string)p.Attribute("id")!})").ToHashSet();
        var hatched = root.Descendants().Attributes("fill").Where(f => f.Value.StartsWith("url", StringComparison.Ordinal)).ToArray();
        Assert.Equal(name is "gaps" or "cross-section", hatched.Length > 0);
        Assert.AllOrNone(hatched, f => Assert.Contains(f.Value, patterns));
    }

    [Fact]
    public void The_gap_plot_draws_reach_edge_and_limit_where_its_axes_say()
    {
        var frame = new PlotFrame(10, 20, 100, 50, 200, 700, 0, 5);
        Assert.Equal(new Point2(60, 45), frame.Of(450, 2.5));
        Assert.Equal(new Point2(10, 70), frame.Of(200, 0));
    }

    [Fact]
    public void The_plan_lies_level_at_a_round_scale()
    {
        var view = PlanView.Of([new(0, 0), new(30, 40)], new(3, 4), 10, 20, 25);
        Assert.Equal("1:2", view.Scale);
        var (a, b) = (view.Of(new(0, 0)), view.Of(new(30, 40)));
        Assert.Equal(25, b.X - a.X, 9);
        Assert.Equal(a.Y, b.Y, 9);
        Assert.Equal(-90, view.AngleOf(new(-4, 3)), 9); // left of the direction is up the sheet
    }

    /// <summary>A scale bar is a ruler: each of its figures stands where a length of so many mm ends on paper at the scale that the sheet states.</summary>
    [Theory]
    [InlineData(Side.Left)]
    [InlineData(Side.Right)]
    public void The_scale_bar_of_the_plan_measures_what_the_stated_scale_says(Side side)
    {
        var sheet = Draw("plan", side);
        var words = sheet.Items.OfType<SheetText>().ToArray();
        double reduction = double.Parse(words.Single(t => t.Text.StartsWith("Scale 1:", StringComparison.Ordinal)).Text[8..].Split(',')[0],
            CultureInfo.InvariantCulture);
        var unit = words.Single(t => t.Text == "mm of the model");
        var figures = words.Where(t => Math.Abs(t.At.Y - unit.At.Y) < 4 && t.At.X < unit.At.X && t.Text.All(char.IsAsciiDigit)).OrderBy(t => t.At.X).ToArray();
        Assert.Equal(3, figures.Length);
        Assert.Equal("0", figures[0].Text);
        Assert.All(figures, f => Assert.Equal(double.Parse(f.Text, CultureInfo.InvariantCulture) / reduction, f.At.X - figures[0].At.X, 1e-9));

        // Its fields lie end to end from the first figure to the last, a quarter of the whole each.
        var fields = sheet.Items.OfType<SheetPath>().Where(p => p.Closed && p.Points.Count == 4
            && p.Points.All(q => q.Y >= figures[0].At.Y && q.Y <= figures[0].At.Y + 3 && q.X <= figures[2].At.X + 1e-9 && q.X >= figures[0].At.X - 1e-9))
            .ToArray();
        Assert.Equal(4, fields.Length);
        double quarter = (figures[2].At.X - figures[0].At.X) / 4;
        Assert.All(fields.Select((f, i) => (f, i)), x => Assert.Equal((figures[0].At.X + (x.i * quarter), figures[0].At.X + ((x.i + 1) * quarter)),
            (x.f.Points.Min(p => p.X), x.f.Points.Max(p => p.X)), Near));
    }

    private static bool Near((double A, double B) one, (double A, double B) other) => Math.Abs(one.A - other.A) < 1e-9 && Math.Abs(one.B - other.B) < 1e-9;

    /// <summary>The scale that a plan states is the one it is drawn to: the coping's ends are as far apart on paper as on the layout, over the scale.</summary>
    [Fact]
    public void The_stated_scale_is_the_one_that_things_are_drawn_to()
    {
        var view = PlanView.Of([new(0, 0), new(730, 100)], new(1, 0), 14, 20, 380);
        double reduction = double.Parse(view.Scale[2..], CultureInfo.InvariantCulture);
        Assert.Equal(500 / reduction, (view.Of(new(600, 50)) - view.Of(new(100, 50))).Length, 1e-9);
    }

    [Fact]
    public void Clipping_keeps_the_area_that_lies_in_the_box()
    {
        var kept = EdgeDetail.Clip([new(0, 0), new(10, 0), new(10, 10), new(0, 10)], 5, 20, -5, 4);
        double area = 0;
        for (int i = 0; i < kept.Count; i++)
        {
            area += Point2.Cross(kept[i], kept[(i + 1) % kept.Count]) / 2;
        }

        Assert.Equal(5 * 4, area, 9);
    }

    [Theory]
    [InlineData(0.0833, "5 min")]
    [InlineData(1, "1 h 00 min")]
    [InlineData(2.52, "2 h 35 min")]
    public void Times_are_said_to_five_minutes_and_never_too_short(double hours, string said) => Assert.Equal(said, Figures.Time(hours));

    [Fact]
    public void Figures_have_a_point_and_no_minus_before_nil()
    {
        Assert.Equal("0.0", Figures.Mm(-0.01));
        Assert.Equal("-0.1", Figures.Mm(-0.06));
        Assert.Equal("7.874", Figures.Short(600 / 76.2));
        Assert.Equal("1 in 8", Figures.Gradient(12, 96));
        Assert.Equal("275 mm (10.8 in)", Figures.FullSize(275 / 76.2, new(76.2)));
    }

    internal static Sheet Draw(string name, Side side)
    {
        var dossier = HandDossier.Pendlewick(side);
        var platform = dossier.Platforms[0];
        return name switch
        {
            "plan" => PlanDrawing.Draw(dossier, platform),
            "gaps" => GapDrawing.Draw(dossier, platform),
            "cross-section" => CrossSectionDrawing.Draw(dossier, platform, CrossSectionDrawing.Telling(platform.Plan)),
            "isometric" => IsometricDrawing.Draw(dossier, platform),
            "assembly" => AssemblyDrawing.Draw(dossier, platform),
            _ => PlateDrawing.Draw(dossier, platform),
        };
    }

    /// <summary>Whether two turned boxes share more than a touch: no side of either parts them.</summary>
    internal static bool Overlap(IReadOnlyList<Point2> a, IReadOnlyList<Point2> b)
    {
        foreach (var box in new[] { a, b })
        {
            for (int i = 0; i < 2; i++)
            {
                var axis = box[i + 1] - box[i];
                double[] u = [.. a.Select(p => Point2.Dot(p, axis))], v = [.. b.Select(p => Point2.Dot(p, axis))];
                if (u.Max() <= v.Min() || v.Max() <= u.Min())
                {
                    return false;
                }
            }
        }

        return true;
    }
}
