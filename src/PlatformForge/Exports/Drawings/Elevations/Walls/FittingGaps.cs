using PlatformForge.Geometry;
using PlatformForge.Masonry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Plans.Fittings;
using PlatformForge.Solids.Bodies.Layers;
using PlatformForge.Solids.Bodies.Walls;

namespace PlatformForge.Exports.Drawings.Elevations.Walls;

/// <summary>Walls laid flat that fittings part, as one: what is seen of an elevation goes on behind one.</summary>
internal static class FittingGaps
{
    // A wall ends so near to a fitting's side, mm: chords of curves are nearer.
    private const double Near = 0.1;

    /// <summary>The walls of a section, those on both sides of a fitting made one.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="walls">The walls of a section.</param>
    /// <param name="from">Chainage at which the section begins, mm.</param>
    /// <param name="to">Chainage at which it ends.</param>
    public static IReadOnlyList<FacedWall> Closed(PlatformPlan plan, IReadOnlyList<FacedWall> walls, double from, double to)
    {
        WallFitting[] parting = [.. plan.Fittings.SelectMany(r => r.Places).Where(p => p.PartedHalf > 0 && p.From >= from && p.To <= to)];
        if (parting.Length == 0)
        {
            return walls;
        }

        var (chart, all) = (new FacetedPlan(plan), walls.ToList());
        foreach (var frame in parting.Select(p => new FittingFrame(chart, p)))
        {
            foreach (var zone in frame.Profile.Zones)
            {
                double half = frame.Fitting.PartedHalf;
                Close(all, frame.Place(-half, frame.Ground, zone.Out), frame.Place(half, frame.Ground, zone.Out));
            }
        }

        return all;
    }

    // Makes one of the wall that ends at a side of a fitting and the one that begins at its other side.
    private static void Close(List<FacedWall> walls, Point2 a, Point2 b)
    {
        bool Ends(FacedWall wall, Point2 at) => !wall.Wall.IsRing && (wall.Plan[^1].Right - at).Length < Near;
        bool Begins(FacedWall wall, Point2 at) => !wall.Wall.IsRing && (wall.Plan[0].Left - at).Length < Near;
        foreach (var (end, begin) in new[] { (a, b), (b, a) })
        {
            int left = walls.FindIndex(w => Ends(w, end)), right = walls.FindIndex(w => Begins(w, begin));
            if (left < 0 || right < 0 || walls[left].Finish != walls[right].Finish)
            {
                continue;
            }

            walls[left] = left == right ? Ring(walls[left]) : Joined(walls[left], walls[right]);
            if (left != right)
            {
                walls.RemoveAt(right);
            }

            return;
        }
    }

    private static FacedWall Joined(FacedWall left, FacedWall right)
    {
        double length = left.Wall.Length, gap = (right.Plan[0].Left - left.Plan[^1].Right).Length, by = length + gap;
        Point2 shift = new(by, 0);
        var (a, b) = (left.Wall, right.Wall);
        WallRun Shifted(WallRun r) => r with { From = r.From + by, To = r.To + by };
        Point2[] Moved(IReadOnlyList<Point2> line) => [.. line.Select(p => p + shift)];
        var (before, after) = (left.Stretches[^1], right.Stretches[0]);
        return left with
        {
            Stretches = [.. left.Stretches.SkipLast(1), (before.Face, before.From, after.To + by),
                .. right.Stretches.Skip(1).Select(s => (s.Face, s.From + by, s.To + by))],
            Wall = a with
            {
                Runs = [.. a.Runs, .. b.Runs.Select(Shifted)],
                Foot = [.. a.Foot, .. Moved(b.Foot)],
                Top = [.. a.Top, .. Moved(b.Top)],
                Bends = [.. a.Bends, .. b.Bends.Select(x => x + by)],
                Openings = [.. a.Openings, .. b.Openings.Select(o => o with { At = o.At + by })],
            },
            Regions = [.. left.Regions, .. right.Regions.Select(r => r with { Outline = Moved(r.Outline) })],
            Draw = Math.Max(left.Draw, right.Draw),
            Plan = [.. left.Plan, (length, left.Plan[^1].Right, right.Plan[0].Left), .. right.Plan.Select(p => (p.From + by, p.Left, p.Right))],
        };
    }

    // A wall that goes all round from one side of a fitting to its other side.
    private static FacedWall Ring(FacedWall wall)
    {
        double length = wall.Wall.Length, to = length + (wall.Plan[0].Left - wall.Plan[^1].Right).Length;
        var (flat, last) = (wall.Wall, wall.Stretches[^1]);
        return wall with
        {
            Stretches = [.. wall.Stretches.SkipLast(1), last with { To = to }],
            Wall = flat with
            {
                Runs = [.. flat.Runs.SkipLast(1), flat.Runs[^1] with { To = to }],
                Foot = [.. flat.Foot, flat.Foot[0] with { X = to }],
                Top = [.. flat.Top, flat.Top[0] with { X = to }],
                IsRing = true,
            },
            Plan = [.. wall.Plan, (length, wall.Plan[^1].Right, wall.Plan[0].Left)],
        };
    }
}
