namespace PlatformForge.Platforms.Plans.Fittings;

/// <summary>
/// What one kind of thing in or before a platform's walls comes to, with all its places: figures and words only. Rooms after this one know nothing else of
/// it: solids are made from <see cref="WallFitting.Parts"/>, from what <see cref="StepsOut"/> and from <see cref="WallFitting.Hole"/>, drawings show
/// <see cref="WallFitting.Footprint"/> in plan and parts, fronts and holes in elevations, reports say <see cref="Words"/>, tables list places and
/// <see cref="Painting"/>.
/// </summary>
/// <param name="Name">What one is, in a word; also the begin of the names of its faces.</param>
/// <param name="Plural">What several are.</param>
/// <param name="Key">Its key in the project file, in the words of the rooms.</param>
public sealed record FittingRow(string Name, string Plural, string Key)
{
    /// <summary>Where they came to stand, the near wall's first; none where no place was found.</summary>
    public IReadOnlyList<WallFitting> Places { get; init; } = [];

    /// <summary>Whether they stand before the wall, which is set back for them.</summary>
    public bool IsBefore { get; init; }

    /// <summary>Whether they are of the wall itself, which steps out to their fronts and turns what is laid round them.</summary>
    public bool StepsOut { get; init; }

    /// <summary>The slope that their fronts end in under the wall's upper edge; null where they go up to that.</summary>
    public FittingHead? Head { get; init; }

    /// <summary>Whether drawings leave out where they are, where all places are too many.</summary>
    public bool IsMinor { get; init; }

    /// <summary>What their parts look like.</summary>
    public FittingFace Face { get; init; } = FittingFace.Wall;

    /// <summary>How their parts are painted; null for as the wall is.</summary>
    public FittingPainting? Painting { get; init; }

    /// <summary>What a report says of them; null where holes alone are told, as they are laid.</summary>
    public FittingWords? Words { get; init; }

    /// <summary>What several are, at the begin of a line.</summary>
    public string Title => char.ToUpperInvariant(Plural[0]) + Plural[1..];
}

/// <summary>A slope that fronts end in.</summary>
/// <param name="Rise">From a front's upper edge to where the slope meets the wall, mm.</param>
/// <param name="Degrees">From level.</param>
public readonly record struct FittingHead(double Rise, double Degrees);

/// <summary>What parts of fittings are made to look like.</summary>
public enum FittingFace
{
    /// <summary>The wall.</summary>
    Wall,

    /// <summary>Cast iron.</summary>
    Iron,
}

/// <summary>How parts are painted.</summary>
/// <param name="Coats">How many coats.</param>
/// <param name="Mix">Parts of volume of each colour.</param>
/// <param name="Why">Why so.</param>
public sealed record FittingPainting(int Coats, IReadOnlyList<(int Parts, string Colour)> Mix, string Why);

/// <summary>What a report says of fittings, in whole sentences.</summary>
/// <param name="Made">What they are and how they are made.</param>
/// <param name="NoneMade">What is said where none found a place; null for nothing.</param>
/// <param name="Counted">What stands behind their number.</param>
/// <param name="AllBeside">What is said where each joint between sections lies beside one.</param>
/// <param name="Shown">What is said where joints show, {0} being their chainages.</param>
public sealed record FittingWords(IReadOnlyList<string> Made, string? NoneMade, string Counted, string AllBeside, string Shown);
