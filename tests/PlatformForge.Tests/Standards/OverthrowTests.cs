using Xunit;

namespace PlatformForge.Tests.Standards;

/// <summary>
/// Poses on circular track against published rules and exact vectors. Formulae: centre throw C = R − √(R² − p²/4 − a²/4), end throw
/// E = √((h+b)² + L²/4) − R − b; approximations (a²+p²)/8R and (L²−a²−p²)/8R (EN 15273 / UIC form, with bogie wheelbase from memory).
/// </summary>
public class OverthrowTests
{
    /// <summary>Bane NOR, platforms at curved track: reference vehicle 24 m on 18 m, Ki = 81000/2R and Ky = 63000/2R mm, R in m.</summary>
    [Theory]
    [InlineData(180, 225.000, 175.000, 225.141, 174.915, 171.830)]
    [InlineData(200, 202.500, 157.500, 202.603, 157.438, 154.937)]
    [InlineData(250, 162.000, 126.000, 162.053, 125.968, 124.365)]
    [InlineData(300, 135.000, 105.000, 135.030, 104.982, 103.867)]
    [InlineData(400, 101.250, 78.750, 101.263, 78.742, 78.115)]
    [InlineData(500, 81.000, 63.000, 81.007, 62.996, 62.594)]
    [InlineData(1000, 40.500, 31.500, 40.501, 31.500, 31.399)]
    public void Norwegian_platform_rule_is_met_by_its_reference_vehicle(double radius, double inside, double outside, double exactInside, double exactOutside,
        double exactWide)
    {
        var thin = new CircularTrack(radius * 1000).Throws(24000, 18000, 0, 0);
        var wide = new CircularTrack(radius * 1000).Throws(24000, 18000, 0, 2800);
        Assert.Equal(exactInside, thin.C, 0.0006);
        Assert.Equal(exactOutside, thin.E, 0.0006);
        Assert.Equal(exactWide, wide.E, 0.0006);
        Assert.True(thin.C >= inside - 1e-6, "the published inside figure is a lower bound of the exact one");
        Assert.True(wide.E <= thin.E && thin.E <= outside + 1e-6, "the published outside figure is an upper bound of the exact one");
        Assert.Equal(inside, 81000 / (2 * radius), 1e-9);
        Assert.Equal(outside, 63000 / (2 * radius), 1e-9);
    }

    /// <summary>gotthardbahn.ch, Gleisabstände: overhang 36000/R mm, R in m; that is the centre throw of pivots √(8·36) m apart.</summary>
    [Theory]
    [InlineData(150, 240)]
    [InlineData(200, 180)]
    [InlineData(250, 144)]
    [InlineData(300, 120)]
    [InlineData(500, 72)]
    public void Swiss_overhang_is_the_centre_throw_of_pivots_17_m_apart(double radius, double published)
    {
        double exact = new CircularTrack(radius * 1000).Throws(20000, Math.Sqrt(8 * 36e6), 0, 0).C;
        Assert.InRange(exact, published, published * 1.001);
    }

    /// <summary>Pythagorean vectors: every expected figure is an exact whole number.</summary>
    [Theory]
    [InlineData("P1", 50, 28, 0, 0, 40, 2, 2)]
    [InlineData("P2", 65, 32, 0, 0, 120, 2, 22)]
    [InlineData("P3", 65, 32, 0, 5, 102, 2, 15)]
    [InlineData("P4", 65, 32, 0, 9, 130, 2, 23)]
    [InlineData("P5", 65, 40, 30, 12, 130, 5, 20)]
    [InlineData("P6", 65, 48, 14, 12, 130, 5, 20)]
    [InlineData("P7", 65, 72, 30, 0, 80, 13, double.NaN)]
    public void Whole_number_vectors_come_out_whole(string name, double radius, double pivots, double wheelbase, double halfWidth, double length,
        double centre, double end)
    {
        var throws = new CircularTrack(radius).Throws(length, pivots, wheelbase, 2 * halfWidth);
        Assert.True(Math.Abs(throws.C - centre) < 1e-8, name);
        Assert.True(double.IsNaN(end) || Math.Abs(throws.E - end) < 1e-8, name);
    }

    /// <summary>Full-size vehicles in m: length, pivots, bogie wheelbase, width; then radius in m and mm: C approximate and exact, E
    /// approximate, exact for no width, exact. Lengths and pivots of VA to VC are NEM 103's; other vehicle figures are partly from memory.</summary>
    [Theory]
    [InlineData(20.0, 14.0, 0, 2.825, 160, 153.125, 153.198, 159.375, 159.296, 156.564)]
    [InlineData(20.0, 14.0, 0, 2.825, 200, 122.500, 122.538, 127.500, 127.459, 125.707)]
    [InlineData(20.0, 14.0, 0, 2.825, 300, 81.667, 81.678, 85.000, 84.988, 84.207)]
    [InlineData(24.2, 17.2, 0, 2.825, 160, 231.125, 231.292, 226.406, 226.246, 222.248)]
    [InlineData(24.2, 17.2, 0, 2.825, 200, 184.900, 184.986, 181.125, 181.043, 178.478)]
    [InlineData(24.2, 17.2, 0, 2.825, 300, 123.267, 123.292, 120.750, 120.726, 119.583)]
    [InlineData(27.2, 19.5, 0, 2.825, 160, 297.070, 297.347, 280.930, 280.683, 275.634)]
    [InlineData(27.2, 19.5, 0, 2.825, 200, 237.656, 237.798, 224.744, 224.618, 221.378)]
    [InlineData(27.2, 19.5, 0, 2.825, 300, 158.438, 158.479, 149.829, 149.792, 148.348)]
    [InlineData(23.0, 16.0, 2.6, 2.74, 160, 205.281, 205.413, 208.000, 207.865, 204.361)]
    [InlineData(23.0, 16.0, 2.6, 2.74, 200, 164.225, 164.292, 166.400, 166.331, 164.083)]
    [InlineData(23.0, 16.0, 2.6, 2.74, 300, 109.483, 109.503, 110.933, 110.913, 109.911)]
    [InlineData(23.0, 16.0, 0, 2.74, 200, 160.000, 160.064, 170.625, 170.552, 168.305)]
    [InlineData(19.6596, 14.1732, 2.5908, 2.8194, 160, 162.181, 162.263, 139.772, 139.711, 137.076)]
    [InlineData(19.6596, 14.1732, 2.5908, 2.8194, 200, 129.745, 129.787, 111.818, 111.786, 110.096)]
    [InlineData(19.6596, 14.1732, 2.5908, 2.8194, 300, 86.497, 86.509, 74.545, 74.536, 73.783)]
    [InlineData(19.6596, 14.1732, 2.5908, 2.8194, 360, 72.081, 72.088, 62.121, 62.115, 61.592)]
    [InlineData(26.4, 19.0, 2.5, 2.825, 160, 286.914, 287.172, 257.586, 257.379, 252.621)]
    [InlineData(26.4, 19.0, 2.5, 2.825, 200, 229.531, 229.663, 206.069, 205.963, 202.911)]
    [InlineData(26.4, 19.0, 2.5, 2.825, 300, 153.021, 153.060, 137.379, 137.348, 135.987)]
    public void Full_size_vehicles_are_thrown_as_computed(double length, double pivots, double wheelbase, double width, double radius, double approxC,
        double exactC, double approxE, double thinE, double exactE)
    {
        var curve = new CircularTrack(radius * 1000);
        var (l, a, p) = (length * 1000, pivots * 1000, wheelbase * 1000);
        var wide = curve.Throws(l, a, p, width * 1000);
        var thin = curve.Throws(l, a, p, 0);
        Assert.Equal(exactC, wide.C, 0.0006);
        Assert.Equal(exactE, wide.E, 0.0006);
        Assert.Equal(thinE, thin.E, 0.0006);
        Assert.Equal(approxC, ((a * a) + (p * p)) / (8000 * radius), 0.0006);
        Assert.Equal(approxE, ((l * l) - (a * a) - (p * p)) / (8000 * radius), 0.0006);
        Assert.True(wide.C >= approxC - 0.0006 && wide.E <= thin.E && thin.E <= approxE + 0.0006);
        var model = new CircularTrack(radius * 1000 / 76.2).Throws(l / 76.2, a / 76.2, p / 76.2, width * 1000 / 76.2);
        Assert.Equal(wide.C / 76.2, model.C, 1e-8);
        Assert.Equal(wide.E / 76.2, model.E, 1e-8);
    }

    /// <summary>Model vehicles, mm; the 1:76.2 rows are the full-size feet times four.</summary>
    [Theory]
    [InlineData(258, 186, 34, 37, 457.2, 9.8815, 9.7747, 7.6507, 8.4241, 428.8185, 483.3507)]
    [InlineData(258, 186, 34, 37, 609.6, 7.3757, 7.3310, 5.8872, 6.3181, 583.7243, 633.9872)]
    [InlineData(258, 186, 34, 37, 914.4, 4.9005, 4.8874, 4.0227, 4.2121, 890.9995, 936.9227)]
    [InlineData(258, 186, 34, 37, 1219.2, 3.6710, 3.6655, 3.0532, 3.1590, 1197.0290, 1240.7532)]
    [InlineData(26400.0 / 87, 19000.0 / 87, 2500.0 / 87, 2825.0 / 87, 360, 17.2611, 16.8473, 13.4859, 15.1252, 326.5032, 389.7216)]
    [InlineData(26400.0 / 87, 19000.0 / 87, 2500.0 / 87, 2825.0 / 87, 500, 12.2809, 12.1301, 10.0633, 10.8901, 471.4835, 526.2990)]
    [InlineData(26400.0 / 87, 19000.0 / 87, 2500.0 / 87, 2825.0 / 87, 600, 10.1950, 10.1084, 8.5087, 9.0751, 573.5694, 624.7443)]
    [InlineData(26400.0 / 87, 19000.0 / 87, 2500.0 / 87, 2825.0 / 87, 1000, 6.0835, 6.0650, 5.2473, 5.4451, 977.6808, 1021.4830)]
    [InlineData(165, 118.75, 15.625, 17.65625, 225, 8.1162, 7.9698, 6.4886, 7.1552, 208.0557, 240.3167)]
    [InlineData(165, 118.75, 15.625, 17.65625, 300, 6.0381, 5.9774, 4.9999, 5.3664, 285.1337, 313.8280)]
    [InlineData(165, 118.75, 15.625, 17.65625, 400, 4.5084, 4.4830, 3.8226, 4.0248, 386.6634, 412.6508)]
    public void Model_vehicles_touch_the_radii_computed(double length, double pivots, double wheelbase, double width, double radius, double exactC,
        double approxC, double exactE, double approxE, double inner, double outer)
    {
        var throws = new CircularTrack(radius).Throws(length, pivots, wheelbase, width);
        Assert.Equal(exactC, throws.C, 0.00006);
        Assert.Equal(exactE, throws.E, 0.00006);
        Assert.Equal(inner, throws.Inner, 0.00006);
        Assert.Equal(outer, throws.Outer, 0.00006);
        Assert.Equal(approxC, ((pivots * pivots) + (wheelbase * wheelbase)) / (8 * radius), 0.00006);
        Assert.Equal(approxE, ((length * length) - (pivots * pivots) - (wheelbase * wheelbase)) / (8 * radius), 0.00006);
        Assert.True(throws.C >= approxC - 0.00006 && throws.E <= approxE + 0.00006);
    }

    [Fact]
    public void Throws_times_radius_tend_to_the_approximations()
    {
        var throws = new CircularTrack(1e6).Throws(258, 186, 34, 37);
        Assert.Equal(((186.0 * 186) + (34 * 34)) / 8, throws.C * 1e6, 0.2);
        Assert.Equal(((258.0 * 258) - (186 * 186) - (34 * 34)) / 8, throws.E * 1e6, 0.2); // half the width takes b/R of it off
    }

    /// <summary>County survey field book, radii, ordinates and deflections for a chord of 100 ft (planning.countyofdane.com, document 967811), feet: degree,
    /// minutes, radius, mid-ordinate, tangent offset, deflection distance. The mid-ordinate is the centre throw of pivots 100 ft apart. Tolerances are the
    /// book's own rounding.</summary>
    [Theory]
    [InlineData(0, 30, 11459.0, 0.109, 0.436, 0.873)]
    [InlineData(0, 40, 8594.4, 0.145, 0.582, 1.164)]
    [InlineData(1, 0, 5729.6, 0.218, 0.873, 1.745)]
    [InlineData(1, 10, 4911.2, 0.255, 1.018, 2.036)]
    [InlineData(1, 20, 4297.3, 0.291, 1.164, 2.327)]
    [InlineData(1, 30, 3819.8, 0.327, 1.309, 2.618)]
    [InlineData(1, 40, 3437.9, 0.364, 1.454, 2.909)]
    [InlineData(1, 50, 3125.4, 0.400, 1.600, 3.200)]
    [InlineData(7, 0, 819.0, 1.528, 6.105, 12.21)]
    [InlineData(7, 20, 781.8, 1.600, 6.395, 12.79)]
    [InlineData(7, 30, 764.6, 1.637, 6.540, 13.08)]
    [InlineData(7, 40, 747.9, 1.673, 6.685, 13.37)]
    [InlineData(8, 0, 716.8, 1.746, 6.976, 13.95)]
    [InlineData(8, 20, 688.2, 1.819, 7.266, 14.53)]
    [InlineData(8, 30, 674.7, 1.855, 7.411, 14.82)]
    [InlineData(8, 40, 661.7, 1.892, 7.556, 15.11)]
    [InlineData(9, 0, 637.3, 1.965, 7.846, 15.69)]
    [InlineData(9, 20, 614.6, 2.037, 8.138, 16.27)]
    [InlineData(9, 30, 603.8, 2.074, 8.281, double.NaN)]
    public void Handbook_curves_throw_pivots_a_chord_apart_by_the_mid_ordinate(double degrees, double minutes, double radius, double ordinate,
        double tangentOffset, double deflection)
    {
        double exact = 50 / Math.Sin((degrees + (minutes / 60)) * Math.PI / 360);
        Assert.Equal(radius, exact, 0.2);
        Assert.Equal(ordinate, new CircularTrack(exact).Throws(100, 100, 0, 0).C, 0.001);
        var track = new PlatformForge.Track.Centreline("curve", [new(default, 0, 200, 1 / exact, 1 / exact)]);
        double chord = 2 * exact * Math.Asin(50 / exact); // arc of a 100 ft chord
        Assert.Equal(tangentOffset, track.At(chord).Position.Y, 0.0025);
        Assert.True(double.IsNaN(deflection) || Math.Abs(deflection - (2 * track.At(chord).Position.Y)) < 0.0051);
    }

    /// <summary>A handbook's rule 5730/D for the radius in feet of a curve of D degrees (bitlit.ru p. 46): within a thousandth of the exact radius.</summary>
    [Theory]
    [InlineData(1, 5730)]
    [InlineData(2, 2865)]
    [InlineData(5, 1146)]
    [InlineData(10, 573.7)]
    public void Handbook_rule_of_5730_is_within_a_thousandth(double degrees, double published) =>
        Assert.Equal(1, published / (50 / Math.Sin(degrees * Math.PI / 360)), 1e-3);

    /// <summary>Throw at places along the body, UIC form (from memory): (a·n − n² + p²/4)/2R inward between the pivots, n from the nearer one, and
    /// (a·n + n² − p²/4)/2R outward beyond. The first is a lower bound of the exact inward throw, the second an upper bound of the exact outward one.</summary>
    [Theory]
    [InlineData(258, 186, 34, 609.6)]
    [InlineData(258, 186, 34, 1219.2)]
    [InlineData(165, 118.75, 15.625, 300)]
    [InlineData(20000, 14000, 0, 160000)]
    public void Throws_along_the_body_are_bounded_by_the_published_forms(double length, double pivots, double wheelbase, double radius)
    {
        double h = Math.Sqrt((radius * radius) - (wheelbase * wheelbase / 4) - (pivots * pivots / 4));
        for (double x = 0; x <= length / 2; x += length / 40)
        {
            double n = Math.Abs((pivots / 2) - x), away = new CircularTrack(radius).At(pivots, wheelbase, x);
            Assert.Equal(Math.Sqrt((h * h) + (x * x)), away, 1e-7);
            if (x <= pivots / 2)
            {
                Assert.True(radius - away >= (((pivots * n) - (n * n) + (wheelbase * wheelbase / 4)) / (2 * radius)) - 1e-9);
            }
            else
            {
                Assert.True(away - radius <= (((pivots * n) + (n * n) - (wheelbase * wheelbase / 4)) / (2 * radius)) + 1e-9);
            }
        }
    }
}
