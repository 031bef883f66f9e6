using PlatformForge.Geometry;

namespace PlatformForge.Solids.Reliefs;

/// <summary>
/// A stretch of named wall with nothing else on it, unrolled: X along the wall in mm from its left end seen from outside, Y the height over the baseboard in
/// mm.
/// Faces that one relief takes and that meet at a corner are one panel, folded there.
/// </summary>
/// <param name="Stretches">Names of the faces that it runs over, each with where it begins and ends along the panel, in order.</param>
/// <param name="Border">Its border counter-clockwise seen from outside, every vertex that it shares with its neighbours: foot, right end, top, left
/// end.</param>
/// <param name="Folds">Places along it at which it bends, its two ends among them, ascending.</param>
/// <param name="IsRing">
/// Whether it goes all the way round, so that its left end is its right end: a field may then run over that place, to corners beyond <see cref="Length"/>.
/// </param>
public sealed record WallPanel(IReadOnlyList<(string Face, double From, double To)> Stretches, IReadOnlyList<Point2> Border, IReadOnlyList<double> Folds,
    bool IsRing)
{
    /// <summary>Places at which the wall turns towards whoever stands before it, as at the foot of a front's side; on a ring its end stands for its
    /// beginning.</summary>
    public IReadOnlyList<double> Inside { get; init; } = [];

    /// <summary>Ends in plan of its flat pieces, from left to right.</summary>
    public IReadOnlyList<(Point2 Left, Point2 Right)> Plan { get; init; } = [];

    /// <summary>Name of the face at its left end.</summary>
    public string Face => Stretches[0].Face;

    /// <summary>Length along the wall, mm.</summary>
    public double Length => Folds[^1];
}
