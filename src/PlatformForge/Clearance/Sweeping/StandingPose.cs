using PlatformForge.Clearance.Vehicles;
using PlatformForge.Geometry;
using PlatformForge.Track;
using PlatformForge.Track.Surveys.Admissible;

namespace PlatformForge.Clearance.Sweeping;

/// <summary>A vehicle standing on its track, with the axles that carry it.</summary>
internal sealed class StandingPose
{
    private readonly VehiclePose pose;
    private readonly Vehicle vehicle;
    private readonly Centreline ride;
    private readonly double leading, trailing;

    /// <param name="ride">The line it stands on.</param>
    /// <param name="vehicle">The vehicle.</param>
    /// <param name="pose">How it stands.</param>
    /// <param name="chainage">Ride chainage midway between its pivots, mm.</param>
    /// <param name="guess">Chart chainage near it, mm.</param>
    public StandingPose(Centreline ride, Vehicle vehicle, VehiclePose pose, double chainage, double guess)
    {
        (this.ride, this.vehicle, this.pose, Guess) = (ride, vehicle, pose, guess);
        double half = vehicle.PivotCentres / 2;
        leading = ride.Locate(pose.Body.Apply(new(half, 0)), chainage + (half * Ahead(chainage))).Chainage;
        trailing = ride.Locate(pose.Body.Apply(new(-half, 0)), chainage - (half * Ahead(chainage))).Chainage;
    }

    public double Guess { get; }

    /// <summary>Sum of the line's offsets that a place of a carrier moves by, square to the carrier, for a small change of the line.</summary>
    /// <param name="carrier">What carries it.</param>
    /// <param name="x">Place along the carrier, mm.</param>
    public LineMeasure Measure(PartCarrier carrier, double x)
    {
        List<double> at = [], weights = [];
        switch (carrier)
        {
            case PartCarrier.LeadingBogie:
                AddAxles(pose.LeadingBogie.Forward, leading, vehicle.LeadingWheelbase, vehicle.LeadingPivotAhead, x, 1);
                break;
            case PartCarrier.TrailingBogie:
                AddAxles(pose.TrailingBogie.Forward, trailing, vehicle.TrailingWheelbase, vehicle.TrailingPivotAhead, x, 1);
                break;
            default:
                double share = x / vehicle.PivotCentres;
                AddAxles(pose.Body.Forward, leading, vehicle.LeadingWheelbase, vehicle.LeadingPivotAhead, 0, 0.5 + share);
                AddAxles(pose.Body.Forward, trailing, vehicle.TrailingWheelbase, vehicle.TrailingPivotAhead, 0, 0.5 - share);
                break;
        }

        return new([.. at], [.. weights]);

        // A place so far forward of a pivot, which itself lies so far forward of midway between its axles.
        void AddAxles(Point2 forward, double pivot, double wheelbase, double pivotAhead, double place, double weight)
        {
            double way = Ahead(pivot), middle = pivot - (way * pivotAhead), share = wheelbase == 0 ? 0 : (pivotAhead + place) / wheelbase;
            AddAxle(forward, middle + (way * wheelbase / 2), weight * (0.5 + share));
            AddAxle(forward, middle - (way * wheelbase / 2), weight * (0.5 - share));
        }

        void AddAxle(Point2 forward, double chainage, double weight)
        {
            at.Add(chainage);
            weights.Add(weight * Point2.Dot(forward.Left, ride.At(chainage).Tangent.Left));
        }
    }

    /// <summary>Where a place of the carrier stands in the chart and how far it reaches to either side.</summary>
    /// <param name="chart">The chart.</param>
    /// <param name="carrier">What carries it.</param>
    /// <param name="x">Place along the carrier, mm.</param>
    /// <param name="left">Half width to the carrier's left there, mm.</param>
    /// <param name="right">Half width to its right.</param>
    /// <param name="moves">How far it may move square to the carrier, mm, to its left.</param>
    public DoubtTrace Place(Centreline chart, PartCarrier carrier, double x, double left, double right, LineRange moves)
    {
        var frame = pose.Of(carrier);
        var axis = frame.Apply(new(x, 0));
        var place = chart.Locate(axis, Guess + (x * Math.Sign(Point2.Dot(frame.Forward, chart.At(Guess).Tangent))));
        var tangent = chart.At(place.Chainage).Tangent;
        var across = frame.Forward.Left;
        double square = Point2.Dot(across, tangent.Left), along = Point2.Dot(across, tangent);

        // Square to the chart a side moves by more than square to the carrier, by the cosine between them; a vehicle that stands against
        // the chart has its left on the right.
        double least = moves.Least / square, most = moves.Most / square;
        (least, most) = (Math.Min(least, most), Math.Max(least, most));
        bool same = square > 0;
        double toLeft = same ? left : right, toRight = same ? right : left, turn = same ? along : -along;
        return new(
            place.Chainage + (toLeft * turn), place.Offset + (toLeft * Math.Abs(square)),
            place.Chainage - (toRight * turn), -place.Offset + (toRight * Math.Abs(square)),
            new(least, most));
    }

    // +1 where the vehicle's leading end points along the ride line, −1 where it is turned round.
    private double Ahead(double chainage) => Point2.Dot(pose.Body.Forward, ride.At(chainage).Tangent) > 0 ? 1 : -1;
}
