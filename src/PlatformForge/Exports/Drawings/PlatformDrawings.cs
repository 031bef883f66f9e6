using PlatformForge.Exports.Drawings.Elevations;
using PlatformForge.Exports.Drawings.Gaps;
using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Drawings.Plans;
using PlatformForge.Exports.Drawings.Sections;
using PlatformForge.Exports.Drawings.Trestles;
using PlatformForge.Exports.Files;
using PlatformForge.Exports.Pdf;
using PlatformForge.Masonry.Finishes;
using PlatformForge.Units.Memories;
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
    /// <param name="memory">What earlier runs drew; nothing when null.</param>
    /// <param name="inTurn">Draws views in lines when their turn has come: they hold as much as pictures do; null draws them at once.</param>
    /// <param name="cancel">Gives up.</param>
    public static IReadOnlyList<(string Path, SharedDrawing Sheet)> Of(Dossier dossier, PlatformDossier platform, string name,
        IReadOnlyList<double> crossSections, Memory? memory = null, Func<PlatformDossier, Func<Sheet>, Sheet>? inTurn = null,
        CancellationToken cancel = default)
    {
        memory ??= Memory.None;
        var all = new List<(string Path, SharedDrawing Sheet)>();
        void Add(string what, Func<SheetInput, CancellationToken, Sheet> draw) =>
            all.Add(Drawn(new(dossier, platform, null), name, what, draw, memory, cancel));
        Add("plan", static (i, _) => PlanDrawing.Draw(i.Dossier, i.Platform));
        all.AddRange(platform.Faces.SelectMany(f => OfFace(dossier, f, OutputFiles.Named(platform, f, name), crossSections, memory, cancel)));
        if (platform.Plan.Trestle is not null)
        {
            Add("trestle", static (i, _) => TrestleDrawing.Draw(i.Dossier, i.Platform));
        }

        if (ElevationFaces.Any(platform.Plan))
        {
            Add("elevations", static (i, _) => ElevationDrawing.Draw(i.Dossier, i.Platform));
        }

        if (platform.Sections.Facing?.Finishes.Any(f => f.Work is SheetSpec) == true)
        {
            Add("strips", static (i, _) => SheetStripDrawing.Draw(i.Dossier, i.Platform));
        }

        Add("plates", static (i, _) => PlateDrawing.Draw(i.Dossier, i.Platform));
        void InTurn(string what, Func<SheetInput, CancellationToken, Sheet> draw)
        {
            var (path, sheet) = Drawn(new(dossier, platform, null), name, what, draw, memory, cancel);
            all.Add((path, inTurn is null ? sheet : new(() => inTurn(platform, () => sheet.Value))));
        }

        InTurn("isometric", static (i, cancel) => IsometricDrawing.Draw(i.Dossier, i.Platform, cancel));
        if (platform.Sections.Sections.Count > 1)
        {
            InTurn("assembly", static (i, cancel) => AssemblyDrawing.Draw(i.Dossier, i.Platform, cancel));
        }

        return all;
    }

    // What is told along the track of one face.
    private static List<(string Path, SharedDrawing Sheet)> OfFace(
        Dossier dossier, PlatformDossier face, string name, IReadOnlyList<double> crossSections, Memory memory, CancellationToken cancel)
    {
        var all = new List<(string Path, SharedDrawing Sheet)>();
        void Add(string what, Func<SheetInput, CancellationToken, Sheet> draw, object? by = null) =>
            all.Add(Drawn(new(dossier, face, by), name, what, draw, memory, cancel));
        Add("gaps", static (i, _) => GapDrawing.Draw(i.Dossier, i.Platform));
        Add("gaps-by-style", static (i, _) => GapStylesDrawing.Draw(i.Dossier, i.Platform));
        if (face.Tightest.Count > 0)
        {
            Add("tightest", static (i, _) => TightDrawing.Draw(i.Dossier, i.Platform));
        }

        Add("cross-section", static (i, _) => CrossSectionDrawing.Draw(i.Dossier, i.Platform, CrossSectionDrawing.Telling(i.Platform.Plan)));
        foreach (double s in crossSections.Where(s => s >= face.Plan.Spec.Face.From && s <= face.Plan.Spec.Face.To).Distinct().Order())
        {
            Add(Invariant($"cross-section-{s:0.###}"), static (i, _) => CrossSectionDrawing.Draw(i.Dossier, i.Platform, (double)i.By!), s);
        }

        return all;
    }

    private static (string Path, SharedDrawing Sheet) Drawn(
        SheetInput input, string name, string what, Func<SheetInput, CancellationToken, Sheet> draw, Memory memory, CancellationToken cancel) =>
        (Invariant($"drawings/{name}-{what}.svg"), new(() => memory.Of("drawing: " + what, input, draw, cancel)));

    /// <summary>The drawings of all platforms, a chapter each, as PDF.</summary>
    public static void Bind(Stream to, Dossier dossier, IReadOnlyList<PdfChapter> chapters) =>
        PdfWriter.Write(to, new(Invariant($"{dossier.Project}: drawings"), "PlatformForge " + dossier.Version, chapters));
}
