using PlatformForge.Track.Surveys.Results;

namespace PlatformForge.Track.Surveys;

/// <summary>One station of a string-lining table; all lengths in one unit.</summary>
/// <param name="Station">Distance of the station along the track, mm.</param>
/// <param name="Measured">Versine as it lies.</param>
/// <param name="Proposed">Versine it is to have.</param>
/// <param name="Error">Measured less proposed.</param>
/// <param name="SumOfErrors">Running sum of the errors.</param>
/// <param name="HalfThrow">Half of the slew: the half throw before plus the sum of errors before.</param>
/// <param name="FullThrow">How far to slew the track, to the right positive where versines are positive to the left: outward of
/// a curve of positive versines, inward of one of negative ones.</param>
public sealed record StringLiningRow(double Station, double Measured, double Proposed, double Error, double SumOfErrors, double HalfThrow, double FullThrow)
{
    // A slew below this rounds to nil, and a versine below it to straight track, mm.
    private const double Nil = 0.005;

    /// <summary>Which way to slew: outward or inward of the proposed curve, to the right or to the left of straight track, empty for nil.</summary>
    public string Way => Math.Abs(FullThrow) < Nil ? ""
        : Math.Abs(Proposed) < Nil ? FullThrow > 0 ? "to the right" : "to the left"
        : FullThrow > 0 == Proposed > 0 ? "outward" : "inward";

    /// <summary>What is to be known of the measured figure, such as that the reading was left out; empty for most.</summary>
    public string Note { get; init; } = "";
}

/// <summary>
/// String lining after Hallade, as the US Army railway track course TR0671, sections IV and V, teaches it. A slew t at a station
/// adds t to its versine and takes t/2 from both neighbours; so the figures close when measured and proposed versines have
/// equal sums and equal first moments.
/// </summary>
/// <param name="Rows">Stations in order.</param>
public sealed record StringLining(IReadOnlyList<StringLiningRow> Rows)
{
    /// <summary>Length of the chord that the versines are told for, mm.</summary>
    public double Chord { get; init; }

    /// <summary>Where the measured figures come from, and which readings are not among them, in sentences.</summary>
    public IReadOnlyList<string> Notes { get; init; } = [];

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
    /// The table of a surveyed track at stations half a chord apart. Versines that were read over this chord are taken as read;
    /// for others, and for other surveys, see <see cref="Notes"/>.
    /// </summary>
    /// <param name="track">The survey.</param>
    /// <param name="chord">Length of the chord, mm, over 0 and at most <see cref="LongestChord"/>.</param>
    public static StringLining Of(SurveyedTrack track, double chord) => SurveyLining.Of(track, chord);

    /// <summary>The longest chord that a table of a track can be made for, mm: half the track, so that there are three stations.</summary>
    public static double LongestChord(SurveyedTrack track) => Math.Floor(track.Line.Length / 2);
}
