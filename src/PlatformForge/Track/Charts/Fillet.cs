namespace PlatformForge.Track.Charts;

/// <summary>One kink of the ride line and the rounding that stands for it in the chart.</summary>
/// <param name="Kink">The kink, by the ride line's chainage.</param>
/// <param name="RideFrom">Where the chart leaves the ride line, ride chainage in mm.</param>
/// <param name="RideTo">Where it comes back, ride chainage in mm.</param>
/// <param name="ChartFrom">Chart chainage in mm at <paramref name="RideFrom"/>.</param>
/// <param name="ChartTo">Chart chainage in mm at <paramref name="RideTo"/>.</param>
/// <param name="LeastRadius">Smaller of the two radii of the rounding, mm.</param>
/// <param name="Deviation">Bound on the distance between the lines here, mm.</param>
public sealed record Fillet(Kink Kink, double RideFrom, double RideTo, double ChartFrom, double ChartTo, double LeastRadius, double Deviation);
