using PlatformForge.Clearance.Vehicles;
using PlatformForge.Geometry;

namespace PlatformForge.Verification.Poses;

/// <summary>
/// What of a vehicle is off the track's middle together: its body, or one of its bogies, which stands as a vehicle on two axles whatever lies on it.
/// </summary>
/// <param name="Stands">The carrier as a vehicle with its parts.</param>
/// <param name="Ahead">From its foremost axle on to that of the whole vehicle, mm.</param>
/// <param name="Behind">From its foremost axle back to the hindmost of the whole vehicle, mm.</param>
/// <param name="Front">From its foremost axle on to the whole vehicle's front end, mm.</param>
/// <param name="Rear">From its foremost axle back to the whole vehicle's rear end, mm.</param>
internal sealed record LooseCarrier(Vehicle Stands, double Ahead, double Behind, double Front, double Rear)
{
    /// <summary>Whether it leans on springs: a bogie's frames do not.</summary>
    public bool Rolls { get; init; } = true;

    /// <summary>A vehicle as one, with all that stands true on it.</summary>
    public static LooseCarrier Whole(Vehicle vehicle)
    {
        double half = vehicle.PivotCentres / 2;
        double foremost = half - vehicle.LeadingPivotAhead + (vehicle.LeadingWheelbase / 2),
            hindmost = -half - vehicle.TrailingPivotAhead - (vehicle.TrailingWheelbase / 2);
        double[] ends =
        [
            .. from part in vehicle.Parts
               let pivot = part.Carrier switch { PartCarrier.LeadingBogie => half, PartCarrier.TrailingBogie => -half, _ => 0 }
               from corner in part.Outline
               select corner.X + pivot,
        ];
        return new(vehicle, 0, foremost - hindmost, ends.DefaultIfEmpty(foremost).Max() - foremost, foremost - ends.DefaultIfEmpty(hindmost).Min());
    }

    /// <summary>The carriers of a vehicle that carry anything.</summary>
    /// <param name="vehicle">The vehicle as it stands, leading end first.</param>
    public static IEnumerable<LooseCarrier> Of(Vehicle vehicle)
    {
        double half = vehicle.PivotCentres / 2;
        double foremost = half - vehicle.LeadingPivotAhead + (vehicle.LeadingWheelbase / 2);
        var whole = Whole(vehicle);
        var body = vehicle with { Parts = Carried(vehicle, PartCarrier.Body, 0) };
        if (body.Parts.Count > 0)
        {
            yield return whole with { Stands = body };
        }

        foreach (var (carrier, wheelbase, ahead, pivot) in new[]
        {
            (PartCarrier.LeadingBogie, vehicle.LeadingWheelbase, vehicle.LeadingPivotAhead, half),
            (PartCarrier.TrailingBogie, vehicle.TrailingWheelbase, vehicle.TrailingPivotAhead, -half),
        })
        {
            var parts = Carried(vehicle, carrier, ahead);
            if (parts.Length > 0)
            {
                double front = pivot - ahead + (wheelbase / 2);
                yield return new(
                    new(vehicle.Name, wheelbase, 0, 0, parts) { Key = vehicle.Key, TruckOf = vehicle.Name },
                    foremost - front, whole.Behind - (foremost - front), whole.Front + foremost - front, whole.Rear - (foremost - front))
                {
                    Rolls = false,
                };
            }
        }
    }

    // What lies on a bogie lies on the body of the vehicle that it is by itself, whose middle is midway between its axles.
    private static VehiclePart[] Carried(Vehicle vehicle, PartCarrier carrier, double ahead) =>
        [.. vehicle.Parts.Where(p => p.Carrier == carrier).Select(p =>
            p with { Carrier = PartCarrier.Body, Outline = ahead == 0 ? p.Outline : [.. p.Outline.Select(c => new Point2(c.X + ahead, c.Y))] })];
}
