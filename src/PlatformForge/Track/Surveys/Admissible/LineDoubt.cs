namespace PlatformForge.Track.Surveys.Admissible;

/// <summary>
/// How far the true line may lie from a stated one, as bounds on measures: least and greatest sum of its offsets from the stated line,
/// whose
/// chainages the measures are told in.
/// </summary>
public abstract class LineDoubt
{
    /// <summary>The range of every measure, mm; never too narrow.</summary>
    public abstract LineRange[] Bound(IReadOnlyList<LineMeasure> measures);

    /// <summary>How far, in mm, the value of a measure may lie from the mean of those half a step before and after it, along the track,
    /// over all lines; the most of all measures.</summary>
    public abstract double Bow(IReadOnlyList<LineMeasure> measures, double step);

    /// <summary>Whichever is the wider of two, for each measure.</summary>
    public static LineDoubt Either(LineDoubt one, LineDoubt other) => new EitherDoubt(one, other);

    private sealed class EitherDoubt(LineDoubt one, LineDoubt other) : LineDoubt
    {
        public override LineRange[] Bound(IReadOnlyList<LineMeasure> measures) =>
            [.. one.Bound(measures).Zip(other.Bound(measures), (a, b) => new LineRange(Math.Min(a.Least, b.Least), Math.Max(a.Most, b.Most)))];

        public override double Bow(IReadOnlyList<LineMeasure> measures, double step) => Math.Max(one.Bow(measures, step), other.Bow(measures, step));
    }
}

/// <summary>A line that may lie off by so much to either side at each chainage, each place by itself.</summary>
/// <param name="band">Greatest offset at a chainage, mm.</param>
public sealed class BandDoubt(Func<double, double> band) : LineDoubt
{
    /// <inheritdoc/>
    public override LineRange[] Bound(IReadOnlyList<LineMeasure> measures) => [.. measures.Select(Range)];

    /// <inheritdoc/>
    /// <remarks>The band says nothing of how a line runs between two places; it holds at either and between them.</remarks>
    public override double Bow(IReadOnlyList<LineMeasure> measures, double step) => 0;

    private LineRange Range(LineMeasure measure)
    {
        double most = measure.At.Zip(measure.Weights, (s, w) => Math.Abs(w) * band(s)).Sum();
        return new(-most, most);
    }
}

/// <summary>A line that is one of a set of admissible ones.</summary>
public sealed class AdmissibleDoubt : LineDoubt
{
    // Distance between places, mm, at which the middle line is held against the stated one: between them both bend by less than some
    // ten-thousandths.
    private const double Spacing = 2;

    private readonly AdmissibleLines lines;
    private readonly double[] chainages, offsets;

    // How far the offset at every so many steps may bow over one step.
    private readonly Dictionary<(int Cell, double Step), double> bows = [];

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
        LineMeasure[] moved = [.. measures.Select(OnMiddle)];
        var ranges = lines.Bound(moved);
        for (int i = 0; i < ranges.Length; i++)
        {
            double own = measures[i].At.Zip(measures[i].Weights, (s, w) => w * At(offsets, s, 0)).Sum();
            ranges[i] = new(ranges[i].Least + own, ranges[i].Most + own);
        }

        return ranges;
    }

    /// <inheritdoc/>
    /// <remarks>A measure bows by no more than its offsets do, each times its weight; those are bounded once for all that stands on the
    /// line.</remarks>
    public override double Bow(IReadOnlyList<LineMeasure> measures, double step)
    {
        int[] cells = [.. measures.SelectMany(m => m.At).SelectMany(s => (int[])[(int)Math.Floor(s / step), (int)Math.Floor(s / step) + 1]).Distinct()];
        lock (bows)
        {
            (int Cell, LineMeasure Bow)[] missing = [.. cells.Where(c => !bows.ContainsKey((c, step)))
                .Select(c => (c, new LineMeasure([(c - 0.5) * step, c * step, (c + 0.5) * step], [-0.5, 1, -0.5])))];
            foreach (var (own, range) in missing.Zip(Bound([.. missing.Select(m => m.Bow)])))
            {
                bows[(own.Cell, step)] = Math.Max(Math.Abs(range.Least), Math.Abs(range.Most));
            }

            double At(double s) => Math.Max(bows[((int)Math.Floor(s / step), step)], bows[((int)Math.Floor(s / step) + 1, step)]);
            return measures.Select(m => m.At.Zip(m.Weights, (s, w) => Math.Abs(w) * At(s)).Sum()).DefaultIfEmpty(0).Max();
        }
    }

    /// <summary>
    /// What would make the greatest value of a measure smaller: the reading that holds it most, and the place midway between two
    /// readings where one more, as good as they are
    /// and as the middle line says, takes most off it. Where readings near the measure were left out, it is the one of those that would take most off,
    /// not a neighbour that has to stand in for it.
    /// </summary>
    /// <param name="measure">The measure.</param>
    /// <param name="leftOut">Readings that were left out of the set.</param>
    public ReadingAdvice Advise(LineMeasure measure, IEnumerable<ReadingResidual> leftOut)
    {
        var own = OnMiddle(measure);
        var holding = lines.Holding(own);
        double error = lines.Bands.Min(b => b.Error), rest = lines.Bound([own])[0].Most;
        double[] read = [.. lines.Bands.Select(b => lines.Middle.Locate(b.Reading.Place).Chainage).Order()];
        double reach = own.At.Max() - own.At.Min() + lines.Laying.LeastEase, middle = (own.At.Max() + own.At.Min()) / 2;
        double[] between = [.. read.Zip(read.Skip(1), (a, b) => (a + b) / 2).Where(s => Math.Abs(s - middle) < reach)];
        int every = Math.Max(1, between.Length / MostTried);
        var best = between.Where((_, i) => i % every == 0)
            .Select(s => (At: s, Leaves: lines.MostWithOneMore(own, s, error)))
            .DefaultIfEmpty((At: middle, Leaves: rest)).MinBy(c => c.Leaves);
        double stated = chainages.Select((c, i) => (Off: Math.Abs(c - best.At), At: i * Spacing)).MinBy(p => p.Off).At;
        double moved = measure.At.Zip(measure.Weights, (s, w) => w * At(offsets, s, 0)).Sum();
        var again = leftOut.Select(r => (r.Reading, At: At(chainages, r.Chainage, 1))).Where(r => Math.Abs(r.At - middle) < reach)
            .Select(r => (r.Reading, Leaves: lines.MostWithOneMore(own, r.At, error))).DefaultIfEmpty().MinBy(r => r.Leaves);
        if (again.Reading is { } misread)
        {
            return new(misread, 0, stated, best.Leaves + moved) { RepeatLeaves = again.Leaves + moved };
        }

        return new(holding.Count == 0 ? null : holding[0].Band.Reading, holding.Count == 0 ? 0 : Tenth * holding[0].Share, stated, best.Leaves + moved);
    }

    private const double Tenth = 0.1;

    // Where readings lie closer than a hand can put another, every so many of the places between them are tried.
    private const int MostTried = 50;

    private LineMeasure OnMiddle(LineMeasure measure) => new([.. measure.At.Select(s => At(chainages, s, 1))], measure.Weights);

    // Beyond the ends the figures go on at a slope.
    private static double At(double[] figures, double s, double slope)
    {
        double place = Math.Clamp(s / Spacing, 0, figures.Length - 1);
        int i = Math.Min((int)place, figures.Length - 2);
        return figures[i] + ((place - i) * (figures[i + 1] - figures[i])) + (slope * (s - (place * Spacing)));
    }
}
