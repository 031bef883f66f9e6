using PlatformForge.Units;

namespace PlatformForge.Platforms;

/// <summary>The walking surface. Lengths in mm of the model; the defaults are for 4 mm scale.</summary>
public sealed record DeckSpec
{
    /// <summary>Thickness of the slab under the walking surface. Default 1.5: a printed plate that does not sag between ribs (common practice).</summary>
    public double Thickness { get; init; } = 1.5;

    /// <summary>From the coping's front edge to the platform's back, square to the edge. Default 48 (12 ft).</summary>
    public double Width { get; init; } = 48;

    /// <summary>Fall away from the track as n of 1 in n, from the coping's front edge to the back; 0 is level.</summary>
    public double Crossfall { get; init; }

    /// <summary>Chamfer at the mouths of holes and sockets, measured along both faces. Default 0.3: takes up the squashed first layer of a print laid deck down.</summary>
    public double MouthChamfer { get; init; } = 0.3;

    /// <summary>The defaults for a scale: 12 ft wide; the thickness is the printer's and does not scale.</summary>
    public static DeckSpec For(ModelScale scale) => new() { Width = scale.ToModel(12 * FullSize.Foot) };
}

/// <summary>The edge course. Lengths in mm of the model; the defaults are for 4 mm scale.</summary>
public sealed record CopingSpec
{
    /// <summary>Depth from front edge to back. Default 7.9 (600 mm, a published flag size).</summary>
    public double Width { get; init; } = 600 / 76.2;

    /// <summary>Thickness. Default 1.2, six layers of 0.2 mm.</summary>
    public double Thickness { get; init; } = 1.2;

    /// <summary>How far the coping projects over the wall below. Default 1 (card and pencil practice in 4 mm scale).</summary>
    public double Overhang { get; init; } = 1;

    /// <summary>Length of a slab aimed at; joints are spaced evenly near it. 0 makes no joints. Default 11.8 (900 mm, a published flag size).</summary>
    public double SlabLength { get; init; } = 900 / 76.2;

    /// <summary>Width of the groove at a joint. Default 0.4, one printed line.</summary>
    public double JointWidth { get; init; } = 0.4;

    /// <summary>Depth of the groove at a joint. Default 0.3; 0 leaves the joints to paint, and they still serve as cut stations.</summary>
    public double JointDepth { get; init; } = 0.3;

    /// <summary>Chamfer on the front upper arris, measured along both faces. Default 0.3: takes up the squashed first layer of a print laid deck down.</summary>
    public double ArrisChamfer { get; init; } = 0.3;

    /// <summary>The defaults for a scale: slab sizes and overhang (1 mm at 4 mm scale) scale; what a printer needs does not.</summary>
    public static CopingSpec For(ModelScale scale) => new()
    {
        Width = scale.ToModel(600),
        SlabLength = scale.ToModel(900),
        Overhang = scale.ToModel(76.2),
    };
}

/// <summary>Walls from baseboard to deck. Thicknesses in mm; default 1.6, four printed lines.</summary>
public sealed record WallSpec
{
    public double FrontThickness { get; init; } = 1.6;

    public double BackThickness { get; init; } = 1.6;

    /// <summary>Thickness of the walls that close both ends of the platform.</summary>
    public double EndThickness { get; init; } = 1.6;
}

/// <summary>Stiffeners under the deck. Lengths in mm.</summary>
public sealed record RibSpec
{
    /// <summary>Greatest distance between the middles of transverse ribs; 0 makes none. Default 30.</summary>
    public double Pitch { get; init; } = 30;

    /// <summary>Least thickness of a transverse rib. Default 1.2.</summary>
    public double Thickness { get; init; } = 1.2;

    /// <summary>How many ribs run along the platform. Default 1.</summary>
    public int LongitudinalCount { get; init; } = 1;

    public double LongitudinalThickness { get; init; } = 1.2;

    /// <summary>Depth below the deck's underside; null reaches down to the baseboard.</summary>
    public double? Depth { get; init; }
}

/// <summary>Full-size lengths in mm used by the defaults.</summary>
public static class FullSize
{
    /// <summary>One foot, exactly.</summary>
    public const double Foot = 304.8;
}
