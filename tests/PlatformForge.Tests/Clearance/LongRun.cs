using FsCheck;
using FsCheck.Fluent;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Track;

namespace PlatformForge.Tests.Clearance;

/// <summary>A track whose straights and curves are mostly longer than the vehicle, with transitions, reverse curves and, when wanted, kinks between
/// them; and a vehicle whose ends may stand on the track alike or not.</summary>
public sealed record LongRun(IReadOnlyList<AlignmentElementSpec> Elements, IReadOnlyList<double> Kinks, Vehicle Vehicle)
{
    /// <summary>The stretch looked at, mm.</summary>
    public const double From = 420, To = 1220;

    public Centreline Smooth() => RunCase.Lay(Elements, []);

    public Centreline Kinked() => RunCase.Lay(Elements, Kinks);

    public override string ToString() => new RunCase(Elements, Kinks, Vehicle, From).ToString();
}

/// <summary>Generators.</summary>
public static class LongRuns
{
    public static Arbitrary<LongRun> LongRun()
    {
        var gen =
            from elements in Element.ArrayOf(4)
            from kinks in RunCases.Number(-8e-3, 8e-3).ArrayOf(5)
            from vehicle in Stock
            select new LongRun([new StraightSpec(450), .. elements, new TransitionSpec(80, null, Hand.Left), new StraightSpec(900)], kinks, vehicle);
        return gen.ToArbitrary();
    }

    private static Gen<AlignmentElementSpec> Element => RunCases.ElementOf(120, 420, 350, 1500);

    private static Gen<Vehicle> Stock =>
        from vehicle in RunCases.Stock
        from ends in Gen.Choose(0, 2)
        from cylinders in RunCases.Number(0.6, 1.1)
        let half = vehicle.PivotCentres / 2
        let body = vehicle.Parts[0]
        let extra = VehiclePart.Box("cylinders", PartCarrier.Body, half * cylinders, (half * cylinders) + 14, body.Outline[2].Y - body.Outline[1].Y + 3, 3, 11)
        let shorter = vehicle.TrailingWheelbase * 0.6
        select ends switch
        {
            0 => vehicle,
            1 => vehicle with { Parts = [.. vehicle.Parts, extra] },
            _ => vehicle with { TrailingWheelbase = shorter, LeadingWheelbase = vehicle.LeadingWheelbase },
        };

    /// <summary>A vehicle with its ends changed over and drawn the other way.</summary>
    public static Vehicle OneWay(Vehicle vehicle, bool turned) => (turned ? BruteSweep.TurnedRound(vehicle) : vehicle) with { EitherWayRound = false };
}
