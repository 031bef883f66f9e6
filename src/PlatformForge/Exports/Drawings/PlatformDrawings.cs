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
        all.AddRange(platform.Faces.SelectMany(f => OfFace(dossier, f, OutputFiles.Named(f, name), crossSections)));
        Add("plates", () => PlateDrawing.Draw(dossier, platform));
        return all;
    }

    // What is told along the track of one face.
    private static List<(string Path, Lazy<Sheet> Sheet)> OfFace(Dossier dossier, PlatformDossier face, string name, IReadOnlyList<double> crossSections)
    {
        var all = new List<(string Path, Lazy<Sheet> Sheet)>();
        void Add(string what, Func<Sheet> draw) => all.Add((Invariant($"drawings/{name}-{what}.svg"), new(draw)));
        Add("gaps", () => GapDrawing.Draw(dossier, face));
        Add("gaps-by-style", () => GapStylesDrawing.Draw(dossier, face));
        if (face.Tightest.Count > 0)
        {
            Add("tightest", () => TightDrawing.Draw(dossier, face));
        }

        Add("cross-section", () => CrossSectionDrawing.Draw(dossier, face, CrossSectionDrawing.Telling(face.Plan)));
        foreach (double s in crossSections.Where(s => s >= face.Plan.Spec.Face.From && s <= face.Plan.Spec.Face.To).Distinct().Order())
        {
            Add(Invariant($"cross-section-{s:0.###}"), () => CrossSectionDrawing.Draw(dossier, face, s));
        }

        return all;
    }

    /// <summary>The drawings of all platforms, a chapter each, as PDF.</summary>
    public static byte[] Bound(Dossier dossier, IReadOnlyList<PdfChapter> chapters) =>
        PdfWriter.ToBytes(new(Invariant($"{dossier.Project}: drawings"), "PlatformForge " + dossier.Version, chapters));
}
