namespace PlatformForge.Clearance.Rules;

/// <summary>British full-size figures, scaled.</summary>
internal static class BritishRules
{
    private const double Foot = 304.8, HalfStandardGauge = 717.5;

    /// <summary>Distance of the coping from the nearer running edge on straight track, full-size mm. The model is held to the track's
    /// centre, since narrow gauges would bring the edge too near.</summary>
    public const double EdgeFromRunningEdge = 730;

    public static NationalRules Modern { get; } = new("british", "British practice of today, scaled",
    [
        Clauses.Height("915 mm above rail, down to 865 on upgraded lines",
            "Track Design Handbook RT/CE/S/04 (1996) A.8.1, quoted in a model forum; infrastructure TSI, high speed", 865, 915),
        Clauses.Edge("730 mm from the running edge on straight track, so 1447.5 from the centre; wider on curves",
            "Track Design Handbook RT/CE/S/04 (1996) A.8.1, quoted in a model forum", (s, _) => s.Scale.ToModel(HalfStandardGauge + EdgeFromRunningEdge)),
        Clauses.Width("2500 mm, islands 4000 mm", "a model forum's summary of the current standard", 2500, 4000),
        Clauses.Clear("structures 2000 mm from the edge", "a model forum's summary of the current standard", 2000),
        Clauses.Overhang("coping 1 ft over the wall, a refuge for a fallen person", "a model society's forum, for today's figure", Foot),
        Clauses.Crossfall("crossfall 1 in 40 at most", "from memory", 1.0 / 40),
    ]);

    public static NationalRules Traditional { get; } = new("british-traditional", "British practice from 1902 to 1964, scaled",
    [
        Clauses.Height("2 ft 6 in to 3 ft above rail", "requirements of 1885 and 1902, quoted in a model forum; British Railway Track (1964)", 2.5 * Foot,
            3 * Foot),
        Clauses.Edge("4 ft 9 in from the centre of straight track; wider on curves", "a model society's digest 62.0", (s, _) => s.Scale.ToModel(4.75 * Foot)),
        Clauses.Width("6 ft, islands 12 ft", "inspecting officers' requirement of 1858; islands: model forums", 6 * Foot, 12 * Foot),
        Clauses.Ramp("ends ramped 1 in 8 or flatter", "W. H. Mills, Railway Construction (1898), for subways; for platforms from memory", 1.0 / 8),
    ]);
}
