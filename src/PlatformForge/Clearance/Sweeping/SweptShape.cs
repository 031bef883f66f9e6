namespace PlatformForge.Clearance.Sweeping;

/// <summary>
/// What is swept of a vehicle as one piece: a part or, where it leans, what of its heights stays below an edge, what comes to the edge's own heights, and what stays above, so
/// that what happens low down is not mixed with how far a roof leans.
/// </summary>
/// <param name="Part">The part between its heights or those of the piece.</param>
/// <param name="Lowest">Lowest height above rail top in mm that it sinks to, leaning.</param>
/// <param name="Highest">Greatest height that it rises to.</param>
internal sealed record SweptShape(VehiclePart Part, double Lowest, double Highest)
{
    // A piece lower than this, mm, is not told apart.
    private const double LeastHeight = 0.01;

    // A piece stays clear of the edge's heights by this much, mm, whatever is rounded.
    private const double Grain = 1e-7;

    // How far a side sinks hardly changes with its height: each round takes off two digits and more.
    private const int Rounds = 8;

    /// <summary>The shapes of a vehicle in the order of its parts, from below.</summary>
    /// <param name="vehicle">The vehicle.</param>
    /// <param name="play">What it leans by.</param>
    /// <param name="edge">Heights of the edge above rail top, mm; null tells every part as a whole.</param>
    public static SweptShape[] Of(Vehicle vehicle, RunningPlay play, (double Low, double High)? edge) =>
        [.. vehicle.Parts.SelectMany(part => Pieces(part, vehicle, play, edge)).Select(p => new SweptShape(p, play.Lowest(p, vehicle), play.Highest(p, vehicle)))];

    private static IEnumerable<VehiclePart> Pieces(VehiclePart part, Vehicle vehicle, RunningPlay play, (double Low, double High)? edge)
    {
        double low = part.ZLow;
        foreach (double cut in edge is { } heights && play.Leans(part) ? Cuts(part, vehicle, play, heights).Where(z => z > part.ZLow + LeastHeight && z < part.ZHigh - LeastHeight) : [])
        {
            if (cut > low)
            {
                yield return part with { ZLow = low, ZHigh = cut };
                low = cut;
            }
        }

        yield return low == part.ZLow ? part : part with { ZLow = low };
    }

    // What is below the first cut never rises above the edge's lower height, and what is above the second never sinks below its upper one.
    private static double[] Cuts(VehiclePart part, Vehicle vehicle, RunningPlay play, (double Low, double High) edge)
    {
        double under = edge.Low - Grain, over = edge.High + Grain;
        for (int round = 0; round < Rounds && double.IsFinite(over); round++)
        {
            over = edge.High + Grain + (over - play.Lowest(part with { ZLow = over, ZHigh = over + 1 }, vehicle));
        }

        for (int round = 0; round < Rounds; round++)
        {
            under = edge.Low - Grain - (play.Highest(part with { ZLow = under - 1, ZHigh = under }, vehicle) - under);
        }

        return [under, over];
    }
}
