namespace PlatformForge.Track.Surveys;

/// <summary>One station of a string-lining table; all lengths in one unit.</summary>
/// <param name="Station">Distance of the station along the track, mm.</param>
/// <param name="Measured">Versine as it lies.</param>
/// <param name="Proposed">Versine it is to have.</param>
/// <param name="Error">Measured less proposed.</param>
/// <param name="SumOfErrors">Running sum of the errors.</param>
/// <param name="HalfThrow">Half of the slew: the half throw before plus the sum of errors before.</param>
/// <param name="FullThrow">How far to slew the track, outward of a curve of positive versines.</param>
public sealed record StringLiningRow(double Station, double Measured, double Proposed, double Error, double SumOfErrors, double HalfThrow, double FullThrow);

/// <summary>
/// String lining after Hallade, as the US Army railway track course TR0671, sections IV and V, teaches it. A slew t at a station
/// adds t to its versine and takes t/2 from both neighbours; so the figures close when measured and proposed versines have
/// equal sums and equal first moments.
/// </summary>
/// <param name="Rows">Stations in order.</param>
public sealed record StringLining(IReadOnlyList<StringLiningRow> Rows)
{
    /// <summary>Sum of the errors left at the last station; nil when the sums agree.</summary>
    public double SumLeft => Rows[^1].SumOfErrors;

    /// <summary>Half throw left at the last station; nil when the first moments agree too.</summary>
    public double HalfThrowLeft => Rows[^1].HalfThrow;

    /// <summary>Largest slew, without its sign.</summary>
    public double LargestThrow => Rows.Max(r => Math.Abs(r.FullThrow));

    /// <summary>The table for measured and proposed versines at even stations.</summary>
    public static StringLining Of(IReadOnlyList<double> stations, IReadOnlyList<double> measured, IReadOnlyList<double> proposed)
    {
        if (stations.Count != measured.Count || measured.Count != proposed.Count || measured.Count == 0)
        {
            throw new ArgumentException("Stations, measured and proposed versines must be as many as one another, and at least one.", nameof(measured));
        }

        var rows = new StringLiningRow[measured.Count];
        double sum = 0, half = 0;
        for (int i = 0; i < rows.Length; i++)
        {
            half += sum;
            double error = measured[i] - proposed[i];
            sum += error;
            rows[i] = new(stations[i], measured[i], proposed[i], error, sum, half, 2 * half);
        }

        return new(rows);
    }

    /// <summary>
    /// Versines to propose: those of a fair line, raised and tilted where it is curved by the least that makes sums and first
    /// moments equal to those measured, so that the slews end at nil.
    /// </summary>
    /// <param name="measured">Measured versines at even stations.</param>
    /// <param name="fair">Versines of the fair line at the same stations.</param>
    /// <param name="straight">Versines up to this are straight track, which is left alone.</param>
    public static double[] Propose(IReadOnlyList<double> measured, IReadOnlyList<double> fair, double straight)
    {
        int[] free = [.. Enumerable.Range(0, fair.Count).Where(i => Math.Abs(fair[i]) > straight)];
        free = free.Length >= 2 ? free : [.. Enumerable.Range(0, fair.Count)];
        double sum = 0, moment = 0, n = free.Length, s1 = 0, s2 = 0;
        for (int i = 0; i < fair.Count; i++)
        {
            sum += measured[i] - fair[i];
            moment += i * (measured[i] - fair[i]);
        }

        foreach (int i in free)
        {
            s1 += i;
            s2 += (double)i * i;
        }

        double determinant = (n * s2) - (s1 * s1), raise = 0, tilt = 0;
        if (determinant > 0)
        {
            (raise, tilt) = (((sum * s2) - (moment * s1)) / determinant, ((moment * n) - (sum * s1)) / determinant);
        }

        return [.. fair.Select((v, i) => Math.Abs(v) > straight || free.Length == fair.Count ? v + raise + (tilt * i) : v)];
    }

    /// <summary>
    /// The table of a surveyed track at stations half a chord apart. Versines that were read are taken as read; for other
    /// surveys they follow from the fitted line and the misses of the readings beside it.
    /// </summary>
    /// <param name="track">The survey.</param>
    /// <param name="chord">Length of the chord, mm; for a survey by versines its own.</param>
    public static StringLining Of(SurveyedTrack track, double chord)
    {
        double half = chord / 2;
        double[] stations = track.Versines.Count > 0
            ? [.. track.Residuals.Select(r => r.Chainage)]
            : [.. Enumerable.Range(1, Math.Max(0, (int)((track.Line.Length - chord) / half) + 1)).Select(i => i * half)];
        if (stations.Length == 0)
        {
            return new([]);
        }

        double[] fair = [.. stations.Select(s => VersineOfLine.Of(track.Line, s, chord))];
        double[] measured = track.Versines.Count > 0
            ? [.. fair.Select((v, i) => v + track.Residuals[i].Miss)]
            : [.. fair.Select((v, i) => v + ((MissAt(track, stations[i] - half) + MissAt(track, stations[i] + half)) / 2) - MissAt(track, stations[i]))];
        return Of(stations, measured, Propose(measured, fair, StraightPart * track.RulerError));
    }

    // A fair versine below this part of the ruler error is straight track.
    private const double StraightPart = 0.1;

    private static double MissAt(SurveyedTrack track, double chainage)
    {
        ReadingResidual? before = null, after = null;
        foreach (var r in track.Residuals)
        {
            if (r.IsOutlier)
            {
                continue;
            }

            before = r.Chainage <= chainage && (before is null || r.Chainage > before.Chainage) ? r : before;
            after = r.Chainage >= chainage && (after is null || r.Chainage < after.Chainage) ? r : after;
        }

        return (before, after) switch
        {
            (null, null) => 0,
            (null, { } a) => a.Miss,
            ({ } b, null) => b.Miss,
            var (b, a) => a.Chainage == b.Chainage ? b.Miss : b.Miss + ((a.Miss - b.Miss) * (chainage - b.Chainage) / (a.Chainage - b.Chainage)),
        };
    }
}
