using PlatformForge.Clearance;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Platforms.Rules;

/// <summary>
/// Bodies that are to pass over the coping need room for it: a vertical gap larger than the space under every part that stands above the coping asks
/// for what can't be.
/// </summary>
internal static class PassingRule
{
    public static void Check(PlatformRequest request, HeightProfile profile, List<Finding> findings)
    {
        var (spec, face) = (request.Spec, request.Spec.Face);
        var parts = request.Envelope.Parts.Where(p => p.Run == 0).ToArray();
        if (!face.BodiesPassOver || parts.Length == 0)
        {
            return;
        }

        double lowest = Math.Min(profile.Level, Math.Min(profile.StartFoot, profile.EndFoot)) - request.Site.RailTop;
        var highest = parts.MaxBy(p => p.ZLow)!;
        if (highest.ZLow <= spec.Height)
        {
            if (highest.ZLow < face.HeldBelow(lowest))
            {
                findings.Add(PlatformFindings.AllReachLow($"{spec.Key}.face.bodies_pass_over", Named(highest), highest.ZLow, spec.Height));
            }
        }
        else if (highest.ZLow < face.HeldBelow(lowest))
        {
            findings.Add(PlatformFindings.NothingPassesOver($"{spec.Key}.face.vertical_gap", face.VerticalGap, Named(highest), highest.ZLow - spec.Height));
        }
        else
        {
            foreach (var part in parts.Where(p => p.ZLow > spec.Height && p.ZLow < face.HeldBelow(spec.Height)))
            {
                findings.Add(PlatformFindings.HeldOff($"{spec.Key}.face.vertical_gap", Named(part), part.ZLow - spec.Height, face.VerticalGap));
            }
        }
    }

    private static string Named(PartReach part) => Invariant($"{part.Part.Name} of {part.Vehicle.Name}");
}
