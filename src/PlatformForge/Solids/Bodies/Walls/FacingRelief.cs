using PlatformForge.Geometry;
using PlatformForge.Masonry;
using PlatformForge.Solids.Bodies.Layers;
using PlatformForge.Solids.Reliefs;

namespace PlatformForge.Solids.Bodies.Walls;

/// <summary>A finish in the place of named wall faces, which are its joints' ground; bricks, stones or planks stand out of it.</summary>
/// <param name="work">How it is laid.</param>
/// <param name="returns">Names of the faces that are returns of the others.</param>
/// <param name="openings">What is open in the walls.</param>
internal sealed class FacingRelief(WallWork work, IReadOnlyList<string> returns, IReadOnlyList<PlacedOpening>? openings = null) : IWallRelief
{
    // An opening lies on a piece of its wall that is no farther from its place in plan than this, mm: chords of curves are nearer.
    private const double OnWall = 0.2;

    /// <summary>What a wall shows whose paint is <see cref="Paint.Wall"/>, while a solid is raised: so that it is told from what has no face of its
    /// own.</summary>
    public const byte OwnWall = byte.MaxValue;

    // A section's end lies no farther from its cut, mm: trimmed, and at a platform's end set back by what stands before its end wall.
    private const double AtCut = 2;

    // A wall meets a line askew where it lies at least so far off that line: half a right angle but for what curves turn (sine of 30 degrees). An end's own
    // wall lies along its line and never meets it.
    private const double Meets = 0.5;

    private readonly List<FacedWall> walls = [];

    /// <summary>The part of the walls' height that it is on.</summary>
    public WallZone Zone { get; init; } = WallProfile.Flat.Zones[0];

    /// <summary>Cuts and ends askew.</summary>
    public IReadOnlyList<AskewLine> Askew { get; init; } = [];

    /// <summary>The walls laid so far.</summary>
    public IReadOnlyList<FacedWall> Walls => walls;

    /// <summary>What stands out shows.</summary>
    public byte? Face => Own(PaintOf(work.Finish));

    /// <summary>Mortar between bricks and stones; gaps and joints of other finishes show what those are made of.</summary>
    public byte? Ground => Own(HasMortar(work.Finish) ? Paint.Mortar : PaintOf(work.Finish));

    /// <summary>Whether a finish has joints of mortar.</summary>
    public static bool HasMortar(WallFinish finish) => finish is WallFinish.Brick or WallFinish.Stone or WallFinish.Rubble;

    /// <summary>What a finish shows.</summary>
    public static Paint PaintOf(WallFinish finish) => finish switch
    {
        WallFinish.Stone or WallFinish.Rubble => Paint.Stone,
        WallFinish.Planks or WallFinish.UprightPlanks or WallFinish.Sleepers => Paint.Timber,
        WallFinish.Panels => Paint.Concrete,
        WallFinish.Sheet => Paint.Bare,
        WallFinish.Plain => Paint.Render,
        _ => Paint.Wall,
    };

    private static byte Own(Paint paint) => paint == Paint.Wall ? OwnWall : (byte)paint;

    public IEnumerable<ReliefField> Fields(WallPanel panel)
    {
        var wall = Flat(panel);
        var pattern = work.On(wall);
        WallRegion[] regions = [.. pattern.Regions()];
        var stretches = panel.Stretches.Select(s => s with { Face = WallNames.WholeOf(s.Face) });
        walls.Add(new FacedWall(work.Finish, work.Laying.Joint, [.. stretches], wall, regions, pattern.GreatestDraw) with
        {
            Zone = Zone,
            Shows = PaintOf(work.Finish),
            Plan = [.. panel.Plan.Select((p, i) => (panel.Folds[i], p.Left, p.Right))],
        });
        return Array.ConvertAll(regions, r => new ReliefField(r.Outline, r.Out)
        {
            Behind = r.Behind,
            Paint = r.IsLintel && work.Finish == WallFinish.Brick ? (byte)Paint.Concrete : null,
        });
    }

    private FlatWall Flat(WallPanel panel)
    {
        var stretches = panel.Stretches;
        WallRun[] runs = [.. stretches.Select((s, i) =>
        {
            bool before = i > 0 || panel.IsRing, after = i + 1 < stretches.Count || panel.IsRing;
            bool insideBefore = before && panel.Inside.Contains(s.From > 0 ? s.From : panel.Length), insideAfter = after && panel.Inside.Contains(s.To);
            bool cornerBefore = before && !insideBefore && Turns(i - 1) && Turns(i), cornerAfter = after && !insideAfter && Turns(i) && Turns(i + 1);
            return new WallRun(s.From, s.To, cornerBefore, cornerAfter, returns.Contains(s.Face))
            {
                InsideBefore = insideBefore,
                InsideAfter = insideAfter,
                ShortBefore = before ? 0 : Short(panel.Plan[0], atLeft: true),
                ShortAfter = after ? 0 : Short(panel.Plan[^1], atLeft: false),
            };
        })];
        var corners = stretches.Select(s => s.From).ToHashSet();

        // A stump at a panel's end, no longer than joints are deep, takes no brick round its corner: what is beside it stops there.
        bool Turns(int i) => panel.IsRing || (i > 0 && i + 1 < stretches.Count) || stretches[i].To - stretches[i].From > work.Laying.Depth + work.Laying.Joint;

        // Where a panel runs out in a point, that is the end of both edges.
        int right = Enumerable.Range(0, panel.Border.Count).MaxBy(i => panel.Border[i].X);
        return new(runs, Edge(panel.Border.Take(right + 1), -1), Edge(panel.Border.Skip(right).Append(panel.Border[0]).Reverse(), 1),
            [.. panel.Folds.Skip(1).SkipLast(1).Where(f => !corners.Contains(f))], panel.IsRing)
        { Openings = [.. Along(panel)] };
    }

    // What stands out at the sharp side of a cut askew would stand over it: it stops short by as much as the cut's line gains over its depth.
    private double Short((Point2 Left, Point2 Right) piece, bool atLeft)
    {
        Point2 end = atLeft ? piece.Left : piece.Right, ahead = (piece.Right - piece.Left) * (1 / (piece.Right - piece.Left).Length), outward = ahead.Left * -1;
        return Askew.Where(a => Math.Abs(Point2.Cross(a.Along, end - a.On)) < AtCut && Math.Abs(Point2.Dot(a.Along, outward)) > Meets)
            .Select(a => work.Laying.Depth * (atLeft ? 1 : -1) * Point2.Dot(a.Along, ahead) / Point2.Dot(a.Along, outward)).Append(0).Max();
    }

    // The openings that lie on a panel, by their places in plan.
    private IEnumerable<WallOpening> Along(WallPanel panel)
    {
        foreach (var opening in openings ?? [])
        {
            for (int i = 0; i < panel.Plan.Count; i++)
            {
                var (left, right) = panel.Plan[i];
                Point2 ahead = (right - left) * (1 / (right - left).Length);
                double on = Point2.Dot(opening.At - left, ahead), from = panel.Folds[i];
                bool isOwn = panel.Stretches.Any(s => s.Face == opening.Wall && s.From <= from && s.To > from);
                if (isOwn && on >= 0 && on < (right - left).Length && Math.Abs(Point2.Cross(ahead, opening.At - left)) < OnWall)
                {
                    yield return new(from + on, opening.Shape);
                    break;
                }
            }
        }
    }

    // Of points over one another at an end, the outermost.
    private static List<Point2> Edge(IEnumerable<Point2> points, int outward)
    {
        var edge = new List<Point2>();
        foreach (var p in points)
        {
            if (edge.Count == 0 || p.X > edge[^1].X)
            {
                edge.Add(p);
            }
            else if (outward * p.Y > outward * edge[^1].Y)
            {
                edge[^1] = edge[^1] with { Y = p.Y };
            }
        }

        return edge;
    }
}
