using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using PlatformForge.Track;
using PlatformForge.Track.Surveys;
using PlatformForge.Track.Surveys.Readings;
using PlatformForge.Track.Surveys.Remarks;
using Xunit;

namespace PlatformForge.Tests.Track.Surveys;

public class VersineTests
{
    // Versines over a 20 m chord in mm. "Approx" is the railway examination rule 125 C²/R with C and R in m (quizall.hivanix.in,
    // question 579838); the exact values follow from v(2R − v) = (c/2)² ("Railwayf" lecture sheet).
    [Theory]
    [InlineData(150, 333.3333, 333.7045)]
    [InlineData(200, 250, 250.1564)]
    [InlineData(250, 200, 200.0801)]
    [InlineData(300, 166.6667, 166.7130)]
    [InlineData(400, 125, 125.0195)]
    [InlineData(500, 100, 100.0100)]
    [InlineData(1000, 50, 50.0013)]
    [InlineData(2000, 25, 25.0002)]
    public void Versines_of_a_20_m_chord_are_the_published_ones(double radius, double approx, double exact)
    {
        // A tenth of the size, since tracks of models have no such radius.
        Assert.Equal(exact, 10 * Shown(radius * 100, 2_000), 0.00006);
        Assert.Equal(approx, 125.0 * 20 * 20 / radius, 0.00006);
    }

    // What a chord laid to an arc of such a radius shows.
    private static double Shown(double radius, double chord) => VersineOfLine.Of(
        TrackLayer.Lay(new("arc", new(3, 4), 1, [new CurveSpec(radius, Hand.Left, 3 * chord)])).Value!, 1.5 * chord, chord);

    // Radii and ordinates for a 100 ft chord from a county survey field book (planning.countyofdane.com, document 967811), feet:
    // degree and minute, R, mid-ordinate M, tangent offset T, deflection distance d (the last row has none).
    public static TheoryData<int, int, double, double, double, double> FieldBook() => new()
    {
        { 0, 30, 11459, 0.109, 0.436, 0.873 },
        { 0, 40, 8594.4, 0.145, 0.582, 1.164 },
        { 1, 0, 5729.6, 0.218, 0.873, 1.745 },
        { 1, 10, 4911.2, 0.255, 1.018, 2.036 },
        { 1, 20, 4297.3, 0.291, 1.164, 2.327 },
        { 1, 30, 3819.8, 0.327, 1.309, 2.618 },
        { 1, 40, 3437.9, 0.364, 1.454, 2.909 },
        { 1, 50, 3125.4, 0.400, 1.600, 3.200 },
        { 7, 0, 819.0, 1.528, 6.105, 12.21 },
        { 7, 20, 781.8, 1.600, 6.395, 12.79 },
        { 7, 30, 764.6, 1.637, 6.540, 13.08 },
        { 7, 40, 747.9, 1.673, 6.685, 13.37 },
        { 8, 0, 716.8, 1.746, 6.976, 13.95 },
        { 8, 20, 688.2, 1.819, 7.266, 14.53 },
        { 8, 30, 674.7, 1.855, 7.411, 14.82 },
        { 8, 40, 661.7, 1.892, 7.556, 15.11 },
        { 9, 0, 637.3, 1.965, 7.846, 15.69 },
        { 9, 20, 614.6, 2.037, 8.138, 16.27 },
        { 9, 30, 603.8, 2.074, 8.281, double.NaN },
    };

    // The tolerances are those under which the table agrees with its own formulae: R 0.2, M 0.001, T 0.0025, d 0.005.
    [Theory]
    [MemberData(nameof(FieldBook))]
    public void The_degree_of_curve_table_is_met_by_lines_laid_here(int degree, int minute, double radius, double ordinate, double tangent, double deflection)
    {
        double angle = (degree + (minute / 60.0)) * Math.PI / 180, exact = 50 / Math.Sin(angle / 2);
        Assert.Equal(radius, exact, 0.2);
        var line = TrackLayer.Lay(new("curve", new(0, 0), 0, [new StraightSpec(100), new CurveSpec(exact, Hand.Left, 300)])).Value!;
        Assert.Equal(ordinate, VersineOfLine.Of(line, 250, 100), 0.001);

        // The tangent offset: how far a point a chord beyond the tangent point has left the tangent.
        double turned = 2 * Math.Asin(50 / exact);
        Assert.Equal(tangent, line.At(100 + (exact * turned)).Position.Y, 0.0025);
        if (!double.IsNaN(deflection))
        {
            // The deflection distance: from the end of one chord, produced by its own length, to the end of the next.
            var a = line.At(100).Position;
            var b = line.At(100 + (exact * turned)).Position;
            var c = line.At(100 + (2 * exact * turned)).Position;
            Assert.Equal(deflection, (c - (b + (b - a))).Length, 0.005);
        }
    }

    // 62 ft string: about an inch of mid-ordinate to a degree (US Army course TR0671 for the string; the rule is common practice,
    // no source). Inches.
    [Theory]
    [InlineData(1, 1.00635)]
    [InlineData(2, 2.01267)]
    [InlineData(5, 5.03111)]
    [InlineData(10, 10.05815)]
    [InlineData(15, 15.07701)]
    public void A_62_ft_string_shows_an_inch_to_the_degree(double degree, double inches) =>
        Assert.Equal(inches, 12 * Shown(50 / Math.Sin(degree * Math.PI / 360), 62), 0.00001);

    [Property(MaxTest = 60)]
    public Property A_chord_laid_to_an_arc_shows_its_exact_versine_on_either_rail() =>
        Prop.ForAll(Gen.Choose(250, 2000).ToArbitrary(), Gen.Choose(50, 300).ToArbitrary(), Gen.Choose(-16, 16).ToArbitrary(), (radius, chord, offset) =>
        {
            var line = TrackLayer.Lay(new("arc", new(3, 4), 1, [new CurveSpec(radius, Hand.Left, Math.Min(1500, radius * 6))])).Value!;
            double versine = VersineOfLine.Of(line, line.Length / 2, chord, offset), own = radius - offset;
            return Math.Abs(versine - (own - Math.Sqrt((own * own) - (chord * chord / 4.0)))) < 1e-7;
        });

    // The example of STANDARDS 4.4, built to follow the published rules of TR0671 exactly.
    private static readonly double[] Measured = [0, 0, 1, 3, 6, 8, 9, 7, 9, 8, 6, 4, 2, 0, 0, 0];
    private static readonly double[] Proposed = [0, 0, 1, 4, 5, 8, 8, 8, 8, 8, 8, 4, 1, 0, 0, 0];
    private static readonly double[] FullThrow = [0, 0, 0, 0, -2, -2, -2, 0, 0, 2, 4, 2, 0, 0, 0, 0];
    private static readonly double[] Sums = [0, 0, 0, -1, 0, 0, 1, 0, 1, 1, -1, -1, 0, 0, 0, 0];

    private static double[] Numbers(int count) => [.. Enumerable.Range(0, count).Select(i => (double)i)];

    [Fact]
    public void The_string_lining_example_comes_out_as_published()
    {
        var table = StringLining.Of(Numbers(16), Measured, Proposed);
        Assert.Equal(Sums, table.Rows.Select(r => r.SumOfErrors));
        Assert.Equal(FullThrow, table.Rows.Select(r => r.FullThrow));
        Assert.Equal(63, table.Rows.Sum(r => r.Measured));
        Assert.Equal(63, table.Rows.Sum(r => r.Proposed));
        Assert.Equal(450, table.Rows.Sum(r => r.Station * r.Measured));
        Assert.Equal(450, table.Rows.Sum(r => r.Station * r.Proposed));
        Assert.Equal(0, table.Rows[^1].SumOfErrors);
        Assert.Equal(0, table.Rows[^1].HalfThrow);
    }

    [Fact]
    public void Slewing_by_the_throws_gives_the_proposed_versines()
    {
        var t = StringLining.Of(Numbers(16), Measured, Proposed).Rows.Select(r => r.FullThrow).ToArray();
        for (int i = 1; i < 15; i++)
        {
            Assert.Equal(Proposed[i], Measured[i] + t[i] - ((t[i - 1] + t[i + 1]) / 2), 12);
        }
    }

    [Property(MaxTest = 100)]
    public Property Proposed_versines_always_close(int seed)
    {
        var random = new Random(seed);
        double[] fair = [.. Enumerable.Range(0, 20).Select(i => i is < 4 or > 15 ? 0 : 6.0)];
        double[] measured = [.. fair.Select((v, i) => v + (i is < 2 or > 17 ? 0 : random.NextDouble() - 0.5))];
        var table = StringLining.Of(Numbers(20), measured, StringLining.Propose(measured, fair, 0.1));
        return (Math.Abs(table.Rows[^1].SumOfErrors) < 1e-9 && Math.Abs(table.Rows[^1].HalfThrow) < 1e-8).ToProperty();
    }

    private static List<VersineReading> Readings(params double[] versines) =>
        [.. versines.Select((v, i) => new VersineReading("f", i + 2, LengthUnit.Millimetre, 100 * (i + 1), v))];

    [Fact]
    public void Odd_and_even_sums_are_compared_only_between_straights()
    {
        Assert.True(OddEvenCheck.Of(Readings(Measured), 0.25).Applies);
        Assert.False(OddEvenCheck.Of(Readings(0, 0, 1, 3, 5, 5, 5, 3, 3), 0.25).Applies);
        Assert.False(OddEvenCheck.Of(Readings(3, 3, 1, 0, 0, 0), 0.25).Applies);
        Assert.True(OddEvenCheck.Of(Readings(0, 0, 1, 3, 6, 8, 9, 9, 9, 8, 6, 3, 1, 0, 0), 0.25).Passes);
        Assert.False(OddEvenCheck.Of(Readings(0, 0, 1, 3, 6, 8, 9, 13, 9, 8, 6, 3, 1, 0, 0), 0.25).Passes);
    }
}
