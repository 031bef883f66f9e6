using PlatformForge.Exports.Drawings;
using PlatformForge.Exports.Drawings.Painting;
using PlatformForge.Exports.Manifests;
using PlatformForge.Exports.Pdf;
using PlatformForge.Exports.Pictures;
using PlatformForge.Exports.Reports;
using PlatformForge.Exports.Tables;
using static System.FormattableString;

namespace PlatformForge.Exports;

/// <summary>What of a run is wanted as files.</summary>
public sealed record OutputChoice
{
    /// <summary>STL and 3MF files: without them a folder holds nothing that could be verified.</summary>
    public bool Prints { get; init; } = true;

    /// <summary>Tables.</summary>
    public bool Tables { get; init; } = true;

    /// <summary>Full-size sheets on paper.</summary>
    public bool Paper { get; init; }

    /// <summary>Pictures, and the small ones inside 3MF files.</summary>
    public bool Pictures { get; init; } = true;

    /// <summary>Whether pictures show what is not printed: what stands on the platform, and vehicles.</summary>
    public bool Furnished { get; init; } = true;

    /// <summary>Drawings.</summary>
    public bool Drawings { get; init; } = true;

    /// <summary>Chainages in mm, along the charts of the plans, at which a cross-section is drawn beside the telling one; platforms that do not reach there have none.</summary>
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

/// <summary>Front door of the room: turns a dossier into files, in memory. See <see cref="Folders.OutputFolder"/> for writing them.</summary>
public static class OutputFiles
{
    /// <summary>Makes every file. The bytes depend on nothing but the dossier and the choice.</summary>
    /// <param name="dossier">Everything known.</param>
    /// <param name="choice">What is wanted; all of it when null.</param>
    /// <param name="progress">Told the path of each file when it is made.</param>
    /// <param name="cancel">Gives up between files.</param>
    public static OutputSet Of(Dossier dossier, OutputChoice? choice = null, IProgress<string>? progress = null, CancellationToken cancel = default)
    {
        choice ??= new();
        var names = FileNames.Distinct(dossier.Platforms.Select(p => p.Name));
        var work = new List<(string Path, Func<byte[]> Make)>();
        var sections = new List<ManifestSection>();
        for (int i = 0; i < names.Count; i++)
        {
            var meshes = new PrintMeshes(dossier.Platforms[i].Sections);
            work.AddRange(choice.Prints ? new PlateFiles(dossier, dossier.Platforms[i], names[i], meshes, choice.Pictures).Work() : []);
            work.AddRange(Shown(dossier, dossier.Platforms[i], names[i], choice));
            sections.AddRange(choice.Prints ? Listed(dossier.Platforms[i], names[i]) : []);
        }

        if (choice.Drawings)
        {
            var books = dossier.Platforms.Select((p, i) => (p.Name, Sheets: PlatformDrawings.Of(dossier, p, names[i], choice.CrossSections))).ToArray();
            work.AddRange(books.SelectMany(b => b.Sheets).Select(s => (s.Path, (Func<byte[]>)(() => SvgWriter.ToBytes(s.Sheet.Value)))));
            work.Add((PlatformDrawings.BookName, () => PlatformDrawings.Bound(dossier, [.. books.Select(b => new PdfChapter(b.Name, b.Name, [.. b.Sheets.Select(s => s.Sheet.Value)]))])));
        }

        work.Add((DesignCopy.FileName, () => DesignForm.ToBytes(DesignCopy.Of(dossier))));
        work.Add(("report.json", () => ReportWriter.Json(dossier)));
        work.Add(("report.md", () => ReportWriter.Markdown(dossier)));
        var files = new OutputFile[work.Count];
        Parallel.For(0, files.Length, new ParallelOptions { CancellationToken = cancel }, i =>
        {
            files[i] = new(work[i].Path, work[i].Make());
            progress?.Report(work[i].Path);
        });
        return new(new(dossier.Project, dossier.Version, dossier.InputHash, sections, []), [.. files.OrderBy(f => f.Path, StringComparer.Ordinal)]);
    }

    private static IEnumerable<(string Path, Func<byte[]> Make)> Shown(Dossier dossier, PlatformDossier platform, string name, OutputChoice choice)
    {
        if (choice.Pictures)
        {
            string scale = Invariant($"model of 1:{Figures.Short(dossier.Scale.Ratio)}");
            string shown = choice.Furnished ? "As seen beside the track. Track, vehicles and what stands on the platform are shown, not printed." : "As seen beside the track. The track is shown, not printed.";
            yield return (FileNames.Picture(name), () => PngWriter.ToBytes(TitleStrip.Under(PlatformPictures.Finished(dossier, platform, choice.PictureWidth, furnished: choice.Furnished), Invariant($"{dossier.Project}: {platform.Name}"), shown, scale)));
            yield return (FileNames.PictureFromBelow(name), () => PngWriter.ToBytes(TitleStrip.Under(
                PlatformPictures.FromBelow(platform, choice.PictureWidth), Invariant($"{dossier.Project}: {platform.Name}, from below"), "The sections drawn apart, with ribs, joints and what is engraved underneath.", scale)));
        }

        if (!choice.Tables)
        {
            yield break;
        }

        foreach (var table in platform.Faces.SelectMany(f => FaceTables(dossier, f, Named(f, name), choice)))
        {
            yield return table;
        }

        foreach (var (table, make) in FeatureTables.Of(platform.Plan))
        {
            yield return (Invariant($"tables/{name}-{table}.csv"), make);
        }

        yield return (Invariant($"tables/{name}-sections.csv"), () => PlatformTables.Sections(platform));
        yield return (Invariant($"tables/{name}-cutting-list.csv"), () => PlatformTables.CuttingList(platform));
    }

    /// <summary>What is told of a face has its track's name where a platform has several.</summary>
    internal static string Named(PlatformDossier face, string name) => face.Plan.Spec.IsIsland ? Invariant($"{name}-{FileNames.Plain(face.Track)}") : name;

    private static IEnumerable<(string Path, Func<byte[]> Make)> FaceTables(Dossier dossier, PlatformDossier platform, string name, OutputChoice choice)
    {
        yield return (Invariant($"tables/{name}-setting-out.csv"), () => SettingOut.Table(dossier, platform, choice.SettingOutStep));
        yield return (Invariant($"tables/{name}-chords.csv"), () => SettingOut.Chords(platform));
        yield return (Invariant($"tables/{name}-gaps.csv"), () => PlatformTables.Gaps(platform));
        yield return (Invariant($"tables/{name}-gaps-by-style.csv"), () => GapsByStyle.Of(platform.Plan).ToCsv());
        yield return (Invariant($"tables/{name}-gaps.json"), () => GapsByStyle.Of(platform.Plan).ToJson());
        if (platform.AsBuilt is { } measured)
        {
            yield return (Invariant($"tables/{name}-as-built.csv"), () => PlatformTables.AsBuilt(measured));
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
