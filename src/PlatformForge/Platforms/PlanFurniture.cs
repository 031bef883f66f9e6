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
/// <param name="BossWall">Thickness of material round it below the deck, and under its floor, mm; 0 when the deck alone is deep enough or it goes right through.</param>
public sealed record PlanHole(string Name, double Chainage, double Reach, double Diameter, double? Depth, double BossWall = 0);

/// <summary>What stands between two posts of a fence.</summary>
public enum FenceBayKind
{
    /// <summary>One panel of several alike.</summary>
    Panel,

    /// <summary>A panel of another length than the whole ones, to be cut to it.</summary>
    Odd,

    /// <summary>A gate or steps.</summary>
    Gate,
}

/// <summary>From one post to the next.</summary>
/// <param name="Kind">What stands there.</param>
/// <param name="Length">Straight from middle to middle of the two posts, mm: what a panel measures.</param>
/// <param name="Asked">The length asked for: pitch, or a gate's width, mm; null for an odd panel.</param>
public sealed record FenceBay(FenceBayKind Kind, double Length, double? Asked);

/// <summary>A fence as planned.</summary>
/// <param name="Posts">Holes of its posts by increasing chainage.</param>
/// <param name="Bays">What stands between each and the next: one fewer than posts.</param>
public sealed record PlanFence(IReadOnlyList<PlanHole> Posts, IReadOnlyList<FenceBay> Bays)
{
    // Lengths that are told alike, to a hundredth of a millimetre, are one kind of panel.
    private const int ToldDigits = 2;

    /// <summary>Least and greatest distance between posts other than at gates, mm; nil where there is none.</summary>
    public (double Least, double Greatest) Found => Panels is { Count: > 0 } all ? (all.Min(b => b.Length), all.Max(b => b.Length)) : (0, 0);

    /// <summary>Panels and gates of one kind and length, in order of kind and falling length, with how many there are.</summary>
    public IReadOnlyList<(FenceBayKind Kind, double Length, int Count)> Parts =>
        [.. Bays.GroupBy(b => (b.Kind, Length: Math.Round(b.Length, ToldDigits))).OrderBy(g => g.Key.Kind).ThenByDescending(g => g.Key.Length).Select(g => (g.Key.Kind, g.Key.Length, g.Count()))];

    private List<FenceBay> Panels => [.. Bays.Where(b => b.Kind != FenceBayKind.Gate)];
}

/// <summary>The white line between two chainages, between two lines in plan, all mm.</summary>
public sealed record WhiteLineBand(double From, double To, PlanLine Near, PlanLine Far, double GrooveDepth);

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
