using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Solids.Bodies.Layers;

namespace PlatformForge.Solids.Bodies;

/// <summary>
/// The return of a bank as blocks, facet by facet: of a bank that prints with its section a shell as thick, measured level, as the bank's, with a web that
/// closes it in the line of the back edge; of one that is a print of its own all that lies under its face.
/// </summary>
internal static class BankReturnBlocks
{
    // Narrower than this, mm, is none.
    private const double Narrow = 1e-3;

    /// <summary>Adds those of the ends that a stretch of the platform takes in.</summary>
    public static void Add(PlanBank bank, double from, double to, List<ColumnBlock> blocks)
    {
        foreach (var turn in bank.ReturnsIn(from, to))
        {
            for (int i = 0; i + 1 < turn.Toe.Count; i++)
            {
                var (a, b) = (turn.Toe[i], turn.Toe[i + 1]);
                var face = HeightPlane.Through(At(turn.Corner, turn.Top), At(a, bank.Ground), At(b, bank.Ground));
                blocks.AddRange(bank.IsApart ? [Block([turn.Corner, a, b], Layer.Baseboard, face)] : Shell(bank, turn, (a, b), face));
            }
        }
    }

    private static IEnumerable<ColumnBlock> Shell(PlanBank bank, BankReturn turn, (Point2 A, Point2 B) toe, HeightPlane face)
    {
        double inner = 1 - (bank.Thickness / (turn.Radius * BankReturn.ChordDepth));
        if (inner * turn.Radius < Narrow)
        {
            yield return Block([turn.Corner, toe.A, toe.B], Layer.Baseboard, face);
            yield break;
        }

        Point2 a = turn.Corner + ((toe.A - turn.Corner) * inner), b = turn.Corner + ((toe.B - turn.Corner) * inner);
        yield return Block([turn.Corner, a, b], face.Raised(-bank.Depth), face);
        yield return Block([a, toe.A, toe.B, b], Layer.Baseboard, face);
        if (Web(bank, turn, [turn.Corner, a, b]) is { Length: > 2 } web)
        {
            yield return Block(web, Layer.Baseboard, face.Raised(-bank.Depth / 2));
        }
    }

    // What of a facet lies within the web's thickness of the line of the back edge.
    private static Point2[] Web(PlanBank bank, BankReturn turn, Point2[] facet)
    {
        Point2 along = turn.Toe[^1] - turn.Corner, behind = (turn.Toe[0] - turn.Corner) * (bank.Thickness / turn.Radius), from = turn.Corner + behind;
        bool isLeft = Point2.Cross(along, behind) < 0;
        var ring = ConvexRing.LeftOf(Turned(facet), isLeft ? from : from + along, isLeft ? from + along : from);
        return ring.Length > 2 && ConvexRing.Area(ring) > Narrow ? ring : [];
    }

    private static Point3 At(Point2 p, double height) => new(p.X, p.Y, height);

    private static ColumnBlock Block(Point2[] ring, HeightPlane lower, HeightPlane upper) => Layer.Added(Turned(ring), lower, upper, Paint.Turf);

    // Counter-clockwise.
    private static Point2[] Turned(Point2[] ring) => Point2.Cross(ring[1] - ring[0], ring[2] - ring[1]) > 0 ? ring : [.. ring.Reverse()];
}
