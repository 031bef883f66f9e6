using PlatformForge.Units;
using PlatformForge.Units.Specs;

namespace PlatformForge.Platforms;

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
    public BackKind Kind { get; init; } = BackKind.Wall;

    /// <summary>A bank falls 1 in this. Default 1, 45 degrees: the flattest that prints with its section. Banks of earth fall 1 in 1½ to 1 in 2 (common
    /// practice, no source).</summary>
    public double Slope { get; init; } = 1;

    /// <summary>Height over the baseboard of the ground at a bank's foot. Default 0.</summary>
    public double Ground { get; init; }

    /// <summary>Whether a wall stands upright under the deck's back edge.</summary>
    public bool HasWall => Kind == BackKind.Wall;

    /// <summary>Its keys in the project file.</summary>
    public static SpecKeys<BackSpec> Keys { get; } = new SpecKeys<BackSpec>(_ => new())
        .Choice(
            "kind",
            "What closes the platform behind: a wall; a bank, where the ground falls from the deck's edge; or nothing, against a backscene.",
            b => b.Kind,
            (b, v) => b with { Kind = v },
            [("wall", BackKind.Wall), ("bank", BackKind.Bank), ("open", BackKind.Open)])
        .Number("slope", NumberRange.From(0.2, 5), "", "A bank falls 1 in this.", b => b.Slope, (b, v) => b with { Slope = v })
        .Length(
            "ground",
            NumberRange.From(0, 300),
            "Height over the baseboard of the ground at a bank's foot.",
            b => b.Ground,
            (b, v) => b with { Ground = v });
}
