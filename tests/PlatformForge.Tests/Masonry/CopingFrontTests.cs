using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Platforms.Surfaces;
using PlatformForge.Sections.Forms;
using PlatformForge.Tests.Fixtures;
using PlatformForge.Tests.Sections;
using PlatformForge.Track;
using Xunit;

namespace PlatformForge.Tests.Masonry;

/// <summary>Joints of a coping on its front, and the one between coping and deck, by the meshes of sections.</summary>
public class CopingFrontTests
{
    // A layer of 0.2 runs on under the joints, whose feet slope by 1.2 to 1.
    private const double Width = 0.4, Depth = 0.3, Thick = 1.2, Wide = 8, Arris = 0.2, Rise = 1.2;

    [Fact]
    public void Joints_and_the_seam_take_the_volume_of_their_oblongs()
    {
        double with = One(Depth).Volumes.Finished, without = One(0).Volumes.Finished;
        int joints = Plan(Depth).CopingJoints.Length;
        double along = 120 - (2 * 0.4), each = Width * ((Wide * Depth) + (Depth * (Thick - Arris - Depth - (Rise * Depth / 2))));

        // Where a joint meets the seam, which lies in the coping, both take the same.
        Assert.Equal((joints * each) + (along * Width * Depth) - (joints * Width * Width * Depth), without - with, 2e-3);
        Assert.Equal(4, joints);
    }

    [Fact]
    public void Joints_measured_on_the_mesh_go_down_the_front_to_the_arris_under_them_and_nothing_stands_before_it()
    {
        var (plan, mesh) = (Plan(Depth), One(Depth).Solid.Mesh);
        double front = plan.CopingFront.Reach[0], top = plan.Profile.Level;
        Assert.Equal(front, mesh.Vertices.Min(v => v.Y), 1e-4);
        Assert.All(plan.CopingJoints, j => Assert.Equal(top - Thick + Arris,
            mesh.Vertices.Where(v => Math.Abs(v.Y - front) < 1e-3 && Math.Abs(v.X - j) < Width && v.Z > top - Thick + 1e-3).Min(v => v.Z), 2e-3));
        var floors = BrickFaces.In(mesh, new(0, front + Depth), new(1, 0)).SelectMany(r => r).Where(b => b.High > top - 1).ToList();
        Assert.Equal(plan.CopingJoints.Length, floors.Count);
        Assert.All(floors.OrderBy(f => f.From).Zip(plan.CopingJoints.Order()), f =>
        {
            Assert.Equal(Width, f.First.To - f.First.From, 2e-3);
            Assert.Equal(f.Second, (f.First.From + f.First.To) / 2, 2e-3);
            Assert.Equal(top - Thick + Arris + (Rise * Depth), f.First.Low, 2e-3);
            Assert.Equal(top - Depth, f.First.High, 2e-3);
        });
    }

    [Theory]
    [InlineData(CopingKind.Slabs, Side.Left, 0.3)]
    [InlineData(CopingKind.Bricks, Side.Right, 0.5)]
    [InlineData(CopingKind.Timber, Side.Left, 0)]
    public void Sections_of_every_coping_are_sound_on_ramps_too(CopingKind kind, Side side, double arris)
    {
        var plan = Workbench.Straight(260, side, s => s with
        {
            StartRamp = new(Gradient: 8),
            Coping = s.Coping with
            {
                Kind = kind,
                JointDepth = Depth,
                JointWidth = Width,
                ArrisChamfer = arris,
                SlabLength = kind == CopingKind.Bricks ? 11.8 : 25,
            },
            Deck = s.Deck with { Paving = kind == CopingKind.Slabs ? new() { Kind = PavingKind.Flags, Length = 11.8, Width = 8.3 } : null },
        });
        Assert.All(Workbench.Made(plan, Workbench.Printer, new()).Sections, SoundSection.Check);
    }

    [Theory]
    [InlineData(CopingKind.Slabs, null, true)]
    [InlineData(CopingKind.Slabs, PavingKind.Flags, true)]
    [InlineData(CopingKind.Timber, PavingKind.Planks, false)]
    [InlineData(CopingKind.Bricks, PavingKind.Bricks, false)]
    [InlineData(CopingKind.Bricks, PavingKind.Flags, true)]
    public void A_seam_lies_where_coping_and_deck_are_of_two_materials(CopingKind kind, PavingKind? paving, bool lies)
    {
        var plan = Workbench.Straight(120, Side.Left, s => s with
        {
            Coping = s.Coping with { Kind = kind, JointDepth = Depth },
            Deck = s.Deck with { Paving = paving is { } p ? new() { Kind = p, Length = 11.8, Width = 8.3 } : null },
        });
        Assert.Equal(lies, CopingSeam.Of(plan) is not null);
    }

    private static PlatformPlan Plan(double depth) =>
        Workbench.Straight(120, Side.Left, s => s with { Coping = s.Coping with { JointDepth = depth, JointWidth = Width } });

    private static PlatformSection One(double depth) => Assert.Single(Workbench.Made(Plan(depth), Workbench.Printer, new()).Sections);
}
