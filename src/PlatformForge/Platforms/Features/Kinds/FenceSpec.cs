using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Specs;
using PlatformForge.Units;
using PlatformForge.Units.Specs;

namespace PlatformForge.Platforms.Features.Kinds;

/// <summary>
/// A gate or steps: no fence between two posts. On a straight track these stand at the two chainages; on a curve, where the fence is longer or shorter
/// than the track, they stand about the middle of both so that the gap is as wide at the fence as the chainages are apart. All mm.
/// </summary>
/// <param name="From">Where the gap begins: a post stands here.</param>
/// <param name="To">Where it ends: a post stands here too.</param>
public sealed record FenceGapSpec(double From, double To)
{
    /// <summary>Width from post to post, straight across, at the fence itself.</summary>
    public double Width => To - From;

    /// <summary>Chainage midway between its posts.</summary>
    public double Middle => (From + To) / 2;
}

/// <summary>How a fence is divided into panels.</summary>
public enum FencePanels
{
    /// <summary>Every run is divided evenly, the panels near the pitch: for fences that are made.</summary>
    Even,

    /// <summary>Panels of exactly the pitch, and one odd one a run: for fences that are bought.</summary>
    Whole,
}

/// <summary>Where the odd panel of a run of whole ones stands.</summary>
public enum OddPanel
{
    /// <summary>At the fence's end; in a run between two gates, before the second.</summary>
    Ends,

    /// <summary>Beside the gate; in a fence without gates, at its last end.</summary>
    Gates,
}

/// <summary>A row of post holes along the back. Lengths in mm.</summary>
public sealed record FenceSpec : FeatureSpec
{
    private const double UsualPin = 1;

    private readonly double? inset, pin;

    /// <summary>From the platform's back to the middles of the posts. Default 2.5, and more where a retaining wall is let into the deck.</summary>
    public double Inset
    {
        get => inset ?? Math.Max(Usual, Clear);
        init => inset = value;
    }

    // Common practice, no source.
    private const double Usual = 2.5;

    /// <summary>How far from the platform's back the rebate of a retaining wall reaches, mm; 0 where there is none.</summary>
    public double Rebate { get; init; }

    // The least inset that keeps a printed line between the posts' holes and that rebate, mm, to a hundredth.
    private double Clear => Rebate <= 0 ? 0 : Math.Ceiling((Rebate + LineMake.LeastLand + ((PinDiameter + Fit) / 2) - Tolerances.Rounding) * 100) / 100;

    /// <summary>Distance between posts: aimed at where panels are even, exact where they are whole. Default 32 (8 ft).</summary>
    public double Pitch { get; init; } = 32;

    /// <summary>How it is divided.</summary>
    public FencePanels Panels { get; init; } = FencePanels.Even;

    /// <summary>Where the odd panel stands; of no effect where panels are even.</summary>
    public OddPanel Odd { get; init; } = OddPanel.Ends;

    /// <summary>Diameter of a post's pin. Default 1, and more where its hole would close between two lines of the nozzle.</summary>
    public double PinDiameter
    {
        get => pin ?? Math.Max(UsualPin, LeastHole - Fit);
        init => pin = value;
    }

    /// <summary>No hole is narrower unasked, mm.</summary>
    public double LeastHole { get; init; }

    /// <summary>Added to the pin's diameter.</summary>
    public double Fit { get; init; } = 0.2;

    /// <summary>Depth below the deck's top; null goes right through the deck. Deeper than the deck leaves room for, the hole stands in a boss.</summary>
    public double? Depth { get; init; }

    /// <summary>First chainage; null is <see cref="EndInset"/> from the platform's start.</summary>
    public double? From { get; init; }

    /// <summary>Last chainage; null is <see cref="EndInset"/> from the platform's end.</summary>
    public double? To { get; init; }

    /// <summary>From the platform's ends to the first and last post when not stated otherwise. Default 4.</summary>
    public double EndInset { get; init; } = 4;

    /// <summary>Places for gates and steps, in order of chainage.</summary>
    public IReadOnlyList<FenceGapSpec> Gaps { get; init; } = [];

    public override string Word => "fence";

    public override bool IsSingle => true;

    internal override bool NeedsBack => true;

    internal override FeatureSpec Before(double rebate) => this with { Rebate = rebate };

    // A hole that would come within two lines of the back stays as it is, and is told: the inset may have been chosen for it.
    internal override FeatureSpec Printed(double nozzle)
    {
        double lines = PrintedLines.Two(nozzle);
        return Inset - (lines / 2) >= lines ? this with { LeastHole = lines } : this;
    }

    internal override double BackReach => Inset + ((PinDiameter + Fit) / 2);

    public static SpecKeys<FenceSpec> Keys { get; } = new SpecKeys<FenceSpec>(For)
        .Length(
            "inset",
            NumberRange.From(0, 500),
            "From the platform's back to the middles of the posts; left out, they keep before a retaining wall too.",
            f => f.Inset,
            (f, v) => f with { Inset = v })
        .Length(
            "pitch", NumberRange.From(
                1,
                1000), "Distance between posts: aimed at where panels are even, exact where they are whole.", f => f.Pitch, (f, v) => f with { Pitch = v })
        .Choice(
            "panels",
            "How it is divided: every run evenly, or by whole panels of the pitch, as they are bought, and an odd one.",
            f => f.Panels,
            (f, v) => f with { Panels = v },
            [("even", FencePanels.Even), ("whole", FencePanels.Whole)])
        .Choice(
            "odd",
            "Where the odd one of whole panels stands: at the fence's ends or beside its gates.",
            f => f.Odd,
            (f, v) => f with { Odd = v },
            [("ends", OddPanel.Ends), ("gates", OddPanel.Gates)])
        .Length("pin", FigureRanges.Post, "Diameter of a post's pin.", f => f.PinDiameter, (f, v) => f with { PinDiameter = v })
        .Length("fit", FigureRanges.Fit, "Added to the pin's diameter so that it goes in.", f => f.Fit, (f, v) => f with { Fit = v })
        .Length(
            "depth",
            FigureRanges.Depth,
            "Depth of the holes; left out, they go right through the deck. Deeper than the deck, they stand in bosses.",
            f => f.Depth,
            (f, v) => f with { Depth = v })
        .Length(
            "from",
            NumberRange.Anywhere,
            "Distance along the track of the first post; left out, near the platform's start.",
            f => f.From,
            (f, v) => f with { From = v })
        .Length("to", NumberRange.Anywhere, "The same of the last post.", f => f.To, (f, v) => f with { To = v })
        .Length(
            "end_inset",
            NumberRange.From(0, 500),
            "From the platform's ends to the first and last post.",
            f => f.EndInset,
            (f, v) => f with { EndInset = v })
        .Tables(
            "gap",
            "A gate or steps, as wide at the fence as is stated here.",
            GapDraft.Keys,
            f => [.. f.Gaps.Select(g => new GapDraft(null, null, g.From, g.To))],
            (f, v) => f with { Gaps = [.. v.Select(g => g.Spec)] });

    internal override (double Width, string What)? LeastDeck(PlatformSpec spec) => (spec.Coping.Width + BackReach, "coping and fence");

    internal override IEnumerable<Finding> Early(PlatformSpec spec, PlatformSite site, string key) =>
        Insets.ClearWidth(spec, site, key, "fence", (Inset, InsetFrom.Back), PinDiameter / 2);

    internal override PlannedFeature Plan(FeatureSite site)
    {
        var planner = new FencePlanner(site, this);
        var fence = planner.Plan();
        return fence is null ? new("fence", site.Key) { Findings = planner.Findings } : FenceWords.Of(this, fence, site) with { Findings = planner.Findings };
    }

    /// <summary>The defaults for a scale: panels of 8 ft.</summary>
    public static FenceSpec For(ModelScale scale) => new() { Pitch = scale.ToModel(8 * FullSize.Foot) };
}
