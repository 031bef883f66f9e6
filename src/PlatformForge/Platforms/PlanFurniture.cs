namespace PlatformForge.Platforms;

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
/// A rectangular socket open at the top. It is a true rectangle in the layout, its sides along and square to the track's
/// direction at its middle.
/// </summary>
/// <param name="Name">What stands in it.</param>
/// <param name="Chainage">Middle, mm.</param>
/// <param name="Reach">Middle, mm from the centreline.</param>
/// <param name="Along">Size of the opening along the track, fit allowance included, mm.</param>
/// <param name="Across">Size of the opening square to the track, mm.</param>
/// <param name="Depth">Below the top at the middle, mm.</param>
/// <param name="BossWall">Thickness of material round the socket below the deck, and under its floor, mm; 0 when the deck alone is deep enough.</param>
public sealed record PlanSocket(string Name, double Chainage, double Reach, double Along, double Across, double Depth, double BossWall);

/// <summary>A round upright hole.</summary>
/// <param name="Name">What stands in it.</param>
/// <param name="Chainage">Middle, mm.</param>
/// <param name="Reach">Middle, mm from the centreline.</param>
/// <param name="Diameter">Fit allowance included, mm.</param>
/// <param name="Depth">Below the top at the middle, mm; null right through the deck.</param>
public sealed record PlanHole(string Name, double Chainage, double Reach, double Diameter, double? Depth);

/// <summary>The white line between two chainages, between two lines in plan, all mm.</summary>
public sealed record WhiteLineBand(double From, double To, PlanLine Near, PlanLine Far, double GrooveDepth);

/// <summary>How much a place is wanted for a cut.</summary>
public enum CutRank
{
    /// <summary>A coping joint that is clear of everything.</summary>
    Joint,

    /// <summary>The top of a ramp: a piece that ends here lies flat on one face.</summary>
    RampHead,

    /// <summary>The user says that a cut is here, such as a baseboard joint.</summary>
    Forced,
}

/// <summary>A chainage in mm at which the platform may (or must) be cut.</summary>
public sealed record CutCandidate(double Chainage, CutRank Rank);
