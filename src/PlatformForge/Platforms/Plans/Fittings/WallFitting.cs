using PlatformForge.Geometry;

namespace PlatformForge.Platforms.Plans.Fittings;

/// <summary>One thing in or before a wall, in the spine's chainage, mm.</summary>
/// <param name="Number">From 1: along its wall; of what is open, in the order of all that is, which faces and regions of walls are told by.</param>
/// <param name="IsFar">Whether it belongs to the far wall.</param>
/// <param name="Middle">Chainage of its middle.</param>
/// <param name="From">Chainage at which what belongs to it begins.</param>
/// <param name="To">Chainage at which it ends.</param>
/// <param name="Width">How wide it is, as it is told.</param>
public sealed record WallFitting(int Number, bool IsFar, double Middle, double From, double To, double Width)
{
    /// <summary>The cut that lies beside it; null for none.</summary>
    public double? Cut { get; init; }

    /// <summary>What a plan shows of it.</summary>
    public required FittingFootprint Footprint { get; init; }

    /// <summary>How far what stands out most of it stands before the ground of the wall's facing, mm.</summary>
    public double Projection { get; init; }

    /// <summary>What stands before the wall and is not the wall itself, in the order in which it is drawn.</summary>
    public IReadOnlyList<FittingPart> Parts { get; init; } = [];

    /// <summary>Half the width, mm, over which what is laid on the wall is parted by what reaches into it; 0 where nothing is.</summary>
    public double PartedHalf { get; init; }

    /// <summary>How far behind the face that is held against vehicles its foot lies, mm; null where its foot is the wall's.</summary>
    public double? FootBack { get; init; }

    /// <summary>What is open; null for what is not.</summary>
    public FittingHole? Hole { get; init; }
}

/// <summary>An oblong along a wall in plan.</summary>
/// <param name="From">Chainage at which it begins, mm.</param>
/// <param name="To">Chainage at which it ends.</param>
/// <param name="Before">How far it stands before the panels of the wall, mm.</param>
/// <param name="Behind">How far it goes in behind them, mm; null to the wall's inner face.</param>
public readonly record struct FittingFootprint(double From, double To, double Before, double? Behind);

/// <summary>An upright part that stands before a wall: heights over the baseboard, mm.</summary>
/// <param name="Outline">From one side round its front to the other: X along the wall from the fitting's middle, Y the depth behind what stands out
/// most.</param>
/// <param name="HalfWidth">Half its width as it is seen from before the wall.</param>
/// <param name="Low">Height of its lower side.</param>
/// <param name="High">Height of its upper side.</param>
public sealed record FittingPart(Point2[] Outline, double HalfWidth, double Low, double High)
{
    /// <summary>Whether it reaches into the wall, from the ground to the coping and at whatever depth each part of the wall's height lies.</summary>
    public bool ReachesIn { get; init; }

    /// <summary>Whether it ends under the coping, however that falls.</summary>
    public bool ToCoping { get; init; }
}

/// <summary>Figures of what is open in a wall, mm.</summary>
/// <param name="Sill">Height of its lower edge over the baseboard.</param>
/// <param name="Height">From there to its crown.</param>
/// <param name="Rise">From springing to crown; nought under a flat head.</param>
/// <param name="Depth">How far its floor lies behind what is laid beside it; null where it goes right through.</param>
/// <param name="Ring">Height of the voussoirs of its arch; nought for none.</param>
/// <param name="Voussoir">Least width of a voussoir.</param>
/// <param name="Pad">Of the pad behind what goes right through: half its length, and how far it stands out of the wall's inner face.</param>
public sealed record FittingHole(double Sill, double Height, double Rise, double? Depth, double Ring, double Voussoir, (double Half, double Depth) Pad)
{
    /// <summary>Whether it goes right through the wall into the hollow behind.</summary>
    public bool IsThrough => Depth is null;

    /// <summary>How far the lintel over a level head lies on the wall on either side; nothing where there is none.</summary>
    public double Bearing { get; init; }

    /// <summary>The least width and height that a printer keeps open.</summary>
    public double Least { get; init; }
}
