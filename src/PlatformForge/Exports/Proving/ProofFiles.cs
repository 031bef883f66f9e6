using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Drawings.Painting;
using PlatformForge.Exports.Files;
using PlatformForge.Exports.Looks;
using PlatformForge.Exports.Manifests;
using PlatformForge.Exports.Pictures;
using PlatformForge.Exports.Stl;
using PlatformForge.Exports.ThreeMf;
using PlatformForge.Geometry;
using PlatformForge.Proofs;
using PlatformForge.Units.Memories;
using static System.FormattableString;

namespace PlatformForge.Exports.Proving;

/// <summary>The files of gauges and proofs: STL each, 3MF and a picture a bed, a drawing a platform, and their figures as a table and as JSON.</summary>
public sealed class ProofFiles
{
    /// <summary>The folder that they lie in.</summary>
    public const string Folder = "gauges";

    /// <summary>What they show, for programs.</summary>
    public const string Data = Folder + "/figures.json";

    // Pixels. Pictures take most of the time that these files take: each bed is drawn once, the small picture in its 3MF file is the large one halved, and
    // footprints and masks, which are flat, have none.
    private const int PictureWidth = 512;

    private readonly Dossier dossier;
    private readonly ProofSet set;
    private readonly CancellationToken cancel;
    private readonly Dictionary<string, string> names;
    private readonly Dictionary<string, Lazy<Mesh>> meshes;
    private readonly Dictionary<ProofPlate, Lazy<PixelImage>> drawn;
    private readonly IReadOnlyList<string> platforms;

    private ProofFiles(Dossier dossier, ProofSet set, bool pictures, Memory memory, CancellationToken cancel)
    {
        (this.dossier, this.set, this.cancel) = (dossier, set, cancel);
        names = set.Proofs.Select(p => p.Name).Zip(FileNames.Distinct(set.Proofs.Select(p => p.Name))).ToDictionary(StringComparer.Ordinal);
        meshes = set.Proofs.ToDictionary(p => p.Name, p => new Lazy<Mesh>(() => p.WrittenMesh(memory)), StringComparer.Ordinal);
        drawn = set.Plates.Where(p => pictures && IsPictured(p)).ToDictionary(
            p => p, p => new Lazy<PixelImage>(() => PlatformPictures.OnBed(Lying(p), PictureWidth)));
        platforms = OutputFiles.Names(dossier);
    }

    /// <summary>The files of a dossier's proofs, and what the manifest tells of them; none where it has none.</summary>
    public static (IReadOnlyList<OutputFile> Files, IReadOnlyList<ManifestProof> Listed) Of(Dossier dossier, Memory? memory = null, bool pictures = true,
        CancellationToken cancel = default)
    {
        var (listed, held, shown) = Work(dossier, pictures, memory ?? Memory.None, cancel);
        return (OutputWork.Make([.. held, .. shown], FileShelf.InMemory, cancel), listed);
    }

    /// <summary>The same before it is made: what verification reads, and the rest.</summary>
    internal static (IReadOnlyList<ManifestProof> Listed, IReadOnlyList<FileWork> Held, IReadOnlyList<FileWork> Shown) Work(
        Dossier dossier, bool pictures, Memory memory, CancellationToken cancel)
    {
        if (dossier.Proofs is not { } set)
        {
            return ([], [], []);
        }

        // No sheet shows the findings.
        var made = new ProofFiles(dossier with { Findings = [] }, set, pictures, memory, cancel);
        return (made.Listed(), [.. made.Prints()], [.. made.Sheets()]);
    }

    // What is flat shows nothing that its outline does not.
    private static bool IsPictured(ProofPlate plate) => plate.Group is not (ProofGroups.Footprints or ProofGroups.Masks);

    /// <summary>Pictures and drawings of the proofs, with what each shows.</summary>
    internal static IEnumerable<(string Path, string Title)> Pictures(Dossier dossier)
    {
        if (dossier.Proofs is not { } set)
        {
            yield break;
        }

        var made = new ProofFiles(dossier, set, true, Memory.None, default);
        for (int i = 0; i < made.platforms.Count; i++)
        {
            foreach (var face in dossier.Platforms[i].Faces)
            {
                yield return (made.DrawingOf(face, i), Invariant($"Slide gauges of {face.FaceName} on their track"));
            }
        }

        foreach (var plate in set.Plates.Where(IsPictured))
        {
            yield return (made.PathOf(plate) + ".png", Invariant($"On the bed: {made.Title(plate)}"));
        }
    }

    private string DrawingOf(PlatformDossier face, int platform) =>
        Invariant($"{Folder}/{OutputFiles.Named(dossier.Platforms[platform], face, platforms[platform])}.svg");

    private IEnumerable<FileWork> Prints()
    {
        foreach (var proof in set.Proofs)
        {
            yield return new(Stl(proof), () => StlWriter.ToBytes(meshes[proof.Name].Value, proof.Name));
        }

        foreach (var plate in set.Plates)
        {
            yield return new(PathOf(plate) + ".3mf", (Stream to) => ThreeMfWriter.Write(to, Package(plate)));
        }
    }

    private IEnumerable<FileWork> Sheets()
    {
        foreach (var plate in drawn.Keys)
        {
            yield return new(PathOf(plate) + ".png", () => PngWriter.ToBytes(TitleStrip.Under(
                drawn[plate].Value, Invariant($"{dossier.Project}: {Title(plate)}"), "As it lies on the bed.",
                Invariant($"model of 1:{Figures.Short(dossier.Scale.Ratio)}"))));
        }

        for (int i = 0; i < platforms.Count; i++)
        {
            foreach (var face in dossier.Platforms[i].Faces)
            {
                yield return new(DrawingOf(face, i), () =>
                        SvgWriter.ToBytes(GaugeDrawing.Draw(dossier, face, set)));
            }
        }

        yield return new(Invariant($"{Folder}/figures.csv"), () => ProofTables.Csv(set));
        yield return new(Data, () => ProofTables.Json(dossier, set, Stl));
    }

    private IEnumerable<Mesh> Lying(ProofPlate plate) => plate.Proofs.Select(p => meshes[p.Proof.Name].Value.Moved(p.ToBed));

    // What the manifest tells of them.
    private IReadOnlyList<ManifestProof> Listed() =>
        [.. from plate in set.Plates
            from placed in plate.Proofs
            let proof = placed.Proof
            select new ManifestProof(
                proof.Platform, proof.Name, ProofTables.Word(proof.Kind), Stl(proof), PathOf(plate) + ".3mf", IdOf(proof), proof.ToLayout is { } place
                    ? proof.FromFile.Then(place) : null,
                proof.Rides is { } ride ? new(ride.Track, ride.Chainage, dossier.RailHead, Figure(proof, ProofFigure.Play), Figure(proof, ProofFigure.Air))
                    : null)];

    private static double Figure(Proof proof, string what) => proof.Figures.First(f => f.What == what).Value;

    private int IdOf(Proof proof) => set.Proofs.TakeWhile(p => p.Name != proof.Name).Count() + 1;

    private string Stl(Proof proof) => Invariant($"{Folder}/{names[proof.Name]}.stl");

    private string PathOf(ProofPlate plate)
    {
        string own = plate.Platform.Length == 0 ? plate.Group
            : Invariant($"{platforms[dossier.Platforms.TakeWhile(p => p.Name != plate.Platform).Count()]}-{plate.Group}");
        return Invariant($"{Folder}/plate-{own}-{plate.Number:D2}");
    }

    private string Title(ProofPlate plate)
    {
        int count = set.Plates.Count(p => p.Platform == plate.Platform && p.Group == plate.Group);
        string what = plate.Platform.Length == 0 ? plate.Group : Invariant($"{plate.Platform}, {plate.Group}");
        return count == 1 ? what : Invariant($"{what}, plate {plate.Number} of {count}");
    }

    private ThreeMfModel Package(ProofPlate plate)
    {
        cancel.ThrowIfCancellationRequested();
        var bed = dossier.Printer.Bed;
        var toCorner = RigidTransform.Shift(-bed.Min(p => p.X), -bed.Min(p => p.Y), 0);
        var objects = plate.Proofs.Select(p => new ThreeMfObject(IdOf(p.Proof), p.Proof.Name, names[p.Proof.Name], meshes[p.Proof.Name].Value, [])).ToArray();
        var items = plate.Proofs.Select(p => new ThreeMfItem(IdOf(p.Proof), AffineMotion.Of(p.ToBed.Then(toCorner)), names[p.Proof.Name])).ToArray();
        var metadata = new List<ThreeMfMetadata> { new("Title", Title(plate)) };
        if (dossier.Designer.Length > 0)
        {
            metadata.Add(new("Designer", dossier.Designer));
        }

        metadata.Add(new("Description", Invariant($"Gauges and proofs for {dossier.Project}, 1:{dossier.Scale.Ratio}. {TitleBlock.Caution}")));
        metadata.Add(new("Application", Invariant($"PlatformForge {dossier.Version}")));
        return new(metadata, Palette.Of(objects.Select(o => o.Mesh).OfType<Mesh>()), objects, items, drawn.TryGetValue(plate, out var picture)
            ? PngWriter.ToBytes(picture.Value.Halved()) : null);
    }
}
