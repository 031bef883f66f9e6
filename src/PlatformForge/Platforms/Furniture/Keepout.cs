namespace PlatformForge.Platforms.Furniture;

/// <summary>A place that ribs and cuts stay off: a piece of furniture with what surrounds it, in plan, mm.</summary>
/// <param name="Name">What it is, for messages.</param>
/// <param name="Key">Its key in the project file.</param>
/// <param name="From">First chainage.</param>
/// <param name="To">Last chainage.</param>
/// <param name="Near">Nearest reach.</param>
/// <param name="Far">Farthest reach.</param>
/// <param name="Below">How much of this on every side is below the deck only.</param>
/// <param name="RibsPass">It ends within the deck, so that ribs may stand under it.</param>
/// <param name="Floored">It has a floor of its own below the deck: a rib that finds no other place may stand under that.</param>
/// <param name="Inset">Key of its inset in the project file, the inset in mm and what it is measured from.</param>
/// <param name="Place">Key of its chainage; null when it is set by others of its row.</param>
internal sealed record Keepout(string Name, string Key, double From, double To, double Near, double Far, double Below = 0, bool RibsPass = false, bool Floored = false, (string Key, double Mm, InsetFrom From)? Inset = null, string? Place = null)
{
    /// <summary>How far a cut keeps from it, mm.</summary>
    public double CutClear { get; init; } = CutPlanner.Clear;

    public double Middle => (From + To) / 2;

    public bool Overlaps(Keepout other) => From < other.To && other.From < To && Near < other.Far && other.Near < Far;
}
