using PlatformForge.Geometry;
using PlatformForge.Platforms.Rules;
using PlatformForge.Platforms.Specs;
using PlatformForge.Sections.Forms;
using PlatformForge.Solids;
using PlatformForge.Tests.Fixtures;
using PlatformForge.Tests.Sections;
using PlatformForge.Track;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Backs;

/// <summary>Banks that turn round the ends of a platform, by the meshes of sections.</summary>
public class BankReturnTests
{
    private const double Height = 20, Length = 150;

    /// <summary>A quarter of a pyramid over half a regular polygon: eight triangles, half of r² sin(90° / 8) each, times a third of its height; on higher
    /// ground with the prism under it.</summary>
    [Theory]
    [InlineData(1.5, 0, Side.Left, BankReturns.Both)]
    [InlineData(2, 6, Side.Right, BankReturns.Start)]
    [InlineData(1, 0, Side.Right, BankReturns.End)]
    public void A_return_of_a_bank_of_its_own_has_the_volume_of_a_pyramid(double slope, double ground, Side side, BankReturns returns)
    {
        var back = new BackSpec { Kind = BackKind.Bank, Apart = true, Slope = slope, Ground = ground, Fit = 0.25 };
        double Volume(BackSpec of) => Made(side, of).Lines.Pieces.Sum(p => p.Solid.ColumnVolume);
        double high = Height - ground, radius = slope * high, plan = 8 * radius * radius * Math.Sin(Math.PI / 16) / 2;
        int count = returns == BankReturns.Both ? 2 : 1;
        Assert.Equal(count * plan * ((high / 3) + ground), Volume(back with { Returns = returns }) - Volume(back), 0.02 * count);
    }

    /// <summary>Of a bank that prints with its section a return is what lies between two pyramids of one slope: the inner one is lower by the shell's plumb
    /// thickness, and stands inside the foot by its level one. Over the web in the line of the back edge it is solid.</summary>
    [Theory]
    [InlineData(Side.Left, BankReturns.Both, 0)]
    [InlineData(Side.Right, BankReturns.End, 0)]
    [InlineData(Side.Left, BankReturns.Start, 5)]
    public void A_return_that_prints_with_its_section_falls_no_flatter_than_the_bank_and_wants_no_supports(Side side, BankReturns returns, double ground)
    {
        var back = new BackSpec { Kind = BackKind.Bank, Ground = ground };
        SectionSet with = Made(side, back with { Returns = returns }), without = Made(side, back);
        Assert.All(with.Sections, s => SoundSection.Check(s));
        double radius = with.Plan.Bank!.Slope * (Height - ground);
        int ends = returns == BankReturns.Both ? 2 : 1;
        double lower = with.Sections.Min(s => s.Solid.Mesh.Vertices.Min(v => v.X)), upper = with.Sections.Max(s => s.Solid.Mesh.Vertices.Max(v => v.X));
        double bare = without.Sections.Max(s => s.Solid.Mesh.Vertices.Max(v => v.X)) - without.Sections.Min(s => s.Solid.Mesh.Vertices.Min(v => v.X));
        Assert.Equal(bare + (ends * radius), upper - lower, 2e-4);

        // Turfed faces that look up: those of the bank at its slope, those of eight facets a quarter at the chord's, cos(90° / 16) of it, 5.6 degrees.
        double[] slopes = [.. with.Sections.SelectMany(s => Slopes(s.Solid.Mesh))];
        double chord = with.Plan.Bank.Slope * Math.Cos(Math.PI / 32);
        Assert.All(slopes, s => Assert.True(Math.Abs(s - with.Plan.Bank.Slope) < 1e-3 || Math.Abs(s - chord) < 2e-3, $"{s}"));
        Assert.True(slopes.Count(s => Math.Abs(s - chord) < 2e-3) >= 8 * ends);

        // Nothing lies farther from its corner than the bank is wide, nor under the baseboard.
        Assert.All(with.Sections, s => Assert.True(s.Solid.Mesh.Vertices.Min(v => v.Z) > -1e-6));
        foreach (var turn in with.Plan.Bank.Returns)
        {
            Assert.All(with.Sections.SelectMany(s => s.Solid.Mesh.Vertices).Where(v => turn.IsAtEnd ? v.X > turn.Corner.X + 0.01 : v.X < turn.Corner.X - 0.01),
                v => Assert.InRange(new Point2(v.X - turn.Corner.X, v.Y - turn.Corner.Y).Length, 0, radius + 1e-3));
        }
    }

    [Fact]
    public void Where_no_bank_turns_it_is_told_and_the_cure_is_taken()
    {
        List<Finding> Rules(Func<PlatformSpec, PlatformSpec> change)
        {
            var findings = new List<Finding>();
            var plan = Workbench.Straight(Length, Side.Left, s => s);
            BankRule.Check(change(plan.Spec), plan.Site, findings);
            return findings;
        }

        var bank = new BackSpec { Kind = BackKind.Bank, Returns = BankReturns.Both };
        (Func<PlatformSpec, PlatformSpec> Change, string Cure)[] cases =
        [
            (s => s with { Back = new() { Returns = BankReturns.End } }, "\"none\""),
            (s => s with { Back = bank, StartRamp = new(Gradient: 8) }, "\"end\""),
            (s => s with { Back = bank, Skew = new() { End = 20 } }, "\"start\""),
        ];
        foreach (var (change, cure) in cases)
        {
            var told = Assert.Single(Rules(change));
            Assert.Equal(("PF4196", "platform[0].back.returns", cure), (told.Code, told.Cure!.Key, told.Cure.Value));
        }

        Assert.Empty(Rules(s => s with { Back = bank with { Returns = BankReturns.End }, StartRamp = new(Gradient: 8) }));
        Assert.Equal(2, Rules(s => s with { Back = bank, StartRamp = new(Gradient: 8), EndRamp = new(Gradient: 8) }).Count);
    }

    [Fact]
    public void On_a_curve_a_bank_turns_round_the_end_that_has_no_ramp()
    {
        foreach (bool apart in (bool[])[false, true])
        {
            var set = Workbench.Made(Workbench.PendlewickAs(p => p with
            {
                Back = new() { Kind = BackKind.Bank, Apart = apart, Returns = BankReturns.End },
                EndRamp = null,
                Facing = null,
            }), Workbench.Printer, new());
            Assert.All(set.Sections, s => SoundSection.Check(s));
            var turn = Assert.Single(set.Plan.Bank!.Returns);
            Assert.True(turn.IsAtEnd);

            // Round the corner, from square behind it to straight on from the edge's last facet, square to the end's line across.
            Point2 first = turn.Toe[0] - turn.Corner, last = turn.Toe[^1] - turn.Corner;
            Assert.Equal(0, Point2.Dot(first, last), 1e-9);
            Assert.Equal(first.Length, last.Length, 1e-9);
            Assert.True(Point2.Dot(last, set.Plan.Chart.At(set.Plan.Stations[^1]).Tangent) > 0.99 * last.Length);
        }
    }

    private static SectionSet Made(Side side, BackSpec back) =>
        Workbench.Made(Workbench.Straight(Length, side, s => s with { Back = back }), Workbench.Printer, new());

    private static IEnumerable<double> Slopes(Mesh mesh)
    {
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            Point3 a = mesh.Vertices[mesh.Triangles[3 * t]], b = mesh.Vertices[mesh.Triangles[(3 * t) + 1]], c = mesh.Vertices[mesh.Triangles[(3 * t) + 2]];
            var normal = Point3.Cross(b - a, c - a);
            if (mesh.Paints[t] == (byte)Paint.Turf && normal.Z > 0.2 && normal.Length > 0.5)
            {
                yield return normal.Z / Math.Sqrt((normal.X * normal.X) + (normal.Y * normal.Y));
            }
        }
    }
}
