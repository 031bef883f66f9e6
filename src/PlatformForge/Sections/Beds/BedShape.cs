using PlatformForge.Geometry;
using PlatformForge.Sections.Forms;

namespace PlatformForge.Sections.Beds;

/// <summary>
/// A printer's bed as the convex rooms a piece can lie in. A convex bed is one room, and the answer is exact. A bed with notches is cut at
/// each notch along one or the other of the notch's sides, and a piece must lie in one of the rooms that leaves: never too
/// much, at times a little less than a piece bent round a notch could use.
/// </summary>
public sealed class BedShape
{
    /// <summary>Corners that turn inward by less than this (product of two sides, mm²) are straight.</summary>
    private const double Straight = 1e-6;

    private readonly BedRoom[] rooms;

    public BedShape(PrinterSpec printer)
    {
        var ring = ConvexRing.Area(printer.Bed) < 0 ? [.. printer.Bed.Reverse()] : printer.Bed.ToArray();
        rooms = [.. ConvexParts(ring).OrderByDescending(ConvexRing.Area).Select(part => new BedRoom(part, printer.Margin))];
    }

    /// <summary>Convex rooms, largest first.</summary>
    public IReadOnlyList<BedRoom> Rooms => rooms;

    /// <summary>Most room for a piece in mm (negative: it does not fit) and the turn that gives it; stops at the first turn at which it does.</summary>
    /// <param name="hull">Convex outline of the piece, mm.</param>
    /// <param name="goal">Less room than this is of no interest; a piece that does not fit is then told apart more quickly, but not by how much.</param>
    /// <param name="enough">Room that is enough, mm.</param>
    public (double Room, double Turn) Best(IReadOnlyList<Point2> hull, double goal = double.NegativeInfinity, double enough = 0)
    {
        var best = (Room: double.NegativeInfinity, Turn: 0.0);
        foreach (var room in rooms)
        {
            var here = room.Best(hull, enough, goal);
            best = here.Room > best.Room ? here : best;
            if (best.Room >= enough)
            {
                break;
            }
        }

        return best;
    }

    /// <summary>Whether the piece lies on the bed at some turn with so much room left all round, mm.</summary>
    public bool Fits(IReadOnlyList<Point2> hull, double spare = 0) => Best(hull, spare, spare).Room >= spare;

    private static List<Point2[]> ConvexParts(Point2[] ring)
    {
        for (int i = 0; i < ring.Length; i++)
        {
            Point2 before = ring[(i + ring.Length - 1) % ring.Length], here = ring[i], after = ring[(i + 1) % ring.Length];
            if (Point2.Cross(here - before, after - here) < -Straight)
            {
                return [.. Halved(ring, before, here), .. Halved(ring, here, after)];
            }
        }

        return ring.Length < 3 ? [] : [ring];
    }

    // The clip walks the ring once; of a ring that is not convex it may keep stretches of the cutting line, which enclose nothing.
    private static List<Point2[]> Halved(Point2[] ring, Point2 a, Point2 b)
    {
        var kept = ConvexRing.LeftOf(ring, a, b);
        return kept.Length < 3 || ConvexRing.Area(kept) < 1 ? [] : ConvexParts(kept);
    }
}
