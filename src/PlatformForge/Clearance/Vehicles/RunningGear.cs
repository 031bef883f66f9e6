using System.Runtime.CompilerServices;
using PlatformForge.Geometry;
using PlatformForge.Track;

namespace PlatformForge.Clearance.Vehicles;

/// <summary>
/// The wheels of one vehicle on one track. It remembers how far behind the leading pivot every axle last stood, so that the next pose
/// nearby starts close to its answer; the answer itself does not depend on what went before, beyond rounding.
/// </summary>
internal struct RunningGear
{
    // Newton's rule doubles its digits each round; more rounds than this mean that it wanders between the sides of a kink.
    private const int NewtonRounds = 16;

    // A step of Newton's rule of h mm leaves an error of at most h²·(1/chord + curvature). After a step below this, in mm, that is under
    // the closeness
    // asked of poses for any chord above 2 mm, so no further round need prove it. Across a kink it does not hold.
    private const double LastSmoothStep = 1e-5;

    // Halvings that take a bracket of a vehicle's length below the closeness asked.
    private const int Halvings = 60;

    // Along a curve that stays within the greatest slew the arc is at most π/4·√2 = 1.111 of its chord; kinks add to it.
    private const double LongestArc = 1.25;

    private static readonly double LeastCosine = Math.Cos(PoseSolver.GreatestSlew);

    private readonly Centreline ride;
    private readonly double centres;
    private readonly double leadingBase;
    private readonly double trailingBase;
    private readonly double lastStep;
    private readonly double leadingAhead;
    private readonly double trailingAhead;
    private readonly AxleOffsets off;
    private double leadingRearBehind;
    private double trailingFrontBehind;
    private double trailingRearBehind;

    /// <param name="ride">Line the wheels follow.</param>
    /// <param name="centres">Distance between the pivots, mm.</param>
    /// <param name="leadingBase">Wheelbase of the leading bogie, mm.</param>
    /// <param name="trailingBase">Of the trailing one.</param>
    /// <param name="leadingAhead">How far forward of the middle of its axles the leading bogie's pivot lies, mm.</param>
    /// <param name="trailingAhead">The same of the trailing one.</param>
    /// <param name="off">How far the axles stand off the line.</param>
    public RunningGear(Centreline ride, double centres, double leadingBase, double trailingBase, double leadingAhead = 0, double trailingAhead = 0,
        AxleOffsets off = default)
    {
        this.off = off;
        (this.ride, this.centres, this.leadingBase, this.trailingBase) = (ride, centres, leadingBase, trailingBase);
        lastStep = ride.Kinks.Count > 0 ? PoseSolver.Closeness : LastSmoothStep;
        (this.leadingAhead, this.trailingAhead) = (leadingAhead, trailingAhead);
        leadingRearBehind = leadingBase / 2;
        SetBackTrailing();
    }

    /// <summary>The wheels of a vehicle, running as drawn or the other way round.</summary>
    /// <param name="ride">Line the wheels follow.</param>
    /// <param name="vehicle">The vehicle.</param>
    /// <param name="turned">Whether its trailing end is foremost.</param>
    /// <param name="off">How far the axles stand off the line, foremost first.</param>
    public static RunningGear Of(Centreline ride, Vehicle vehicle, bool turned, AxleOffsets off = default) => turned
        ? new(ride, vehicle.PivotCentres, vehicle.TrailingWheelbase, vehicle.LeadingWheelbase, -vehicle.TrailingPivotAhead, -vehicle.LeadingPivotAhead, off)
        : new(ride, vehicle.PivotCentres, vehicle.LeadingWheelbase, vehicle.TrailingWheelbase, vehicle.LeadingPivotAhead, vehicle.TrailingPivotAhead, off);

    /// <summary>How far behind the leading chainage each axle stands in the last pose, mm, foremost first. A pivot without a wheelbase
    /// counts as two axles at one place.</summary>
    public readonly double Behind(int axle) => axle switch
    {
        0 => -leadingBase / 2,
        1 => leadingRearBehind,
        2 => trailingFrontBehind,
        _ => trailingRearBehind,
    };

    /// <summary>Places the vehicle; false where it cannot stand.</summary>
    public bool Place(double leadingChainage, out VehiclePose pose)
    {
        pose = default;
        if (!PlaceLeading(leadingChainage, out var leading) || !PlaceTrailing(leadingChainage, leading.Origin, out var trailing))
        {
            return false;
        }

        var join = leading.Origin - trailing.Origin;
        double length = join.Length;
        var forward = join * (1 / length);
        pose = new(leadingChainage, new((leading.Origin + trailing.Origin) * 0.5, forward), leading, trailing);
        return Point2.Dot(forward, leading.Forward) >= LeastCosine && Point2.Dot(forward, trailing.Forward) >= LeastCosine;
    }

    private bool PlaceLeading(double u, out CarrierPose bogie)
    {
        var front = ride.At(u + (leadingBase / 2));
        var foremost = front.At(off.LeadFront);
        if (leadingBase == 0)
        {
            bogie = new(foremost, front.Tangent);
            return true;
        }

        double rear = u - leadingRearBehind;
        bool placed = ChordBack(foremost, u + (leadingBase / 2), leadingBase, off.LeadRear, ref rear, out var back);
        leadingRearBehind = u - rear;
        bogie = OnAxles(foremost, back.Position, leadingAhead, off.LeadPivot);
        return placed && Follows(bogie, front) && Follows(bogie, back);
    }

    private bool PlaceTrailing(double u, Point2 lead, out CarrierPose bogie)
    {
        if (trailingBase == 0)
        {
            double place = u - trailingFrontBehind;
            bool placed = ChordBack(lead, u + leadingAhead, centres, off.TrailFront, ref place, out var at);
            (trailingFrontBehind, trailingRearBehind) = (u - place, u - place);
            bogie = new(at.Position, at.Tangent);
            return placed;
        }

        double front = u - trailingFrontBehind, rear = u - trailingRearBehind;
        if (!TwoAxles(lead, ref front, ref rear, out var ahead, out var behind) && !TwoAxlesByHalving(lead, u, ref front, ref rear, out ahead, out behind))
        {
            bogie = default;
            SetBackTrailing();
            return false;
        }

        (trailingFrontBehind, trailingRearBehind) = (u - front, u - rear);
        bogie = OnAxles(ahead.Position, behind.Position, trailingAhead, off.TrailPivot);
        return Follows(bogie, ahead) && Follows(bogie, behind);
    }

    // The axles behind as they stand on straight track.
    private void SetBackTrailing()
    {
        double middle = centres - leadingAhead + trailingAhead;
        trailingFrontBehind = middle - (trailingBase / 2);
        trailingRearBehind = middle + (trailingBase / 2);
    }

    // Where an axle stands that is so far to the left of the line.
    private readonly TrackFrame Axle(double place, double aside)
    {
        var at = ride.At(place);
        return aside == 0 ? at : at with { Position = at.At(aside) };
    }

    // The place behind a point at an exact distance from it, of an axle that stands so far to the left. An axle off the line moves faster
    // or slower than its place does.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private readonly bool ChordBack(Point2 from, double fromChainage, double chord, double aside, ref double place, out TrackFrame at)
    {
        for (int round = 0; round < NewtonRounds; round++)
        {
            at = Axle(place, aside);
            double pace = 1 - (at.Curvature * aside);
            var join = from - at.Position;
            double excess = Point2.Dot(join, join) - (chord * chord), slope = 2 * pace * Point2.Dot(join, at.Tangent);
            if (slope <= chord)
            {
                break;
            }

            double step = excess / slope;
            place += step;
            if (Math.Abs(step) < lastStep)
            {
                at = new(at.Position + (at.Tangent * (pace * step)), at.Tangent, at.Curvature);
                return true;
            }
        }

        return ChordBackByHalving(from, fromChainage, chord, aside, ref place, out at);
    }

    private readonly bool ChordBackByHalving(Point2 from, double fromChainage, double chord, double aside, ref double place, out TrackFrame at)
    {
        double near = fromChainage, far = fromChainage - (LongestArc * chord);
        bool reaches = (from - Axle(far, aside).Position).Length >= chord;
        for (int halving = 0; halving < Halvings; halving++)
        {
            place = (near + far) / 2;
            if ((from - Axle(place, aside).Position).Length < chord)
            {
                near = place;
            }
            else
            {
                far = place;
            }
        }

        at = Axle(place, aside);
        return reaches;
    }

    // Both axles of the trailing bogie at once: their distance is the wheelbase, the pivot between or ahead of them is the pivot centres
    // from the leading pivot.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private readonly bool TwoAxles(Point2 lead, ref double front, ref double rear, out TrackFrame ahead, out TrackFrame behind)
    {
        ahead = behind = default;
        double ofFront = 0.5 + (trailingAhead / trailingBase), ofRear = 0.5 - (trailingAhead / trailingBase), across = off.TrailPivot / trailingBase;
        for (int round = 0; round < NewtonRounds; round++)
        {
            (ahead, behind) = (Axle(front, off.TrailFront), Axle(rear, off.TrailRear));
            double paceAhead = 1 - (ahead.Curvature * off.TrailFront), paceBehind = 1 - (behind.Curvature * off.TrailRear);
            var axle = ahead.Position - behind.Position;
            var body = lead - ((ahead.Position * ofFront) + (behind.Position * ofRear) + (axle.Left * across));
            double f = Point2.Dot(axle, axle) - (trailingBase * trailingBase), g = Point2.Dot(body, body) - (centres * centres);
            double fa = 2 * paceAhead * Point2.Dot(axle, ahead.Tangent), fb = -2 * paceBehind * Point2.Dot(axle, behind.Tangent);
            double ga = -2 * paceAhead * Point2.Dot(body, (ahead.Tangent * ofFront) + (ahead.Tangent.Left * across));
            double gb = -2 * paceBehind * Point2.Dot(body, (behind.Tangent * ofRear) - (behind.Tangent.Left * across));
            double determinant = (fa * gb) - (fb * ga);
            if (fa <= trailingBase || fb >= -trailingBase || ga + gb >= -centres || (trailingAhead == 0 && Math.Max(ga, gb) >= -centres / 2))
            {
                return false;
            }

            double stepFront = ((f * gb) - (fb * g)) / determinant, stepRear = ((fa * g) - (f * ga)) / determinant;
            front -= stepFront;
            rear -= stepRear;
            if (Math.Abs(stepFront) < lastStep && Math.Abs(stepRear) < lastStep)
            {
                ahead = new(ahead.Position - (ahead.Tangent * (paceAhead * stepFront)), ahead.Tangent, ahead.Curvature);
                behind = new(behind.Position - (behind.Tangent * (paceBehind * stepRear)), behind.Tangent, behind.Curvature);
                return true;
            }
        }

        return false;
    }

    private readonly bool TwoAxlesByHalving(Point2 lead, double u, ref double front, ref double rear, out TrackFrame ahead, out TrackFrame behind)
    {
        ahead = behind = default;
        double near = u + leadingAhead - trailingAhead + (trailingBase / 2), far = u + leadingAhead - trailingAhead - (LongestArc * centres);
        bool reaches = false;
        for (int halving = -1; halving < Halvings; halving++)
        {
            front = halving < 0 ? far : (near + far) / 2; // the first round tells whether the far end is far enough
            ahead = Axle(front, off.TrailFront);
            rear = front - trailingBase;
            if (!ChordBack(ahead.Position, front, trailingBase, off.TrailRear, ref rear, out behind))
            {
                return false;
            }

            bool beyond = (lead - OnAxles(ahead.Position, behind.Position, trailingAhead, off.TrailPivot).Origin).Length >= centres;
            reaches |= beyond;
            (near, far) = beyond ? (near, front) : (front, far);
        }

        return reaches;
    }

    private static CarrierPose OnAxles(Point2 front, Point2 rear, double pivotAhead, double pivotAside)
    {
        var axle = front - rear;
        var forward = axle * (1 / axle.Length);
        return new(((front + rear) * 0.5) + (forward * pivotAhead) + (forward.Left * pivotAside), forward);
    }

    private static bool Follows(CarrierPose bogie, TrackFrame track) => Point2.Dot(bogie.Forward, track.Tangent) >= LeastCosine;
}
