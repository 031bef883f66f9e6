using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Units;
using PlatformForge.Units.Specs;
using static System.FormattableString;

namespace PlatformForge.Platforms.Features.Kinds;

/// <summary>An end of a platform.</summary>
public enum PlatformEnd
{
    /// <summary>The one at the lower chainage.</summary>
    Start,

    /// <summary>The one at the higher chainage.</summary>
    End,
}

/// <summary>
/// A hole right through the deck for a lamp post, and a channel that leads its wires on: a groove in the deck's underside from the hole to the next rib across,
/// and an opening through that rib into the hollow beyond. Lengths in mm.
/// </summary>
public sealed record LampSpec(double Chainage, double Inset, InsetFrom From = InsetFrom.Back) : PlacedSpec(Chainage, Inset, From, "lamp")
{
    // A channel goes on so far beyond its rib's face, mm: more than facets and rounding take.
    private const double Beyond = 0.5;

    // Rise of an opening's roof, a little more than the 45 degrees that print without support.
    private const double RoofSlope = 1.2;

    // Kept from an end wall, mm.
    private const double Aside = 1;

    // Kept from a cut, mm: more than the usual joint goes into a section (half of a dowel of 12 mm, and a wall).
    private const double JointClear = 8;

    /// <summary>Diameter of the post's foot. Default 6 in at full size, 2 mm in 4 mm scale (common practice, no source: thick enough for two enamelled wires
    /// inside).</summary>
    public double Diameter { get; init; } = 6 * FullSize.Foot / 12 / 76.2;

    /// <summary>Width of the channel, and its height below the deck in the middle of its opening through the rib; 0 makes none. Default 2: a small plug or a
    /// soldered joint goes through
    /// (common practice, no source). It is for wires, so it does not scale.</summary>
    public double Channel { get; init; } = 2;

    /// <summary>End of the platform towards which the wires are led.</summary>
    public PlatformEnd Towards { get; init; } = PlatformEnd.End;

    public override string Word => "lamp";

    private double Sign => Towards == PlatformEnd.End ? 1 : -1;

    /// <summary>The defaults for a scale, without a place.</summary>
    public static LampSpec For(ModelScale scale) => new(double.NaN, double.NaN) { Diameter = scale.ToModel(6 * FullSize.Foot / 12) };

    public static SpecKeys<LampSpec> Keys { get; } = PlaceKeys<LampSpec>(For, "the post's middle", ("540", "14"))
        .Length("diameter", FigureRanges.Post, "Diameter of the post's foot.", l => l.Diameter, (l, v) => l with { Diameter = v })
        .Length("fit", FigureRanges.Fit, "Added to the diameter so that it goes in.", l => l.Fit, (l, v) => l with { Fit = v })
        .Length(
            "channel",
            NumberRange.From(0, 20),
            "Width and height of the channel for its wires through the next rib; 0 makes none.",
            l => l.Channel,
            (l, v) => l with { Channel = v })
        .Choice(
            "towards",
            "End of the platform towards which the wires are led.",
            l => l.Towards,
            (l, v) => l with { Towards = v },
            [("start", PlatformEnd.Start), ("end", PlatformEnd.End)]);

    private protected override (double Along, double Across) Size => (Diameter, Diameter);

    private protected override PlannedFeature At(FeatureSite site, PlanPlace place)
    {
        var planned = new RoundHole(Name, place, Diameter + Fit, null, 0).Planned(site, this, "lamp");
        return planned with
        {
            Keepouts = Leads(site.Spec) ? [.. planned.Keepouts, Reserved(site, place, Ahead(site, place, site.Spec.StatedCuts))] : planned.Keepouts,
            Shown = LampLooks.Of(site, place),
            Parts = [new($"{Name}, post", 1, Diameter)],
            Wires = [new(Name, place, place, 0)],
            BoardHoles = [new(Name, place, Diameter + Fit)],
            Made = [new(Name, Invariant($"{Math.Round(Diameter, 3):0.###}"), Invariant($"hole of {Diameter + Fit:F2}, right through"), 1)],
        };
    }

    // The first rib across on the way is let through, if it stands before the next cut with room for what the joint there brings.
    internal override PlannedFeature AmongRibs(PlannedFeature planned, FeatureSite site, IReadOnlyList<PlanRib> ribs, IReadOnlyList<double> cuts)
    {
        if (!Leads(site.Spec))
        {
            return planned;
        }

        var (place, hole) = (planned.Openings[0].Middle, planned.Keepouts[0]);
        if (Through(site, place, ribs, cuts) is not { } to)
        {
            bool back = (this with { Towards = Other }).Through(site, place, ribs, cuts) is not null;
            return planned with
            {
                Keepouts = [hole],
                Findings = [.. planned.Findings, LampFindings.NoRibAhead(site.Key, Name, Chainage, Called(Towards), back ? Called(Other) : null)],
            };
        }

        var ring = Ring(site, place, to);
        var channel = Reserved(site, place, to);
        var down = place with { Chainage = to + (Sign * Channel / site.Stretch(place)) };
        return planned with
        {
            Keepouts = [hole, channel],
            Prisms = [.. planned.Prisms, .. Cuts(site, place, to)],
            Marks = [.. planned.Marks, new HiddenMark("channel for wires, below", place, ring)],
            Wires = [new(Name, place, down, site.Spec.Deck.Thickness + (Channel / 2))],
            BoardHoles = [new($"wires of the {Name}", down, Channel)],
            Made = [.. planned.Made, new(
                $"{Name}, channel towards the {Called(Towards)}",
                Invariant($"{Channel:0.###}"),
                Invariant($"from chainage {Chainage:F1} to {to:F1}, through the rib there"),
                1)],
        };
    }

    // Chainage just beyond the next rib on the way; null where none stands before the cut or the end wall there.
    private double? Through(FeatureSite site, PlanPlace place, IReadOnlyList<PlanRib> ribs, IReadOnlyList<double> cuts)
    {
        var reserved = Reserved(site, place, Ahead(site, place, cuts));
        double limit = Sign > 0 ? reserved.To : reserved.From;
        var next = ribs.Where(r => r.Kind == RibKind.Transverse && Sign * (r.From - Chainage) > 0).MinBy(r => Sign * r.From);
        return next is not null && (Sign > 0 ? next.To : next.From) + (Sign * (Beyond / site.Stretch(place))) is var to && Sign * (limit - to) >= 0 ? to : null;
    }

    private PlatformEnd Other => Towards == PlatformEnd.End ? PlatformEnd.Start : PlatformEnd.End;

    private static string Called(PlatformEnd end) => end == PlatformEnd.End ? "end" : "start";

    private bool Leads(PlatformSpec spec) => Channel > 0 && spec.Ribs.Pitch > 0;

    // From one rib to the far side of the next, or from one bent.
    private static double Apart(PlatformSpec spec) =>
        Math.Max(spec.Ribs.Pitch + spec.Ribs.Thickness, spec.Trestle is { } trestle ? trestle.Pitch + trestle.Post : 0);

    // As far as a channel may go towards its end: to the next cut, or to the platform's end wall.
    private double Ahead(FeatureSite site, PlanPlace place, IEnumerable<double> cuts)
    {
        var (face, walls) = (site.Face, site.Spec.Walls);
        double wall = (walls.EndThickness + Aside) / site.Stretch(place);
        double last = Sign > 0 ? face.To - wall : face.From + wall;
        return cuts.Where(c => Sign * (c - Chainage) > 0).Select(c => c - (Sign * JointClear)).Append(last).MinBy(c => Sign * c);
    }

    // Where a channel is, or may come to be: no farther than to the next rib, which stands within the pitch.
    private Keepout Reserved(FeatureSite site, PlanPlace place, double limit)
    {
        double most = (Apart(site.Spec) + Beyond) / Math.Min(
            site.Stretch(place),
            site.Stretch(place with { Reach = site.Lines.Back.At(Chainage) }));
        double to = Sign > 0 ? Math.Min(limit, Chainage + most) : Math.Max(limit, Chainage - most), half = Channel / 2;
        return new($"channel of the {Name}", site.Key, Math.Min(Chainage, to), Math.Max(Chainage, to), place.Reach - half, place.Reach + half)
        {
            By = KeptOff.Cuts | KeptOff.Joints | KeptOff.Lettering | KeptOff.Features | KeptOff.RibsAlong,
            MayMeet = true,
        };
    }

    // Up into the deck as far as leaves two printed lines of it; down through the rib by the channel's height in the middle, less to the sides: printed deck
    // down,
    // an opening with a pointed roof needs no support.
    private IEnumerable<Prism> Cuts(FeatureSite site, PlanPlace place, double to)
    {
        double groove = Math.Clamp(site.Spec.Deck.Thickness - FeatureSite.LeastLand, 0, Channel);
        var upper = new PrismEnd(Datum.DeckUnderside, groove);
        foreach (double side in (double[])[1, -1])
        {
            Point2 a = site.ToLayout(place), b = site.ToLayout(place with { Chainage = to }), outwards = (b - a).Left * (side / (b - a).Length),
                off = outwards * (Channel / 2);
            Point2[] ring = side > 0 ? [a, b, b + off, a + off] : [a, a + off, b + off, b];
            yield return new(
                place,
                Math.Abs(to - Chainage) + Channel,
                ring,
                new(Datum.DeckUnderside, -Channel, false, outwards * RoofSlope),
                upper,
                PrismAct.Remove,
                PrismFace.Wall);
        }
    }

    private Point2[] Ring(FeatureSite site, PlanPlace place, double to)
    {
        Point2 a = site.ToLayout(place), b = site.ToLayout(place with { Chainage = to }), along = (b - a) * (1 / (b - a).Length);
        return FeatureSite.Oblong((a + b) * 0.5, along, (b - a).Length, Channel);
    }
}

/// <summary>What is said of lamps alone.</summary>
internal static class LampFindings
{
    public static Finding NoRibAhead(string key, string name, double chainage, string towards, string? other) =>
        Finding.Warning(
            "PF4150",
            $"{key}.towards",
            Invariant($"The wires of the {name} at chainage {chainage:0.#} mm are not led on towards the platform's {towards}: no rib across stands between ")
                + "it and the end wall of its section there.",
            other is not null ? $"Say towards = \"{other}\", or move it." : "Move it, or say channel = 0 and lead its wires down through the baseboard.")
            .Curing(other is not null ? Cure.Text($"{key}.towards", other) : Cure.Set($"{key}.channel", 0));
}
