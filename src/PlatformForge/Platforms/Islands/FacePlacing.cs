using PlatformForge.Platforms.Features;
using PlatformForge.Track;
using PlatformForge.Units;

namespace PlatformForge.Platforms.Islands;

/// <summary>Carries what is placed by the second face's chainage and edge over to the spine.</summary>
internal static class FacePlacing
{
    // Nothing stands nearer to an end, mm.
    private const double Inside = 5;

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

            var place = OnFirst(chainage);
            if (chainage < far.Spec.From || chainage > far.Spec.To || place.Chainage < near.Spec.From || place.Chainage > near.Spec.To)
            {
                double within = Nearest(chainage);
                findings.Add(IslandFindings.BeyondFace($"{key}.at", far.Spec, chainage, within));
                place = OnFirst(within);
            }

            return (place.Chainage, near.Side.Reach(place.Offset) - body.CopingFront.At(place.Chainage));

            TrackPlace OnFirst(double along) => near.Chart.Locate(far.ToLayout(along, far.CopingFront.At(along) + inset));

            // The whole millimetre next to it, towards the face's middle, that lies within both faces.
            double Nearest(double along)
            {
                double middle = Math.Round((far.Spec.From + far.Spec.To) / 2), way = Math.Sign(middle - along);
                double at = Math.Clamp(Math.Round(along), Math.Ceiling(far.Spec.From + Inside), Math.Floor(far.Spec.To - Inside));
                while (at != middle && OnFirst(at).Chainage is var s && (s < near.Spec.From + Inside || s > near.Spec.To - Inside))
                {
                    at += way;
                }

                return at;
            }
        }
    }
}
