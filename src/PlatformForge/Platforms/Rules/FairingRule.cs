using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Specs;
using PlatformForge.Track;
using PlatformForge.Units;

namespace PlatformForge.Platforms.Rules;

/// <summary>Warns of figures for the shape of an edge that it cannot keep, or that say nothing of an edge of its style.</summary>
internal static class FairingRule
{
    // A radius is told as given up where the track is sharper by more than this share: rounding of stated radii is less.
    private const double Sharper = 1e-6;

    private static readonly FaceSpec Usual = new("", Side.Left, 0, 0);

    public static void Check(PlatformRequest request, RequirementTrace trace, List<Finding> findings)
    {
        var (spec, face) = (request.Spec, request.Spec.Face);
        double usualRadius = request.Site.Scale.ToModel(FaceSpec.FullSizeLeastRadius);
        bool statedRadius = face.LeastRadius is { } radius && radius != usualRadius, faired = face.Edge == EdgeStyle.Faired;
        if (faired && statedRadius && Sharpest(request, trace) is var (sharpest, at) && sharpest < face.LeastRadius * (1 - Sharper))
        {
            findings.Add(PlatformFindings.RadiusNotKept(spec.FaceKey, face.LeastRadius!.Value, at, sharpest));
        }

        void Idle(bool idle, string name, string because)
        {
            if (idle)
            {
                findings.Add(PlatformFindings.WithoutEffect(spec.FaceKey, name, because));
            }
        }

        Idle(!faired && statedRadius, "least_radius", "only an edge = \"faired\" is held to it");
        Idle(!faired && face.Taper != Usual.Taper, "taper", "only an edge = \"faired\" is held to it");
    }

    // Radius of the sharpest bend of an edge that runs where it is required, concentric with the track, and where.
    private static (double Radius, double Chainage) Sharpest(PlatformRequest request, RequirementTrace trace)
    {
        double sharpest = 0, at = request.Spec.Face.From;
        for (int i = 0; i < trace.Stations.Length; i++)
        {
            double curvature = request.Spec.Face.Side.Bend(request.Chart.CurvatureAt(trace.Stations[i]));
            double bend = Math.Abs(curvature / (1 - (curvature * trace.Required(i))));
            (sharpest, at) = bend > sharpest ? (bend, trace.Stations[i]) : (sharpest, at);
        }

        return (1 / sharpest, at);
    }
}
