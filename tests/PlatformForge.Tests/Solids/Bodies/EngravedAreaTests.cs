using PlatformForge.Geometry;
using PlatformForge.Solids.Bodies;
using PlatformForge.Solids.Kernel;
using PlatformForge.Tests.Sections;
using Xunit;

namespace PlatformForge.Tests.Solids.Bodies;

/// <summary>What is told of a deck's engraved area, by hand and as it is met on the mesh.</summary>
public class EngravedAreaTests
{
    private const double Deck = 20, Deep = 0.3;

    /// <summary>Two joints 0.4 mm wide from the coping's inner edge, 8 mm behind its front, to a line of 0.4 mm before the back, at 60.</summary>
    [Fact]
    public void Expansion_joints_take_their_width_by_their_length_of_the_deck()
    {
        var blocks = PlatformBody.Blocks(Workbench.Straight(96, change: s => s with
        {
            Deck = s.Deck with { ExpansionJoints = 30 },
            Coping = s.Coping with { SlabLength = 12 },
        }));
        Assert.Equal(2 * 0.4 * (60 - 8 - 0.4), blocks.Engraved, 1e-9);
        Assert.Equal(blocks.Engraved, Floors(SolidRaiser.Raise(blocks.All).Mesh), 0.01); // nodes are laid to the plan's grid
    }

    // Area of what looks up, level, as deep as the joints.
    private static double Floors(Mesh mesh)
    {
        double area = 0;
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            Point3 a = mesh.Vertices[mesh.Triangles[3 * t]], b = mesh.Vertices[mesh.Triangles[(3 * t) + 1]], c = mesh.Vertices[mesh.Triangles[(3 * t) + 2]];
            var normal = Point3.Cross(b - a, c - a);
            area += normal.Z > 0 && Math.Abs(a.Z - (Deck - Deep)) < 1e-6 && Math.Abs(b.Z - a.Z) < 1e-6 && Math.Abs(c.Z - a.Z) < 1e-6 ? normal.Z / 2 : 0;
        }

        return area;
    }
}
