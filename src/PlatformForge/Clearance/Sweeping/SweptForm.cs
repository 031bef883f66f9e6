using PlatformForge.Geometry;

namespace PlatformForge.Clearance.Sweeping;

/// <summary>One corner of a part, with the edge that runs from it to the next corner of its ring.</summary>
/// <param name="X">Forward in the carrier's frame, mm.</param>
/// <param name="Y">To the left, mm.</param>
/// <param name="Carrier">What carries it.</param>
/// <param name="Outline">Index of its outline in the form: that of the part in the vehicle; those of parts turned round follow.</param>
/// <param name="Next">Index of the next corner of the ring.</param>
/// <param name="CornerSide">+1 where the corner can be the leftmost place of its part, −1 the rightmost, 2 both, 0 neither.</param>
/// <param name="EdgeSide">+1 when the edge looks left, −1 right, 0 when it runs square to the vehicle.</param>
internal readonly record struct FormCorner(double X, double Y, PartCarrier Carrier, int Outline, int Next, int CornerSide, int EdgeSide);

/// <summary>
/// A vehicle made ready for sweeping: widened outlines as one flat list of corners. When both its ends stand on the track alike, one form
/// carries the outlines of both ways round.
/// </summary>
internal sealed class SweptForm
{
    // An edge whose normal leans by less than this sine from the vehicle's axis is taken to run square to the vehicle.
    private const double SquareSine = 1e-9;

    private SweptForm(Vehicle vehicle, IReadOnlyList<Ring> outlines, int[] about, bool turned)
    {
        Vehicle = vehicle;
        Turned = turned;
        About = about;
        Outlines = outlines.Count;
        Centres = vehicle.PivotCentres;
        (LeadingBase, TrailingBase) = turned ? (vehicle.TrailingWheelbase, vehicle.LeadingWheelbase) : (vehicle.LeadingWheelbase, vehicle.TrailingWheelbase);
        (LeadingAhead, TrailingAhead) = turned ? (-vehicle.TrailingPivotAhead, -vehicle.LeadingPivotAhead) : (vehicle.LeadingPivotAhead, vehicle.TrailingPivotAhead);
        var corners = new List<FormCorner>();
        for (int outline = 0; outline < outlines.Count; outline++)
        {
            AddRing(corners, outlines[outline].Points, outlines[outline].Carrier, outline);
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

        HalfLength = Math.Max(HalfLength, (Centres / 2) + Math.Max(LeadingBase + Math.Abs(LeadingAhead), TrailingBase + Math.Abs(TrailingAhead)));

        // A pivot beyond the axles that carry it moves by more than either of them: the weights of both add up to this in amount.
        double hung = Math.Max(1, Math.Max(Hung(LeadingAhead, LeadingBase), Hung(TrailingAhead, TrailingBase)));
        Lever = Math.Max(1, Lever) * hung;
        Guide /= hung;
        Slew = (Centres / 2) + Math.Max(Aside(LeadingAhead, LeadingBase), Aside(TrailingAhead, TrailingBase));
    }

    public Vehicle Vehicle { get; }

    /// <summary>Number of outlines.</summary>
    public int Outlines { get; }

    /// <summary>For each part the outline that shows it turned round; its own when the form is of one way only.</summary>
    public int[] About { get; }

    /// <summary>Whether the trailing end leads.</summary>
    public bool Turned { get; }

    public double Centres { get; }

    public double LeadingBase { get; }

    public double TrailingBase { get; }

    /// <summary>How far forward of the middle of its axles the leading pivot lies, mm.</summary>
    public double LeadingAhead { get; }

    /// <summary>The same of the trailing pivot.</summary>
    public double TrailingAhead { get; }

    /// <summary>Radius times the sine of the greatest angle between vehicle and track under its pivots on an even curve, to first order, mm.</summary>
    public double Slew { get; }

    public FormCorner[] Corners { get; }

    /// <summary>Greatest ratio of a corner's distance from midway to half the distance of the guided points, at least 1; times the same of a pivot over its
    /// axles where it lies beyond them.</summary>
    public double Lever { get; }

    /// <summary>Least distance between the guided points of any frame that carries a part, mm.</summary>
    public double Guide { get; }

    public double HalfWidth { get; }

    /// <summary>Greatest distance of anything from midway between the pivots, along the vehicle, mm.</summary>
    public double HalfLength { get; }

    /// <summary>
    /// The forms in which a vehicle has to be swept: one when it never turns, or when both its ends stand on the track alike, so that one
    /// pose serves both ways round; otherwise one for each way.
    /// </summary>
    /// <param name="vehicle">The vehicle.</param>
    /// <param name="play">Play that widens its outlines.</param>
    /// <param name="halts">Whether it halts before buffer stops: where, depends on the end that leads, so only a vehicle that looks alike both
    /// ways round is then swept once.</param>
    public static IReadOnlyList<SweptForm> WaysRound(Vehicle vehicle, RunningPlay play, bool halts)
    {
        var forward = Rings(vehicle, play, turned: false);
        int[] own = [.. Enumerable.Range(0, forward.Count)];
        if (!vehicle.EitherWayRound)
        {
            return [new(vehicle, forward, own, turned: false)];
        }

        var backward = Rings(vehicle, play, turned: true);
        if (vehicle.LeadingWheelbase == vehicle.TrailingWheelbase && vehicle.LeadingPivotAhead == -vehicle.TrailingPivotAhead)
        {
            var both = new List<Ring>(forward);
            int[] about = [.. backward.Select(ring => IndexOrAdd(both, ring, forward.Count))];
            if (!halts || both.Count == forward.Count)
            {
                return [new(vehicle, both, about, turned: false)];
            }
        }

        return [new(vehicle, forward, own, turned: false), new(vehicle, backward, own, turned: true)];
    }

    private static double Hung(double ahead, double wheelbase) => ahead == 0 ? 1 : 2 * Math.Abs(ahead) / wheelbase;

    // A pivot off the middle of its axles lies off the track by the versine over the axles less that over twice its distance; over the
    // pivot centres that turns the vehicle. A pivot midway was always counted with the squares.
    private double Aside(double ahead, double wheelbase) => ahead == 0 ? 0 : Math.Abs((wheelbase * wheelbase / 4) - (ahead * ahead)) / (2 * Centres);

    private static List<Ring> Rings(Vehicle vehicle, RunningPlay play, bool turned)
    {
        var rings = new List<Ring>();
        foreach (var part in vehicle.Parts)
        {
            var points = PlayInflation.Widen(part, vehicle, play);
            rings.Add(new(turned ? [.. points.Select(p => p * -1)] : points, Carrier(part.Carrier, turned)));
        }

        return rings;
    }

    // Which of the first outlines looks like a ring; one that none looks like is added.
    private static int IndexOrAdd(List<Ring> outlines, Ring ring, int first)
    {
        int same = outlines.FindIndex(0, first, other => other.Carrier == ring.Carrier && ring.Points.ToHashSet().SetEquals(other.Points));
        if (same >= 0)
        {
            return same;
        }

        outlines.Add(ring);
        return outlines.Count - 1;
    }

    private static PartCarrier Carrier(PartCarrier carrier, bool turned) => (carrier, turned) switch
    {
        (PartCarrier.LeadingBogie, true) => PartCarrier.TrailingBogie,
        (PartCarrier.TrailingBogie, true) => PartCarrier.LeadingBogie,
        _ => carrier,
    };

    private static void AddRing(List<FormCorner> corners, IReadOnlyList<Point2> ring, PartCarrier carrier, int outline)
    {
        int first = corners.Count, count = ring.Count;
        for (int i = 0; i < count; i++)
        {
            int edge = SideOf(ring[i], ring[(i + 1) % count]), before = SideOf(ring[(i + count - 1) % count], ring[i]);
            int corner = edge == before ? edge : edge * before == 0 ? edge + before : 2;
            corners.Add(new(ring[i].X, ring[i].Y, carrier, outline, first + ((i + 1) % count), corner, edge));
        }
    }

    // The outward normal of an edge (dx, dy) of a counter-clockwise ring is (dy, −dx).
    private static int SideOf(Point2 from, Point2 to)
    {
        var run = to - from;
        return Math.Abs(run.X) <= SquareSine * run.Length ? 0 : run.X < 0 ? 1 : -1;
    }

    // A widened outline on what carries it.
    private sealed record Ring(IReadOnlyList<Point2> Points, PartCarrier Carrier);
}
