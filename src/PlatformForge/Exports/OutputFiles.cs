using PlatformForge.Exports.Drawings;
using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Drawings.Painting;
using PlatformForge.Exports.Files;
using PlatformForge.Exports.Looks;
using PlatformForge.Exports.Manifests;
using PlatformForge.Exports.Pdf;
using PlatformForge.Exports.Pictures;
using PlatformForge.Exports.Reports;
using PlatformForge.Exports.Tables;
using PlatformForge.Units.Memories;
using static System.FormattableString;

namespace PlatformForge.Exports;

/// <summary>What of a run is wanted as files.</summary>
public sealed record OutputChoice
{
    /// <summary>Whether every set there is was asked for at once: one that the project cannot have is then left out with a warning.</summary>
    public bool EverySet { get; init; }

    /// <summary>STL and 3MF files: without them a folder holds nothing that could be verified.</summary>
    public bool Prints { get; init; } = true;

    /// <summary>Tables.</summary>
    public bool Tables { get; init; } = true;

    /// <summary>The report as one page for a browser, with all that is drawn and pictured; figures and plain words of it are made always.</summary>
    public bool Report { get; init; } = true;

    /// <summary>Masks for painting.</summary>
    public bool Masks { get; init; } = true;

    /// <summary>Whether the page has drawings that are not wanted as files.</summary>
    public bool ReportDrawings { get; init; }

    /// <summary>Whether it has pictures that are not wanted as files.</summary>
    public bool ReportPictures { get; init; }

    /// <summary>Full-size sheets on paper.</summary>
    public bool Paper { get; init; }

    /// <summary>Cut lines for sheet material.</summary>
    public bool Sheet { get; init; }

    /// <summary>The finished layout as one file for viewers of solids.</summary>
    public bool Scene { get; init; }

    /// <summary>Gauges and proofs.</summary>
    public bool Gauges { get; init; }

    /// <summary>Whether gauges are shown on their beds though no picture of the platform is wanted.</summary>
    public bool GaugePictures { get; init; }

    /// <summary>Pictures, and the small ones inside 3MF files.</summary>
    public bool Pictures { get; init; } = true;

    /// <summary>Whether pictures show what is not printed: what stands on the platform, and vehicles.</summary>
    public bool Furnished { get; init; } = true;

    /// <summary>Drawings.</summary>
    public bool Drawings { get; init; } = true;

    /// <summary>Chainages in mm, along the charts of the plans, at which a cross-section is drawn beside the telling one; platforms that do not reach there
    /// have none.</summary>
    public IReadOnlyList<double> CrossSections { get; init; } = [];

    /// <summary>Width of pictures in pixels.</summary>
    public int PictureWidth { get; init; } = PlatformPictures.UsualWidth;

    /// <summary>Rows of the setting-out table lie this far apart, mm.</summary>
    public double SettingOutStep { get; init; } = SettingOut.UsualStep;
}

/// <summary>Everything that a run writes.</summary>
/// <param name="Manifest">What the folder will hold, its list of files not yet filled in.</param>
/// <param name="Files">The files, by path.</param>
public sealed record OutputSet(Manifest Manifest, IReadOnlyList<OutputFile> Files);

/// <summary>What a drawing, a table or a picture is made from.</summary>
/// <param name="Dossier">Everything known.</param>
/// <param name="Platform">The platform it shows.</param>
/// <param name="By">A figure of its own, such as the chainage of a cross-section; null where it has none.</param>
internal sealed record SheetInput(Dossier Dossier, PlatformDossier Platform, object? By);

/// <summary>Front door of the room: turns a dossier into files, in memory. See <see cref="Folders.OutputFolder"/> for writing them.</summary>
public static class OutputFiles
{
    /// <summary>Makes every file. The bytes depend on nothing but the dossier and the choice.</summary>
    /// <inheritdoc cref="Made" path="/param"/>
    public static OutputSet Of(
        Dossier dossier, OutputChoice? choice = null, IProgress<string>? progress = null, Memory? memory = null, CancellationToken cancel = default)
    {
        var made = Made(dossier, choice, progress, memory, cancel);
        var told = Told(dossier, choice ?? new(), made.Files, FileShelf.InMemory, memory ?? Memory.None, cancel);
        return made with { Files = OutputWork.InOrder([.. made.Files, .. told]) };
    }

    /// <summary>Makes what tells of the verdict and of everything made: reports, tables for the workbench, masks.</summary>
    /// <param name="dossier">Everything known, the verdict too.</param>
    /// <param name="choice">What is wanted.</param>
    /// <param name="made">What was made before: its drawings and pictures are shown.</param>
    /// <param name="shelf">Where files go as they are made.</param>
    /// <param name="memory">What earlier runs drew.</param>
    /// <param name="cancel">Gives up between files.</param>
    public static IReadOnlyList<OutputFile> Told(
        Dossier dossier, OutputChoice choice, IReadOnlyList<OutputFile> made, FileShelf shelf, Memory memory, CancellationToken cancel)
    {
        var names = Names(dossier);
        var there = made.ToDictionary(f => f.Path, StringComparer.Ordinal);
        Dossier shown = dossier with { Findings = [], Verdict = null }, unnamed = shown with { InputHash = "" };
        var images = new List<IReadOnlyList<OutputFile>>();
        for (int i = 0; choice.Report && i < names.Count; i++)
        {
            cancel.ThrowIfCancellationRequested();
            var (platform, name, own) = (dossier.Platforms[i], names[i], new List<OutputFile>());
            var sheets = choice.Drawings || choice.ReportDrawings ? PlatformDrawings.Of(shown, platform, name, choice.CrossSections, memory, cancel: cancel)
                : [];
            foreach (var (path, sheet) in sheets)
            {
                own.Add(there.TryGetValue(path, out var file) ? file : new(path, SvgWriter.ToBytes(sheet.Value)));
            }

            foreach (var picture in choice.Pictures || choice.ReportPictures ? Pictures(unnamed, platform, name, choice) : [])
            {
                own.Add(there.TryGetValue(picture.Path, out var file) ? file : new(picture.Path, memory.Of(picture.Path, picture.Input, picture.Make, cancel)));
            }

            own.AddRange(i > 0 ? [] : made.Where(f => f.Path.StartsWith(Proving.ProofFiles.Folder + "/", StringComparison.Ordinal)
                && Path.GetExtension(f.Path) is ".svg" or ".png"));
            images.Add(own);
        }

        return OutputWork.Make([.. ReportFiles.Of(dossier, choice, images, there.Keys.ToHashSet(StringComparer.Ordinal))], shelf, cancel);
    }

    /// <summary>Makes every file but those that tell of the verdict. The bytes depend on nothing but the dossier and the choice.</summary>
    /// <param name="dossier">Everything known.</param>
    /// <param name="choice">What is wanted; all of it when null.</param>
    /// <param name="progress">Told the path of each file when it is made.</param>
    /// <param name="cancel">Gives up between files.</param>
    /// <param name="memory">What earlier runs drew; nothing when null.</param>
    public static OutputSet Made(
        Dossier dossier, OutputChoice? choice = null, IProgress<string>? progress = null, Memory? memory = null, CancellationToken cancel = default)
    {
        var work = Work(dossier, choice ?? new(), memory ?? Memory.None, cancel);
        return new(work.Manifest, OutputWork.InOrder(OutputWork.Make([.. work.Shown, .. work.Held], FileShelf.InMemory, cancel, progress)));
    }

    /// <summary>What there is to make, in two lots, none of it begun: those who read back what is printed need not wait for pictures.</summary>
    /// <inheritdoc cref="Of" path="/param"/>
    internal static OutputWork Work(Dossier dossier, OutputChoice choice, Memory memory, CancellationToken cancel)
    {
        // No sheet shows the findings, and drawings alone name the input: they are made anew only where something else has changed.
        Dossier shown = dossier with { Findings = [] }, unnamed = shown with { InputHash = "" };
        var names = Names(dossier);
        List<FileWork> held = [new(DesignCopy.FileName, () => DesignForm.ToBytes(DesignCopy.Of(dossier)))], further = [];
        var sections = new List<ManifestSection>();
        var lines = new List<ManifestLine>();
        var turns = new PictureTurns();
        for (int i = 0; i < names.Count; i++)
        {
            var meshes = new PrintMeshes(dossier.Platforms[i].Sections, memory);
            held.AddRange(choice.Prints ? new PlateFiles(unnamed, dossier.Platforms[i], names[i], meshes, choice.Pictures ? turns : null, memory,
                cancel).Work() : []);
            further.AddRange(Shown(unnamed, dossier.Platforms[i], names[i], choice).Select(s => new FileWork(s.Path, () => s.Input.By is PictureLook
                ? turns.Draw(s.Input.Platform, () => memory.Of(s.Path, s.Input, s.Make, cancel))
                : memory.Of(s.Path, s.Input, s.Make, cancel))));
            sections.AddRange(choice.Prints ? Listed(dossier.Platforms[i], names[i]) : []);
            lines.AddRange(choice.Prints ? Lines(dossier.Platforms[i], names[i]) : []);
        }

        if (choice.Drawings)
        {
            var books = dossier.Platforms.Select((p, i) => (p.Name, Sheets: PlatformDrawings.Of(shown, p, names[i], choice.CrossSections, memory,
                turns.Draw, cancel))).ToArray();
            // Side by side what is made of one sheet, so that few are held at a time.
            further.AddRange(books.SelectMany(b => b.Sheets).SelectMany(s => SheetPictures.Of(s.Path, s.Sheet).Prepend(s.Sheet.File(s.Path, SvgWriter.Write))));
            further.Add(new(PlatformDrawings.BookName, (Stream to) =>
                PlatformDrawings.Bind(to, dossier, [.. books.Select(b => new PdfChapter(b.Name, b.Name, []) { Drawn = [.. b.Sheets.Select(s => s.Sheet)] })])));
        }

        return new(new(dossier.Project, dossier.Version, dossier.InputHash, sections, []) { Stretch = dossier.Printer.Stretch, Lines = lines }, held,
            further)
        { Turns = turns };
    }

    private static IEnumerable<ShownFile> Shown(Dossier dossier, PlatformDossier platform, string name, OutputChoice choice)
    {
        ShownFile Of(string path, Func<SheetInput, CancellationToken, byte[]> make, object? by = null) => new(path, new(dossier, platform, by), make);
        foreach (var picture in choice.Pictures ? Pictures(dossier, platform, name, choice) : [])
        {
            yield return picture;
        }

        if (!choice.Tables)
        {
            yield break;
        }

        foreach (var table in platform.Faces.SelectMany(f => FaceTables(dossier, f, Named(platform, f, name), choice)))
        {
            yield return table;
        }

        foreach (var (table, make) in FeatureTables.Of(platform.Plan))
        {
            yield return Of(Invariant($"tables/{name}-{table}.csv"), static (i, _) => FeatureTables.Of(i.Platform.Plan).First(t =>
                t.Name == (string)i.By!).Make(), table);
        }

        yield return Of(Invariant($"tables/{name}-sections.csv"), static (i, _) => PlatformTables.Sections(i.Platform));
    }

    private static IEnumerable<ShownFile> Pictures(Dossier dossier, PlatformDossier platform, string name, OutputChoice choice)
    {
        SheetInput input = new(dossier, platform, new PictureLook(choice.PictureWidth, choice.Furnished));
        yield return new(FileNames.Picture(name), input, static (i, _) => Finished(i.Dossier, i.Platform, (PictureLook)i.By!));
        if (PlatformPictures.TellsFromNear(platform))
        {
            yield return new(FileNames.PictureFromNear(name), input, static (i, _) => FromNear(i.Dossier, i.Platform, (PictureLook)i.By!));
        }

        yield return new(FileNames.PictureFromBelow(name), input, static (i, _) => FromBelow(i.Dossier, i.Platform, (PictureLook)i.By!));
    }

    private static byte[] Finished(Dossier dossier, PlatformDossier platform, PictureLook look)
    {
        string note = look.Furnished ? "As seen beside the track. Track, vehicles and what stands on the platform are shown, not printed."
            : "As seen beside the track. The track is shown, not printed.";
        var picture = PlatformPictures.Finished(dossier, platform, look.Width, furnished: look.Furnished);
        return PngWriter.ToBytes(TitleStrip.Under(picture, Invariant($"{dossier.Project}: {platform.Name}"), note, ScaleOf(dossier)));
    }

    private static byte[] FromNear(Dossier dossier, PlatformDossier platform, PictureLook look) => PngWriter.ToBytes(TitleStrip.Under(
        PlatformPictures.FromNear(platform, look.Width), Invariant($"{dossier.Project}: {platform.Name}, from near"),
            "A stretch of the front as it is printed; colours are those to paint it in.", ScaleOf(dossier)));

    private static byte[] FromBelow(Dossier dossier, PlatformDossier platform, PictureLook look) => PngWriter.ToBytes(TitleStrip.Under(
        PlatformPictures.FromBelow(platform, look.Width), Invariant($"{dossier.Project}: {platform.Name}, from below"),
            "The sections drawn apart, with ribs, joints and what is engraved underneath.", ScaleOf(dossier)));

    private static string ScaleOf(Dossier dossier) => Invariant($"model of 1:{Figures.Short(dossier.Scale.Ratio)}");

    private sealed record PictureLook(int Width, bool Furnished);

    private sealed record ShownFile(string Path, SheetInput Input, Func<SheetInput, CancellationToken, byte[]> Make);

    /// <summary>What the names of each platform's files begin with.</summary>
    internal static IReadOnlyList<string> Names(Dossier dossier) => FileNames.Distinct(dossier.Platforms.Select(p => (p.Name, Tracks(p))));

    /// <summary>What is told of a face has its track's name where a platform has several.</summary>
    internal static string Named(PlatformDossier platform, PlatformDossier face, string name)
    {
        var tracks = Tracks(platform);
        return tracks.Count == 0 ? name : FileNames.Beside(name, tracks)[Math.Max(0, tracks.ToList().IndexOf(face.Track))];
    }

    private static IReadOnlyList<string> Tracks(PlatformDossier platform) => platform.Plan.Spec.IsIsland ? [.. platform.Faces.Select(f => f.Track)] : [];

    private static IEnumerable<ShownFile> FaceTables(Dossier dossier, PlatformDossier face, string name, OutputChoice choice)
    {
        ShownFile Of(string what, Func<SheetInput, CancellationToken, byte[]> make, object? by = null) =>
            new(Invariant($"tables/{name}-{what}"), new(dossier, face, by), make);
        yield return Of("setting-out.csv", static (i, _) => SettingOut.Table(i.Dossier, i.Platform, (double)i.By!), choice.SettingOutStep);
        yield return Of("chords.csv", static (i, _) => SettingOut.Chords(i.Platform));
        yield return Of("gaps.csv", static (i, _) => PlatformTables.Gaps(i.Platform));
        yield return Of("gaps-by-style.csv", static (i, _) => GapsByStyle.Of(i.Platform.Plan).ToCsv());
        yield return Of("gaps.json", static (i, _) => GapsByStyle.Of(i.Platform.Plan).ToJson());
        if (face.AsBuilt is not null)
        {
            yield return Of("as-built.csv", static (i, _) => PlatformTables.AsBuilt(i.Platform.AsBuilt!));
        }
    }

    private static IEnumerable<ManifestLine> Lines(PlatformDossier platform, string name)
    {
        var set = platform.Sections;
        var ids = new LineIds(set);
        foreach (var piece in set.Lines.Pieces)
        {
            string plate = piece.IsInlay ? FileNames.Plate(name, set.Plates.First(p => p.Sections.Any(s => s.Section.Number == piece.Section)).Number)
                : FileNames.Strips(name, set.Lines.Plates.First(p => p.Pieces.Any(s => s.Piece == piece)).Number);
            yield return new(platform.Name, piece.Name(set.Sections[piece.Section - 1]), piece.Section, piece.IsInlay, piece.Made.Depth, piece.Made.Rise,
                FileNames.Line(name, piece), plate, ids.Of(piece), piece.ToLayout)
            {
                AllPlates = piece.IsInlay ? FileNames.AllPlates(name) : null,
            };
        }
    }

    private static IEnumerable<ManifestSection> Listed(PlatformDossier platform, string name) =>
        from section in platform.Sections.Sections
        let plate = platform.Sections.Plates.First(p => p.Sections.Any(s => s.Section.Number == section.Number))
        select new ManifestSection(
            platform.Name, section.Name, section.Number, section.From, section.To,
            FileNames.Section(name, section.Number), FileNames.Plate(name, plate.Number), section.Number, section.ToLayout)
        {
            AllPlates = FileNames.AllPlates(name),
        };
}
