using PlatformForge.Track;
using PlatformForge.Units;

namespace PlatformForge.Platforms.Furniture;

/// <summary>
/// Sets end walls and ribs. Ribs across stand under the middles of coping slabs where they can, so that every joint stays
/// free for a cut, and step aside from furniture; ribs along do the same square to the track.
/// </summary>
internal sealed class RibPlanner(PlatformSpec spec, PlanLines lines, SlabLayout slabs, Centreline chart, List<Finding> findings)
{
    // What a rib makes room for when it is not furniture.
    private const string Neighbour = "another rib or wall";

    private readonly FaceSpec face = spec.Face;
    private readonly List<(double By, string What)> moves = [];

    public IReadOnlyList<PlanRib> Plan(IReadOnlyList<Keepout> keepouts)
    {
        var ribs = new List<PlanRib>
        {
            new(RibKind.EndWall, face.From, face.From + Along(face.From, spec.Walls.EndThickness), lines.WallBack, lines.BackWallFace, null),
            new(RibKind.EndWall, face.To - Along(face.To, spec.Walls.EndThickness), face.To, lines.WallBack, lines.BackWallFace, null),
        };
        ribs.AddRange(Across(keepouts));
        ribs.AddRange(Lengthwise(keepouts));
        if (moves.Count > 0)
        {
            findings.Add(PlatformFindings.RibsMoved($"{spec.Key}.ribs", moves.Count, moves.Max(m => m.By), moves.Select(m => m.What).Distinct()));
        }

        return ribs;
    }

    private IEnumerable<PlanRib> Across(IReadOnlyList<Keepout> keepouts)
    {
        if (spec.Ribs.Pitch <= 0)
        {
            yield break;
        }

        double[] edges = [face.From, .. slabs.Joints, face.To];
        double[] middles = [.. edges.Zip(edges.Skip(1), (a, b) => (a + b) / 2)];
        var blocked = Blocked(keepouts);
        double at = face.From, end = face.To - Along(face.To, spec.Walls.EndThickness);
        while (end - at > spec.Ribs.Pitch)
        {
            double limit = at + spec.Ribs.Pitch;
            double wanted = Array.FindLast(middles, m => m <= limit);
            wanted = wanted > at ? wanted : limit;
            double half = Along(wanted, spec.Ribs.Thickness) / 2;
            double free = Free(wanted, half, at, middles, blocked);
            if (double.IsNaN(free))
            {
                // Furniture stands shoulder to shoulder over the whole pitch: the next rib is sought beyond it.
                at = limit;
                continue;
            }

            if (free != wanted)
            {
                moves.Add((Math.Abs(free - wanted), blocked.Find(b => wanted + half > b.From && wanted - half < b.To)?.Name ?? Neighbour));
            }

            if (free + half >= end)
            {
                yield break;
            }

            yield return new(RibKind.Transverse, free - half, free + half, lines.WallBack, lines.BackWallFace, spec.Ribs.Depth);
            at = free;
        }
    }

    // The wanted place, the nearest free slab middle within the pitch, or the nearest place beside what is in the way.
    private double Free(double wanted, double half, double after, double[] middles, IReadOnlyList<Keepout> blocked)
    {
        bool Clear(double s) => s - half > after + half && s + half < face.To && blocked.All(b => s + half <= b.From || s - half >= b.To);
        var beside = blocked.SelectMany(b => new[] { b.From - half, b.To + half });
        double pitch = spec.Ribs.Pitch;
        double[] near = [.. middles.Where(m => m > after && m <= after + pitch && Clear(m))];
        if (Clear(wanted))
        {
            return wanted;
        }

        if (near.Length > 0)
        {
            return near.MinBy(m => Math.Abs(m - wanted));
        }

        near = [.. beside.Where(m => m > after && m <= after + pitch && Clear(m))];
        return near.Length > 0 ? near.MinBy(m => Math.Abs(m - wanted)) : double.NaN;
    }

    private List<Keepout> Blocked(IReadOnlyList<Keepout> keepouts)
    {
        var blocked = keepouts.Where(k => !k.RibsPass).ToList();
        foreach (double cut in spec.ForcedCuts)
        {
            blocked.Add(new("forced cut", "", cut - CutPlanner.Clear, cut + CutPlanner.Clear, 0, double.PositiveInfinity));
        }

        return blocked;
    }

    private IEnumerable<PlanRib> Lengthwise(IReadOnlyList<Keepout> keepouts)
    {
        double inner = spec.Deck.Width - spec.Coping.Overhang - spec.Walls.FrontThickness - spec.Walls.BackThickness;
        double half = spec.Ribs.LongitudinalThickness / 2, from = face.From + Along(face.From, spec.Walls.EndThickness), to = face.To - Along(face.To, spec.Walls.EndThickness);

        // Places are told from the inner face of the front wall, which all lines are parallel to.
        var taken = keepouts.Where(k => !k.RibsPass).Select(k => (Low: k.Near - WallBack(k, Math.Max), High: k.Far - WallBack(k, Math.Min), k.Name)).ToList();
        double below = 0;
        for (int i = 1; i <= spec.Ribs.LongitudinalCount; i++)
        {
            double wanted = inner * i / (spec.Ribs.LongitudinalCount + 1);
            bool Clear(double u) => u - half >= below && u + half <= inner && taken.All(k => u + half <= k.Low || u - half >= k.High);
            double[] places = [.. taken.SelectMany(k => new[] { k.Low - half, k.High + half }).Prepend(wanted).Where(Clear)];
            if (places.Length == 0)
            {
                findings.Add(PlatformFindings.RibLeftOut($"{spec.Key}.ribs.longitudinal_count", i, spec.Ribs.LongitudinalCount));
                continue;
            }

            double free = places.MinBy(u => Math.Abs(u - wanted));
            if (free != wanted)
            {
                string? what = taken.Find(k => wanted + half > k.Low && wanted - half < k.High).Name;
                moves.Add((Math.Abs(free - wanted), what ?? Neighbour));
            }

            below = free + half;
            yield return new(RibKind.Longitudinal, from, to, lines.WallBack.Shifted(free - half), lines.WallBack.Shifted(free + half), spec.Ribs.Depth);
        }
    }

    private double WallBack(Keepout k, Func<double, double, double> choose) => choose(lines.WallBack.At(k.From), lines.WallBack.At(k.To));

    // Chainage that gives a thickness at least this in the layout from front wall to back wall.
    private double Along(double s, double thickness)
    {
        double least = double.PositiveInfinity;
        foreach (double place in new[] { s - thickness, s, s + thickness })
        {
            least = Math.Min(least, SocketPlanner.Stretch(chart, face.Side, place, lines.WallFace.At(place)));
            least = Math.Min(least, SocketPlanner.Stretch(chart, face.Side, place, lines.Back.At(place)));
        }

        return thickness / least;
    }
}
