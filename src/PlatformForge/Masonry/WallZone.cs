namespace PlatformForge.Masonry;

/// <summary>A part of a wall's height that stands out from the rest: a plinth's step, a corbelled course, a course of a wall that leans.</summary>
/// <param name="Number">From 1 at the foot.</param>
/// <param name="Low">Where it begins, mm over the baseboard; minus infinity at the foot.</param>
/// <param name="High">Where it ends; infinity under the coping.</param>
/// <param name="Out">How far it stands before the wall's deepest part, mm; nothing for that part itself.</param>
public sealed record WallZone(int Number, double Low, double High, double Out)
{
    /// <summary>Whether it is at the foot or over it, below the deepest part; otherwise it is under the coping, or that part.</summary>
    public bool IsFoot { get; init; }

    /// <summary>Joints kept under its upper edge and over its lower one, mm; null where the wall's own are kept.</summary>
    public double? BedOver { get; init; }

    /// <inheritdoc cref="BedOver"/>
    public double? BedUnder { get; init; }

    /// <summary>Whether nothing of the wall lies deeper.</summary>
    public bool IsDeepest => Out == 0;
}
