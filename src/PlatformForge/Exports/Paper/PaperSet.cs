using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Files;
using PlatformForge.Exports.Paper.FullSize;
using PlatformForge.Geometry;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Exports.Paper;

/// <summary>The full-size sheets of one platform.</summary>
/// <param name="Platform">Its name.</param>
/// <param name="Key">The key to them.</param>
/// <param name="Sheets">The sheets in order.</param>
/// <param name="Places">Where each lies on the layout.</param>
public sealed record PlatformPaper(string Platform, Sheet Key, IReadOnlyList<Sheet> Sheets, IReadOnlyList<SheetPlace> Places)
{
    /// <summary>The elevations of its walls and ends, at full size; empty where it stands on bents alone.</summary>
    public IReadOnlyList<Sheet> Elevations { get; init; } = [];

    /// <summary>Its trestle's front and bents; empty where it stands on walls.</summary>
    public IReadOnlyList<Sheet> Trestle { get; init; } = [];
}

/// <summary>Where a sheet lies on the layout: the place of its top left corner, and the direction that runs to the right on it; mm, before any correction
/// for a printer.</summary>
/// <param name="Number">Number of the sheet.</param>
/// <param name="Corner">x and y of the paper's top left corner.</param>
/// <param name="Along">Unit direction to the right.</param>
/// <param name="Joins">Names of the joins it shows.</param>
public sealed record SheetPlace(int Number, Point2 Corner, Point2 Along, IReadOnlyList<string> Joins);

/// <summary>Front door of the room: full-size sheets of every platform on the paper that is asked for.</summary>
public static class PaperSet
{
    /// <summary>Most sheets a platform may take: more is a slip in the size of the paper.</summary>
    public const int MostSheets = 400;

    /// <summary>The folder that the files lie in.</summary>
    public const string Folder = "paper";

    /// <summary>Why sheets cannot be made on this paper; empty when they can. Told before anything long is done.</summary>
    public static IReadOnlyList<Finding> Objections(PaperSpec paper) => PaperRule.Check(paper);

    /// <summary>The sheets of a platform along the track of one of its faces, or the finding that they would be too many.</summary>
    /// <param name="dossier">All that is known.</param>
    /// <param name="platform">The platform by that face.</param>
    /// <param name="paper">The paper.</param>
    /// <param name="first">The platform by its first face; null where that is the one.</param>
    public static Outcome<PlatformPaper> Of(Dossier dossier, PlatformDossier platform, PaperSpec paper, PlatformDossier? first = null)
    {
        var laid = Lay(dossier, platform, paper, first, "");
        return laid.Value is { } set ? Outcome.Of(set.With(dossier.VerdictLine)) : Outcome.Fault<PlatformPaper>(laid.Findings);
    }

    private static Outcome<LaidPaper> Lay(Dossier dossier, PlatformDossier platform, PaperSpec paper, PlatformDossier? first, string name)
    {
        if (PaperRule.Check(paper) is { Count: > 0 } faults)
        {
            return Outcome.Fault<LaidPaper>(faults);
        }

        var figures = PlanFigures.Of(dossier, platform, first);
        var index = new FigureIndex(figures);
        var room = SheetRoom.Of(paper, IsLying(figures, index, paper), paper.Stretch);
        if (Tiles(figures, index, paper, room) is not { } tiles)
        {
            return Outcome.Fault<LaidPaper>(PaperRule.TooMany(paper, platform.FaceName));
        }

        var origin = new SheetOrigin(
            Invariant($"{dossier.Project}, 1:{Figures.Short(dossier.Scale.Ratio)}, gauge {Figures.Short(dossier.Gauge)} mm. ")
                + Invariant($"PlatformForge {dossier.Version}, input {dossier.InputHash[..Math.Min(12, dossier.InputHash.Length)]}."),
            "");
        var draw = new PlanSheet(figures, index, paper, room, origin);
        var pages = new ElevationPages(platform.FaceName, ElevationPages.FacesOf(first ?? platform, platform), paper, room, origin);
        var elevations = pages.Draw();
        var trestle = TrestlePages(first, platform, paper, room, origin);
        var bents = trestle?.Draw() ?? [];
        return Outcome.Of(new LaidPaper(
            dossier,
            platform.FaceName,
            name,
            paper,
            verdict => new KeySheet(figures, paper, room, origin with { Verdict = verdict }).Draw(tiles,
                pages.InWords(elevations.Count) + trestle?.InWords(bents.Count)),
            [.. tiles.Select(t => draw.Draw(t, tiles.Count))],
            [.. tiles.Select(t => new SheetPlace(t.Number, t.Frame.ToLayout(default), t.Frame.Along, [.. t.Joins.Select(j => j.Name)]))])
        { Elevations = elevations, Trestle = bents });
    }

    // Chosen without the correction, so that a corrected print lies as the one that was measured.
    private static bool IsLying(FullSizeFigures figures, FigureIndex index, PaperSpec paper)
    {
        int Sheets(bool lying) => Tiles(figures, index, paper, SheetRoom.Of(paper, lying, new(1, 1)))?.Count ?? int.MaxValue;
        return paper.Turn == PaperTurn.Automatic ? Sheets(true) <= Sheets(false) : paper.Turn == PaperTurn.Lying;
    }

    // A trestle belongs to the platform, and is drawn with its first face.
    private static TrestlePages? TrestlePages(PlatformDossier? first, PlatformDossier platform, PaperSpec paper, SheetRoom room, SheetOrigin origin) =>
        first is null || first.Faces.First().FaceName == platform.FaceName ? new(platform.FaceName, first ?? platform, paper, room, origin) : null;

    /// <summary>The sheets of all platforms, still without the verdict that stands on their keys; of an island a set a face.</summary>
    internal static Outcome<IReadOnlyList<LaidPaper>> Laid(Dossier dossier, PaperSpec paper)
    {
        (PlatformDossier Platform, PlatformDossier Face, string Name)[] faces = [.. dossier.Platforms.Zip(
            OutputFiles.Names(dossier),
            (p, name) => p.Faces.Select(f => (Platform: p, Face: f, Name: OutputFiles.Named(p, f, name))))
            .SelectMany(f => f)];
        var sets = new Outcome<LaidPaper>[faces.Length];
        Parallel.For(0, faces.Length, i => sets[i] = Lay(dossier, faces[i].Face, paper, faces[i].Platform, faces[i].Name));
        return sets.SelectMany(s => s.Findings).ToArray() is { Length: > 0 } faults
            ? Outcome.Fault<IReadOnlyList<LaidPaper>>(faults)
            : Outcome.Of<IReadOnlyList<LaidPaper>>([.. sets.Select(s => s.Value!)]);
    }

    /// <summary>The files of all platforms: one PDF a platform (of an island one a face), each sheet as SVG, and a list of where the sheets lie.</summary>
    public static Outcome<IReadOnlyList<OutputFile>> Files(Dossier dossier, PaperSpec paper)
    {
        var laid = Laid(dossier, paper);
        return laid.Value is { } sets
            ? Outcome.Of<IReadOnlyList<OutputFile>>([.. sets.SelectMany(s => s.Bound(dossier.VerdictLine).Concat(s.Sheets()))
                .Select(w => new OutputFile(w.Path, w.Make()))])
            : Outcome.Fault<IReadOnlyList<OutputFile>>(laid.Findings);
    }

    private static IReadOnlyList<SheetTile>? Tiles(FullSizeFigures figures, FigureIndex index, PaperSpec paper, SheetRoom room) =>
        !room.IsLarge ? null
        : paper.Layout == PaperLayout.Track ? new TrackTiling(figures, room, paper.Overlap).Tiles(MostSheets)
        : new PageTiling(figures, index, room, paper.Overlap).Tiles(MostSheets);
}
