using PlatformForge.Geometry;

namespace PlatformForge.Masonry.Finishes;

/// <summary>
/// Lays random rubble on a wall laid flat: every stone is what lies nearer to its own place than to any other's, less its joints, so it is convex and the
/// joints are of one width; square openings are notched out of the stones beside them. Stones turn corners: a column of places stands on each.
/// </summary>
internal sealed class RubblePattern(RubbleSpec spec, FlatWall wall) : IWallPattern
{
    // How far a stone's place may be off an even one, as a share of the distance between two, along and up; at corners less along, so that the stone turns
    // them.
    private const double Along = 0.34, Up = 0.3, AlongAtCorners = 0.12;

    // Stones of other rows and columns reach no farther than this many of them.
    private const int Reach = 3;

    // Corners of a stone nearer to one another than this share of its size are one, so that no side is too short to print.
    private const double LeastSide = 0.12;

    private readonly EdgeLine top = new(wall.Top, -spec.Laying.Bed), foot = new(wall.Foot, spec.Laying.Foot);

    // Height of a row of places: whole ones fill the wall.
    private readonly double row = Coursing.Even(spec.Size, spec.Laying.Room);

    private OpeningCut[] cuts = [];
    private double[]? turns;
    private int[]? turned;

    public double GreatestDraw => 0;

    public IEnumerable<WallRegion> Regions()
    {
        // Rows count from the datum, so that all sections' stones are drawn alike; each section has its own lengths.
        int first = -(int)Math.Ceiling((top.Highest - spec.Laying.Datum) / row) - 1,
            last = (int)Math.Floor((spec.Laying.Datum - foot.Lowest) / row) + 1;
        cuts = [.. wall.Openings.Select(SetOut).Where(Lies)];
        foreach (var region in cuts.SelectMany(c => c.Regions(spec.Laying.Depth, x => OffBends([new(x, 0)])[0].X)))
        {
            yield return region;
        }

        var rows = Enumerable.Range(first, last - first + 1).Select(n => Row(n).Where(p => !cuts.Any(c => c.IsArch && c.Holds(p.At))).ToList()).ToArray();
        foreach (var stone in Laid(rows))
        {
            yield return new(stone, spec.Laying.Depth);
        }
    }

    // A place whose stone would be a sliver is given up, and its neighbours grow into the room; so often as new slivers come of it.
    private List<Point2[]> Laid(List<Place>[] rows)
    {
        for (int round = 0; ; round++)
        {
            var (stones, given) = (new List<Point2[]>(), new HashSet<(int, int, int)>());
            for (int r = 0; r < rows.Length; r++)
            {
                var beside = rows[Math.Max(0, r - Reach)..Math.Min(rows.Length, r + Reach + 1)].SelectMany(o => o)
                    .ToLookup(o => Turned[o.Run], o => o.At);
                foreach (var place in rows[r].Where(p => p.IsOwn))
                {
                    var cells = Cells(place.At, place.Run, beside[Turned[place.Run]]);
                    var laid = cells.SelectMany(c => Stone(Sound(c))).ToList();
                    stones.AddRange(laid);

                    // Rows beyond the wall have places that shape its stones and have none themselves.
                    if (laid.Count == 0 && (IsWithin(place.At) || cells.Exists(c => c.Length > 2 && Area(c) > LeastSlice)))
                    {
                        given.Add(place.Number);
                    }
                }
            }

            if (given.Count == 0 || round == MostRounds)
            {
                return stones;
            }

            Array.ForEach(rows, row => row.RemoveAll(p => given.Contains(p.Number)));
        }
    }

    // Where a stone lies, and its row, run and column; on a ring those near its opening have a second place beyond it, which is not their own.
    private readonly record struct Place(Point2 At, (int Row, int Run, int Column) Number, bool IsOwn)
    {
        public int Run => Number.Run;
    }

    // What a place beyond the wall has of it, mm², is no slice of a stone where it is less: corners where cells meet the edge.
    private const double LeastSlice = 1e-3;

    // Two rounds do on most walls; what is a sliver after so many is left out.
    private const int MostRounds = 6;

    // No stone is narrower, mm: a share of its size, and a line of the nozzle.
    private double Narrowest => Math.Max(Least, RubbleSpec.Narrowest * spec.Size);

    private bool IsWithin(Point2 at) => at.X > wall.Runs[0].From && at.X < wall.Length && at.Y < top.At(at.X) && at.Y > foot.At(at.X);

    // Places of a row; on a ring those near its opening a second time beyond it.
    private Place[] Row(int number)
    {
        var places = new List<Place>();
        double step = RubbleSpec.Aspect * spec.Size, height = spec.Laying.Datum - ((number + 0.5) * row);
        for (int r = 0; r < wall.Runs.Count; r++)
        {
            var run = wall.Runs[r];
            int columns = Math.Max(1, (int)Math.Round((run.To - run.From) / step) + (number & 1));

            // A column stands on each corner, and half a distance from each stop.
            double before = run.CornerBefore ? 0 : 0.5, apart = (run.To - run.From) / (columns + (run.CornerBefore == run.CornerAfter ? 0 : 0.5));
            int count = run.CornerBefore && !run.CornerAfter ? columns + 1 : columns;
            for (int k = 0; k < count; k++)
            {
                double aside = 2 * (k == 0 && run.CornerBefore ? AlongAtCorners : Along) * apart;
                places.Add(new(new(run.From + ((k + before) * apart) + ((Draw(number, r, k, 1) - 0.5) * aside), height
                    + ((Draw(number, r, k, 2) - 0.5) * 2 * Up * row)), (number, r, k), true));
            }
        }

        return wall.IsRing ? [.. places, .. places.SelectMany(p => new[] { Beyond(p, -wall.Length), Beyond(p, wall.Length) })] : [.. places];

        static Place Beyond(Place place, double by) => place with { At = place.At + new Point2(by, 0), IsOwn = false };
    }

    private double Draw(int number, int run, int column, int what) => SeededDraw.At(spec.Seed, number, (1000 * run) + column, what);

    // What is nearer to a place than to the others, less half a joint, inside the wall.
    private List<Point2[]> Cells(Point2 at, int run, IEnumerable<Point2> others)
    {
        double reach = Reach * RubbleSpec.Aspect * spec.Size, half = spec.Laying.Joint / 2;
        Point2[] ring = [at + new Point2(-reach, -reach), at + new Point2(reach, -reach), at + new Point2(reach, reach), at + new Point2(-reach, reach)];
        foreach (var other in others.Where(o => o != at && Math.Abs(o.X - at.X) < reach))
        {
            // Lengths along count less than heights, by the aspect.
            const double weight = 1 / (RubbleSpec.Aspect * RubbleSpec.Aspect);
            Point2 apart = other - at, square = new(apart.X * weight, apart.Y), toward = square * (1 / square.Length);
            ring = ConvexCut.Under(ring, toward, Point2.Dot(toward, (at + other) * 0.5) - half);
        }

        // What runs over the opening of a ring goes on beyond its end.
        if (wall.IsRing && ring.Length > 0 && ring.Min(p => p.X) < 0)
        {
            ring = Array.ConvertAll(ring, p => p + new Point2(wall.Length, 0));
        }

        foreach (var cut in cuts.Where(c => c.IsArch && Math.Abs(c.Middle - at.X) < c.Reach + reach))
        {
            var (outward, distance) = cut.Limit(at, spec.Size);
            ring = OffSpringers(ConvexCut.Under(ring, outward, distance), cut, at);
        }

        return Inside(ring, run);
    }

    // The stones that a cell makes: one, none where it is too small, two where a joint goes through an opening in its middle.
    private IEnumerable<Point2[]> Stone(Point2[] cell)
    {
        IEnumerable<Point2[]> stones = IsStone(cell) ? [cell] : [];
        foreach (var cut in cuts.Where(c => !c.IsArch).SelectMany(c => wall.IsRing ? new[] { c, c.Moved(wall.Length) } : [c]))
        {
            stones = stones.SelectMany(s => new NotchedStone(cut.Taken, spec.Laying.Joint, IsStone, p => Lies(p, Least)).Of(s));
        }

        // What is long and thin askew may turn over as its corners move off a bend: nothing that a printer would lay.
        return stones.Select(OffBends).Where(s => Area(s) >= Least * Least / 2);
    }

    // Of what is convex.
    private bool IsStone(Point2[] ring) => Lies(ring, Narrowest);

    private bool Lies(Point2[] ring, double narrowest) => ring.Length >= 3 && ring.Max(p => p.X) - ring.Min(p => p.X) >= Least
        && ring.Max(p => p.Y) - ring.Min(p => p.Y) >= Least && ConvexWidth.Of(ring) >= narrowest;

    // A stone beside an opening that reaches up to where its arch springs from the wall lies under the arch, or beside it, whichever leaves more of it.
    private static Point2[] OffSpringers(Point2[] ring, OpeningCut cut, Point2 at)
    {
        if (!cut.IsArch || at.Y > cut.Spring || ring.Length == 0 || ring.Max(p => p.Y) <= cut.Spring
            || ring.Min(p => Math.Abs(p.X - cut.Middle)) >= cut.Reach)
        {
            return ring;
        }

        int side = Math.Sign(at.X - cut.Middle);
        Point2[] under = ConvexCut.Under(ring, new(0, 1), cut.Spring), beside = ConvexCut.Under(ring, new(-side, 0), -(side * cut.Middle) - cut.Reach);
        return Area(under) >= Area(beside) ? under : beside;
    }

    // mm², positive where corners run counter-clockwise.
    private static double Area(Point2[] ring) => ring.Select((p, i) => Point2.Cross(p - ring[0], ring[(i + 1) % ring.Length] - ring[0])).Sum() / 2;

    // Whether it lies between foot and top, its arch too.
    private bool Lies(OpeningCut cut) => cut.Highest < top.Range(cut.Middle - cut.Reach, cut.Middle + cut.Reach).Low
        && cut.Sill > foot.Range(cut.Left, cut.Right).High;

    private OpeningCut SetOut(WallOpening opening)
    {
        var (at, shape) = opening;
        return new(shape, spec.Laying.Joint, (at - (shape.Width / 2), at + (shape.Width / 2)), shape.Sill, shape.Sill + shape.Height - shape.Rise);
    }

    private double Least => 2 * spec.Laying.LeastPiece;

    // Runs that stones turn from one to the next by one number: what lies beyond an inner corner or a stop shapes no stone.
    private int[] Turned => turned ??= Groups();

    private int[] Groups()
    {
        int[] groups = new int[wall.Runs.Count];
        for (int r = 1; r < groups.Length; r++)
        {
            groups[r] = groups[r - 1] + (wall.Runs[r].CornerBefore ? 0 : 1);
        }

        // Round a ring the last ones are one with the first.
        int last = groups[^1];
        return wall.IsRing && wall.Runs[0].CornerBefore ? Array.ConvertAll(groups, g => g == last ? 0 : g) : groups;
    }

    // Within the stops of its run, or of those beyond its corners, and between foot and top.
    private List<Point2[]> Inside(Point2[] ring, int at)
    {
        var (first, last) = (at, at);
        while (wall.Runs[first].CornerBefore && first > 0)
        {
            first--;
        }

        while (wall.Runs[last].CornerAfter && last + 1 < wall.Runs.Count)
        {
            last++;
        }

        var (begin, end) = (wall.Runs[first], wall.Runs[last]);
        ring = begin.CornerBefore ? ring : ConvexCut.Under(ring, new(-1, 0), -(begin.From + spec.Laying.StopAt(begin.InsideBefore) + begin.ShortBefore));
        ring = end.CornerAfter ? ring : ConvexCut.Under(ring, new(1, 0), end.To - spec.Laying.StopAt(end.InsideAfter) - end.ShortAfter);
        return [.. Between(ring, top, 1).SelectMany(r => Between(r, foot, -1))];
    }

    // On one side of an edge of the wall: under (1) or over it (-1), straight stretch by straight stretch.
    private List<Point2[]> Between(Point2[] ring, EdgeLine edge, int side)
    {
        if (ring.Length < 3)
        {
            return [ring];
        }

        double from = ring.Min(p => p.X), to = ring.Max(p => p.X);
        double[] at = [from, .. edge.Within(from, to).Order(), to];
        List<Point2[]> rings = [ring];
        var sides = new List<EdgeSide>();
        for (int i = 0; i + 1 < at.Length; i++)
        {
            Point2 a = new(at[i], edge.At(at[i])), b = new(at[i + 1], edge.At(at[i + 1]));
            if (b.X - a.X <= Units.Tolerances.GridStep)
            {
                continue;
            }

            var outward = (b - a).Left * (side / (b - a).Length);
            if (sides.Count > 0 && Point2.Cross(sides[^1].Outward, outward) * side < 0)
            {
                // The edge turns back: a stone has to be under both.
                rings = [.. rings.SelectMany(r => UnderOne(r, [.. sides]))];
                sides.Clear();
            }

            sides.Add(new(outward, Point2.Dot(outward, a), a.X, b.X));
        }

        return [.. rings.SelectMany(r => UnderOne(r, [.. sides]))];
    }

    // A straight stretch of an edge: its direction outward, its distance, and where it begins and ends.
    private readonly record struct EdgeSide(Point2 Outward, double Distance, double From, double To);

    // In the angle of an edge that falls and rises again, as over a buttress whose head slopes down all round, a stone under one side of it lies within
    // wherever it is under the other: that which leaves most of the stone does. Where stones of their own under each leave a good deal more, there are those.
    private List<Point2[]> UnderOne(Point2[] ring, EdgeSide[] sides)
    {
        if (sides.Length == 0 || ring.Length < 3)
        {
            return [ring];
        }

        var one = sides.Select(s => ConvexCut.Under(ring, s.Outward, s.Distance)).MaxBy(Area)!;
        if (sides.Length == 1)
        {
            return [one];
        }

        double half = spec.Laying.Joint / 2;
        var each = sides.Select((s, i) =>
        {
            var left = i == 0 ? ring : ConvexCut.Under(ring, new(-1, 0), -s.From - half);
            var strip = i == sides.Length - 1 ? left : ConvexCut.Under(left, new(1, 0), s.To - half);
            return Sound(ConvexCut.Under(strip, s.Outward, s.Distance));
        }).Where(IsStone).ToList();
        return each.Sum(Area) > Area(one) + (Narrowest * Narrowest / 2) ? each : [one];
    }

    // Without corners that are hardly apart or hardly turn: what is left lies within, and is convex.
    private Point2[] Sound(Point2[] ring)
    {
        double least = LeastSide * spec.Size;
        var kept = ring.ToList();
        for (int i = 0; i < kept.Count && kept.Count > 3;)
        {
            Point2 before = kept[(i + kept.Count - 1) % kept.Count], at = kept[i], after = kept[(i + 1) % kept.Count];
            bool flat = Point2.Cross(at - before, after - at) < Flat * (at - before).Length * (after - at).Length;
            if ((at - before).Length < least || flat)
            {
                kept.RemoveAt(i);
                i = Math.Max(0, i - 1);
            }
            else
            {
                i++;
            }
        }

        return [.. kept];
    }

    // Sine of the least turn of a corner.
    private const double Flat = 0.02;

    private Point2[] OffBends(Point2[] ring) => Array.ConvertAll(ring, p =>
    {
        foreach (double bend in turns ??= [.. Places()])
        {
            if (Math.Abs(bend - p.X) < CourseCut.OffBends)
            {
                return p with { X = bend + (p.X < bend ? -CourseCut.OffBends : CourseCut.OffBends) };
            }
        }

        return p;
    });

    // All places at which the wall bends, those beyond the opening of a ring among them.
    private IEnumerable<double> Places()
    {
        var all = wall.Bends.Concat(wall.Runs.Select(r => r.From)).Append(wall.Length);
        return wall.IsRing ? all.SelectMany(b => new[] { b - wall.Length, b, b + wall.Length }) : all;
    }
}
