namespace PlatformForge.Masonry.Finishes;

/// <summary>Lays bricks on a wall laid flat.</summary>
internal sealed class BrickPattern : CoursedPattern
{
    private readonly BrickworkSpec spec;
    private readonly (int Halves, double Quarter)[] settings;
    private readonly int[]?[,] courses;
    private readonly int period;

    public BrickPattern(BrickworkSpec spec, FlatWall wall)
        : base(spec.Laying, wall)
    {
        this.spec = spec;
        settings = [.. Runs.Select(Set)];
        period = spec.Bond == Bond.EnglishGardenWall ? 2 * (spec.StretcherCourses + 1) : 2;
        courses = new int[]?[Runs.Count, period];
    }

    public override double GreatestDraw => settings.Where(r => r.Halves > 1).Select(r => (2 * r.Quarter / spec.Module.Header) - 1).DefaultIfEmpty(0).Max();

    protected override IEnumerable<WallRow> Rows(double highest, double lowest) => Even(spec.Module.Course, highest, lowest);

    // The back of an arch cuts bricks to a closer's length at least.
    protected override double LeastCut => spec.Perpends
        ? Math.Max(Laying.LeastPiece, (spec.Module.Header / 2) - Laying.Joint - OpeningCut.Ledge - (2 * CourseCut.OffBends)) : Laying.LeastPiece;

    protected override bool IsBand(in WallRow row) => !spec.Perpends;

    protected override void Fill(in WallRow row, in RunRoom run, List<(double From, double To)> spans)
    {
        var (halves, quarter) = settings[run.Index];
        if (halves == 0)
        {
            return;
        }

        double half = spec.Laying.Joint / 2;
        int at = 0;
        foreach (int brick in Course(row.Course, run, halves))
        {
            double from = run.From + (at * quarter) + half;
            spans.Add((from, run.From + ((at += brick) * quarter) - half));
        }
    }

    // Sides lie where quarters of bricks end, those of wide openings where halves do: a closer, half a brick or a whole one stands beside each.
    protected override (double Left, double Right) Sides(in RunRoom run, double left, double right)
    {
        var (halves, quarter) = settings[run.Index];
        if (halves < 2)
        {
            return (left, right);
        }

        // As many quarters wide as come nearest to what is asked for by bricks as they are undrawn: alike in all runs and wherever in a run it lies.
        double half = (spec.Laying.Joint / 2) - OpeningCut.Ledge, from = run.From, stated = spec.Module.Header / 2;
        int step = right - left >= 4 * stated ? 2 : 1, wide = Math.Max(step, step * (int)Math.Round((right - left - (2 * half)) / stated / step));
        int first = step * (int)Math.Round((((left + right) / 2) - from - (wide * quarter / 2)) / quarter / step);
        return (from + (first * quarter) - half, from + ((first + wide) * quarter) + half);
    }

    // A bond's courses come round again: each is found once a run.
    private int[] Course(int course, in RunRoom run, int halves) => !spec.Perpends || halves == 1 ? [2 * halves]
        : courses[run.Index, ((course % period) + period) % period]
            ??= [.. BondCourses.Of(spec.Bond, spec.StretcherCourses, halves, course, run.Run.IsReturn)];

    // What a strip beside a cut may be of a closer: an island's cuts lie off the square of its walls, and take up a little of the closer's room.
    private const double LeastStrip = 0.85;

    private (int Halves, double Quarter) Set(RunRoom run)
    {
        int halves = BondCourses.Halves(spec.Bond, run.Length - Farther(run.Run), spec.Module.Header);

        // The side of a pier takes what turns its corner, however short it is; a strip between a pier or a downpipe and a cut a closer.
        bool isSide = (run.Run.InsideBefore && run.Run.CornerAfter) || (run.Run.CornerBefore && run.Run.InsideAfter);
        bool stops = run.Run.InsideBefore || run.Run.InsideAfter || !(run.Run.CornerBefore || run.Run.CornerAfter);
        bool isStrip = stops && run.Length >= LeastStrip * spec.Module.Header / 2;
        return halves >= 2 ? (halves, run.Length / (2 * halves)) : isSide || isStrip ? (1, run.Length / 2) : (0, 0);
    }

    // How much longer a run of courses that stand out is than that of the wall's deepest part, whose bond it keeps.
    private double Farther(in WallRun run)
    {
        static int Count(bool corner, bool inside) => corner ? 1 : inside ? -1 : 0;
        return spec.Laying.Beyond * (Count(run.CornerBefore, run.InsideBefore) + Count(run.CornerAfter, run.InsideAfter));
    }
}
