namespace PlatformForge.Clearance.Rules;

/// <summary>American full-size figures, scaled. The model association's clearance sheets could not be read and are not used.</summary>
internal static class AmericanRules
{
    private const double Inch = 25.4, HalfChord = 50 * 12 * Inch;

    /// <summary>Degree of a curve: the angle under a chord of 100 ft, for a full-size radius in mm (American chord definition).</summary>
    public static double DegreeOfCurve(double radius) => 2 * Math.Asin(Math.Min(1, HalfChord / radius)) * 180 / Math.PI;

    public static NationalRules Set { get; } = new("american", "American practice, scaled",
    [
        Clauses.HeightAmong("low platforms 8 in above rail, high ones 48 in", "ABA 810.5.3 (low); from memory (high)", 0.625 * Inch, 0.625 * Inch, 8 * Inch,
            48 * Inch),
        Clauses.Edge("high platforms 5 ft 7 in from the centre", "from memory",
            (s, _) => s.Scale.ToFullSize(s.Height) > 24 * Inch ? s.Scale.ToModel(67 * Inch) : null),
        Clauses.Edge("high platforms wider on curves by 1 1/2 in a degree of curve", "from memory",
            (s, place) => s.Scale.ToFullSize(s.Height) > 24 * Inch
                ? s.Scale.ToModel((67 * Inch) + (1.5 * Inch * DegreeOfCurve(s.Scale.ToFullSize(place.Radius)))) : null),
        Clauses.FromCentre("other things 9 ft from the centre", "an engineer's reply that cites the engineering manual (seaintarchive.org)",
            (s, _) => s.Scale.ToModel(108 * Inch)),
        Clauses.Crossfall("no slope over 1 in 48 in any direction", "ABA 810.5.1", 1.0 / 48),
    ]);
}
