using PlatformForge.Clearance.Requests;
using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Rules.Findings;
using PlatformForge.Platforms.Specs;
using PlatformForge.Units;

namespace PlatformForge.Platforms.Rules;

/// <summary>Says where the wall under the coping, and not the coping, decides how near a platform comes.</summary>
internal static class WallRule
{
    // Less than this, mm, is not worth a word.
    private const double Told = 0.01;

    public static void Check(PlatformRequest request, HeightProfile profile, RequirementTrace trace, List<Finding> findings)
    {
        if (trace.AtWall is not { } atWall || !atWall.Contains(true))
        {
            return;
        }

        var spec = request.Spec;
        int first = (int)Math.Round((trace.Stations[0] - request.Envelope.From) / request.Envelope.Spacing), worst = -1;
        double farther = Told, behind = 0;
        for (int i = 0; i < atWall.Length; i++)
        {
            if (!atWall[i])
            {
                continue;
            }

            var heights = HeldHeights.At(spec, profile.At(trace.Stations[i]) - request.Site.RailTop);
            double coping = request.Envelope.Parts.Where(p => p.IsFaced && !heights.StaysUnder(p))
                .Select(p => heights.Counted(p, p.Towards(spec.Face.Side)[first + i])).DefaultIfEmpty(double.NegativeInfinity).Max();
            double more = trace.Swept[i] - coping;
            behind = Math.Max(behind, more);
            if (more > farther)
            {
                (farther, worst) = (more, i);
            }
        }

        if (worst >= 0)
        {
            var heights = HeldHeights.At(spec, profile.At(trace.Stations[worst]) - request.Site.RailTop);
            var part = request.Envelope.Parts.Where(heights.StaysUnder).MaxBy(p => p.Towards(spec.Face.Side)[first + worst])!;
            findings.Add(Governs(spec, part, (double)atWall.Count(w => w) / atWall.Length, farther, spec.Coping.Overhang + behind));
        }
    }

    // With more overhang the coping decides, where it is wide enough for that.
    private static Finding Governs(PlatformSpec spec, PartReach part, double share, double farther, double overhang) => UprightFindings.WallGoverns(
        $"{spec.Key}.coping.overhang",
        $"{part.Part.Name} of {part.Vehicle.Name}",
        part.Highest,
        share,
        farther,
        overhang <= spec.Coping.Width - spec.SeatDepth ? overhang : null);
}
