using System.Numerics;
using PlatformForge.Clearance.Requests;
using PlatformForge.Geometry;
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

    // Row j holds, for every bin, the span of the 2^j bins from there on, so that any stretch is two spans that overlap. Kinks are summed apart.
    private readonly CurvatureSpan[][] doubled;
    private readonly double[] turnsBefore;
    private readonly double first;

    /// <param name="run">The run.</param>
    /// <param name="chart">Line of the answer.</param>
    /// <param name="from">First station, chart chainage, mm.</param>
    /// <param name="to">Last station, mm.</param>
    /// <param name="margin">How far beyond both the vehicles are swept, mm.</param>
    public RunSpan(TrackRun run, Centreline chart, double from, double to, double margin)
    {
        Run = run;
        (From, To, Offset, Skew) = Alongside(run.Ride, chart, from, to);
        (first, double last) = (From - margin, To + margin);
        var bins = new CurvatureSpan[(int)Math.Ceiling((last - first) / Bin) + 1];
        IsChart = ReferenceEquals(run.Ride, chart);
        double at = IsChart ? first : chart.Locate(run.Ride.PointAt(first)).Chainage;
        for (int i = 0; i < bins.Length; i++)
        {
            double a = first + (i * Bin), b = a + Bin;
            var span = CurvatureSpan.Over(run.Ride, a, b);
            if (!IsChart)
            {
                double next = chart.Locate(run.Ride.PointAt(b), at + Bin).Chainage;
                span = span.Join(CurvatureSpan.Over(chart, Math.Min(at, next), Math.Max(at, next)) with { KinkTurn = 0 });
                at = next;
            }

            bins[i] = span;
        }

        doubled = Doubled(bins, (int)(margin / Bin) + 2);
        turnsBefore = TurnsBefore(bins);
    }

    public TrackRun Run { get; }

    /// <summary>Whether the ride line is the chart itself.</summary>
    public bool IsChart { get; }

    /// <summary>Least ride chainage alongside the stations, mm.</summary>
    public double From { get; }

    /// <summary>Greatest ride chainage alongside the stations, mm.</summary>
    public double To { get; }

    /// <summary>Greatest distance of the ride line from the chart, mm.</summary>
    public double Offset { get; }

    /// <summary>Greatest angle between the ride line and the chart alongside, radians; up to a quarter turn, whichever way it runs.</summary>
    public double Skew { get; }

    /// <summary>Span of all that lies between two ride chainages; parts of bins count whole.</summary>
    public CurvatureSpan Over(double from, double to)
    {
        int count = turnsBefore.Length - 1;
        int low = Math.Clamp((int)Math.Floor((from - first) / Bin), 0, count - 1), high = Math.Clamp((int)Math.Floor((to - first) / Bin), 0, count - 1);
        int row = Math.Min(doubled.Length - 1, BitOperations.Log2((uint)(high - low + 1))), size = 1 << row;
        var span = doubled[row][high - size + 1];
        for (int i = low; i + size <= high; i += size)
        {
            span = span.Join(doubled[row][i]);
        }

        return span with { KinkTurn = turnsBefore[high + 1] - turnsBefore[low] };
    }

    // Rows up to the longest stretch that is asked for, so that they stay linear in the length of the track.
    private static CurvatureSpan[][] Doubled(CurvatureSpan[] bins, int longest)
    {
        var rows = new List<CurvatureSpan[]> { bins };
        for (int size = 2; size <= Math.Min(longest, bins.Length); size *= 2)
        {
            var half = rows[^1];
            var row = new CurvatureSpan[bins.Length - size + 1];
            for (int i = 0; i < row.Length; i++)
            {
                row[i] = half[i].Join(half[i + (size / 2)]);
            }

            rows.Add(row);
        }

        return [.. rows];
    }

    private static double[] TurnsBefore(CurvatureSpan[] bins)
    {
        double[] turns = new double[bins.Length + 1];
        for (int i = 0; i < bins.Length; i++)
        {
            turns[i + 1] = turns[i] + bins[i].KinkTurn;
        }

        return turns;
    }

    private static (double From, double To, double Offset, double Skew) Alongside(Centreline ride, Centreline chart, double from, double to)
    {
        if (ReferenceEquals(ride, chart))
        {
            return (from, to, 0, 0);
        }

        int count = Math.Max(2, (int)Math.Ceiling((to - from) / Sample) + 1);
        double least = double.PositiveInfinity, most = double.NegativeInfinity, offset = 0, sine = 0, guess = double.NaN;
        for (int i = 0; i < count; i++)
        {
            var station = chart.At(from + ((to - from) * i / (count - 1)));
            var place = double.IsNaN(guess) ? ride.Locate(station.Position) : ride.Locate(station.Position, guess);
            guess = place.Chainage;
            (least, most) = (Math.Min(least, guess), Math.Max(most, guess));
            offset = Math.Max(offset, Math.Abs(place.Offset));
            sine = Math.Max(sine, Math.Abs(Point2.Cross(station.Tangent, ride.At(guess).Tangent)));
        }

        return (least, most, offset, Math.Asin(Math.Min(1, sine)));
    }
}
