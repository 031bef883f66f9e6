namespace PlatformForge.Clearance.Rules;

/// <summary>Continental model standards: heights and edge distances by nominal size, widened on curves by vehicle group.</summary>
internal static class ContinentalRules
{
    // A layout is of a nominal size when its gauge is; scales differ by a few hundredths between makers of standards.
    private const double SameGauge = 0.03;

    private const double StandardGauge = 1435;

    private const string Planning = "planning aid Bahnsteige und Laderampen, German model federation, 2005";

    public static NationalRules For(VehicleGroup group) => new(
        $"continental-{group.ToString().ToLowerInvariant()}",
        $"Continental model standards, vehicle group {group}",
        [
            new("PF3050", "platform height, H1 max for 960 mm", Planning, TooHigh),
            new("PF3055", "sizes Z to II", "NEM 010, by gauge and scale", OfNoSize),
            Clauses.Edge(
                $"edge distance A, widened by E of group {group} on curves",
                Planning + "; NEM 103 (2016)",
                (s, place) => SizeOf(s) is { } size ? size.EdgeDistance + Extra(size, group, place.Radius) : null),
            Clauses.FromCentre(
                $"buildings and roofs outside the clearance profile, half of BL1, widened by E of group {group} on curves",
                Planning + "; NEM 102 (2017); NEM 103 (2016)",
                (s, place) => SizeOf(s) is { } size ? (size.FullWidth / 2) + Extra(size, group, place.Radius) : null),
        ]);

    // Above the last row of the table the last value holds; on straight track there is none.
    private static double? Extra(ContinentalSize size, VehicleGroup group, double radius) =>
        double.IsInfinity(radius) ? 0 : ContinentalTables.ExtraWidth(size.Name, group, radius);

    private static ContinentalSize? SizeOf(RuleSubject s) => ContinentalTables.SizeNames.Select(n => ContinentalTables.Sizes[n])
        .FirstOrDefault(size => Math.Abs((s.Gauge / size.Gauge) - 1) <= SameGauge && Math.Abs((s.Scale.Ratio * size.Gauge / StandardGauge) - 1)
            <= 2 * SameGauge);

    private static Shortfall? OfNoSize(RuleSubject s) => SizeOf(s) is null
        ? new("",
            FormattableString.Invariant($"Scale 1:{s.Scale.Ratio:G6} with gauge {s.Gauge:G4} mm is none of the standard's sizes, so its tables say nothing ")
                + "here",
            "Choose other rules: platformforge presets rules lists them.")
        : null;

    private static Shortfall? TooHigh(RuleSubject s) => SizeOf(s) is { } size && s.Height > size.Heights[0]
        ? new("height",
            FormattableString.Invariant($"The deck is {s.Height:F2} mm above rail top, the published most for size {size.Name} is {size.Heights[0]:F1} mm"),
            FormattableString.Invariant($"Full-size 760 mm is {size.Heights[1]:F1} mm, 550 mm is {size.Heights[2]:F1} mm."))
        : null;
}
