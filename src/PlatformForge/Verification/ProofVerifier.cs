using PlatformForge.Exports;
using PlatformForge.Exports.Manifests;
using PlatformForge.Exports.ThreeMf;
using PlatformForge.Geometry;
using PlatformForge.Sections;
using PlatformForge.Units;
using PlatformForge.Verification.Distances;
using PlatformForge.Verification.Rules;
using static System.FormattableString;

namespace PlatformForge.Verification;

/// <summary>Gauges and proofs of a folder, read back: sound meshes, the same in both their files, on the bed; slide gauges on their rails and beside the
/// platform.</summary>
public static class ProofVerifier
{
    // A slice's and a footprint's corners lie on their sections within this, mm: floats, and chords of a curve.
    private const double Off = 0.05;

    // Over a joint, or under a deck that is engraved, a slice is whole where its sections are not: its corners lie outside them by this at most, mm.
    // What is lower than this over the baseboard lies flat.
    private const double Trimmed = 0.8, Flat = 5;

    /// <summary>Verifies those of a folder that holds no prints of the platform.</summary>
    /// <param name="manifest">What the folder holds.</param>
    /// <param name="files">Its files.</param>
    /// <param name="design">What it was designed for.</param>
    /// <param name="sections">The platform's sections, to hold gauges against.</param>
    public static IReadOnlyList<Finding> Alone(Manifest manifest, IReadOnlyList<OutputFile> files, DesignCopy design, IReadOnlyList<WrittenSection> sections)
    {
        var folder = new WrittenFolder(files);
        var plates = new List<(string File, ThreeMfModel Model)>();
        var findings = new List<Finding>();
        foreach (string path in manifest.Proofs.Select(p => p.Plate).Distinct(StringComparer.Ordinal))
        {
            var read = ThreeMfReader.Read(folder[path] ?? [], path);
            findings.AddRange(read.Findings);
            plates.AddRange(read.Value is { } model ? [(path, model)] : []);
        }

        var (meshes, faults) = Read(manifest, folder);
        return [.. findings, .. faults, .. new PlateRule(manifest, meshes).Check(plates, design.Printer), .. Check(manifest, design, meshes, sections)];
    }

    /// <summary>The proofs' meshes as they are written, by file, and what is wrong with them.</summary>
    internal static (Dictionary<string, Mesh> Meshes, IReadOnlyList<Finding> Faults) Read(Manifest manifest, WrittenFolder folder) =>
        WrittenMeshes.Read(manifest.Proofs.Select(p => (p.Name, p.Stl)), folder);

    /// <summary>What has a place on the layout, held against its track and its platform.</summary>
    internal static IEnumerable<Finding> Check(Manifest manifest, DesignCopy design, IReadOnlyDictionary<string, Mesh> meshes,
        IReadOnlyList<WrittenSection> sections)
    {
        Point2 back = new(1 / manifest.Stretch.X, 1 / manifest.Stretch.Y);
        var platforms = sections.GroupBy(s => s.Platform, StringComparer.Ordinal).ToDictionary(g => g.Key, g =>
            new Placed([.. g.Select(s => s.Mesh.Moved(s.ToLayout))]), StringComparer.Ordinal);
        var work = manifest.Proofs.Where(p => p.ToLayout is not null && meshes.ContainsKey(p.Stl)).ToArray();
        var found = new Finding[work.Length][];
        Parallel.For(0, work.Length, i =>
        {
            var placed = meshes[work[i].Stl].Stretched(back).Moved(work[i].ToLayout!);
            found[i] = [.. One(work[i], placed, design, platforms.GetValueOrDefault(work[i].Platform) ?? Placed.Nothing)];
        });
        return found.SelectMany(f => f);
    }

    private static IEnumerable<Finding> One(ManifestProof proof, Mesh placed, DesignCopy design, Placed platform)
    {
        if (proof.Rides is { } rides)
        {
            return design.Tracks.FirstOrDefault(t => t.Name == rides.Track) is { } track
                ? new RidingRule(track.ToCentreline(), design.Gauge, track.RailTop ?? design.RailTop).Check(proof, placed, platform.Sections)
                : [Finding.Error("PF7523", "", Invariant($"{proof.Name} rides on track '{rides.Track}', which {DesignCopy.FileName} does not know."),
                    "Build the folder again.", FaultKind.Mesh)];
        }

        if (platform.Sections.Length == 0)
        {
            return [];
        }

        // A slice is cut from its section and lies within it; a footprint lies flat under its section.
        bool lies = placed.Vertices.Select(v => new Point2(v.X, v.Y)).Distinct().All(platform.LiesUnder)
            && (placed.Box().High.Z <= Flat || MeshGap.IsWithin(placed, platform.Sections, Trimmed));
        return lies ? [] : [Finding.Error("PF7524", "", Invariant($"{proof.Name} does not lie where its sections do."),
                "Build the folder again.", FaultKind.Mesh)];
    }

    /// <summary>The sections of a platform where they stand, their outlines and the gaps between those worked out once for all proofs.</summary>
    private sealed class Placed
    {
        // Sections that are nearer to one another than this, mm, are joined: both are trimmed there, and what is whole lies over the gap.
        private const double Joined = 2 * JointSpec.MostEndTrim;

        private readonly Lazy<(OutlineDistance[] Outlines, (int A, int B, double Width)[] Gaps)> plan;

        public Placed(Mesh[] sections)
        {
            Sections = sections;
            plan = new(() => InPlan(sections));
        }

        public static Placed Nothing { get; } = new([]);

        public Mesh[] Sections { get; }

        /// <summary>
        /// Whether a place lies under a section, or in the gap between two: there it is as far from both, together, as they are from one another.
        /// </summary>
        public bool LiesUnder(Point2 p)
        {
            var (outlines, gaps) = plan.Value;
            double[] off = Array.ConvertAll(outlines, o => o.At(p));
            return off.Min() <= Off || Array.Exists(gaps, g => off[g.A] + off[g.B] <= g.Width + Off);
        }

        private static (OutlineDistance[] Outlines, (int A, int B, double Width)[] Gaps) InPlan(Mesh[] sections)
        {
            var hulls = Array.ConvertAll(sections, m => PlanHull.Of(m.Vertices.Select(v => new Point2(v.X, v.Y))));
            var outlines = Array.ConvertAll(hulls, h => new OutlineDistance(h));

            // Of two convex outlines apart from one another one of the nearest points is a corner.
            double Between(int a, int b) => hulls[a].Min(p => Math.Max(0, outlines[b].At(p)));
            var gaps = new List<(int A, int B, double Width)>();
            for (int a = 0; a < hulls.Length; a++)
            {
                for (int b = a + 1; b < hulls.Length; b++)
                {
                    double width = Math.Min(Between(a, b), Between(b, a));
                    if (width <= Joined)
                    {
                        gaps.Add((a, b, width));
                    }
                }
            }

            return (outlines, [.. gaps]);
        }
    }
}
