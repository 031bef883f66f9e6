using System.Text;
using PlatformForge.Projects;
using PlatformForge.Projects.Reading;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Projects;

public class FaultTests
{
    [Theory]
    [InlineData(4, "rail_top = nan", 12, "layout.rail_top", "nan, which is no number")]
    [InlineData(4, "rail_top = inf", 12, "layout.rail_top", "inf, which is no number")]
    [InlineData(4, "rail_top = -inf", 12, "layout.rail_top", "-inf, which is no number")]
    [InlineData(4, "rail_top = 1e308", 12, "layout.rail_top", "1E+308")]
    [InlineData(4, "rail_top = -8", 12, "layout.rail_top", "-8 mm")]
    [InlineData(10, "length = -228", 10, "vehicle[0].length", "-228 mm")]
    [InlineData(12, "width = 0", 9, "vehicle[0].width", "0 mm")]
    [InlineData(14, "running = -1", 11, "clearance.running", "-1 mm")]
    [InlineData(4, "rail_top = 99999999", 12, "layout.rail_top", "99999999 mm")]
    public void A_figure_out_of_range_is_told_with_its_place_and_what_would_work(int line, string text, int column, string key, string found)
    {
        var finding = Assert.Single(Samples.Read(Samples.With(line, text)).Findings);
        Assert.Equal(("PF1008", key, "halt.toml", line, column), (finding.Code, finding.Key, finding.File, finding.Line, finding.Column));
        Assert.Contains(found, finding.Message, StringComparison.Ordinal);
        Assert.StartsWith("Give a number ", finding.Remedy, StringComparison.Ordinal);
        Assert.EndsWith(" mm.", finding.Remedy, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("inf")]
    [InlineData("-inf")]
    [InlineData("nan")]
    public void What_is_no_number_is_told_as_the_file_writes_it(string text) =>
        Assert.Equal($"name is the number {text}.", Assert.Single(Samples.Read(Samples.With(2, $"name = {text}")).Findings).Message);

    [Theory]
    [InlineData(4, "rail_top = \"high\"", "layout.rail_top", "PF1007")]
    [InlineData(4, "rail_top = true", "layout.rail_top", "PF1007")]
    [InlineData(4, "rail_top = [8]", "layout.rail_top", "PF1007")]
    [InlineData(4, "rail_top = 2026-01-01", "layout.rail_top", "PF1007")]
    [InlineData(2, "name = 7", "layout.name", "PF1007")]
    [InlineData(2, "name = \"\"", "layout.name", "PF1008")]
    [InlineData(7, "alignment = 900", "track[0].alignment", "PF1007")]
    [InlineData(7, "alignment = [900]", "track[0].alignment[0]", "PF1007")]
    [InlineData(7, "alignment = [{ straight = 900, curve = 5 }]", "track[0].alignment[0]", "PF1013")]
    [InlineData(7, "alignment = [{ curve = 500, hand = \"left\" }]", "track[0].alignment[0]", "PF1013")]
    [InlineData(7, "alignment = [{ curve = 500, angle = 30 }]", "track[0].alignment[0]", "PF1009")]
    [InlineData(7, "alignment = [{ curve = 500, angle = 30, hand = \"lfet\" }]", "track[0].alignment[0].hand", "PF1011")]
    [InlineData(3, "scale = \"5mm\"", "layout.scale", "PF1011")]
    [InlineData(17, "face = { track = \"mian\", side = \"left\", from = 350, to = 540 }", "platform[0].face.track", "PF1016")]
    [InlineData(17, "face = { track = \"main\", side = \"left\", from = 540, to = 350 }", "platform[0].face.to", "PF1014")]
    [InlineData(11, "pivots = 300", "vehicle[0].pivots", "PF1014")]
    public void A_value_of_the_wrong_kind_is_told_with_its_place(int line, string text, string key, string code)
    {
        var findings = Samples.Read(Samples.With(line, text)).Findings.Where(f => f.Key == key).ToArray();
        var finding = Assert.Single(findings);
        Assert.Equal((code, line), (finding.Code, finding.Line));
        Assert.InRange(finding.Column, 1, text.Length);
        Assert.NotEmpty(finding.Remedy);
    }

    [Theory]
    [InlineData("[platform.deck]\nthickess = 2", "platform[0].deck.thickess", "Did you mean thickness?")]
    [InlineData("[platform.copping]\nwidth = 2", "platform[0].copping", "Did you mean coping?")]
    [InlineData("thickness = 2", "platform[0].thickness", "It belongs under platform[0].deck.")]
    [InlineData("zzz = 2", "platform[0].zzz", "Known here: name, kind, height")]
    [InlineData("[jiont]\nfit = 1", "jiont", "Did you mean joint?")]
    public void An_unknown_key_is_refused_with_the_nearest_known_one(string added, string key, string remedy)
    {
        var finding = Assert.Single(Samples.Read(Samples.Small + added).Findings);
        Assert.Equal(("PF1006", key), (finding.Code, finding.Key));
        Assert.StartsWith(remedy, finding.Remedy, StringComparison.Ordinal);
        Assert.InRange(finding.Line, 18, 20);
    }

    [Fact]
    public void All_faults_of_a_file_are_told_at_once_in_the_order_of_the_file()
    {
        string text = Samples.Small.Replace("rail_top = 8", "rail_top = -8").Replace("width = 34", "widht = 34").Replace("running = 0.7", "")
            .Replace("\"left\"", "\"port\"");
        var findings = Samples.Read(text).Findings;
        Assert.Equal(["layout.rail_top", "vehicle[0].width", "vehicle[0].widht", "clearance.running", "platform[0].face.side"], findings.Select(f => f.Key));
        Assert.All(findings, f => Assert.Equal(Severity.Error, f.Severity));
        Assert.Equal(findings.Select(f => f.Line).Order(), findings.Select(f => f.Line));
    }

    [Theory]
    [InlineData("")]
    [InlineData("# nothing but a comment\n")]
    public void An_empty_file_is_told_what_it_lacks(string text)
    {
        var findings = Samples.Read(text).Findings;
        Assert.Equal(["layout", "track", "vehicle", "clearance", "platform"], findings.Select(f => f.Key));
        Assert.All(findings, f => Assert.Equal("PF1009", f.Code));
    }

    [Fact]
    public void A_file_cut_off_anywhere_is_read_or_refused_with_a_place()
    {
        for (int length = 0; length < Samples.Small.Length; length += 3)
        {
            var read = Samples.Read(Samples.Small[..length]);
            Assert.True(read.Succeeded || read.Findings.All(f => f.Line >= 1 && f.Column >= 1 && f.File == "halt.toml"));
        }
    }

    [Theory]
    [InlineData("[layout]\nname = \n", 2, 8)]
    [InlineData("[layout\n", 1, 8)]
    [InlineData("name = \"Quill\nscale = 1\n", 1, 14)]
    public void Broken_grammar_is_told_with_line_and_column(string text, int line, int column)
    {
        var finding = Samples.Read(text).Findings[0];
        Assert.Equal(("PF1005", line, column), (finding.Code, finding.Line, finding.Column));
    }

    [Theory]
    [InlineData("a = 1\na = 2\n", 2, "a is given twice: line 1 has it already.", "Keep one of the two and remove the other.")]
    [InlineData("[layout]\nname = { a = 1, a = 2 }\n", 2, "a is given twice in this line.", "Keep one of the two and remove the other.")]
    [InlineData("[layout]\n[clearance]\n[layout]\nname = \"x\"\n", 3, "[layout] is there already, in line 1.",
        "Put its keys under that one, and remove this heading.")]
    [InlineData("[[platform]]\n[platform]\nname = \"x\"\n", 2, "[platform] comes after [[platform]] of line 1, which begins one of several.",
        "Write [[platform]] for a further one, or put the keys under the one that they belong to.")]
    [InlineData("[platform]\nname = \"y\"\n[platform]\nname = \"x\"\n", 3, "[platform] is there already, in line 1.",
        "Write [[platform]] at both for two of them, or remove one.")]
    [InlineData("[layout]\n[[layout]]\nname = \"x\"\n", 2, "[[layout]] comes after [layout] of line 1, which there is one of.", "Put its keys under [layout].")]
    [InlineData("[joint]\nfit = 1\njoint.fit = 2\nfit = 3\n", 4, "fit is given twice: line 2 has it already.", "Keep one of the two and remove the other.")]
    public void What_stands_twice_is_told_with_where_it_stands_already(string text, int line, string message, string remedy)
    {
        var finding = Samples.Read(text).Findings[0];
        Assert.Equal(("PF1071", line, message, remedy), (finding.Code, finding.Line, finding.Message, finding.Remedy));
    }

    [Theory]
    [InlineData("[platform.deck]\nwidth = 40", "deck = { width = 44 }")]
    [InlineData("[platform.deck]\nwidth = 40", "deck.width = 44")]
    [InlineData("deck = { width = 40 }", "[platform.deck]\nwidth = 44")]
    [InlineData("[[platform.hole]]\nat = 1", "hole = [{ at = 1 }]")]
    public void A_table_that_each_of_several_items_has_is_no_key_that_stands_twice(string first, string second)
    {
        // TOML 1.0, arrays of tables: a heading's table belongs to the latest item.
        string One(string key) => $"[[platform]]\nname = \"x\"\n{key}\n";
        Assert.DoesNotContain(Samples.Read(One(first) + One(second)).Findings, f => f.Code is "PF1071" or "PF1042" or "PF1005");
        Assert.Contains(Samples.Read(One(first) + One(second + "\n" + second)).Findings, f => f.Code is "PF1071" or "PF1042" or "PF1005");
    }

    [Fact]
    public void A_number_without_end_is_not_repeated()
    {
        var finding = Samples.Read(Samples.With(4, "rail_top = " + new string('9', 900_000))).Findings[0];
        Assert.Equal("PF1041", finding.Code);
        Assert.InRange(finding.Message.Length + finding.Remedy.Length, 20, 200);
    }

    [Theory]
    [InlineData("[layout\nname = \"x\"\n", "'[layout' is no heading.", "Write [layout].")]
    [InlineData("[[track]\nname = \"x\"\n", "'[[track]' is no heading.", "Write [[track]].")]
    [InlineData("[layout]\nname = \"x\n", "'name = \"x' opens a text and does not close it.", "Put a double quote at both ends of the text.")]
    [InlineData("[layout]\nname = Halt\n", "'Halt' is a text without quotes.", "Write name = \"Halt\".")]
    [InlineData("[layout]\nname \"Halt\" # so it is called\n", "'name \"Halt\"' has no '=' between the key and its value.", "Write name = \"Halt\".")]
    [InlineData("[layout]\nname = # later\n", "'name' has no value.",
        "Write name = and its value on the same line, or put a # before the line to leave it out.")]
    [InlineData("[layout]\ngauge = 16,5\n", "'16,5' has a decimal comma.", "Write gauge = 16.5.")]
    [InlineData("[layout]\ngauge = 16.5mm\n", "'16.5mm' has a unit and no quotes.", "Write gauge = \"16.5mm\"; a plain number is mm.")]
    [InlineData("[layout]\nname = \"Halt\" scale = \"4mm\"\n", "'name = \"Halt\" scale = \"4mm\"' has two keys on one line.",
        "Write every key on a line of its own.")]
    [InlineData("[[track]]\nalignment = [\n{ straight = 3 }\n{ straight = 4 }]\n", "There is no comma between '{ straight = 3 }' and '{ straight = 4 }]'.",
        "Write { straight = 3 },")]
    [InlineData("[[track]]\nalignment = [\n{ curve = 500, hand = left }]\n", "'left' is a text without quotes.", "Write hand = \"left\".")]
    [InlineData("[[track]]\nalignment = [\n{ straight = 3 },\n{ straight = 4",
        "The file ends in the middle of something: line 4 is its last, and } ] is still to come.", "Write the rest, or close it with } ].")]
    [InlineData("[layout]\nname = { a = 1\nscale = \"4mm\"\nrail_top = 8\n", "Line 2 ends without closing what it is in: } is still to come.",
        "Write } at its end.")]
    public void The_usual_slips_of_grammar_are_told_in_plain_words(string text, string message, string remedy)
    {
        var finding = Samples.Read(text).Findings[0];
        Assert.Equal(("PF1005", message, remedy), (finding.Code, finding.Message, finding.Remedy));
    }

    [Fact]
    public void A_line_that_is_offered_can_be_read()
    {
        string[] keys = ["pivots", "size", "from"], values = ["1e999", "-1e400", "16,5", "Long coach", "1,5,3", "1.2.3 mm", "5 ft 3 in", "12 mm wide", "left",
            "0x", "1_0", "5 5", "inf", "nan", "[1,", "ff ee\"", "grün", "true", "07", "--3", "9e"];
        var offers = from key in keys
                     from value in values
                     from line in new[] { $"{key} {value}", $"{key}: {value}", $"{key} = {value}", $"it = {{ a = 1, {key} = {value} ]" }
                     let finding = Samples.Read($"[layout]\n{line}\n").Findings[0]
                     where finding.Code == "PF1005"
                     let offer = System.Text.RegularExpressions.Regex.Match(finding.Remedy, @"^Write (\w+ = .+?)[.;](?: |$)")
                     where offer.Success && !offer.Groups[1].Value.StartsWith("key = value", StringComparison.Ordinal)
                     select (line, Offer: offer.Groups[1].Value);
        string[] lost = [.. offers.Where(o => !IsRead(o.Offer)).Select(o => $"{o.line}: {o.Offer}")];
        Assert.True(offers.Count() > 60 && lost.Length == 0, $"{offers.Count()} offers; {string.Join('\n', lost)}");

        static bool IsRead(string offer) => offer.Contains(" = and its value", StringComparison.Ordinal)
            || !Samples.Read($"[layout]\n{offer}\n").Findings.Any(f => f.Code is "PF1005" or "PF1041"
                || f.Message.Contains("which is no number", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("[layout]\nname = \"a\\", 2, 10)]
    [InlineData("[layout]\nname = \"x\"\nlen\"\"\"gth = 228 \\", 3, 17)]
    [InlineData("[layout]\nlengt\\u12", 2, 6)]
    public void An_escape_that_is_no_character_is_told_with_its_place(string text, int line, int column)
    {
        var finding = Samples.Read(text).Findings[0];
        Assert.Equal(("PF1005", line, column), (finding.Code, finding.Line, finding.Column));
    }

    [Fact]
    public void Names_are_given_once()
    {
        var finding = Assert.Single(Samples.Read(Samples.Small + "[[vehicle]]\nname = \"Coach\"\nlength = 100\npivots = 60\nwidth = 30").Findings);
        Assert.Equal(("PF1015", "vehicle[1].name", 19), (finding.Code, finding.Key, finding.Line));
    }

    [Fact]
    public void Deep_nesting_is_refused()
    {
        var finding = Assert.Single(Samples.Read("a = " + new string('[', 100_000)).Findings);
        Assert.Equal("PF1041", finding.Code);
    }

    [Fact]
    public void What_is_not_text_is_refused()
    {
        Assert.Equal("PF1004", ProjectText.Decode([0x89, 0x50, 0x4E, 0x47, 0x00, 0x01], "x").Findings[0].Code);
        Assert.Equal("PF1004", ProjectText.Decode([0xFF, 0xFE, 0x41, 0x41], "x").Findings[0].Code);
        Assert.Equal("PF1004", ProjectText.Decode(Encoding.Unicode.GetBytes("[layout]"), "x").Findings[0].Code);
        Assert.Equal("[layout]", ProjectText.Decode([0xEF, 0xBB, 0xBF, .. "[layout]"u8], "x").Value);
    }

    [Fact]
    public void Missing_files_folders_and_monsters_are_refused()
    {
        string folder = Directory.CreateTempSubdirectory("pf-reading").FullName;
        try
        {
            Assert.Equal("PF1002", ProjectReader.ReadFile(folder).Findings[0].Code);
            Assert.Equal("PF1001", ProjectReader.ReadFile(Path.Combine(folder, "none.toml")).Findings[0].Code);
            Assert.Equal("PF1001", ProjectReader.ReadFile(Path.Combine(folder, "no", "such", "folder.toml")).Findings[0].Code);
            string monster = Path.Combine(folder, "monster.toml");
            File.WriteAllBytes(monster, new byte[ProjectText.LargestFile + 1]);
            Assert.Equal("PF1003", ProjectReader.ReadFile(monster).Findings[0].Code);
        }
        finally
        {
            Directory.Delete(folder, true);
        }
    }

    [Fact]
    public void A_preset_file_is_looked_for_beside_the_project_and_nowhere_else()
    {
        string folder = Directory.CreateTempSubdirectory("pf-presets").FullName;
        try
        {
            string project = Path.Combine(folder, "halt.toml");
            File.WriteAllText(Path.Combine(folder, "my.toml"), "length = 200\npivots = 140\nwidth = -3\n");
            File.WriteAllText(project, Samples.Small + "[[vehicle]]\nname = \"mine\"\npreset = \"my.toml\"\nwidth = 33");
            Assert.Equal(200, ProjectReader.ReadFile(project).Value!.Vehicles[1].Length);
            File.WriteAllText(project, Samples.Small + "[[vehicle]]\nname = \"mine\"\npreset = \"my.toml\"");
            var inPreset = Assert.Single(ProjectReader.ReadFile(project).Findings);
            Assert.Equal(("my.toml", 3, 9), (inPreset.File, inPreset.Line, inPreset.Column));
            foreach (string outside in new[] { "../my.toml", "/etc/my.toml", "no.toml" })
            {
                File.WriteAllText(project, Samples.Small + $"[[vehicle]]\nname = \"mine\"\nlength = 9\npivots = 5\nwidth = 3\npreset = \"{outside}\"");
                var finding = Assert.Single(ProjectReader.ReadFile(project).Findings);
                Assert.Equal(("vehicle[1].preset", 23), (finding.Key, finding.Line));
            }
        }
        finally
        {
            Directory.Delete(folder, true);
        }
    }

    /// <summary>More air than a mm is no fit, wherever one is stated; and paper with no room for its bars is refused with sizes that have it.</summary>
    [Theory]
    [InlineData("fits", "dowel = 5", "fits.dowel")]
    [InlineData("fits", "hole = 1.2", "fits.hole")]
    [InlineData("joint", "fit = 5", "joint.fit")]
    public void Air_is_refused_as_a_fit(string table, string line, string key)
    {
        var finding = Assert.Single(Samples.Read($"{Samples.Small}\n[{table}]\n{line}\n").Findings);
        Assert.Equal((key, "PF1008"), (finding.Key, finding.Code));
        Assert.Contains("from 0 to 1 mm", finding.Remedy, StringComparison.Ordinal);
        Assert.Empty(Samples.Read($"{Samples.Small}\n[{table}]\n{line[..line.IndexOf('=', StringComparison.Ordinal)]}= 1\n").Findings);
    }

    [Fact]
    public void Paper_without_room_is_answered_by_sizes_that_have_it()
    {
        string Paper(string size) => $"{Samples.Small}\n[paper]\nsize = {size}\n";
        var finding = Assert.Single(Samples.Read(Paper("[30, 40]")).Findings);
        var told = System.Text.RegularExpressions.Regex.Match(finding.Remedy, @"^Give (\d+) to \d+ mm for each side, or a size by name such as ""A4""");
        Assert.True(told.Success, finding.Remedy);
        Assert.All((string[])[$"[{told.Groups[1].Value}, {told.Groups[1].Value}]", "\"A4\""],
            size => Assert.Empty(PlatformForge.Exports.Paper.PaperSet.Objections(Samples.Read(Paper(size)).Value!.Paper)));
    }
}
