using PlatformForge.Geometry;
using PlatformForge.Sections.Forms;
using PlatformForge.Verification.Distances;

namespace PlatformForge.Verification;

/// <summary>The sections of a platform where they stand: their outlines, and the gaps between those that are joined, worked out once for all proofs.</summary>
internal sealed class JoinedSections
{
    // A slice's and a footprint's corners lie on their sections within this, mm: floats, and chords of a curve.
    private const double Off = 0.05;

    // Over a joint, or under a deck that is engraved, a slice is whole where its sections are not: its corners lie outside them by this at most, mm,
    // and in the gap by half of that besides.
    // What is lower than this over the baseboard lies flat.
    private const double Trimmed = 0.8, Flat = 5;

    // Sections that are nearer to one another than this, mm, are joined: both are trimmed there, on the outside of a curve by a quarter more, and what is
    // whole lies over the gap.
    private const double Joined = 2 * 1.25 * JointSpec.MostEndTrim;

    // Corners of a joint's face are farther than that from the other section where a joint lies askew.
    private const double Facing = 1.5 * Joined;

    private readonly Lazy<(OutlineDistance[] Outlines, OutlineDistance[] Gaps)> plan;

    /// <param name="meshes">The sections in the layout frame.</param>
    public JoinedSections(IReadOnlyList<Mesh> meshes)
    {
        Meshes = meshes;
        plan = new(InPlan);
    }

    /// <summary>Of a platform that nothing is known of.</summary>
    public static JoinedSections None { get; } = new([]);

    /// <summary>The sections in the layout frame.</summary>
    public IReadOnlyList<Mesh> Meshes { get; }

    /// <summary>Whether a proof lies where its sections do: a slice is cut from them and lies within them; a footprint lies flat under them.</summary>
    /// <param name="proof">Its mesh in the layout frame.</param>
    public bool Hold(Mesh proof)
    {
        var under = proof.Vertices.ToLookup(v => Under(new(v.X, v.Y)));
        return !under[Place.Neither].Any() && (proof.Box().High.Z <= Flat
            || (MeshGap.IsWithin([.. under[Place.Section]], Meshes, Trimmed) && MeshGap.IsWithin([.. under[Place.Gap]], Meshes, Trimmed + (Joined / 2))));
    }

    // What a place in plan lies in.
    private enum Place
    {
        Section,
        Gap,
        Neither,
    }

    private Place Under(Point2 p)
    {
        var (outlines, gaps) = plan.Value;
        return Array.Exists(outlines, o => o.At(p) <= Off) ? Place.Section : Array.Exists(gaps, g => g.At(p) <= Off) ? Place.Gap : Place.Neither;
    }

    private (OutlineDistance[] Outlines, OutlineDistance[] Gaps) InPlan()
    {
        var hulls = Meshes.Select(m => PlanHull.Of(m.Vertices.Select(v => new Point2(v.X, v.Y)))).ToArray();
        var outlines = Array.ConvertAll(hulls, h => new OutlineDistance(h));
        var gaps = new List<OutlineDistance>();
        for (int a = 0; a < hulls.Length; a++)
        {
            for (int b = a + 1; b < hulls.Length; b++)
            {
                // Of two convex outlines apart from one another one of the nearest points is a corner.
                (Point2 At, double Off)[] between = [.. hulls[a].Select(p => (p, outlines[b].At(p))), .. hulls[b].Select(p => (p, outlines[a].At(p)))];
                if (between.Min(c => c.Off) <= Joined)
                {
                    // The gap lies between the corners of the two faces; it is as wide in one place as in another only where both faces are plain.
                    gaps.Add(new(PlanHull.Of(between.Where(c => c.Off <= Facing).Select(c => c.At))));
                }
            }
        }

        return (outlines, [.. gaps]);
    }
}
