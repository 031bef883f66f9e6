using FsCheck.Xunit;
using PlatformForge.Clearance;
using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Sections.Forms;
using PlatformForge.Sections.Poses;
using PlatformForge.Solids;
using PlatformForge.Solids.Kernel;
using PlatformForge.Tests.Platforms;
using PlatformForge.Track;
using Xunit;

namespace PlatformForge.Tests.Sections;

/// <summary>Bridges that bend, as grooves round curves do: told by their width from wall to wall, not by how far they bulge.</summary>
public class BentBridgeTests
{
    private const int Facets = 60;

    // A ring's sector between two radii round nought, as so many columns.
    private static IEnumerable<ColumnBlock> Sector(double near, double far, double turn, double bottom, double top, BlockAction action = BlockAction.Add)
    {
        Point2 Of(double radius, int k) => Point2.FromAngle(k * turn / Facets) * radius;
        return Enumerable.Range(0, Facets)
            .Select(k => new ColumnBlock([Of(near, k), Of(far, k), Of(far, k + 1), Of(near, k + 1)], new(bottom), new(top), action, Paint.Wall));
    }

    // Its area by the closed form of its trapeziums.
    private static double Area(double near, double far, double turn) => Facets * ((far * far) - (near * near)) / 2 * Math.Sin(turn / Facets);

    private static OverhangReport Measure(IEnumerable<ColumnBlock> blocks) => OverhangMeter.Measure(SolidRaiser.Raise([.. blocks]).Mesh, 0.2, 0.4, 20);

    /// <summary>A groove in the side that lies on the bed, 250 mm long: all of its floor is a bridge up to the longest there is, and none of it
    /// beyond.</summary>
    [Theory]
    [InlineData(120, 5, true)]
    [InlineData(160, 5, true)]
    [InlineData(160, 1.25, true)]
    [InlineData(250, 19.5, true)]
    [InlineData(600, 5, true)]
    [InlineData(2000, 5, true)]
    [InlineData(120, 20.5, false)]
    [InlineData(160, 24, false)]
    [InlineData(600, 20.5, false)]
    public void A_groove_round_a_curve_is_as_wide_as_from_wall_to_wall(double radius, double width, bool isBridge)
    {
        double turn = 250 / radius, near = radius - (width / 2), far = radius + (width / 2);
        var report = Measure([.. Sector(radius - 20, radius + 20, turn, 0, 3), .. Sector(near, far, turn, -1, 0.6, BlockAction.Remove)]);
        double area = Area(near, far, turn);
        Assert.Equal(isBridge ? (0, area) : (area, 0), (report.Unsupported, report.Bridged), new Near(1e-3));
    }

    /// <summary>A roof round a curve that stands on one wall only hangs free, though the wall, being the outer one, is most of its border.</summary>
    [Theory]
    [InlineData(120)]
    [InlineData(160)]
    public void A_roof_that_stands_on_the_outer_wall_alone_hangs_free(double radius)
    {
        double turn = 300 / radius;
        var report = Measure([.. Sector(radius, radius + 2, turn, 0, 5), .. Sector(radius - 5, radius + 2, turn, 4, 5)]);
        Assert.Equal((Area(radius - 5, radius, turn), 0), (report.Unsupported, report.Bridged), new Near(1e-3));
    }

    /// <summary>
    /// A bare platform on either side of a curve with an inlaid line, a tactile strip and a kerb, in one section that lies on its deck: what is bridged is
    /// their three grooves, by the closed form of a ring's sector, and nothing hangs free.
    /// </summary>
    [Property(MaxTest = 12)]
    public void The_grooves_of_lines_strips_and_kerbs_are_bridges_at_any_radius(int seed)
    {
        var random = new Random(seed);
        var side = random.Next(2) == 0 ? Side.Left : Side.Right;
        double radius = 120 * Math.Pow(2000 / 120.0, random.NextDouble()), length = Math.Min(150 + (random.NextDouble() * 250), 2.2 * radius),
            turn = length / radius;
        var set = Workbench.Made(Grooved(radius, length, side), PrinterSpec.Oblong(700, 700, 250), new() { Pose = PrintPose.DeckDown });
        var overhangs = Assert.Single(set.Sections).Overhangs;

        // From the coping's front, 19 mm from the track: a line of 1.25 after 1, a strip of 5 after 9; and from the back, 0.8 and then a kerb of 4 with its
        // air.
        double Groove(double from, double width) => width * turn * (radius - ((int)side * (from + (width / 2))));
        double back = 19 + 44 - 0.8 - 4.2, grooves = Groove(20, 1.25) + Groove(28, 5) + Groove(back, 4.2);
        Assert.Equal(0, overhangs.Unsupported, 1e-9);
        Assert.InRange(overhangs.Bridged / grooves, 0.998, 1.002); // chords of the curve
    }

    private static PlatformPlan Grooved(double radius, double length, Side side)
    {
        const double lead = 200;
        var track =
            TrackLayer.Lay(new("up", new(0, 0), 0, [new StraightSpec(lead), new CurveSpec(radius, Hand.Left, Length: length), new StraightSpec(lead)])).Value!;
        var spec = new PlatformSpec("bent", new FaceSpec("up", side, lead, lead + length, EdgeStyle.Uniform))
        {
            Height = 12,
            Coping = new() { Width = 8, Thickness = 1.2, Overhang = 1, SlabLength = 25, JointDepth = 0, ArrisChamfer = 0 },
            Deck = new() { Width = 44, Thickness = 1.5 },
            Ribs = new() { Pitch = 0, LongitudinalCount = 0 },
            WhiteLine = new() { Inset = 1, Width = 1.25, Form = LineForm.Inlay },
            Tactile = new() { Inset = 9, Width = 5 },
            Back = new() { Kerb = new() { Width = 4 } },
        };
        return Bench.Plan(new(spec, Bench.Site, track, Bench.Envelope(track, side, _ => 18), ClearanceBudget.Of(running: 1)));
    }

    /// <summary>Two areas of one report each the same to a share of the larger.</summary>
    private sealed class Near(double share) : IEqualityComparer<(double, double)>
    {
        public bool Equals((double, double) x, (double, double) y) =>
            Math.Abs(x.Item1 - y.Item1) <= share * (x.Item1 + x.Item2) && Math.Abs(x.Item2 - y.Item2) <= share * (x.Item1 + x.Item2);

        public int GetHashCode((double, double) of) => 0;
    }
}
