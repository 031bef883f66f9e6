using PlatformForge.Exports.Files;
using PlatformForge.Exports.Looks;
using PlatformForge.Exports.Pictures;
using PlatformForge.Exports.Stl;
using PlatformForge.Exports.ThreeMf;
using PlatformForge.Geometry;
using PlatformForge.Sections.Forms;
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

    public IEnumerable<FileWork> Work()
    {
        var set = platform.Sections;
        foreach (var section in set.Sections)
        {
            yield return new(FileNames.Section(name, section.Number), () => StlWriter.ToBytes(meshes.Of(section), section.Name));
        }

        foreach (var piece in set.Lines.Pieces)
        {
            yield return new(FileNames.Line(name, piece), () => StlWriter.ToBytes(piece.WrittenMesh(memory), NameOf(piece)));
        }

        foreach (var strips in set.Lines.Plates)
        {
            yield return new(FileNames.Strips(name, strips.Number), (Stream to) => ThreeMfWriter.Write(to, Package(strips)));
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
        double x0 = bed.Min(p => p.X), y0 = bed.Min(p => p.Y), pitch = PlateRow.Pitch(bed);
        var objects = new List<ThreeMfObject>();
        var items = new List<ThreeMfItem>();
        for (int i = 0; i < plates.Count; i++)
        {
            // The format's origin is the bed's front left corner, whatever corner the printer counts from.
            var toCorner = RigidTransform.Shift((i * pitch) - x0, -y0, 0);
            foreach (var placed in plates[i].Sections)
            {
                string number = Invariant($"{name}-{placed.Section.Number:D2}");
                objects.AddRange(Objects(placed.Section, number));
                items.Add(new(placed.Section.Number, AffineMotion.Of(placed.ToBed.Then(toCorner)), number));
            }
        }

        var materials = Palette.Of(objects.Select(o => o.Mesh).OfType<Mesh>());
        return new(Metadata(title, Sections(plates)), materials, objects, items, thumbnails is not null ? PngWriter.ToBytes(picture()) : null);
    }

    // A section alone, or with its inlays as one thing of several bodies, which slicers keep together and give a colour each.
    private IEnumerable<ThreeMfObject> Objects(PlatformSection section, string number)
    {
        var ids = new LineIds(platform.Sections);
        LinePiece[] inlays = [.. platform.Sections.Lines.InlaysOf(section.Number)];
        if (inlays.Length == 0)
        {
            return [new(section.Number, section.Name, number, meshes.Of(section), [])];
        }

        ThreeMfObject[] parts =
        [
            new(ids.OfBody(section.Number), section.Name + ", body", number + "-body", meshes.Of(section), []),
            .. inlays.Select(p => new ThreeMfObject(ids.Of(p), NameOf(p), FileNames.Part(name, p), p.WrittenMesh(memory), [])),
        ];
        return [.. parts, new(section.Number, section.Name, number, null, [.. parts.Select(p => new ThreeMfComponent(p.Id, AffineMotion.Identity))])];
    }

    private ThreeMfModel Package(StripPlate strips)
    {
        var bed = dossier.Printer.Bed;
        var toCorner = RigidTransform.Shift(-bed.Min(p => p.X), -bed.Min(p => p.Y), 0);
        var ids = new LineIds(platform.Sections);
        string Number(LinePiece piece) => FileNames.Part(name, piece);
        ThreeMfObject[] objects = [.. strips.Pieces.Select(p => new ThreeMfObject(ids.Of(p.Piece), NameOf(p.Piece), Number(p.Piece),
            p.Piece.WrittenMesh(memory), []))];
        ThreeMfItem[] items = [.. strips.Pieces.Select(p => new ThreeMfItem(ids.Of(p.Piece), AffineMotion.Of(p.ToBed.Then(toCorner)), Number(p.Piece)))];
        string title = Invariant($"{platform.Name}, strips, plate {strips.Number} of {platform.Sections.Lines.Plates.Count}");
        return new(Metadata(title, strips.Pieces.Select(p => p.Piece.Section).Distinct(), "Strips of platform sections"),
            Palette.Of(objects.Select(o => o.Mesh).OfType<Mesh>()),
            objects, items, null);
    }

    private string NameOf(LinePiece piece) => piece.Name(platform.Sections.Sections[piece.Section - 1]);

    private static IEnumerable<int> Sections(IReadOnlyList<Plate> plates) => plates.SelectMany(p => p.Sections).Select(s => s.Section.Number);

    private List<ThreeMfMetadata> Metadata(string title, IEnumerable<int> sections, string what = "Platform sections")
    {
        string numbers = string.Join(", ", sections.Select(s => Invariant($"{s}")));
        var metadata = new List<ThreeMfMetadata> { new("Title", title) };
        if (dossier.Designer.Length > 0)
        {
            metadata.Add(new("Designer", dossier.Designer));
        }

        metadata.Add(new("Description",
            Invariant($"{what} {numbers} for {dossier.Project}, 1:{dossier.Scale.Ratio}. {PlatformForge.Exports.Drawings.Ink.TitleBlock.Caution}")));
        metadata.Add(new("Application", Invariant($"PlatformForge {dossier.Version}")));
        return metadata;
    }
}
