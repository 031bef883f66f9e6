using PlatformForge.Clearance.Rules;
using Xunit;

namespace PlatformForge.Tests.Standards;

/// <summary>
/// The continental model standards against exact overthrow. NEM 103 (2016) widens the clearance gauge of NEM 102 (2017) by E on curves; E is not
/// the overthrow but less by what NEM 102 holds in reserve, so the check is the clearance that is left for a 2.825 m wide vehicle of the group
/// (width from memory, well known).
/// </summary>
public class ContinentalTests
{
    private const double CoachWidth = 2825;

    public static TheoryData<string, double, double> Residuals() => new()
    {
        { "Z", 2.05, 3.45 }, { "N", 2.61, 4.42 }, { "TT", 4.08, 5.79 }, { "H0", 5.25, 6.93 },
        { "S", 7.91, 9.44 }, { "0", 10.64, 12.42 }, { "I", 15.07, 16.87 }, { "II", 23.03, 25.22 },
    };

    [Theory]
    [MemberData(nameof(Residuals))]
    public void Every_cell_of_the_widening_table_leaves_the_published_clearance(string size, double least, double most)
    {
        var residuals = Cells(size).Select(c => (ContinentalTables.Sizes[size].FullWidth / 2) + c.Extra - HalfSwept(size, c.Group, c.Radius)).ToArray();
        Assert.All(residuals, r => Assert.InRange(r, least - 0.01, most + 0.01));
        Assert.Equal(least, residuals.Min(), 0.01);
        Assert.Equal(most, residuals.Max(), 0.01);
    }

    public static TheoryData<string, double, double, double, int, int> Differences() => new()
    {
        { "Z", 0.25, 1.40, 1.53, 31, 47 }, { "N", 0.48, 1.89, 2.06, 35, 38 }, { "TT", 0.67, 2.00, 2.14, 36, 27 }, { "H0", 1.05, 2.49, 2.51, 38, 16 },
        { "S", 1.29, 3.02, 2.90, 39, 7 }, { "0", 2.09, 3.89, 3.24, 36, 1 }, { "I", 3.58, 5.60, double.NaN, 30, 0 }, { "II", 3.33, 6.10, double.NaN, 22, 0 },
    };

    /// <summary>
    /// How each of the 403 cells relates to the throw. None reproduces it: E is the centre throw T = a²/8R less what NEM 102 holds in reserve, in whole mm.
    /// Where E is above 0 the difference T − E lies in the range computed for the size; where E is 0 the throw is below what the reserve takes. The exact throw
    /// of the product is compared, which T bounds from below.
    /// </summary>
    [Theory]
    [MemberData(nameof(Differences))]
    public void Every_cell_differs_from_the_centre_throw_by_what_the_clearance_gauge_holds_in_reserve(string size, double least, double most,
        double largestAtNil, int widened, int nil)
    {
        var cells = Cells(size).ToArray();
        double ratio = ContinentalTables.Sizes[size].Ratio;
        double Throw(VehicleGroup group, double radius) => Math.Pow(ContinentalTables.Limits(group).Pivots / ratio, 2) / (8 * radius);
        double[] differences = [.. cells.Where(c => c.Extra > 0).Select(c => Throw(c.Group, c.Radius) - c.Extra)];
        Assert.Equal(least, differences.Min(), 0.006);
        Assert.Equal(most, differences.Max(), 0.006);
        double[] atNil = [.. cells.Where(c => c.Extra == 0).Select(c => Throw(c.Group, c.Radius))];
        Assert.Equal(largestAtNil, atNil.Length == 0 ? double.NaN : atNil.Max(), 0.006);
        Assert.Equal((widened, nil), (differences.Length, atNil.Length));
        foreach (var (group, radius, _) in cells)
        {
            var (length, pivots) = ContinentalTables.Limits(group);
            double exact = new CircularTrack(radius).Throws(length / ratio, pivots / ratio, 0, CoachWidth / ratio).C;
            Assert.InRange(exact, Throw(group, radius), Throw(group, radius) * 1.06);
        }
    }

    public static TheoryData<string, double, double> PlatformGaps() => new()
    {
        { "Z", 0.55, 1.95 }, { "N", 0.61, 2.42 }, { "TT", 1.08, 2.79 }, { "H0", 1.25, 2.93 },
        { "S", 1.91, 3.44 }, { "0", 2.64, 4.42 }, { "I", 5.07, 6.87 }, { "II", 5.03, 7.22 },
    };

    [Theory]
    [MemberData(nameof(PlatformGaps))]
    public void Platforms_at_the_planning_aids_distance_clear_every_group_on_every_curve(string size, double least, double most)
    {
        var gaps = Cells(size).Select(c => ContinentalTables.Sizes[size].EdgeDistance + c.Extra - HalfSwept(size, c.Group, c.Radius)).ToArray();
        Assert.Equal(least, gaps.Min(), 0.01);
        Assert.Equal(most, gaps.Max(), 0.01);
    }

    [Fact]
    public void Widening_table_has_403_cells_and_agrees_with_an_older_edition()
    {
        Assert.Equal(403, ContinentalTables.SizeNames.Sum(s => Cells(s).Count()));
        // gotthardbahn.ch, H0 group C of an older edition.
        (double Radius, double Extra)[] older = [(450, 12), (500, 11), (600, 9), (700, 7), (800, 6), (900, 5), (1000, 4), (1200, 3), (1400, 2), (1600, 2),
            (1800, 1), (2000, 1)];
        Assert.All(older, o => Assert.Equal(o.Extra, ContinentalTables.ExtraWidth("H0", VehicleGroup.C, o.Radius)));
        Assert.Null(ContinentalTables.ExtraWidth("H0", VehicleGroup.C, 440));
        Assert.Equal(12, ContinentalTables.ExtraWidth("H0", VehicleGroup.C, 499));
    }

    /// <summary>NEM 103 body-length limits in the model, mm.</summary>
    [Theory]
    [InlineData(VehicleGroup.A, new double[] { 91, 125, 167, 230, 313, 460, 625, 889 })]
    [InlineData(VehicleGroup.B, new double[] { 110, 151, 202, 278, 378, 556, 756, 1076 })]
    [InlineData(VehicleGroup.C, new double[] { 124, 170, 227, 313, 425, 625, 850, 1209 })]
    public void Length_limits_scale_to_the_published_model_lengths(VehicleGroup group, double[] published) =>
        Assert.Equal(published,
            ContinentalTables.SizeNames.Select(s => Math.Round(ContinentalTables.Limits(group).Length / ContinentalTables.Sizes[s].Ratio,
                MidpointRounding.AwayFromZero)));

    /// <summary>NEM 112 spacing of parallel tracks, H0 group C by radius of the inner track (gotthardbahn.ch), and the gap left between two passing
    /// coaches.</summary>
    [Theory]
    [InlineData(400, 64, 4.37)]
    [InlineData(450, 61, 4.00)]
    [InlineData(500, 59, 4.19)]
    [InlineData(600, 55, 3.58)]
    [InlineData(700, 52, 3.09)]
    [InlineData(800, 50, 3.02)]
    [InlineData(900, 48, 2.55)]
    [InlineData(1000, 47, 2.79)]
    [InlineData(1100, 46, 2.81)]
    [InlineData(1200, 46, 3.68)]
    public void Passing_coaches_keep_the_gap_that_track_spacing_gives(double radius, double spacing, double gap) =>
        Assert.Equal(gap, Passing(VehicleGroup.C, radius, spacing), 0.006);

    /// <summary>NEM 112, H0 group B, inner radius 500 (atelier-bruno-moret).</summary>
    [Fact]
    public void Passing_coaches_of_group_B_keep_their_gap() => Assert.Equal(4.77, Passing(VehicleGroup.B, 500, 55), 0.006);

    private static double Passing(VehicleGroup group, double radius, double spacing)
    {
        var (length, pivots) = ContinentalTables.Limits(group);
        return new CircularTrack(radius + spacing).Throws(length / 87, pivots / 87, 0, CoachWidth / 87).Inner
            - new CircularTrack(radius).Throws(length / 87, pivots / 87, 0, CoachWidth / 87).Outer;
    }

    private static IEnumerable<(VehicleGroup Group, double Radius, double Extra)> Cells(string size) =>
        from radius in ContinentalTables.Radii
        from g in Enum.GetValues<VehicleGroup>()
        let extra = ContinentalTables.ExtraWidth(size, g, radius)
        where extra is not null
        select (g, radius, extra.Value);

    private static double HalfSwept(string size, VehicleGroup group, double radius)
    {
        var (length, pivots) = ContinentalTables.Limits(group);
        double ratio = ContinentalTables.Sizes[size].Ratio, width = CoachWidth / ratio;
        var throws = new CircularTrack(radius).Throws(length / ratio, pivots / ratio, 0, width);
        return Math.Max(throws.C, throws.E) + (width / 2);
    }
}
