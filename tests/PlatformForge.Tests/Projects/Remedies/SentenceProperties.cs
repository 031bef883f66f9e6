using PlatformForge.Projects.Presets;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Projects.Remedies;

/// <summary>
/// Every sentence that designs by lot are told, whatever their severity. PF_SENTENCES and PF_SEED set how many designs and which; PF_SENTENCES_REPORT names a
/// file for what was found, with the codes that came up.
/// </summary>
public class SentenceProperties
{
    private const int DesignsInGate = 60;

    private const string Furnished = """
        ramps = { start = { length = 60 }, end = { gradient = 8 } }
        fence = { pitch = 24, gap = [{ from = 440, to = 460 }] }
        board = [{ at = 480, inset = 16 }]
        hole = [{ at = 430, inset = 14 }]
        lamp = [{ at = 410, inset = 12 }]

        """;

    // Sound designs: straight, furnished, on a curve between buffers, and one that lean and cant pass over.
    private static readonly string[] Designs =
    [
        PresetShelf.Sample("straight-halt")!,
        Samples.Small + Furnished,
        Samples.Small.Replace("{ straight = 900 }", "{ straight = 300 }, { curve = 700, length = 300, hand = \"left\" }, { straight = 300 }",
            StringComparison.Ordinal) + "wall = { front_thickness = 2.4 }\n",
        PresetShelf.Sample("straight-halt")!.Replace("running = 0.7", "roll = 1.5\ncant = 0.5\nwheelset_play = 0.2\nrunning = 0.7", StringComparison.Ordinal)
            .Replace("length = ", "low = 16\nlength = ", StringComparison.Ordinal)
            .Replace("to = 540 }", "to = 540, bodies_pass_over = true }", StringComparison.Ordinal),
    ];

    // Islands, sets of vehicles, several tracks, walls in brick: slower, and so for the long run.
    private static readonly string[] Rich =
        [.. new[] { "marrowby-cross", "pendlewick-sets", "quillhaven", "emberlow", "tawnybrook" }.Select(n => PresetShelf.Sample(n)!)];

    [Fact]
    public void The_designs_that_faults_are_put_into_are_sound() =>
        Assert.All(Designs, d => Assert.DoesNotContain(FaultyDesign.FindingsOf(new(d, "halt.toml")), f => f.Severity == Severity.Error));

    [Fact]
    public void No_sentence_tells_a_figure_that_is_none_or_that_nobody_can_read()
    {
        var random = new Random(Setting("PF_SEED", 5));
        var codes = new SortedDictionary<string, int>(StringComparer.Ordinal);
        var complaints = new List<string>();
        int count = Setting("PF_SENTENCES", DesignsInGate);
        var designs = FaultyDesign.OfEveryKey(random, Designs).Take(count)
            .Concat(FaultyDesign.From(random.Next(), Designs).Take(count / 4))
            .Concat(count > DesignsInGate ? FaultyDesign.From(random.Next(), Rich).Take(count / 4)
                .Concat(FaultyDesign.OfEveryKey(random, Rich).Take(count / 4)) : []);
        foreach (var design in designs)
        {
            foreach (var finding in design.Findings)
            {
                codes[finding.Code] = codes.GetValueOrDefault(finding.Code) + 1;
                complaints.AddRange(Sentences.Complaints(finding, design.Change).Select(c => $"{design.Change}: {c}"));
            }
        }

        if (Environment.GetEnvironmentVariable("PF_SENTENCES_REPORT") is { } report)
        {
            File.WriteAllLines(report, complaints.Append(string.Join(", ", codes.Select(c => $"{c.Key} {c.Value}"))));
        }

        Assert.True(codes.Count > 0 && complaints.Count == 0, string.Join('\n', complaints.Take(20)));
    }

    // Findings that no figure of a key leads to, a design each.
    [Theory]
    [InlineData("PF1012", "name = \"halt\"", "name = \"halt\"", "[printer]\nheight = 200\nbed = [[0, 0], [200, 0], [200]]\n", "has 1 entry.")]
    [InlineData("PF6012", "name = \"halt\"", "name = \"ჰალტი\"", "", "has no drawing of ჰ ა ლ ტ ი;")]
    public void What_is_told_seldom_can_be_read(string code, string old, string put, string more, string told)
    {
        string text = Samples.Small.Replace(old, put, StringComparison.Ordinal) + more;
        var finding = Assert.Single(FaultyDesign.FindingsOf(new(text, "halt.toml")), f => f.Code == code);
        Assert.Contains(told, finding.Message, StringComparison.Ordinal);
        Assert.Empty(Sentences.Complaints(finding, text));
    }

    [Theory]
    [InlineData("The foot is at -0 mm above rail top.", "The foot is at 0 mm above rail top.")]
    [InlineData("It is -0.00 mm off, -0.004 mm at most; -0.", "It is 0.00 mm off, -0.004 mm at most; 0.")]
    [InlineData("Write x = \"-0\", or halt-01 from -05 to 1e-05 and -0.", "Write x = \"-0\", or halt-01 from -05 to 1e-05 and 0.")]
    public void What_rounds_to_nothing_is_told_without_a_sign(string said, string told)
    {
        Assert.Equal((told, told), (Finding.Error("PF9999", "", said, said).Message, Finding.Warning("PF9999", "", said, said).Remedy));
        Assert.Equal(told, Finding.Note("PF9999", "", said).Message);
    }

    private static int Setting(string name, int usual) =>
        int.TryParse(Environment.GetEnvironmentVariable(name), System.Globalization.CultureInfo.InvariantCulture, out int value) ? value : usual;
}
