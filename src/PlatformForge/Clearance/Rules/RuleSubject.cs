using PlatformForge.Units;

namespace PlatformForge.Clearance.Rules;

/// <summary>
/// What a published rule looks at: a platform in model mm.
/// </summary>
/// <param name="Scale">Scale of the layout.</param>
/// <param name="Gauge">Distance between the running edges, mm.</param>
/// <param name="Height">Deck at the coping above rail top, mm.</param>
/// <param name="Edge">The coping's edge, place by place.</param>
public sealed record RuleSubject(ModelScale Scale, double Gauge, double Height, IReadOnlyList<EdgePlace> Edge)
{
    /// <summary>Least width of the deck away from its ramps, mm; null when it is not known.</summary>
    public double? Width { get; init; }

    /// <summary>Whether trains stand on both sides.</summary>
    public bool IsIsland { get; init; }

    /// <summary>Ramp gradient, rise over run; null without ramps.</summary>
    public double? RampGradient { get; init; }

    /// <summary>Crossfall, rise over run, whatever its direction; 0 when level.</summary>
    public double Crossfall { get; init; }

    /// <summary>How far the coping projects over the wall, mm; null when it is not known.</summary>
    public double? Overhang { get; init; }

    /// <summary>What stands on the platform.</summary>
    public IReadOnlyList<StandingThing> Standing { get; init; } = [];

    /// <summary>Key of the platform in the project file.</summary>
    public string Key { get; init; } = "platform";
}

/// <summary>
/// A board, fence, lamp or building on a platform.
/// </summary>
/// <param name="Name">What it is.</param>
/// <param name="Place">The edge beside it.</param>
/// <param name="FromEdge">From the coping's edge to its near side, mm.</param>
public readonly record struct StandingThing(string Name, EdgePlace Place, double FromEdge)
{
    /// <summary>From the track's centreline to its near side, mm.</summary>
    public double FromCentre => Place.Distance + FromEdge;
}

/// <summary>
/// One place of a platform's edge.
/// </summary>
/// <param name="Chainage">Chainage along the faced track, mm.</param>
/// <param name="Distance">From the track's centreline to the edge, mm.</param>
/// <param name="Curvature">Curvature of the track, 1/mm, positive where the platform lies on the inside of the curve.</param>
public readonly record struct EdgePlace(double Chainage, double Distance, double Curvature)
{
    /// <summary>Radius in mm, infinite on the straight.</summary>
    public double Radius => 1 / Math.Abs(Curvature);
}
