namespace PlatformForge.Units;

/// <summary>
/// The ratio between full size and model, 76.2 for 4 mm to the foot. The only place where a full-size length
/// becomes a model one.
/// </summary>
/// <param name="Ratio">Full-size length over model length, above 1.</param>
public readonly record struct ModelScale(double Ratio)
{
    /// <summary>Ratios of models that are built by hand and printer.</summary>
    public static NumberRange Ratios => NumberRange.From(4, 1000);

    /// <summary>Model millimetres for full-size millimetres.</summary>
    public double ToModel(double fullSizeMm) => fullSizeMm / Ratio;

    /// <summary>Full-size millimetres for model millimetres.</summary>
    public double ToFullSize(double modelMm) => modelMm * Ratio;
}
