using PlatformForge.Geometry;
using PlatformForge.Units;

namespace PlatformForge.Solids.Kernel.Meshing.Polygons;

/// <summary>A corner of a panel's border: its level, and its place unrolled (along the panel, height), mm.</summary>
internal readonly record struct ReliefCorner(int Level, Point2 Place);

/// <summary>A flat piece of a panel between two folds.</summary>
/// <param name="Left">Its left end in plan, seen from outside.</param>
/// <param name="Right">Its right end in plan.</param>
/// <param name="Start">Where it begins along the panel, mm.</param>
/// <param name="Paint">What it shows.</param>
/// <param name="Corners">Its border, counter-clockwise from outside.</param>
internal sealed record ReliefPiece(Point2 Left, Point2 Right, double Start, byte Paint, ReliefCorner[] Corners)
{
    public double End { get; } = Start + (Right - Left).Length;

    public Point2 Ahead { get; } = (Right - Left) * (1 / (Right - Left).Length);

    /// <summary>Unit direction out of the wall: to the right of the way from left to right.</summary>
    public Point2 Outward { get; } = ((Right - Left) * (1 / (Right - Left).Length)).Left * -1;

    /// <summary>Corners along the foot, from left to right.</summary>
    public IEnumerable<ReliefCorner> Foot
    {
        get
        {
            int first = FootStart;
            for (int i = 0; i < Corners.Length; i++)
            {
                var corner = Corners[(first + i) % Corners.Length];
                yield return corner;
                if (Steps(corner.Place.X - Start) == Steps(End - Start))
                {
                    yield break;
                }
            }
        }
    }

    /// <summary>All other corners, from the right end's foot on.</summary>
    public IEnumerable<ReliefCorner> AboveFoot
    {
        get
        {
            int from = FootStart + Foot.Count();
            for (int i = from; i < FootStart + Corners.Length; i++)
            {
                yield return Corners[i % Corners.Length];
            }
        }
    }

    private int FootStart => Enumerable.Range(0, Corners.Length).OrderBy(i => Along(i)).ThenBy(i => Up(i)).First();

    /// <summary>Grid steps of a length, for the exact predicates of the sweep.</summary>
    public static int Steps(double length) => (int)Math.Round(length / Tolerances.GridStep);

    public int Along(int corner) => Steps(Corners[corner].Place.X - Start);

    public int Up(int corner) => Steps(Corners[corner].Place.Y);
}
