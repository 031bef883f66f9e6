namespace PlatformForge.Track.Charts;

/// <summary>
/// Two lines for one track: the ride line that vehicles really follow, kinks and all, and a smooth chart line beside it in
/// whose chainage and offset a platform is planned. Where the track has no kink both are the same line.
/// </summary>
/// <remarks>
/// Laws, each with a test of its number: (1) the chart line has no kink; (2) it is nowhere farther from the ride line than
/// <see cref="Deviation"/>; (3) outside the fillets both lines are the same points; (4) chainages pass to and fro unchanged.
/// </remarks>
public sealed class TrackChart
{
    private readonly Fillet[] fillets;

    internal TrackChart(Centreline ride, Centreline line, Fillet[] fillets)
    {
        (Ride, Line, this.fillets) = (ride, line, fillets);
        Deviation = fillets.Length == 0 ? 0 : fillets.Max(f => f.Deviation);
    }

    /// <summary>The line the vehicles ride on.</summary>
    public Centreline Ride { get; }

    /// <summary>The smooth line for plan coordinates.</summary>
    public Centreline Line { get; }

    /// <summary>The rounded kinks in order of chainage.</summary>
    public IReadOnlyList<Fillet> Fillets => fillets;

    /// <summary>Greatest distance in mm between the two lines, never less than the true one.</summary>
    public double Deviation { get; }

    /// <summary>
    /// The chart's chainage for one of the ride line, mm. Outside the fillets it names the same point; inside a fillet it runs
    /// in proportion to its length.
    /// </summary>
    public double FromRide(double chainage) => Pass(chainage, f => (f.RideFrom, f.RideTo), f => (f.ChartFrom, f.ChartTo));

    /// <summary>The ride line's chainage for one of the chart, mm: the inverse of <see cref="FromRide"/>.</summary>
    public double ToRide(double chainage) => Pass(chainage, f => (f.ChartFrom, f.ChartTo), f => (f.RideFrom, f.RideTo));

    private double Pass(double chainage, Func<Fillet, (double From, double To)> source, Func<Fillet, (double From, double To)> target)
    {
        double shift = 0;
        foreach (var fillet in fillets)
        {
            var (from, to) = source(fillet);
            if (chainage <= from)
            {
                break;
            }

            var (start, end) = target(fillet);
            if (chainage < to)
            {
                return start + ((end - start) * (chainage - from) / (to - from));
            }

            shift = end - to;
        }

        return chainage + shift;
    }
}
