using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Platforms.Features.Kinds;

/// <summary>
/// A rectangular recess in the deck: a socket for a post, such as one of a running-in board, or, wide and shallow, the seat of a building (its fit
/// is then the bedding gap). It is a true rectangle in the layout, its sides along and square to the track's direction at its middle. Lengths in mm.
/// </summary>
/// <param name="Chainage">Middle of the socket.</param>
/// <param name="Inset">From the edge or the back to the middle of the socket, square to the edge.</param>
/// <param name="From">What the inset is measured from.</param>
public sealed record SocketSpec(double Chainage, double Inset, InsetFrom From = InsetFrom.Back) : FeatureSpec
{
    /// <summary>Size of the post along the edge.</summary>
    public double Along { get; init; } = 1.5;

    /// <summary>Size of the post square to the edge.</summary>
    public double Across { get; init; } = 1.5;

    /// <summary>Depth below the deck's top. Where less than two printed lines of deck would be left under it, the socket stands in a boss.</summary>
    public double Depth { get; init; } = 4;

    /// <summary>Added to both sizes of the post so that it goes in.</summary>
    public double Fit { get; init; } = 0.2;

    /// <summary>What stands in it, for reports.</summary>
    public string Name { get; init; } = "running-in board";

    public override string Word => "board";

    internal override FeatureSpec Carried(Func<double, double, InsetFrom, (double Chainage, double Inset)> onSpine)
    {
        var (at, inset) = onSpine(Chainage, Inset, From);
        return this with { Chainage = at, Inset = inset, From = InsetFrom.Edge };
    }

    internal override void Figures(FigureRange range)
    {
        range("at", "chainage", Chainage, -FigureRanges.Far, FigureRanges.Far);
        range("inset", "inset", Inset, 0, FigureRanges.WidestDeck);
        range("along", "size along the edge", Along, FigureRanges.Thinnest, FigureRanges.LargestSeat);
        range("across", "size square to the edge", Across, FigureRanges.Thinnest, FigureRanges.LargestSeat);
        range("depth", "depth", Depth, FigureRanges.Thinnest, FigureRanges.Deepest);
        range("fit", "fit allowance", Fit, 0, FigureRanges.LoosestFit);
    }

    internal override (double Width, string What)? LeastDeck(PlatformSpec spec) =>
        (Insets.LeastDeck(spec, (Inset, From), (Across + Fit) / 2, Land(spec)), Invariant($"coping, {Name} and inset"));

    internal override IEnumerable<Finding> Early(PlatformSpec spec, PlatformSite site, string key) => Insets.ClearWidth(spec, site, key, Name, (Inset, From), Across / 2);

    internal override PlannedFeature Plan(FeatureSite site)
    {
        double along = Along + Fit, across = Across + Fit, land = Land(site.Spec);
        var (found, faults) = Insets.Placed(
            site, Name, (Chainage, Inset, From), (along / 2, across / 2, land), LeastDeck(site.Spec)!.Value.Width, Smaller($"{site.Key}.along", site.Face.To - site.Face.From - (2 * land) - Fit));
        if (found is not { } place)
        {
            return new(Name, site.Key) { Findings = faults };
        }

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
                new(Name, place, along, across, false, Depth, boss) { Narrowest = ($"{key}.{(Along < Across ? "along" : "across")}", $"socket for '{Name}' is", Fit) },
            ],
            Marks = [new AreaMark("socket", place, site.Oblong(place, along, across), along, across) { Label = Name }],
            Stands = [new(Name, key, Chainage - half, Chainage + half, place.Reach - deep + boss) { Inset = ($"{key}.inset", Inset, From) }],
            Shown = SocketLooks.Of(this, site, place),
            SetOuts = [new(Chainage, Name)],
            Findings = [.. faults, .. TooDeep(site, place, boss)],
        };
    }

    private IEnumerable<Prism> Prisms(FeatureSite site, PlanPlace place, double along, double across, double boss)
    {
        if (boss > 0)
        {
            yield return new(
                place, along, site.Oblong(place, along + (2 * boss), across + (2 * boss)), new(Datum.DeckTop, -Depth - boss, true), new(Datum.DeckTop, -site.Spec.Deck.Thickness / 2), PrismAct.Add, PrismFace.Wall);
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

    // Material in mm that is left round a socket: more where it stands in a boss.
    private double Land(PlatformSpec spec) => FeatureSite.Boss(spec, Depth) is > 0 and var boss ? boss : FeatureSite.LeastLand;

    // The size that finds room between the platform's ends, to a tenth of a mm; null where none does.
    private static Cure? Smaller(string key, double most) => most > FeatureSite.LeastLand ? Cure.Set(key, Math.Floor(most * 10) / 10) : null;
}
