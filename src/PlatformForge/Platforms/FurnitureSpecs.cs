using PlatformForge.Units;

namespace PlatformForge.Platforms;

/// <summary>From which edge of the platform an inset is measured.</summary>
public enum InsetFrom
{
    Back,
    Edge,
}

/// <summary>
/// A rectangular recess in the deck: a socket for a post, such as one of a running-in board, or, wide and shallow, the seat of a building (its fit
/// is then the bedding gap). Lengths in mm.
/// </summary>
/// <param name="Chainage">Middle of the socket.</param>
/// <param name="Inset">From the edge or the back to the middle of the socket, square to the edge.</param>
/// <param name="From">What the inset is measured from.</param>
public sealed record SocketSpec(double Chainage, double Inset, InsetFrom From = InsetFrom.Back)
{
    /// <summary>Size of the post along the edge.</summary>
    public double Along { get; init; } = 1.5;

    /// <summary>Size of the post square to the edge.</summary>
    public double Across { get; init; } = 1.5;

    /// <summary>Depth below the deck's top. Where less than two printed lines of deck would be left under it, the socket stands in a boss.</summary>
    public double Depth { get; init; } = 4;

    /// <summary>Added to both sizes of the post so that it goes in.</summary>
    public double Fit { get; init; } = 0.2;

    /// <summary>What stands in it, for reports.</summary>
    public string Name { get; init; } = "running-in board";
}

/// <summary>A round upright hole of its own: for a lamp, a canopy's post, a fixing screw. Lengths in mm.</summary>
/// <param name="Chainage">Middle of the hole.</param>
/// <param name="Inset">From the edge or the back to the middle of the hole, square to the edge.</param>
/// <param name="From">What the inset is measured from.</param>
public sealed record HoleSpec(double Chainage, double Inset, InsetFrom From = InsetFrom.Back)
{
    /// <summary>Diameter of what goes in. Default 1, a lamp's rod in 4 mm scale (common practice).</summary>
    public double Diameter { get; init; } = 1;

    /// <summary>Added to the diameter.</summary>
    public double Fit { get; init; } = 0.2;

    /// <summary>Depth below the deck's top; null goes right through the deck, so that wires can be led below it. Deeper than the deck
    /// leaves room for, the hole stands in a boss.</summary>
    public double? Depth { get; init; }

    /// <summary>What stands in it, for reports.</summary>
    public string Name { get; init; } = "lamp";
}

/// <summary>
/// A gate or steps: no fence between two posts. On a straight track these stand at the two chainages; on a curve, where the fence is longer or shorter
/// than the track, they stand about the middle of both so that the gap is as wide at the fence as the chainages are apart. All mm.
/// </summary>
/// <param name="From">Where the gap begins: a post stands here.</param>
/// <param name="To">Where it ends: a post stands here too.</param>
public sealed record FenceGapSpec(double From, double To)
{
    /// <summary>Width from post to post, straight across, at the fence itself.</summary>
    public double Width => To - From;

    /// <summary>Chainage midway between its posts.</summary>
    public double Middle => (From + To) / 2;
}

/// <summary>How a fence is divided into panels.</summary>
public enum FencePanels
{
    /// <summary>Every run is divided evenly, the panels near the pitch: for fences that are made.</summary>
    Even,

    /// <summary>Panels of exactly the pitch, and one odd one a run: for fences that are bought.</summary>
    Whole,
}

/// <summary>Where the odd panel of a run of whole ones stands.</summary>
public enum OddPanel
{
    /// <summary>At the fence's end; in a run between two gates, before the second.</summary>
    Ends,

    /// <summary>Beside the gate; in a fence without gates, at its last end.</summary>
    Gates,
}

/// <summary>A row of post holes along the back. Lengths in mm.</summary>
public sealed record FenceSpec
{
    /// <summary>From the platform's back to the middles of the posts. Default 2.5.</summary>
    public double Inset { get; init; } = 2.5;

    /// <summary>Distance between posts: aimed at where panels are even, exact where they are whole. Default 32 (8 ft).</summary>
    public double Pitch { get; init; } = 32;

    /// <summary>How it is divided.</summary>
    public FencePanels Panels { get; init; } = FencePanels.Even;

    /// <summary>Where the odd panel stands; of no effect where panels are even.</summary>
    public OddPanel Odd { get; init; } = OddPanel.Ends;

    public double PinDiameter { get; init; } = 1;

    /// <summary>Added to the pin's diameter.</summary>
    public double Fit { get; init; } = 0.2;

    /// <summary>Depth below the deck's top; null goes right through the deck. Deeper than the deck leaves room for, the hole stands in a boss.</summary>
    public double? Depth { get; init; }

    /// <summary>First chainage; null is <see cref="EndInset"/> from the platform's start.</summary>
    public double? From { get; init; }

    /// <summary>Last chainage; null is <see cref="EndInset"/> from the platform's end.</summary>
    public double? To { get; init; }

    /// <summary>From the platform's ends to the first and last post when not stated otherwise. Default 4.</summary>
    public double EndInset { get; init; } = 4;

    /// <summary>Places for gates and steps, in order of chainage.</summary>
    public IReadOnlyList<FenceGapSpec> Gaps { get; init; } = [];

    /// <summary>The defaults for a scale: panels of 8 ft.</summary>
    public static FenceSpec For(ModelScale scale) => new() { Pitch = scale.ToModel(8 * FullSize.Foot) };
}

/// <summary>The white line along the edge; it stops at the ramp tops. Lengths in mm.</summary>
public sealed record WhiteLineSpec
{
    /// <summary>From the coping's front edge to the line's near side. Default 0.8.</summary>
    public double Inset { get; init; } = 0.8;

    /// <summary>Default 1.</summary>
    public double Width { get; init; } = 1;

    /// <summary>Depth of a shallow groove to paint in; 0 makes none and leaves colour only.</summary>
    public double GrooveDepth { get; init; }

    /// <summary>The defaults for a scale: 3 in wide.</summary>
    public static WhiteLineSpec For(ModelScale scale) => new() { Width = scale.ToModel(76.2) };
}
