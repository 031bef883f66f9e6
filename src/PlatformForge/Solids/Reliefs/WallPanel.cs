using PlatformForge.Geometry;

namespace PlatformForge.Solids.Reliefs;

/// <summary>
/// A stretch of a named wall face with nothing else on it, unrolled: X along the wall in mm from its left end seen from outside, Y the height
/// over the baseboard in mm.
/// </summary>
/// <param name="Face">Name of the face.</param>
/// <param name="Border">Its border counter-clockwise seen from outside, every vertex that it shares with its neighbours: foot, right end, top, left end.</param>
/// <param name="Folds">Places along it at which it bends, its two ends among them, ascending.</param>
public sealed record WallPanel(string Face, IReadOnlyList<Point2> Border, IReadOnlyList<double> Folds)
{
    /// <summary>Length along the wall, mm.</summary>
    public double Length => Folds[^1];

    /// <summary>Height of its foot and of its top at a place along it, mm.</summary>
    public (double Foot, double Top) At(double along)
    {
        double foot = double.PositiveInfinity, top = double.NegativeInfinity;
        for (int i = 0; i < Border.Count; i++)
        {
            Point2 a = Border[i], b = Border[(i + 1) % Border.Count];
            if (Math.Min(a.X, b.X) <= along && along <= Math.Max(a.X, b.X) && a.X != b.X)
            {
                double y = a.Y + ((b.Y - a.Y) * (along - a.X) / (b.X - a.X));
                (foot, top) = (Math.Min(foot, y), Math.Max(top, y));
            }
        }

        return (foot, top);
    }
}
