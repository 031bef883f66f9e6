using PlatformForge.Units;

namespace PlatformForge.Clearance.Vehicles;

/// <summary>
/// Where a point of a vehicle comes to while its body leans on its springs and the track is canted, both at once and either way. In the
/// cross-section of what
/// carries it, y to the left and z above rail top, the body turns by ρ about its roll centre at the height c, then everything turns by γ
/// about rail top. With
/// σ = ρ + γ a point (y, z) comes to y·cos σ − (z − c)·sin σ − c·sin γ to the left and y·sin σ + (z − c)·cos σ + c·cos γ above rail top.
/// </summary>
/// <param name="Roll">Greatest ρ each way, radians; nil for what is not sprung.</param>
/// <param name="Cant">Greatest γ each way, radians.</param>
/// <param name="Centre">Height of the roll centre above rail top, mm.</param>
internal readonly record struct LeanRange(double Roll, double Cant, double Centre)
{
    // Angles and heights that differ by less are equal, radians or mm.
    private const double Grain = Tolerances.Rounding;

    /// <summary>Whether nothing leans.</summary>
    public bool IsUpright => Roll == 0 && Cant == 0;

    /// <summary>
    /// Farthest to the left that a place y comes at any of its heights while it is within a window of heights above rail top, mm; null when
    /// it never is.
    /// </summary>
    /// <param name="y">To the left of the middle, mm.</param>
    /// <param name="heights">Its heights when upright, mm above rail top.</param>
    /// <param name="window">Heights above rail top that count while it leans.</param>
    /// <remarks>
    /// The derivatives of the place to the left by ρ and γ are −(h − c·cos γ) and −h at a height h, those of the height the place itself
    /// with and without c·sin γ. Neither
    /// vanish both nor are they parallel within any lean that a vehicle survives, so the farthest place has one of the angles at an end of its range.
    /// </remarks>
    public double? Leftmost(double y, (double Low, double High) heights, (double Low, double High) window)
    {
        double? best = null;
        foreach (int way in (ReadOnlySpan<int>)[-1, 1])
        {
            foreach (double roll in Rolls(y, way * Cant, heights, window))
            {
                best = Better(best, At(y, roll, way * Cant, heights, window));
            }

            foreach (double cant in Cants(y, way * Roll, heights, window))
            {
                best = Better(best, At(y, way * Roll, cant, heights, window));
            }
        }

        return best;
    }

    /// <summary>The lowest height above rail top in mm that a point so far from the middle sinks to, on whichever side is the lower one.</summary>
    /// <param name="aside">Distance from the middle of what carries it, mm.</param>
    /// <param name="z">Height above rail top when upright, mm.</param>
    /// <param name="shift">How far what carries it stands off the middle of the track, mm: a canted track lowers it by that times the sine of the cant.</param>
    public double Lowest(double aside, double z, double shift) => -Most(Centre - z, aside, -Centre, shift);

    /// <summary>The highest that it rises on the other side.</summary>
    public double Highest(double aside, double z, double shift) => Most(z - Centre, aside, Centre, shift);

    // With a cant: the ends of the range, where the lowest or the highest of it goes farthest or passes an end of the window, and where
    // what is at an end of the window goes farthest.
    private List<double> Rolls(double y, double cant, (double Low, double High) heights, (double Low, double High) window)
    {
        var rolls = new List<double> { -Roll, Roll };
        foreach (double z in (ReadOnlySpan<double>)[heights.Low, heights.High])
        {
            rolls.Add(Math.Atan2(Centre - z, y) - cant);
            foreach (double end in (ReadOnlySpan<double>)[window.Low, window.High])
            {
                double along = Math.Atan2(y, z - Centre), aside = Math.Acos((end - (Centre * Math.Cos(cant))) / double.Hypot(y, z - Centre));
                rolls.AddRange([along - aside - cant, along + aside - cant]);
            }
        }

        rolls.AddRange([Math.Asin((window.Low - (Centre * Math.Cos(cant))) / y) - cant, Math.Asin((window.High - (Centre * Math.Cos(cant))) / y) - cant]);
        return rolls;
    }

    // The same with a roll.
    private List<double> Cants(double y, double roll, (double Low, double High) heights, (double Low, double High) window)
    {
        var cants = new List<double> { -Cant, Cant };
        foreach (double z in (ReadOnlySpan<double>)[heights.Low, heights.High])
        {
            double left = (y * Math.Cos(roll)) - ((z - Centre) * Math.Sin(roll)), up = Centre + (y * Math.Sin(roll)) + ((z - Centre) * Math.Cos(roll));
            cants.Add(Math.Atan2(-up, left));
            foreach (double end in (ReadOnlySpan<double>)[window.Low, window.High])
            {
                double along = Math.Atan2(left, up), aside = Math.Acos(end / double.Hypot(left, up));
                cants.AddRange([along - aside, along + aside]);
            }
        }

        double arm = y + (Centre * Math.Sin(roll));
        cants.AddRange([Math.Asin(window.Low / arm) - roll, Math.Asin(window.High / arm) - roll]);
        return cants;
    }

    // How far the place is to the left in one way of leaning; null when that is none of the range, or nothing of the place is within the window.
    private double? At(double y, double roll, double cant, (double Low, double High) heights, (double Low, double High) window)
    {
        if (!(Math.Abs(roll) <= Roll + Grain && Math.Abs(cant) <= Cant + Grain))
        {
            return null;
        }

        double sine = Math.Sin(roll + cant), cosine = Math.Cos(roll + cant), rise = (y * sine) + (Centre * Math.Cos(cant));
        double from = Math.Max(heights.Low - Centre, (window.Low - rise) / cosine), to = Math.Min(heights.High - Centre, (window.High - rise) / cosine);
        return from > to + Grain ? null : (y * cosine) - (Centre * Math.Sin(cant)) - Math.Min(from * sine, to * sine);
    }

    private static double? Better(double? a, double? b) => a is null || b > a ? b : a;

    /// <summary>
    /// Greatest of a·cos σ + b·sin σ + c·cos γ + d·sin γ. It is taken at a corner of the ranges, at the best turn of one with the other at
    /// an end, or at the best of both.
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

            double cosine = (a * Math.Cos(lean)) + (b * Math.Sin(lean)) + c, sine = (b * Math.Cos(lean)) - (a * Math.Sin(lean)) + d,
                along = Math.Atan2(sine, cosine);
            if (Math.Abs(along) < Cant)
            {
                best = Math.Max(best, Value(along + lean, along));
            }
        }

        return Math.Abs(bestTilt) < Cant && Math.Abs(bestSum - bestTilt) < Roll ? Math.Max(best, Value(bestSum, bestTilt)) : best;
    }
}
