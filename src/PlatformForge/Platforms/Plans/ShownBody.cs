using PlatformForge.Geometry;

namespace PlatformForge.Platforms.Plans;

/// <summary>What something is made of in pictures.</summary>
public enum Finish
{
    Timber,
    Iron,
    Cream,
    Slate,
    Stone,
}

/// <summary>A body in a picture or an elevation: plain shapes of one finish. Nothing is ever made from it.</summary>
public sealed record ShownBody(Finish Finish, IReadOnlyList<ShownShape> Shapes)
{
    /// <summary>What drawings call it; null is its feature's name.</summary>
    public string? Name { get; init; }
}

/// <summary>Where a shape stands: on the deck at a place, or part of the way from there to another on the straight line between the two.</summary>
/// <param name="At">The place.</param>
/// <param name="Towards">The other place.</param>
/// <param name="Share">How much of the way; may be less than nothing and more than all.</param>
public readonly record struct ShownFoot(PlanPlace At, PlanPlace Towards, double Share)
{
    public static implicit operator ShownFoot(PlanPlace at) => new(at, at, 0);
}

/// <summary>A plain shape. Heights are over the deck at its foot, mm of the model.</summary>
public abstract record ShownShape;

/// <summary>A body between two convex rings of as many corners in the layout frame, one over the other.</summary>
public sealed record ShownLoft(ShownFoot Foot, Point2[] Bottom, double Low, Point2[] Top, double High) : ShownShape;

/// <summary>A beam from foot to foot along its underside's middle.</summary>
/// <param name="From">One end.</param>
/// <param name="To">The other.</param>
/// <param name="Up">Height of its underside over both.</param>
/// <param name="Wide">Its width, mm.</param>
/// <param name="Tall">Its height, mm.</param>
public sealed record ShownBeam(ShownFoot From, ShownFoot To, double Up, double Wide, double Tall) : ShownShape;
