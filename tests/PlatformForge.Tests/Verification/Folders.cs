using System.Security.Cryptography;
using PlatformForge.Clearance;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Exports.Files;
using PlatformForge.Exports.Looks;
using PlatformForge.Exports.Manifests;
using PlatformForge.Exports.Stl;
using PlatformForge.Exports.ThreeMf;
using PlatformForge.Geometry;
using PlatformForge.Platforms.Specs;
using PlatformForge.Sections.Forms;
using PlatformForge.Track;
using PlatformForge.Verification;

namespace PlatformForge.Tests.Verification;

/// <summary>A finished folder made by hand: three bars on the outside of a curve, each on a plate of its own.</summary>
internal sealed record Folders
{
    public const string PlatformName = "Pendlewick up side";
    public const double Reach = 24, Radius = 760, From = 400, To = 880, Trim = 0.1;

    /// <summary>Facets of each section.</summary>
    public const int Facets = 24;

    // Of unequal length: on a curve equal ones could change places unnoticed, and harmlessly.
    private static readonly double[] Cuts = [From, 520, 720, To];

    public static readonly Centreline Track = Pieces.Curve(1400, Radius);

    public IReadOnlyList<Vehicle> Vehicles { get; init; } = [Pieces.Coach(228, 162, 34)];

    public ClearanceBudget Budget { get; init; } = ClearanceBudget.Of(1, print: 0.2, play: new(0.15));

    public PrinterSpec Printer { get; init; } = PrinterSpec.Oblong(240, 240, 200) with { Margin = 5 };

    /// <summary>Changes the motions that the manifest states, by the section's index.</summary>
    public Func<int, RigidTransform, RigidTransform> Motion { get; init; } = (_, m) => m;

    /// <summary>Changes the meshes that the STL files hold, by the section's index.</summary>
    public Func<int, Mesh, Mesh> Stl { get; init; } = (_, m) => m;

    /// <summary>Changes where things lie on their plates.</summary>
    public Func<int, AffineMotion, AffineMotion> OnBed { get; init; } = (_, m) => m;

    /// <summary>Changes where things lie in the file of all plates.</summary>
    public Func<int, AffineMotion, AffineMotion> InAll { get; init; } = (_, m) => m;

    /// <summary>Changes the meshes in the file of all plates.</summary>
    public Func<int, Mesh, Mesh> InAllMesh { get; init; } = (_, m) => m;

    /// <summary>A section that the file of all plates goes without.</summary>
    public int? InAllWithout { get; init; }

    /// <summary>Whether the manifest says that the sections are in the file of all plates.</summary>
    public bool NamesAll { get; init; } = true;

    /// <summary>Changes the platform that the manifest says a section belongs to.</summary>
    public Func<int, string, string> Platform { get; init; } = (_, name) => name;

    /// <summary>Changes the design copy.</summary>
    public Func<DesignCopy, DesignCopy> Design { get; init; } = d => d;

    /// <summary>Sections that the folder goes without.</summary>
    public int? Without { get; init; }

    public WrittenFolder Make()
    {
        var files = new List<OutputFile>();
        var entries = new List<ManifestSection>();
        string allPlates = FileNames.AllPlates("pendlewick");
        var objects = new List<ThreeMfObject>();
        var items = new List<ThreeMfItem>();
        for (int i = 0; i < 3; i++)
        {
            double from = Cuts[i], to = Cuts[i + 1];
            var bar = Pieces.Bar(Track, from + (i > 0 ? Trim : 0), to - (i < 2 ? Trim : 0), -Reach, -Reach - 40, 0, 20, Facets);
            var toLayout = ToLayout(bar, Track.At((from + to) / 2).Heading);
            var print = Rounded(bar.Moved(toLayout.Inverse()));
            if (i == Without)
            {
                continue;
            }

            string stl = FileNames.Section("pendlewick", i + 1), plate = FileNames.Plate("pendlewick", i + 1), name = $"{PlatformName} {i + 1} of 3";
            files.Add(new(stl, StlWriter.ToBytes(Stl(i, print), name)));
            var onBed = OnBed(i, AffineMotion.Of(RigidTransform.Shift(10, 10, 0)));
            files.Add(new(plate, ThreeMfWriter.ToBytes(new([], Palette.Materials, [new(i + 1, name, "", print, [])], [new(i + 1, onBed, "")], null))));
            entries.Add(new(Platform(i, PlatformName), name, i + 1, from, to, stl, plate, i + 1,
                Motion(i, toLayout))
            { AllPlates = NamesAll ? allPlates : null });
            if (i != InAllWithout)
            {
                objects.Add(new(i + 1, name, "", InAllMesh(i, print), []));
                items.Add(new(i + 1, InAll(i, onBed with { Shift = onBed.Shift + new Point3(260 * i, 0, 0) }), ""));
            }
        }

        files.Add(new(allPlates, ThreeMfWriter.ToBytes(new([], Palette.Materials, objects, items, null))));

        var design = new DesignCopy(
            "Pendlewick", 76.2, 16.5, Pieces.RailTop, [DesignTrack.Of(new(Track, Vehicles))], Printer,
            [new(PlatformName, [.. Track.Elements.Select(DesignElement.Of)], new FaceSpec("up", Side.Right, From, To), 12, Budget)]);
        files.Add(new(DesignCopy.FileName, DesignForm.ToBytes(Design(design))));
        var listed = files.Select(f => new ManifestFile(f.Path, f.Bytes.Length, Convert.ToHexStringLower(SHA256.HashData(f.Bytes))));
        files.Add(new(Manifest.FileName, ManifestForm.ToBytes(new("Pendlewick", "0.1.0", new('0', 64), entries, [.. listed]))));
        return new(files);
    }

    // Print coordinates are turned along the section's chord, with the least corner at the origin.
    private static RigidTransform ToLayout(Mesh bar, double heading)
    {
        var turn = RigidTransform.AboutZ(-heading);
        var low = bar.Moved(turn).Box().Low;
        return turn.Then(RigidTransform.Shift(-low.X, -low.Y, -low.Z)).Inverse();
    }

    private static Mesh Rounded(Mesh mesh) => mesh with { Vertices = Array.ConvertAll(mesh.Vertices, v => new Point3((float)v.X, (float)v.Y, (float)v.Z)) };
}
