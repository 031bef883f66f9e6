using PlatformForge.Track.Surveys.Readings;

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

    // The same middle and stated line with another set about it.
    private AdmissibleDoubt(AdmissibleLines lines, double[] chainages, double[] offsets) =>
        (this.lines, this.chainages, this.offsets) = (lines, chainages, offsets);

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
    /// What would make a figure smaller: a reading to take again, and the place midway between two readings where one more, as good as the others, takes most
    /// off it. Either is taken to say what the stated line says, and what it leaves is the same figure over the set with it. Where readings near the measure
    /// were left out, the one of those that would take most off is the one to take again, not a neighbour that has to stand in for it.
    /// </summary>
    /// <param name="measure">The measure that the figure hangs on most; places are looked for by it.</param>
    /// <param name="leftOut">Readings that were left out of the set.</param>
    /// <param name="figure">The figure over a set, mm.</param>
    /// <param name="present">What it is over this one, mm.</param>
    /// <returns>Null where nothing would make it smaller.</returns>
    public ReadingAdvice? Advise(LineMeasure measure, IEnumerable<ReadingResidual> leftOut, Func<LineDoubt, double> figure, double present)
    {
        var own = OnMiddle(measure);
        double reach = own.At.Max() - own.At.Min() + lines.Laying.Ease, middle = (own.At.Max() + own.At.Min()) / 2;
        bool IsNear(double s) => Math.Abs(s - middle) < reach;
        double[] read = [.. lines.Bands.Select(b => lines.Middle.Locate(b.Reading.Place).Chainage).Order()];
        double[] between = [.. read.Zip(read.Skip(1), (a, b) => (a + b) / 2).Where(IsNear)];
        int every = Math.Max(1, between.Length / MostTried);
        ReadingResidual[] left = [.. leftOut.Where(r => IsNear(At(chainages, r.Chainage, 1)))];
        var again = left.Length > 0
            ? left.Select(r => (Reading: (Reading?)r.Reading, At: r.Chainage, With: With(r.Chainage)))
            : lines.Holding(own).Take(MostWeighed)
            .Select(h => (Reading: (Reading?)h.Band.Reading, At: Stated(h.Band), With: With(Stated(h.Band), h.Band.Reading)));
        var more = between.Where((_, i) => i % every == 0).Select(s => Stated(s)).Select(s => (Reading: (Reading?)null, At: s, With: With(s)));
        var (repeat, _, repeatLeaves) = Best(again, measure, figure, present);
        var (_, moreAt, moreLeaves) = Best(more, measure, figure, present);
        return repeatLeaves is null && moreLeaves is null ? null : new(repeat, repeatLeaves, repeat is not null && left.Length > 0, moreAt, moreLeaves);
    }

    // The figure is asked of the sets that bound the measure best; one that it is not seen to be smaller over helps nobody.
    private static (Reading? Reading, double? At, double? Leaves) Best(IEnumerable<(Reading? Reading, double At, AdmissibleDoubt? With)> tries,
        LineMeasure measure, Func<LineDoubt, double> figure, double present)
    {
        var best = tries.Where(t => t.With is not null).Select(t => (t.Reading, t.At, With: t.With!, Most: t.With!.Bound([measure])[0].Most))
            .OrderBy(t => t.Most).Take(MostWeighed)
            .Select(t => (t.Reading, t.At, Leaves: figure(t.With))).Where(t => t.Leaves < present - Seen).ToArray();
        return best.Length == 0 ? (null, null, null) : best.MinBy(t => t.Leaves);
    }

    /// <summary>The doubt with one more reading, as good as the best of the others, that says what the stated line says; null where no line of the set would
    /// meet it.</summary>
    /// <param name="chainage">Where it is taken on the stated line, mm.</param>
    /// <param name="instead">A reading that it stands in place of; null for none.</param>
    internal AdmissibleDoubt? With(double chainage, PlaceReading? instead = null)
    {
        double at = At(chainages, chainage, 1), offset = -At(offsets, chainage, 0), error = lines.Bands.Min(b => b.Error);
        var range = lines.Bound([LineMeasure.Offset(at)])[0];
        bool meets = offset - error < range.Most - AdmissibleLines.Closeness && offset + error > range.Least + AdmissibleLines.Closeness;
        return meets ? new(lines.With(at, offset, error, instead), chainages, offsets) : null;
    }

    // Where a reading, or a chainage of the middle line, is on the stated one, mm.
    private double Stated(ReadingBand band) => Stated(lines.Middle.Locate(band.Reading.Place).Chainage);

    private double Stated(double onMiddle) => chainages.Select((c, i) => (Off: Math.Abs(c - onMiddle), At: i * Spacing)).MinBy(p => p.Off).At;

    // Where readings lie closer than a hand can put another, every so many of the places between them are tried, and of those the figure is asked of so many.
    private const int MostTried = 50, MostWeighed = 3;

    // A smaller change is not seen in hundredths, mm.
    private const double Seen = 0.01;

    private LineMeasure OnMiddle(LineMeasure measure) => new([.. measure.At.Select(s => At(chainages, s, 1))], measure.Weights);

    // Beyond the ends the figures go on at a slope.
    private static double At(double[] figures, double s, double slope)
    {
        double place = Math.Clamp(s / Spacing, 0, figures.Length - 1);
        int i = Math.Min((int)place, figures.Length - 2);
        return figures[i] + ((place - i) * (figures[i + 1] - figures[i])) + (slope * (s - (place * Spacing)));
    }
}
