using System.Text.Json;
using System.Text.RegularExpressions;

namespace PlatformForge.Outside.Tests;

/// <summary>The report as its readers have it: in a browser, light and dark, wide and narrow, and on paper.</summary>
[Collection("samples drawn")]
public class ReportTests(WrittenSamples samples)
{
    [Fact]
    public void A_browser_finds_nothing_to_complain_of_nothing_to_ask_for_and_nothing_that_keeps_anybody_out()
    {
        foreach (string file in Pages())
        {
            var page = Browsed(file, out _);
            string name = Path.GetFileName(Path.GetDirectoryName(file))!;
            Assert.True(page.GetProperty("said").GetArrayLength() == 0, $"{name}: {page.GetProperty("said")}");
            Assert.True(page.GetProperty("asked").GetArrayLength() == 0, $"{name}: {page.GetProperty("asked")}");
            Assert.True(page.GetProperty("axed").GetArrayLength() == 0, $"{name}: {page.GetProperty("axed")}");
            Assert.True(page.GetProperty("wide").GetArrayLength() == 0, $"{name}: {page.GetProperty("wide")}");
        }
    }

    /// <summary>Every word of every cell is on the printed pages, as often as the page has it, and every page has words: nothing was cut off.</summary>
    [Fact]
    public void Printed_it_has_every_cell_of_every_table()
    {
        foreach (string file in Pages())
        {
            var page = Browsed(file, out string words);
            var printed = Words(words).GroupBy(w => w).ToDictionary(g => g.Key, g => g.Count(), StringComparer.Ordinal);
            var cells = page.GetProperty("cells").EnumerateArray().SelectMany(t => t.EnumerateArray()).SelectMany(r => r.EnumerateArray())
                .SelectMany(c => Words(c.GetString()!)).GroupBy(w => w).ToArray();
            Assert.True(cells.Sum(g => g.Count()) > 300, file);
            // A word that is broken at the end of a line is told in two pieces.
            Assert.All(cells.Where(g => g.Key.Length <= 12 && !g.Key.Contains('-', StringComparison.Ordinal)
                && !g.Key.Contains('/', StringComparison.Ordinal)),
                g => Assert.True(printed.GetValueOrDefault(g.Key) >= g.Count(),
                    $"{file}: '{g.Key}' {g.Count()} times in tables, {printed.GetValueOrDefault(g.Key)} printed"));
        }
    }

    [Fact]
    public void It_has_every_drawing_and_picture_and_the_verdict_before_all_else()
    {
        foreach (string file in Pages())
        {
            string folder = Path.GetDirectoryName(file)!, text = File.ReadAllText(file);
            int drawings = Directory.GetFiles(Path.Combine(folder, "drawings"), "*.svg").Length,
                pictures = Directory.GetFiles(Path.Combine(folder, "pictures"), "*.png").Length;
            Assert.Equal(drawings, Regex.Count(text, "<svg xmlns"));
            Assert.Equal(pictures, Regex.Count(text, "<img "));
            Assert.DoesNotMatch(@"<script|javascript:|<link|<iframe|@import|url\(http", text);
            int[] order = [.. new[] { "id=\"verdict\"", "What to print, and how", "What to cut", "How to set out", "How to join", "How to paint", "How to fit",
                "How to test", "Gaps and budget", "id=\"findings\"", "id=\"cautions\"" }
                .Select(h => text.IndexOf(h[..2] == "id" ? h : $">{h}", text.IndexOf("<main", StringComparison.Ordinal), StringComparison.Ordinal))];
            Assert.True(order.All(i => i > 0) && order.SequenceEqual(order.Order()), string.Join(", ", order));
            Assert.Contains("Clear: nothing touches", text, StringComparison.Ordinal);
            Assert.Equal(Regex.Count(text, "<table"), Regex.Count(text, "<p class=\"basis\">Basis: "));
        }
    }

    /// <summary>The Markdown is the same text: every heading and every cell of the page is in it.</summary>
    [Fact]
    public void The_plain_words_are_those_of_the_page()
    {
        foreach (string file in Pages())
        {
            var page = Browsed(file, out _);
            string plain = Regex.Replace(File.ReadAllText(Path.ChangeExtension(file, ".md")), @"\\(.)", "$1");
            Assert.All(page.GetProperty("headings").EnumerateArray().Select(h => h.GetString()![3..]).Where(h => h != "Contents"),
                h => Assert.Contains(h, plain, StringComparison.Ordinal));
            Assert.All(page.GetProperty("cells").EnumerateArray().SelectMany(t => t.EnumerateArray()),
                r => Assert.Contains(string.Join(" ", r.EnumerateArray().Select(c => c.GetString())).Split(' ')[0], plain, StringComparison.Ordinal));
        }
    }

    // A platform faced and paved, one with several tracks, an island, one with wires and inlays: a browser is slow, and the others have nothing that these have
    // not.
    private IEnumerable<string> Pages() => samples.Files("report.html")
        .Where(f => Path.GetFileName(Path.GetDirectoryName(f)) is "tawnybrook" or "quillhaven" or "thornhithe" or "emberlow");

    private static readonly Dictionary<string, (JsonElement Page, string Words)> Seen = [];

    // A browser is slow to start: each page is opened once.
    private static JsonElement Browsed(string file, out string words)
    {
        if (!Seen.TryGetValue(file, out var seen))
        {
            string folder = Directory.CreateTempSubdirectory("platformforge-report-").FullName;
            try
            {
                string pdf = Path.Combine(folder, "report.pdf");
                var page = Written.Parse(Tool.Node("browse.mjs", Path.Combine(folder, "profile"), pdf, file).Last());
                Seen[file] = seen = (page, Tool.Run("pdftotext", pdf, "-").Out);
            }
            finally
            {
                Directory.Delete(folder, recursive: true);
            }
        }

        words = seen.Words;
        return seen.Page;
    }

    private static string[] Words(string text) => text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries);
}
