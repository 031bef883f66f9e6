using PlatformForge.Clearance.Vehicles;
using PlatformForge.Exports.Looks;
using PlatformForge.Geometry;

namespace PlatformForge.Exports.Drawings.Ink;

/// <summary>A vehicle as it stands: body, parts, bogies and axles as shapes in the layout frame.</summary>
internal static class VehicleShape
{
    // An axle as wide as the gauge and this much more on either side, as a share of it: the tyres.
    private const double Tyre = 0.12;

    /// <summary>Draws it, what the body carries first, bogies and axles over it.</summary>
    /// <param name="sheet">Where to draw.</param>
    /// <param name="pose">The vehicle.</param>
    /// <param name="of">From the layout frame to the sheet.</param>
    /// <param name="colour">Its colour.</param>
    /// <param name="gauge">Distance between the running edges, mm.</param>
    public static void Draw(Sheet sheet, VehicleOutlinePose pose, Func<Point2, Point2> of, Rgb colour, double gauge)
    {
        foreach (var placed in pose.Parts.OrderBy(p => p.Part.Carrier != PartCarrier.Body).ThenBy(p => -Area(p)))
        {
            bool bogie = placed.Part.Carrier != PartCarrier.Body;
            sheet.Area(placed.Ring.Select(of), new(colour, bogie ? 0.3 : 0.13), new(bogie ? 0.2 : 0.3, colour));
        }

        foreach (var (frame, wheelbase, ahead) in new[] { (pose.Pose.LeadingBogie, pose.Vehicle.LeadingWheelbase, pose.Vehicle.LeadingPivotAhead),
            (pose.Pose.TrailingBogie, pose.Vehicle.TrailingWheelbase, pose.Vehicle.TrailingPivotAhead) })
        {
            double half = gauge * (0.5 + Tyre);
            foreach (double x in wheelbase > 0 ? [-ahead - (wheelbase / 2), (wheelbase / 2) - ahead] : (double[])[0])
            {
                sheet.Line(of(frame.Apply(new(x, -half))), of(frame.Apply(new(x, half))), new(0.45, colour));
            }

            if (wheelbase > 0)
            {
                sheet.Line(of(frame.Apply(new(-ahead - (wheelbase / 2), 0))), of(frame.Apply(new((wheelbase / 2) - ahead, 0))), new(0.2, colour));
            }

            sheet.Circle(of(frame.Origin), 0.45, new(HouseStyle.Paper), new(0.2, colour));
        }
    }

    /// <summary>All corners of its parts, and its axles: what has to fall on the paper.</summary>
    public static IEnumerable<Point2> Extent(VehicleOutlinePose pose) => pose.Parts.SelectMany(p => p.Ring).Concat(
        from bogie in new[] { (Frame: pose.Pose.LeadingBogie, Base: pose.Vehicle.LeadingWheelbase, Ahead: pose.Vehicle.LeadingPivotAhead),
            (Frame: pose.Pose.TrailingBogie, Base: pose.Vehicle.TrailingWheelbase, Ahead: pose.Vehicle.TrailingPivotAhead) }
        from x in (double[])[-bogie.Ahead - (bogie.Base / 2), (bogie.Base / 2) - bogie.Ahead]
        select bogie.Frame.Apply(new(x, 0)));

    private static double Area(PlacedPart part) => Math.Abs(ConvexRing.Area(part.Ring));
}
