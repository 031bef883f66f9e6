using PlatformForge.Geometry;
using PlatformForge.Sections.Beds;
using PlatformForge.Sections.Poses;
using PlatformForge.Solids;
using PlatformForge.Solids.Bodies;

namespace PlatformForge.Sections;

/// <summary>Everything that a section's form depends on.</summary>
/// <param name="Blocks">Body, joints and lettering, in the kernel's order.</param>
/// <param name="Surfaces">Planes of its walking surface.</param>
/// <param name="Along">Long axis in plan.</param>
/// <param name="Pose">What the user wants.</param>
/// <param name="Bed">Outline of the bed, mm.</param>
/// <param name="Margin">Kept free at the bed's edge, mm.</param>
/// <param name="Layer">Layer height, mm.</param>
/// <param name="Engraved">Area engraved in its deck, mm².</param>
/// <param name="Facing">What its walls are faced with; null leaves them plain.</param>
internal sealed record SectionInput(
    ColumnBlock[] Blocks, HeightPlane[] Surfaces, Point2 Along, PrintPose Pose, IReadOnlyList<Point2> Bed, double Margin, double Layer, double Engraved,
    PrintedFacing? Facing);

/// <summary>A section's form: the piece and how it lies on the bed.</summary>
/// <param name="Solid">The piece, layout frame.</param>
/// <param name="ToLayout">From file coordinates to the layout frame.</param>
/// <param name="Pose">How it lies.</param>
/// <param name="Hull">Convex outline in file coordinates, mm.</param>
/// <param name="Size">Box in file coordinates, mm.</param>
/// <param name="Faced">Its faced walls, laid flat.</param>
internal sealed record SectionForm(Solid Solid, RigidTransform ToLayout, PrintPose Pose, Point2[] Hull, Point3 Size, IReadOnlyList<FacedWall> Faced)
{
    /// <summary>The piece in the colours that it shows.</summary>
    public Solid Shown { get; init; } = Solid;

    /// <summary>Raises the piece and lays it on the bed.</summary>
    public static SectionForm Of(SectionInput input, CancellationToken cancel)
    {
        var reliefs = input.Facing?.Reliefs();
        var solid = SolidRaiser.Raise(input.Blocks, reliefs?.ByName);
        cancel.ThrowIfCancellationRequested();
        FacedWall[] faced = [.. reliefs?.All.SelectMany(r => r.Walls) ?? []];
        var (pose, turn) = PoseFinder.Find(solid.Mesh, input.Surfaces, input.Along, input.Pose, input.Layer, faced.Sum(w => w.Ledges) + input.Engraved);
        var bed = new BedShape(new PrinterSpec(input.Bed, 0) { Margin = input.Margin });
        var (toLayout, hull, size) = OnBed(solid.Mesh, turn, bed);
        return new(solid, toLayout, pose, hull, size, faced) { Shown = input.Facing is { } facing ? WallPaints.Shown(solid, facing.Front) : solid };
    }

    private static (RigidTransform ToLayout, Point2[] Hull, Point3 Size) OnBed(Mesh mesh, RigidTransform turn, BedShape bed)
    {
        // What is far from the outline as seen from over the bed is so however the piece is turned about on it.
        var seen = Array.ConvertAll(mesh.Vertices, v => Flat(turn, v));
        Point3[] outer = Array.ConvertAll(HullThinning.Places(seen), i => mesh.Vertices[i]);
        var motion = turn.Then(RigidTransform.AboutZ(bed.Best(ConvexRing.Hull(Array.ConvertAll(outer, v => Flat(turn, v)))).Turn));
        Point3 low = new(double.PositiveInfinity, double.PositiveInfinity, double.PositiveInfinity), high = low * -1;
        foreach (var v in outer)
        {
            var p = motion.Apply(v);
            (low, high) = (new(Math.Min(low.X, p.X), Math.Min(low.Y, p.Y), low.Z), new(Math.Max(high.X, p.X), Math.Max(high.Y, p.Y), high.Z));
        }

        foreach (var v in mesh.Vertices)
        {
            double z = motion.Apply(v).Z;
            (low, high) = (low with { Z = Math.Min(low.Z, z) }, high with { Z = Math.Max(high.Z, z) });
        }

        motion = motion.Then(RigidTransform.Shift(-low.X, -low.Y, -low.Z));
        return (motion.Inverse(), ConvexRing.Hull(Array.ConvertAll(outer, v => Flat(motion, v))), high - low);

        static Point2 Flat(RigidTransform move, Point3 v)
        {
            var p = move.Apply(v);
            return new(p.X, p.Y);
        }
    }
}
