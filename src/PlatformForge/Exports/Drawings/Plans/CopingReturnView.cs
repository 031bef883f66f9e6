using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Looks;
using PlatformForge.Platforms.Plans;

namespace PlatformForge.Exports.Drawings.Plans;

/// <summary>A coping along the ends of a platform in its plan: what it covers, its joints, and its inner edge.</summary>
internal static class CopingReturnView
{
    public static void DrawOn(Sheet sheet, PlanView view, PlatformPlan plan)
    {
        foreach (var (_, ring) in CopingLines.Areas(plan))
        {
            sheet.Area(ring.Select(view.Of), new(HouseStyle.Coping));
        }

        foreach (var line in CopingLines.OfReturns(plan))
        {
            sheet.Lines(line.Select(view.Of), new(0.1, HouseStyle.Quiet));
        }

        foreach (var line in CopingLines.InnerEdges(plan))
        {
            sheet.Lines(line.Select(view.Of), HouseStyle.Thin);
        }
    }
}
