using PlatformForge.Geometry;
using PlatformForge.Platforms;
using PlatformForge.Sections;
using PlatformForge.Sections.Marks;
using PlatformForge.Solids;
using PlatformForge.Solids.Bodies;

namespace PlatformForge.Proofs;

/// <summary>A few millimetres of a platform, whole from edge to back, to be stood where it is tightest.</summary>
internal static class TestSlice
{
    // mm over the deck's underside at which letters begin.
    private const double Overshoot = 0.3;

    /// <summary>Its blocks in the layout frame, and the plane of its walking surface.</summary>
    /// <param name="plan">The platform on its spine.</param>
    /// <param name="middle">Chainage of its middle on the spine, mm.</param>
    /// <param name="length">Its length, mm.</param>
    /// <param name="mark">What is engraved under its deck.</param>
    /// <param name="spec">How deep sections are engraved.</param>
    /// <param name="printer">The printer.</param>
    public static (IReadOnlyList<ColumnBlock> Blocks, HeightPlane Surface, double From, double To) Of(
        PlatformPlan plan, double middle, double length, string mark, SectionSpec spec, PrinterSpec printer)
    {
        double from = Math.Max(plan.Stations[0], Math.Min(middle - (length / 2), plan.Stations[^1] - length)), to = Math.Min(plan.Stations[^1], from + length);
        var body = PlatformBody.Blocks(new(plan), from, to);
        return ([.. body.All, .. Marked(plan, from, to, mark, Engraving.DepthIn(plan.Spec.Deck.Thickness, spec, printer), printer)],
            plan.Surface.At((from + to) / 2), from, to);
    }

    // Across the platform under its deck, mirrored to be read from below.
    private static IEnumerable<ColumnBlock> Marked(PlatformPlan plan, double from, double to, string mark, double depth, PrinterSpec printer)
    {
        if (depth <= 0 || Patch.Clear(plan, from, to) is not [var patch, ..])
        {
            return [];
        }

        double s = (patch.From + patch.To) / 2;
        var at = plan.ToLayout(s, (patch.Near + patch.Far) / 2);
        var right = plan.Spine.Tangent(s).Left;
        var under = plan.Surface.At(s);
        under = under with { Z = under.Z - plan.Spec.Deck.Thickness };
        Point2 room = new(patch.Width, patch.Length);
        return Lettering.Cut([mark], room * -0.5, room * 0.5, 0, printer).Select(stroke => stroke with
        {
            Outline = ConvexRing.Reversed(Array.ConvertAll(stroke.Outline, p => at + (right * p.X) - (right.Left * p.Y))),
            Lower = under with { Z = under.Z - Overshoot },
            Upper = under with { Z = under.Z + depth },
        });
    }
}
