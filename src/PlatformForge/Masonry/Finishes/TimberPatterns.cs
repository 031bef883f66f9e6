using PlatformForge.Units;

namespace PlatformForge.Masonry.Finishes;

/// <summary>
/// Lays planks or sleepers level, each course half a length over the next. They keep their length, and what is left over is cut beside a stop or a corner, as a
/// carpenter does (common practice, no source); where whole ones and halves all but fill a run they are drawn out a little for that.
/// </summary>
internal sealed class LevelTimberPattern : CoursedPattern
{
    private readonly LevelTimberSpec spec;
    private readonly (double Length, double First)[] settings;

    public LevelTimberPattern(LevelTimberSpec spec, FlatWall wall)
        : base(spec.Laying, wall)
    {
        this.spec = spec;
        settings = [.. Runs.Select(r => Set(r.Length, r.Run.CornerBefore && r.Run.CornerAfter))];
    }

    public override double GreatestDraw =>
        Runs.Select(r => Math.Max(0, (Math.Min(r.Length, settings[r.Index].Length) / spec.Length) - 1)).DefaultIfEmpty(0).Max();

    protected override IEnumerable<WallRow> Rows(double highest, double lowest) => Even(spec.Width, highest, lowest);

    protected override void Fill(in WallRow row, in RunRoom run, List<(double From, double To)> spans)
    {
        double half = spec.Laying.Joint / 2, from = 0;
        var (length, first) = settings[run.Index];
        double start = row.Course % 2 == 0 ? first : first + (length / 2);
        for (int i = 0; start + (i * length) < run.Length - Tolerances.Rounding; i++)
        {
            double to = start + (i * length);
            if (to > Tolerances.Rounding)
            {
                spans.Add((run.From + from + half, run.From + to - half));
                from = to;
            }
        }

        spans.Add((run.From + from + half, run.To - half));
    }

    // Length of the pieces of a run, and where the first perpend of its even courses stands; those of odd courses stand half a length farther.
    private (double Length, double First) Set(double room, bool turnsBoth)
    {
        if (turnsBoth && room <= spec.Length && room / 3 >= spec.Shortest)
        {
            // No board goes round two corners: it ends at a third of a short wall, over and under at the other.
            return (2 * room / 3, room / 3);
        }

        int halves = (int)Math.Floor((2 * room / spec.Length) + Tolerances.Rounding);
        double left = Math.Max(0, room - (halves * spec.Length / 2)), middle = (spec.Length / 4) + (left / 2);
        if (halves == 0 || (halves == 1 && left < spec.Shortest))
        {
            // One piece, which none is half over: the next perpend stands where the run ends.
            return (2 * room, 0);
        }

        if (halves > 1 && left <= LevelTimberSpec.MostDrawn * halves * spec.Length / 2)
        {
            return (2 * room / halves, 0);
        }

        // Whole ones from the left end on; what would be left at the other end too short to print is cut from both.
        return left >= spec.Shortest ? (spec.Length, 0) : middle >= spec.Shortest ? (spec.Length, middle) : (2 * room / halves, 0);
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

    private int Count(RunRoom run) => Math.Max(1, (int)Math.Floor((run.Length / spec.Width) + Tolerances.Rounding));
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

        if (bays == 1 && from[1] - to[0] < (2 * joint) + Laying.LeastPiece)
        {
            Close(row, (start, end), spans);
            return;
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

    // Where no panel has room, as between a corner and a pipe beside it: two posts that meet, or one.
    private void Close(in WallRow row, (double From, double To) room, List<(double From, double To)> spans)
    {
        double half = Laying.Joint / 2, middle = (room.From + room.To) / 2;
        if (row.Course == Posts)
        {
            spans.AddRange(room.To - room.From >= (2 * spec.Post) + Laying.Joint ? [(room.From, middle - half), (middle + half, room.To)] : [room]);
        }
    }

    // As many as are nearest to the stated bay, and no more than leave room for a panel between two posts.
    private int Bays(RunRoom run)
    {
        double least = spec.Post + (2 * Laying.Joint) + Laying.LeastPiece, most = Math.Floor((run.Length - Laying.Joint - spec.Post) / least);
        return (int)Math.Max(1, Math.Min(Math.Round(run.Length / spec.Bay), most));
    }
}
