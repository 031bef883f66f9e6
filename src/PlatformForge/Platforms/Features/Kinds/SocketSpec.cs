using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Units;
using PlatformForge.Units.Specs;

namespace PlatformForge.Platforms.Features.Kinds;

/// <summary>
/// A rectangular recess in the deck: a socket for a post, such as one of a running-in board, or, wide and shallow, the seat of a building (its fit
/// is then the bedding gap). It is a true rectangle in the layout, its sides along and square to the track's direction at its middle. Lengths in mm.
/// </summary>
public sealed record SocketSpec(double Chainage, double Inset, InsetFrom From = InsetFrom.Back) : PlacedSpec(Chainage, Inset, From, "running-in board")
{
    /// <summary>Size of the post along the edge.</summary>
    public double Along { get; init; } = 1.5;

    /// <summary>Size of the post square to the edge.</summary>
    public double Across { get; init; } = 1.5;

    /// <summary>Depth below the deck's top. Where less than two printed lines of deck would be left under it, the socket stands in a boss.</summary>
    public double Depth { get; init; } = 4;

    public override string Word => "board";

    public static SpecKeys<SocketSpec> Keys { get; } = PlaceKeys<SocketSpec>(_ => new(double.NaN, double.NaN), "the socket's middle", ("600", "8"))
        .Length("along", FigureRanges.Seat, "Size of the post (or the building) along the platform.", b => b.Along, (b, v) => b with { Along = v })
        .Length("across", FigureRanges.Seat, "Size of the post (or the building) across the platform.", b => b.Across, (b, v) => b with { Across = v })
        .Length("depth", FigureRanges.Depth, "Depth of the socket.", b => b.Depth, (b, v) => b with { Depth = v })
        .Length("fit", FigureRanges.Fit, "Added to both sizes so that the post goes in.", b => b.Fit, (b, v) => b with { Fit = v });

    private protected override (double Along, double Across) Size => (Along, Across);

    private protected override PlannedFeature At(FeatureSite site, PlanPlace place)
    {
        double along = Along + Fit, across = Across + Fit;
        double boss = FeatureSite.Boss(site.Spec, Depth), half = ((along / 2) + boss) / site.Stretch(place), deep = (across / 2) + boss;
        string key = site.Key;
        return new(Name, key)
        {
            Keepouts =
            [
                new(Name, key, Chainage - half, Chainage + half, place.Reach - deep, place.Reach + deep)
                {
                    // Under one that ends within the deck ribs stand as anywhere.
                    By = KeptOff.Cuts | KeptOff.Lettering | KeptOff.Features | (boss > 0 ? KeptOff.Ribs : KeptOff.None),
                    IsFloored = true,
                    Place = key + ".at",
                },
            ],
            Prisms = [.. Prisms(site, place, along, across, boss)],
            Openings =
            [
                new(
                    Name,
                    place,
                    along,
                    across,
                    false,
                    Depth,
                    boss) { Narrowest = ($"{key}.{(Along < Across ? "along" : "across")}", $"socket for '{Name}' is", Fit) },
            ],
            Marks = [new AreaMark("socket", place, site.Oblong(place, along, across), along, across) { Label = Name }],
            Stands = [new(Name, key, Chainage - half, Chainage + half, place.Reach - deep + boss) { Inset = ($"{key}.inset", Inset, From) }],
            Shown = SocketLooks.Of(this, site, place),
            Parts = [new(Name, 1) { Section = new(Along, Across) }],
            Findings = [.. TooDeep(site, place, boss)],
        };
    }

    private IEnumerable<Prism> Prisms(FeatureSite site, PlanPlace place, double along, double across, double boss)
    {
        if (boss > 0)
        {
            yield return new(
                place, along, site.Oblong(place, along + (2 * boss), across + (2 * boss)), new(
                    Datum.DeckTop,
                    -Depth - boss,
                    true), new(Datum.DeckTop, -site.Spec.Deck.Thickness / 2), PrismAct.Add, PrismFace.Wall);
        }

        yield return new(place, along, site.Oblong(place, along, across), new(Datum.DeckTop, -Depth, true), PrismEnd.Open, PrismAct.Remove, PrismFace.Deck)
        {
            Mouth = site.Mouth(Depth, size => site.Oblong(place, along + (2 * size), across + (2 * size))),
        };
    }

    private IEnumerable<Finding> TooDeep(FeatureSite site, PlanPlace place, double boss)
    {
        double floor = site.Top(place) - Depth - boss;
        if (floor < 0)
        {
            yield return PlatformFindings.TooDeep($"{site.Key}.depth", Name, Depth, Depth + floor, site.Ground.RailTop);
        }
    }

    // More where it stands in a boss.
    private protected override double Land(PlatformSpec spec) => FeatureSite.Boss(spec, Depth) is > 0 and var boss ? boss : FeatureSite.LeastLand;

    // The size that finds room between the platform's ends, to a tenth of a mm; null where none does.
    private protected override Cure? Smaller(FeatureSite site) =>
        site.Face.To - site.Face.From - (2 * Land(site.Spec)) - Fit is > FeatureSite.LeastLand and var most ? Cure.Set(
            $"{site.Key}.along",
            Math.Floor(most * 10) / 10) : null;
}
