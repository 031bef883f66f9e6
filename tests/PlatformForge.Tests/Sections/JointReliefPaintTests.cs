using PlatformForge.Geometry;
using PlatformForge.Platforms.Specs;
using PlatformForge.Platforms.Surfaces;
using PlatformForge.Solids;
using PlatformForge.Tests.Meshes;
using Xunit;

namespace PlatformForge.Tests.Sections;

/// <summary>The chamfers at joints between sections show what they are cut into: the coping's colour within the coping, the deck's within the deck.</summary>
public class JointReliefPaintTests
{
    private const double At = 350;

    [Theory]
    [InlineData(0, true)]
    [InlineData(0, false)]
    [InlineData(25, true)]
    [InlineData(-25, false)]
    public void A_chamfer_at_a_cut_has_the_colour_of_the_coping_across_it(double angle, bool hasSeam)
    {
        var plan = Workbench.Straight(300, change: s => s with
        {
            ForcedCuts = [At],
            Skew = angle == 0 ? new() : new() { Cuts = [new() { At = At, Angle = angle }] },
            Coping = s.Coping with { JointDepth = hasSeam ? 0.3 : 0, JointWidth = 0.4 },
        });
        Assert.Equal(hasSeam, CopingSeam.Of(plan) is not null);
        var set = Workbench.Made(plan, Workbench.Printer, new());
        double edge = plan.CopingBack.Reach[0], lean = Math.Tan(angle * Math.PI / 180);
        int coping = 0, deck = 0;
        foreach (var section in set.Sections)
        {
            Assert.True(MeshCheck.Inspect(section.Solid.Mesh) is { IsClosed: true, DegenerateTriangles: 0, Components: 1 });
            foreach (var (middle, paint) in Chamfers(section.Solid.Mesh)
                .Where(c => Math.Abs(c.Middle.X - At - (lean * (c.Middle.Y - plan.CopingFront.Reach[0]))) < 1))
            {
                if (middle.Y < edge - 1)
                {
                    Assert.Equal(Paint.Coping, paint);
                    coping++;
                }
                else if (middle.Y > edge + 1)
                {
                    Assert.Equal(Paint.Deck, paint);
                    deck++;
                }
            }
        }

        Assert.True(coping >= 2 && deck >= 2, $"{coping}, {deck}");
    }

    [Fact]
    public void Where_coping_and_deck_are_of_one_material_a_chamfer_is_of_that_all_across()
    {
        var plan = Workbench.Straight(300, change: s => s with
        {
            Coping = s.Coping with { Kind = CopingKind.Timber },
            Deck = s.Deck with { Paving = new() { Kind = PavingKind.Planks } }
        });
        Assert.Null(CopingSeam.Of(plan));
        Paint[] paints = [.. Workbench.Made(plan, Workbench.Printer, new()).Sections.SelectMany(s => Chamfers(s.Solid.Mesh)).Select(c => c.Paint)];
        Assert.NotEmpty(paints);
        Assert.All(paints, p => Assert.Equal(Paint.Timber, p));
    }

    // Facets at 45 degrees under the deck's top, with their middles.
    private static IEnumerable<(Point3 Middle, Paint Paint)> Chamfers(Mesh mesh)
    {
        double top = mesh.Vertices.Max(v => v.Z);
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            Point3 a = mesh.Vertices[mesh.Triangles[3 * t]], b = mesh.Vertices[mesh.Triangles[(3 * t) + 1]], c = mesh.Vertices[mesh.Triangles[(3 * t) + 2]];
            var normal = Point3.Cross(b - a, c - a);
            if (Math.Abs((normal.Z / normal.Length) - Math.Sqrt(0.5)) < 0.01 && Math.Min(a.Z, Math.Min(b.Z, c.Z)) > top - 0.5)
            {
                yield return ((a + b + c) * (1.0 / 3), (Paint)mesh.Paints[t]);
            }
        }
    }
}
