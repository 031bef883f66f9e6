namespace PlatformForge.Clearance.Rules;

/// <summary>American full-size figures, scaled. The model association's clearance sheets could not be read and are not used.</summary>
internal static class AmericanRules
{
    private const double Inch = 25.4;

    public static NationalRules Set { get; } = new("american", "American practice, scaled",
    [
        Clauses.HeightAmong("low platforms 8 in above rail, high ones 48 in", "ABA 810.5.3 (low); from memory (high)", 0.625 * Inch, 0.625 * Inch, 8 * Inch, 48 * Inch),
        Clauses.Edge("high platforms 5 ft 7 in from the centre", "from memory", (s, _) => s.Scale.ToFullSize(s.Height) > 24 * Inch ? s.Scale.ToModel(67 * Inch) : null),
        Clauses.Crossfall("no slope over 1 in 48 in any direction", "ABA 810.5.1", 1.0 / 48),
    ]);
}
