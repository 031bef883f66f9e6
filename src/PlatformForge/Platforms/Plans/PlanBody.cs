using PlatformForge.Platforms.Specs;

namespace PlatformForge.Platforms.Plans;

/// <summary>What a wall or stiffener under the deck is.</summary>
public enum RibKind
{
    /// <summary>Across the platform, from front wall to back wall.</summary>
    Transverse,

    /// <summary>Along the platform.</summary>
    Longitudinal,

    /// <summary>Closes an end of the platform; always reaches down to the baseboard.</summary>
    EndWall,
}

/// <summary>
/// A rib as a strip in plan coordinates: between two chainages, between two lines. It reaches up into the deck.
/// </summary>
/// <param name="Kind">What it is.</param>
/// <param name="From">First chainage, mm.</param>
/// <param name="To">Last chainage, mm.</param>
/// <param name="Near">Side towards the track; for ribs across, the inner face of the front wall.</param>
/// <param name="Far">Side away from the track; for ribs across, the inner face of the back wall.</param>
/// <param name="Depth">Depth below the deck's underside, mm; null down to the baseboard.</param>
public sealed record PlanRib(RibKind Kind, double From, double To, PlanLine Near, PlanLine Far, double? Depth);

/// <summary>
/// How far apart the ribs across are: true distances in the layout between middles of neighbours, or from one to the end or the cut beyond it, at the
/// front wall or the back, wherever they are greater. All mm.
/// </summary>
/// <param name="Asked">Greatest distance asked for; 0 for no ribs.</param>
/// <param name="Count">Ribs across, end walls not counted.</param>
/// <param name="Least">Least distance found.</param>
/// <param name="Greatest">Greatest distance found.</param>
/// <param name="From">Chainage at which the greatest begins.</param>
/// <param name="To">Chainage at which it ends.</param>
public sealed record RibPitch(double Asked, int Count, double Least, double Greatest, double From, double To)
{
    /// <summary>The same with a further distance.</summary>
    internal RibPitch With(double from, double to, double distance)
    {
        var wider = distance > Greatest ? this with { Greatest = distance, From = from, To = to } : this;
        return wider with { Least = Least == 0 ? distance : Math.Min(Least, distance) };
    }
}

/// <summary>A line or a strip along an edge between two chainages, between two lines in plan, all mm.</summary>
/// <param name="From">First chainage.</param>
/// <param name="To">Last chainage.</param>
/// <param name="Near">Its side towards the first face's track.</param>
/// <param name="Far">Its other side.</param>
/// <param name="Made">How it is made.</param>
public sealed record LineBand(double From, double To, PlanLine Near, PlanLine Far, LineMake Made)
{
    /// <summary>Depth of what is cut into the deck for it, mm; 0 for paint alone.</summary>
    public double GrooveDepth => Made.Depth;

    /// <summary>How far it rises over the deck where that is a height over the baseboard, mm.</summary>
    public double RiseOver(double deck) => Made.Wall?.LevelTop is { } top ? top - deck : Made.Rise;
}

/// <summary>How much a place is wanted for a cut.</summary>
public enum CutRank
{
    /// <summary>A coping joint that is clear of everything.</summary>
    Joint,

    /// <summary>The top of a ramp: a piece that ends here lies flat on one face.</summary>
    RampHead,

    /// <summary>The user says that a cut is here.</summary>
    Forced,

    /// <summary>A joint in the baseboard: a cut that no dowel crosses.</summary>
    Baseboard,
}

/// <summary>A chainage in mm at which the platform may (or must) be cut.</summary>
public sealed record CutCandidate(double Chainage, CutRank Rank)
{
    /// <summary>Whether the platform has to be cut here.</summary>
    public bool IsStated => Rank >= CutRank.Forced;
}
