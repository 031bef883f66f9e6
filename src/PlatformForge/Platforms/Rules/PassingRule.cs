using PlatformForge.Clearance.Requests;
using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Rules.Findings;
using PlatformForge.Platforms.Specs;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Platforms.Rules;

/// <summary>
/// Bodies that are to pass over the coping need room for it: a vertical gap larger than the space under every part that stands above the coping asks
/// for what can't be. What counts is the lower side of a body that leans as far as it can.
/// </summary>
internal static class PassingRule
{
    public static void Check(PlatformRequest request, HeightProfile profile, List<Finding> findings)
    {
        var (spec, face) = (request.Spec, request.Spec.Face);

        // Where parts that lean are told apart by height, their lowest piece has the underside.
        PartReach[] parts = [.. request.Envelope.Parts.Where(p => p.IsFaced).GroupBy(p => (p.Vehicle, p.Part.Name, p.Part.Outline))
            .Select(g => g.MinBy(p => p.Lowest)!)];
        if (!face.BodiesPassOver || parts.Length == 0)
        {
            return;
        }

        double lowest = Math.Min(profile.Level, Math.Min(profile.StartFoot, profile.EndFoot)) - request.Site.RailTop;
        var highest = parts.MaxBy(p => p.Lowest)!;
        bool counts = !HeldHeights.At(spec, lowest).PassesOver(highest);
        if (counts && highest.Lowest <= spec.Height)
        {
            findings.Add(UprightFindings.AllReachLow($"{spec.FaceKey}.bodies_pass_over", Named(highest), highest.ZLow, highest.Lowest, spec.Height));
        }
        else if (counts)
        {
            findings.Add(UprightFindings.NothingPassesOver(
                $"{spec.FaceKey}.vertical_gap",
                face.VerticalGap,
                Named(highest),
                highest.ZLow - spec.Height,
                highest.Lowest - spec.Height));
        }
        else
        {
            Each(spec, parts, findings);
        }
    }

    // Where some body passes over: which are held off nevertheless, and the lowest that is not.
    private static void Each(PlatformSpec spec, PartReach[] parts, List<Finding> findings)
    {
        var level = HeldHeights.At(spec, spec.Height);
        foreach (var part in parts.Where(p => p.ZLow > spec.Height && !level.PassesOver(p)))
        {
            findings.Add(UprightFindings.HeldOff(
                $"{spec.FaceKey}.vertical_gap",
                Named(part),
                part.ZLow - spec.Height,
                part.Lowest - spec.Height,
                spec.Face.VerticalGap));
        }

        if (parts.Where(level.PassesOver).MinBy(p => p.Lowest) is { } over && over.Lowest < over.ZLow)
        {
            findings.Add(UprightFindings.PassesOver($"{spec.FaceKey}.vertical_gap", Named(over), over.ZLow - spec.Height, over.Lowest - spec.Height));
        }
    }

    private static string Named(PartReach part) => Invariant($"{part.Part.Name} of {part.Vehicle.Name}");
}
