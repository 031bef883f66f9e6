using PlatformForge.Clearance;
using PlatformForge.Clearance.Requests;
using PlatformForge.Projects.Keys.Grammar;
using PlatformForge.Projects.Reading;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Projects.Keys;

/// <summary>Keys of <c>[[vehicle]]</c>. Rails are at height 0; x runs forward from midway between the pivots.</summary>
internal static class VehicleKeys
{
    /// <summary>Full-size top of a body when none is stated, mm: above the roof of everything that runs, common practice.</summary>
    private const double TallestBody = 4500;

    private static readonly NumberRange Size = NumberRange.Over0(3000), Base = NumberRange.From(
        VehicleRule.LeastBase,
        3000), Along = NumberRange.From(-3000, 3000), Height = NumberRange.From(-20, 500);

    private static readonly KeyTable<PlanForm> Place = new KeyTable<PlanForm>(_ => new(double.NaN, double.NaN))
        .Length("at", Along, "Where: forward as for from.", p => p.At, (p, v) => p with { At = v }, required: true)
        .Length("width", Size, "Over both sides there.", p => p.Width, (p, v) => p with { Width = v }, required: true);

    private static readonly KeyTable<PartForm> Part = new KeyTable<PartForm>(_ => new())
        .Text("name", "What it is: cylinders, steps, footboards.", p => p.Name, (p, v) => p with { Name = v }, required: true)
        .Choice("carrier", "What carries it and so decides how it swings.", p => p.Carrier, (p, v) => p with { Carrier = v },
            [("body", PartHome.Body), ("leading bogie", PartHome.LeadingBogie), ("trailing bogie", PartHome.TrailingBogie),
                ("both bogies", PartHome.BothBogies)])
        .Length(
            "from",
            Along,
            "Rear end: forward from midway between the pivots, or from the pivot of its bogie; behind it is negative.",
            p => p.From,
            (p, v) => p with { From = v })
        .Length("to", Along, "Front end, the same way.", p => p.To, (p, v) => p with { To = v })
        .Length("width", Size, "Over both sides.", p => p.Width, (p, v) => p with { Width = v })
        .Length("low", Height, "Its underside above rail top.", p => p.Low, (p, v) => p with { Low = v }, required: true)
        .Length("high", Height, "Its top above rail top.", p => p.High, (p, v) => p with { High = v }, required: true)
        .Flag("both_ends", "Whether the same is at the other end too, mirrored.", p => p.BothEnds, (p, v) => p with { BothEnds = v })
        .Tables(
            "plan",
            "A part that is no oblong seen from above: its width at places from rear to front, in place of from, to and width.",
            Place,
            (p, _) => p,
            (p, v) => p with { Plan = v })
        .Check((p, table, key, reading) =>
        {
            Rising(reading, key, table, "from", p.From, "to", p.To);
            Rising(reading, key, table, "low", p.Low, "high", p.High);
            Outline(p, table, key, reading);
        });

    private static readonly KeyTable<TaperForm> Taper = new KeyTable<TaperForm>(_ => new(double.NaN, double.NaN))
        .Length("length", Size, "From where it begins to narrow to the very end.", t => t.Length, (t, v) => t with { Length = v }, required: true)
        .Length("width", Size, "Over the very end.", t => t.Width, (t, v) => t with { Width = v }, required: true);

    private static readonly KeyTable<GangwayForm> Gangway = new KeyTable<GangwayForm>(_ => new(double.NaN, double.NaN, double.NaN))
        .Length("width", Size, "Over the bellows.", g => g.Width, (g, v) => g with { Width = v }, required: true)
        .Length("low", Height, "Its underside above rail top.", g => g.Low, (g, v) => g with { Low = v }, required: true)
        .Length("high", Height, "Its top above rail top.", g => g.High, (g, v) => g with { High = v }, required: true)
        .Check((g, table, key, reading) => Rising(reading, key, table, "low", g.Low, "high", g.High));

    private static readonly KeyTable<SillForm> Sill = new KeyTable<SillForm>(_ => new(double.NaN))
        .Length("height", Height, "Height of the door sill or footboard above rail top.", s => s.Height, (s, v) => s with { Height = v }, required: true)
        .Length("width", Size, "Over both sills; left out, the body's width.", s => s.Width, (s, v) => s with { Width = v })
        .Length("from", Along, "First door: forward from midway between the pivots; left out, the body's rear end.", s => s.From, (s, v) => s with { From = v })
        .Length("to", Along, "Last door; left out, the body's front end.", s => s.To, (s, v) => s with { To = v });

    private static readonly KeyTable<TruckForm> Truck = new KeyTable<TruckForm>(_ => new())
        .Length(
            "at",
            Along,
            "Its axle, or midway between its two, forward from midway between the pivots; behind is negative.",
            t => t.At,
            (t, v) => t with { At = v },
            required: true)
        .Length("wheelbase", NumberRange.From(0, 1000), "Between its two axles; 0 for one.", t => t.Wheelbase, (t, v) => t with { Wheelbase = v })
        .Length("pivot", Along, "Where a truck with one axle is pivoted to the frames, the same way.", t => t.Pivot, (t, v) => t with { Pivot = v })
        .Tables(
            "part",
            "What of it can touch: frames, steps, axleboxes. Places along it run forward from its axle, or from midway between its two.",
            Part,
            (p, _) => p,
            (t, v) => t with { Parts = v },
            least: 1);

    private static readonly KeyTable<VehicleForm> Body = Shape(
        new KeyTable<VehicleForm>(_ => new() { Low = double.NaN, High = double.NaN, BogieWheelbase = double.NaN })
            .Text("name", "What you call this body; left out, it is told by its number.", v => v.Name, (v, n) => v with { Name = n })
            .Choice("joined_by",
                "What joins it to the body ahead: a bogie that both share, a coupling between bodies with bogies of their own, or a hinge where one of them is "
                    + "hung.",
                v => v.JoinedBy, (v, n) => v with { JoinedBy = n },
                [("shared bogie", BodyJointKind.SharedBogie), ("coupling", BodyJointKind.Coupling), ("hinge", BodyJointKind.Hinge)], required: true)
            .Length(
                "gap",
                NumberRange.From(0, 500),
                "Between its end and that of the body ahead, on straight track.",
                v => v.Gap,
                (v, n) => v with { Gap = n },
                required: true),
        required: false,
        wheelbase: "Distance between the end axles of its own bogies; of a body that shares the bogie ahead, those of the bogie behind.",
        ends: "left out, as of the first body's taper")
        .Flag(
            "hung",
            "Whether it has no wheels and hangs on hinges at the bodies ahead and behind, midway in the gaps.",
            v => v.Hung,
            (v, n) => v with { Hung = n })
        .Table("gangway", "Bellows or corridor connection that fills the gap to the body ahead.", Gangway, v => v.Gangway, (v, n) => v with { Gangway = n })
        .Check((v, table, key, reading) => Proportions(v, table, key, reading));

    public static KeyTable<VehicleForm> Table { get; } = Shape(
        new KeyTable<VehicleForm>(scale => new() { High = scale.ToModel(TallestBody) })
            .Text(
                "preset",
                "Name of a kind of vehicle, or of a file beside the project. See: platformforge presets vehicles",
                _ => null,
                (v, n) => v with { Preset = n })
            .Text(
                "name",
                "What you call it; verdicts name it. With a preset of the shelf left out, it is called as there.",
                v => v.Name,
                (v, n) => v with { Name = n },
                required: true)
            .Text(
                "body_name",
                "What you call the first body of a set; left out, it is told by its number.",
                v => v.BodyName,
                (v, n) => v with { BodyName = n }),
        required: true,
        wheelbase: "Distance between a bogie's end axles; 0 for a vehicle without bogies.",
        ends: "left out, they are square")
        .Flag("either_way", "Whether it also runs the other way round.", v => v.EitherWay, (v, n) => v with { EitherWay = n })
        .Length("least_radius", NumberRange.Over0(1e6), "Tightest curve it can run.", v => v.LeastRadius, (v, n) => v with { LeastRadius = n })
        .Tables("body",
            "The next body of an articulated set or of a coupled unit, behind the one before. What it leaves out of length, pivots, width, low, high, "
                + "bogie_wheelbase, trailing_bogie_wheelbase, taper and sill is as of the first; front_taper, rear_taper, ahead, parts and trucks are its own.",
            Body, (v, key) => v with { Key = key }, (v, n) => v with { Bodies = n })
        .Check((v, table, key, reading) =>
        {
            Proportions(v, table, key, reading);
            SetForm.Check(v, table, key, reading);
        });

    // The keys that a vehicle and a further body have in common.
    private static KeyTable<VehicleForm> Shape(KeyTable<VehicleForm> keys, bool required, string wheelbase, string ends) => keys
        .Length("length", Base, "Length of the body, buffers left out.", v => v.Length, (v, n) => v with { Length = n }, required)
        .Length(
            "pivots",
            Base,
            "Distance between the bogies' pivots; of a vehicle without bogies, between its end axles.",
            v => v.Pivots,
            (v, n) => v with { Pivots = n },
            required)
        .Length("width", Size, "Width of the body over its widest place.", v => v.Width, (v, n) => v with { Width = n }, required)
        .Length("bogie_wheelbase", NumberRange.From(0, 1000), wheelbase, v => v.BogieWheelbase, (v, n) => v with { BogieWheelbase = n })
        .Length(
            "trailing_bogie_wheelbase",
            NumberRange.From(0, 1000),
            "The same of the rear bogie when it differs.",
            v => v.TrailingBogieWheelbase,
            (v, n) => v with { TrailingBogieWheelbase = n })
        .Length("ahead", Along, "How far the body's middle lies ahead of midway between the pivots.", v => v.Ahead, (v, n) => v with { Ahead = n })
        .Length("low", Height, "Underside of the body above rail top; 0 counts it right down to the rail.", v => v.Low, (v, n) => v with { Low = n })
        .Length("high", Height, "Top of the body above rail top.", v => v.High, (v, n) => v with { High = n })
        .Length(
            "middle_axle_play",
            NumberRange.Over0(100),
            "Side play of the middle axle of three, each way; a curve that asks for more is told.",
            v => v.MiddleAxlePlay,
            (v, n) => v with { MiddleAxlePlay = n })
        .Table("taper", $"Ends that narrow, both alike; {ends}.", Taper, v => v.FrontTaper, (v, n) => v with { FrontTaper = n, RearTaper = n })
        .Table("front_taper", "A front end that narrows and differs from the rear.", Taper, v => v.FrontTaper, (v, n) => v with { FrontTaper = n })
        .Table("rear_taper", "A rear end that narrows and differs from the front.", Taper, v => v.RearTaper, (v, n) => v with { RearTaper = n })
        .Table(
            "leading_truck",
            "A truck that runs ahead of the axles that guide, with a pose of its own.",
            Truck,
            v => v.LeadingTruck,
            (v, n) => v with { LeadingTruck = n })
        .Table("trailing_truck", "A truck that runs behind them.", Truck, v => v.TrailingTruck, (v, n) => v with { TrailingTruck = n })
        .Table("sill", "Where a passenger steps from; left out, no gap to the doors is told.", Sill, v => v.Sill, (v, n) => v with { Sill = n })
        .Tables("part", "Something that sticks out of the body: cylinders, steps, footboards, buffers.", Part, (p, _) => p, (v, n) => v with { Parts = n });

    // Every fault of a body's figures among themselves.
    private static void Proportions(VehicleForm v, TreeTable table, string key, KeyReading reading)
    {
        TruckForm.Check(v, table, key, reading);
        void Fault(string name, string message, string remedy, double? right = null) => reading.Fault(
            "PF1014",
            key + "." + name,
            (table.Find(name)?.Value ?? table).Place,
            message,
            remedy,
            right is { } r ? Cure.Set(key + "." + name, r) : null);
        Rising(reading, key, table, "low", v.Low, "high", v.High);
        if (v.Bodies.Count == 0 && !double.IsFinite(v.Gap))
        {
            WheelRoom.Own(v, Fault);
            WheelRoom.Doors(v, (name, message, remedy, right) => reading.Fault(
                "PF1014",
                Invariant($"{key}.sill.{name}"),
                ((table.Find("sill")?.Value as TreeTable)?.Find(name)?.Value ?? table).Place,
                message,
                remedy,
                right is { } r ? Cure.Set(Invariant($"{key}.sill.{name}"), r) : null));
        }

        Tapers(v, table, key, reading);
    }

    private static void Tapers(VehicleForm v, TreeTable table, string key, KeyReading reading)
    {
        void Own(string name, string message, string remedy, Cure cure) =>
            reading.Fault("PF1014", key + "." + name, (table.Find(name)?.Value ?? table).Place, message, remedy, cure);

        foreach (var (name, taper) in new[] { ("front_taper", v.FrontTaper), ("rear_taper", v.RearTaper) })
        {
            string stated = table.Find(name) is null ? "taper" : name;
            if (taper is not null && taper.Width > v.Width && !(name == "rear_taper" && ReferenceEquals(taper, v.FrontTaper)))
            {
                Own(
                    stated,
                    Invariant($"the end is {taper.Width:0.####} mm wide, wider than the body's {v.Width:0.####} mm."),
                    Invariant($"Give at most {v.Width:0.####} mm, and make width the widest place."),
                    Cure.Set($"{key}.{stated}.width", v.Width));
            }
        }

        if ((v.FrontTaper?.Length ?? 0) + (v.RearTaper?.Length ?? 0) > v.Length)
        {
            Own(table.Find("front_taper") is not null ? "front_taper" : table.Find("rear_taper") is not null ? "rear_taper" : "taper",
                Invariant($"the tapers are {(v.FrontTaper?.Length ?? 0) + (v.RearTaper?.Length ?? 0):0.####} mm long together, more than the ")
                    + Invariant($"body's {v.Length:0.####} mm."),
                Invariant($"Give at most {v.Length:0.####} mm together."),
                Cure.LeaveOut(key + "." + (table.Find("front_taper") is not null ? "front_taper" : table.Find("rear_taper") is not null ? "rear_taper"
                    : "taper")));
        }
    }

    // A part's outline is stated one way or the other.
    private static void Outline(PartForm p, TreeTable table, string key, KeyReading reading)
    {
        string[] box = ["from", "to", "width"];
        var place = table.Find("plan")?.Value.Place ?? table.Place;
        if (p.Plan.Count == 0)
        {
            foreach (string name in box.Where(n => table.Find(n) is null))
            {
                reading.Fault(
                    "PF1009",
                    key + "." + name,
                    table.Place,
                    $"{key} has no {name}: where the part begins, where it ends and how wide it is.",
                    $"Add {name}, or the plan of the part.");
            }
        }
        else if (box.Any(n => table.Find(n) is not null))
        {
            reading.Fault(
                "PF1013",
                key + ".plan",
                place,
                $"{key} has both plan and {string.Join(", ", box.Where(n => table.Find(n) is not null))}.",
                "Give one of them: the plan at several places, or one width from end to end.",
                Cure.LeaveOut(key + ".plan"));
        }
        else if (p.Plan.Count < 2 || p.Plan.Zip(p.Plan.Skip(1)).Any(pair => pair.Second.At <= pair.First.At))
        {
            reading.Fault(
                "PF1014",
                key + ".plan",
                place,
                $"The places of {key}.plan do not rise from rear to front.",
                "Give at least two, each at farther forward than the one before.");
        }
    }

    // What rises does so by this much when nothing else says how far, mm.
    private const double Least = 1;

    private static void Rising(KeyReading reading, string key, TreeTable table, string first, double low, string second, double high)
    {
        if (low >= high)
        {
            reading.Fault(
                "PF1014",
                key + "." + second,
                (table.Find(second)?.Value ?? table).Place,
                Invariant($"{second} is {high:0.####} mm, not above {first}, {low:0.####} mm."),
                Invariant($"Give a {second} above {low:0.####} mm."),
                Cure.Set(key + "." + second, low + Least));
        }
    }
}
