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
        var carrier = new Carrier(near, far, body, findings);
        return spec.WithFeatures(f =>
        {
            var face = f.Face == far.Spec.Track ? far : near;
            return f.Carried(face == near, (s, t, from) => carrier.Place(face, s, t, from, keyed.First(k => ReferenceEquals(k.Feature, f)).Key));
        });
    }

    private sealed class Carrier(FacePlan near, FacePlan far, BodyPlan body, List<Finding> findings)
    {
        private readonly Spine spine = new(near.Chart, near.Side, body.Across);

        public (double Chainage, double Inset) Place(FacePlan face, double chainage, double inset, InsetFrom from, string key)
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

            var place = OnSpine(face, chainage, inset);
            if (chainage < face.Spec.From || chainage > face.Spec.To || place.Chainage < near.Spec.From || place.Chainage > near.Spec.To)
            {
                double within = Nearest(face, chainage, inset);
                findings.Add(IslandFindings.BeyondFace($"{key}.at", face.Spec, chainage, within));
                place = OnSpine(face, within, inset);
            }

            return (place.Chainage, place.Reach - body.CopingFront.At(place.Chainage));
        }

        private PlanPlace OnSpine(FacePlan face, double along, double inset) => spine.Locate(face.ToLayout(along, face.CopingFront.At(along) + inset));

        // The whole millimetre next to it, towards the face's middle, that lies within both faces.
        private double Nearest(FacePlan face, double along, double inset)
        {
            double middle = Math.Round((face.Spec.From + face.Spec.To) / 2), way = Math.Sign(middle - along);
            double at = Math.Clamp(Math.Round(along), Math.Ceiling(face.Spec.From + Inside), Math.Floor(face.Spec.To - Inside));
            while (at != middle && OnSpine(face, at, inset).Chainage is var s && (s < near.Spec.From + Inside || s > near.Spec.To - Inside))
            {
                at += way;
            }

            return at;
        }
    }
}
