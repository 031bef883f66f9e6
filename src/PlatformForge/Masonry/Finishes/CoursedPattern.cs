using PlatformForge.Geometry;

namespace PlatformForge.Masonry.Finishes;

/// <summary>
/// Lays oblongs in rows on a wall laid flat: courses are level, whatever slopes above them; what ends one run at a corner and what begins the next are one
/// piece; a wall's stops are straight joints.
/// </summary>
internal abstract class CoursedPattern : IWallPattern
{
    // Heights nearer than this are one, mm.
    private const double Hair = 1e-3;

    private readonly FlatWall wall;
    private readonly RunRoom[] runs;
    private readonly EdgeLine top, foot;
    private readonly CourseCut cutter;

    protected CoursedPattern(WallLaying laying, FlatWall wall)
    {
        (Laying, this.wall) = (laying, wall);
        runs = [.. wall.Runs.Select((r, i) => Room(r, i))];
        (top, foot) = (new(wall.Top, -laying.Bed), new(wall.Foot, laying.Foot));
        // The last piece of a ring goes on over its end, where the bends are those of its beginning.
        cutter = new(wall.IsRing ? wall.Bends.Concat(wall.Bends.Select(b => b + wall.Length)) : wall.Bends, laying.LeastPiece);
    }

    public abstract double GreatestDraw { get; }

    protected WallLaying Laying { get; }

    /// <summary>The runs with the room there is in each.</summary>
    protected IReadOnlyList<RunRoom> Runs => runs;

    public IEnumerable<WallRegion> Regions()
    {
        var spans = new List<(double From, double To)>();
        var outlines = new List<Point2[]>();
        var openings = wall.Openings.Count == 0 ? null : new OpeningSet(SetOut(), foot, wall.Foot, Laying.Foot, wall.IsRing ? wall.Length : 0);
        foreach (var region in openings?.Cuts.SelectMany(c => c.Regions(Laying.Depth, Off)) ?? [])
        {
            yield return region;
        }

        foreach (var row in Rows(top.Highest, foot.Lowest).Where(r => r.High > r.Low))
        {
            Row(row, spans);
            openings?.Part(row, spans, LeastCut);
            openings?.Join(row, spans, LeastCut);
            var lintels = IsBand(row) ? [] : openings?.Lintels(row, spans, LeastCut, Laying.Joint) ?? [];
            spans.RemoveAll(s => s.To - s.From < Hair);
            var under = openings?.Under(row) ?? foot;
            outlines.Clear();
            bool isCourse = row.High - row.Low < top.Highest - foot.Lowest - Hair;
            foreach (var (from, to) in spans)
            {
                cutter.Cut(top, under, new(from, to, row.Low, row.High) { IsCourse = isCourse, IsBand = isCourse && IsBand(row) }, outlines);
            }

            foreach (var outline in outlines)
            {
                yield return new(outline, row.Out);
            }

            outlines.Clear();
            foreach (var (from, to) in lintels)
            {
                cutter.Cut(top, under, new(Clear(from, 1), Clear(to, -1), row.Low, row.High) { IsCourse = isCourse }, outlines);
            }

            foreach (var outline in outlines)
            {
                yield return new(outline, row.Out) { IsLintel = true };
            }
        }
    }

    /// <summary>The rows, from the top.</summary>
    /// <param name="highest">Height up to which the wall goes anywhere.</param>
    /// <param name="lowest">Height down to which it goes.</param>
    protected abstract IEnumerable<WallRow> Rows(double highest, double lowest);

    /// <summary>Where the pieces of a row stand in a run, from left to right.</summary>
    protected abstract void Fill(in WallRow row, in RunRoom run, List<(double From, double To)> spans);

    /// <summary>What an opening may leave of a piece beside it, mm; less is added to the next one.</summary>
    protected virtual double LeastCut => Laying.LeastPiece;

    /// <summary>Sides of an opening where pieces end beside it, mm: as they are asked for, unless a pattern has places for them.</summary>
    protected virtual (double Left, double Right) Sides(in RunRoom run, double left, double right) => (left, right);

    // Openings with their sides where bricks end, and their sills and springings on courses; those that do not fit a run are none of this wall's.
    private List<OpeningCut> SetOut()
    {
        var rows = Rows(top.Highest, foot.Lowest).ToArray();
        var cuts = new List<OpeningCut>();
        foreach (var (at, shape) in wall.Openings)
        {
            var run = Array.Find(runs, r => r.From < at && r.To > at);
            double sill = Nearest(rows.Select(r => r.High + OpeningCut.Ledge), shape.Sill), head = sill + shape.Height - shape.Rise;
            var (left, right) = Sides(run, at - (shape.Width / 2), at + (shape.Width / 2));
            if (Only(rows) is { } course && shape.Rise <= 0)
            {
                var instead = new OpeningCut(shape, Laying.Joint, (left, right), course.Low, course.High);
                cuts.AddRange(Lies(instead, run) && !cuts.Exists(c => c.Meets(instead)) ? [instead] : []);
                continue;
            }

            OpeningCut Sprung(double spring) => new(shape, Laying.Joint, (left, right), sill, spring);
            var springs = rows.Select(r => shape.Rise > 0 ? r.High : r.Low - OpeningCut.Ledge).Where(y => y > sill + 0.1);
            var sprung = springs.DefaultIfEmpty(head).Select(Sprung);
            OpeningCut[] fitting = [.. sprung.Where(c => !cuts.Exists(o => o.Meets(c)) && c.Middle - c.Reach > run.From && c.Middle + c.Reach < run.To
                && c.Highest < top.Range(c.Middle - c.Reach, c.Middle + c.Reach).Low && c.Sill > foot.Range(c.Left, c.Right).High)];

            // Of all heights at which it may spring the nearest to the one wished for, or one a little farther off at which its arch leaves no sliver of the
            // course over it: of high courses the next one is a good deal farther.
            if (fitting.Length > 0 && fitting.MinBy(c => Math.Abs(c.Spring - head) + (LeavesSliver(c, rows) ? FiveLines * Laying.LeastPiece : 0)) is { } cut)
            {
                cuts.Add(cut);
            }
        }

        return cuts;

        static double Nearest(IEnumerable<double> places, double wish) => places.DefaultIfEmpty(wish).MinBy(y => Math.Abs(y - wish));
    }

    // The course that alone is a part of a wall's height, between the middles of two beds: there an opening stands in the place of a brick.
    private WallRow? Only(WallRow[] rows)
    {
        WallRow[] whole = [.. rows.Where(r => r.Low >= foot.Lowest - Hair && r.High <= top.Highest + Hair)];
        return whole.Length == 1 ? whole[0] : null;
    }

    private bool Lies(OpeningCut cut, in RunRoom run) => cut.Left - OpeningCut.Ledge > run.From && cut.Right + OpeningCut.Ledge < run.To
        && cut.Crown <= top.Range(cut.Left, cut.Right).Low + Hair && cut.Sill >= foot.Range(cut.Left, cut.Right).High - Hair;

    // Whether less than half of a course lies over an arch's crown, and less than two lines of the nozzle: what is more of a high course is a stone.
    private bool LeavesSliver(OpeningCut cut, WallRow[] rows) => cut.IsArch && Array.Exists(rows, r =>
        cut.Highest > r.Low && cut.Highest < r.High && r.High - cut.Highest < Math.Min((r.High - r.Low) / 2, TwoLines * Laying.LeastPiece));

    // The least piece that is laid is half a line of the nozzle. Five lines are two courses of bricks in 4 mm scale.
    private const double TwoLines = 4, FiveLines = 10;

    // A place off the bends of the wall, on its own side.
    private double Off(double at)
    {
        foreach (double bend in wall.Bends)
        {
            if (Math.Abs(at - bend) < CourseCut.OffBends)
            {
                return bend + (at < bend ? -CourseCut.OffBends : CourseCut.OffBends);
            }
        }

        return at;
    }

    /// <summary>Whether a row goes all round in one band, without any joint.</summary>
    protected virtual bool IsBand(in WallRow row) => false;

    /// <summary>The courses of one height between two heights, from the top, counted from the datum down; drawn out, so that none is split at the
    /// foot.</summary>
    protected IEnumerable<WallRow> Even(double stated, double highest, double lowest)
    {
        double course = Coursing.Even(stated, Laying.Room);
        int first = -(int)Math.Ceiling((highest - Laying.Datum) / course), last = (int)Math.Floor((Laying.Datum - lowest) / course);
        for (int i = first; i <= last; i++)
        {
            double high = Laying.Datum - (i * course);
            yield return new(i, high - (course - Laying.Joint), high, Laying.Depth, true);
        }
    }

    // Where a run's pieces stand, half a joint beyond each end. The outer faces at a corner are as far beyond it as they stand out.
    private RunRoom Room(WallRun run, int index) => new(
        (run.CornerBefore ? run.From - Laying.Depth : run.From + Laying.StopAt(run.InsideBefore) + run.ShortBefore) - (Laying.Joint / 2),
        (run.CornerAfter ? run.To + Laying.Depth : run.To - Laying.StopAt(run.InsideAfter) - run.ShortAfter) + (Laying.Joint / 2),
        run, index);

    private void Row(in WallRow row, List<(double From, double To)> spans)
    {
        spans.Clear();
        double half = Laying.Joint / 2;
        if (wall.IsRing && IsBand(row) && wall.Runs.All(r => r.CornerBefore && r.CornerAfter))
        {
            // A band all round is opened in the middle of the wall across from where it begins.
            double at = (wall.Runs[wall.Runs.Count / 2].From + wall.Runs[wall.Runs.Count / 2].To) / 2;
            spans.Add((Clear(at + half, 1), Clear(at - half, -1) + wall.Length));
            return;
        }

        Pieces(row, spans);
        for (int i = 0; i < spans.Count; i++)
        {
            spans[i] = (Clear(spans[i].From, 1), Clear(spans[i].To, -1));
        }
    }

    // The pieces of a row, run by run; one that turns a corner is one piece.
    private void Pieces(in WallRow row, List<(double From, double To)> spans)
    {
        bool open = false, first = false, last = false;
        for (int r = 0; r < runs.Length; r++)
        {
            int before = spans.Count;
            if (runs[r].Length - Laying.Joint >= Laying.LeastPiece || runs[r].Run.CornerBefore || runs[r].Run.CornerAfter)
            {
                Fill(row, runs[r], spans);
            }

            bool any = spans.Count > before;
            if (any && open)
            {
                spans[before - 1] = (spans[before - 1].From, spans[before].To);
                spans.RemoveAt(before);
            }

            open = any && row.Turns && runs[r].Run.CornerAfter && r + 1 < runs.Length && runs[r + 1].Run.CornerBefore;
            (first, last) = (r == 0 ? any : first, any);
        }

        // Round a ring the last piece goes on as the first one.
        if (wall.IsRing && row.Turns && first && last && spans.Count > 1)
        {
            spans[^1] = (spans[^1].From, spans[0].To + wall.Length);
            spans.RemoveAt(0);
        }
    }

    // What would end at a bend stops a hair short of it.
    private double Clear(double at, int inward) => cutter.Clear(at, inward);
}

/// <summary>A row of oblongs.</summary>
/// <param name="Course">Its number, from any on, growing downwards.</param>
/// <param name="Low">Its lower side, mm.</param>
/// <param name="High">Its upper side, mm.</param>
/// <param name="Out">How far it stands out, mm.</param>
/// <param name="Turns">Whether its pieces turn corners; otherwise they stop there.</param>
internal readonly record struct WallRow(int Course, double Low, double High, double Out, bool Turns);

/// <summary>A run with the room for its pieces, half a joint more than they take at either end, mm.</summary>
internal readonly record struct RunRoom(double From, double To, WallRun Run, int Index)
{
    public double Length => To - From;
}
