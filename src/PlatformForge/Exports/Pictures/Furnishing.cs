using PlatformForge.Geometry;
using PlatformForge.Platforms;
using PlatformForge.Platforms.Features;

namespace PlatformForge.Exports.Pictures;

/// <summary>What makes a platform a platform, in the plain shapes that its features state, for pictures only.</summary>
internal sealed class Furnishing(PlatformPlan plan)
{
    public IEnumerable<SceneBody> Bodies() =>
        plan.Features.SelectMany(f => f.Shown).Select(body => new SceneBody(SweptProfile.Joined([.. body.Shapes.Select(Shape)]), [Colour(body.Finish)]));

    private static Rgb Colour(Finish finish) => finish switch
    {
        Finish.Timber => new(0x8A, 0x6E, 0x50),
        Finish.Iron => new(0x3D, 0x45, 0x48),
        Finish.Cream => new(0xEF, 0xE6, 0xCF),
        Finish.Slate => new(0x6B, 0x70, 0x73),
        _ => new(0xC9, 0xB4, 0x93),
    };

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
