using PlatformForge.Geometry;
using PlatformForge.Masonry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Proofs;
using PlatformForge.Sections.Forms;
using PlatformForge.Solids.Kernel;
using PlatformForge.Tests.Sections;
using PlatformForge.Verification;
using Xunit;

namespace PlatformForge.Tests.Proofs;

/// <summary>Test slices that lie over a cut, held against the sections on both its sides.</summary>
public class SliceOverCutTests
{
    // Half a slice reaches 5 mm to either side; from farther than this it lies within one section.
    private const double Near = 12, Slice = 10;

    [Fact]
    public void A_slice_lies_where_its_sections_do_however_the_cut_lies() => Assert.All(Simulations.Cases(4, 400), seed =>
    {
        var random = new Random(seed);
        double angle = seed % 4 == 0 ? 0 : -40 + (80 * random.NextDouble()), trim = random.NextDouble() * JointSpec.MostEndTrim;
        var (plan, cut) = Curved(random, angle);
        var set = Workbench.Made(plan, Workbench.Printer, new() { Joint = new() { EndTrim = trim } });
        JoinedSections sections = new([.. set.Sections.Select(s => s.PrintMesh().Moved(s.ToLayout))]);
        for (int i = 0; i < 4; i++)
        {
            double middle = cut + (Near * ((2 * random.NextDouble()) - 1));
            var (blocks, _, _, _, _) = TestSlice.Of(set.Plan, middle, Slice, "S1", Workbench.Printer);
            var slice = SolidRaiser.Raise(blocks).Mesh;
            Assert.True(sections.Hold(slice), $"{seed}: {angle:0.0} degrees, trim {trim:0.00}, {middle - cut:0.0} from the cut");

            // Along the track by a slice's length and the whole of what a cut takes it lies elsewhere only at the platform's end; across it or upward never.
            var across = plan.Chart.At(middle).Tangent.Left * 1.2;
            foreach (var off in (Point3[])[new(across.X, across.Y, 0), new(-across.X, -across.Y, 0), new(0, 0, 1.2)])
            {
                Assert.False(sections.Hold(slice.Moved(RigidTransform.Shift(off.X, off.Y, off.Z))), $"{seed}: moved by {off}");
            }
        }
    });

    // The curved platform without ramps, of stone or smooth, with a cut at an angle.
    private static (PlatformPlan Plan, double Cut) Curved(Random random, double angle)
    {
        double at = 120 + (20 * random.NextDouble());
        bool faced = random.Next(2) == 0, baseboard = random.Next(2) == 0;
        double start = 0;
        var plan = Workbench.PendlewickAs(p => p with
        {
            Face = p.Face with { To = (start = p.Face.From) + 260 },
            Skew = new() { Cuts = [new() { At = p.Face.From + at, Angle = angle }] },
            ForcedCuts = baseboard ? [] : [p.Face.From + at],
            BaseboardJoints = baseboard ? [p.Face.From + at] : [],
            StartRamp = null,
            EndRamp = null,
            Features = [],
            Deck = p.Deck with { Crossfall = 0 },
            Facing = faced ? FacingSpec.For(new(76.2)) with { Front = WallFinish.Stone } : null,
        });
        return (plan, start + at);
    }
}
