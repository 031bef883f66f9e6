using System.Collections.Concurrent;
using PlatformForge.Geometry;
using PlatformForge.Track.Surveys.Readings;

namespace PlatformForge.Track.Surveys.Admissible;

/// <summary>
/// All lines that meet every reading within its error and are laid as the user says. Told about the middle line of the set, which depends
/// on readings and laying alone: the lines of the set lie so near to it that what is asked of them is linear in their offsets from it.
/// </summary>
public sealed class AdmissibleLines
{
    /// <summary>Bounds are this near to those of programs solved to the end, mm (measured: −0.0039 to +0.0052, and once 0.006 between a bound asked alone and
    /// the same carried from a neighbour; docs/decisions/0074-bounds-carried-to-neighbours.md).</summary>
    public const double Closeness = 0.006;

    /// <summary>A reading more, or a smaller ruler error, widens no bound by more than this, mm: sets nest, and bounds are proven from nodes that lie so far
    /// apart that one lies higher above its
    /// set's true one than another by so much at most (0.013 of 300 surveys; docs/decisions/0075-what-another-reading-would-do.md).</summary>
    public const double Nesting = 0.015;

    // Nodes are so many to the length over which a curve comes and goes; the line goes on for such a length beyond the first and last
    // reading.
    private const double NodesInEase = 12;
    private const int MostRounds = 60, EnoughRounds = 6;

    // A line is moved by no more than this part of an ease at once: farther away, offsets no longer add up.
    private const double MostMove = 0.2;

    // The middle is found when it moves by less than this, mm.
    private const double Settled = 1e-4;

    // Where readings lie close, which of them tell changes with the place they are looked at from, and the middle may sway by less than
    // the first of these, mm, between the ends for ever, and the ends, which nothing but bend and rate hold, by less than the second: bounds
    // about either place are the same.
    private const double Swaying = 0.02, EndsSwaying = 2;

    // Where no line meets all readings, the one that comes nearest need be found no nearer than this, mm; before that, readings
    // contradict the place it is looked for from, not one another.
    private const double NearEnough = 0.5;

    // Readings this part of an ease apart make the line through them that the middle is looked for from where the stated one leads nowhere.
    private const double Thinned = 0.25;

    // Measures are worked together over stretches of this many eases, with line on either side over so many readings and no less and no
    // more than so many eases: readings farther away move no bound there by 0.002 mm, so that a survey with closer readings, whose stretches
    // end sooner, is bounded no more loosely than one with fewer.
    private const double StretchInEases = 1, MarginInReadings = 7, LeastMargin = 1.2, MostMargin = 2.4;

    private readonly double[] reference;
    private readonly BandPlace[] places;
    private readonly SplineGrid grid;
    private readonly ConcurrentDictionary<(int, int), Stretch> stretches = new();

    private AdmissibleLines(Laying laying, IReadOnlyList<ReadingBand> bands, Centreline middle, double[] reference, BandPlace[] places, SplineGrid grid,
        double leastShare, int[] atOdds)
    {
        (Laying, Bands, Middle, this.reference, this.places, this.grid, LeastShare) = (laying, bands, middle, reference, places, grid, leastShare);
        Margin = MarginOf(places);
        AtOdds = [.. atOdds.Select(i => bands[places[i].Band])];
    }

    // Line on either side of a stretch, in cells.
    private int Margin { get; init; }

    /// <summary>How the track was laid.</summary>
    public Laying Laying { get; }

    /// <summary>The readings that the lines meet.</summary>
    public IReadOnlyList<ReadingBand> Bands { get; }

    /// <summary>The middle line; its chainage 0 lies an ease before the first reading. Where there is no line in the set, the one that
    /// comes nearest.</summary>
    public Centreline Middle { get; }

    /// <summary>A share of all errors that some line of this laying meets all readings within, the least where <see cref="IsEmpty"/>.</summary>
    public double LeastShare { get; }

    /// <summary>Whether no line of this laying meets every reading within its error.</summary>
    public bool IsEmpty => AtOdds.Count > 0;

    /// <summary>The readings that contradict one another; empty where there is a line that meets all.</summary>
    public IReadOnlyList<ReadingBand> AtOdds { get; }

    /// <summary>Finds the set.</summary>
    /// <param name="laying">How the track was laid.</param>
    /// <param name="bands">The readings; at least three.</param>
    /// <param name="start">A line near them; any that the readings can be located on. The set does not depend on it.</param>
    public static AdmissibleLines Of(Laying laying, IReadOnlyList<ReadingBand> bands, Centreline start)
    {
        var set = Counting(laying, bands, start);
        if (set.IsSettled && !set.IsEmpty)
        {
            return set;
        }

        var other = Counting(laying, bands, Through(laying, bands, start));
        return (other.IsSettled, -other.LeastShare).CompareTo((set.IsSettled, -set.LeastShare)) > 0 ? other : set;
    }

    /// <summary>Whether the middle was found: the figures stand.</summary>
    internal bool IsSettled { get; private init; }

    // Whether it sways for ever by less than matters; then nodes are no better counted a third time.
    private bool Sways { get; init; }

    // Nodes are counted from the first reading on the middle line itself.
    private static AdmissibleLines Counting(Laying laying, IReadOnlyList<ReadingBand> bands, Centreline start)
    {
        var set = About(laying, bands, start);
        for (int again = 0; again < (set.Sways ? 1 : MostAgain) && !set.IsEmpty && !set.IsCounted; again++)
        {
            set = About(laying, bands, set.Middle);
        }

        return set;
    }

    // Straight from reading to reading, in the order in which they lie along a line.
    private static Centreline Through(Laying laying, IReadOnlyList<ReadingBand> bands, Centreline start)
    {
        var along = bands.Select(b => b.Reading.Place).OrderBy(p => start.Locate(p).Chainage).ToArray();
        var kept = new List<Point2> { along[0] };
        foreach (var place in along)
        {
            if ((place - kept[^1]).Length > Thinned * laying.Ease)
            {
                kept.Add(place);
            }
        }

        return kept.Count < 2 ? start
            : new(start.Name, [.. kept.Zip(kept.Skip(1), (a, b) => new CentrelineElement(a, Math.Atan2(b.Y - a.Y, b.X - a.X), (b - a).Length, 0, 0))]);
    }

    // How often nodes are counted anew, and how far from where they belong, mm, they may begin.
    private const int MostAgain = 4;
    private const double Counted = 1e-3;

    private bool IsCounted =>
        Math.Abs(places[0].Chainage - Laying.Ease) < Counted && Math.Abs(Cells(places[^1].Chainage + Laying.Ease, grid.Step) - grid.Cells) <= 0;

    private static int Cells(double length, double step) => (int)Math.Ceiling((length / step) - Counted);

    private static AdmissibleLines About(Laying laying, IReadOnlyList<ReadingBand> bands, Centreline start)
    {
        double pad = laying.Ease, step = laying.Ease / NodesInEase;
        double[] along = [.. bands.Select(b => start.Locate(b.Reading.Place).Chainage)];
        double first = along.Min() - pad;
        int cells = Cells(along.Max() + pad - first, step);
        var nodes = new SplineGrid(0, step, cells);
        double[] bends = ReferenceBends.Of(start, first, nodes, BandRows.Bend(laying), BandRows.Rate(laying));
        double[] guesses = [.. along.Select(s => s - first)];
        var at = start.At(first);
        var (point, heading) = (at.Position, Math.Atan2(at.Tangent.Y, at.Tangent.X));
        AdmissibleLines? last = null;
        for (int round = 0; ; round++)
        {
            var line = ReferenceBends.Lay(start.Name, point, heading, bends, nodes);
            var read = Locate(bands, line, guesses);
            var rows = BandRows.Of(laying, bends, nodes, 0, cells, read);
            if (last is not null && !rows.HoldsReadings)
            {
                // The search has run away from the readings: no middle was found, and nothing is said of what is at odds.
                return last;
            }

            var found = MiddleLine.Of(rows);
            last = new(laying, bands, line, [.. bends], read, nodes, found.LeastShare, []);
            double moved = Move(found.Figures, nodes, bends, ref point, ref heading);
            ReferenceBends.KeepInside(bends, step, BandRows.Bend(laying), BandRows.Rate(laying));

            bool sways = round >= EnoughRounds && (found.AtOdds.Length > 0
                ? Sway(found.Figures, nodes, read) < NearEnough
                : moved < EndsSwaying && Sway(found.Figures, nodes, read) < Swaying);
            bool settled = moved < Settled || sways;
            if (settled || round == MostRounds)
            {
                return new(laying, bands, line, bends, read, nodes, found.LeastShare, found.AtOdds) { IsSettled = settled, Sways = sways && moved >= Settled };
            }
        }
    }

    // How far the line goes between the first and the last reading. Beyond them, where nothing but bend and rate hold it, the end sways by
    // many times what the last readings do, and nothing is asked of it.
    private static double Sway(double[] figures, SplineGrid nodes, BandPlace[] read)
    {
        double most = 0;
        for (int j = nodes.CellAt(read[0].Chainage); j <= nodes.CellAt(read[^1].Chainage); j++)
        {
            most = Math.Max(most, Math.Abs((figures[j] + (4 * figures[j + 1]) + figures[j + 2]) / 6));
        }

        return most;
    }

    /// <summary>Least and greatest value of every measure; chainages are those of <see cref="Middle"/>.</summary>
    public LineRange[] Bound(IReadOnlyList<LineMeasure> measures)
    {
        if (measures.Count == 0)
        {
            return [];
        }

        var ranges = new LineRange[measures.Count];
        var groups = Enumerable.Range(0, measures.Count).GroupBy(i => StretchOf(measures[i])).ToArray();
        Parallel.ForEach(groups, g => new StretchBounds(stretches.GetOrAdd(g.Key, MakeStretch)).Solve(measures, [.. g], ranges));
        return ranges;
    }

    /// <summary>Readings with the share of one more millimetre's error that the greatest value of a measure would move by, largest
    /// first.</summary>
    public IReadOnlyList<(ReadingBand Band, double Share)> Holding(in LineMeasure measure)
    {
        var stretch = stretches.GetOrAdd(StretchOf(measure), MakeStretch);
        return [.. new StretchBounds(stretch).Holding(measure).Select(h => (Bands[places[h.Row].Band], h.Share)).OrderByDescending(h => h.Item2)];
    }

    /// <summary>The lines of the set that meet one more reading too, told about the same middle line; some have to.</summary>
    /// <param name="chainage">Where the reading is taken, along <see cref="Middle"/>, mm.</param>
    /// <param name="offset">Offset from there of the centre that it tells, mm, left positive.</param>
    /// <param name="error">The most by which it is off, mm.</param>
    /// <param name="instead">A reading that it stands in place of; null for none.</param>
    internal AdmissibleLines With(double chainage, double offset, double error, PlaceReading? instead)
    {
        BandPlace[] read = [.. places.Where(p => instead is null || !ReferenceEquals(Bands[p.Band].Reading, instead))
            .Append(new BandPlace(chainage, offset, error, -1)).OrderBy(p => p.Chainage)];
        return new(Laying, Bands, Middle, reference, read, grid, LeastShare, []) { Margin = Margin, IsSettled = IsSettled };
    }

    private static BandPlace[] Locate(IReadOnlyList<ReadingBand> bands, Centreline line, double[] guesses)
    {
        var found = new BandPlace[bands.Count];
        for (int i = 0; i < found.Length; i++)
        {
            var place = line.Locate(bands[i].Reading.Place, guesses[i]);
            guesses[i] = place.Chainage;
            found[i] = new(place.Chainage, place.Offset - bands[i].Reading.FromCentre, bands[i].Error, i);
        }

        Array.Sort(found, (a, b) => a.Chainage.CompareTo(b.Chainage));
        return found;
    }

    // Puts the reference where the figures say, or on the way there; the greatest offset among them back.
    private static double Move(double[] figures, SplineGrid nodes, double[] bends, ref Point2 point, ref double heading)
    {
        double most = figures.Max(Math.Abs), part = Math.Min(1, MostMove * NodesInEase * nodes.Step / most), unit = part / (nodes.Step * nodes.Step);
        for (int j = 0; j < bends.Length; j++)
        {
            bends[j] += unit * (figures[j] - (2 * figures[j + 1]) + figures[j + 2]);
        }

        double offset = (figures[0] + (4 * figures[1]) + figures[2]) / 6, slope = (figures[2] - figures[0]) / (2 * nodes.Step);
        point += Point2.FromAngle(heading).Left * (part * offset);
        heading += Math.Atan(part * slope);
        return most;
    }

    private (int From, int To) StretchOf(in LineMeasure measure)
    {
        double unit = StretchInEases * Laying.Ease;
        int First(double s) => (int)Math.Floor(Math.Clamp(s, 0, grid.To) / unit);
        return (First(measure.At.Min()), First(measure.At.Max()));
    }

    // That of readings so far apart.
    private int MarginOf(BandPlace[] read)
    {
        double widest = read.Zip(read.Skip(1), (a, b) => b.Chainage - a.Chainage).DefaultIfEmpty(double.PositiveInfinity).Max();
        return (int)Math.Ceiling(NodesInEase * Math.Clamp(MarginInReadings * widest / Laying.Ease, LeastMargin, MostMargin));
    }

    private Stretch MakeStretch((int From, int To) key)
    {
        int cells = (int)Math.Round(StretchInEases * NodesInEase);
        int first = Math.Max(0, (key.From * cells) - Margin), last = Math.Min(grid.Cells, ((key.To + 1) * cells) + Margin);
        return new(BandRows.Of(Laying, reference, grid, first, last - first, places));
    }
}
