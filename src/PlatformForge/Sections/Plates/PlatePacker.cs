using PlatformForge.Geometry;
using PlatformForge.Sections.Beds;
using PlatformForge.Sections.Forms;
using PlatformForge.Units;

namespace PlatformForge.Sections.Plates;

/// <summary>
/// Front door of the folder: lays sections on as few beds as it finds. Every piece goes where its convex outline comes lowest on the first
/// bed that takes it, over several turns; the orders by area, by length and as numbered are tried and the one with fewest beds wins.
/// </summary>
public static class PlatePacker
{
    /// <summary>Turns tried for each piece, evenly over a full turn from the one of its file.</summary>
    internal const int Turns = 12;

    // Of the turns at which a piece all but fills the bed one with so much room is good enough, mm.
    private const double Ease = 0.01;

    /// <summary>Beds for sections of one or several platforms. A piece that fits no bed is left out: it has a finding of its own.</summary>
    public static IReadOnlyList<Plate> Pack(IReadOnlyList<PlatformSection> sections, PrinterSpec printer) =>
        [.. Pack([.. sections.Select(s => new PieceToPack(s.Hull, s.Length, s.Number, s.Estimate.Volume))], printer).Select((bed, i) => new Plate(
            i + 1,
            [.. bed.Select(p => new PlacedSection(sections[p.Piece], p.ToBed)).OrderBy(p => p.Section.Platform, StringComparer.Ordinal)
                .ThenBy(p => p.Section.Number)],
            PrintEstimate.Sum(bed.Select(p => sections[p.Piece].Estimate), printer)))];

    /// <summary>Beds for pieces of any kind, fullest first: index of each piece, and its motion to the bed. What fits no bed is left out.</summary>
    /// <param name="pieces">The pieces.</param>
    /// <param name="printer">The printer.</param>
    /// <param name="turns">How many turns of a piece are tried, evenly over a full turn; 1 leaves it as it lies in its file.</param>
    internal static IReadOnlyList<IReadOnlyList<(int Piece, RigidTransform ToBed)>> Pack(IReadOnlyList<PieceToPack> pieces, PrinterSpec printer,
        int turns = Turns)
    {
        var bed = new BedShape(printer);
        var outlines = pieces.Select(s => CoarseHull.Around(s.Hull)).ToArray();
        double needed = outlines.Sum(o => ConvexRing.Area(o)) / Math.Abs(ConvexRing.Area(printer.Bed));
        List<List<Placing>>? best = null;
        foreach (var order in new[]
        {
            Enumerable.Range(0, pieces.Count).OrderByDescending(i => ConvexRing.Area([.. pieces[i].Hull])),
            Enumerable.Range(0, pieces.Count).OrderByDescending(i => pieces[i].Length),
            Enumerable.Range(0, pieces.Count).OrderBy(i => pieces[i].Number),
        })
        {
            var beds = Fill([.. order], pieces, outlines, bed, printer.Spacing, turns);
            best = best is null || beds.Count < best.Count ? beds : best;
            if (best.Count <= Math.Ceiling(needed))
            {
                break; // by area alone no fewer can do
            }
        }

        return [.. best!
            .OrderByDescending(p => p.Sum(s => pieces[s.Piece].Volume))
            .Select(placings => Centred(placings).Select(p => (p.Piece, RigidTransform.AboutZ(p.Turn).Then(RigidTransform.Shift(p.Shift.X, p.Shift.Y, 0))))
                .ToArray())];
    }

    private sealed record Placing(int Piece, BedRoom Room, double Turn, Point2 Shift, Point2[] Outline);

    private static List<List<Placing>> Fill(
        int[] order, IReadOnlyList<PieceToPack> pieces, Point2[][] outlines, BedShape bed, double spacing, int turns)
    {
        double[] even = [.. Enumerable.Range(0, turns).Select(k => 2 * Math.PI * k / turns)];
        var beds = new List<List<Placing>>();
        foreach (int piece in order)
        {
            bool placed = false;
            for (int i = 0; i <= beds.Count && !placed; i++)
            {
                var others = i < beds.Count ? beds[i] : [];
                if ((Place(piece, outlines[piece], others, bed, spacing, even)
                    ?? (i < beds.Count ? null : Alone(piece, pieces[piece].Hull, bed, spacing, turns))) is { } placing)
                {
                    others.Add(placing);
                    placed = true;
                    if (i == beds.Count)
                    {
                        beds.Add(others);
                    }
                }
                else if (i == beds.Count)
                {
                    break;
                }
            }
        }

        return beds;
    }

    // A piece that all but fills the bed may lie there at one turn only, which is none of the even ones, and by its true outline only.
    private static Placing? Alone(int piece, IReadOnlyList<Point2> hull, BedShape bed, double spacing, int turns) =>
        Place(piece, ConvexRing.Hull(hull), [], bed, spacing, [turns == 1 ? 0 : bed.Best(hull, enough: Ease).Turn]);

    private static Placing? Place(int piece, Point2[] outline, List<Placing> others, BedShape bed, double spacing, IEnumerable<double> turns)
    {
        Placing? best = null;
        (double Top, double Right) bestScore = default;
        foreach (var room in bed.Rooms)
        {
            foreach (double turn in turns)
            {
                Point2[] hull = [.. outline.Select(p => Turned(p, turn))];
                var shifts = room.Shifts(hull, 0);
                if (shifts.Length == 0 || Lowest(hull, shifts, others, spacing) is not { } shift)
                {
                    continue;
                }

                var score = (shift.Y + hull.Max(p => p.Y), shift.X + hull.Max(p => p.X));
                if (best is null || score.CompareTo(bestScore) < 0)
                {
                    (bestScore, best) = (score, new(piece, room, turn, shift, Array.ConvertAll(hull, p => p + shift)));
                }
            }
        }

        return best;
    }

    // The lowest, then leftmost shift is at a corner of what is allowed: a corner of the bed's ring or of a no-fit ring, or where two of them cross.
    private static Point2? Lowest(Point2[] hull, Point2[] shifts, List<Placing> others, double spacing)
    {
        NoFit[] noFits = [.. others.Select(o => NoFit.Of(o.Outline, hull, spacing))];
        var rings = noFits.Select(n => n.Ring).Prepend(shifts).ToArray();
        var corners = rings.SelectMany(r => r).ToList();
        for (int a = 0; a < rings.Length; a++)
        {
            for (int b = a + 1; b < rings.Length; b++)
            {
                corners.AddRange(Crossings(rings[a], rings[b]));
            }
        }

        foreach (var p in corners.OrderBy(p => p.Y).ThenBy(p => p.X))
        {
            if (Inside(shifts, p) && !noFits.Any(n => n.Forbids(p)))
            {
                return p;
            }
        }

        return null;
    }

    private static bool Inside(Point2[] ring, Point2 p)
    {
        for (int i = 0; i < ring.Length; i++)
        {
            var along = ring[(i + 1) % ring.Length] - ring[i];
            if (Point2.Cross(along, p - ring[i]) < -Tolerances.SameLength * along.Length)
            {
                return false;
            }
        }

        return true;
    }

    private static IEnumerable<Point2> Crossings(Point2[] a, Point2[] b)
    {
        for (int i = 0; i < a.Length; i++)
        {
            Point2 p = a[i], u = a[(i + 1) % a.Length] - p;
            for (int k = 0; k < b.Length; k++)
            {
                Point2 q = b[k], v = b[(k + 1) % b.Length] - q;
                double turn = Point2.Cross(u, v), s = Point2.Cross(q - p, v) / turn, t = Point2.Cross(q - p, u) / turn;
                if (s is >= 0 and <= 1 && t is >= 0 and <= 1)
                {
                    yield return p + (u * s);
                }
            }
        }
    }

    // All pieces of a bed moved together to the middle of what the bed allows them.
    private static List<Placing> Centred(List<Placing> placings)
    {
        Point2[] together = [];
        foreach (var (placing, i) in placings.Select((p, i) => (p, i)))
        {
            var shifts = placing.Room.Shifts(placing.Outline, 0);
            together = i == 0 ? shifts : Common(together, shifts);
        }

        if (together.Length == 0)
        {
            return placings;
        }

        var middle = new Point2((together.Min(p => p.X) + together.Max(p => p.X)) / 2, (together.Min(p => p.Y) + together.Max(p => p.Y)) / 2);
        return Inside(together, middle) ? [.. placings.Select(p => p with { Shift = p.Shift + middle })] : placings;
    }

    private static Point2[] Common(Point2[] a, Point2[] b)
    {
        for (int i = 0; i < b.Length && a.Length > 0; i++)
        {
            a = ConvexRing.LeftOf(a, b[i], b[(i + 1) % b.Length]);
        }

        return a;
    }

    private static Point2 Turned(Point2 p, double angle)
    {
        var (s, c) = Math.SinCos(angle);
        return new((c * p.X) - (s * p.Y), (s * p.X) + (c * p.Y));
    }
}

/// <summary>A piece that is laid on beds.</summary>
/// <param name="Hull">Convex outline in its file's coordinates, mm.</param>
/// <param name="Length">Length, mm; long ones are laid first in one of the orders tried.</param>
/// <param name="Number">Number; the order as numbered is tried too.</param>
/// <param name="Volume">Volume, mm³; beds are told fullest first.</param>
internal sealed record PieceToPack(IReadOnlyList<Point2> Hull, double Length, int Number, double Volume);
