namespace PlatformForge.Track.Surveys.Admissible;

/// <summary>
/// What is asked of a line: a weighted sum of its offsets at some chainages. A small change of the line moves any place of a vehicle in one
/// pose by such a sum over the axles that carry it.
/// </summary>
/// <param name="At">Chainages, mm.</param>
/// <param name="Weights">Weight of the offset at each.</param>
public readonly record struct LineMeasure(double[] At, double[] Weights)
{
    /// <summary>The offset at one chainage.</summary>
    public static LineMeasure Offset(double chainage) => new([chainage], [1]);
}

/// <summary>Least and greatest value of a measure over all admissible lines, mm; never too narrow.</summary>
public readonly record struct LineRange(double Least, double Most)
{
    /// <summary>Half the difference.</summary>
    public double Half => (Most - Least) / 2;
}
