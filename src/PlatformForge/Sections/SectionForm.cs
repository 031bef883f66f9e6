using PlatformForge.Geometry;
using PlatformForge.Sections.Beds;
using PlatformForge.Sections.Forms;
using PlatformForge.Sections.Poses;
using PlatformForge.Solids;

namespace PlatformForge.Sections;

/// <summary>How a raised section is to lie on the bed.</summary>
/// <param name="Raised">The piece.</param>
/// <param name="Surfaces">Planes of its walking surface.</param>
/// <param name="Along">Long axis in plan.</param>
/// <param name="Pose">What the user wants.</param>
/// <param name="Bed">Outline of the bed, mm.</param>
/// <param name="Margin">Kept free at the bed's edge, mm.</param>
/// <param name="Layer">Layer height, mm.</param>
/// <param name="Engraved">Area engraved in its deck, mm².</param>
internal sealed record LyingInput(
    RaisedSection Raised, HeightPlane[] Surfaces, Point2 Along, PrintPose Pose, IReadOnlyList<Point2> Bed, double Margin, double Layer, double Engraved);

/// <summary>A section's form: the piece and how it lies on the bed.</summary>
/// <param name="Raised">The piece, layout frame.</param>
/// <param name="ToLayout">From file coordinates to the layout frame.</param>
/// <param name="Pose">How it lies.</param>
/// <param name="Hull">Convex outline in file coordinates, mm.</param>
/// <param name="Size">Box in file coordinates, mm.</param>
internal sealed record SectionForm(RaisedSection Raised, RigidTransform ToLayout, PrintPose Pose, Point2[] Hull, Point3 Size)
{
    /// <summary>The piece, layout frame.</summary>
    public Solid Solid => Raised.Solid;

    /// <summary>Lays a raised piece on the bed.</summary>
    public static SectionForm Of(LyingInput input, CancellationToken cancel)
    {
        var mesh = input.Raised.Solid.Mesh;
        var (pose, turn) = PoseFinder.Find(mesh, input.Surfaces, input.Along, input.Pose, input.Layer, input.Raised.Faced.Sum(w => w.Ledges) + input.Engraved);
        var bed = new BedShape(new PrinterSpec(input.Bed, 0) { Margin = input.Margin });
        var (toLayout, hull, size) = OnBed(mesh, turn, bed);
        return new(input.Raised, toLayout, pose, hull, size);
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
