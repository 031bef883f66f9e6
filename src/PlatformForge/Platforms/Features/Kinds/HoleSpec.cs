using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Platforms.Features.Kinds;

/// <summary>A round upright hole of its own: for a lamp, a canopy's post, a fixing screw. Lengths in mm.</summary>
/// <param name="Chainage">Middle of the hole.</param>
/// <param name="Inset">From the edge or the back to the middle of the hole, square to the edge.</param>
/// <param name="From">What the inset is measured from.</param>
public sealed record HoleSpec(double Chainage, double Inset, InsetFrom From = InsetFrom.Back) : FeatureSpec
{
    /// <summary>Diameter of what goes in. Default 1, a lamp's rod in 4 mm scale (common practice).</summary>
    public double Diameter { get; init; } = 1;

    /// <summary>Added to the diameter.</summary>
    public double Fit { get; init; } = 0.2;

    /// <summary>Depth below the deck's top; null goes right through the deck, so that wires can be led below it. Deeper than the deck
    /// leaves room for, the hole stands in a boss.</summary>
    public double? Depth { get; init; }

    /// <summary>What stands in it, for reports.</summary>
    public string Name { get; init; } = "lamp";

    public override string Word => "hole";

    internal override FeatureSpec Carried(Func<double, double, InsetFrom, (double Chainage, double Inset)> onSpine)
    {
        var (at, inset) = onSpine(Chainage, Inset, From);
        return this with { Chainage = at, Inset = inset, From = InsetFrom.Edge };
    }

    internal override void Figures(FigureRange range)
    {
        range("at", "chainage", Chainage, -FigureRanges.Far, FigureRanges.Far);
        range("inset", "inset", Inset, 0, FigureRanges.WidestDeck);
        range("diameter", "diameter", Diameter, FigureRanges.Thinnest, FigureRanges.ThickestPost);
        range("fit", "fit allowance", Fit, 0, FigureRanges.LoosestFit);
        range("depth", "depth", Depth ?? 1, FigureRanges.Thinnest, FigureRanges.Deepest);
    }

    internal override (double Width, string What)? LeastDeck(PlatformSpec spec) =>
        (Insets.LeastDeck(spec, (Inset, From), (Diameter + Fit) / 2, FeatureSite.LeastLand), Invariant($"coping, {Name} and inset"));

    internal override IEnumerable<Finding> Early(PlatformSpec spec, PlatformSite site, string key) => Insets.ClearWidth(spec, site, key, Name, (Inset, From), Diameter / 2);

    internal override PlannedFeature Plan(FeatureSite site)
    {
        double diameter = Diameter + Fit;
        var (found, faults) = Insets.Placed(site, Name, (Chainage, Inset, From), (diameter / 2, diameter / 2, FeatureSite.LeastLand), LeastDeck(site.Spec)!.Value.Width);
        if (found is not { } place)
        {
            return new(Name, site.Key) { Findings = faults };
        }

        var hole = new RoundHole(Name, place, diameter, Depth, FeatureSite.Boss(site.Spec, Depth));
        return new(Name, site.Key)
        {
            Keepouts = [hole.Keepout(site, site.Key) with { Place = site.Key + ".at" }],
            Prisms = [.. hole.Prisms(site)],
            Openings = [hole.Opening($"{site.Key}.diameter", $"hole for '{Name}' is", Fit)],
            Marks = [new CircleMark("post hole", place, diameter) { Label = Name }],
            Stands = [hole.Standing(site, site.Key) with { Inset = ($"{site.Key}.inset", Inset, From) }],
            Shown = LampLooks.Of(site, place),
            SetOuts = [new(Chainage, Name)],
            Findings = [.. faults, .. RoundHole.TooDeep($"{site.Key}.depth", [hole], site)],
        };
    }
}
