using PlatformForge.Exports.Files;
using PlatformForge.Projects;
using PlatformForge.Projects.Presets;
using PlatformForge.Projects.Runs;
using PlatformForge.Projects.Watches;
using PlatformForge.Tests.Cli;
using PlatformForge.Track;
using PlatformForge.Track.Surveys.Readings;
using PlatformForge.Track.Surveys.Remarks;
using Xunit;

namespace PlatformForge.Tests.Projects;

/// <summary>Tracks given by survey files beside the project.</summary>
public sealed class SurveyedProjectTests : IDisposable
{
    // A survey costs a second or more: each is fitted once for all that ask for it.
    private static readonly RunWatch Watch = RunWatch.None with { Memory = new() };

    private static readonly Lazy<Dossier> Measured = new(() =>
    {
        using var own = new SurveyedProjectTests();
        return DesignRun.Design(own.Read(PresetShelf.Sample("pendlewick-string")!).Value!, Watch).Value!;
    });

    private readonly TempFolder folder = new();

    public SurveyedProjectTests()
    {
        Directory.CreateDirectory(folder["survey"]);
        foreach (var (path, text) in PresetShelf.FilesOf("pendlewick-string"))
        {
            folder.Write(path, text);
        }
    }

    public void Dispose() => folder.Dispose();

    [Fact]
    public void A_track_measured_by_a_string_brings_its_own_residual_into_the_budget()
    {
        var project = Read(PresetShelf.Sample("pendlewick-string")!);
        Assert.Empty(project.Findings);
        var spec = Assert.IsType<OffsetsSpec>(project.Value!.Tracks[0].Survey);
        Assert.Equal((Hand.Right, 0.25, MeasuredPart.Centre), (spec.Side, spec.RulerError, spec.Sources[0].Measured.Part));
        var dossier = Measured.Value;
        var residual = Assert.Single(dossier.Platforms[0].Budget.Lines, l => l.Name == "survey residual");

        // A survey by string leaves a platform no farther off than a careful drawing would: with all else that is added, 2 mm.
        Assert.InRange(residual.AmountMm, 0.25, 0.9);
        Assert.InRange(dossier.Platforms[0].Budget.Lines.Sum(l => l.AmountMm), 1.1, 2);
        Assert.Equal(0.3,
            DesignRun.Design(Read(PresetShelf.Sample("pendlewick-string")!.Replace("[clearance]", "[clearance]\nsurvey = 0.3")).Value!,
                Watch).Value!.Platforms[0].Budget.Lines.Single(l => l.Name == "survey residual").AmountMm);
    }

    /// <summary>What is left and what the survey leaves uncertain are least and greatest at different places: told is the least that is left wherever the track
    /// lies, which is nil or more, and beside a stated alignment nothing; nothing of the sample's good survey is told to be at odds.</summary>
    [Fact]
    public void What_is_left_wherever_the_track_lies_is_told_as_one_figure_at_one_place()
    {
        string file = folder.Write("string.toml", PresetShelf.Sample("pendlewick-string")!);
        var run = Run("check", file);
        var residual = System.Text.RegularExpressions.Regex.Match(run.Out, @"swept with the vehicles: survey residual (\d\.\d\d) mm");
        Assert.True(residual.Success, run.Out);
        var kept = System.Text.RegularExpressions.Regex.Match(run.Out,
            "  told of the line found; wherever the survey lets the true track lie beside up side, play and budget are kept in full, "
            + @"with (\d\.\d\d) mm or more to spare \(least for ([a-z ]+), at chainage (\d+) mm\)\n");
        Assert.True(kept.Success, run.Out);
        var dossier = Measured.Value.Platforms[0];
        foreach (var place in dossier.Tightest)
        {
            Assert.InRange(place.OnAnyLine!.Left - dossier.Budget.Margin, -0.01, place.Left - dossier.Budget.Margin);
        }

        Assert.Equal(dossier.Tightest.MinBy(t => t.OnAnyLine!.Left)!.Pose.Vehicle.Name, kept.Groups[2].Value);
        Assert.All(new[] { "PF2145", "PF2160", "PF2161", "PF2190", "PF2191" }, code => Assert.DoesNotContain(code, run.Error, StringComparison.Ordinal));
        Assert.DoesNotContain("true track", Run("check", folder.Write("stated.toml", Samples.Small)).Out, StringComparison.Ordinal);
    }

    /// <summary>An island whose second face is on the surveyed track: the survey tells what may be off beside it, though only the first face says where the
    /// platform lies.</summary>
    [Fact]
    public void What_is_uncertain_beside_an_islands_second_face_is_told_of_its_own_track()
    {
        string sample = PresetShelf.Sample("pendlewick-string")!, text = sample[..sample.IndexOf("[[platform]]", StringComparison.Ordinal)] + """
            [[track]]
            name = "down"
            start = { x = -42, y = -91, heading = -24.9 }
            alignment = [
                { straight = 300 }, { transition = 280, to_radius = 860, hand = "left" }, { curve = 860, length = 700, hand = "left" }, { straight = 300 },
            ]

            [[platform]]
            name = "between"
            face = { track = "down", side = "left", from = 340, to = 1000 }
            other_face = { track = "up", side = "right" }

            """ + sample[sample.IndexOf("[printer]", StringComparison.Ordinal)..];
        var project = Read(text).Value!;
        var tracks = LaidTrack.LayAll(project, Watch).Value!;
        var doubt = Assert.Single(SurveyAdvices.Beside(project, tracks[0], tracks, Watch).Doubts);
        var other = DesignRun.Design(project, Watch).Value!.Platforms[0].FurtherFaces[0];
        Assert.Equal("between", doubt.Platform);
        Assert.InRange(doubt.At, other.Plan.Spec.Face.From - 1, other.Plan.Spec.Face.To + 1);
        Assert.Equal(other.Budget.Lines.Single(l => l.Name == "survey residual").AmountMm, doubt.Charged, 0.02);

        string file = folder.Write("island.toml", text);
        Assert.Contains("between", Run("survey", file).Out, StringComparison.Ordinal);
        Assert.Contains("measure track up wherever the platform lies between it and track down", Run("survey", file, "--how-much").Out,
            StringComparison.Ordinal);
    }

    [Fact]
    public void A_changed_reading_changes_what_the_run_is_made_from()
    {
        string sample = PresetShelf.Sample("pendlewick-string")!, csv = File.ReadAllText(folder["survey/pendlewick-string.csv"]);
        string before = Read(sample).Value!.InputHash;
        folder.Write("survey/pendlewick-string.csv", csv.Replace("249", "249.5"));
        Assert.NotEqual(before, Read(sample).Value!.InputHash);
    }

    [Theory]
    [InlineData("file = \"survey/none.csv\"", "PF1001", "track[0].survey.file")]
    [InlineData("file = \"../secret.csv\"", "PF1011", "track[0].survey.file")]
    [InlineData("file = \"survey/pendlewick-string.csv\"\nalso = [{ file = \"survey\" }]", "PF1002", "track[0].survey.also[0].file")]
    public void A_survey_file_that_is_not_there_is_told_where_it_is_named(string file, string code, string key)
    {
        var finding = Assert.Single(Read(PresetShelf.Sample("pendlewick-string")!.Replace("file = \"survey/pendlewick-string.csv\"", file)).Findings);
        Assert.Equal((code, key, "halt.toml"), (finding.Code, finding.Key, Path.GetFileName(finding.File)));
        Assert.True(finding.Line > 10);
    }

    [Fact]
    public void A_track_is_stated_or_measured_not_both()
    {
        var both = Assert.Single(Samples.Read(Samples.With(7, "alignment = [{ straight = 900 }]\nsurvey = { kind = \"points\", file = \"a.csv\" }")).Findings);
        var neither = Assert.Single(Samples.Read(Samples.With(7, "")).Findings);
        Assert.Equal(("PF1013", "PF1013", "track[0]"), (both.Code, neither.Code, both.Key));
        Assert.Equal("PF1013", Assert.Single(Samples.Read(Samples.With(7, "alignment = []")).Findings).Code);
        Assert.Equal("track[0].survey.chord", Assert.Single(Samples.Read(Samples.With(7, "survey = { kind = \"versines\", file = \"a.csv\" }")).Findings).Key);
    }

    [Theory]
    [InlineData("kind = \"points\", measured = \"running-edge\"", "PF1009", "rail")]
    [InlineData("kind = \"points\", rail = \"left\"", "PF1009", "measured")]
    [InlineData("kind = \"points\", measured = \"outer-face\", rail = \"left\"", "PF1009", "rail_width")]
    [InlineData("kind = \"points\", also = [{ file = \"b.csv\", measured = \"running-edge\" }]", "PF1009", "also[0].rail")]
    [InlineData("kind = \"string\", chord = 200", "PF1013", "chord")]
    [InlineData("kind = \"string\", spacing = 100", "PF1013", "spacing")]
    [InlineData("kind = \"string\", element = \"up\"", "PF1013", "element")]
    [InlineData("kind = \"drawing\", side = \"left\"", "PF1013", "side")]
    public void Nothing_of_a_survey_is_guessed_and_no_key_of_another_kind_passed_over(string keys, string code, string key)
    {
        var finding = Assert.Single(Samples.Read(Samples.With(7, $"survey = {{ {keys}, file = \"a.csv\" }}")).Findings);
        Assert.Equal((code, "track[0].survey." + key), (finding.Code, finding.Key));
        Assert.True(finding.Line > 0 && finding.Remedy.Length > 0);
    }

    /// <summary>What is said of pieces reaches the survey, and is refused where it means nothing.</summary>
    [Fact]
    public void Sectional_track_is_stated_with_its_radii_joints_and_kinks()
    {
        string sample = PresetShelf.Sample("pendlewick-string")!,
            laid = "laid = \"sectional\"\nradii = [760, 1500]\njoints = [168, 336]\ngreatest_kink = 1.5\n";
        string At(string text) => string.Join('\n', sample.Split('\n').Where(l => !l.StartsWith("least_", StringComparison.Ordinal))
            .Select(l => l.StartsWith("laid = ", StringComparison.Ordinal) ? text : l));
        var laying = Read(At(laid)).Value!.Tracks[0].Survey!.Laying;
        Assert.Equal([760, 1500], laying.Radii);
        Assert.Equal([168, 336], laying.Joints);
        Assert.Equal(1.5 * Math.PI / 180, laying.GreatestKink, 12);
        var idle = Read(At(laid.Replace("sectional", "flexible"))).Findings.Where(f => f.Code == "PF1013").Select(f => f.Key);
        Assert.Equal(["track[0].survey.greatest_kink", "track[0].survey.joints", "track[0].survey.radii"], idle.Order());
        Assert.Contains("PF2192", TrackFindings(At(laid.Replace("168, 336", "700"))));
    }

    /// <summary>Joints are the same in whatever order they are stated; one stated twice is refused by file, key and line with what would be right.</summary>
    [Fact]
    public void Joints_of_sectional_track_are_taken_in_any_order_and_each_once()
    {
        string sample = PresetShelf.Sample("pendlewick-string")!;
        string At(string joints) => string.Join('\n', sample.Split('\n').Where(l => !l.StartsWith("least_", StringComparison.Ordinal))
            .Select(l => l.StartsWith("laid = ", StringComparison.Ordinal) ? "laid = \"sectional\"\njoints = " + joints : l));
        Assert.Equal([200, 300, 700], Read(At("[300, 700, 200]")).Value!.Tracks[0].Survey!.Laying.Joints);
        foreach (string joints in (string[])["[300, 200, 200]", "[200, 200, 300]", "[200, 300, 200.4, 200]"])
        {
            var told = Assert.Single(Read(At(joints)).Findings);
            Assert.Equal(("PF2203", "track[0].survey.joints"), (told.Code, told.Key));
            Assert.True(told.Line > 0 && told.Column > 0 && told.File is { Length: > 0 });
            Assert.Contains("joints = [200, 300]", told.Remedy, StringComparison.Ordinal);
        }
    }

    private IEnumerable<string> TrackFindings(string text) => LaidTrack.LayAll(Read(text).Value!, Watch).Findings.Select(f => f.Code);

    [Fact]
    public void What_a_survey_leaves_open_is_told_without_asking()
    {
        string sample = PresetShelf.Sample("pendlewick-string")!;
        int from = sample.IndexOf("[track.survey]", StringComparison.Ordinal), to = sample.IndexOf("\n[", from + 1, StringComparison.Ordinal);
        to = Math.Min(to, sample.IndexOf("# The vehicles", StringComparison.Ordinal));
        string file = folder.Write("up.toml", sample[..from] + "[track.survey]\nkind = \"versines\"\nfile = \"survey/v.csv\"\nchord = 200\n" + sample[to..]);
        folder.Write("survey/v.csv", PlatformForge.Tests.Track.Surveys.Samples.Text("pendlewick-versines.csv"));
        var run = Run("survey", file);
        Assert.Contains("note PF2127", run.Error, StringComparison.Ordinal);
        Assert.Contains("note PF2122", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_project_is_begun_in_a_folder_that_is_not_there_yet()
    {
        Assert.Equal(0, Run("init", folder["new/deep/up.toml"]).Exit);
        Assert.True(File.Exists(folder["new/deep/up.toml"]));
    }

    [Fact]
    public void A_kink_of_sectional_track_is_stated_as_it_lies()
    {
        var project = Samples.Sound(Samples.With(7, "alignment = [{ straight = 300 }, { kink = 1.5, hand = \"left\" }, { straight = 600 }]"));
        Assert.Equal(new KinkSpec(1.5 * Math.PI / 180, Hand.Left), project.Tracks[0].Elements[1]);
    }

    [Fact]
    public void The_survey_command_names_the_misread_row_and_writes_what_can_be_pasted()
    {
        using var other = new TempFolder();
        Assert.Equal(0, Run("init", other["up.toml"], "--sample", "pendlewick-string").Exit);
        string csv = other["survey/pendlewick-string.csv"];
        Assert.True(File.Exists(csv));
        string[] lines = File.ReadAllLines(csv);
        int row = Array.FindIndex(lines, l => l.StartsWith("700,", StringComparison.Ordinal));
        lines[row] = "700,239";
        File.WriteAllLines(csv, lines);
        var run = Run("survey", other["up.toml"], "--string-lining", "200", "-o", other["sheets"]);
        Assert.Equal(0, run.Exit);
        Assert.Contains($"survey/pendlewick-string.csv:{row + 1}  warning PF2120", run.Error, StringComparison.Ordinal);
        Assert.Contains("left out as misread", run.Out, StringComparison.Ordinal);
        Assert.Contains("string lining over a chord of 200 mm", run.Out, StringComparison.Ordinal);
        Assert.Matches("[0-9] (outward|inward)", run.Out);
        Assert.Contains("largest misses (mm, reading left of the line positive)", run.Out, StringComparison.Ordinal);
        Assert.Matches("24[89]\\.[0-9]+ mm would fit  left out as misread", run.Out);

        string pasted = Run("survey", other["up.toml"], "--toml", "-q").Out;
        string text = File.ReadAllText(other["up.toml"]);
        int from = text.IndexOf("[[track]]", StringComparison.Ordinal), to = text.IndexOf("# The vehicles", StringComparison.Ordinal);
        var copied = Samples.Sound(text[..from] + pasted + text[to..]);

        // The doubt of the survey goes with the text: the budget is no smaller than with the survey itself.
        double Residual(ProjectSpec project) => DesignRun.Design(project, Watch).Value!.Platforms[0].Budget.Lines
            .Single(l => l.Name == "survey residual").AmountMm;
        var surveyed = ProjectReader.ReadFile(other["up.toml"]).Value!;
        Assert.InRange(Residual(copied), Residual(surveyed), Residual(surveyed) + 0.1);
        Assert.Contains("What measuring left uncertain", pasted, StringComparison.Ordinal);

        Assert.Equal(["manifest.json", "up-survey-line.csv", "up-survey-readings.csv", "up-survey-string-lining.csv", "up-survey.png", "up-survey.svg",
            "up-survey.toml"],
            other.Listing("sheets").Select(f => f.Split(' ')[0]));

        var json = Run("survey", other["up.toml"], "--json").Json();
        var readings = json.GetProperty("tracks")[0].GetProperty("readings").EnumerateArray();
        Assert.All(readings,
            r => Assert.Equal(("mm", r.GetProperty("fitting").GetDouble()), (r.GetProperty("unit").GetString(), r.GetProperty("would_fit").GetDouble())));
        Assert.Equal([row + 1], readings.Where(r => r.GetProperty("outlier").GetBoolean()).Select(r => r.GetProperty("row").GetInt32()));
    }

    [Fact]
    public void A_chord_longer_than_half_the_track_is_refused_with_the_longest_that_works()
    {
        string file = folder.Write("up.toml", PresetShelf.Sample("pendlewick-string")!);
        var run = Run("survey", file, "--string-lining", "5000");
        Assert.Equal((3, ""), (run.Exit, run.Out));
        int longest = int.Parse(System.Text.RegularExpressions.Regex.Match(run.Error, "Give at most ([0-9]+) mm").Groups[1].Value,
            System.Globalization.CultureInfo.InvariantCulture);
        var works = Run("survey", file, "--string-lining", longest.ToString(System.Globalization.CultureInfo.InvariantCulture));
        Assert.Equal(0, works.Exit);
        Assert.Contains($"over a chord of {longest} mm", works.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("-0.00", works.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void A_project_without_a_survey_says_so()
    {
        string file = folder.Write("plain.toml", Samples.Small);
        var run = Run("survey", file);
        Assert.Equal(3, run.Exit);
        Assert.Contains("PF1022", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void How_much_to_measure_is_told_before_there_are_readings_and_is_what_the_check_demands()
    {
        string text = PresetShelf.Sample("pendlewick-string")!.Replace("survey/pendlewick-string.csv", "survey/not-yet.csv");
        string file = folder.Write("up.toml", text);
        var told = Run("survey", file, "--how-much");
        Assert.Equal(0, told.Exit);
        Assert.Contains("from chainage 13 to 1262 mm", told.Out, StringComparison.Ordinal);
        Assert.Contains("262 mm past each end", told.Out, StringComparison.Ordinal);

        // One mm less is too little for the check, the figure itself is enough.
        string halt = Samples.With(17, "face = { track = \"main\", side = \"left\", from = 228, to = 672 }");
        Assert.DoesNotContain(DesignRun.Design(Samples.Sound(halt), Watch).Findings, f => f.Code is "PF4004" or "PF3020");
        Assert.Contains(DesignRun.Design(Samples.Sound(halt.Replace("from = 228", "from = 227")), Watch).Findings, f => f.Code == "PF4004");
        var stretch = Assert.Single(MeasuringStretch.Of(Samples.Sound(halt)));
        Assert.Equal((0, 900, 228), (stretch.From, stretch.To, stretch.Beyond));
    }

    [Fact]
    public void Saying_how_the_track_was_laid_makes_the_budget_of_a_string_as_small_as_a_careful_one()
    {
        var said = Measured.Value.Platforms[0].Budget;
        Assert.InRange(said.Sum + said.Lines.Single(l => l.Name == "survey residual").AmountMm, 1.1, 2.0);

        // Left out, the survey tells what naming it would give.
        string unsaid = PresetShelf.Sample("pendlewick-string")!.Replace("laid = \"flexible\"", "laid = \"unknown\"");
        var unknown = Run("survey", folder.Write("up.toml", unsaid), "--json").Json().GetProperty("tracks")[0].GetProperty("platforms")[0];
        Assert.True(unknown.GetProperty("if_flexible_mm").GetDouble() < unknown.GetProperty("takes_of_gap_at_most_mm").GetDouble());
        var flexible = Run("survey", folder.Write("up.toml", PresetShelf.Sample("pendlewick-string")!), "--json").Json().GetProperty("tracks")[0]
            .GetProperty("platforms")[0];
        Assert.Equal(unknown.GetProperty("if_flexible_mm").GetDouble(), flexible.GetProperty("takes_of_gap_at_most_mm").GetDouble(), 0.01);
        var sectional =
            Run("survey", folder.Write("up.toml", unsaid.Replace("\"unknown\"", "\"sectional\"").Replace("least_radius = 700", "")
                .Replace("least_ease = 250", "")), "--json").Json().GetProperty("tracks")[0].GetProperty("platforms")[0];
        Assert.Equal(unknown.GetProperty("if_sectional_mm").GetDouble(), sectional.GetProperty("takes_of_gap_at_most_mm").GetDouble(), 0.01);
        string basis = DesignRun.Design(Read(unsaid).Value!, Watch).Value!.Platforms[0].Budget.Lines.Single(l => l.Name == "survey residual").Basis;
        var reported = System.Text.RegularExpressions.Regex.Match(basis,
            "not said: laid = \"flexible\" would make it ([0-9.]+), laid = \"sectional\" would make it ([0-9.]+)$");
        Assert.True(reported.Success, basis);
        double Told(int group) => double.Parse(reported.Groups[group].Value, System.Globalization.CultureInfo.InvariantCulture);
        double Residual(string text) => DesignRun.Design(Read(text).Value!, Watch).Value!.Platforms[0].Budget.Lines
            .Single(l => l.Name == "survey residual").AmountMm;
        Assert.Equal(said.Lines.Single(l => l.Name == "survey residual").AmountMm, Told(1), 0.006);
        Assert.Equal(Residual(unsaid.Replace("\"unknown\"", "\"sectional\"").Replace("least_radius = 700", "").Replace("least_ease = 250", "")), Told(2),
            0.006);
        string words = Run("survey", folder.Write("up.toml", unsaid)).Out;
        Assert.Contains(FormattableString.Invariant($"laid = \"flexible\" (sprung into its curves, no kinks) would make it ")
            + FormattableString.Invariant($"{unknown.GetProperty("if_flexible_mm").GetDouble():0.00} mm; laid = \"sectional\" (pieces) would make it ")
            + FormattableString.Invariant($"{unknown.GetProperty("if_sectional_mm").GetDouble():0.00} mm"),
            words, StringComparison.Ordinal);
        Assert.True(flexible.GetProperty("one_more_leaves_mm").GetDouble() < flexible.GetProperty("takes_of_gap_at_most_mm").GetDouble());
        Assert.StartsWith("survey/pendlewick-string.csv:", flexible.GetProperty("repeat").GetString(), StringComparison.Ordinal);
    }

    /// <summary>The line of the budget in the report says what the survey command says: which reading to take again, and what that would leave of the same
    /// figure.</summary>
    [Fact]
    public void The_report_tells_which_reading_to_take_again_and_what_it_would_leave()
    {
        var project = Read(PresetShelf.Sample("pendlewick-string")!).Value!;
        var line = SurveyAdvices.In(project, Measured.Value, Watch).Platforms[0].Budget.Lines.Single(l => l.Name == "survey residual");
        var tracks = LaidTrack.LayAll(project, Watch).Value!;
        var doubt = SurveyDoubts.With(project, tracks[0], tracks).Doubts[0];
        Assert.Equal(doubt.Charged, line.AmountMm, 0.001);
        Assert.EndsWith("; " + AdviceWords.Of(doubt), line.Basis, StringComparison.Ordinal);
        Assert.Contains(FormattableString.Invariant($"would leave {doubt.Advice!.RepeatLeaves:0.00} of the {line.AmountMm:0.00}"), line.Basis,
            StringComparison.Ordinal);
    }

    /// <summary>A platform that needs more track than was measured is told before the string comes down: by the survey command, and with what to
    /// measure.</summary>
    [Theory]
    [InlineData("survey")]
    [InlineData("survey --how-much")]
    public void A_platform_past_the_readings_is_told_by_the_survey(string command)
    {
        string text = PresetShelf.Sample("pendlewick-string")!;
        var from = System.Text.RegularExpressions.Regex.Match(text, @", to = (\d+)");
        string past = folder.Write("past.toml", text[..from.Index] + ", to = 1400" + text[(from.Index + from.Length)..]);
        string All(string file)
        {
            var run = Run([.. command.Split(' ').Take(1), file, .. command.Split(' ').Skip(1)]);
            return run.Out + run.Error;
        }

        Assert.Contains("PF2207", All(past), StringComparison.Ordinal);
        Assert.DoesNotContain("PF2207", All(folder.Write("kept.toml", text)), StringComparison.Ordinal);
    }

    /// <summary>Of which lines the bound holds is told with the figure: all flexible ones, or those of 19 surveys in 20; and of a reading left out, the
    /// others.</summary>
    [Fact]
    public void The_budget_tells_of_which_lines_its_residual_holds()
    {
        Assert.EndsWith("the edge keeps clear on any flexible line that meets the readings",
            Measured.Value.Platforms[0].Budget.Lines.Single(l => l.Name == "survey residual").Basis, StringComparison.Ordinal);
        string sample = PresetShelf.Sample("pendlewick-string")!, csv = File.ReadAllText(folder["survey/pendlewick-string.csv"]);
        string Admitted(string text) => LaidTrack.LayAll(Read(text).Value!, Watch).Value![0].Survey!.Admitted;
        Assert.Equal("on any flexible line that meets the readings, and of other track in 19 of 20 surveys",
            Admitted(sample.Replace("laid = \"flexible\"", "laid = \"unknown\"")));
        Assert.Equal("in 19 of 20 surveys",
            Admitted(sample.Replace("laid = \"flexible\"", "laid = \"sectional\"").Replace("least_radius = 700", "").Replace("least_ease = 250", "")));
        folder.Write("survey/pendlewick-string.csv", csv.Replace("249", "259"));
        Assert.StartsWith("on any flexible line that meets the other readings", Admitted(sample), StringComparison.Ordinal);
    }

    private static CliRun Run(params string[] args) => CliRun.In(Watch.Memory, args);

    private PlatformForge.Units.Outcome<ProjectSpec> Read(string text) => ProjectReader.ReadFile(folder.Write("halt.toml", text));
}
