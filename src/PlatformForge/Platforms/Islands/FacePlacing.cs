using PlatformForge.Platforms.Features;
using PlatformForge.Track;
using PlatformForge.Units;

namespace PlatformForge.Platforms.Islands;

/// <summary>Carries what is placed by the second face's chainage and edge over to the spine.</summary>
internal static class FacePlacing
{
    /// <summary>The platform with every feature told by the first face: its chainage, and an inset from its edge.</summary>
    public static PlatformSpec OnSpine(PlatformSpec spec, FacePlan near, FacePlan far, BodyPlan body, List<Finding> findings)
    {
        (FeatureSpec Feature, string Key)[] keyed = [.. FeaturePlanner.Keyed(spec)];
        return spec.WithFeatures(f => f.Face == far.Spec.Track
            ? f.Carried((s, t, from) => Place(s, t, from, keyed.First(k => ReferenceEquals(k.Feature, f)).Key))
            : f);

        (double Chainage, double Inset) Place(double chainage, double inset, InsetFrom from, string key)
        {
            // From the second face, the back is the first face's edge.
            if (from == InsetFrom.Back)
            {
                findings.Add(IslandFindings.InsetFromBack($"{key}.inset", near.Spec.Track, far.Spec.Track));
                return (near.Spec.From, inset);
            }

            if (chainage < far.Spec.From || chainage > far.Spec.To)
            {
                findings.Add(IslandFindings.BeyondFace($"{key}.at", far.Spec, chainage));
                return (near.Spec.From, inset);
            }

            var place = near.Chart.Locate(far.ToLayout(chainage, far.CopingFront.At(chainage) + inset));
            return (place.Chainage, near.Side.Reach(place.Offset) - body.CopingFront.At(place.Chainage));
        }
    }
}
