using PlatformForge.Platforms.Islands;
using PlatformForge.Platforms.Plans;
using PlatformForge.Sections.Forms;

namespace PlatformForge.Projects.Runs;

/// <summary>A platform and its sections as a second face sees them.</summary>
internal static class FaceView
{
    public static PlatformPlan Of(PlatformPlan plan) => FaceViews.Second(plan);

    /// <summary>The same sections with their ends and cuts told along the second face.</summary>
    public static SectionSet Of(PlatformPlan plan, SectionSet set)
    {
        double Along(double s) => FaceViews.Chainage(plan, s);
        PlatformSection Told(PlatformSection s) => s with { From = Math.Min(Along(s.From), Along(s.To)), To = Math.Max(Along(s.From), Along(s.To)) };
        return set with { Sections = [.. set.Sections.Select(Told)], Cuts = [.. set.Cuts.Select(Along).Order()], Plan = FaceViews.Second(plan) };
    }
}
