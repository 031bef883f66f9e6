using PlatformForge.Geometry;

namespace PlatformForge.Masonry;

/// <summary>
/// A wall face laid flat: X along it in mm from its left end seen from outside, Y the height in mm. A pattern knows nothing else of what carries it.
/// </summary>
/// <param name="Runs">What lies between its ends and corners, from left to right.</param>
/// <param name="Foot">Its lower edge from left to right.</param>
/// <param name="Top">Its upper edge from left to right.</param>
/// <param name="Bends">Places at which it bends without a corner, ascending.</param>
/// <param name="IsRing">Whether it goes all the way round: its right end is its left end, at a corner.</param>
public sealed record FlatWall(IReadOnlyList<WallRun> Runs, IReadOnlyList<Point2> Foot, IReadOnlyList<Point2> Top, IReadOnlyList<double> Bends, bool IsRing)
{
    /// <summary>Its openings.</summary>
    public IReadOnlyList<WallOpening> Openings { get; init; } = [];

    /// <summary>Its length, mm.</summary>
    public double Length => Runs[^1].To;
}

/// <summary>A stretch of wall between two stops.</summary>
/// <param name="From">Its left end, mm.</param>
/// <param name="To">Its right end, mm.</param>
/// <param name="CornerBefore">Whether the wall goes round a corner at its left end; otherwise it stops there.</param>
/// <param name="CornerAfter">Whether it goes round a corner at its right end.</param>
/// <param name="IsReturn">Whether it is a return: what begins with a header on the wall beside it begins with a stretcher here.</param>
public readonly record struct WallRun(double From, double To, bool CornerBefore, bool CornerAfter, bool IsReturn)
{
    /// <summary>Whether another wall stands out from this one at its left end, as the side of a pier does: what is laid stops before that one's face.</summary>
    public bool InsideBefore { get; init; }

    /// <summary>Whether another wall stands out from this one at its right end.</summary>
    public bool InsideAfter { get; init; }

    /// <summary>How much farther from its left end than elsewhere what is laid stops, mm: what stands out by a joint's depth leans over an end askew.</summary>
    public double ShortBefore { get; init; }

    /// <summary>How much farther from its right end it stops, mm.</summary>
    public double ShortAfter { get; init; }
}

/// <summary>A region of a wall that stands out of its ground, or is sunk into it.</summary>
/// <param name="Outline">Its corners, counter-clockwise seen from outside, mm along and up.</param>
/// <param name="Out">How far it stands out, mm; sunk when negative.</param>
public readonly record struct WallRegion(Point2[] Outline, double Out)
{
    /// <summary>Name of the face behind the wall in which it comes out; null where it has a floor.</summary>
    public string? Behind { get; init; }

    /// <summary>Whether it is the lintel over an opening.</summary>
    public bool IsLintel { get; init; }

    /// <summary>Number of the opening that it is (<see cref="OpeningShape.Number"/>); nothing for what stands out.</summary>
    public int Opening { get; init; }
}
