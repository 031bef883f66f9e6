using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Specs;
using PlatformForge.Units;
using PlatformForge.Units.Specs;
using static System.FormattableString;

namespace PlatformForge.Platforms.Features;

/// <summary>
/// A feature at one place: so far along a track and so far from the platform's back or edge. Its place is found and told here once for all kinds; a kind says
/// how large it is and what it comes to. Lengths in mm.
/// </summary>
/// <param name="Chainage">Its middle along the track.</param>
/// <param name="Inset">From the edge or the back to its middle, square to the edge.</param>
/// <param name="From">What the inset is measured from.</param>
/// <param name="Name">What it is, for reports.</param>
public abstract record PlacedSpec(double Chainage, double Inset, InsetFrom From, string Name) : FeatureSpec
{
    /// <summary>Added to the size of what goes in.</summary>
    public double Fit { get; init; } = UsualFit;

    /// <summary>What is added so that something goes in, where no coupon told, mm.</summary>
    public const double UsualFit = 0.2;

    /// <summary>Size of what goes in, along the edge and square to it; <see cref="Fit"/> comes on top.</summary>
    private protected abstract (double Along, double Across) Size { get; }

    /// <summary>The keys that all have.</summary>
    /// <param name="defaults">The kind with nothing stated, at a scale.</param>
    /// <param name="middle">What its place is told of, such as "the hole's middle".</param>
    /// <param name="example">A chainage and an inset that show how they are written.</param>
    internal static SpecKeys<T> PlaceKeys<T>(Func<ModelScale, T> defaults, string middle, (string At, string Inset) example)
        where T : PlacedSpec => new SpecKeys<T>(defaults)
        .Text("name", "What stands there; it is in the plan and in tables.", f => f.Name, (f, v) => f with { Name = v })
        .Length(
            "at",
            NumberRange.Anywhere,
            $"Distance along the track of {middle}.",
            f => f.Chainage,
            (f, v) => f with { Chainage = v },
            required: true).Example(example.At)
        .Length(
            "inset",
            FigureRanges.Inset,
            $"From the back (or the edge) to {middle}.",
            f => f.Inset,
            (f, v) => f with { Inset = v },
            required: true).Example(example.Inset)
        .Choice(
            "inset_from",
            "What the inset is measured from.",
            f => f.From,
            (f, v) => f with { From = v },
            [("back", InsetFrom.Back), ("edge", InsetFrom.Edge)])
        .Text(
            "face",
            "On an island, the track of the face whose chainage and edge place it; left out, the first one's.",
            f => f.Face,
            (f, v) => f with { Face = v }).Example("\"down\"");

    /// <summary>Chainage along the first face's track by which it is set out; null where that is its chainage on the spine.</summary>
    private double? SetOutAt { get; init; }

    internal sealed override FeatureSpec Carried(bool byFirst, Func<double, double, InsetFrom, (double Chainage, double Inset)> onSpine)
    {
        var (at, inset) = onSpine(Chainage, Inset, From);
        return this with { Chainage = at, Inset = inset, From = InsetFrom.Edge, SetOutAt = byFirst ? Chainage : null };
    }

    internal sealed override (double Width, string What)? LeastDeck(PlatformSpec spec) =>
        (Insets.LeastDeck(spec, (Inset, From), (Size.Across + Fit) / 2, Land(spec)), Invariant($"coping, {Name} and inset"));

    internal override IEnumerable<Finding> Early(PlatformSpec spec, PlatformSite site, string key) =>
        Insets.ClearWidth(spec, site, key, Name, (Inset, From), Size.Across / 2);

    internal sealed override PlannedFeature Plan(FeatureSite site)
    {
        var half = ((Size.Along + Fit) / 2, (Size.Across + Fit) / 2, Land(site.Spec));
        var (found, faults) = Insets.Placed(site, Name, (Chainage, Inset, From), half, LeastDeck(site.Spec)!.Value.Width, Smaller(site));
        if (found is not { } place)
        {
            return new(Name, site.Key) { Findings = faults };
        }

        var planned = At(site, place);
        return planned with { SetOuts = [new(SetOutAt ?? Chainage, Name), .. planned.SetOuts], Findings = [.. faults, .. planned.Findings] };
    }

    /// <summary>What it comes to at the place found for it; that place itself is told by the caller.</summary>
    private protected abstract PlannedFeature At(FeatureSite site, PlanPlace place);

    /// <summary>Material that is left round it.</summary>
    private protected virtual double Land(PlatformSpec spec) => FeatureSite.LeastLand;

    /// <summary>What makes it small enough for the platform's length; null where nothing does.</summary>
    private protected virtual Cure? Smaller(FeatureSite site) => null;
}
