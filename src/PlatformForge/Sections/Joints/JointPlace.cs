using PlatformForge.Geometry;
using PlatformForge.Sections.Forms;
using PlatformForge.Solids.Bodies.Layers;

namespace PlatformForge.Sections.Joints;

/// <summary>
/// Where the dowels of one cut sit: worked out from the cut alone, so that the bores of both neighbours lie on the same lines.
/// One dowel sits in round bores near the track, the other in slotted bores, farther from the back than the first is from the front.
/// </summary>
/// <param name="Chainage">The cut, mm.</param>
/// <param name="Forward">Unit direction of increasing chainage, square to the cut.</param>
/// <param name="Away">Unit direction away from the track, along the cut.</param>
/// <param name="Round">Middle of the round bore on the cut line.</param>
/// <param name="Slotted">Middle of the slotted bore on the cut line.</param>
/// <param name="Height">Height of both axes over the baseboard, mm.</param>
/// <param name="Headroom">Height of the lowest deck underside over the bores, mm.</param>
/// <param name="Clear">Clear width between front and back wall at the cut, mm.</param>
internal sealed record JointPlace(double Chainage, Point2 Forward, Point2 Away, Point2 Round, Point2 Slotted, double Height, double Headroom, double Clear)
{
    /// <summary>Thickness of the deck over the bores, mm.</summary>
    public required double Deck { get; init; }

    /// <summary>Whether a wall stands behind the hollow: where none does, what is round a bore has to end before the platform's back.</summary>
    public bool IsWalled { get; init; } = true;

    // Two lines of the usual nozzle, mm.
    private const double UsualLeastWall = 0.8;

    /// <summary>Share of the clear width at which the round bore sits.</summary>
    public const double RoundShare = 0.28;

    /// <summary>Share of the clear width at which the slotted bore sits; not the mirror image of the other, so that a turned piece does not go on.</summary>
    public const double SlottedShare = 0.82;

    public static JointPlace At(FacetedPlan chart, double chainage, JointSpec spec, double leastWall = UsualLeastWall)
    {
        var plan = chart.Plan;
        var (origin, across) = chart.CrossLine(chainage);
        double near = plan.WallBack.At(chainage), clear = plan.BackWallFace.At(chainage) - near;
        var away = across * (1 / across.Length);
        var station = chart.On(plan.WallBack, chainage);

        // Where a ramp falls away from the cut the bore must still keep under the deck at its far end.
        double depth = spec.EndTrim + spec.BoreDepth;
        double headroom = new[] { chainage - depth, chainage, chainage + depth }
            .Select(s => Math.Clamp(s, chart.Stations[0], chart.Stations[^1]))
            .SelectMany(s => new[] { plan.TopAt(s, near + (clear * RoundShare)), plan.TopAt(s, near + (clear * SlottedShare)) })
            .Min() - plan.Spec.Deck.Thickness;
        var (round, slotted) = (station + (away * (clear * RoundShare)), station + (away * (clear * SlottedShare)));
        headroom = Math.Min(headroom, UnderSkew(chart, chainage, spec, leastWall, [round, slotted]));
        return new(
            chainage, chart.Forward(chainage), away, round, slotted,
            Axis(chart.Plan, chainage, spec, headroom, leastWall), headroom, clear)
        {
            Deck = plan.Spec.Deck.Thickness,
            IsWalled = plan.Spec.BackDepth > 0,
        };
    }

    // Across a ramp on the skew the deck falls along the cut too, under each bore's own width as well as along it.
    private static double UnderSkew(FacetedPlan chart, double chainage, JointSpec spec, double leastWall, Point2[] mouths)
    {
        var plan = chart.Plan;
        if (plan.Body.Across is null || plan.Spec.IsIsland)
        {
            return double.PositiveInfinity;
        }

        var (top, forward) = (plan.Surface.At(chainage), chart.Forward(chainage));
        Point2 deep = forward * (spec.EndTrim + spec.BoreDepth), wide = forward.Left * ((spec.BoreDiameter / 2) + (spec.SlotPlay / 2) + leastWall);
        return mouths.SelectMany(m => new[] { deep, deep * -1 }.SelectMany(d => new[] { wide, wide * -1 }.Select(w => top.At(m + d + w)))).Min()
            - plan.Spec.Deck.Thickness;
    }

    // Midway between baseboard and deck, or, beside a trestle, as near under the deck as a boss has room: it hangs there.
    private static double Axis(PlatformForge.Platforms.Plans.PlatformPlan plan, double chainage, JointSpec spec, double headroom, double leastWall) =>
        plan.Trestle is { Stretch: var bents } && chainage > bents.From - spec.EndTrim && chainage < bents.To + spec.EndTrim
            ? Math.Max(headroom / 2, headroom - (spec.BoreDiameter / 2) - spec.MouthChamfer - leastWall) : headroom / 2;

    /// <summary>How far the bore positions of a piece turned end for end miss those of its neighbour, mm.</summary>
    public double Mismatch => Math.Abs(1 - RoundShare - SlottedShare) * Clear;
}
