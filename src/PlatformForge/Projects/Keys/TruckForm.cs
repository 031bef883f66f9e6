using PlatformForge.Clearance.Vehicles;
using PlatformForge.Geometry;
using PlatformForge.Projects.Keys.Grammar;
using PlatformForge.Projects.Reading;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Projects.Keys;

/// <summary>
/// A leading or trailing truck of an engine, as the file has it. It becomes a vehicle of its own, which loses nothing: where it stands is told by its own
/// axles and, where
/// it has but one, by its pivot on the engine's frames, which stand on the coupled wheels.
/// </summary>
internal sealed record TruckForm
{
    /// <summary>Its axle, or midway between its axles, forward from midway between those that guide the engine, mm.</summary>
    public double At { get; init; } = double.NaN;

    /// <summary>Between its axles; 0 for one axle.</summary>
    public double Wheelbase { get; init; }

    /// <summary>Its pivot on the engine's frames, from the same place as <see cref="At"/>; no number for two axles.</summary>
    public double Pivot { get; init; } = double.NaN;

    public IReadOnlyList<PartForm> Parts { get; init; } = [];

    /// <summary>The trucks of a vehicle.</summary>
    /// <param name="engine">The vehicle, all its figures known.</param>
    /// <param name="set">Name under which tracks list it.</param>
    public static IEnumerable<Vehicle> Vehicles(VehicleForm engine, string set)
    {
        foreach (var (truck, word) in new[] { (engine.LeadingTruck, "leading truck"), (engine.TrailingTruck, "trailing truck") })
        {
            if (truck is not null)
            {
                string key = word.Replace(' ', '_');
                yield return truck.ToVehicle(engine) with
                {
                    Name = Invariant($"{engine.Name}, {word}"),
                    TruckOf = engine.Name,
                    SetName = set,
                    EitherWayRound = engine.EitherWay,
                    Key = engine.Key.Length == 0 ? key : Invariant($"{engine.Key}.{key}"),
                };
            }
        }
    }

    /// <summary>Faults of an engine's trucks.</summary>
    public static void Check(VehicleForm engine, TreeTable table, string key, KeyReading reading)
    {
        foreach (var (truck, name, sign) in new[] { (engine.LeadingTruck, "leading_truck", 1), (engine.TrailingTruck, "trailing_truck", -1) })
        {
            if (truck is null || table.Find(name)?.Value is not TreeTable own)
            {
                continue;
            }

            void Fault(string word, string message, string remedy, Cure? cure = null) =>
                reading.Fault("PF1014", Invariant($"{key}.{name}.{word}"), (own.Find(word)?.Value ?? own).Place, message, remedy, cure);
            if (engine.BogieWheelbase > 0 || engine.TrailingBogieWheelbase > 0)
            {
                Fault(
                    "at",
                    Invariant($"{name} is given for a vehicle with bogies."),
                    "A truck runs beside axles that guide the frames: leave bogie_wheelbase out, or tell the truck as a bogie.",
                    Cure.LeaveOut(engine.BogieWheelbase > 0 ? key + ".bogie_wheelbase" : key + ".trailing_bogie_wheelbase"));
            }
            else if (truck.FaultOfPivot(Invariant($"{key}.{name}.pivot"), sign) is var (message, remedy, cure))
            {
                Fault("pivot", message, remedy, cure);
            }

            if (truck.Parts.Any(p => p.Carrier != PartHome.Body))
            {
                Fault("part", "a part of a truck has a carrier of its own.", "Leave carrier out: the truck carries it.");
            }
        }
    }

    // A truck with one axle wants a pivot on the engine's side of it, and one with two wants none; the sign is that of the end it leads to.
    private (string Message, string Remedy, Cure Cure)? FaultOfPivot(string key, int sign)
    {
        if (Wheelbase > 0 && double.IsFinite(Pivot))
        {
            return ("pivot is given for a truck with two axles, which finds its own way.",
                "Leave pivot out; it is for a truck with one axle.",
                Cure.LeaveOut(key));
        }

        if (Wheelbase == 0 && !double.IsFinite(Pivot))
        {
            return ("a truck with one axle has no pivot stated: without it nothing tells how it turns.",
                Invariant($"Give pivot, {(sign > 0 ? "less than" : "more than")} {At:0.####} mm."),
                Cure.Set(key, At - (sign * UsualArm)));
        }

        return Wheelbase == 0 && sign * (At - Pivot) <= 0
            ? (Invariant($"pivot is {Pivot:0.####} mm, but the axle at {At:0.####} mm has to lie {(sign > 0 ? "ahead of" : "behind")} it."),
                Invariant($"Give a pivot {(sign > 0 ? "below" : "above")} {At:0.####} mm."),
                Cure.Set(key, At - (sign * UsualArm)))
            : null;
    }

    // From a truck's pivot to its axle when nothing says how far, mm: some 1.5 m at full size in 4 mm scale. Common practice, no source.
    private const double UsualArm = 20;

    // As drawn the vehicle's frame begins midway between its pivots: the axle and the pivot on the engine, or the two axles.
    private Vehicle ToVehicle(VehicleForm engine)
    {
        if (Wheelbase > 0)
        {
            return new("", Wheelbase, 0, 0, Placed(0));
        }

        double arm = At - Pivot;
        return arm > 0
            ? new("", arm, 0, engine.Pivots, Placed(arm / 2)) { TrailingPivotAhead = Pivot }
            : new("", -arm, engine.Pivots, 0, Placed(arm / 2)) { LeadingPivotAhead = Pivot };
    }

    private VehiclePart[] Placed(double axle) =>
        [.. Parts.SelectMany(p => p.ToParts(0)).Select(p => p with { Outline = [.. p.Outline.Select(corner => corner + new Point2(axle, 0))] })];
}
