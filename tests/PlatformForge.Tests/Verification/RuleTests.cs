using PlatformForge.Geometry;
using PlatformForge.Sections.Forms;
using PlatformForge.Tests.Exports;
using PlatformForge.Units;
using PlatformForge.Verification.Rules;
using PlatformForge.Verification.Written;
using Xunit;

namespace PlatformForge.Tests.Verification;

public class RuleTests
{
    [Fact]
    public void A_box_is_sound()
    {
        Assert.Equal(new MeshSoundness(0, 0, 0, 6000), MeshSoundness.Of(HandSolids.Box()));
    }

    [Fact]
    public void Every_edge_of_a_missing_triangle_is_open()
    {
        var box = HandSolids.Box();
        Assert.Equal(3, MeshSoundness.Of(box with { Triangles = box.Triangles[3..] }).OpenEdges);
    }

    [Fact]
    public void A_triangle_turned_over_is_found()
    {
        var box = HandSolids.Box();
        int[] t = [.. box.Triangles];
        (t[0], t[1]) = (t[1], t[0]);
        Assert.NotEqual(0, MeshSoundness.Of(box with { Triangles = t }).OpenEdges);
    }

    [Fact]
    public void Two_boxes_that_share_an_edge_are_sound_as_STL_and_not_by_index()
    {
        var box = HandSolids.Box(10, 10, 10);
        Point3 Moved(Point3 p) => p + new Point3(10, 10, 0);
        var vertices = box.Vertices.Concat(box.Vertices.Select(Moved)).ToArray();
        var welded = vertices.Distinct().ToArray();
        var mesh = new Mesh(welded, [.. box.Triangles.Concat(box.Triangles.Select(i => i + 8)).Select(i => Array.IndexOf(welded, vertices[i]))], []);
        var soundness = MeshSoundness.Of(mesh);
        Assert.Equal(0, soundness.OpenEdges);
        Assert.Empty(MeshRule.Check("two boxes", soundness, byIndex: false));
        Assert.Equal("PF8010", Assert.Single(MeshRule.Check("two boxes", soundness, byIndex: true)).Code);
    }

    [Fact]
    public void A_corner_used_twice_in_a_triangle_is_found()
    {
        var box = HandSolids.Box();
        var soundness = MeshSoundness.Of(box with { Triangles = [.. box.Triangles, 0, 1, 1] });
        Assert.Equal(("PF8011", 1), (Assert.Single(MeshRule.Check("box", soundness, byIndex: true)).Code, soundness.Degenerate));
    }

    [Fact]
    public void The_thinnest_wall_of_a_box_is_its_least_side()
    {
        Assert.Equal(0.7, WallRule.Thinnest(HandSolids.Box(0.7, 30, 20))!.Value.Thickness, 1e-9);
    }

    [Fact]
    public void The_thinnest_wall_is_that_of_the_solid_and_not_of_the_room_between()
    {
        // Two walls of 2 and 1.2 mm with 0.3 mm of air between them.
        var one = HandSolids.Box(2, 30, 20);
        var other = HandSolids.Box(1.2, 30, 20);
        var mesh = new Mesh([.. one.Vertices, .. other.Vertices.Select(v => v + new Point3(2.3, 0, 0))],
            [.. one.Triangles, .. other.Triangles.Select(i => i + 8)], []);
        Assert.Equal(1.2, WallRule.Thinnest(mesh)!.Value.Thickness, 1e-9);
    }

    [Fact]
    public void The_lip_of_a_chamfer_is_no_thin_wall()
    {
        // A wall of 2 mm beside a wedge of 45 degrees whose edge lies 0.2 mm under the first level that is looked at, 6.2 mm of 20.
        var wall = HandSolids.Box(2, 30, 20);
        var block = HandSolids.Box(2, 30, 2);
        var wedge = block.Vertices.Select(v => new Point3(v.Z == 0 ? Math.Min(v.X, 0.01) : v.X, v.Y, v.Z) + new Point3(10, 0, 6));
        var mesh = new Mesh([.. wall.Vertices, .. wedge], [.. wall.Triangles, .. block.Triangles.Select(i => i + 8)], []);
        Assert.InRange(WallRule.Thinnest(mesh)!.Value.Thickness, 0.8, 2);
    }

    [Theory]
    [InlineData(0.4, 1)]
    [InlineData(0.3, 0)]
    public void A_wall_thinner_than_two_lines_of_the_nozzle_is_a_warning(double nozzle, int warnings)
    {
        var section = new SectionVerdict("Pendlewick 1 of 1", "a.stl", 12, 100, new(0.7, 30, 20), true, 0.7);
        var found = WallRule.Check(section, PrinterSpec.Oblong(220, 220, 200) with { Nozzle = nozzle }).ToArray();
        Assert.Equal(warnings, found.Length);
        Assert.AllOrNone(found, f => Assert.Equal(("PF8016", Severity.Warning), (f.Code, f.Severity)));
    }

    /// <summary>The limit that is told: a cut of two edges a side through a prism of so many sides.</summary>
    [Theory]
    [InlineData(4990, true)]
    [InlineData(5010, false)]
    public void A_cut_of_more_than_ten_thousand_edges_is_not_measured(int sides, bool measured)
    {
        Point3 P(int i, double z) => new(20 * Math.Cos(2 * Math.PI * i / sides), 20 * Math.Sin(2 * Math.PI * i / sides), z);
        Point3[] vertices = [.. Enumerable.Range(0, sides).SelectMany(i => (Point3[])[P(i, 0), P(i, 10)])];
        int Next(int i) => 2 * ((i + 1) % sides);
        int[] triangles = [.. Enumerable.Range(0, sides).SelectMany(i => (int[])[2 * i, Next(i), (2 * i) + 1, Next(i), Next(i) + 1, (2 * i) + 1])];
        Assert.Equal(measured, WallRule.Thinnest(new(vertices, triangles, []))?.Thickness is not double.NaN);
    }

    /// <summary>A platform that lies under a body may be passed over where the project says so; one that stands as high as the body may not.</summary>
    [Theory]
    [InlineData(12, true)]
    [InlineData(14, false)]
    [InlineData(50, false)]
    public void Bodies_may_pass_over_what_lies_under_them_and_nothing_else(double height, bool over)
    {
        var foul = new Nearness(-1, "coach", "body", "up", "Pendlewick 1 of 1", 500, 17, height, default, false) { InPlan = true, Underside = 14 };
        string remedy = Assert.Single(ClearanceRule.Check([new("coach", "up", foul, foul)], 1)).Remedy;
        Assert.Equal(over, remedy.Contains("bodies_pass_over = true", StringComparison.Ordinal));
    }
}
