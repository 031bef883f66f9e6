using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Specs;

namespace PlatformForge.Platforms.Plans;

/// <summary>
/// Whole slabs of even length between the platform's ends, its ramp heads and the cuts the user states.
/// </summary>
/// <param name="Breaks">Ends, ramp heads and stated cuts, chainages in mm, increasing.</param>
/// <param name="Joints">All joints between slabs, the platform's ends not included.</param>
internal sealed record SlabLayout(double[] Breaks, double[] Joints)
{
    // Two break points nearer than this, mm, are one; a forced cut wins over a ramp head, and the platform's ends over both.
    private const double OnePlace = 0.5;

    // Where coping has no slabs, cuts are still offered at this distance, mm.
    private const double CutPitch = 12;

    public static SlabLayout Of(PlatformSpec spec, HeightProfile profile)
    {
        var face = spec.Face;
        var breaks = new List<double> { face.From, face.To };
        foreach (double place in (double[])[.. spec.StatedCuts.Order(), profile.StartHead, profile.EndHead])
        {
            if (!breaks.Exists(b => Math.Abs(b - place) < OnePlace))
            {
                breaks.Add(place);
            }
        }

        breaks.Sort();
        double aim = spec.Coping.SlabLength > 0 ? spec.Coping.SlabLength : CutPitch;
        var joints = new List<double>();
        for (int i = 0; i + 1 < breaks.Count; i++)
        {
            double a = breaks[i], length = breaks[i + 1] - a;
            int slabs = Math.Max(1, (int)Math.Round(length / aim, MidpointRounding.AwayFromZero));
            for (int k = 1; k < slabs; k++)
            {
                joints.Add(a + (length * k / slabs));
            }

            if (i + 2 < breaks.Count)
            {
                joints.Add(breaks[i + 1]);
            }
        }

        return new([.. breaks], [.. joints]);
    }
}
