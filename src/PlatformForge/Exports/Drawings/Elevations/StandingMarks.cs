using PlatformForge.Exports.Looks;
using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Sections.Forms;

namespace PlatformForge.Exports.Drawings.Elevations;

/// <summary>What stands on a platform's deck, in the plain shapes that its features state for pictures, as somebody before a face sees it.</summary>
internal sealed class StandingMarks
{
    private readonly SectionSet set;
    private readonly PlatformPlan plan;
    private readonly double right;

    private StandingMarks(SectionSet set, bool rising) => (this.set, plan, right) = (set, set.Plan, rising ? 1 : -1);

    /// <summary>All of it, the farthest first.</summary>
    /// <param name="set">The sections.</param>
    /// <param name="rising">Whether chainage grows to the right.</param>
    /// <param name="isFar">Whether the face is the one on the far side.</param>
    public static IReadOnlyList<StandingMark> Of(SectionSet set, bool rising, bool isFar)
    {
        var marks = new StandingMarks(set, rising);
        return [.. set.Plan.Features.SelectMany(f => f.Shown.Select(b => (Name: Called(b.Name ?? f.Name), Body: b)))
            .SelectMany(b => b.Body.Shapes.Select(s => marks.Mark(b.Name, FinishColours.Of(b.Body.Finish), s)))
            .OrderBy(m => isFar ? m.Away : -m.Away)];
    }

    // Which of several it is stands after a comma.
    private static string Called(string name) => name.Split(',')[0];

    private StandingMark Mark(string name, Rgb colour, ShownShape shape)
    {
        switch (shape)
        {
            case ShownLoft loft:
                var foot = Foot(loft.Foot);
                return new(name, colour, [.. Corners(foot, loft.Bottom, loft.Low), .. Corners(foot, loft.Top, loft.High)], Away(loft.Foot));
            case ShownBeam beam:
                StandingFoot a = Foot(beam.From), b = Foot(beam.To);
                var side = (b.Place - a.Place).Left * (beam.Wide / 2 / (b.Place - a.Place).Length);
                IEnumerable<StandingCorner> End(StandingFoot foot) => new[] { beam.Up, beam.Up + beam.Tall }
                    .SelectMany(z => Corners(foot, [foot.Place - side, foot.Place + side], z));
                return new(name, colour, [.. End(a), .. End(b)], (Away(beam.From) + Away(beam.To)) / 2);
            default:
                throw new ArgumentException("A shape that no drawing knows.", nameof(shape));
        }
    }

    private IEnumerable<StandingCorner> Corners(StandingFoot foot, IEnumerable<Point2> ring, double height)
    {
        var along = plan.Spine.Tangent(foot.Chainage) * right;
        return ring.Select(p => new StandingCorner(foot, Point2.Dot(p - foot.Place, along), foot.Deck + height));
    }

    private StandingFoot Foot(ShownFoot foot)
    {
        double s = On(foot, p => p.Chainage);
        Point2 at = plan.ToLayout(foot.At.Chainage, foot.At.Reach), to = plan.ToLayout(foot.Towards.Chainage, foot.Towards.Reach);
        int section = (set.Sections.FirstOrDefault(p => p.To >= s) ?? set.Sections[^1]).Number;
        return new(s, at + ((to - at) * foot.Share), section, On(foot, p => plan.TopAt(p.Chainage, p.Reach)));
    }

    private static double Away(ShownFoot foot) => On(foot, p => p.Reach);

    // What is so much at a place and so much at the other, on the way between them.
    private static double On(ShownFoot foot, Func<PlanPlace, double> of) =>
        of(foot.At) is var a && foot.Share == 0 ? a : a + ((of(foot.Towards) - a) * foot.Share);
}
