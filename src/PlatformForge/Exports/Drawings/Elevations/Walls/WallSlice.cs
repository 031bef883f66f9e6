using PlatformForge.Geometry;
using PlatformForge.Masonry;
using PlatformForge.Sections.Forms;
using PlatformForge.Solids.Bodies.Layers;
using PlatformForge.Solids.Bodies.Walls;

namespace PlatformForge.Exports.Drawings.Elevations.Walls;

/// <summary>A stretch of one section's wall, or a part of it, as it is drawn in an elevation.</summary>
/// <param name="Wall">The wall laid flat.</param>
/// <param name="Section">Number of the section.</param>
/// <param name="From">Where it begins along the wall, mm.</param>
/// <param name="To">Where it ends, mm.</param>
/// <param name="Begins">Whether the section begins there, seen from left to right; otherwise the slice before it goes on.</param>
internal sealed record WallSlice(FacedWall Wall, int Section, double From, double To, bool Begins)
{
    public double Length => To - From;

    /// <summary>Whether it is a front that steps out, which stands before what is beside it.</summary>
    public bool IsFront { get; init; }

    /// <summary>The stretch of its wall that it is all of, or a row's part of: where that begins and ends, mm.</summary>
    public (double From, double To) Whole { get; init; } = (From, To);

    /// <summary>Height at which the heads of fronts meet their wall, mm; infinity where these go up to the coping.</summary>
    public double Head { get; init; } = double.PositiveInfinity;

    /// <summary>The other parts of the wall's height, over it.</summary>
    public IReadOnlyList<WallBand> Bands { get; init; } = [];

    /// <summary>It and what is over it from the foot up, each as a slice of its own wall with where that begins, mm from the slice's beginning.</summary>
    public IEnumerable<(WallSlice Part, double At)> Parts() => [(this, 0), .. Bands.Select(b => b.Over(this)).OfType<(WallSlice, double)>()];

    /// <summary>Its upper edge, with what stands out over it.</summary>
    public IReadOnlyList<Point2> Top => WallBand.Top(this);

    /// <summary>Greatest height of its upper edge, mm.</summary>
    public double Height => Top.Max(p => p.Y);

    /// <summary>Where it begins from its section's left end, mm.</summary>
    public double At { get; init; }

    /// <summary>All stretches of a face, from left to right as seen from outside.</summary>
    /// <param name="sections">Numbers of the sections from left to right, with their walls laid flat.</param>
    /// <param name="face">Name of the face (<see cref="WallNames"/>).</param>
    public static IReadOnlyList<WallSlice> Of(IEnumerable<(int Number, IReadOnlyList<FacedWall> Walls)> sections, string face) =>
        [.. sections.SelectMany(s => Of(s.Number, s.Walls, face))];

    /// <summary>The faced stretches of a face of one section.</summary>
    public static IEnumerable<WallSlice> Of(PlatformSection section, string face) => Of(section.Number, section.Faced, face);

    // From left to right as seen from outside: panels, and fronts that step out. They are those of the foot, which is all along, under ramps too; what is
    // over it is laid over them.
    private static IEnumerable<WallSlice> Of(int section, IReadOnlyList<FacedWall> walls, string face)
    {
        double head = WallBand.Head(walls, face), along = 0;
        foreach (var wall in walls.Where(w => w.Zone.Number == 1))
        {
            (string Face, double From, double To)[] shown = [.. Shown(wall, face)];
            for (int i = 0; i < shown.Length; i++)
            {
                var (name, from, to) = shown[i];
                yield return new(wall, section, from, to, i == 0)
                {
                    IsFront = name != face,
                    Head = head,
                    Bands = [.. WallBand.Of(walls, wall, (from, to), face, (i == 0, i + 1 == shown.Length))],
                    At = along,
                };
                along += to - from;
            }
        }
    }

    // A face's panels and fronts from left to right; a ring may open in the middle of them. Sides of fronts are not seen from before the wall.
    private static IEnumerable<(string Face, double From, double To)> Shown(FacedWall wall, string face)
    {
        var all = wall.Stretches;
        bool Is((string Face, double From, double To) stretch) =>
            stretch.Face == face || WallNames.IsFrontOf(stretch.Face, face) || WallNames.IsSideOf(stretch.Face, face);
        int first = wall.Wall.IsRing && Is(all[0]) ? Enumerable.Range(0, all.Count).LastOrDefault(i => !Is(all[i]), -1) + 1 : 0;
        return all.Skip(first).Concat(all.Take(first)).Where(s => Is(s) && !WallNames.IsSideOf(s.Face, face));
    }

    /// <summary>Slices in rows no longer than a room: whole sections as long as they fit, else parted.</summary>
    public static IReadOnlyList<IReadOnlyList<WallSlice>> Rows(IEnumerable<WallSlice> slices, double room)
    {
        var rows = new List<List<WallSlice>>();
        double left = 0;
        WallSlice[] all = [.. slices];
        for (int i = 0; i < all.Length; i++)
        {
            if (i == 0 || all[i].Section != all[i - 1].Section)
            {
                left = all.Skip(i).TakeWhile(s => s.Section == all[i].Section).Sum(s => s.Length) > left ? 0 : left;
            }

            for (var rest = all[i]; rest is not null;)
            {
                if (rows.Count == 0 || left < rest.Length)
                {
                    (left, rows) = (room, [.. rows, new List<WallSlice>()]);
                }

                double taken = Math.Min(rest.Length, left);
                rows[^1].Add(rest with { To = rest.From + taken });
                left -= taken;
                rest = taken < rest.Length ? rest with { From = rest.From + taken, Begins = false, At = rest.At + taken } : null;
            }
        }

        return rows;
    }

    /// <summary>An edge of the wall within the slice, its ends among it, along from the slice's beginning.</summary>
    public IReadOnlyList<Point2> Edge(IReadOnlyList<Point2> edge)
    {
        var line = new EdgeLine(edge, 0);
        return [.. new[] { From }.Concat(line.Within(From, To).Order()).Append(To).Select(x => new Point2(x - From, line.At(x)))];
    }

    /// <summary>What stands out within the slice, along from its beginning, each with how far it does, and whether it goes right through.</summary>
    public IEnumerable<(Point2[] Outline, double Out, bool IsThrough)> Pieces() => Pieces(Wall.Regions);

    /// <summary>The lintels among them.</summary>
    public IEnumerable<Point2[]> Lintels() => Pieces(Wall.Regions.Where(r => r.IsLintel)).Select(p => p.Outline);

    private IEnumerable<(Point2[] Outline, double Out, bool IsThrough)> Pieces(IEnumerable<WallRegion> regions)
    {
        double round = Wall.Wall.IsRing ? Wall.Wall.Length : 0;
        foreach (var region in regions)
        {
            // What runs over the opening of a ring shows at both its ends.
            double[] shifts = round > 0 && region.Outline.Max(p => p.X) > round ? [0, round] : [0];
            foreach (double shift in shifts)
            {
                if (Within([.. region.Outline.Select(p => p - new Point2(From + shift, 0))], Math.Max(0, region.Out)) is { Length: > 2 } outline)
                {
                    yield return (outline, region.Out, region.Behind is not null);
                }
            }
        }
    }

    // What turns a corner shows its end there, as far beyond the corner of the ground as it stands out.
    private Point2[] Within(Point2[] ring, double stands)
    {
        bool before = ring.Min(p => p.X) < 0, after = ring.Max(p => p.X) > Length;
        var kept = before ? ConvexRing.LeftOf(ring, new(0, 1), new(0, 0)) : ring;
        kept = after && kept.Length > 0 ? ConvexRing.LeftOf(kept, new(Length, 0), new(Length, 1)) : kept;
        double left = before && From <= Whole.From ? -stands : 0, right = after && To >= Whole.To ? stands : 0;
        double Out(double x) => x <= Units.Tolerances.Rounding ? left : x >= Length - Units.Tolerances.Rounding ? right : 0;
        return left == 0 && right == 0 ? kept : Array.ConvertAll(kept, p => p with { X = p.X + Out(p.X) });
    }
}
