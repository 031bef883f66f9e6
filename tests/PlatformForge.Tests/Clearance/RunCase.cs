using FsCheck;
using FsCheck.Fluent;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Geometry;
using PlatformForge.Track;

namespace PlatformForge.Tests.Clearance;

/// <summary>A random track of straights, curves and transitions, reverse curves among them, with joints kinked or not, and a vehicle for it.</summary>
public sealed record RunCase(IReadOnlyList<AlignmentElementSpec> Elements, IReadOnlyList<double> Kinks, Vehicle Vehicle, double From)
{
    /// <summary>Length of the stretch looked at, mm.</summary>
    public const double Stretch = 100;

    public double To => From + Stretch;

    /// <summary>The track with its kinks.</summary>
    public Centreline Kinked() => Lay(Elements, Kinks);

    /// <summary>The same without kinks.</summary>
    public Centreline Smooth() => Lay(Elements, []);

    public static Centreline Lay(IReadOnlyList<AlignmentElementSpec> specs, IReadOnlyList<double> kinks)
    {
        var smooth = TrackLayer.Lay(new("random", default, 0, specs)).Value!;
        var elements = new List<CentrelineElement>();
        Point2 at = default;
        double heading = 0;
        for (int i = 0; i < smooth.Elements.Count; i++)
        {
            var e = smooth.Elements[i];
            heading += i > 0 && i - 1 < kinks.Count ? kinks[i - 1] : 0;
            elements.Add(new(at, heading, e.Length, e.StartCurvature, e.EndCurvature));
            (at, heading) = (elements[^1].At(e.Length).Position, elements[^1].HeadingAt(e.Length));
        }

        return new("random", elements);
    }

    public override string ToString() => $"{string.Join("; ", Elements)} | kinks {string.Join(" ", Kinks)} "
        + $"| {Vehicle.PivotCentres} {Vehicle.LeadingWheelbase} {string.Join(" / ", Vehicle.Parts.Select(p => p.Name + string.Join(",", p.Outline)))} | {From}";
}

/// <summary>Generators.</summary>
public static class RunCases
{
    public static Arbitrary<RunCase> RunCase()
    {
        var gen =
            from elements in Element.ArrayOf(4)
            from kinks in Number(-15e-3, 15e-3).ArrayOf(5)
            from vehicle in Stock
            from start in Number(280, 620)
            select new RunCase([new StraightSpec(350), .. elements, new TransitionSpec(50, null, Hand.Left), new StraightSpec(400)], kinks, vehicle, start);
        return gen.ToArbitrary();
    }

    internal static Gen<double> Number(double low, double high) => Gen.Choose(0, 10000).Select(i => low + ((high - low) * i / 10000));

    private static Gen<AlignmentElementSpec> Element => ElementOf(20, 160, 250, 1200);

    /// <summary>A straight, a curve or a transition of a length and a radius between bounds, mm.</summary>
    internal static Gen<AlignmentElementSpec> ElementOf(double shortest, double longest, double sharpest, double gentlest) =>
        from kind in Gen.Choose(0, 4)
        from length in Number(shortest, longest)
        from radius in Number(sharpest, gentlest)
        from left in Gen.Choose(0, 1)
        let hand = left == 1 ? Hand.Left : Hand.Right
        select kind switch
        {
            0 => (AlignmentElementSpec)new StraightSpec(length),
            1 or 2 => new CurveSpec(radius, hand, Length: length),
            3 => new TransitionSpec(length, radius, hand),
            _ => new TransitionSpec(length, null, hand),
        };

    internal static Gen<Vehicle> Stock =>
        from pivots in Number(30, 190)
        from overhang in Number(0.15, 0.5)
        from width in Number(18, 36)
        from bogies in Gen.Choose(0, 1)
        from shift in Number(-4, 4)
        let half = pivots * (0.5 + overhang)
        let bogie = bogies * pivots / 5
        select new Vehicle("random", pivots, bogie, bogie, [
            VehiclePart.Box("body", PartCarrier.Body, -half + shift, half + shift, width, 10, 50),
            new VehiclePart("nose", PartCarrier.Body, [new(half * 0.6, -width * 0.45), new(half + 3, -4), new(half + 3, 4), new(half * 0.6, width * 0.55)], 3,
                10),
            .. bogie > 0 ? new[] { VehiclePart.Box("frames", PartCarrier.TrailingBogie, -bogie * 0.8, bogie * 0.8, width - 2, 1, 9) } : []]);
}
