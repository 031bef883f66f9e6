using PlatformForge.Exports.Manifests;
using PlatformForge.Geometry;
using PlatformForge.Track;
using PlatformForge.Units;
using PlatformForge.Verification.Distances;
using static System.FormattableString;

namespace PlatformForge.Verification.Rules;

/// <summary>A slide gauge, as it was written, rides on both rails, goes between them and touches nothing of the platform.</summary>
/// <param name="ride">The line that wheels follow.</param>
/// <param name="gauge">Between the running edges, mm.</param>
/// <param name="railTop">Rail top over the baseboard, mm.</param>
internal sealed class RidingRule(Centreline ride, double gauge, double railTop)
{
    // What rides is level with rail top within this, mm; what goes between the rails is told from what rides by this.
    private const double Level = 0.02, Sunk = 0.05;

    // So much of the air that is said is there: floats, and facets of the edge.
    private const double Kept = 0.95;

    // Along the track a gauge is felt for at this step, mm, so far to either side.
    private const double Step = 0.5, Reach = 20;

    // Something farther from the platform than this, mm, is no gauge for it.
    private const double Far = 5;

    /// <param name="proof">What the manifest tells.</param>
    /// <param name="placed">The gauge where it stands.</param>
    /// <param name="platform">The sections of its platform where they stand; empty where there are none to hold it against.</param>
    public IEnumerable<Finding> Check(ManifestProof proof, Mesh placed, IReadOnlyList<Mesh> platform)
    {
        if (Ridden(proof.Rides!, placed) is { } standing)
        {
            yield return Fault("PF7520", Invariant($"{proof.Name}: {standing}."));
        }

        if (Jammed(proof.Rides!, placed) is { } jammed)
        {
            yield return Fault("PF7521", Invariant($"{proof.Name} comes to {jammed:0.00} mm beyond a rail's running face below rail top."));
        }

        if (platform.Count == 0)
        {
            yield break;
        }

        var (gap, at) = platform.Select(m => MeshGap.Between(placed, m, Far)).MinBy(g => g.Gap);
        double air = proof.Rides!.Air;
        if (gap < Kept * air || gap > air + Level)
        {
            string where = gap < Far ? Invariant($"comes to {gap:0.00} mm from the platform at x {at.X:0.0}, y {at.Y:0.0}, {at.Z:0.0} mm over the baseboard")
                : Invariant($"stays over {Far:0} mm from the platform");
            yield return Fault("PF7522", Invariant($"{proof.Name} {where}, where {air:0.00} mm of air are to show."));
        }
    }

    // The lowest of the gauge over the middle of each rail's head has to lie at rail top somewhere and nowhere below it.
    private string? Ridden(ManifestRide rides, Mesh placed)
    {
        double middle = ride.Locate(Middle(placed)).Chainage;
        foreach (int side in (int[])[-1, 1])
        {
            double lowest = double.PositiveInfinity;
            int on = 0;
            for (double s = middle - Reach; s <= middle + Reach; s += Step)
            {
                double under = Lowest(placed, ride.PointAt(s, side * ((gauge / 2) + (rides.RailHead / 2))));
                lowest = Math.Min(lowest, under);
                on += Math.Abs(under - railTop) <= Level ? 1 : 0;
            }

            if (on * Step < LeastLength || lowest < railTop - Level)
            {
                return Invariant($"over the {(side > 0 ? "left" : "right")} rail it comes to {lowest - railTop:0.00} mm above rail top, and lies ")
                    + Invariant($"on {on * Step:0.0} mm of it");
            }
        }

        return null;
    }

    // mm of each rail that it has to lie on.
    private const double LeastLength = 5;

    // How far anything below rail top reaches into a rail, from its running face; null where all of it is between the rails or beside them. What stands beyond
    // a rail's head, as a finger for the wall's foot does, is beside the track however narrow the sleepers are.
    private double? Jammed(ManifestRide rides, Mesh placed)
    {
        double worst = 0, guess = ride.Locate(Middle(placed)).Chainage, deep = railTop - Sunk;
        double[] off = [.. placed.Vertices.Select(v => ride.Locate(new(v.X, v.Y), guess).Offset)];
        for (int i = 0; i < placed.Triangles.Length; i++)
        {
            int from = placed.Triangles[i], to = placed.Triangles[i % 3 == 2 ? i - 2 : i + 1];
            var (a, b) = (placed.Vertices[from], placed.Vertices[to]);
            if (Math.Min(a.Z, b.Z) >= deep)
            {
                continue;
            }

            // The part of the edge that is below rail top.
            double At(double z) => off[from] + ((off[to] - off[from]) * (z - a.Z) / (b.Z - a.Z));
            double first = a.Z >= deep ? At(deep) : off[from], last = b.Z >= deep ? At(deep) : off[to];
            worst = Math.Max(worst, Math.Max(Into(first, last, rides.RailHead), Into(-first, -last, rides.RailHead)));
        }

        return worst > 0 ? worst : null;
    }

    // How far a stretch of offsets reaches into the rail on one side, from its running face; nil where it keeps clear of it.
    private double Into(double first, double last, double railHead)
    {
        double face = gauge / 2, low = Math.Min(first, last), high = Math.Max(first, last);
        return high > face && low < face + railHead ? Math.Min(high - face, railHead) : 0;
    }

    private static Point2 Middle(Mesh mesh)
    {
        var (low, high) = mesh.Box();
        return new((low.X + high.X) / 2, (low.Y + high.Y) / 2);
    }

    // Height of a mesh's lowest face over a place; infinite where there is none.
    private static double Lowest(Mesh mesh, Point2 p)
    {
        double lowest = double.PositiveInfinity;
        for (int i = 0; i < mesh.Triangles.Length; i += 3)
        {
            Point3 a = mesh.Vertices[mesh.Triangles[i]], b = mesh.Vertices[mesh.Triangles[i + 1]], c = mesh.Vertices[mesh.Triangles[i + 2]];
            double area = ((b.X - a.X) * (c.Y - a.Y)) - ((b.Y - a.Y) * (c.X - a.X));
            double u = (((b.X - p.X) * (c.Y - p.Y)) - ((b.Y - p.Y) * (c.X - p.X))) / area,
                v = (((c.X - p.X) * (a.Y - p.Y)) - ((c.Y - p.Y) * (a.X - p.X))) / area;
            if (u >= 0 && v >= 0 && u + v <= 1)
            {
                lowest = Math.Min(lowest, (u * a.Z) + (v * b.Z) + ((1 - u - v) * c.Z));
            }
        }

        return lowest;
    }

    private static Finding Fault(string code, string what) => Finding.Error(code, "", what, "Build the folder again.", FaultKind.Mesh);
}
