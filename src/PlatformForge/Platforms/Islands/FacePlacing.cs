using PlatformForge.Platforms.Features;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Units;

namespace PlatformForge.Platforms.Islands;

/// <summary>Carries what is placed by a face's chainage, and square from its edge, over to the spine.</summary>
internal static class FacePlacing
{
    // Nothing stands nearer to an end, mm.
    private const double Inside = 5;

    /// <summary>The platform with every feature told along the spine, and by an inset from the first edge along the line across.</summary>
    public static PlatformSpec OnSpine(PlatformSpec spec, FacePlan near, FacePlan far, BodyPlan body, List<Finding> findings)
    {
        (FeatureSpec Feature, string Key)[] keyed = [.. FeaturePlanner.Keyed(spec)];
        var spine = new Spine(near.Chart, near.Side, body.Across);
        return spec.WithFeatures(f =>
        {
            var face = f.Face == far.Spec.Track ? far : near;
            return f.Carried(face == near, (s, t, from) => Place(face, s, t, from, keyed.First(k => ReferenceEquals(k.Feature, f)).Key));
        });

        (double Chainage, double Inset) Place(FacePlan face, double chainage, double inset, InsetFrom from, string key)
        {
            // From the second face, the back is the first face's edge.
            if (from == InsetFrom.Back)
            {
                if (face == near)
                {
                    return (chainage, body.WidthAt(chainage) - inset);
                }

                findings.Add(IslandFindings.InsetFromBack($"{key}.inset", near.Spec.Track, far.Spec.Track));
                return (near.Spec.From, inset);
            }

            var place = OnSpine(chainage);
            if (chainage < face.Spec.From || chainage > face.Spec.To || place.Chainage < near.Spec.From || place.Chainage > near.Spec.To)
            {
                double within = Nearest(chainage);
                findings.Add(IslandFindings.BeyondFace($"{key}.at", face.Spec, chainage, within));
                place = OnSpine(within);
            }

            return (place.Chainage, place.Reach - body.CopingFront.At(place.Chainage));

            PlanPlace OnSpine(double along) => spine.Locate(face.ToLayout(along, face.CopingFront.At(along) + inset));

            // The whole millimetre next to it, towards the face's middle, that lies within both faces.
            double Nearest(double along)
            {
                double middle = Math.Round((face.Spec.From + face.Spec.To) / 2), way = Math.Sign(middle - along);
                double at = Math.Clamp(Math.Round(along), Math.Ceiling(face.Spec.From + Inside), Math.Floor(face.Spec.To - Inside));
                while (at != middle && OnSpine(at).Chainage is var s && (s < near.Spec.From + Inside || s > near.Spec.To - Inside))
                {
                    at += way;
                }

                return at;
            }
        }
    }
}
