using PlatformForge.Geometry;
using PlatformForge.Track;
using PlatformForge.Track.Surveys;
using PlatformForge.Track.Surveys.Readings;
using PlatformForge.Track.Surveys.Results;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Track.Surveys;

public class SurveyFitTests
{
    private static (SurveyedTrack Track, IReadOnlyList<Finding> Findings) Survey(SurveySpec spec)
    {
        var outcome = TrackSurveyor.Survey(spec);
        Assert.True(outcome.Succeeded, string.Join("\n", outcome.Findings));
        return (outcome.Value!, outcome.Findings);
    }

    // Pendlewick as it was laid out: straight, transition, curve, transition, curve.
    private static readonly AlignmentElementSpec[] Pendlewick =
        [new StraightSpec(300), new TransitionSpec(260, 760, Hand.Left), new CurveSpec(760, Hand.Left, 620), new TransitionSpec(200, 1500, Hand.Left),
            new CurveSpec(1500, Hand.Left, 20)];

    /// <summary>The true line with its ends where the string was held.</summary>
    private static Centreline OnString(double extra = 0)
    {
        AlignmentElementSpec[] elements = [.. Pendlewick, .. extra > 0 ? [new CurveSpec(1500, Hand.Left, extra)] : Array.Empty<AlignmentElementSpec>()];
        var line = TrackLayer.Lay(new("up", new(0, 0), 0, elements)).Value!;
        var chord = line.At(1400).Position;
        return TrackLayer.Lay(new("up", new(0, 0), -Math.Atan2(chord.Y, chord.X), elements)).Value!;
    }

    [Fact]
    public void Pendlewick_from_its_string_lies_within_the_stated_bound_of_the_true_line()
    {
        var (track, findings) = Survey(Samples.Offsets(Samples.Text("pendlewick-string.csv")));
        var truth = OnString();
        Assert.DoesNotContain(findings, f => f.Severity >= Severity.Warning);
        for (double s = 5; s < track.Line.Length - 5; s += 5)
        {
            Assert.InRange(Math.Abs(truth.Locate(track.Line.At(s).Position, s).Offset), 0, track.Movement.At(s));
        }

        Assert.InRange(track.LeastRadius!.Radius, 740, 780);
        Assert.Equal(Hand.Left, track.LeastRadius.Hand);
        Assert.All(track.Residuals, r => Assert.InRange(Math.Abs(r.Miss), 0, 0.5));
    }

    [Fact]
    public void The_misread_239_of_Pendlewick_is_named_with_the_figure_that_fits()
    {
        var (track, findings) = Survey(Samples.Offsets(Samples.Text("pendlewick-string-misread.csv")));
        var outlier = Assert.Single(track.Outliers);
        Assert.Equal(700, ((PlaceReading)outlier.Reading).Ordinate!.Distance, 9);
        Assert.Equal(249, outlier.Fitting!.Value, 0.5);
        var finding = Assert.Single(findings, f => f.Code == "PF2120");
        Assert.Equal(11, finding.Line);
        Assert.Equal("survey.csv", finding.File);
        Assert.Contains("The offset of 239 mm at 700 mm does not fit; 24", finding.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Pendlewick_by_versines_finds_the_curve_and_owns_up_to_its_drift()
    {
        var (track, findings) = Survey(Samples.Versines(Samples.Text("pendlewick-versines.csv")));
        Assert.Contains(findings, f => f.Code == "PF2127");
        Assert.Contains("not applicable", Assert.Single(findings, f => f.Code == "PF2122").Message, StringComparison.Ordinal);
        Assert.InRange(track.LeastRadius!.Radius, 740, 790);

        // About 17 mm at a reading error of 0.25 mm (STANDARDS and USERS: computed by simulation).
        Assert.InRange(track.Movement.Likely[^1], 10, 40);
        var truth = TrackLayer.Lay(new("up", new(0, 0), 0, [.. Pendlewick, new CurveSpec(1500, Hand.Left, 300)])).Value!;
        for (double s = 0; s <= 1690; s += 10)
        {
            Assert.InRange(Math.Abs(truth.Locate(track.Line.At(s).Position, s).Offset), 0, track.Movement.At(s) + 0.01);
        }
    }

    [Fact]
    public void A_closing_chord_takes_most_of_the_drift_out_of_versines()
    {
        var truth = TrackLayer.Lay(new("up", new(0, 0), 0, [.. Pendlewick, new CurveSpec(1500, Hand.Left, 300)])).Value!;
        Point2 from = truth.At(0).Position, to = truth.At(1700).Position, along = to - from;
        double middle = 850;
        for (int i = 0; i < 50; i++)
        {
            middle += Point2.Dot(((from + to) * 0.5) - truth.At(middle).Position, along) / Point2.Dot(truth.At(middle).Tangent, along);
        }

        double height = -Point2.Cross(along, truth.At(middle).Position - from) / along.Length;
        string text = Samples.Text("pendlewick-versines.csv");
        var open = Survey(Samples.Versines(text)).Track;
        var closed = Survey(Samples.Versines(text, new(0, 1700, along.Length, height, 0.5))).Track;
        Assert.True(closed.Movement.Likely[^1] < 0.6 * open.Movement.Likely[^1], $"{closed.Movement.Likely[^1]} of {open.Movement.Likely[^1]}");
        Assert.Equal(along.Length, (closed.Line.At(1700).Position - closed.Line.At(0).Position).Length, 1.0);

        // A height that does not go with them is told, and what would fit, in the sign of the file whichever hand is positive there.
        foreach (var hand in new[] { Hand.Left, Hand.Right })
        {
            foreach (double read in new[] { height - 40, -height })
            {
                var misread = TrackSurveyor.Survey(Samples.Versines(text, new(0, 1700, along.Length, read, 0.5)) with { Positive = hand });
                Assert.Equal(read, misread.Value!.Closing!.Read, 1e-9);
                Assert.Equal(height, misread.Value.Closing.Fitting, 5.0);
                string told = Assert.Single(misread.Findings, f => f.Code == "PF2146").Message;
                Assert.Contains(FormattableString.Invariant($"versine of {read:0.##} mm does not go with the versines; ")
                    + FormattableString.Invariant($"{misread.Value.Closing.Fitting:0.##} would"),
                    told, StringComparison.Ordinal);
            }
        }
    }

    [Fact]
    public void Quillhaven_bay_is_read_from_inches_as_straight_curve_straight()
    {
        // Laid out as 150 straight, 220 of radius 500, 170 straight.
        var (track, _) = Survey(new PointsSpec("bay", "k", [Samples.Source(Samples.Text("quillhaven-bay.csv"), unit: null)], 0.15));
        Assert.Equal([FittedKind.Straight, FittedKind.Curve, FittedKind.Straight], track.Elements.Select(e => e.Kind));
        Assert.InRange(1 / track.Elements[1].StartCurvature, 480, 520);
        Assert.Empty(track.Line.Kinks);
    }

    [Theory]
    [InlineData("up", 1600, 120, 900)]
    [InlineData("down", 1250, 160, 900)]
    public void Marrowby_Cross_is_recognised_as_it_was_drawn(string element, double radius, double transition, double curve)
    {
        var (track, _) = Survey(Samples.Drawing(Samples.Text("marrowby-cross.svg"), DrawingFormat.Svg, element, calibration: new(300)));
        Assert.Equal([FittedKind.Straight, FittedKind.Transition, FittedKind.Curve, FittedKind.Transition, FittedKind.Straight],
            track.Elements.Select(e => e.Kind));
        Assert.Equal(-radius, 1 / track.Elements[2].StartCurvature, radius / 1000);
        Assert.Equal(transition, track.Elements[1].To - track.Elements[1].From, 5.0);
        Assert.Equal(curve, track.Elements[2].To - track.Elements[2].From, 5.0);
        Assert.All(track.Residuals, r => Assert.InRange(Math.Abs(r.Miss), 0, 0.05));
    }

    [Fact]
    public void The_pasted_alignment_lays_the_same_line()
    {
        var (track, _) = Survey(Samples.Offsets(Samples.Text("pendlewick-string.csv")));
        var laid = TrackLayer.Lay(track.Alignment!).Value!;
        for (double s = 0; s <= laid.Length; s += 20)
        {
            Assert.Equal(0, (laid.At(s).Position - track.Line.At(s).Position).Length, 1e-6);
        }

        string text = AlignmentText.Toml(track.Alignment!);
        Assert.StartsWith("[[track]]\nname = \"up\"\nstart = { x = ", text, StringComparison.Ordinal);
        Assert.Contains("{ straight = 30", text, StringComparison.Ordinal);
    }

    private static Centreline Lay(params AlignmentElementSpec[] elements) => TrackLayer.Lay(new("t", new(0, 0), 0.2, elements)).Value!;

    private static PointsSpec Measure(Centreline line, int count, MeasuredLine measured, Random? random = null, double error = 0.25)
    {
        var text = new System.Text.StringBuilder("x;y\n");
        for (int i = 0; i < count; i++)
        {
            var p = line.PointAt(line.Length * i / (count - 1), measured.FromCentre);
            double U() => random is null ? 0 : error * ((2 * random.NextDouble()) - 1);
            text.Append(System.Globalization.CultureInfo.InvariantCulture, $"{p.X + U():R};{p.Y + U():R}\n");
        }

        return new("t", "k", [Samples.Source(text.ToString(), measured: measured)], error);
    }

    [Theory]
    [InlineData(MeasuredPart.RunningEdge, Rail.Left)]
    [InlineData(MeasuredPart.OuterFace, Rail.Right)]
    public void A_measured_rail_gives_the_centre(MeasuredPart part, Rail rail)
    {
        var line = Lay(new StraightSpec(300), new CurveSpec(610, Hand.Left, 500), new StraightSpec(300));
        var track = Survey(Measure(line, 30, new(part, rail, 16.5, 0.9))).Track;
        for (double s = 0; s <= line.Length; s += 10)
        {
            Assert.Equal(0, line.Locate(track.Line.At(s).Position, s).Offset, 0.02);
        }
    }

    [Fact]
    public void Two_rails_give_the_centre_between_them_even_where_the_gauge_is_wide()
    {
        var line = Lay(new StraightSpec(300), new CurveSpec(610, Hand.Left, 500), new StraightSpec(300));
        var wide = new MeasuredLine(MeasuredPart.RunningEdge, Rail.Left, 17.0, 0.9);
        var told = wide with { Gauge = 16.5 };
        var left = Measure(line, 30, wide).Sources[0] with { Measured = told };
        var right = Measure(line, 30, wide with { Rail = Rail.Right }).Sources[0] with { Measured = told with { Rail = Rail.Right } };
        var track = Survey(new PointsSpec("t", "k", [left, right], 0.25)).Track;
        for (double s = 0; s <= line.Length; s += 10)
        {
            Assert.Equal(0, line.Locate(track.Line.At(s).Position, s).Offset, 0.1);
        }
    }

    /// <summary>Straight, transition, curve, transition, straight, as a drawing or a patient measurer gives it: closer readings must
    /// not be met by more elements.</summary>
    [Theory]
    [InlineData(60)]
    [InlineData(120)]
    [InlineData(200)]
    [InlineData(240)]
    [InlineData(241)]
    [InlineData(600)]
    public void However_close_the_readings_the_same_five_elements_are_found(int count)
    {
        var line = Lay(new StraightSpec(400), new TransitionSpec(150, 700, Hand.Left), new CurveSpec(700, Hand.Left, 500),
            new TransitionSpec(150, null, Hand.Left), new StraightSpec(400));
        for (int seed = 1; seed <= 3; seed++)
        {
            var random = new Random(seed);
            var places = Enumerable.Range(0, count).Select(i => new PlaceReading(
                "f", i + 2, LengthUnit.Millimetre, line.At(line.Length * i / (count - 1)).Position + new Point2(0, 0.25 * ((2 * random.NextDouble()) - 1)), 0));
            var track = TrackSurveyor.Tried(new PlaceSurvey("t", "k", 0.25, [places.ToArray()]))!;
            Assert.Equal(
                [FittedKind.Straight, FittedKind.Transition, FittedKind.Curve, FittedKind.Transition, FittedKind.Straight],
                track.Elements.Select(e => e.Kind));
            Assert.Equal(700, track.LeastRadius!.Radius, 7.0);
        }
    }

    [Fact]
    public void A_kink_of_sectional_track_is_kept_and_told()
    {
        var line = Lay(new StraightSpec(400), new KinkSpec(0.035, Hand.Left), new StraightSpec(400));
        var (track, findings) = Survey(Measure(line, 33, MeasuredLine.Centre, new Random(4)));
        var kink = Assert.Single(track.Line.Kinks);
        Assert.Equal(400, kink.Chainage, 15.0);
        Assert.Equal(0.035, kink.Turn, 0.004);
        Assert.Contains(findings, f => f.Code == "PF2124");
        Assert.Contains("kink = ", AlignmentText.Toml(track.Alignment!), StringComparison.Ordinal);
        Assert.Single(TrackLayer.Lay(track.Alignment!).Value!.Kinks);
    }

    [Fact]
    public void Readings_that_scatter_by_more_than_stated_are_told()
    {
        var line = Lay(new CurveSpec(760, Hand.Left, 1000));
        var spec = Measure(line, 40, MeasuredLine.Centre, new Random(2), 1.0) with { RulerError = 0.25 };
        Assert.Equal("PF2204", Survey(spec).Findings[0].Code);
    }

    [Fact]
    public void The_same_survey_gives_the_same_line_to_the_last_bit()
    {
        var spec = Samples.Offsets(Samples.Text("pendlewick-string-misread.csv"));
        var (one, other) = (Survey(spec).Track, Survey(spec).Track);
        Assert.Equal(one.Movement.Likely, other.Movement.Likely);
        Assert.Equal(AlignmentText.Toml(one.Alignment!), AlignmentText.Toml(other.Alignment!));
    }

    [Fact]
    public void A_file_of_100000_rows_is_read_and_fitted()
    {
        // How long it takes is measured by the benchmarks (SurveyRuns); here it must come out right.
        var line = OnString();
        var track = Survey(Measure(line, 100_000, MeasuredLine.Centre, new Random(1), 0.5)).Track;
        Assert.Equal(100_000, track.Residuals.Count);
        Assert.Empty(track.Outliers);
        for (double s = 10; s < 1390; s += 10)
        {
            Assert.InRange(Math.Abs(line.Locate(track.Line.At(s).Position, s).Offset), 0, track.Movement.At(s));
        }
    }

    [Theory]
    [InlineData(10_000)]
    [InlineData(100_000)]
    public void Versines_in_as_many_rows_are_fitted_too_and_a_misread_one_is_named(int count)
    {
        var line =
            TrackLayer.Lay(new("t", new(0, 0), 0, [new StraightSpec(400), new TransitionSpec(150, 700, Hand.Left), new CurveSpec(700, Hand.Left, 500),
                new TransitionSpec(150, null, Hand.Left), new StraightSpec(400)])).Value!;
        var random = new Random(1);
        var text = new System.Text.StringBuilder("station;versine\n");
        for (int i = 0; i < count; i++)
        {
            double s = 100 + (1400.0 * i / (count - 1)), read = VersineOfLine.Of(line, s, 200) + (0.5 * random.NextDouble()) - 0.25 + (i == count / 2 ? 5 : 0);
            text.Append(System.Globalization.CultureInfo.InvariantCulture, $"{s:0.######};{read:0.###}\n");
        }

        var (track, findings) = Survey(Samples.Versines(text.ToString(), new ClosingChord(0, 1600, (line.PointAt(1600, 0) - line.PointAt(0, 0)).Length)));
        Assert.DoesNotContain(findings, f => f.Code == "PF2121");
        Assert.Equal((count / 2) + 2, Assert.Single(track.Outliers).Reading.Row);
        Assert.Equal(count, track.Residuals.Count);
        for (double s = 100; s < 1500; s += 10)
        {
            Assert.InRange(Math.Abs(line.Locate(track.Line.At(s).Position, s).Offset), 0, track.Movement.At(s));
        }
    }

    [Fact]
    public void A_platform_bought_to_a_catalogue_radius_would_stand_some_16_mm_off()
    {
        // A check of scale (up to 16 mm; common practice, no source): a 36 inch curve laid to the middle of the platform.
        var (track, _) = Survey(Samples.Offsets(Samples.Text("pendlewick-string.csv")));
        var middle = track.Line.At(635);
        var catalogue = TrackLayer.Lay(new("c", middle.Position, middle.Heading, [new CurveSpec(914.4, Hand.Left, 500)])).Value!;
        double off = Math.Abs(catalogue.Locate(track.Line.At(1000).Position, 365).Offset);
        Assert.InRange(off, 10, 20);
        Assert.True(off > 10 * track.Movement.Most(270, 1000));
    }

    [Fact]
    public void A_string_lining_table_of_a_survey_closes()
    {
        var (track, _) = Survey(Samples.Offsets(Samples.Text("pendlewick-string.csv")));
        var table = StringLining.Of(track, 200);
        Assert.InRange(table.Rows.Count, 12, 13);
        Assert.Equal(0, table.Rows[^1].SumOfErrors, 1e-9);
        Assert.Equal(0, table.Rows[^1].HalfThrow, 1e-8);
        Assert.InRange(table.LargestThrow, 0, 3);
    }

    [Fact]
    public void Track_laid_by_eye_is_drawn_as_a_smooth_curve_within_its_bound()
    {
        // Curvature that wanders without end: no straights and curves to recognise.
        var line = Lay([.. Enumerable.Range(0, 18).Select(i => new TransitionSpec(90, 500 + (90 * ((i * 7) % 11)), i * 5 % 7 < 4 ? Hand.Left : Hand.Right))]);
        var (track, findings) = Survey(Measure(line, 70, MeasuredLine.Centre, new Random(3)));
        Assert.Contains(findings, f => f.Code is "PF2129");
        double worst = 0;
        for (double s = 30; s < line.Length - 30; s += 10)
        {
            worst = Math.Max(worst, Math.Abs(line.Locate(track.Line.At(s).Position, s).Offset) - track.Movement.At(s));
        }

        Assert.InRange(worst, -1, 0.3);
        Assert.NotNull(track.Alignment);
    }
}
