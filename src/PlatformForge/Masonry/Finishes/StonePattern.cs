namespace PlatformForge.Masonry.Finishes;

/// <summary>
/// Lays squared stones in courses on a wall laid flat. At corners and stops a long stone and a short one in turn; between them lengths are drawn by the
/// seed, and
/// no perpend comes nearer than the lap to one of the course above.
/// </summary>
internal sealed class StonePattern : CoursedPattern
{
    // Heights of courses as shares of the mean one.
    private static readonly double[] Shares = [1, StoneworkSpec.LeastCourse, 1.25, 1];

    // Stones at corners and stops, as shares of the mean length.
    private const double LongQuoin = 1.3, ShortQuoin = 0.75;

    private readonly StoneworkSpec spec;
    private readonly List<double>[] above, present;
    private readonly IReadOnlyList<double> whole;

    public StonePattern(StoneworkSpec spec, FlatWall wall)
        : base(spec.Laying, wall)
    {
        this.spec = spec;
        above = [.. Runs.Select(_ => new List<double>())];
        present = [.. Runs.Select(_ => new List<double>())];
        whole = Heights(spec.Course, spec.Seed, spec.Laying.Room);
    }

    public override double GreatestDraw => 0;

    protected override double LeastCut => StoneworkSpec.LeastStone / 2 * spec.Length;

    protected override IEnumerable<WallRow> Rows(double highest, double lowest)
    {
        Array.ForEach(present, p => p.Clear());
        Array.ForEach(above, a => a.Clear());

        // Every section counts from the same datum, so its courses meet its neighbours'.
        double high = spec.Laying.Datum;
        int course = 0;
        while (high < highest)
        {
            high += Height(--course);
        }

        for (; high > lowest; course++)
        {
            double height = Height(course);
            yield return new(course, high - (height - spec.Laying.Joint), high, spec.Laying.Depth, true);
            high -= height;
        }
    }

    protected override void Fill(in WallRow row, in RunRoom run, List<(double From, double To)> spans)
    {
        var (breaks, over) = (present[run.Index], above[run.Index]);
        (above[run.Index], present[run.Index]) = (breaks, over);
        over.Clear();
        over.AddRange(Breaks(row.Course, run, breaks));
        double half = spec.Laying.Joint / 2;
        for (int i = 0; i + 1 < over.Count; i++)
        {
            spans.Add((over[i] + half, over[i + 1] - half));
        }
    }

    private double Height(int course) => course >= 0 && course < whole.Count ? whole[course] : Drawn(spec.Course, spec.Seed, course);

    /// <summary>Heights of the courses with their beds that fill a wall, from the coping down, mm.</summary>
    /// <param name="mean">Of the mean course.</param>
    /// <param name="seed">Which of all walls it is.</param>
    /// <param name="room">What they fill.</param>
    public static IReadOnlyList<double> Heights(double mean, int seed, double room) =>
        Coursing.Varied(course => Drawn(mean, seed, course), StoneworkSpec.LeastCourse * mean, room);

    private static double Drawn(double mean, int seed, int course) => mean * Shares[(int)(Shares.Length * SeededDraw.At(seed, course, -1))];

    /// <summary>Middles of the joints of a course, the run's ends among them.</summary>
    private List<double> Breaks(int course, RunRoom run, List<double> above)
    {
        bool isLong = (course % 2 == 0) != run.Run.IsReturn;
        double quoin = (isLong ? LongQuoin : ShortQuoin) * spec.Length, other = (isLong ? ShortQuoin : LongQuoin) * spec.Length;
        if (run.Length < 2 * (LongQuoin + StoneworkSpec.LeastStone) * spec.Length)
        {
            return Short(run, isLong);
        }

        double from = run.From + quoin, to = run.To - quoin;
        double[] keepOff = [.. above.Skip(1).SkipLast(1), run.From + other, run.To - other];
        var breaks = new List<double> { run.From, from };
        double least = StoneworkSpec.LeastStone * spec.Length, longest = StoneworkSpec.LongestStone * spec.Length;
        for (int i = 0; to - breaks[^1] > longest; i++)
        {
            double low = breaks[^1] + least, high = Math.Min(breaks[^1] + longest, to - least);
            double share = SeededDraw.At(spec.Seed, course, i, 1 + run.Index);
            breaks.Add(Off(keepOff, low + ((high - low) * share), low, high));
        }

        breaks.AddRange([to, run.To]);
        return breaks;
    }

    // A run too short for stones between its two ends: one stone or two, or a few of even length that lap by half.
    private List<double> Short(RunRoom run, bool isLong)
    {
        int stones = Math.Max(1, (int)Math.Round(run.Length / spec.Length));
        double even = run.Length / stones;
        var inner = isLong || stones == 1 ? Enumerable.Range(1, stones - 1).Select(i => run.From + (i * even))
            : Enumerable.Range(0, stones).Select(i => run.From + ((i + 0.5) * even));
        return [run.From, .. inner, run.To];
    }

    /// <summary>The place nearest to one wished for that keeps the lap from all others.</summary>
    private double Off(double[] others, double wish, double low, double high)
    {
        double lap = StoneworkSpec.Lap * spec.Length;
        bool Free(double x) => x >= low && x <= high && Array.TrueForAll(others, o => Math.Abs(o - x) >= lap - Units.Tolerances.Rounding);
        return Free(wish) ? wish : others.SelectMany(o => new[] { o - lap, o + lap }).Append(low).Append(high).Where(Free).OrderBy(x => Math.Abs(x - wish))
            .FirstOrDefault(wish);
    }
}
