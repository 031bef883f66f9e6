namespace PlatformForge.Platforms.Specs;

/// <summary>How a line along an edge comes about.</summary>
public enum LineForm
{
    /// <summary>Painted on the flat deck.</summary>
    Paint,

    /// <summary>Painted into a shallow groove.</summary>
    Groove,

    /// <summary>A body of its own in another colour, let into the deck and flush with it: it lies on the bed beside the deck's first layer.</summary>
    Inlay,

    /// <summary>A thin strip printed by itself, right way up, and laid into a rebate.</summary>
    Strip,
}

/// <summary>What stands on a strip.</summary>
public enum StripPattern
{
    /// <summary>Nothing: its top is flat.</summary>
    Plain,

    /// <summary>Square studs in rows.</summary>
    Studs,

    /// <summary>Ribs along the edge.</summary>
    Ribs,
}

/// <summary>What a line or strip is made of.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="Form">How it is made.</param>
/// <param name="Depth">Depth of groove or rebate below the deck, mm; 0 for paint.</param>
/// <param name="Fit">Air on either side of a strip in its rebate, mm.</param>
/// <param name="Rise">How far a strip's highest places stand over the deck, mm.</param>
/// <param name="Pattern">What stands on a strip.</param>
/// <param name="Stud">Width of studs and ribs, mm.</param>
/// <param name="Pitch">Distance between their middles, mm.</param>
public sealed record LineMake(
    string Name, LineForm Form, double Depth, double Fit = 0, double Rise = 0, StripPattern Pattern = StripPattern.Plain, double Stud = 0, double Pitch = 0)
{
    /// <summary>Least deck between two strips, and between a strip and the deck's end, mm: a printed line (common practice, no source).</summary>
    public const double LeastLand = 0.4;

    /// <summary>Least material in mm under a groove: two printed layers of 0.2.</summary>
    public const double LeastFloor = 0.4;

    /// <summary>Names that the makes have.</summary>
    public const string White = "white line", Tactile = "tactile strip", Retaining = "retaining wall", Kerb = "kerb", Bank = "bank";

    /// <summary>What makes a wall of it, printed on its coping; null for all else.</summary>
    public RetainingMake? Wall { get; init; }

    /// <summary>Whether it lies along the back: a kerb or a retaining wall.</summary>
    public bool StandsAtBack => Name is Kerb or Retaining;

    /// <summary>Whether posts go through it.</summary>
    public bool IsPierced { get; init; }

    /// <summary>Whether a brush makes it.</summary>
    public bool IsPainted => Form is LineForm.Paint or LineForm.Groove;

    /// <summary>Whether it is a print of its own colour.</summary>
    public bool IsPrinted => !IsPainted;

    /// <summary>Height of a strip's own flat top over the deck: all of its rise, or none where a pattern stands on it.</summary>
    public double FlatRise => Pattern == StripPattern.Plain ? Rise : 0;
}

/// <summary>A wall that stands in a rebate: how far plinth and coping stand before its face, the coping's thickness, and the plinth's height over the deck,
/// mm.</summary>
public sealed record RetainingMake(double Oversail, double Coping, double Plinth)
{
    /// <summary>Height of its coping's top over the baseboard where that is level over a ramp, mm; null where it follows the deck.</summary>
    public double? LevelTop { get; init; }
}
