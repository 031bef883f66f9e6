using PlatformForge.Geometry;
using PlatformForge.Sections.Forms;
using PlatformForge.Tests.Projects;
using Xunit;

namespace PlatformForge.Tests.Proofs;

/// <summary>Throw boards and coupons measured as their STL files hold them, and what coupons tell taken back.</summary>
public class BoardAndCouponTests
{
    // Of coordinates below 256 mm as 32-bit floats, after a turn.
    private const double Rounding = 1e-3;

    private static ProofSets Pendlewick => ProofSets.Pendlewick.Value;

    [Fact]
    public void Pencil_holes_lie_on_the_vehicles_true_outline()
    {
        // The long coach of the sample: 262 long, 34.5 wide; its corners, and abreast of its middle.
        Point2[] places = [new(131, 17.25), new(131, -17.25), new(-131, 17.25), new(-131, -17.25), new(0, 17.25), new(0, -17.25)];
        var parts = Pendlewick.Of("throw board").Select(p => Pendlewick.Written(p).Moved(Pendlewick.Made(p).FromFile)).ToArray();
        foreach (var place in places)
        {
            Point2[] rim = [.. parts.SelectMany(m => m.Vertices).Where(v => v.Z > 10).Select(v => new Point2(v.X, v.Y)).Where(v => (v - place).Length < 1.5)
                .Distinct()];
            Assert.True(rim.Length >= 24, $"{place}: {rim.Length}");
            Assert.Equal(place.X, rim.Average(v => v.X), 0.01);
            Assert.Equal(place.Y, rim.Average(v => v.Y), 0.01);
            Assert.InRange(rim.Min(v => (v - place).Length), 1.1 - 0.001, 1.11); // a point of 2 mm and 0.2 of room, round it
        }
    }

    [Fact]
    public void Run_on_its_pivots_round_the_curve_it_draws_the_reach_that_was_swept()
    {
        // Exact geometry of a chord of 188 on 760 mm: corners reach outward, the middle inward.
        const double radius = 760, half = 94;
        double chord = Math.Sqrt((radius * radius) - (half * half));
        double outward = Math.Sqrt(Math.Pow(chord + 17.25, 2) + (131 * 131)) - radius, inward = radius - (chord - 17.25);
        var platform = Pendlewick.Dossier.Platforms[0];
        var need = platform.Plan.Requirement;
        int at = (int)Math.Round((760 - need.Stations[0]) / (need.Stations[1] - need.Stations[0]));
        Assert.Equal(outward, need.Swept[at], 0.03);
        Assert.Equal(23.09, inward, 0.03);
    }

    [Fact]
    public void Its_shoes_run_between_the_rails_and_lie_on_their_heads_and_their_pins_are_at_the_pivots()
    {
        foreach (var shoe in Pendlewick.Of("shoe of a throw board"))
        {
            var mesh = Pendlewick.Written(shoe).Moved(Pendlewick.Made(shoe).FromFile);
            double Across(double low) => mesh.Vertices.Where(v => v.Z > low).Max(v => new Point2(v.X, v.Y).Length);
            Assert.Equal((16.5 / 2) - 0.2, Across(2.41), Rounding);
            Assert.True(Across(-1) > (16.5 / 2) + Pendlewick.Dossier.RailHead + 1);
        }

        var holes = Pendlewick.Of("throw board").Where(p => p.Name.Contains("part", StringComparison.Ordinal))
            .SelectMany(p => Pendlewick.Written(p).Moved(Pendlewick.Made(p).FromFile).Vertices).Where(v => v.Z < 0.01).Select(v => new Point2(v.X, v.Y))
            .ToArray();
        foreach (double pivot in (double[])[-94, 94])
        {
            var rim = holes.Where(v => (v - new Point2(pivot, 0)).Length < 1.1).Distinct().ToArray();
            Assert.True(rim.Length >= 24);
            Assert.Equal(pivot, rim.Average(v => v.X), 0.01);
        }
    }

    [Fact]
    public void Bores_of_the_coupon_have_the_fits_engraved_beside_them()
    {
        var coupon = Pendlewick.Of("coupon of joints").Single();
        var mesh = Pendlewick.Written(coupon).Moved(Pendlewick.Made(coupon).FromFile);
        double depth = new JointSpec().BoreDepth, pitch = mesh.Box().High.X / 9;
        for (int i = 0; i < 9; i++)
        {
            // The far end of a bore: eight sides round the circle, so as high as the circle is wide.
            var end = mesh.Vertices.Where(v => Math.Abs(v.Y - depth) < 0.001 && Math.Abs(v.X - (pitch * (i + 0.5))) < 1.5).ToArray();
            Assert.Equal(1.75 + (0.05 * i), end.Max(v => v.Z) - end.Min(v => v.Z), Rounding);
        }
    }

    [Fact]
    public void What_a_coupon_tells_is_taken_back_as_one_line_for_all_openings_of_its_kind()
    {
        string text = Samples.Pendlewick.Replace("\nfit = 0.2\n", "\n", StringComparison.Ordinal) + "\n[fits]\ndowel = 0.3\nhole = 0.15\nsocket = 0.25\n";
        var project = Samples.Sound(text);
        Assert.Equal(0.3, project.Sections.Joint.Fit);
        Assert.All(project.Platforms[0].Of<SocketSpec>(), s => Assert.Equal(0.25, s.Fit));
        Assert.Equal(0.15, Assert.Single(project.Platforms[0].Of<FenceSpec>()).Fit);

        // One that states its own keeps it, and it is told.
        var kept = Samples.Read(Samples.Pendlewick + "\n[fits]\ndowel = 0.3\n");
        Assert.Equal("PF7503", Assert.Single(kept.Findings).Code);
        Assert.Equal(0.2, kept.Value!.Sections.Joint.Fit);
        Assert.Equal(0.3, Samples.Sound(Samples.Small + "[fits]\ndowel = 0.3\n").Sections.Joint.Fit);
        Assert.Contains(Samples.Read(Samples.Small + "[fits]\ndowel = 30\n").Findings, f => f.Key is "fits.dowel" or "joint.fit");
    }

    /// <summary>A socket as large as a building's foot is tried by a slice of it: nine of them weigh a few grams, and are as wide as its narrower side and its
    /// fits.</summary>
    [Fact]
    public void A_large_socket_is_tried_by_a_slice()
    {
        const string board = "[[platform.board]]\nname = \"hut\"\nat = 450\ninset = 14\nalong = 14\nacross = 11\n";
        var sets = new ProofSets(Samples.Small + board);
        var coupon = Assert.Single(sets.Of("coupon of holes"));
        var made = sets.Made(coupon);
        Assert.InRange(made.Estimate.Grams, 0.5, 5);
        var wide = made.Figures.Where(f => f.What.StartsWith("slice of a square hole", StringComparison.Ordinal)).ToArray();
        Assert.Equal(10, wide.Length);
        Assert.Equal(11, wide[0].Value, Rounding);
    }
}
