using PlatformForge.Track;

namespace PlatformForge.Clearance.Sweeping;

/// <summary>
/// The stretch of a ride line that matters to a chart, cut into short bins, with how much ride line and chart bend in each.
/// </summary>
internal sealed class RunSpan
{
    /// <summary>Length of a bin, mm.</summary>
    public const double Bin = 8;

    // Between samples of the chart the ride line does not wander by more than a vehicle's margin.
    private const double Sample = 40;

    private readonly CurvatureSpan[] bins;
    private readonly double first;

    /// <param name="run">The run.</param>
    /// <param name="chart">Line of the answer.</param>
    /// <param name="from">First station, chart chainage, mm.</param>
    /// <param name="to">Last station, mm.</param>
    /// <param name="margin">How far beyond both the vehicles are swept, mm.</param>
    public RunSpan(TrackRun run, Centreline chart, double from, double to, double margin)
    {
        Run = run;
        (From, To, Offset) = Alongside(run.Ride, chart, from, to);
        (first, double last) = (From - margin, To + margin);
        bins = new CurvatureSpan[(int)Math.Ceiling((last - first) / Bin) + 1];
        bool own = ReferenceEquals(run.Ride, chart);
        double at = own ? first : chart.Locate(run.Ride.PointAt(first)).Chainage;
        for (int i = 0; i < bins.Length; i++)
        {
            double a = first + (i * Bin), b = a + Bin;
            var span = CurvatureSpan.Over(run.Ride, a, b);
            if (!own)
            {
                double next = chart.Locate(run.Ride.PointAt(b), at + Bin).Chainage;
                span = span.Join(CurvatureSpan.Over(chart, Math.Min(at, next), Math.Max(at, next)) with { KinkTurn = 0 });
                at = next;
            }

            bins[i] = span;
        }
    }

    public TrackRun Run { get; }

    /// <summary>Least ride chainage alongside the stations, mm.</summary>
    public double From { get; }

    /// <summary>Greatest ride chainage alongside the stations, mm.</summary>
    public double To { get; }

    /// <summary>Greatest distance of the ride line from the chart, mm.</summary>
    public double Offset { get; }

    /// <summary>Span of all that lies between two ride chainages; parts of bins count whole.</summary>
    public CurvatureSpan Over(double from, double to)
    {
        int low = Math.Clamp((int)Math.Floor((from - first) / Bin), 0, bins.Length - 1), high = Math.Clamp((int)Math.Floor((to - first) / Bin), 0, bins.Length - 1);
        var span = CurvatureSpan.Nothing;
        for (int i = low; i <= high; i++)
        {
            span = span.Join(bins[i]);
        }

        return span;
    }

    private static (double From, double To, double Offset) Alongside(Centreline ride, Centreline chart, double from, double to)
    {
        if (ReferenceEquals(ride, chart))
        {
            return (from, to, 0);
        }

        int count = Math.Max(2, (int)Math.Ceiling((to - from) / Sample) + 1);
        double least = double.PositiveInfinity, most = double.NegativeInfinity, offset = 0, guess = double.NaN;
        for (int i = 0; i < count; i++)
        {
            var point = chart.PointAt(from + ((to - from) * i / (count - 1)));
            var place = double.IsNaN(guess) ? ride.Locate(point) : ride.Locate(point, guess);
            guess = place.Chainage;
            (least, most) = (Math.Min(least, guess), Math.Max(most, guess));
            offset = Math.Max(offset, Math.Abs(place.Offset));
        }

        return (least, most, offset);
    }
}
