namespace PlatformForge.Masonry;

/// <summary>
/// Lays bricks on a wall laid flat. Courses are level, whatever slopes above them; bricks turn corners; a wall's stops are straight joints. The same wall and
/// figures, the same bricks.
/// </summary>
public sealed class BrickPattern
{
    private readonly BrickworkSpec spec;
    private readonly FlatWall wall;
    private readonly RunSetting[] runs;
    private readonly EdgeLine top, foot;

    public BrickPattern(BrickworkSpec spec, FlatWall wall)
    {
        (this.spec, this.wall) = (spec, wall);
        runs = [.. wall.Runs.Select(Set)];
        (top, foot) = (new(wall.Top, -spec.Bed), new(wall.Foot, spec.Stop));
    }

    /// <summary>How much longer than their gauge the bricks of the run are that is drawn out most, as a share.</summary>
    public double GreatestDraw => runs.Where(r => r.Halves > 0).Select(r => (2 * r.Quarter / spec.Module.Header) - 1).DefaultIfEmpty(0).Max();

    /// <summary>The bricks, course by course from the top.</summary>
    public IEnumerable<WallRegion> Regions()
    {
        int first = -(int)Math.Ceiling((top.Highest - spec.Datum) / spec.Module.Course);
        int last = (int)Math.Floor((spec.Datum - foot.Lowest) / spec.Module.Course);
        var spans = new List<(double From, double To)>();
        for (int course = first; course <= last; course++)
        {
            double high = spec.Datum - (course * spec.Module.Course), low = high - (spec.Module.Course - spec.Joint);
            Course(course, spans);
            foreach (var (from, to) in spans)
            {
                foreach (var outline in CourseCut.Of(top, foot, wall.Bends, (from, to, low, high), spec.LeastPiece))
                {
                    yield return new(outline, spec.Depth);
                }
            }
        }
    }

    // Where a run's bricks stand. The outer faces at a corner are as far beyond it as bricks stand out.
    private RunSetting Set(WallRun run)
    {
        double from = (run.CornerBefore ? run.From - spec.Depth : run.From + spec.Stop) - (spec.Joint / 2);
        double to = (run.CornerAfter ? run.To + spec.Depth : run.To - spec.Stop) + (spec.Joint / 2);
        int halves = BondCourses.Halves(spec.Bond, to - from, spec.Module.Header);
        return halves < 2 ? new(from, 0, 0, run) : new(from, halves, (to - from) / (2 * halves), run);
    }

    // Where the bricks of a course begin and end.
    private void Course(int course, List<(double From, double To)> spans)
    {
        spans.Clear();
        double half = spec.Joint / 2;
        if (!spec.Perpends && wall.IsRing)
        {
            // A band all round is opened in the middle of the wall across from where it begins.
            double at = (wall.Runs[wall.Runs.Count / 2].From + wall.Runs[wall.Runs.Count / 2].To) / 2;
            spans.Add((Clear(at + half, 1), Clear(at - half, -1) + wall.Length));
            return;
        }

        bool open = false;
        for (int r = 0; r < runs.Length; r++)
        {
            var run = runs[r];
            if (run.Halves == 0)
            {
                open = false;
                continue;
            }

            var bricks = spec.Perpends ? BondCourses.Of(spec.Bond, spec.StretcherCourses, run.Halves, course, run.Run.IsReturn) : [2 * run.Halves];
            int at = 0;
            for (int i = 0; i < bricks.Count; i++)
            {
                double from = run.From + (at * run.Quarter) + half, to = run.From + ((at += bricks[i]) * run.Quarter) - half;
                if (i == 0 && open)
                {
                    spans[^1] = (spans[^1].From, to);
                }
                else
                {
                    spans.Add((from, to));
                }
            }

            open = run.Run.CornerAfter && r + 1 < runs.Length && runs[r + 1].Run.CornerBefore;
        }

        Close(spans);
        for (int i = 0; i < spans.Count; i++)
        {
            spans[i] = (Clear(spans[i].From, 1), Clear(spans[i].To, -1));
        }
    }

    // Round a ring the last brick goes on as the first one.
    private void Close(List<(double From, double To)> spans)
    {
        if (wall.IsRing && spans.Count > 1 && runs[0].Halves > 0 && runs[^1].Halves > 0)
        {
            spans[^1] = (spans[^1].From, spans[0].To + wall.Length);
            spans.RemoveAt(0);
        }
    }

    // A brick that would end at a bend stops a hair short of it.
    private double Clear(double at, int inward)
    {
        foreach (double bend in wall.Bends)
        {
            if (Math.Abs(at - bend) < CourseCut.OffBends)
            {
                return bend + (inward * CourseCut.OffBends);
            }
        }

        return at;
    }

    private readonly record struct RunSetting(double From, int Halves, double Quarter, WallRun Run);
}
