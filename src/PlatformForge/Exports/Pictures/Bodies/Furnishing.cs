using PlatformForge.Exports.Looks;
using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;

namespace PlatformForge.Exports.Pictures.Bodies;

/// <summary>What makes a platform a platform, in the plain shapes that its features state, for pictures only.</summary>
internal sealed class Furnishing(PlatformPlan plan)
{
    public IEnumerable<SceneBody> Bodies() =>
        plan.Features.SelectMany(f => f.Shown)
            .Select(body => new SceneBody(SweptProfile.Joined([.. body.Shapes.Select(Shape)]), [FinishColours.Of(body.Finish)]));

    private Mesh Shape(ShownShape shape)
    {
        switch (shape)
        {
            case ShownLoft loft:
                double deck = On(loft.Foot).Z;
                return Blocks.Loft(loft.Bottom, deck + loft.Low, loft.Top, deck + loft.High);
            case ShownBeam beam:
                var up = new Point3(0, 0, beam.Up);
                return Blocks.Beam(On(beam.From) + up, On(beam.To) + up, beam.Wide, beam.Tall);
            default:
                throw new ArgumentException("A shape that no picture knows.", nameof(shape));
        }
    }

    private Point3 On(ShownFoot foot)
    {
        var at = On(foot.At);
        return foot.Share == 0 ? at : at + ((On(foot.Towards) - at) * foot.Share);
    }

    private Point3 On(PlanPlace place)
    {
        var p = plan.ToLayout(place.Chainage, place.Reach);
        return new(p.X, p.Y, plan.TopAt(place.Chainage, place.Reach));
    }
}
