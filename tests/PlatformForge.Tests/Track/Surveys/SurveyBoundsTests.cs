using System.Text;
using FsCheck.Xunit;
using PlatformForge.Track.Surveys;
using PlatformForge.Track.Surveys.Drawings;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Track.Surveys;

/// <summary>What survey tables and drawings may hold at most, and mutations of them: one clean fault with the limit, never an exception.</summary>
public class SurveyBoundsTests
{
    private const string Line = "<path d=\"M0 0 L1000 0\"/>";

    private static readonly string[] Scraps = ["<g>", "</g>", "\"", ";", ",", "\n", "1e308", "-1e999", "NaN", "A1 1 0 0 0 0 0", "0\nARC\n", "51\n1e300\n",
        "&amp;", "<style>", "]]>", "\0", "\uFFFD"];

    private static readonly Dictionary<string, (Func<string> Text, double Limit)> BeyondSvg = new()
    {
        ["groups"] = (() => Svg(Nested("g", 300_000, Line)), InputLimits.DrawingDepth),
        ["style"] = (() => Svg(Nested("style", 1, Nested("a", 300_000, "")) + Line), InputLimits.DrawingDepth),
        ["text"] = (() => Svg(Nested("text", 1, Nested("tspan", 300_000, "")) + Line), InputLimits.DrawingDepth),
        ["elements"] = (() => Svg(Repeat("<path/>", 250_000) + Line), InputLimits.DrawingElements),
        ["points"] = (() => Svg($"<path d=\"M0 0{Repeat(" L1 1 2 3", 250_000)}\"/>"), InputLimits.DrawingPoints),
        ["points of many lines"] = (() => Svg($"<path d=\"{Repeat("M0 0L1 1", 250_000)}\"/>"), InputLimits.DrawingPoints),
        ["curves"] = (() => Svg($"<path d=\"{Repeat("M0 0c1 9 2 -9 3 0", 100_000)}\"/>"), InputLimits.DrawingPoints),
        ["attributes"] = (() => Svg($"<path {string.Concat(Enumerable.Range(0, 100_000).Select(i => $"a{i}=\"1\" "))}/>{Line}"), InputLimits.MarkupAttributes),
        ["coordinate"] = (() => Svg("<path d=\"M0 0 L1e12 0\"/>"), InputLimits.DrawingCoordinate),
    };

    private static readonly Dictionary<string, (Func<string> Text, double Limit)> BeyondDxf = new()
    {
        ["angle"] = (() => Dxf(Arc("600", "1e8")), InputLimits.DrawingAngle),
        ["angle beyond numbers"] = (() => Dxf(Arc("600", "1e300")), InputLimits.DrawingCoordinate),
        ["radius"] = (() => Dxf(Arc("1e200", "90")), InputLimits.DrawingCoordinate),
        ["pairs"] = (() => Dxf("0\nLWPOLYLINE\n8\n0\n" + Repeat("10\n1\n20\n0\n", 600_000)), InputLimits.DrawingPairs),
        ["points"] = (() => Dxf(Repeat(Arc("600", "90"), 5000)), InputLimits.DrawingPoints),
    };

    public static TheoryData<string> BeyondSvgNames => [.. BeyondSvg.Keys];

    public static TheoryData<string> BeyondDxfNames => [.. BeyondDxf.Keys];

    [Theory]
    [MemberData(nameof(BeyondSvgNames))]
    public void An_svg_beyond_a_limit_is_a_fault_with_the_limit_and_a_line(string what) =>
        Refused(what, Assert.Throws<UnreadableDrawingException>(() => SvgDrawingReader.Read(BeyondSvg[what].Text())), BeyondSvg[what].Limit);

    [Theory]
    [MemberData(nameof(BeyondDxfNames))]
    public void A_dxf_beyond_a_limit_is_a_fault_with_the_limit_and_a_line(string what) =>
        Refused(what, Assert.Throws<UnreadableDrawingException>(() => DxfDrawingReader.Read(BeyondDxf[what].Text())), BeyondDxf[what].Limit);

    [Theory]
    [InlineData("x;y\n", "1;2\n", InputLimits.TableRows + 5, InputLimits.TableRows)]
    [InlineData("x;y\n", "1;", 150, InputLimits.TableColumns)]
    [InlineData("x;y\n1;2\n", "9", 2_000_000, InputLimits.TableRowLetters)]
    public void A_table_beyond_a_limit_is_a_fault_with_the_limit_and_a_line(string head, string part, int times, int limit)
    {
        var finding = Assert.Single(SurveyReader.Read(Samples.Points(head + Repeat(part, times))).Findings);
        Assert.Equal("PF2150", finding.Code);
        Assert.True(finding.Line >= 2);
        Assert.Contains(limit.ToString(System.Globalization.CultureInfo.InvariantCulture), finding.Message, StringComparison.Ordinal);
    }

    [Property(MaxTest = 200)]
    public void A_mutated_drawing_is_read_or_refused_with_a_line(int seed)
    {
        var random = new Random(seed);
        string svg = Mutated(random, Svg(Nested("g", 3, Line + "<path d=\"M0 0c1 9 2 -9 3 0A5 6 7 0 1 8 9\" style=\"transform:none\"/><style>a{}</style>")));
        string dxf = Mutated(random, Dxf(Arc("600", "90") + "0\nLINE\n8\n0\n10\n0\n20\n0\n11\n600\n21\n0\n"));
        foreach (var read in new Action[] { () => SvgDrawingReader.Read(svg), () => DxfDrawingReader.Read(dxf) })
        {
            if (Record.Exception(read) is { } thrown)
            {
                Assert.True(Assert.IsType<UnreadableDrawingException>(thrown).Line >= 1, thrown.Message);
            }
        }
    }

    private static void Refused(string what, UnreadableDrawingException fault, double limit)
    {
        Assert.True(fault.Message.Contains(limit.ToString(System.Globalization.CultureInfo.InvariantCulture), StringComparison.Ordinal),
            $"{what}: {fault.Message}");
        Assert.True(fault.Line >= 1, what);
    }

    private static string Mutated(Random random, string text)
    {
        for (int i = random.Next(1, 5); i > 0; i--)
        {
            int at = random.Next(text.Length), end = Math.Min(text.Length, at + random.Next(40));
            text = random.Next(4) switch
            {
                0 => text[..at] + Scraps[random.Next(Scraps.Length)] + text[at..],
                1 => text[..at] + text[end..],
                2 => text[..at] + Repeat(text[at..end], random.Next(1, 300)) + text[end..],
                _ => text[..at] + Scraps[random.Next(Scraps.Length)] + text[end..],
            };
        }

        return text;
    }

    private static string Svg(string inside) => "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"1000mm\" height=\"1000mm\" viewBox=\"0 0 1000 "
        + $"1000\">{inside}</svg>";

    private static string Nested(string name, int times, string inside) => Repeat($"<{name}>", times) + inside + Repeat($"</{name}>", times);

    private static string Dxf(string entities) => $"0\nSECTION\n2\nENTITIES\n{entities}0\nENDSEC\n0\nEOF\n";

    private static string Arc(string radius, string to) => $"0\nARC\n8\n0\n10\n0\n20\n0\n40\n{radius}\n50\n0\n51\n{to}\n";

    private static string Repeat(string text, int times) => new StringBuilder(text.Length * times).Insert(0, text, times).ToString();
}
