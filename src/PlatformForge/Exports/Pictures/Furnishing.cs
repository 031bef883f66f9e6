using PlatformForge.Exports.Drawings;
using PlatformForge.Geometry;
using PlatformForge.Platforms;
using PlatformForge.Track;

namespace PlatformForge.Exports.Pictures;

/// <summary>
/// What makes a platform a platform, in plain shapes, for pictures only: the fence on its posts, name boards and seats in their sockets, lamps, buildings. Sizes
/// are at full size, from memory; nothing is ever made from them.
/// </summary>
internal sealed class Furnishing(PlatformPlan plan, double ratio)
{
    private static readonly Rgb Timber = new(0x8A, 0x6E, 0x50), Iron = new(0x3D, 0x45, 0x48), Cream = new(0xEF, 0xE6, 0xCF), Slate = new(0x6B, 0x70, 0x73), Stone = new(0xC9, 0xB4, 0x93);

    // mm at full size: what is longer than this in plan is a seat, and what is this deep too a building; posts nearer than this carry one board.
    private const double Seat = 900, Building = 2200, BuildingDeep = 1300, BoardSpan = 4500;

    public IEnumerable<SceneBody> Bodies() => Fence().Concat(Gates()).Concat(Posts()).Concat(Sockets());

    private static SceneBody Body(IEnumerable<Mesh> meshes, Rgb colour) => new(SweptProfile.Joined([.. meshes]), [colour]);

    private double M(double fullSize) => fullSize / ratio;

    private Point3 On(double s, double t, double up = 0)
    {
        var p = plan.ToLayout(s, t);
        return new(p.X, p.Y, plan.TopAt(s, t) + up);
    }

    private static Point2 Flat(Point3 p) => new(p.X, p.Y);

    private IEnumerable<SceneBody> Fence()
    {
        var panels = PlanFurniture.Panels(plan).ToArray();
        if (panels.Length == 0)
        {
            yield break;
        }

        yield return Body(panels.SelectMany(p => Panel(On(p.From.Chainage, p.From.Reach), On(p.To.Chainage, p.To.Reach))), Timber);
        var posts = panels.SelectMany(p => new[] { p.From, p.To }).Distinct().Select(h => On(h.Chainage, h.Reach));
        yield return Body(posts.Select(p => Blocks.Post(Flat(p), M(130), p.Z, p.Z + M(1350))), Timber);
    }

    private IEnumerable<Mesh> Panel(Point3 a, Point3 b)
    {
        foreach (double up in (double[])[300, 950])
        {
            Point3 lift = new(0, 0, M(up));
            yield return Blocks.Beam(a + lift, b + lift, M(50), M(90));
        }

        int pales = Math.Max(1, (int)((b - a).Length / M(150)));
        var along = (Flat(b) - Flat(a)) * (1 / (Flat(b) - Flat(a)).Length);
        for (int i = 1; i < pales; i++)
        {
            var p = a + ((b - a) * ((double)i / pales));
            yield return Blocks.Prism(Blocks.Square(Flat(p), along, M(80), M(24)), p.Z + M(80), p.Z + M(1200));
        }
    }

    // A gate stands open: what is between its posts is free.
    private IEnumerable<SceneBody> Gates()
    {
        foreach (var (from, to) in PlanFurniture.Gates(plan))
        {
            Point3 a = On(from.Chainage, from.Reach), b = On(to.Chainage, to.Reach), inward = On(from.Chainage, from.Reach - (b - a).Length);
            yield return Body(new[] { 150.0, 600, 1050 }.Select(up => Blocks.Beam(a + new Point3(0, 0, M(up)), inward + new Point3(0, 0, M(up)), M(60), M(80))), Cream);
        }
    }

    // Holes of their own: lamps and the like.
    private IEnumerable<SceneBody> Posts()
    {
        var fence = plan.Fence?.Posts.ToHashSet() ?? [];
        foreach (var hole in plan.PostHoles.Where(h => !fence.Contains(h)))
        {
            var p = On(hole.Chainage, hole.Reach);
            yield return Body([Blocks.Post(Flat(p), M(90), p.Z, p.Z + M(3300)), Blocks.Post(Flat(p), M(220), p.Z, p.Z + M(500))], Iron);
            yield return Body([Blocks.Loft(Blocks.Square(Flat(p), new(1, 0), M(200), M(200)), p.Z + M(3300), Blocks.Square(Flat(p), new(1, 0), M(380), M(380)), p.Z + M(3700))], Cream);
        }
    }

    private IEnumerable<SceneBody> Sockets()
    {
        PlanSocket? first = null;
        foreach (var socket in plan.Sockets.OrderBy(s => s.Chainage))
        {
            bool seat = socket.Along * ratio > Seat, building = socket.Along * ratio > Building && socket.Across * ratio > BuildingDeep;
            foreach (var body in building ? House(socket) : seat ? Bench(socket) : [])
            {
                yield return body;
            }

            if (seat || building)
            {
                continue;
            }

            var p = On(socket.Chainage, socket.Reach);
            yield return Body([Blocks.Post(Flat(p), Math.Min(socket.Along, socket.Across), p.Z, p.Z + M(2700))], Iron);
            if (first is { } before && (p - On(before.Chainage, before.Reach)).Length * ratio < BoardSpan)
            {
                foreach (var board in Board(On(before.Chainage, before.Reach), p))
                {
                    yield return board;
                }

                first = null;
            }
            else
            {
                first = socket;
            }
        }
    }

    private IEnumerable<SceneBody> Board(Point3 a, Point3 b)
    {
        var over = (b - a) * (M(350) / (b - a).Length);
        yield return Body([Blocks.Beam(a - over + new Point3(0, 0, M(1700)), b + over + new Point3(0, 0, M(1700)), M(110), M(800))], Iron);
        yield return Body([Blocks.Beam(a - (over * 0.75) + new Point3(0, 0, M(1790)), b + (over * 0.75) + new Point3(0, 0, M(1790)), M(150), M(620))], Cream);
    }

    private IEnumerable<SceneBody> Bench(PlanSocket socket)
    {
        var p = On(socket.Chainage, socket.Reach);
        var frame = plan.Chart.At(socket.Chainage);
        var back = plan.Side.Outward(frame.Tangent);
        var ring = Blocks.Square(Flat(p), frame.Tangent, socket.Along, socket.Across);
        yield return Body([Blocks.Prism(ring, p.Z + M(380), p.Z + M(450)), Blocks.Prism(Blocks.Square(Flat(p), frame.Tangent, socket.Along * 0.85, socket.Across * 0.5), p.Z, p.Z + M(380))], Timber);
        yield return Body([Blocks.Prism(Blocks.Square(Flat(p) + (back * (socket.Across * 0.45)), frame.Tangent, socket.Along, socket.Across * 0.14), p.Z + M(450), p.Z + M(900))], Timber);
    }

    private IEnumerable<SceneBody> House(PlanSocket socket)
    {
        var p = On(socket.Chainage, socket.Reach);
        var frame = plan.Chart.At(socket.Chainage);
        var towards = plan.Side.Opposite().Outward(frame.Tangent);
        double low = p.Z - socket.Depth, eaves = p.Z + M(2800);
        yield return Body([Blocks.Prism(Blocks.Square(Flat(p), frame.Tangent, socket.Along * 0.98, socket.Across * 0.96), low, eaves)], Stone);
        yield return Body([Blocks.Loft(Blocks.Square(Flat(p), frame.Tangent, socket.Along * 1.05, socket.Across * 1.25), eaves, Blocks.Square(Flat(p), frame.Tangent, socket.Along * 0.95, socket.Across * 0.06), eaves + (socket.Across * 0.42))], Slate);
        int bays = Math.Max(2, (int)(socket.Along / M(1900)));
        var openings = Enumerable.Range(0, bays).Select(i =>
        {
            var at = Flat(p) + (frame.Tangent * (socket.Along * 0.9 * (((i + 0.5) / bays) - 0.5))) + (towards * (socket.Across * 0.48));
            bool door = i == bays / 2;
            return Blocks.Prism(Blocks.Square(at, frame.Tangent, M(door ? 1000 : 800), M(60)), p.Z + M(door ? 0 : 900), p.Z + M(2150));
        });
        yield return Body(openings, Iron);
    }
}
