using PlatformForge.Clearance.Vehicles;
using PlatformForge.Geometry;
using PlatformForge.Sections.Forms;
using PlatformForge.Solids;
using PlatformForge.Units;

namespace PlatformForge.Proofs;

/// <summary>
/// A vehicle as a flat board with a pencil hole at every corner of its outline and abreast of its middle, carried at its pivots by shoes that run between the
/// rails. Pushed
/// along the track over paper that is cut out between the rails, it draws the reach that is really there.
/// </summary>
internal sealed class ThrowBoard(Vehicle vehicle, ProofSpec spec, PrinterSpec printer, JointSpec joint, double gauge, double railHead)
{
    // Sizes in mm: thickness of board and shoes, height of the tubes that keep a pencil upright, material round holes, width of the spine, of an arm.
    private const double Thick = 2.4, Tube = 8, Land = 2, Spine = 14, Arm = 8;

    // Beyond rail heads, under rail top, and the chamfer at the foot of what runs on rails.
    private const double Beyond = 1.5, FlangeShare = 0.06, LeastTongue = 0.6, Relief = 0.3;

    // A pencil's hole is so much wider than its point.
    private const double PencilFit = 0.2;

    // Of a joint in the board: length of the strip over it and distance of its pins from the joint and from one another.
    private const double Splice = 40, FirstPin = 6, SecondPin = 14;

    /// <summary>Why no board can be made of it, in words; null where one can.</summary>
    public static string? Objection(Vehicle vehicle) =>
        vehicle.TruckOf is { } engine ? $"hangs on '{engine}', which carries it"
        : vehicle.Hangs ? "has no wheels of its own"
        : null;

    /// <summary>Places of pencil holes in the body's frame, mm: the corners of its outline, and where it is widest abreast of its middle.</summary>
    public static IReadOnlyList<Point2> Pencils(Vehicle vehicle)
    {
        var body = vehicle.Parts.Where(p => p.Carrier == PartCarrier.Body).ToArray();
        var hull = ConvexRing.Hull(body.SelectMany(p => p.Outline));
        var places = hull.Concat(body.SelectMany(p => p.Outline).Where(o => OnEdge(hull, o))).ToList();
        for (int i = 0; i < hull.Length; i++)
        {
            var (a, b) = (hull[i], hull[(i + 1) % hull.Length]);
            if (a.X * b.X < 0 && Math.Min(Math.Abs(a.X), Math.Abs(b.X)) > Arm)
            {
                places.Add(a + ((b - a) * (a.X / (a.X - b.X))));
            }
        }

        // Holes nearer than this would run into one another.
        return [.. places.Aggregate(new List<Point2>(), (kept, p) => { if (!kept.Exists(k => (k - p).Length < Arm / 2)) { kept.Add(p); } return kept; })];
    }

    /// <summary>The board, in as many pieces as the bed asks for, strips over its joints, and its shoes.</summary>
    /// <param name="longest">Longest piece that the bed takes at this width, mm.</param>
    /// <param name="mark">What is engraved on each piece, so that it is told from every other gauge.</param>
    public IEnumerable<BoardPiece> Pieces(double longest, string mark)
    {
        var pencils = Pencils(vehicle);
        double half = vehicle.PivotCentres / 2, end = pencils.Select(p => Math.Abs(p.X)).Append(half).Max() + Land + 1 + (spec.Pencil / 2);
        double back = -Math.Max(half, -pencils.Min(p => p.X)) - (end - pencils.Select(p => Math.Abs(p.X)).Append(half).Max()),
            front = Math.Max(half, pencils.Max(p => p.X)) + Land + 1 + (spec.Pencil / 2);
        double[] cuts = [back, .. Cuts(back, front, pencils, longest), front];
        for (int i = 0; i + 1 < cuts.Length; i++)
        {
            string part = cuts.Length > 2 ? FormattableString.Invariant($", part {i + 1} of {cuts.Length - 1}") : "";
            string own = cuts.Length > 2 ? mark + (char)('A' + i) : mark;
            var (blocks, engraved) = Board(pencils, cuts[i], cuts[i + 1], back, front, own);
            yield return new($"throw board of {vehicle.Name}{part}", ProofKind.ThrowBoard, blocks, i == 0 ? Figures(pencils) : [], own, engraved);
        }

        for (int i = 1; i + 1 < cuts.Length; i++)
        {
            string which = cuts.Length > 3 ? FormattableString.Invariant($" {i}") : "";
            yield return new($"throw board of {vehicle.Name}, strip over the joint{which}", ProofKind.ThrowBoard, [.. Strip()], [], "", []);
        }

        double[] bases = [vehicle.LeadingWheelbase, vehicle.TrailingWheelbase];
        string[] names = bases[0] == bases[1] ? ["shoe, first", "shoe, second"] : ["leading shoe", "trailing shoe"];
        for (int i = 0; i < 2; i++)
        {
            string own = bases[0] == bases[1] ? mark : mark + (i == 0 ? "L" : "T");
            yield return new($"throw board of {vehicle.Name}, {names[i]}", ProofKind.ThrowShoe, [.. ShoeOf(bases[i], own)],
                [new("wheelbase", bases[i]), new(ProofFigure.Play, spec.Play)], own, [own]);
        }
    }

    /// <summary>Width of the board over the material round its outermost holes, mm.</summary>
    public double Width => Math.Max(Spine, 2 * (Pencils(vehicle).Max(p => Math.Abs(p.Y)) + (spec.Pencil / 2) + Land));

    private List<ProofFigure> Figures(IReadOnlyList<Point2> pencils) =>
    [
        new("pivots apart", vehicle.PivotCentres), new("pencil holes", pencils.Count, ""), new("pencil", spec.Pencil),
        .. pencils.Select(p => new ProofFigure(FormattableString.Invariant($"hole at {p.X:0.##} from midway between pivots, from the middle line"), p.Y)),
    ];

    private double PinHole => joint.DowelDiameter + joint.Fit;

    // Joints as far apart as the bed allows, clear of holes and pivots.
    private IEnumerable<double> Cuts(double back, double front, IReadOnlyList<Point2> pencils, double longest)
    {
        int pieces = (int)Math.Ceiling((front - back) / Math.Max(longest, 2 * Splice));
        double[] kept = [.. pencils.Select(p => p.X), -vehicle.PivotCentres / 2, vehicle.PivotCentres / 2];
        for (int i = 1; i < pieces; i++)
        {
            double even = back + ((front - back) * i / pieces);
            double Off(double x) => kept.Min(k => Math.Abs(k - x));
            yield return Enumerable.Range(-30, 61).Select(k => even + k).OrderByDescending(x => Math.Min(Off(x), Clear)).ThenBy(x =>
                Math.Abs(x - even)).First();
        }
    }

    // From a joint to the next hole: the strip's half, and a pencil's tube.
    private double Clear => (Splice / 2) + Land + Arm;

    private (IReadOnlyList<ColumnBlock> Blocks, IReadOnlyList<string> Engraved) Board(
        IReadOnlyList<Point2> pencils, double from, double to, double back, double front, string mark)
    {
        var own = pencils.Where(p => p.X >= from && p.X <= to).ToArray();
        double around = (spec.Pencil / 2) + Land;
        double clear = from + (from > back ? (Splice / 2) + 2 : around + 4), end = to - (to < front ? (Splice / 2) + 2 : around + 4);
        var (first, last) = Written(clear, end, own);
        Point2 low = new(first, (-Spine / 2) + 1), high = new(last, (Spine / 2) - 1);
        string[] words = [mark + " " + vehicle.Name];
        return ([.. Plain(own, from, to, back, front), .. Lettering.Cut(words, low, high, Thick, printer)], Lettering.Kept(words, high - low, printer));
    }

    private IEnumerable<ColumnBlock> Plain(Point2[] own, double from, double to, double back, double front)
    {
        yield return Shape.Added(Shape.Box(from, -Spine / 2, to, Spine / 2), 0, Thick);
        double around = (spec.Pencil / 2) + Land;
        foreach (var p in own)
        {
            double y = Math.Abs(p.Y), x0 = Math.Max(from, p.X - around), x1 = Math.Min(to, p.X + around);
            yield return Shape.Added(Shape.Box(x0, p.Y < 0 ? -y - around : 0, x1, p.Y < 0 ? 0 : y + around), 0, Thick);
            yield return Shape.Added(Shape.Around(p, around), 0, Thick + Tube);
        }

        foreach (var p in own)
        {
            yield return Shape.Taken(Shape.Around(p, (spec.Pencil + PencilFit) / 2), -1, Thick + Tube + 1);
        }

        foreach (double pin in Pins(from, to, back, front))
        {
            yield return Shape.Taken(Shape.Around(new(pin, 0), PinHole / 2), -1, Thick + 1);
        }
    }

    // The longest stretch of the spine without a hole.
    private (double From, double To) Written(double from, double to, Point2[] own)
    {
        double around = (spec.Pencil / 2) + Land + 1;
        double[] stops = [from - around,
            .. own.Where(p => Math.Abs(p.Y) < Spine).Select(p => p.X).Concat([-vehicle.PivotCentres / 2, vehicle.PivotCentres / 2]).Where(x => x > from
            && x < to).Order(), to + around];
        var (a, b) = stops.Zip(stops.Skip(1)).MaxBy(s => s.Second - s.First);
        return (a + around, b - around);
    }

    private IEnumerable<double> Pins(double from, double to, double back, double front)
    {
        foreach (double pivot in (double[])[-vehicle.PivotCentres / 2, vehicle.PivotCentres / 2])
        {
            if (pivot > from && pivot < to)
            {
                yield return pivot;
            }
        }

        foreach (double pin in (double[])[FirstPin, SecondPin])
        {
            if (from > back)
            {
                yield return from + pin;
            }

            if (to < front)
            {
                yield return to - pin;
            }
        }
    }

    private IEnumerable<ColumnBlock> Strip()
    {
        yield return Shape.Added(Shape.Box(-Splice / 2, -Spine / 2, Splice / 2, Spine / 2), 0, Thick);
        foreach (double pin in (double[])[-SecondPin, -FirstPin, FirstPin, SecondPin])
        {
            yield return Shape.Taken(Shape.Around(new(pin, 0), PinHole / 2), -1, Thick + 1);
        }
    }

    // Printed with what runs between the rails on top, its mark underneath, which is what shows as it lies on the rails.
    private IEnumerable<ColumnBlock> ShoeOf(double wheelbase, string mark)
    {
        double wide = (gauge / 2) + railHead + Beyond, disc = (gauge / 2) - spec.Play, depth = Math.Max(LeastTongue, FlangeShare * gauge);
        double[] axles = wheelbase > 0 ? [-wheelbase / 2, wheelbase / 2] : [0];
        yield return Shape.Added(wheelbase > 0 ? Shape.Box(axles[0] - (Spine / 2), -wide, axles[^1] + (Spine / 2), wide) : Shape.Within(default, wide), 0,
            Thick);

        // Where the plate has no room for the mark beside the pin, it reaches on between the rails.
        var room = Lettering.Room([mark], printer);
        Point2 low = new((PinHole / 2) + 1, -room.Y / 2), high = low + room;
        double reaches = wheelbase > 0 ? axles[^1] + (Spine / 2) : Math.Sqrt((wide * wide) - (high.Y * high.Y));
        if (high.X + 1 > reaches)
        {
            yield return Shape.Added(Shape.Box(0, low.Y - 1, high.X + 1, high.Y + 1), 0, Thick);
        }

        // Round, so that it lies between curved rails as an axle does; where two would meet each keeps its own side.
        foreach (double axle in axles)
        {
            yield return Shape.Added(wheelbase > 0 && wheelbase < 2 * disc ? Slim(axle, Math.Min(disc, (wheelbase / 2) - 0.5), disc)
                : Shape.Within(new(axle, 0), disc), 0, Thick + depth);
        }

        yield return Shape.Taken(Shape.Around(default, PinHole / 2), -1, Thick + depth + 1);
        foreach (var stroke in Lettering.Under([mark], low, high + new Point2(Lettering.Spare, Lettering.Spare), printer))
        {
            yield return stroke;
        }
    }

    // The part of a circle between the rails that lies within so much of its axle.
    private static Point2[] Slim(double axle, double half, double radius) =>
        ConvexRing.LeftOf(ConvexRing.LeftOf(Shape.Within(new(axle, 0), radius), new(axle + half, -radius), new(axle + half, radius)),
            new(axle - half, radius), new(axle - half, -radius));

    // Whether a corner lies on the hull's boundary.
    private static bool OnEdge(Point2[] hull, Point2 p)
    {
        for (int i = 0; i < hull.Length; i++)
        {
            var along = hull[(i + 1) % hull.Length] - hull[i];
            if (Math.Abs(Point2.Cross(along, p - hull[i])) < Tolerances.SameLength * along.Length)
            {
                return true;
            }
        }

        return false;
    }
}

/// <summary>A piece of a throw board by its blocks.</summary>
internal sealed record BoardPiece(
    string Name, ProofKind Kind, IReadOnlyList<ColumnBlock> Blocks, IReadOnlyList<ProofFigure> Figures, string Mark, IReadOnlyList<string> Engraved);
