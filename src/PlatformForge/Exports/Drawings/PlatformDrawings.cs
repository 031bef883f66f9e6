using PlatformForge.Exports.Pdf;
using static System.FormattableString;

namespace PlatformForge.Exports.Drawings;

/// <summary>All drawings of a platform in the order in which they are read, each drawn once whatever it is written as.</summary>
internal static class PlatformDrawings
{
    /// <summary>All drawings of all platforms in one file.</summary>
    public const string BookName = "drawings/all.pdf";

    /// <summary>The drawings with the paths of their SVG files.</summary>
    /// <param name="dossier">Everything known.</param>
    /// <param name="platform">The platform.</param>
    /// <param name="name">Its name for files.</param>
    /// <param name="crossSections">Chainages, mm, of further cross-sections.</param>
    public static IReadOnlyList<(string Path, Lazy<Sheet> Sheet)> Of(Dossier dossier, PlatformDossier platform, string name, IReadOnlyList<double> crossSections)
    {
        var all = new List<(string Path, Lazy<Sheet> Sheet)>();
        void Add(string what, Func<Sheet> draw) => all.Add((Invariant($"drawings/{name}-{what}.svg"), new(draw)));
        Add("plan", () => PlanDrawing.Draw(dossier, platform));
        Add("gaps", () => GapDrawing.Draw(dossier, platform));
        Add("gaps-by-style", () => GapStylesDrawing.Draw(dossier, platform));
        if (platform.Tightest.Count > 0)
        {
            Add("tightest", () => TightDrawing.Draw(dossier, platform));
        }

        Add("cross-section", () => CrossSectionDrawing.Draw(dossier, platform, CrossSectionDrawing.Telling(platform.Plan)));
        foreach (double s in crossSections.Where(s => s >= platform.Plan.Spec.Face.From && s <= platform.Plan.Spec.Face.To).Distinct().Order())
        {
            Add(Invariant($"cross-section-{s:0.###}"), () => CrossSectionDrawing.Draw(dossier, platform, s));
        }

        Add("plates", () => PlateDrawing.Draw(dossier, platform));
        return all;
    }

    /// <summary>The drawings of all platforms, a chapter each, as PDF.</summary>
    public static byte[] Bound(Dossier dossier, IReadOnlyList<PdfChapter> chapters) =>
        PdfWriter.ToBytes(new(Invariant($"{dossier.Project}: drawings"), "PlatformForge " + dossier.Version, chapters));
}
