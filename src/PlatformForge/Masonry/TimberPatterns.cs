namespace PlatformForge.Masonry;

/// <summary>Lays planks or sleepers level, each course half a length over the next.</summary>
internal sealed class LevelTimberPattern(LevelTimberSpec spec, FlatWall wall) : CoursedPattern(spec.Laying, wall)
{
    public override double GreatestDraw => Runs.Select(r => Math.Max(0, (r.Length / Halves(r) * 2 / spec.Length) - 1)).DefaultIfEmpty(0).Max();

    protected override IEnumerable<WallRow> Rows(double highest, double lowest) => Even(spec.Width, highest, lowest);

    protected override void Fill(in WallRow row, in RunRoom run, List<(double From, double To)> spans)
    {
        double half = spec.Laying.Joint / 2;
        int halves = Halves(run), first = row.Course % 2 == 0 ? 2 : 1;
        double step = run.Length / halves;
        for (int at = 0; at < halves;)
        {
            int next = Math.Min(halves, at == 0 ? first : at + 2);
            spans.Add((run.From + (at * step) + half, run.From + (next * step) - half));
            at = next;
        }
    }

    // Half lengths that fill a run: fewer than three are one piece.
    private int Halves(RunRoom run)
    {
        int halves = (int)Math.Floor((2 * run.Length / spec.Length) + Units.Tolerances.Rounding);
        return halves < 3 ? 1 : halves;
    }
}

/// <summary>Stands planks side by side, from the foot to the upper edge.</summary>
internal sealed class UprightPlankPattern(UprightPlankSpec spec, FlatWall wall) : CoursedPattern(spec.Laying, wall)
{
    public override double GreatestDraw => Runs.Select(r => Math.Max(0, (r.Length / Count(r) / spec.Width) - 1)).DefaultIfEmpty(0).Max();

    protected override IEnumerable<WallRow> Rows(double highest, double lowest) => [new(0, lowest, highest, spec.Laying.Depth, true)];

    protected override void Fill(in WallRow row, in RunRoom run, List<(double From, double To)> spans)
    {
        double half = spec.Laying.Joint / 2, step = run.Length / Count(run);
        for (int i = 0; i < Count(run); i++)
        {
            spans.Add((run.From + (i * step) + half, run.From + ((i + 1) * step) - half));
        }
    }

    private int Count(RunRoom run) => Math.Max(1, (int)Math.Floor((run.Length / spec.Width) + Units.Tolerances.Rounding));
}

/// <summary>Posts at even distances, panels in courses between them that stand out less.</summary>
internal sealed class PanelPattern(PanelSpec spec, FlatWall wall) : CoursedPattern(spec.Laying, wall)
{
    // Numbers rows of panels; that of the posts is another one.
    private const int Posts = int.MinValue;

    public override double GreatestDraw => Runs.Select(r => Math.Max(0, (r.Length / Bays(r) / spec.Bay) - 1)).DefaultIfEmpty(0).Max();

    protected override IEnumerable<WallRow> Rows(double highest, double lowest) =>
    [
        new(Posts, lowest, highest, spec.Laying.Depth, true),
        .. Even(spec.Panel, highest, lowest).Select(r => r with { Out = PanelSpec.Back * r.Out, Turns = false }),
    ];

    protected override void Fill(in WallRow row, in RunRoom run, List<(double From, double To)> spans)
    {
        // At a corner half a post stands on either wall, at a stop a whole one.
        double joint = spec.Laying.Joint, end = run.To - (joint / 2), start = run.From + (joint / 2);
        int bays = Bays(run);
        double[] from = new double[bays + 1], to = new double[bays + 1];
        double first = run.Run.CornerBefore ? start : start + (spec.Post / 2), last = run.Run.CornerAfter ? end : end - (spec.Post / 2);
        for (int i = 0; i <= bays; i++)
        {
            double at = first + ((last - first) * i / bays);
            (from[i], to[i]) = (Math.Max(start, at - (spec.Post / 2)), Math.Min(end, at + (spec.Post / 2)));
        }

        for (int i = 0; i <= bays; i++)
        {
            if (row.Course == Posts)
            {
                spans.Add((from[i], to[i]));
            }
            else if (i < bays)
            {
                spans.Add((to[i] + joint, from[i + 1] - joint));
            }
        }
    }

    private int Bays(RunRoom run) => Math.Max(1, (int)Math.Round(run.Length / spec.Bay));
}
