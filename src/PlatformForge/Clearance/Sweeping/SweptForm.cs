using PlatformForge.Geometry;

namespace PlatformForge.Clearance.Sweeping;

/// <summary>One corner of a part, with the edge that runs from it to the next corner of its ring.</summary>
/// <param name="X">Forward in the carrier's frame, mm.</param>
/// <param name="Y">To the left, mm.</param>
/// <param name="Carrier">What carries it.</param>
/// <param name="Part">Index of the part in the vehicle.</param>
/// <param name="Next">Index of the next corner of the ring.</param>
/// <param name="CornerSide">+1 where the corner can be the leftmost place of its part, −1 the rightmost, 2 both, 0 neither.</param>
/// <param name="EdgeSide">+1 when the edge looks left, −1 right, 0 when it runs square to the vehicle.</param>
internal readonly record struct FormCorner(double X, double Y, PartCarrier Carrier, int Part, int Next, int CornerSide, int EdgeSide);

/// <summary>
/// A vehicle made ready for sweeping one way round: widened outlines as one flat list of corners.
/// </summary>
internal sealed class SweptForm
{
    // An edge whose normal leans by less than this sine from the vehicle's axis is taken to run square to the vehicle.
    private const double SquareSine = 1e-9;

    private SweptForm(Vehicle vehicle, RunningPlay play, bool turned)
    {
        Vehicle = vehicle;
        Turned = turned;
        Centres = vehicle.PivotCentres;
        (LeadingBase, TrailingBase) = turned ? (vehicle.TrailingWheelbase, vehicle.LeadingWheelbase) : (vehicle.LeadingWheelbase, vehicle.TrailingWheelbase);
        var corners = new List<FormCorner>();
        for (int part = 0; part < vehicle.Parts.Count; part++)
        {
            var ring = PlayInflation.Widen(vehicle.Parts[part], vehicle, play);
            AddRing(corners, turned ? [.. ring.Select(p => p * -1)] : ring, Carrier(vehicle.Parts[part].Carrier, turned), part);
        }

        Corners = [.. corners];
        Guide = Centres;
        foreach (var corner in Corners)
        {
            double half = corner.Carrier == PartCarrier.Body ? Centres / 2 : (corner.Carrier == PartCarrier.LeadingBogie ? LeadingBase : TrailingBase) / 2;
            Lever = Math.Max(Lever, Math.Abs(corner.X) / half);
            Guide = Math.Min(Guide, 2 * half);
            HalfWidth = Math.Max(HalfWidth, Math.Abs(corner.Y));
            double pivot = corner.Carrier == PartCarrier.Body ? 0 : Centres / 2;
            HalfLength = Math.Max(HalfLength, Math.Abs(corner.X) + pivot);
        }

        HalfLength = Math.Max(HalfLength, (Centres / 2) + Math.Max(LeadingBase, TrailingBase));
        Lever = Math.Max(1, Lever);
    }

    public Vehicle Vehicle { get; }

    /// <summary>Whether the trailing end leads.</summary>
    public bool Turned { get; }

    public double Centres { get; }

    public double LeadingBase { get; }

    public double TrailingBase { get; }

    public FormCorner[] Corners { get; }

    /// <summary>Greatest ratio of a corner's distance from midway to half the distance of the guided points, at least 1.</summary>
    public double Lever { get; }

    /// <summary>Least distance between the guided points of any frame that carries a part, mm.</summary>
    public double Guide { get; }

    public double HalfWidth { get; }

    /// <summary>Greatest distance of anything from midway between the pivots, along the vehicle, mm.</summary>
    public double HalfLength { get; }

    /// <summary>
    /// The ways round a vehicle has to be swept: one when both ends are alike or it never turns. When alike, <paramref name="twin"/>
    /// tells for each part which part takes its place when the vehicle is turned round.
    /// </summary>
    public static IReadOnlyList<SweptForm> WaysRound(Vehicle vehicle, RunningPlay play, out int[]? twin)
    {
        var forward = new SweptForm(vehicle, play, turned: false);
        twin = null;
        if (!vehicle.EitherWayRound)
        {
            return [forward];
        }

        var backward = new SweptForm(vehicle, play, turned: true);
        twin = Twins(forward, backward);
        return twin is null ? [forward, backward] : [forward];
    }

    private static int[]? Twins(SweptForm forward, SweptForm backward)
    {
        if (forward.LeadingBase != backward.LeadingBase)
        {
            return null;
        }

        var twin = new int[forward.Vehicle.Parts.Count];
        for (int part = 0; part < twin.Length; part++)
        {
            var own = Places(forward, part);
            twin[part] = Enumerable.Range(0, twin.Length).FirstOrDefault(other => own.SetEquals(Places(backward, other)), -1);
            if (twin[part] < 0)
            {
                return null;
            }
        }

        return twin;
    }

    private static HashSet<(double X, double Y, PartCarrier Carrier)> Places(SweptForm form, int part) =>
        [.. form.Corners.Where(c => c.Part == part).Select(c => (c.X, c.Y, c.Carrier))];

    private static PartCarrier Carrier(PartCarrier carrier, bool turned) => (carrier, turned) switch
    {
        (PartCarrier.LeadingBogie, true) => PartCarrier.TrailingBogie,
        (PartCarrier.TrailingBogie, true) => PartCarrier.LeadingBogie,
        _ => carrier,
    };

    private static void AddRing(List<FormCorner> corners, IReadOnlyList<Point2> ring, PartCarrier carrier, int part)
    {
        int first = corners.Count, count = ring.Count;
        for (int i = 0; i < count; i++)
        {
            int edge = SideOf(ring[i], ring[(i + 1) % count]), before = SideOf(ring[(i + count - 1) % count], ring[i]);
            int corner = edge == before ? edge : edge * before == 0 ? edge + before : 2;
            corners.Add(new(ring[i].X, ring[i].Y, carrier, part, first + ((i + 1) % count), corner, edge));
        }
    }

    // The outward normal of an edge (dx, dy) of a counter-clockwise ring is (dy, −dx).
    private static int SideOf(Point2 from, Point2 to)
    {
        var run = to - from;
        return Math.Abs(run.X) <= SquareSine * run.Length ? 0 : run.X < 0 ? 1 : -1;
    }
}
