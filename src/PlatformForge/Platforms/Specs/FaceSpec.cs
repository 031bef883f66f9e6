using PlatformForge.Track;
using PlatformForge.Units;

namespace PlatformForge.Platforms.Specs;

/// <summary>How the coping edge follows what the vehicles need.</summary>
public enum EdgeStyle
{
    /// <summary>Exactly what is needed at every chainage.</summary>
    Fitted,

    /// <summary>The closest edge that bends no tighter than a least radius and changes its reach no faster than a taper.</summary>
    Faired,

    /// <summary>One reach from end to end.</summary>
    Uniform,
}

/// <summary>Where a platform faces a track.</summary>
/// <param name="Track">Name of the track.</param>
/// <param name="Side">Side of the track on which the platform stands.</param>
/// <param name="From">First chainage, mm.</param>
/// <param name="To">Last chainage, mm, above <paramref name="From"/>.</param>
/// <param name="Edge">Style of the edge.</param>
public sealed record FaceSpec(string Track, Side Side, double From, double To, EdgeStyle Edge = EdgeStyle.Fitted)
{
    /// <summary>Default least radius of a faired edge at full size, mm: 150 ft, 600 mm in 4 mm scale. Common practice, no source: about what model track is
    /// laid to, so that an edge along an even curve may follow it and what is sudden is eased.</summary>
    public const double FullSizeLeastRadius = 150 * FullSize.Foot;

    /// <summary>Least radius in mm to which a faired edge bends in plan; null takes <see cref="FullSizeLeastRadius"/> in the layout's scale. Where the track
    /// itself is
    /// tighter, the edge bends no tighter than the track does there.</summary>
    public double? LeastRadius { get; init; }

    /// <summary>Greatest change of reach of a faired edge, as n of 1 in n. Default 40, the flattest published rule for a
    /// platform's taper (Bane NOR, TRV:03993).</summary>
    public double Taper { get; init; } = 40;

    /// <summary>Reach of a uniform edge in mm from the track's middle, where it is stated; null takes the least that works. One that vehicles
    /// or the budget need more than is refused.</summary>
    public double? Reach { get; init; }

    /// <summary>Whether the sides of bodies may pass over the coping. False holds coping and deck to every part at all heights.</summary>
    public bool BodiesPassOver { get; init; }

    /// <summary>Key of this face in its platform's table of the project file, for findings.</summary>
    public string Key { get; init; } = FirstKey;

    /// <summary>The keys of a platform's faces.</summary>
    public const string FirstKey = "face", OtherKey = "other_face";

    /// <summary>Air in mm wanted between this edge and the vehicle that comes nearest, where it is another than the layout's; null takes the
    /// layout's.</summary>
    public double? Running { get; init; }

    /// <summary>The white line along this edge, where it is another than the platform's; null takes the platform's.</summary>
    public WhiteLineSpec? WhiteLine { get; init; }

    /// <summary>On an island's second face, the ramp at its lower chainage where it is told apart from the first face's: its length, or the height of its
    /// foot.</summary>
    public RampSpec? StartRamp { get; init; }

    /// <summary>The same at its higher chainage.</summary>
    public RampSpec? EndRamp { get; init; }

    /// <summary>Vertical gap in mm left over what stays under the coping, and under what passes over it. Default 1.</summary>
    public double VerticalGap { get; init; } = 1;

    // Sums of stated heights differ by less than this, mm, where they are meant to be equal.
    private const double Grain = Tolerances.Rounding;

    /// <summary>
    /// Height in mm, from the same zero as the coping's, below which the underside of a part has to be for the coping to be held to the part. One that is
    /// the vertical gap above the coping, no more, passes over. Infinity where nothing passes over.
    /// </summary>
    /// <param name="coping">Height of the coping there, mm.</param>
    public double HeldBelow(double coping) => BodiesPassOver ? coping + VerticalGap - Grain : double.PositiveInfinity;
}

/// <summary>A sloping end of a platform. Exactly one of length and gradient is set.</summary>
/// <param name="Length">Length along the track, mm.</param>
/// <param name="Gradient">n of 1 in n.</param>
/// <param name="FootHeight">Height of the ramp's foot above rail top, mm, negative below it; null is rail top, or as low as the deck goes over the
/// baseboard.</param>
public sealed record RampSpec(double? Length = null, double? Gradient = null, double? FootHeight = null);
