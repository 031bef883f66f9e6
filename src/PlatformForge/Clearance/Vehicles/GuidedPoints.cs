namespace PlatformForge.Clearance.Vehicles;

/// <summary>
/// The two points that guide what carries a part, and how far each may be off the middle of the track: a body at its pivots or end axles, a
/// bogie at its axles.
/// </summary>
/// <param name="Apart">Their distance, mm.</param>
/// <param name="Leading">Play of the leading one.</param>
/// <param name="Trailing">Play of the trailing one.</param>
internal readonly record struct GuidedPoints(double Apart, EndPlay Leading, EndPlay Trailing)
{
    /// <summary>Whether either can be off.</summary>
    public bool IsLoose => Leading.Most > 0 || Trailing.Most > 0;

    /// <summary>The guided points of a carrier, leading end of the vehicle first.</summary>
    public static GuidedPoints Of(Vehicle vehicle, PartCarrier carrier, RunningPlay play) => carrier switch
    {
        PartCarrier.LeadingBogie => Axles(vehicle.LeadingWheelbase, play),
        PartCarrier.TrailingBogie => Axles(vehicle.TrailingWheelbase, play),
        _ => new(
            vehicle.PivotCentres,
            EndPlay.Of(vehicle.LeadingWheelbase, vehicle.LeadingPivotAhead, vehicle.Hangs, play),
            EndPlay.Of(vehicle.TrailingWheelbase, vehicle.TrailingPivotAhead, vehicle.Hangs, play)),
    };

    /// <summary>The same of a vehicle whose trailing end is foremost.</summary>
    public GuidedPoints Turned => new(Apart, Trailing.Turned, Leading.Turned);

    private static GuidedPoints Axles(double wheelbase, RunningPlay play)
    {
        var axle = EndPlay.Of(0, 0, false, play);
        return new(wheelbase, axle, axle);
    }
}

/// <summary>
/// How far the axles that carry one end stand off the track's middle when that end is off to the left by the most that it can be, mm, and
/// how far the body is off
/// on its pivot. An end without a wheelbase is an axle itself. A pivot beyond the axles of what carries it, as that of a truck or the hinge
/// of a hung body, goes
/// farthest when they are off to opposite sides.
/// </summary>
/// <param name="Front">Forward axle.</param>
/// <param name="Rear">Rear axle; the same as the forward one where there is only one.</param>
/// <param name="Pivot">The body on its pivot, across what carries it.</param>
/// <param name="Most">How far all that brings the guided point, to first order.</param>
internal readonly record struct EndPlay(double Front, double Rear, double Pivot, double Most)
{
    /// <summary>The same end with its rear axle foremost.</summary>
    public EndPlay Turned => this with { Front = Rear, Rear = Front };

    /// <param name="wheelbase">Of what carries the end, mm; 0 for an axle.</param>
    /// <param name="ahead">How far forward of the middle of its axles the pivot lies, mm.</param>
    /// <param name="hinged">Whether the end hangs on a hinge, which has no play of its own.</param>
    /// <param name="play">The play.</param>
    public static EndPlay Of(double wheelbase, double ahead, bool hinged, RunningPlay play)
    {
        if (wheelbase == 0)
        {
            return new(play.Wheelset, play.Wheelset, 0, play.Wheelset);
        }

        double ofFront = 0.5 + (ahead / wheelbase), ofRear = 0.5 - (ahead / wheelbase), pivot = hinged ? 0 : play.Pivot;
        return new(
            ofFront < 0 ? -play.Wheelset : play.Wheelset,
            ofRear < 0 ? -play.Wheelset : play.Wheelset,
            pivot,
            (play.Wheelset * (Math.Abs(ofFront) + Math.Abs(ofRear))) + pivot);
    }
}
