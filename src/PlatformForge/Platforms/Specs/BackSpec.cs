using PlatformForge.Units;
using PlatformForge.Units.Specs;

namespace PlatformForge.Platforms.Specs;

/// <summary>What closes a platform behind, where no second face is.</summary>
public enum BackKind
{
    /// <summary>An upright wall from the deck to the baseboard.</summary>
    Wall,

    /// <summary>A bank: the ground falls from the deck's edge.</summary>
    Bank,

    /// <summary>Nothing: the platform stands against a backscene, and its ribs end at it.</summary>
    Open,
}

/// <summary>The back of a platform. Lengths in mm of the model.</summary>
public sealed record BackSpec
{
    /// <summary>Deck left between the back and what stands in a rebate along it, mm: two printed lines.</summary>
    public const double Lip = 0.8;

    public BackKind Kind { get; init; } = BackKind.Wall;

    /// <summary>A bank falls 1 in this. 1, 45 degrees, is the flattest that prints with its section beside a level deck. Default 0.95, 46½ degrees,
    /// which a slicer leaves alone that
    /// supports what lies at 45 degrees or less; where ramps and curves take more of it than that, as much steeper as they want it. Banks of earth
    /// fall 1 in 1½ to 1 in 2 (common
    /// practice, no source).</summary>
    public double Slope
    {
        get => slope ?? Unasked;
        init => slope = value;
    }

    private const double Unasked = 0.95;

    private readonly double? slope;

    /// <summary>Whether a slope is stated.</summary>
    public bool StatesSlope => slope is not null;

    /// <summary>Whether a slope that is not stated was made steeper than it is elsewhere, for ramps on curves.</summary>
    public bool IsSteepened { get; init; }

    /// <summary>The slope of a bank that is not stated and is not steepened.</summary>
    public static double UnaskedSlope => Unasked;

    /// <summary>Whether a bank is a print of its own, which stands on its foot behind the platform's wall: then it may be as flat as asked.</summary>
    public bool Apart { get; init; }

    /// <summary>Air between such a bank and the wall, mm. Default 0.2 (common practice, no source).</summary>
    public double Fit { get; init; } = 0.2;

    /// <summary>Height over the baseboard of the ground at a bank's foot. Default 0.</summary>
    public double Ground { get; init; }

    /// <summary>Ends of the platform round which a bank turns, a quarter of a cone beyond each.</summary>
    public BankReturns Returns { get; init; }

    /// <summary>A retaining wall that rises along it over the deck; null where there is none.</summary>
    public RetainingSpec? Retaining { get; init; }

    /// <summary>A kerb along it that carries the fence; null where there is none.</summary>
    public KerbSpec? Kerb { get; init; }

    /// <summary>What stands in a rebate along it: its key, what it takes of the deck in mm, and what it comes to; null where nothing does.</summary>
    internal (string Key, double Taken, LineMake Make)? Strip =>
        Retaining is { } wall ? ("retaining", wall.Taken, wall.Make) : Kerb is { } kerb ? ("kerb", kerb.Taken, kerb.Make) : null;

    /// <summary>Whether a bank stands behind the platform as a print of its own.</summary>
    public bool IsBankApart => Kind == BackKind.Bank && Apart;

    /// <summary>Whether a wall stands upright under the deck's back edge.</summary>
    public bool HasWall => Kind == BackKind.Wall || IsBankApart;

    /// <summary>Whether that wall is seen: no bank hides it.</summary>
    public bool ShowsWall => Kind == BackKind.Wall;

    /// <summary>What a bank of its own comes to.</summary>
    public LineMake BankMake => new(LineMake.Bank, LineForm.Strip, 0, Fit);

    /// <summary>Its keys in the project file.</summary>
    public static SpecKeys<BackSpec> Keys { get; } = new SpecKeys<BackSpec>(_ => new())
        .Choice(
            "kind",
            "What closes the platform behind: a wall; a bank, where the ground falls from the deck's edge; or nothing, against a backscene.",
            b => b.Kind,
            (b, v) => b with { Kind = v },
            [("wall", BackKind.Wall), ("bank", BackKind.Bank), ("open", BackKind.Open)])
        .Number(
            "slope",
            NumberRange.From(0.2, 5),
            "",
            "A bank falls 1 in this; left out, as flat as prints with its section.",
            b => b.Slope,
            (b, v) => b with { Slope = v })
        .Flag(
            "apart",
            "Whether a bank is a print of its own, which stands on its foot behind the platform's wall: it may be as flat as wanted then.",
            b => b.Apart,
            (b, v) => b with { Apart = v })
        .Length("fit", NumberRange.From(0, 2), "Air between such a bank and the wall.", b => b.Fit, (b, v) => b with { Fit = v })
        .Length(
            "ground",
            NumberRange.From(0, 300),
            "Height over the baseboard of the ground at a bank's foot.",
            b => b.Ground,
            (b, v) => b with { Ground = v })
        .Choice(
            "returns",
            "Ends of the platform round which a bank turns by a quarter of a cone; at a ramp's foot and at a skew end it ends square.",
            b => b.Returns,
            (b, v) => b with { Returns = v },
            [("none", BankReturns.None), ("start", BankReturns.Start), ("end", BankReturns.End), ("both", BankReturns.Both)])
        .Table(
            "retaining",
            "A retaining wall along the back that rises over the deck, a print of its own; left out, there is none.",
            RetainingSpec.Keys,
            b => b.Retaining,
            (b, v) => b with { Retaining = v })
        .Table(
            "kerb",
            "A kerb along the back that carries the fence, a print of its own; left out, there is none.",
            KerbSpec.Keys,
            b => b.Kerb,
            (b, v) => b with { Kerb = v });
}
