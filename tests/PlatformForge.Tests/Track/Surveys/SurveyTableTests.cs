using PlatformForge.Track.Surveys;
using PlatformForge.Track.Surveys.Readings;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Track.Surveys;

public class SurveyTableTests
{
    private const string Track = "0;0\n100;0\n200;1\n300;4\n400;9\n";

    private static PlaceSurvey Read(SurveySpec spec)
    {
        var outcome = SurveyReader.Read(spec);
        Assert.True(outcome.Succeeded, string.Join("\n", outcome.Findings));
        return Assert.IsType<PlaceSurvey>(outcome.Value);
    }

    private static Finding Fault(SurveySpec spec, string code)
    {
        var outcome = SurveyReader.Read(spec);
        Assert.False(outcome.Succeeded);
        return outcome.Findings.First(f => f.Code == code);
    }

    [Theory]
    [InlineData("x,y\n0,0\n100,0.5\n200,1\n300,4\n400,9\n")]
    [InlineData("\uFEFFx;y\r\n0;0\r\n100;0,5\r\n200;1\r\n300;4\r\n400;9\r\n")]
    [InlineData("# a comment\ny\tnote\tX\n0\t\t0\n\n0,5\tjoint\t100\n# another\n1\t\t200\n4\t\t300\n9\t\t400")]
    [InlineData("East (cm);North (mm)\n0;0\n10;0.5\n20;1\n30;4\n40;9\n")]
    [InlineData("x_in,y_mm\n0,0\n3.937007874015748,0.5\n7.874015748031496,1\n11.811023622047244,4\n15.748031496062992,9\n")]
    [InlineData("\"x\",\"y\",\"note\"\n0,0,\"a, b\"\n100,0.5,\"say \"\"here\"\"\"\n200,1,\n300,4,\n400,9,\n")]
    public void Columns_in_any_order_with_any_usual_mark_give_the_same_millimetres(string text)
    {
        var run = Read(Samples.Points(text)).Runs[0];
        Assert.Equal(5, run.Count);
        Assert.Equal(100, run[1].Place.X, 9);
        Assert.Equal(0.5, run[1].Place.Y, 9);
        Assert.Equal(400, run[4].Place.X, 9);
        Assert.Equal(9, run[4].Place.Y, 9);
    }

    [Fact]
    public void Inches_with_decimal_commas_are_read_from_Quillhaven()
    {
        var run = Read(Samples.Points(Samples.Text("quillhaven-bay.csv"), unit: null)).Runs[0];
        Assert.Equal(16, run.Count);
        Assert.Equal(8.00 * 25.4, run[0].Place.X, 9);
        Assert.Equal(-2.20 * 25.4, run[0].Place.Y, 9);
        Assert.Equal(LengthUnit.Inch, run[0].Unit);
        Assert.Equal(18, run[^1].Row);
    }

    [Fact]
    public void Offsets_lie_on_their_side_of_the_string()
    {
        var right = Read(Samples.Offsets(Samples.Text("pendlewick-string.csv"))).Runs[0];
        Assert.Equal(-249, right[7].Place.Y, 9);
        var spec = new OffsetsSpec("up", "k", [Samples.Source("distance;offset;side\n0;5;left\n100;6;R\n200;7;\n300;8;\n400;9;\n")], 0.25, new(10, 20),
            Math.PI / 2);
        var mixed = Read(spec).Runs[0];
        Assert.Equal(5, mixed[0].Place.X, 9);
        Assert.Equal(16, mixed[1].Place.X, 9);
        Assert.Equal(120, mixed[1].Place.Y, 9);
    }

    [Theory]
    [InlineData("", "PF2101", 1, 0)]
    [InlineData("# only a comment\n\n", "PF2101", 1, 0)]
    [InlineData("PK\u0003\u0004\0\0\0", "PF2101", 1, 0)]
    [InlineData("0;0\n100;0\n200;1\n300;4\n400;9\n", "PF2102", 1, 0)]
    [InlineData("x;height\n" + Track, "PF2102", 1, 0)]
    [InlineData("x (furlong);y\n" + Track, "PF2109", 1, 1)]
    [InlineData("x;y\n0;0\n100;zero\n200;1\n300;4\n400;9", "PF2103", 3, 2)]
    [InlineData("x;y\n0;0\n100;\n200;1\n300;4\n400;9", "PF2103", 3, 2)]
    [InlineData("x;y\n0;0\n1.100,5;0\n200;1\n300;4\n400;9", "PF2103", 3, 1)]
    [InlineData("x;y\n0;0\n100;NaN\n200;1\n300;4\n400;9", "PF2103", 3, 2)]
    [InlineData("x;y\n0;0\n1e9;0\n200;1\n300;4\n400;9", "PF2103", 3, 1)]
    [InlineData("x;y\n0;0\n100;0;7\n200;1\n300;4\n400;9", "PF2104", 3, 0)]
    [InlineData("x,y\n0,0\n100,0,5\n200,1\n300,4\n400,9", "PF2104", 3, 0)]
    [InlineData("x;y\n0;0\n100;0\n200;1\n300;4", "PF2105", 5, 0)]
    [InlineData("x;y\n" + Track + "350;6\n360;7", "PF2106", 7, 0)]
    [InlineData("x;y\n0;0\n100;0\n100;0\n200;1\n300;4\n400;9", "PF2107", 4, 0)]
    [InlineData("x;y\n0;0\n300;0\n500;100\n550;300\n400;450\n200;300\n250;-100", "PF2108", 8, 0)]
    public void A_wrong_points_file_is_told_by_row_and_column(string text, string code, int line, int column)
    {
        var fault = Fault(Samples.Points(text), code);
        Assert.Equal("survey.csv", fault.File);
        Assert.Equal((line, column), (fault.Line, fault.Column));
        Assert.NotEmpty(fault.Remedy);
    }

    [Theory]
    [InlineData("distance;offset\n0;0\n200;5\n100;3\n300;7\n400;9", "PF2106", 4)]
    [InlineData("distance;offset\n0;0\n100;5\n100;3\n300;7\n400;9", "PF2107", 4)]
    [InlineData("distance;offset;side\n0;0;left\n100;5;up\n200;3;\n300;7;\n400;9;", "PF2110", 3)]
    public void A_wrong_string_file_is_told_by_row(string text, string code, int line)
    {
        var fault = Fault(Samples.Offsets(text), code);
        Assert.Equal(line, fault.Line);
    }

    [Fact]
    public void A_spacing_beside_stations_that_have_a_unit_is_refused()
    {
        var spec = Samples.Versines("station (mm);versine (mm)\n100;1\n200;2\n300;3\n400;2\n500;1\n") with { Spacing = 100 };
        var fault = Fault(spec, "PF2128");
        Assert.Equal((1, 1), (fault.Line, fault.Column));
        Assert.True(SurveyReader.Read(spec with { Spacing = null }).Succeeded);
    }

    [Fact]
    public void A_file_without_any_unit_is_asked_for_one()
    {
        var outcome = SurveyReader.Read(Samples.Points("x;y\n" + Track, unit: null));
        Assert.Equal(2, outcome.Findings.Count(f => f.Code == "PF2109"));
    }

    [Fact]
    public void Many_bad_rows_are_told_up_to_a_limit_and_then_counted()
    {
        string text = "x;y\n" + string.Concat(Enumerable.Range(0, 5000).Select(i => $"{i};bad\n"));
        var outcome = SurveyReader.Read(Samples.Points(text));
        Assert.Equal(InputLimits.MessagesOfAKind + 1, outcome.Findings.Count);
        Assert.Contains("4990 more rows", outcome.Findings[^1].Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_ruler_error_of_nothing_is_refused() =>
        Assert.Equal("track[0].points.ruler_error", Fault(Samples.Points("x;y\n" + Track, error: 0), "PF2118").Key);

    [Fact]
    public void Rails_that_cross_are_told()
    {
        const string one = "x;y\n0;8\n100;8\n200;8\n300;8\n400;8\n", other = "x;y\n0;-8\n100;-8\n200;-4\n300;12\n400;20\n";
        var left = new MeasuredLine(MeasuredPart.RunningEdge, Rail.Left, 16.5, 0.9);
        var spec = new PointsSpec("up", "k", [Samples.Source(one, measured: left, file: "left.csv"),
            Samples.Source(other, measured: left with { Rail = Rail.Right }, file: "right.csv")], 0.25);
        var fault = Fault(spec, "PF2108");
        Assert.Equal(("right.csv", 5), (fault.File, fault.Line));
    }

    [Fact]
    public void A_wrong_gauge_is_told_once_and_no_good_point_blamed_for_it()
    {
        // Readings to 0.25 mm of two rails 18 mm apart, at a gauge stated as 16.5.
        var random = new Random(5);
        string Rail(double y) =>
            "x;y\n"
            + string.Concat(Enumerable.Range(0, 15).Select(i => FormattableString.Invariant($"{i * 100};{y + (0.4 * random.NextDouble()) - 0.2:0.00}\n")));
        var left = new MeasuredLine(MeasuredPart.RunningEdge, PlatformForge.Track.Surveys.Readings.Rail.Left, 16.5, 0);
        var outcome =
            TrackSurveyor.Survey(new PointsSpec("up", "k",
                [Samples.Source(Rail(9), measured: left),
                    Samples.Source(Rail(-9), measured: left with { Rail = PlatformForge.Track.Surveys.Readings.Rail.Right })], 0.25));
        Assert.Equal(["PF2123"], outcome.Findings.Where(f => f.Severity > Severity.Note).Select(f => f.Code));
        Assert.All(outcome.Value!.Residuals, r => Assert.InRange(Math.Abs(r.Miss), 0, 0.5));
    }

    [Fact]
    public void Two_rails_both_stated_as_the_left_one_are_told_as_that()
    {
        const string one = "x;y\n0;8\n100;8\n200;8\n300;8\n400;8\n", other = "x;y\n0;-8\n100;-8\n200;-8\n300;-8\n400;-8\n";
        var left = new MeasuredLine(MeasuredPart.RunningEdge, Rail.Left, 16.5, 0);
        var fault = Fault(new PointsSpec("up", "k", [Samples.Source(one, measured: left, file: "a.csv"), Samples.Source(other, measured: left, file: "b.csv")],
            0.25), "PF2131");
        Assert.Contains("both stated as the left rail, but lie 16.00 mm apart", fault.Message, StringComparison.Ordinal);
        Assert.Contains("rail = \"right\": 'b.csv' lies on that side", fault.Remedy, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("x;y;x (cm)\n", 3)]
    [InlineData("x;east;y\n", 2)]
    public void Two_columns_of_one_meaning_are_told(string heads, int column)
    {
        var fault = Fault(Samples.Points(heads + "0;0;0\n1;1;1\n"), "PF2133");
        Assert.Equal((1, column), (fault.Line, fault.Column));
    }

    [Fact]
    public void A_column_of_numbers_beside_the_distances_is_only_numbers()
    {
        var outcome = SurveyReader.Read(Samples.Versines("no;distance;versine\n1;100;1\n2;200;2\n3;300;2\n4;400;2\n5;500;1\n"));
        Assert.Equal(100, Assert.IsType<VersineSurvey>(outcome.Value).Readings[0].Station);
    }

    [Fact]
    public void Rails_farther_apart_than_the_gauge_says_are_told()
    {
        const string one = "x;y\n0;9\n100;9\n200;9\n300;9\n400;9\n", other = "x;y\n0;-9\n100;-9\n200;-9\n300;-9\n400;-9\n";
        var left = new MeasuredLine(MeasuredPart.RunningEdge, Rail.Left, 16.5, 0.9);
        var outcome =
            SurveyReader.Read(new PointsSpec("up", "k",
                [Samples.Source(one, measured: left), Samples.Source(other, measured: left with { Rail = Rail.Right })], 0.25));
        Assert.Contains("18.00 mm apart, 16.50", Assert.Single(outcome.Findings, f => f.Code == "PF2123").Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(MeasuredPart.Centre, Rail.Left, 0)]
    [InlineData(MeasuredPart.RunningEdge, Rail.Left, 8.25)]
    [InlineData(MeasuredPart.RunningEdge, Rail.Right, -8.25)]
    [InlineData(MeasuredPart.OuterFace, Rail.Right, -9.15)]
    public void What_was_measured_lies_half_a_gauge_or_a_rail_more_from_the_centre(MeasuredPart part, Rail rail, double offset) =>
        Assert.Equal(offset, new MeasuredLine(part, rail, 16.5, 0.9).FromCentre, 12);

    [Theory]
    [InlineData("station;versine\n100;1\n200;2\n300;101\n400;2\n500;1", "PF2117", 4)]
    [InlineData("station;versine\n100;1\n200;2\n300;3", "PF2105", 4)]
    [InlineData("station;versine\n100;1\n100;2\n300;3\n400;2\n500;1", "PF2107", 3)]
    public void A_wrong_versine_file_is_told_by_row(string text, string code, int line) =>
        Assert.Equal(line, Fault(Samples.Versines(text), code).Line);

    [Theory]
    [InlineData(0, 600, 700)]
    [InlineData(-50, 500, 540)]
    [InlineData(300, 200, 90)]
    public void A_closing_chord_that_cannot_be_is_refused(double from, double to, double length)
    {
        const string text = "station;versine\n100;1\n200;2\n300;3\n400;2\n500;1";
        Assert.Equal("track[0].versines.closing", Fault(Samples.Versines(text, new(from, to, length)), "PF2126").Key);
    }

    [Fact]
    public void Numbered_stations_are_spaced_as_stated()
    {
        var spec = Samples.Versines("no;versine (cm)\n1;0,1\n2;0,2\n3;0,3\n4;0,2\n") with { Spacing = 50 };
        var survey = Assert.IsType<VersineSurvey>(SurveyReader.Read(spec).Value);
        Assert.Equal([50, 100, 150, 200], survey.Readings.Select(r => r.Station));
        Assert.Equal(2, survey.Readings[1].Versine, 12);
    }

    [Theory]
    [InlineData("de-DE")]
    [InlineData("ar-SA")]
    public void The_culture_of_the_machine_changes_nothing(string culture)
    {
        var before = System.Globalization.CultureInfo.CurrentCulture;
        try
        {
            System.Globalization.CultureInfo.CurrentCulture = new(culture);
            Assert.Equal(0.5, Read(Samples.Points("x;y\n0;0\n100;0.5\n200;1,0\n300;4\n400;9\n")).Runs[0][1].Place.Y, 12);
        }
        finally
        {
            System.Globalization.CultureInfo.CurrentCulture = before;
        }
    }

    [Theory]
    [InlineData("no;versine (mm)", null, "track[0].versines.spacing")]
    [InlineData("Number;versine", null, "track[0].versines.spacing")]
    [InlineData("station;versine", null, "track[0].versines")]
    [InlineData("station (mm);versine", null, "track[0].versines")]
    [InlineData("no;versine", 1.0, "track[0].versines.spacing")]
    public void Numbers_of_stations_are_never_taken_for_distances(string header, double? spacing, string key)
    {
        var fault = Fault(Samples.Versines(header + "\n1;0\n2;1\n3;5\n4;6.6\n5;6.6\n6;6.6\n7;3\n8;0\n") with { Spacing = spacing }, "PF2148");
        Assert.Equal((key, "survey.csv", 1, 1), (fault.Key, fault.File, fault.Line, fault.Column));
        Assert.Contains("spacing = 100", fault.Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void Numbers_under_a_unit_and_stations_near_one_another_are_distances() =>
        Assert.All(["no (m);versine\n1;1\n2;2\n3;3\n4;2\n", "station;versine\n100;1\n110;2\n120;3\n130;2\n"],
            t => Assert.True(SurveyReader.Read(Samples.Versines(t)).Succeeded));

    [Fact]
    public void A_length_too_great_is_told_with_the_greatest_that_is_taken()
    {
        var fault = Fault(Samples.Points("x;y\n0;0\n1000001;0\n200;1\n300;4\n400;9"), "PF2103");
        Assert.Contains("1000000 mm", fault.Remedy, StringComparison.Ordinal);
        Read(Samples.Points("x;y\n0;0\n100;0\n200;1\n300;4\n1000000;9"));
    }

    [Theory]
    [InlineData("x (cm);y (cm)", LengthUnit.Inch, true)]
    [InlineData("x (cm);y (in)", LengthUnit.Inch, true)]
    [InlineData("x (cm);y", LengthUnit.Inch, false)]
    [InlineData("x (cm);y (cm)", LengthUnit.Centimetre, false)]
    public void A_unit_at_odds_with_the_headers_is_told_where_no_column_takes_it(string header, LengthUnit unit, bool told)
    {
        var spec = new PointsSpec("up", "k", [Samples.Source(header + "\n0;0\n10;0\n20;1\n30;2\n40;3\n", unit) with { UnitStated = true }], 0.25);
        var outcome = SurveyReader.Read(spec);
        Assert.True(outcome.Succeeded);
        Assert.Equal(told, outcome.Findings.Any(f => f is { Code: "PF2147", Severity: Severity.Warning, Line: 1, Column: 1 }));
        Assert.DoesNotContain(SurveyReader.Read(spec with { Sources = [spec.Sources[0] with { UnitStated = false }] }).Findings, f => f.Code == "PF2147");
    }

    [Fact]
    public void Places_are_told_in_mm_and_figures_as_they_were_written()
    {
        // A straight along a string in inches, offsets in cm; one is misread.
        string rows = string.Concat(Enumerable.Range(0, 40).Select(i => FormattableString.Invariant($"{i * 1.5:0.###};{(i == 20 ? 22.5 : 21.5):0.##}\n")));
        var findings = TrackSurveyor.Survey(Samples.Offsets("distance (in);offset (cm)\n" + rows)).Findings;
        Assert.Contains("The offset of 22.5 cm at 762 mm does not fit; 21.5 would", Assert.Single(findings, f => f.Code == "PF2120").Message,
            StringComparison.Ordinal);
        Assert.Contains("Distance 25.4 mm comes after 50.8 mm",
            Fault(Samples.Offsets("distance (mm);offset\n0;0\n50.8;5\n25.4;3\n300;7\n400;9"), "PF2106").Message, StringComparison.Ordinal);
    }
}
