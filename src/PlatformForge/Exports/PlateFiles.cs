using PlatformForge.Exports.Pictures;
using PlatformForge.Exports.Stl;
using PlatformForge.Exports.ThreeMf;
using PlatformForge.Geometry;
using PlatformForge.Sections;
using PlatformForge.Units.Memories;
using static System.FormattableString;

namespace PlatformForge.Exports;

/// <summary>The files that go to a slicer: STL a section, 3MF a plate, 3MF of all plates side by side.</summary>
/// <param name="dossier">Everything known.</param>
/// <param name="platform">The platform.</param>
/// <param name="name">What its files' names begin with.</param>
/// <param name="meshes">Its sections as they are written.</param>
/// <param name="thumbnails">Through which small pictures are drawn; null leaves them out.</param>
/// <param name="memory">What earlier runs drew.</param>
/// <param name="cancel">Gives up.</param>
internal sealed class PlateFiles(Dossier dossier, PlatformDossier platform, string name, PrintMeshes meshes, PictureTurns? thumbnails, Memory memory,
    CancellationToken cancel)
{
    private const int ThumbnailWidth = 384; // pixels
    private const double PlatesApart = 20; // mm between beds in the file of all plates

    public IEnumerable<FileWork> Work()
    {
        var set = platform.Sections;
        foreach (var section in set.Sections)
        {
            yield return new(FileNames.Section(name, section.Number), () => StlWriter.ToBytes(meshes.Of(section), section.Name));
        }

        foreach (var plate in set.Plates)
        {
            string title = Invariant($"{platform.Name}, plate {plate.Number} of {set.Plates.Count}");
            yield return new(FileNames.Plate(name, plate.Number), (Stream to) =>
                ThreeMfWriter.Write(to, Package(title, [plate], () => memory.Of("picture of a plate", plate, static (p, _) =>
                PlatformPictures.OnBed(p, ThumbnailWidth), cancel))));
        }

        yield return new(FileNames.AllPlates(name), (Stream to) => ThreeMfWriter.Write(to, Package(
            Invariant($"{platform.Name}, all {set.Plates.Count} plates"), set.Plates, () =>
                thumbnails!.Draw(platform, () => memory.Of("small picture", new SheetInput(dossier, platform, ""), static (i, _) =>
                    PlatformPictures.Finished(i.Dossier, i.Platform, ThumbnailWidth), cancel)))));
    }

    private ThreeMfModel Package(string title, IReadOnlyList<Plate> plates, Func<PixelImage> picture)
    {
        var bed = dossier.Printer.Bed;
        double x0 = bed.Min(p => p.X), y0 = bed.Min(p => p.Y), width = bed.Max(p => p.X) - x0;
        var objects = new List<ThreeMfObject>();
        var items = new List<ThreeMfItem>();
        for (int i = 0; i < plates.Count; i++)
        {
            // The format's origin is the bed's front left corner, whatever corner the printer counts from.
            var toCorner = RigidTransform.Shift((i * (width + PlatesApart)) - x0, -y0, 0);
            foreach (var placed in plates[i].Sections)
            {
                string number = Invariant($"{name}-{placed.Section.Number:D2}");
                objects.Add(new(placed.Section.Number, placed.Section.Name, number, meshes.Of(placed.Section), []));
                items.Add(new(placed.Section.Number, AffineMotion.Of(placed.ToBed.Then(toCorner)), number));
            }
        }

        var materials = Palette.Of(objects.Select(o => o.Mesh).OfType<Mesh>());
        return new(Metadata(title, plates), materials, objects, items, thumbnails is not null ? PngWriter.ToBytes(picture()) : null);
    }

    private List<ThreeMfMetadata> Metadata(string title, IReadOnlyList<Plate> plates)
    {
        string numbers = string.Join(", ", plates.SelectMany(p => p.Sections).Select(s => Invariant($"{s.Section.Number}")));
        var metadata = new List<ThreeMfMetadata> { new("Title", title) };
        if (dossier.Designer.Length > 0)
        {
            metadata.Add(new("Designer", dossier.Designer));
        }

        metadata.Add(new("Description",
            Invariant($"Platform sections {numbers} for {dossier.Project}, 1:{dossier.Scale.Ratio}. {Drawings.TitleBlock.Caution}")));
        metadata.Add(new("Application", Invariant($"PlatformForge {dossier.Version}")));
        return metadata;
    }
}
