using PlatformForge.Geometry;

namespace PlatformForge.Platforms.Plans;

/// <summary>A surface that heights of features are told from.</summary>
public enum Datum
{
    /// <summary>The walking surface.</summary>
    DeckTop,

    /// <summary>The deck's lower side.</summary>
    DeckUnderside,

    /// <summary>What the platform stands on.</summary>
    Baseboard,
}

/// <summary>An end of a prism.</summary>
/// <param name="From">What it is told from.</param>
/// <param name="Offset">Above it, mm; negative below.</param>
/// <param name="IsLevel">Level, at the height told in the prism's middle; otherwise parallel to what it is told from.</param>
/// <param name="Tilt">Rise over what it is told from, per mm in the layout from the prism's middle: nothing for an end parallel to it.</param>
public readonly record struct PrismEnd(Datum From, double Offset = 0, bool IsLevel = false, Point2 Tilt = default)
{
    // Height in mm that is above everything let into a deck.
    private const double Above = 5;

    /// <summary>Open at the top: well above the walking surface.</summary>
    public static PrismEnd Open => new(Datum.DeckTop, Above);
}

/// <summary>Whether a prism's material is put in place or taken out.</summary>
public enum PrismAct
{
    Add,
    Remove,
}

/// <summary>A chamfered mouth: it takes up the squashed first layer of a deck that is printed face down.</summary>
/// <param name="Size">Along both faces, mm.</param>
/// <param name="Ring">The prism's ring with every side moved outwards by that, corner for corner.</param>
public sealed record PrismMouth(double Size, Point2[] Ring);

/// <summary>When a prism is built. What is taken out is always taken out of everything that was put in place.</summary>
public enum PrismOrder
{
    /// <summary>Before the deck, which runs over it: bosses and what else hangs below.</summary>
    UnderDeck,

    /// <summary>After the deck: what stands on it.</summary>
    OnDeck,
}

/// <summary>What the surfaces show that a prism leaves behind.</summary>
public enum PrismFace
{
    Deck,
    Wall,
}

/// <summary>
/// An upright prism that a feature adds to the body of a platform or takes out of it. One that is not level follows the walking surface from plane to
/// plane; one that is added ends at the section's ends and at the baseboard.
/// </summary>
/// <param name="Middle">Where the heights of level ends are told, and the plane of a chamfer.</param>
/// <param name="Along">How far along the track it may reach to either side of the middle, mm of chainage, generously.</param>
/// <param name="Ring">Convex ring in the layout frame, counter-clockwise, mm.</param>
/// <param name="Lower">Its lower end.</param>
/// <param name="Upper">Its upper end; a prism whose upper end lies below the lower is nothing.</param>
/// <param name="Act">Add or remove.</param>
/// <param name="Shows">What its surfaces show.</param>
public sealed record Prism(PlanPlace Middle, double Along, Point2[] Ring, PrismEnd Lower, PrismEnd Upper, PrismAct Act, PrismFace Shows)
{
    /// <summary>Its mouth in the walking surface, chamfered; null where it has none.</summary>
    public PrismMouth? Mouth { get; init; }

    /// <summary>Whether it is no more than engraved in the walking surface, which still lies on the bed round it.</summary>
    public bool IsEngraved { get; init; }

    /// <summary>When it is built.</summary>
    public PrismOrder Order { get; init; } = PrismOrder.UnderDeck;
}
