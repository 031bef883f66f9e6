namespace PlatformForge.Clearance.Rules;

/// <summary>Full-size figures of the European continent, scaled.</summary>
internal static class EuropeanRules
{
    // Extra overthrow of the Norwegian reference vehicle, 24 m long on 18 m centres, in mm for a radius in metres.
    private const double NorwegianInside = 40500, NorwegianOutside = 31500;

    /// <summary>Distance of the edge from straight track, full-size mm.</summary>
    public const double NorwegianStraight = 1680;

    private const double NorwegianLeastRadius = 180;

    public static NationalRules Norwegian { get; } = new("norwegian", "Norwegian platforms, scaled",
    [
        Clauses.HeightAmong("550 or 760 mm above rail", "Bane NOR, Plattformhøyder og avstand, rett linje", 35, 0, 550, 760),
        Clauses.Edge("1680 mm, and 40.5/R inside, 31.5/R outside of curves of 180 m or more",
            "Bane NOR, Plattformer og lasteramper mot spor i kurver; Norwegian TSI INF regulation § 2",
            (s, place) => NorwegianEdge(s.Scale.ToFullSize(place.Radius) / 1000, place.Curvature > 0) is { } edge ? s.Scale.ToModel(edge) : null),
        Clauses.Taper("ends tapered 1 in 40 or flatter", "Bane NOR, TRV:03993", 40),
        Clauses.Crossfall("2 % away from the edge", "Bane NOR, TRV:03995", 0.02),
    ]);

    public static NationalRules German { get; } = new("german", "German platforms, scaled",
    [
        Clauses.Height("760 mm above rail; never below 380 nor above 960", "EBO § 13, ra.de", 380, 960),
        Clauses.FromCentre("fixed objects on platforms 3.00 m from the track's centre up to 3.05 m above rail", "EBO § 13, ra.de",
            (s, _) => s.Scale.ToModel(3000)),
    ]);

    public static NationalRules Dutch { get; } = new("dutch", "Dutch platforms, scaled",
    [
        Clauses.HeightAmong("760 mm above rail, 35 under, nothing over", "matenkaartje.railcenter.nl, Afwijkingen PVR", 35, 0, 760),
        Clauses.Edge("1700 mm from the track's centre on straight track", "matenkaartje.railcenter.nl, Afwijkingen PVR", (s, _) => s.Scale.ToModel(1700)),
    ]);

    public static NationalRules Interoperable { get; } = new("european", "Interoperable European platforms, scaled",
    [
        Clauses.HeightAmong("550 or 760 mm above rail, 35 under, nothing over", "TSI PRM 2008, OJ L 64/103", 35, 0, 550, 760),
        Clauses.Width("2.5 m, islands 3.3 m", "TSI PRM, from memory", 2500, 3300),
    ]);

    /// <summary>Least full-size distance in mm of an edge from the track's centre.</summary>
    /// <param name="radiusM">Radius in m, infinite on the straight.</param>
    /// <param name="inside">Whether the platform is on the inside.</param>
    /// <returns>Null below the least radius for which the rule is published.</returns>
    public static double? NorwegianEdge(double radiusM, bool inside) =>
        radiusM < NorwegianLeastRadius ? null : NorwegianStraight + ((inside ? NorwegianInside : NorwegianOutside) / radiusM);
}
