using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Units.Specs;

namespace PlatformForge.Platforms.Features.Kinds;

/// <summary>A round upright hole of its own: for a lamp, a canopy's post, a fixing screw. Lengths in mm.</summary>
public sealed record HoleSpec(double Chainage, double Inset, InsetFrom From = InsetFrom.Back) : PlacedSpec(Chainage, Inset, From, "lamp")
{
    /// <summary>Diameter of what goes in. Default 1, a lamp's rod in 4 mm scale (common practice).</summary>
    public double Diameter { get; init; } = 1;

    /// <summary>Depth below the deck's top; null goes right through the deck, so that wires can be led below it. Deeper than the deck
    /// leaves room for, the hole stands in a boss.</summary>
    public double? Depth { get; init; }

    public override string Word => "hole";

    public static SpecKeys<HoleSpec> Keys { get; } = PlaceKeys<HoleSpec>(_ => new(double.NaN, double.NaN), "the hole's middle", ("620", "12"))
        .Length("diameter", FigureRanges.Post, "Diameter of what goes in.", h => h.Diameter, (h, v) => h with { Diameter = v })
        .Length("fit", FigureRanges.Fit, "Added to the diameter so that it goes in.", h => h.Fit, (h, v) => h with { Fit = v })
        .Length(
            "depth",
            FigureRanges.Depth,
            "Depth of the hole; left out, it goes right through the deck, so that wires can be led below.",
            h => h.Depth,
            (h, v) => h with { Depth = v }).Example("4");

    private protected override (double Along, double Across) Size => (Diameter, Diameter);

    private protected override PlannedFeature At(FeatureSite site, PlanPlace place)
    {
        var hole = new RoundHole(Name, place, Diameter + Fit, Depth, FeatureSite.Boss(site.Spec, Depth));
        return hole.Planned(site, this, "post hole") with
        {
            Shown = LampLooks.Of(site, place),
            Parts = [new(Name, 1, Diameter)],
            // What goes right through the deck goes on into the board: a rod, a screw, a pair of wires.
            BoardHoles = Depth is null ? [new(Name, place, Diameter + Fit)] : [],
        };
    }
}
