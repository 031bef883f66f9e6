using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Units;

namespace PlatformForge.Platforms.Features;

/// <summary>A round upright hole, of a feature that has nothing else or of one that has many: what it comes to in the neutral words.</summary>
/// <param name="Name">What stands in it.</param>
/// <param name="Place">Its middle.</param>
/// <param name="Diameter">Fit allowance included, mm.</param>
/// <param name="Depth">Below the top at the middle, mm; null right through the deck.</param>
/// <param name="BossWall">Thickness of material round it below the deck, and under its floor, mm; 0 when the deck alone is deep enough or it goes right
/// through.</param>
internal sealed record RoundHole(string Name, PlanPlace Place, double Diameter, double? Depth, double BossWall)
{
    // A boss may run into the wall that closes a section at a joint: beyond it only a line of plastic is kept, mm.
    private const double BossClear = 0.8;

    // How far in mm a hole right through the deck goes on below it, so that it is open whatever the slope.
    private const double ThroughDepth = 0.5;

    /// <summary>Its boss, where it has one, and the hole itself.</summary>
    public IEnumerable<Prism> Prisms(FeatureSite site)
    {
        double slab = site.Spec.Deck.Thickness;
        if (BossWall > 0 && Depth is { } deep && site.BetweenWalls(site.Round(Place, (Diameter / 2) + BossWall), Place.Chainage) is { Length: > 0 } boss)
        {
            yield return new(Place, Diameter, boss, new(Datum.DeckTop, -deep - BossWall, true), new(Datum.DeckTop, -slab / 2), PrismAct.Add, PrismFace.Wall);
        }

        var lower = Depth is { } depth ? new PrismEnd(Datum.DeckTop, -depth, true) : new(Datum.DeckUnderside, -ThroughDepth);
        yield return new(Place, Diameter, site.Round(Place, Diameter / 2), lower, PrismEnd.Open, PrismAct.Remove, PrismFace.Deck)
        {
            Mouth = site.Mouth(Depth ?? slab, size => site.Round(Place, (Diameter + (2 * size)) / 2)),
        };
    }

    /// <summary>What it occupies in plan. One that ends within the deck leaves room for a rib under it; under a boss a rib may stand.</summary>
    public Keepout Keepout(FeatureSite site, string key)
    {
        double radius = (Diameter / 2) + BossWall, along = radius / site.Stretch(Place);
        bool ribsPass = BossWall == 0 && Depth < site.Spec.Deck.Thickness;
        return new(Name, key, Place.Chainage - along, Place.Chainage + along, Place.Reach - radius, Place.Reach + radius)
        {
            By = KeptOff.Cuts | KeptOff.Lettering | KeptOff.Features | (ribsPass ? KeptOff.None : KeptOff.Ribs),
            IsFloored = BossWall > 0,
            CutClear = BossWall > 0 ? BossClear : PlatformForge.Platforms.Plans.Keepout.UsualCutClear,
            CutInto = BossWall,
        };
    }

    /// <summary>What stands in it.</summary>
    public Standing Standing(FeatureSite site, string key)
    {
        double radius = (Diameter / 2) + BossWall, along = radius / site.Stretch(Place);
        return new(Name, key, Place.Chainage - along, Place.Chainage + along, Place.Reach - radius + BossWall);
    }

    /// <summary>The opening in the deck.</summary>
    /// <param name="key">Key of its diameter.</param>
    /// <param name="told">How a finding begins that speaks of its width.</param>
    /// <param name="fit">How much of the diameter was added to what goes in, mm.</param>
    public Opening Opening(string key, string told, double fit) => new(Name, Place, Diameter, Diameter, true, Depth, BossWall) { Narrowest = (key, told, fit) };

    /// <summary>All that a single hole comes to.</summary>
    /// <param name="site">Where it is planned.</param>
    /// <param name="spec">What is asked for.</param>
    /// <param name="legend">Its word in the plan's key.</param>
    public PlannedFeature Planned(FeatureSite site, PlacedSpec spec, string legend) => new(Name, site.Key)
    {
        Keepouts = [Keepout(site, site.Key) with { Place = site.Key + ".at" }],
        Prisms = [.. Prisms(site)],
        Openings = [Opening($"{site.Key}.diameter", $"hole for '{Name}' is", spec.Fit)],
        Marks = [new CircleMark(legend, Place, Diameter) { Label = Name }],
        Stands = [Standing(site, site.Key) with { Inset = ($"{site.Key}.inset", spec.Inset, spec.From) }],
        Findings = [.. TooDeep($"{site.Key}.depth", [this], site)],
    };

    /// <summary>Tells of holes with bosses whose floors would lie below the baseboard, by the one with least room.</summary>
    public static IEnumerable<Finding> TooDeep(string key, IEnumerable<RoundHole> holes, FeatureSite site)
    {
        double Floor(RoundHole h) => site.Top(h.Place) - h.Depth!.Value - h.BossWall;
        if (holes.Where(h => h.BossWall > 0).MinBy(Floor) is { } lowest && Floor(lowest) is var floor and < 0)
        {
            yield return PlatformFindings.HoleTooDeep(
                key,
                lowest.Name,
                lowest.Place.Chainage,
                lowest.Depth!.Value,
                lowest.Depth.Value + floor,
                site.Ground.RailTop);
        }
    }
}
