using PlatformForge.Clearance.Vehicles;
using PlatformForge.Geometry;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Clearance;

/// <summary>What makes a vehicle impossible on any track.</summary>
public static class VehicleRule
{
    /// <summary>Greatest figure in mm taken for a vehicle: the longest model coach is a tenth of it.</summary>
    public const double LargestFigure = 20000;

    /// <summary>Least distance in mm between what carries a vehicle: the shortest truck of the smallest scale is several times it.</summary>
    public const double LeastBase = 1;

    /// <summary>All faults of a vehicle, keyed by <see cref="Vehicle.Key"/>.</summary>
    public static IEnumerable<Finding> Findings(Vehicle vehicle)
    {
        var findings = new List<Finding>();
        void Fault(string code, string key, string message, string remedy) =>
            findings.Add(Finding.Error(code, key.Length == 0 ? vehicle.Key : $"{vehicle.Key}.{key}", $"{vehicle.Name}: {message}", remedy));

        RunningGear(vehicle, Fault);
        if (vehicle.Parts.Count == 0)
        {
            Fault("PF3012", "", "it has no parts, so nothing of it can touch.", "Give at least its length and width.");
        }

        for (int i = 0; i < vehicle.Parts.Count; i++)
        {
            Part(vehicle, i, Fault);
        }

        if (findings.Count == 0)
        {
            Proportions(vehicle, Fault);
        }

        return findings;
    }

    private static void RunningGear(Vehicle vehicle, Action<string, string, string, string> fault)
    {
        if (!(vehicle.PivotCentres >= LeastBase && vehicle.PivotCentres <= LargestFigure))
        {
            fault("PF3010", "pivots", Invariant($"the pivots are {vehicle.PivotCentres:0.####} mm apart."),
                Invariant($"Give the distance between bogie centres, or the rigid wheelbase, of at least {LeastBase} mm."));
        }

        foreach (var (name, wheelbase) in new[] { ("leading", vehicle.LeadingWheelbase), ("trailing", vehicle.TrailingWheelbase) })
        {
            if (!(wheelbase >= 0 && wheelbase <= LargestFigure))
            {
                fault("PF3011", "bogie_wheelbase", Invariant($"the {name} bogie's wheelbase is {wheelbase:0.####} mm."),
                    "Give 0 for a pivot that rides on the rails itself, or the distance between the bogie's end axles.");
            }
        }

        if (vehicle.LeastRadius is { } radius && !(radius > 0 && double.IsFinite(radius)))
        {
            fault("PF3017", "least_radius", Invariant($"the least radius is {radius:0.####} mm."), "Give a radius above 0 mm, or leave it out.");
        }

        if (vehicle.MiddleAxlePlay is { } play && !(play > 0 && play <= LargestFigure))
        {
            fault("PF3018", "middle_axle_play", Invariant($"the middle axle's side play is {play:0.####} mm."), "Give a play above 0 mm, or leave it out.");
        }
    }

    // Twice the area in mm² of the smallest outline that is a thing and not a rounding.
    private const double LeastArea = 1e-4;

    private static void Part(Vehicle vehicle, int index, Action<string, string, string, string> fault)
    {
        var part = vehicle.Parts[index];
        string key = Invariant($"part[{index}]");
        if (!(double.IsFinite(part.ZLow) && double.IsFinite(part.ZHigh) && part.ZLow < part.ZHigh))
        {
            fault("PF3013", key, Invariant($"the part '{part.Name}' reaches from {part.ZLow:0.###} to {part.ZHigh:0.###} mm above rail top."),
                "The upper height has to be greater than the lower one.");
        }

        if (part.Outline.Count < 3 || part.Outline.Any(p => !(Math.Abs(p.X) <= LargestFigure && Math.Abs(p.Y) <= LargestFigure)))
        {
            fault("PF3014", key, Invariant($"the outline of the part '{part.Name}' is no ring of at least three points within {LargestFigure:F0} mm."),
                "Check its width and where it begins and ends.");
            return;
        }

        double twiceArea = 0;
        for (int i = 0; i < part.Outline.Count; i++)
        {
            twiceArea += Point2.Cross(part.Outline[i], part.Outline[(i + 1) % part.Outline.Count]);
        }

        if (!(twiceArea > LeastArea))
        {
            fault("PF3014", key, Invariant($"the outline of the part '{part.Name}' is empty or runs clockwise."),
                "Its width has to be above 0, and it has to end farther forward than it begins.");
        }

        double wheelbase = part.Carrier == PartCarrier.LeadingBogie ? vehicle.LeadingWheelbase : vehicle.TrailingWheelbase;
        if (part.Carrier != PartCarrier.Body && wheelbase == 0)
        {
            fault("PF3015", key, Invariant($"the part '{part.Name}' is carried by a bogie that has no wheelbase."),
                "Give the bogie's wheelbase, or let the body carry the part.");
        }
    }

    private static void Proportions(Vehicle vehicle, Action<string, string, string, string> fault)
    {
        double length = vehicle.Length, bogies = (vehicle.LeadingWheelbase + vehicle.TrailingWheelbase) / 2;
        if (vehicle.PivotCentres > length && vehicle.SetName is null)
        {
            var (are, can) = bogies > 0 ? ("pivots are", "pivot centres") : ("end axles are", "wheelbase");
            fault("PF3016", "pivots", Invariant($"its {are} {vehicle.PivotCentres:F1} mm apart, but its body is only {length:F1} mm long."),
                Invariant($"The {can} can be {length:F1} mm at most; check that length is over the body ends."));
        }

        if (bogies > vehicle.PivotCentres && vehicle.TruckOf is null && !vehicle.Hangs)
        {
            fault("PF3016", "bogie_wheelbase",
                Invariant($"its bogies would overlap: half of each wheelbase together are {bogies:F1} mm, the pivots {vehicle.PivotCentres:F1} mm apart."),
                Invariant($"Wheelbases of {vehicle.PivotCentres:F1} mm on average are the most that fit."));
        }
    }
}
