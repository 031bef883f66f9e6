using System.Net;
using System.Text;
using System.Text.RegularExpressions;
using PlatformForge.Exports;
using PlatformForge.Exports.Documents;
using PlatformForge.Exports.Dxf;
using PlatformForge.Exports.Files;
using PlatformForge.Exports.Reports;
using PlatformForge.Exports.Workshop;
using Xunit;

namespace PlatformForge.Tests.Exports;

/// <summary>One text, written three ways.</summary>
public class ReportPageTests
{
    private const string Hostile = "<b>&\"x\"</b> `|*_[a](b) \u202E\u001b[1m";

    private static readonly Dossier Dossier = HandDossier.Pendlewick();

    private static readonly Document Text = new(
        Hostile, [("Scale", Hostile)],
        [
            new Heading(2, Hostile) { Anchor = "part" }, new VerdictLineBlock(true, Hostile), new Paragraph(Hostile), new ItemList([Hostile], ListKind.Steps),
            new TableBlock("t", ["a", "b"], [[Hostile, "1.5"]], Hostile), new Remark("Note", "PF1", "k", Hostile),
            new FigureBlock(Hostile, Hostile, Hostile, FileContents.Of([0x89, (byte)'P', 1])) { File = "pictures/a.png" },
        ],
        Hostile);

    [Fact]
    public void Words_of_others_are_words_wherever_they_stand()
    {
        string page = Encoding.UTF8.GetString(HtmlPage.ToBytes(Text)), words = Regex.Replace(page, "<style>.*?</style>", "", RegexOptions.Singleline);
        Assert.DoesNotContain("<b>&", words, StringComparison.Ordinal);
        Assert.DoesNotContain('\u001b', words);
        // Title of window and page, field, heading and its link, verdict, paragraph, step, cell and basis, remark, a figure's title, basis and words, foot.
        Assert.Equal(15, Regex.Count(WebUtility.HtmlDecode(words.Replace("<wbr>", "", StringComparison.Ordinal)), Regex.Escape("<b>&\"x\"</b> `|*_[a](b)")));
        string marked = Encoding.UTF8.GetString(MarkdownPage.ToBytes(Text));
        Assert.DoesNotMatch(@"(?<!\\)<b>|(?<!\\)\[a\]", marked);
        Assert.Contains("\n| ", marked, StringComparison.Ordinal);
        string plain = PlainPage.Of(Text);
        Assert.DoesNotContain(plain, c => char.IsControl(c) && c != '\n');
    }

    [Fact]
    public void Every_heading_and_every_cell_is_in_each_of_the_three()
    {
        var dossier = Dossier with { Verdict = new("Clear: nothing touches.", true, [new("long coach", "up", "body", "at chainage 5 mm", 1.25, 0.05)]) };
        string page = Html(OutputFiles.Of(dossier, new() { Pictures = false, Drawings = false, Masks = false })),
            marked = ReportWords.Of(dossier), plain = ReportWriter.Plain(dossier);
        marked = Regex.Replace(marked, @"\\(.)", "$1");
        string[] cells = [.. Regex.Matches(page, "<(?:td|th|h[1-4]|li|p)[^>]*>([^<]+)<").Select(m => WebUtility.HtmlDecode(m.Groups[1].Value))
            .Where(c => c is not ("Contents" or "Platform report") && !c.Contains("File: ", StringComparison.Ordinal)).Distinct()];
        Assert.True(cells.Length > 250, $"{cells.Length}");
        Assert.All(cells, c => Assert.Contains(c, marked, StringComparison.Ordinal));
        Assert.All(cells, c => Assert.Contains(c, plain, StringComparison.Ordinal));
        Assert.True(plain.IndexOf("Clear: nothing touches.", StringComparison.Ordinal) < plain.IndexOf("What to print", StringComparison.Ordinal));
    }

    [Fact]
    public void A_report_made_alone_brings_its_drawings_and_leaves_no_other_file()
    {
        OutputChoice alone = new() { Prints = false, Pictures = false, Drawings = false, Tables = false, Masks = false, ReportDrawings = true };
        var made = OutputFiles.Of(Dossier, alone);
        Assert.Equal(["design.json", "report.html", "report.json", "report.md"], made.Files.Select(f => f.Path));
        string page = Html(made);
        Assert.True(Regex.Count(page, "<svg xmlns") >= 5);
        Assert.DoesNotContain("File: ", page, StringComparison.Ordinal);
        Assert.Equal(page, Html(OutputFiles.Of(HandDossier.Pendlewick(), alone)));
    }

    [Fact]
    public void Names_that_drawings_bring_stay_their_own()
    {
        string page = Html(OutputFiles.Of(Dossier, new() { Pictures = false }));
        string[] named = [.. Regex.Matches(page, "<pattern id=\"([^\"]+)\"").Select(m => m.Groups[1].Value)];
        Assert.True(named.Length > 0 && named.Distinct().Count() == named.Length);
        Assert.All(Regex.Matches(page, @"url\(#([^)]+)\)").Select(m => m.Groups[1].Value).Distinct(), used => Assert.Contains(used, named));
        string[] ids = [.. Regex.Matches(page, " id=\"([^\"]+)\"").Select(m => m.Groups[1].Value)];
        Assert.Equal(ids.Length, ids.Distinct().Count());
        Assert.All(Regex.Matches(page, "(?:href=\"#|aria-labelledby=\")([^\"]+)").Select(m => m.Groups[1].Value), to => Assert.Contains(to, ids));
    }

    [Fact]
    public void Tables_of_the_workbench_are_square_keyed_and_never_empty()
    {
        var bench = BenchTables.Of(Dossier, Dossier.Platforms[0], "up");
        Assert.True(bench.All.Count >= 7);
        Assert.All(bench.All, t =>
        {
            Assert.NotEmpty(t.Rows);
            Assert.All(t.Rows, r => Assert.Equal(t.Columns.Count, r.Count));
            Assert.All(t.Columns, c => Assert.Matches("^[a-z0-9_]+$", c.Key));
            Assert.True(t.Basis.Length > 10);
        });
        Assert.All(Enum.GetValues<WorkStage>(), s => Assert.NotEmpty(Cautions.At(s, true)));
        Assert.Contains(Cautions.At(WorkStage.Fit, true), c => c.Contains("never mains", StringComparison.Ordinal));
        Assert.DoesNotContain(Cautions.At(WorkStage.Fit, false), c => c.Contains("never mains", StringComparison.Ordinal));
    }

    // Group codes of the published reference of release 12, from memory.
    [Fact]
    public void A_drawing_for_cutters_is_pairs_of_codes_and_values_in_plain_letters()
    {
        string file = Encoding.ASCII.GetString(DxfWriter.ToBytes("Hält\nam See", [new("CUT", 1)],
            [new DxfLine("CUT", [new(0, 0), new(1.25, -0.0)], true), new DxfCircle("CUT", new(1, 2), 0.5), new DxfText("CUT", new(0, 0), 3, "é\n0")]));
        string[] lines = file.TrimEnd('\n').Split('\n');
        Assert.Equal(0, lines.Length % 2);
        (string Code, string Value)[] pairs = [.. lines.Chunk(2).Select(p => (p[0].Trim(), p[1]))];
        Assert.Equal([("999", "Halt am See"), ("999", "1 unit = 1 mm")], pairs[..2]);
        Assert.Equal((3, 3), (pairs.Count(p => p == ("0", "SECTION")), pairs.Count(p => p == ("0", "ENDSEC"))));
        Assert.Equal(("0", "EOF"), pairs[^1]);
        Assert.Equal(2, pairs.Count(p => p == ("0", "VERTEX")));
        Assert.Contains(("70", "1"), pairs);
        Assert.Contains(("10", "1.25"), pairs);
        Assert.DoesNotContain(pairs, p => p.Value == "-0.0");
        Assert.Contains(("1", "e 0"), pairs);
    }

    private static string Html(OutputSet made) => Encoding.UTF8.GetString(made.Files.Single(f => f.Path == "report.html").Bytes);
}
