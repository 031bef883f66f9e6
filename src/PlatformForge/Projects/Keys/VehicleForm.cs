using PlatformForge.Clearance.Requests;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Geometry;

namespace PlatformForge.Projects.Keys;

/// <summary>A vehicle, or a further body of a set, as the form in the project file has it, mm of the model. Figures that are not a number
/// were not stated.</summary>
internal sealed record VehicleForm
{
    public string Name { get; init; } = "";

    /// <summary>What the first body of a set is called; empty when it has no name of its own.</summary>
    public string BodyName { get; init; } = "";

    /// <summary>The preset that was laid under it; null when it has none.</summary>
    public string? Preset { get; init; }

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

    public double? MiddleAxlePlay { get; init; }

    /// <summary>How the ends narrow; nothing where they are square.</summary>
    public TaperForm? FrontTaper { get; init; }

    public TaperForm? RearTaper { get; init; }

    public SillForm? Sill { get; init; }

    public IReadOnlyList<PartForm> Parts { get; init; } = [];

    /// <summary>A truck ahead of the axles that guide; null where there is none.</summary>
    public TruckForm? LeadingTruck { get; init; }

    /// <summary>A truck behind them.</summary>
    public TruckForm? TrailingTruck { get; init; }

    /// <summary>Whether a further body has no wheels and hangs at the bodies ahead and behind.</summary>
    public bool Hung { get; init; }

    /// <summary>How a further body is joined to the one ahead of it.</summary>
    public BodyJointKind JoinedBy { get; init; }

    /// <summary>Between its front end and the rear end of the body ahead, on straight track.</summary>
    public double Gap { get; init; } = double.NaN;

    /// <summary>What fills the gap; null when nothing does.</summary>
    public GangwayForm? Gangway { get; init; }

    /// <summary>The bodies behind this one.</summary>
    public IReadOnlyList<VehicleForm> Bodies { get; init; } = [];

    public string Key { get; init; } = "vehicle[0]";

    /// <summary>The vehicle, or its bodies when it has any behind it; and their trucks, which run as vehicles of their own.</summary>
    public IReadOnlyList<Vehicle> ToVehicles() => Bodies.Count == 0 ? [ToBody([]), .. TruckForm.Vehicles(this, Name)] : SetForm.Bodies(this);

    /// <summary>The set that its bodies make; null for a vehicle that runs by itself.</summary>
    public VehicleSet? ToSet(IEnumerable<Vehicle> all) => Bodies.Count == 0
        ? null
        : new(Name, [.. all.Where(v => v.SetName == Name && v.TruckOf is null)], [.. Bodies.Select(b => new BodyJoint(b.JoinedBy, b.Gap))]) { Key = Key };

    /// <summary>The body with parts that the set adds.</summary>
    internal Vehicle ToBody(IEnumerable<VehiclePart> more)
    {
        double rear = Ahead - (Length / 2), front = Ahead + (Length / 2);
        var body = new VehiclePart("body", PartCarrier.Body, Plan(rear, front), Low, High);
        return new(Name, Pivots, BogieWheelbase, TrailingBogieWheelbase ?? BogieWheelbase, [body, .. Parts.SelectMany(p => p.ToParts(Ahead)), .. more])
        {
            EitherWayRound = EitherWay,
            LeastRadius = LeastRadius,
            MiddleAxlePlay = MiddleAxlePlay,
            Key = Key,
            Sill = Sill is { } s ? new((s.Width ?? Width) / 2, s.Height, s.From ?? rear, s.To ?? front) : null,
        };
    }

    private Point2[] Plan(double rear, double front)
    {
        var widths = new List<(double At, double Width)>();
        if (RearTaper is { } back)
        {
            widths.Add((rear, back.Width));
            widths.Add((rear + back.Length, Width));
        }
        else
        {
            widths.Add((rear, Width));
        }

        if (FrontTaper is { } ahead)
        {
            if (front - ahead.Length > widths[^1].At)
            {
                widths.Add((front - ahead.Length, Width));
            }

            widths.Add((front, ahead.Width));
        }
        else
        {
            widths.Add((front, Width));
        }

        return PartForm.Ring(widths);
    }
}

/// <summary>How an end narrows: over which length, to which width at the very end.</summary>
internal sealed record TaperForm(double Length, double Width);

/// <summary>What fills the gap between two bodies.</summary>
internal sealed record GangwayForm(double Width, double Low, double High);

internal sealed record SillForm(double Height, double? Width = null, double? From = null, double? To = null);

/// <summary>What carries a part, as the file has it.</summary>
internal enum PartHome
{
    Body,
    LeadingBogie,
    TrailingBogie,
    BothBogies,
}

/// <summary>A place along a part with its full width there.</summary>
internal sealed record PlanForm(double At, double Width);

internal sealed record PartForm
{
    public string Name { get; init; } = "";

    public PartHome Carrier { get; init; }

    public double From { get; init; } = double.NaN;

    public double To { get; init; } = double.NaN;

    public double Width { get; init; } = double.NaN;

    public double Low { get; init; } = double.NaN;

    public double High { get; init; } = double.NaN;

    public bool BothEnds { get; init; }

    public IReadOnlyList<PlanForm> Plan { get; init; } = [];

    /// <summary>A ring symmetrical about the long axis from full widths at rising places.</summary>
    public static Point2[] Ring(IReadOnlyList<(double At, double Width)> widths) =>
        [.. widths.Select(w => new Point2(w.At, -w.Width / 2)), .. widths.Reverse().Select(w => new Point2(w.At, w.Width / 2))];

    /// <summary>The part; twice where it is at both ends or on both bogies.</summary>
    /// <param name="ahead">How far the body's middle lies ahead of midway between its pivots.</param>
    public IEnumerable<VehiclePart> ToParts(double ahead)
    {
        (double At, double Width)[] widths = Plan.Count > 0 ? [.. Plan.Select(p => (p.At, p.Width))] : [(From, Width), (To, Width)];
        (double At, double Width)[] mirrored = [.. widths.Reverse().Select(w => ((Carrier == PartHome.Body ? 2 * ahead : 0) - w.At, w.Width))];
        (PartCarrier Carrier, string Where)[] carriers = Carrier switch
        {
            PartHome.LeadingBogie => [(PartCarrier.LeadingBogie, "")],
            PartHome.TrailingBogie => [(PartCarrier.TrailingBogie, "")],
            PartHome.BothBogies => [(PartCarrier.LeadingBogie, "leading "), (PartCarrier.TrailingBogie, "trailing ")],
            _ => [(PartCarrier.Body, "")],
        };
        foreach (var (carrier, where) in carriers)
        {
            bool front = widths[0].At + widths[^1].At >= (Carrier == PartHome.Body ? 2 * ahead : 0);
            yield return new(where + Name + (BothEnds ? front ? ", front" : ", rear" : ""), carrier, Ring(widths), Low, High);
            if (BothEnds)
            {
                yield return new(where + Name + (front ? ", rear" : ", front"), carrier, Ring(mirrored), Low, High);
            }
        }
    }
}
