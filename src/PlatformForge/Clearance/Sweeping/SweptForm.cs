using PlatformForge.Clearance.Vehicles;
using PlatformForge.Geometry;
using PlatformForge.Track;

namespace PlatformForge.Clearance.Sweeping;

/// <summary>
/// A vehicle, or what one of its carriers carries, made ready for sweeping: leant outlines as one flat list of corners, and how far the
/// guided points may be off. When
/// both ends stand on the track alike, one form carries the outlines of both ways round. A vehicle without play is one form; with play its
/// body and each of its bogies
/// are forms of their own, since each is off by itself: a bogie stands as a vehicle on two axles does.
/// </summary>
internal sealed class SweptForm
{
    private readonly double pivot;

    private SweptForm(Vehicle vehicle, Frame frame, IReadOnlyList<Ring> outlines, (int Shape, int Outline)[] shows, (double Rear, double Front) extent,
        bool turned)
    {
        Vehicle = vehicle;
        Turned = turned;
        Shows = shows;
        Outlines = outlines.Count;
        Points = turned ? frame.Points.Turned : frame.Points;
        IsBogie = frame.IsBogie;
        pivot = (turned ? -1 : 1) * frame.Pivot;
        (Rear, Front) = (extent.Rear - pivot, extent.Front - pivot);
        Centres = frame.Points.Apart;
        if (!IsBogie)
        {
            (LeadingBase, TrailingBase) = turned ? (vehicle.TrailingWheelbase, vehicle.LeadingWheelbase)
                : (vehicle.LeadingWheelbase, vehicle.TrailingWheelbase);
            (LeadingAhead, TrailingAhead) = turned ? (-vehicle.TrailingPivotAhead, -vehicle.LeadingPivotAhead)
                : (vehicle.LeadingPivotAhead, vehicle.TrailingPivotAhead);
        }

        Corners = CornersOf(outlines);
        (Lever, Guide, HalfWidth, HalfLength) = Measured();
        HalfLength = Math.Max(HalfLength, (Centres / 2) + Math.Max(LeadingBase + Math.Abs(LeadingAhead), TrailingBase + Math.Abs(TrailingAhead)));
        OverPoints = Math.Max(1, Lever);

        // A pivot beyond the axles that carry it moves by more than either of them: the weights of both add up to this in amount.
        double hung = Math.Max(1, Math.Max(Hung(LeadingAhead, LeadingBase), Hung(TrailingAhead, TrailingBase)));
        Lever = Math.Max(1, Lever) * hung;
        Guide /= hung;
        Slew = (Centres / 2) + Math.Max(Aside(LeadingAhead, LeadingBase), Aside(TrailingAhead, TrailingBase));
    }

    private static FormCorner[] CornersOf(IReadOnlyList<Ring> outlines)
    {
        var corners = new List<FormCorner>();
        for (int outline = 0; outline < outlines.Count; outline++)
        {
            FormCorner.AddRing(corners, outlines[outline].Points, outlines[outline].Carrier, outline);
        }

        return [.. corners];
    }

    // What the corners by themselves make of the figures of these names.
    private (double Lever, double Guide, double HalfWidth, double HalfLength) Measured()
    {
        double lever = 0, guide = Centres, halfWidth = 0, halfLength = 0;
        foreach (var corner in Corners)
        {
            double half = corner.Carrier == PartCarrier.Body ? Centres / 2 : (corner.Carrier == PartCarrier.LeadingBogie ? LeadingBase : TrailingBase) / 2;
            lever = Math.Max(lever, Math.Abs(corner.X) / half);
            guide = Math.Min(guide, 2 * half);
            halfWidth = Math.Max(halfWidth, Math.Abs(corner.Y));
            double carrier = corner.Carrier == PartCarrier.Body ? 0 : Centres / 2;
            halfLength = Math.Max(halfLength, Math.Abs(corner.X) + carrier);
        }

        return (lever, guide, halfWidth, halfLength);
    }

    public Vehicle Vehicle { get; }

    /// <summary>Number of outlines.</summary>
    public int Outlines { get; }

    /// <summary>Which outline shows which shape of the vehicle; one shape may be shown by two, as drawn and turned round.</summary>
    public IReadOnlyList<(int Shape, int Outline)> Shows { get; }

    /// <summary>Whether the trailing end leads.</summary>
    public bool Turned { get; }

    /// <summary>Whether it is what a bogie carries, with the bogie's axles as guided points.</summary>
    public bool IsBogie { get; }

    /// <summary>The guided points, foremost first, with their play; nil for a form of a vehicle that has none.</summary>
    public GuidedPoints Points { get; }

    public double Centres { get; }

    public double LeadingBase { get; }

    public double TrailingBase { get; }

    /// <summary>How far forward of the middle of its axles the leading pivot lies, mm.</summary>
    public double LeadingAhead { get; }

    /// <summary>The same of the trailing pivot.</summary>
    public double TrailingAhead { get; }

    /// <summary>How far forward the vehicle's end lies from midway between the guided points, mm; with whatever else of the vehicle lies
    /// farther.</summary>
    public double Front { get; }

    /// <summary>The same of its rear end; behind is negative.</summary>
    public double Rear { get; }

    /// <summary>Radius times the sine of the greatest angle between vehicle and track under its pivots on an even curve, to first order,
    /// mm.</summary>
    public double Slew { get; }

    public FormCorner[] Corners { get; }

    /// <summary>Greatest ratio of a corner's distance from midway to half the distance of the guided points, at least 1.</summary>
    public double OverPoints { get; }

    /// <summary>The same; times that of a pivot over its axles where it lies beyond them.</summary>
    public double Lever { get; }

    /// <summary>Least distance between the guided points of any frame that carries a part, mm.</summary>
    public double Guide { get; }

    public double HalfWidth { get; }

    /// <summary>Greatest distance of anything from midway between the pivots, along the vehicle, mm.</summary>
    public double HalfLength { get; }

    /// <summary>
    /// The forms in which a vehicle has to be swept. For what stands on a pair of guided points that is one when it never turns, or when
    /// both its ends stand on the
    /// track alike, so that one pose serves both ways round; otherwise one for each way.
    /// </summary>
    /// <param name="vehicle">The vehicle.</param>
    /// <param name="shapes">What is swept of it.</param>
    /// <param name="play">Play of its guided points.</param>
    /// <param name="halts">Whether it halts before buffer stops: where, depends on the end that leads, so only a vehicle that looks alike both
    /// ways round is then swept once.</param>
    public static IEnumerable<SweptForm> WaysRound(Vehicle vehicle, SweptShape[] shapes, RunningPlay play, bool halts)
    {
        int[] all = [.. Enumerable.Range(0, shapes.Length)];
        var body = new Frame(GuidedPoints.Of(vehicle, PartCarrier.Body, play), false, 0);
        if (!body.Points.IsLoose)
        {
            return Ways(vehicle, body, [.. all.Select(i => (i, new Ring(shapes[i].Outline, shapes[i].Part.Carrier)))], halts);
        }

        var forms = new List<SweptForm>();
        foreach (var carrier in new[] { PartCarrier.Body, PartCarrier.LeadingBogie, PartCarrier.TrailingBogie })
        {
            double half = vehicle.PivotCentres / 2, ahead = carrier == PartCarrier.LeadingBogie ? vehicle.LeadingPivotAhead : vehicle.TrailingPivotAhead;
            var frame = carrier switch
            {
                PartCarrier.LeadingBogie => new Frame(GuidedPoints.Of(vehicle, carrier, play), true, half - ahead),
                PartCarrier.TrailingBogie => new Frame(GuidedPoints.Of(vehicle, carrier, play), true, -half - ahead),
                _ => body,
            };
            (int, Ring)[] own = [.. all.Where(i => shapes[i].Part.Carrier == carrier)
                .Select(i => (i, new Ring(Placed(shapes[i].Outline, frame.IsBogie ? ahead : 0), PartCarrier.Body)))];
            if (own.Length > 0)
            {
                forms.AddRange(Ways(vehicle, frame, own, halts));
            }
        }

        return forms;
    }

    /// <summary>The wheels that carry it, off the middle of the track in one way.</summary>
    public RunningGear Gear(Centreline ride, PlayState state)
    {
        var off = AxleOffsets.Of(Points.Leading, state.Leading, Points.Trailing, state.Trailing);
        return IsBogie ? new(ride, Centres, 0, 0, off: off) : RunningGear.Of(ride, Vehicle, Turned, off);
    }

    private static IReadOnlyList<Point2> Placed(IReadOnlyList<Point2> ring, double ahead) =>
        ahead == 0 ? ring : [.. ring.Select(p => new Point2(p.X + ahead, p.Y))];

    private static List<SweptForm> Ways(Vehicle vehicle, Frame frame, (int Shape, Ring Ring)[] forward, bool halts)
    {
        var extent = Extent(vehicle);
        Ring[] rings = [.. forward.Select(f => f.Ring)];
        (int, int)[] own = [.. forward.Select((f, i) => (f.Shape, i))];
        if (!vehicle.EitherWayRound)
        {
            return [new(vehicle, frame, rings, own, extent, turned: false)];
        }

        Ring[] backward = [.. rings.Select(r => r.Turned)];
        if (frame.IsBogie || (vehicle.LeadingWheelbase == vehicle.TrailingWheelbase && vehicle.LeadingPivotAhead == -vehicle.TrailingPivotAhead))
        {
            var both = new List<Ring>(rings);
            (int, int)[] about = [.. backward.Select((ring, i) => (forward[i].Shape, IndexOrAdd(both, ring, rings.Length)))];
            if (!halts || (both.Count == rings.Length && frame.Pivot == 0))
            {
                return [new(vehicle, frame, both, [.. own.Concat(about).Distinct()], extent, turned: false)];
            }
        }

        return [new(vehicle, frame, rings, own, extent, turned: false), new(vehicle, frame, backward, own, (-extent.Front, -extent.Rear), turned: true)];
    }

    // Everything of the vehicle along it from midway between its pivots, on straight track.
    private static (double Rear, double Front) Extent(Vehicle vehicle)
    {
        double rear = 0, front = 0, half = vehicle.PivotCentres / 2;
        foreach (var part in vehicle.Parts)
        {
            double carrier = part.Carrier switch { PartCarrier.LeadingBogie => half, PartCarrier.TrailingBogie => -half, _ => 0 };
            (rear, front) = (Math.Min(rear, part.Outline.Min(p => p.X) + carrier), Math.Max(front, part.Outline.Max(p => p.X) + carrier));
        }

        return (rear, front);
    }

    private static double Hung(double ahead, double wheelbase) => ahead == 0 ? 1 : 2 * Math.Abs(ahead) / wheelbase;

    // A pivot off the middle of its axles lies off the track by the versine over the axles less that over twice its distance; over the
    // pivot centres that turns the vehicle. A pivot midway was always counted with the squares.
    private double Aside(double ahead, double wheelbase) => ahead == 0 ? 0 : Math.Abs((wheelbase * wheelbase / 4) - (ahead * ahead)) / (2 * Centres);

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

    // What carries shapes: its guided points, whether it is a bogie, and how far midway between its guided points lies ahead of midway
    // between the vehicle's pivots.
    private sealed record Frame(GuidedPoints Points, bool IsBogie, double Pivot);

    // A leant outline on what carries it.
    private sealed record Ring(IReadOnlyList<Point2> Points, PartCarrier Carrier)
    {
        public Ring Turned => new([.. Points.Select(p => p * -1)], Carrier switch
        {
            PartCarrier.LeadingBogie => PartCarrier.TrailingBogie,
            PartCarrier.TrailingBogie => PartCarrier.LeadingBogie,
            _ => Carrier,
        });
    }
}
