using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Platforms.Plans;
using static System.FormattableString;

namespace PlatformForge.Exports.Reports.Forms;

/// <summary>Ribs and features for the report: what was asked and what was found, in rows and lines.</summary>
internal static class MadeText
{
    public static readonly string[] Headings = ["what", "asked", "found", "how many"];

    /// <summary>Rows for ribs across and what features say; empty where there are none.</summary>
    public static IReadOnlyList<string[]> Rows(PlatformPlan plan)
    {
        var rows = new List<string[]>();
        if (plan.RibPitch is { Asked: > 0, Greatest: > 0 } ribs)
        {
            rows.Add(["ribs across, middle to middle, at most", Figures.Short(ribs.Asked), Invariant($"{Figures.Fine(ribs.Least)} ")
                + Invariant($"to {Figures.Fine(ribs.Greatest)}"), Invariant($"{ribs.Count}")]);
        }

        if (plan is { Trestle: { Pitch.Greatest: > 0 } trestle, Spec.Trestle: { } spec })
        {
            rows.Add(["bents of the trestle, middle to middle, at most", Figures.Short(spec.Pitch),
                Invariant($"{Figures.Fine(trestle.Pitch.Least)} to {Figures.Fine(trestle.Pitch.Greatest)}"), Invariant($"{trestle.Bents.Count}")]);
            rows.Add(["rows of posts", spec.Posts is { } rowsAsked ? Invariant($"{rowsAsked}") : "6 ft apart at most", Invariant($"{trestle.Rows.Count}"),
                Invariant($"{trestle.Rows.Count * trestle.Bents.Count} posts")]);
        }

        rows.AddRange(plan.Features.SelectMany(f => f.Made).Select(m => (string[])[m.What, m.Asked, m.Found, Invariant($"{m.Count}")]));
        return rows;
    }
}
