using PlatformForge.Units;

namespace PlatformForge.Masonry.Finishes;

/// <summary>What a brick takes up with its joints, mm of the model.</summary>
/// <param name="Stretcher">Length of a stretcher and a joint; a header takes half of it, a closer a quarter.</param>
/// <param name="Course">Height of a course and its bed.</param>
public readonly record struct BrickModule(double Stretcher, double Course)
{
    /// <summary>Half a brick with a joint.</summary>
    public double Header => Stretcher / 2;

    /// <summary>The module of a gauge at a scale: coordinating sizes, 225 by 75 mm (BS EN 771 work size with joints of 10), or 9 by 3 in (from
    /// memory, no source).</summary>
    public static BrickModule Of(BrickGauge gauge, ModelScale scale) => gauge == BrickGauge.Metric
        ? new(scale.ToModel(225), scale.ToModel(75))
        : new(scale.ToModel(228.6), scale.ToModel(76.2));
}
