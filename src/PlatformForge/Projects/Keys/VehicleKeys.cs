using PlatformForge.Clearance;
using PlatformForge.Projects.Reading;
using static System.FormattableString;

namespace PlatformForge.Projects.Keys;

/// <summary>A vehicle as the form in the project file has it, mm of the model.</summary>
internal sealed record VehicleForm
{
    public string Name { get; init; } = "";

    public double Length { get; init; } = double.NaN;

    public double Pivots { get; init; } = double.NaN;

    public double Width { get; init; } = double.NaN;

    public double BogieWheelbase { get; init; }

    public double? TrailingBogieWheelbase { get; init; }

    public double Ahead { get; init; }

    public double Low { get; init; }

    public double High { get; init; }

    public bool EitherWay { get; init; } = true;

    public double? LeastRadius { get; init; }

    public SillForm? Sill { get; init; }

    public IReadOnlyList<PartForm> Parts { get; init; } = [];

    public string Key { get; init; } = "vehicle[0]";

    public Vehicle ToVehicle()
    {
        var body = VehiclePart.Box("body", PartCarrier.Body, Ahead - (Length / 2), Ahead + (Length / 2), Width, Low, High);
        return new(Name, Pivots, BogieWheelbase, TrailingBogieWheelbase ?? BogieWheelbase, [body, .. Parts.Select(p => p.ToPart())])
        {
            EitherWayRound = EitherWay,
            LeastRadius = LeastRadius,
            Key = Key,
            Sill = Sill is { } s ? new((s.Width ?? Width) / 2, s.Height, s.From ?? Ahead - (Length / 2), s.To ?? Ahead + (Length / 2)) : null,
        };
    }
}

internal sealed record SillForm(double Height, double? Width = null, double? From = null, double? To = null);

internal sealed record PartForm
{
    public string Name { get; init; } = "";

    public PartCarrier Carrier { get; init; }

    public double From { get; init; } = double.NaN;

    public double To { get; init; } = double.NaN;

    public double Width { get; init; } = double.NaN;

    public double Low { get; init; } = double.NaN;

    public double High { get; init; } = double.NaN;

    public VehiclePart ToPart() => VehiclePart.Box(Name, Carrier, From, To, Width, Low, High);
}

/// <summary>Keys of <c>[[vehicle]]</c>. Rails are at height 0; x runs forward from midway between the pivots.</summary>
internal static class VehicleKeys
{
    /// <summary>Full-size top of a body when none is stated, mm: above the roof of everything that runs, common practice.</summary>
    private const double TallestBody = 4500;

    private static readonly NumberRange Size = NumberRange.Over0(3000), Along = NumberRange.From(-3000, 3000), Height = NumberRange.From(-20, 500);

    private static readonly KeyTable<PartForm> Part = new KeyTable<PartForm>(_ => new())
        .Text("name", "What it is: cylinders, steps, footboards.", p => p.Name, (p, v) => p with { Name = v }, required: true)
        .Choice("carrier", "What carries it and so decides how it swings.", p => p.Carrier, (p, v) => p with { Carrier = v }, [("body", PartCarrier.Body), ("leading bogie", PartCarrier.LeadingBogie), ("trailing bogie", PartCarrier.TrailingBogie)])
        .Length("from", Along, "Rear end: forward from midway between the pivots, or from the pivot of its bogie; behind it is negative.", p => p.From, (p, v) => p with { From = v }, required: true)
        .Length("to", Along, "Front end, the same way.", p => p.To, (p, v) => p with { To = v }, required: true)
        .Length("width", Size, "Over both sides.", p => p.Width, (p, v) => p with { Width = v }, required: true)
        .Length("low", Height, "Its underside above rail top.", p => p.Low, (p, v) => p with { Low = v }, required: true)
        .Length("high", Height, "Its top above rail top.", p => p.High, (p, v) => p with { High = v }, required: true)
        .Check((p, table, key, reading) =>
        {
            Rising(reading, key, table, "from", p.From, "to", p.To);
            Rising(reading, key, table, "low", p.Low, "high", p.High);
        });

    private static readonly KeyTable<SillForm> Sill = new KeyTable<SillForm>(_ => new(double.NaN))
        .Length("height", Height, "Height of the door sill or footboard above rail top.", s => s.Height, (s, v) => s with { Height = v }, required: true)
        .Length("width", Size, "Over both sills; left out, the body's width.", s => s.Width, (s, v) => s with { Width = v })
        .Length("from", Along, "First door: forward from midway between the pivots; left out, the body's rear end.", s => s.From, (s, v) => s with { From = v })
        .Length("to", Along, "Last door; left out, the body's front end.", s => s.To, (s, v) => s with { To = v });

    public static KeyTable<VehicleForm> Table { get; } = new KeyTable<VehicleForm>(scale => new() { High = scale.ToModel(TallestBody) })
        .Text("preset", "Name of a kind of vehicle, or of a file beside the project. See: platformforge presets vehicles", _ => null, (v, _) => v)
        .Text("name", "What you call it; verdicts name it.", v => v.Name, (v, n) => v with { Name = n }, required: true)
        .Length("length", Size, "Length of the body, buffers left out.", v => v.Length, (v, n) => v with { Length = n }, required: true)
        .Length("pivots", Size, "Distance between the bogies' pivots; of a vehicle without bogies, between its end axles.", v => v.Pivots, (v, n) => v with { Pivots = n }, required: true)
        .Length("width", Size, "Width of the body over its widest place.", v => v.Width, (v, n) => v with { Width = n }, required: true)
        .Length("bogie_wheelbase", NumberRange.From(0, 1000), "Distance between a bogie's end axles; 0 for a vehicle without bogies.", v => v.BogieWheelbase, (v, n) => v with { BogieWheelbase = n })
        .Length("trailing_bogie_wheelbase", NumberRange.From(0, 1000), "The same of the rear bogie when it differs.", v => v.TrailingBogieWheelbase, (v, n) => v with { TrailingBogieWheelbase = n })
        .Length("ahead", Along, "How far the body's middle lies ahead of midway between the pivots.", v => v.Ahead, (v, n) => v with { Ahead = n })
        .Length("low", Height, "Underside of the body above rail top; 0 counts it right down to the rail.", v => v.Low, (v, n) => v with { Low = n })
        .Length("high", Height, "Top of the body above rail top.", v => v.High, (v, n) => v with { High = n })
        .Flag("either_way", "Whether it also runs the other way round.", v => v.EitherWay, (v, n) => v with { EitherWay = n })
        .Length("least_radius", NumberRange.Over0(1e6), "Tightest curve it can run.", v => v.LeastRadius, (v, n) => v with { LeastRadius = n })
        .Table("sill", "Where a passenger steps from; left out, no gap to the doors is told.", Sill, v => v.Sill, (v, n) => v with { Sill = n })
        .Tables("part", "Something that sticks out of the body: cylinders, steps, footboards.", Part, (p, _) => p, (v, n) => v with { Parts = n })
        .Check((v, table, key, reading) =>
        {
            Rising(reading, key, table, "low", v.Low, "high", v.High);
            if (v.Pivots > v.Length + (2 * Math.Abs(v.Ahead)))
            {
                reading.Fault("PF1014", key + ".pivots", (table.Find("pivots")?.Value ?? table).Place, Invariant($"pivots is {v.Pivots} mm, more than the body's length of {v.Length} mm."), Invariant($"Give at most {v.Length} mm: pivots is from bogie pivot to bogie pivot, not over the wheels."));
            }
        });

    private static void Rising(KeyReading reading, string key, TreeTable table, string first, double low, string second, double high)
    {
        if (low >= high)
        {
            reading.Fault("PF1014", key + "." + second, (table.Find(second)?.Value ?? table).Place, Invariant($"{second} is {high} mm, not above {first}, {low} mm."), Invariant($"Give a {second} above {low} mm."));
        }
    }
}
