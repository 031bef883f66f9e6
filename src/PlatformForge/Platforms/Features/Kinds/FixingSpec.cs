using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Specs;
using PlatformForge.Units;
using PlatformForge.Units.Specs;
using static System.FormattableString;

namespace PlatformForge.Platforms.Features.Kinds;

/// <summary>
/// A pillar under the deck with a pilot hole for a wood screw that comes up through the baseboard: it holds a section down, and nothing of it is seen from
/// above.
/// Lengths in mm; none of them scales, since screws do not.
/// </summary>
public sealed record FixingSpec(double Chainage, double Inset, InsetFrom From = InsetFrom.Back) : PlacedSpec(Chainage, Inset, From, "fixing")
{
    /// <summary>Share of a screw's diameter that its pilot hole has (common practice for screws that cut their thread in plastic, no source).</summary>
    public const double PilotShare = 0.75;

    /// <summary>A thread holds from so many diameters on (common practice, no source).</summary>
    public const double LeastGrip = 2;

    // By how much the way through the baseboard is wider than the screw, so that it draws the platform down.
    private const double Clearance = 0.5;

    // What is cut begins so far below the baseboard's top, so that it is open.
    private const double Below = 1;

    /// <summary>Diameter of the screw. Default 3.</summary>
    public double Screw { get; init; } = 3;

    /// <summary>How far its hole goes up from the baseboard. Default 8.</summary>
    public double Depth { get; init; } = 8;

    /// <summary>Material round the hole. Default 2: five printed lines.</summary>
    public double Wall { get; init; } = 2;

    public override string Word => "fixing";

    public static SpecKeys<FixingSpec> Keys { get; } = PlaceKeys<FixingSpec>(_ => new(double.NaN, double.NaN), "the screw's middle", ("560", "20"))
        .Length("screw", NumberRange.From(1, 10), "Diameter of the screw; the hole is three quarters of it.", f => f.Screw, (f, v) => f with { Screw = v })
        .Length("fit", FigureRanges.Fit, "Added to the hole's diameter, since holes print small.", f => f.Fit, (f, v) => f with { Fit = v })
        .Length("depth", FigureRanges.Depth, "How far the hole goes up from the baseboard.", f => f.Depth, (f, v) => f with { Depth = v })
        .Length("wall", NumberRange.From(0.8, 20), "Material round the hole.", f => f.Wall, (f, v) => f with { Wall = v });

    private protected override (double Along, double Across) Size => ((Screw * PilotShare) + (2 * Wall), (Screw * PilotShare) + (2 * Wall));

    // Nothing of it stands on the deck.
    internal override IEnumerable<Finding> Early(PlatformSpec spec, PlatformSite site, string key) => [];

    private protected override PlannedFeature At(FeatureSite site, PlanPlace place)
    {
        double pilot = (Screw * PilotShare) + Fit, radius = (pilot / 2) + Wall, along = radius / site.Stretch(place);
        Geometry.Point2[] pillar = site.Round(place, radius);
        return new(Name, site.Key)
        {
            Keepouts = [new(Name, site.Key, Chainage - along, Chainage + along, place.Reach - radius, place.Reach + radius) { Place = site.Key + ".at" }],
            Prisms =
            [
                new(place, 2 * radius, pillar, new(Datum.Baseboard), new(Datum.DeckTop, -site.Spec.Deck.Thickness / 2), PrismAct.Add, PrismFace.Wall),
                new(
                    place,
                    2 * radius,
                    site.Round(place, pilot / 2),
                    new(Datum.Baseboard, -Below, true),
                    new(Datum.Baseboard, Depth),
                    PrismAct.Remove,
                    PrismFace.Wall),
            ],
            Marks = [new HiddenMark("screw from below", place, pillar) { Label = Name }],
            Parts = [new("wood screw", 1, Screw)],
            BoardHoles = [new(Name, place, Screw + Clearance)],
            Made = [new(Name, Invariant($"screw of {Screw:0.###}"), Invariant($"hole of {pilot:F2}, {Depth:0.###} up from the baseboard"), 1)],
            Findings = [.. Holds(site, place, along, radius)],
        };
    }

    // The hole ends below the deck wherever that is lowest over it, and is deep enough for the screw to hold.
    private IEnumerable<Finding> Holds(FeatureSite site, PlanPlace place, double along, double radius)
    {
        double room = new[] { -1.0, 1 }.SelectMany(a => new[] { -1.0, 1 }.Select(r => new PlanPlace(
            place.Chainage + (a * along),
            place.Reach + (r * radius)))).Min(site.Top)
            - site.Spec.Deck.Thickness;
        double deepest = Math.Floor((room + FeatureSite.Grain) * 10) / 10, grip = LeastGrip * Screw;
        if (Depth > room + FeatureSite.Grain)
        {
            yield return FixingFindings.IntoDeck($"{site.Key}.depth", Name, Chainage, Depth, room, deepest, grip);
        }
        else if (Depth < grip - FeatureSite.Grain)
        {
            yield return FixingFindings.HoldsLittle($"{site.Key}.depth", Name, Depth, Screw, grip, deepest >= grip);
        }
    }
}

/// <summary>What is said of fixings alone.</summary>
internal static class FixingFindings
{
    public static Finding IntoDeck(string key, string name, double chainage, double depth, double room, double deepest, double grip) =>
        Finding.Error(
            "PF4134",
            key,
            Invariant($"The hole of the {name} at chainage {chainage:0.#} mm goes {depth:0.###} mm up, {depth - room:0.##} mm into the deck: ")
                + Invariant($"under it there are {Math.Max(0, room):0.##} mm."),
            deepest >= grip
                ? Invariant($"Give a depth of {deepest:0.#} mm or less, or move it to where the platform is higher.")
                : Invariant($"Move it to where the platform is higher: a screw holds from {grip:0.#} mm on."),
            FaultKind.DesignRule).Curing(deepest >= grip ? Cure.Set(key, deepest) : Cure.LeaveOut(key[..key.LastIndexOf('.')]));

    public static Finding HoldsLittle(string key, string name, double depth, double screw, double grip, bool fits) =>
        Finding.Warning(
            "PF4135",
            key,
            Invariant($"The hole of the {name} is {depth:0.###} mm deep: a screw of {screw:0.###} mm holds from {grip:0.#} mm on, twice its diameter (common ")
                + "practice).",
            fits ? Invariant($"Give a depth of {grip:0.#} mm or more.") : "Take a thinner screw, or move it to where the platform is higher.")
            .Curing(fits ? Cure.Set(key, grip) : null);
}
