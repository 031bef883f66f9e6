namespace PlatformForge.Clearance;

/// <summary>
/// Where a point of a vehicle comes to while its body leans on its springs and the track is canted, both at once and either way. In the cross-section of what
/// carries it, y to the left and z above rail top, the body turns by ρ about its roll centre at the height c, then everything turns by γ about rail top. With
/// σ = ρ + γ a point (y, z) lies at y·cos σ − (z − c)·sin σ − c·sin γ to the left and y·sin σ + (z − c)·cos σ + c·cos γ above rail top.
/// </summary>
/// <param name="Roll">Greatest ρ each way, radians; nil for what is not sprung.</param>
/// <param name="Cant">Greatest γ each way, radians.</param>
/// <param name="Centre">Height of the roll centre above rail top, mm.</param>
internal readonly record struct LeanRange(double Roll, double Cant, double Centre)
{
    /// <summary>Whether nothing leans.</summary>
    public bool IsUpright => Roll == 0 && Cant == 0;

    /// <summary>Farthest to the left that a point comes, mm.</summary>
    public double Leftmost(double y, double z) => Most(y, Centre - z, 0, -Centre);

    /// <summary>The lowest that a point at least a distance from the middle sinks, on whichever side is the lower one, mm above rail top.</summary>
    /// <param name="aside">Distance from the middle of what carries it, mm.</param>
    /// <param name="z">Height above rail top when upright, mm.</param>
    /// <param name="shift">How far what carries it stands off the middle of the track, mm: a canted track lowers it by that times the sine of the cant.</param>
    public double Lowest(double aside, double z, double shift) => -Most(Centre - z, aside, -Centre, shift);

    /// <summary>The highest that it rises on the other side.</summary>
    public double Highest(double aside, double z, double shift) => Most(z - Centre, aside, Centre, shift);

    /// <summary>
    /// Greatest of a·cos σ + b·sin σ + c·cos γ + d·sin γ. It is taken at a corner of the ranges, at the best turn of one with the other at an end, or at the best of both.
    /// </summary>
    private double Most(double a, double b, double c, double d)
    {
        double Value(double sum, double tilt) => (a * Math.Cos(sum)) + (b * Math.Sin(sum)) + (c * Math.Cos(tilt)) + (d * Math.Sin(tilt));
        double best = double.NegativeInfinity, bestSum = Math.Atan2(b, a), bestTilt = Math.Atan2(d, c);
        foreach (int way in (ReadOnlySpan<int>)[-1, 1])
        {
            double tilt = way * Cant, lean = way * Roll;
            best = Math.Max(best, Math.Max(Value(tilt + Roll, tilt), Value(tilt - Roll, tilt)));
            if (Math.Abs(bestSum - tilt) < Roll)
            {
                best = Math.Max(best, Value(bestSum, tilt));
            }

            double cosine = (a * Math.Cos(lean)) + (b * Math.Sin(lean)) + c, sine = (b * Math.Cos(lean)) - (a * Math.Sin(lean)) + d, along = Math.Atan2(sine, cosine);
            if (Math.Abs(along) < Cant)
            {
                best = Math.Max(best, Value(along + lean, along));
            }
        }

        return Math.Abs(bestTilt) < Cant && Math.Abs(bestSum - bestTilt) < Roll ? Math.Max(best, Value(bestSum, bestTilt)) : best;
    }
}
