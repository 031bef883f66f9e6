using System.Buffers.Binary;
using System.Globalization;
using System.IO.Compression;
using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using PlatformForge.Exports;
using PlatformForge.Exports.Files;
using PlatformForge.Projects.Runs;
using PlatformForge.Projects.Watches;
using PlatformForge.Tests.Projects;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Names;

/// <summary>Every name through every writer of a run: each file says the name and nothing else.</summary>
public class WriterTests
{
    private static readonly UTF8Encoding Utf8 = new(false, true);

    public static TheoryData<int> Packs() => [.. Enumerable.Range(0, (HostileNames.All.Length + 4) / 5)];

    // Five names at a time: place, track, platform, vehicle, printer.
    [Theory]
    [MemberData(nameof(Packs))]
    public void A_hostile_name_is_a_name_in_every_file(int pack)
    {
        string[] names = [.. Enumerable.Range(0, 5).Select(i => HostileNames.All[((pack * 5) + i) % HostileNames.All.Length])];
        string[] written = [.. names.Select(ComposedLetters.Of)];
        var files = Files(names);
        Assert.Equal(files.Count, files.Select(f => f.Path).Distinct(StringComparer.OrdinalIgnoreCase).Count());
        Assert.All(files, f => Assert.Matches(@"^[a-z0-9/.-]+$", f.Path));
        foreach (var file in files)
        {
            switch (Path.GetExtension(file.Path))
            {
                case ".svg":
                    Svg(file, written);
                    break;
                case ".csv":
                    Csv(file);
                    break;
                case ".json":
                    using (JsonDocument.Parse(Utf8.GetString(file.Bytes)))
                    {
                    }

                    break;
                case ".md":
                    Markdown(Utf8.GetString(file.Bytes), written);
                    break;
                case ".stl":
                    Assert.All(file.Bytes.Take(80), b => Assert.InRange(b, 32, 126));
                    Assert.False(Encoding.ASCII.GetString(file.Bytes, 0, 5) == "solid");
                    break;
                case ".3mf":
                    ThreeMf(file, written[2]);
                    break;
                case ".pdf":
                    Pdf(file, written[2]);
                    break;
                case ".html":
                    Html(Utf8.GetString(file.Bytes), written);
                    break;
                case ".dxf":
                    Dxf(file.Bytes);
                    break;
                case ".png":
                    Png(file.Bytes);
                    break;
                default:
                    Assert.Fail(file.Path);
                    break;
            }
        }
    }

    // A picture has a name painted at most, in no chunk of words. Chunks: PNG specification (W3C, third edition), 5.3 and 11.2.
    private static void Png(byte[] bytes)
    {
        Assert.Equal([0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A], bytes[..8]);
        int at = 8;
        for (; at < bytes.Length; at += 12 + BinaryPrimitives.ReadInt32BigEndian(bytes.AsSpan(at)))
        {
            Assert.Contains(Encoding.ASCII.GetString(bytes, at + 4, 4), new[] { "IHDR", "PLTE", "pHYs", "sRGB", "IDAT", "IEND" });
        }

        Assert.Equal(bytes.Length, at);
    }

    [Fact]
    public void A_name_that_hides_something_is_refused_with_its_place() => Assert.All(HostileNames.Refused, name =>
    {
        string quoted = Cure.Text("", name).Value;
        var finding = Assert.Single(Samples.Read(Samples.Small.Replace("name = \"halt\"", "name = " + quoted)).Findings);
        Assert.Equal(("PF1008", "platform[0].name", 16), (finding.Code, finding.Key, finding.Line));
    });

    private static IReadOnlyList<OutputFile> Files(string[] names)
    {
        // Doors bring the vehicle's name into headings of tables.
        string text = Samples.Small.Replace("width = 34", "width = 34\nsill = { height = 13 }", StringComparison.Ordinal);
        foreach (var (old, name) in new[] { "\"Quillhaven\"", "\"main\"", "\"halt\"", "\"coach\"" }.Zip(names))
        {
            text = text.Replace(old, Cure.Text("", name).Value);
        }

        var project = Samples.Sound(text + $"[printer]\nname = {Cure.Text("", names[4]).Value}\n");
        var design = DesignRun.Design(project, RunWatch.None);
        return OutputFiles.Of(design.Value!, new OutputChoice { Pictures = false }).Files;
    }

    // Well-formed, with no element or attribute but those that the writer knows, and the names whole in its words.
    private static void Svg(OutputFile file, string[] names)
    {
        var root = XDocument.Parse(Utf8.GetString(file.Bytes)).Root!;
        string[] elements = ["svg", "title", "desc", "g", "rect", "path", "circle", "text", "defs", "pattern"];
        Assert.All(root.DescendantsAndSelf(), e => Assert.Contains(e.Name.LocalName, elements));
        Assert.All(root.DescendantsAndSelf().Attributes(), a => Assert.DoesNotMatch("^on", a.Name.LocalName));
        Assert.Contains(root.Descendants(), e => e.Name.LocalName is "title" && e.Value.Contains(names[2], StringComparison.Ordinal));
    }

    // Words stand in figures of sixteen bits alone (ISO 32000-1, 7.9.2.2), so no bracket of a name ends one; the outline names the platform whole.
    private static void Pdf(OutputFile file, string platform)
    {
        string plain = Regex.Replace(Encoding.Latin1.GetString(file.Bytes), @"stream\n.*?\nendstream", string.Empty, RegexOptions.Singleline);
        Assert.DoesNotMatch(@"/(Title|Producer|P) *\(", plain);
        var titles = Regex.Matches(plain, "/Title <FEFF([0-9A-F]*)>")
            .Select(m => Encoding.BigEndianUnicode.GetString(Convert.FromHexString(m.Groups[1].Value)));
        Assert.Contains(titles, t => t.Contains(platform, StringComparison.Ordinal));
    }

    // No cell begins as a formula does, unless it is a figure.
    private static void Csv(OutputFile file)
    {
        string text = Utf8.GetString(file.Bytes);
        int? columns = null;
        foreach (string line in text.TrimEnd('\n').Split('\n'))
        {
            string[] cells = [.. Regex.Matches(line, @"(?:^|,)(?:""((?:[^""]|"""")*)""|([^,""]*))")
                .Select(m => m.Groups[1].Success ? m.Groups[1].Value.Replace("\"\"", "\"") : m.Groups[2].Value)];
            Assert.Equal(columns ??= cells.Length, cells.Length);
            Assert.All(cells, c => Assert.False(Regex.IsMatch(c, @"^\s*[=+\-@\uFF1D\uFF0B\uFF0D\uFF20]") && !Regex.IsMatch(c, @"^[-+]?[\d.]+$"), c));
        }
    }

    // Every heading and table is ours: as many headings, rows and columns as with plain names (notes may be more), and no mark left unescaped.
    private static void Markdown(string text, string[] names)
    {
        string plain = Utf8.GetString(Files(["Place", "Track", "Platform", "Vehicle", "Printer"]).Single(f => f.Path == "report.md").Bytes);
        Assert.Equal(Shape(plain), Shape(text));
        string bare = Regex.Replace(text, @"\\[\\`*\[\]<>#|~&!$@_:.]", "");
        // The verdict is strong, and drawings are shown by the paths of their files.
        bare = Regex.Replace(bare, @"(?m)^\*\*[^*\n]*\*\*$|^!\[[^\[\]\n]*\]\((drawings|pictures)/[a-z0-9-]+\.(svg|png)\)$", "");
        // A file of the folder is linked by its path, which is its words too.
        bare = Regex.Replace(bare, @"\[(?<path>[a-z0-9][a-z0-9./-]*)\]\(\k<path>\)", "");
        Assert.DoesNotMatch(@"<[A-Za-z/!]|!\[|\]\(|https?://|(?i)www\.|\*\*|~~", bare);
        Assert.StartsWith("# " + names[0][..1].Trim('\\', '#', '[', '|', '`', '<', '!', '&', '~', '@', '$'), text.Replace("\\", "", StringComparison.Ordinal),
            StringComparison.Ordinal);
    }

    // No element or attribute but ours, nothing that acts, and the names whole in its words.
    private static void Html(string text, string[] names)
    {
        string page = Regex.Replace(text, @"(?s)<style>.*?</style>|<svg xmlns.*?</svg>|<!DOCTYPE html>", "");
        string[] elements =
        [
            "html", "head", "meta", "title", "body", "a", "header", "div", "p", "h1", "h2", "h3", "h4", "dl", "dt", "dd", "nav", "ol", "ul", "li", "main",
            "section", "svg", "circle", "path",
            "table", "thead", "tbody", "tr", "th", "td", "wbr", "figure", "figcaption", "strong", "b", "code", "img", "footer",
        ];
        Assert.All(Regex.Matches(page, @"</?([^\s>/]*)").Select(m => m.Groups[1].Value), e => Assert.Contains(e, elements));
        Assert.DoesNotMatch(@"<[^>]*\s(on\w+|href=""(?!#|[a-z0-9][a-z0-9./-]*""))", page);
        string said = System.Net.WebUtility.HtmlDecode(page.Replace("<wbr>", "", StringComparison.Ordinal));
        Assert.All(names.Take(4), n => Assert.Contains(n, said, StringComparison.Ordinal));
    }

    // Codes and values in turn, in plain letters, whatever the names are.
    private static void Dxf(byte[] bytes)
    {
        Assert.All(bytes, b => Assert.True(b is 10 or (>= 32 and <= 126)));
        string[] lines = Encoding.ASCII.GetString(bytes).TrimEnd('\n').Split('\n');
        Assert.True(lines.Length % 2 == 0 && lines.Where((_, i) => i % 2 == 0)
            .All(l => int.TryParse(l, NumberStyles.Integer, CultureInfo.InvariantCulture, out int code) && code is >= 0 and <= 999));
        Assert.Equal(["  0", "EOF"], lines[^2..]);
    }

    private static string[] Shape(string text) =>
        [.. text.Split('\n').Select(l => l.StartsWith('#') ? "#" : l.StartsWith('|') ? $"|{Regex.Count(l, @"(?<!\\)(?:\\\\)*\|")}" : "")
            .Where(s => s.Length > 0)];

    private static void ThreeMf(OutputFile file, string platform)
    {
        using var archive = new ZipArchive(new MemoryStream(file.Bytes));
        foreach (var entry in archive.Entries.Where(e => e.Name.EndsWith(".model", StringComparison.Ordinal)
            || e.Name.EndsWith(".rels", StringComparison.Ordinal)))
        {
            using var stream = entry.Open();
            var document = XDocument.Load(stream);
            if (entry.Name.EndsWith(".model", StringComparison.Ordinal))
            {
                Assert.Contains(document.Descendants().Attributes("name").Select(a => a.Value), n => n.Contains(platform, StringComparison.Ordinal));
            }
        }
    }
}
