using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Sections.Forms;
using PlatformForge.Solids;
using PlatformForge.Solids.Bodies;

namespace PlatformForge.Proofs;

/// <summary>A few millimetres of a platform, whole from edge to back, to be stood where it is tightest.</summary>
internal static class TestSlice
{
    // mm over the deck that a cut reaches, and that is kept free round letters.
    private const double Above = 1, Clear = 0.5;

    /// <summary>Its blocks in the layout frame, and the plane of its walking surface.</summary>
    /// <param name="plan">The platform on its spine.</param>
    /// <param name="middle">Chainage of its middle on the spine, mm.</param>
    /// <param name="length">Its length, mm.</param>
    /// <param name="mark">What is cut into its deck.</param>
    /// <param name="printer">The printer.</param>
    public static (IReadOnlyList<ColumnBlock> Blocks, HeightPlane Surface, double From, double To, IReadOnlyList<string> Engraved) Of(
        PlatformPlan plan, double middle, double length, string mark, PrinterSpec printer)
    {
        double from = Math.Max(plan.Stations[0], Math.Min(middle - (length / 2), plan.Stations[^1] - length)), to = Math.Min(plan.Stations[^1], from + length);
        var body = PlatformBody.Blocks(new(plan), from, to);
        var (strokes, engraved) = Marked(plan, from, to, mark, printer);
        return ([.. body.All, .. strokes], plan.Surface.At((from + to) / 2), from, to, engraved);
    }

    // Across the platform on its deck, where it is on show as the slice stands, to be read along the track: underneath, ribs and walls leave no room.
    private static (IEnumerable<ColumnBlock> Strokes, IReadOnlyList<string> Engraved) Marked(PlatformPlan plan, double from, double to, string mark,
        PrinterSpec printer)
    {
        double s = (from + to) / 2, near = plan.CopingBack.At(s), far = (plan.Body.FarCopingBack ?? plan.Back).At(s);
        var at = plan.ToLayout(s, (near + far) / 2);
        var across = plan.ToLayout(s, far) - plan.ToLayout(s, near);
        var right = across * (1 / across.Length);
        var surface = plan.Surface.At(s);
        double depth = Math.Min(Lettering.Depth, plan.Spec.Deck.Thickness / 3);
        Point2 room = new(across.Length - (2 * Clear), to - from - (2 * Clear));
        return (Lettering.Cut([mark], room * -0.5, room * 0.5, 0, printer).Select(stroke => stroke with
        {
            Outline = Array.ConvertAll(stroke.Outline, p => at + (right * p.X) + (right.Left * p.Y)),
            Lower = surface with { Z = surface.Z - depth },
            Upper = surface with { Z = surface.Z + Above },
        }), Lettering.Kept([mark], room, printer));
    }
}
