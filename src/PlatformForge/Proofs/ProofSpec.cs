namespace PlatformForge.Proofs;

/// <summary>What is asked of gauges and proofs. Lengths in mm of the model.</summary>
public sealed record ProofSpec
{
    /// <summary>Full-size length of a sleeper, mm (8 ft 6 in, from memory): a slide gauge's finger keeps off their ends.</summary>
    private const double FullSizeSleeper = 2590;

    /// <summary>Chainages of slide gauges, told along the tracks; null for the tightest place of every face and the two ends of its level part.</summary>
    public IReadOnlyList<double>? At { get; init; }

    /// <summary>Vehicles that throw boards are made of; null for the one of each face that governs where it is tightest.</summary>
    public IReadOnlyList<string>? Vehicles { get; init; }

    /// <summary>Air that a slide gauge keeps from coping and wall. Default 0.5: more than its play, less than any clearance.</summary>
    public double Air { get; init; } = 0.5;

    /// <summary>Play of a gauge's tongues between the rails, on each side where it is least.</summary>
    public double Play { get; init; } = 0.2;

    /// <summary>Diameter of the hole that a pencil's point goes through; a clutch pencil's lead is 2.</summary>
    public double Pencil { get; init; } = 2;

    /// <summary>Thickness of footprints: three layers of 0.2.</summary>
    public double Footprint { get; init; } = 0.6;

    /// <summary>Thickness of masks: three layers of 0.2, stiff enough to lie flat and thin enough for a brush to reach under (common practice, no
    /// source).</summary>
    public double Masks { get; init; } = 0.6;

    /// <summary>Length of a test slice along the track.</summary>
    public double Slice { get; init; } = 10;

    /// <summary>Width over the ends of sleepers.</summary>
    public double Sleepers { get; init; } = FullSizeSleeper / 76.2;

    /// <summary>Key in the project file, for findings.</summary>
    public string Key { get; init; } = "gauges";

    /// <summary>The defaults of a scale.</summary>
    public static ProofSpec For(Units.ModelScale scale) => new() { Sleepers = Math.Round(scale.ToModel(FullSizeSleeper), 1) };
}
