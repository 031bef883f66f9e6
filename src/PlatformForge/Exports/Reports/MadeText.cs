using PlatformForge.Exports.Drawings;
using PlatformForge.Exports.Tables;
using PlatformForge.Platforms;
using static System.FormattableString;

namespace PlatformForge.Exports.Reports;

/// <summary>Ribs and fence for the report: what was asked and what was found, in rows and lines.</summary>
internal static class MadeText
{
    public static readonly string[] Headings = ["what", "asked", "found", "how many"];

    /// <summary>Rows for ribs across, panels and gates; empty where there are none.</summary>
    public static IReadOnlyList<string[]> Rows(PlatformPlan plan)
    {
        var rows = new List<string[]>();
        if (plan.RibPitch is { Asked: > 0, Greatest: > 0 } ribs)
        {
            rows.Add(["ribs across, middle to middle, at most", Figures.Short(ribs.Asked), Invariant($"{Figures.Fine(ribs.Least)} to {Figures.Fine(ribs.Greatest)}"), Invariant($"{ribs.Count}")]);
        }

        if (plan is { Fence: { } fence, Spec.Fence: { } asked })
        {
            rows.Add(["fence posts, pins", Figures.Short(asked.PinDiameter), Invariant($"holes of {Figures.Fine(fence.Posts.Count > 0 ? fence.Posts[0].Diameter : 0)}, {Depth(asked)}"), Invariant($"{fence.Posts.Count}")]);
            rows.AddRange(fence.Parts.Where(p => p.Kind != FenceBayKind.Gate).Select(p => (string[])
                [Invariant($"fence {FenceTable.Called(p.Kind)}"), p.Kind == FenceBayKind.Odd ? "" : Figures.Short(Math.Round(asked.Pitch, 3)), Figures.Fine(p.Length), Invariant($"{p.Count}")]));
            rows.AddRange(fence.Bays.Where(b => b.Kind == FenceBayKind.Gate).Select((b, i) => (string[])[Invariant($"gate {i + 1}, at the fence"), Figures.Fine(b.Asked ?? 0), Figures.Fine(b.Length), "1"]));
        }

        return rows;
    }

    private static string Depth(FenceSpec fence) => fence.Depth is { } depth ? Invariant($"{Figures.Short(depth)} deep") : "right through";
}
