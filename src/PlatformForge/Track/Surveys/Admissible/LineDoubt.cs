namespace PlatformForge.Track.Surveys.Admissible;

/// <summary>
/// How far the true line may lie from a stated one, as bounds on measures: least and greatest sum of its offsets from the stated line, whose
/// chainages the measures are told in.
/// </summary>
public abstract class LineDoubt
{
    /// <summary>The range of every measure, mm; never too narrow.</summary>
    public abstract LineRange[] Bound(IReadOnlyList<LineMeasure> measures);

    /// <summary>Whichever is the wider of two, for each measure.</summary>
    public static LineDoubt Either(LineDoubt one, LineDoubt other) => new EitherDoubt(one, other);

    private sealed class EitherDoubt(LineDoubt one, LineDoubt other) : LineDoubt
    {
        public override LineRange[] Bound(IReadOnlyList<LineMeasure> measures) =>
            [.. one.Bound(measures).Zip(other.Bound(measures), (a, b) => new LineRange(Math.Min(a.Least, b.Least), Math.Max(a.Most, b.Most)))];
    }
}

/// <summary>A line that may lie off by so much to either side at each chainage, each place by itself.</summary>
/// <param name="band">Greatest offset at a chainage, mm.</param>
public sealed class BandDoubt(Func<double, double> band) : LineDoubt
{
    /// <inheritdoc/>
    public override LineRange[] Bound(IReadOnlyList<LineMeasure> measures) => [.. measures.Select(Range)];

    private LineRange Range(LineMeasure measure)
    {
        double most = measure.At.Zip(measure.Weights, (s, w) => Math.Abs(w) * band(s)).Sum();
        return new(-most, most);
    }
}

/// <summary>A line that is one of a set of admissible ones.</summary>
public sealed class AdmissibleDoubt : LineDoubt
{
    // Distance between places, mm, at which the middle line is held against the stated one: between them both bend by less than some ten-thousandths.
    private const double Spacing = 2;

    private readonly AdmissibleLines lines;
    private readonly double[] chainages, offsets;

    /// <param name="lines">The set; not empty.</param>
    /// <param name="stated">The line that measures are told along.</param>
    public AdmissibleDoubt(AdmissibleLines lines, Centreline stated)
    {
        this.lines = lines;
        int count = (int)Math.Ceiling(stated.Length / Spacing) + 1;
        (chainages, offsets) = (new double[count], new double[count]);
        double guess = lines.Middle.Locate(stated.At(0).Position).Chainage;
        for (int i = 0; i < count; i++)
        {
            var place = lines.Middle.Locate(stated.At(i * Spacing).Position, guess);
            (chainages[i], offsets[i]) = (place.Chainage, -place.Offset);
            guess = place.Chainage + Spacing;
        }
    }

    /// <inheritdoc/>
    public override LineRange[] Bound(IReadOnlyList<LineMeasure> measures)
    {
        LineMeasure[] moved = [.. measures.Select(m => new LineMeasure([.. m.At.Select(s => At(chainages, s, 1))], m.Weights))];
        var ranges = lines.Bound(moved);
        for (int i = 0; i < ranges.Length; i++)
        {
            double own = measures[i].At.Zip(measures[i].Weights, (s, w) => w * At(offsets, s, 0)).Sum();
            ranges[i] = new(ranges[i].Least + own, ranges[i].Most + own);
        }

        return ranges;
    }

    /// <summary>A measure in the chainage of the set's middle line.</summary>
    internal LineMeasure OnMiddle(LineMeasure measure) => new([.. measure.At.Select(s => At(chainages, s, 1))], measure.Weights);

    // Beyond the ends the figures go on at a slope.
    private static double At(double[] figures, double s, double slope)
    {
        double place = Math.Clamp(s / Spacing, 0, figures.Length - 1);
        int i = Math.Min((int)place, figures.Length - 2);
        return figures[i] + ((place - i) * (figures[i + 1] - figures[i])) + (slope * (s - (place * Spacing)));
    }
}
