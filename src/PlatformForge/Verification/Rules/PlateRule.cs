using PlatformForge.Exports.Files;
using PlatformForge.Exports.Manifests;
using PlatformForge.Exports.ThreeMf;
using PlatformForge.Geometry;
using PlatformForge.Sections.Forms;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Verification.Rules;

/// <summary>
/// Every 3MF file prints the sections that the manifest says it prints, each once, each the same solid as its STL file, turned about the upright and shifted
/// and nothing else. The file of all plates has them as they lie on their own plates, plate beside plate.
/// </summary>
/// <param name="manifest">What should be where.</param>
/// <param name="solids">The sections' meshes as their STL files hold them, by file.</param>
internal sealed class PlateRule(Manifest manifest, IReadOnlyDictionary<string, Mesh> solids)
{
    // Rows of a motion that went through decimal text.
    private const double Squareness = PlaceRule.Squareness;

    // What a place may be off by, mm: numbers in the file are rounded.
    private const double Slack = 0.001;

    /// <param name="plates">The files as they were read.</param>
    /// <param name="printer">The printer; null leaves the bed out.</param>
    public IEnumerable<Finding> Check(IReadOnlyList<(string File, ThreeMfModel Model)> plates, PrinterSpec? printer) =>
        [.. plates.SelectMany(p => One(p.File, p.Model, printer)), .. plates.SelectMany(p => Beside(p.File, p.Model, plates, printer))];

    /// <summary>Solids that are listed as this build's, but are no section and no proof of it: nothing tells where they stand, so nothing held them against
    /// a vehicle.</summary>
    public IEnumerable<Finding> Strangers()
    {
        var known = manifest.Sections.Select(s => s.Stl).Concat(manifest.Lines.Select(l => l.Stl)).Concat(manifest.Proofs.Select(p => p.Stl))
            .ToHashSet(StringComparer.Ordinal);
        return manifest.Files.Where(f => f.Path.EndsWith(".stl", StringComparison.OrdinalIgnoreCase) && !known.Contains(f.Path)).Select(f => Stranger(f.Path));
    }

    private IEnumerable<Finding> One(string file, ThreeMfModel model, PrinterSpec? printer)
    {
        ManifestSection[] own = [.. manifest.Sections.Concat(manifest.Lines.Where(l => !l.IsInlay).Select(AsSection)).Concat(manifest.Proofs.Select(AsSection))
            .Where(s => s.Plate == file || s.AllPlates == file)];
        if (own.Length == 0)
        {
            return [Stranger(file)];
        }

        return [.. model.Items.SelectMany(i => Item(file, model, i, own)), .. own.SelectMany(s => Section(file, model, s)), .. OnBed(file, model, own,
            printer)];
    }

    private static Finding Stranger(string file) => Fault("PF8045", Invariant($"'{file}' prints something, but no section of the manifest is in it."),
        "Do not print it; build the folder again.");

    // On its bed a proof is held to what a section is.
    private static ManifestSection AsSection(ManifestProof p) => new(p.Platform, p.Name, 0, 0, 0, p.Stl, p.Plate, p.ObjectId, RigidTransform.Identity);

    // So is a strip, which lies on a bed of its own.
    private static ManifestSection AsSection(ManifestLine l) => new(l.Platform, l.Name, 0, 0, 0, l.Stl, l.Plate, l.ObjectId, RigidTransform.Identity);

    private static IEnumerable<Finding> Item(string file, ThreeMfModel model, ThreeMfItem item, ManifestSection[] own)
    {
        string name = Named(model, item.ObjectId);
        if (own.All(s => s.ObjectId != item.ObjectId))
        {
            yield return Fault("PF8046", Invariant($"'{file}' prints {name}, which is no section of it."), "Do not print it; build the folder again.");
        }

        if (Bent(item.Placement, model.UnitMm) is { } how)
        {
            yield return Fault("PF8044", Invariant($"{name} in '{file}' is {how}, where it should be turned and shifted only."),
                "Do not print it; build the folder again.");
        }
    }

    private IEnumerable<Finding> Section(string file, ThreeMfModel model, ManifestSection section)
    {
        int printed = model.Items.Count(i => i.ObjectId == section.ObjectId);
        if (printed != 1)
        {
            yield return Fault("PF8006", Invariant($"'{file}' prints {section.Name} {printed} times."), "It should be there once: build the folder again.");
        }

        if (model.Objects.FirstOrDefault(o => o.Id == section.ObjectId) is not { } thing)
        {
            yield break;
        }

        ManifestLine[] inlays = [.. manifest.Lines.Where(l => l.IsInlay && l.Platform == section.Platform && l.Section == section.Number
            && section.Number > 0)];
        foreach (var finding in inlays.Length > 0 ? Group(file, model, section, thing, inlays) : Alone(file, section, thing))
        {
            yield return finding;
        }
    }

    // A section with inlays is a group of its own body and just those, none of them moved.
    private IEnumerable<Finding> Group(string file, ThreeMfModel model, ManifestSection section, ThreeMfObject thing, ManifestLine[] inlays)
    {
        int[] bodies = [.. thing.Components.Select(c => c.ObjectId).Except(inlays.Select(l => l.ObjectId))];
        bool isWhole = thing.Mesh is null && thing.Components.Count == inlays.Length + 1 && bodies.Length == 1
            && thing.Components.All(c => c.Placement == AffineMotion.Identity && model.Objects.Any(o => o.Id == c.ObjectId && o.Mesh is not null));
        if (!isWhole)
        {
            yield return PutTogether(
                Invariant($"{section.Name} in '{file}' is put together of other objects than its body and its {inlays.Length} inlaid lines, or they are ")
                    + "moved.");
            yield break;
        }

        foreach (var finding in Alone(file, section, model.Objects.First(o => o.Id == bodies[0])))
        {
            yield return finding;
        }

        foreach (var finding in inlays.SelectMany(l => Alone(file, AsSection(l), model.Objects.First(o => o.Id == l.ObjectId))))
        {
            yield return finding;
        }
    }

    private IEnumerable<Finding> Alone(string file, ManifestSection section, ThreeMfObject thing)
    {
        if (thing.Components.Count > 0 || thing.Mesh is not { } mesh)
        {
            yield return PutTogether(Invariant($"{section.Name} in '{file}' is put together of other objects; it should be one mesh."));
        }
        else if (solids.TryGetValue(section.Stl, out var solid))
        {
            foreach (var finding in TwinRule.Check(section, file, solid, mesh))
            {
                yield return finding;
            }
        }
    }

    private static IEnumerable<Finding> OnBed(string file, ThreeMfModel model, ManifestSection[] own, PrinterSpec? printer)
    {
        string[] names = [.. model.Items.Select(i => Named(model, i.ObjectId))];
        var placed = model.PlacedItems();

        // Where something is bent already, its place on the bed says nothing more.
        return printer is null || placed.Count != names.Length || model.Items.Any(i => Bent(i.Placement, model.UnitMm) is not null) ? []
            : BedRule.Check(file, names, placed, printer, isOneBed: own.Any(s => s.Plate == file));
    }

    // What lies on one plate lies alike in the file of all plates, only farther to the right, by its plate's place in the row.
    private IEnumerable<Finding> Beside(string file, ThreeMfModel all, IReadOnlyList<(string File, ThreeMfModel Model)> plates, PrinterSpec? printer)
    {
        var shifts = new List<(string Plate, double By)>();
        foreach (var plate in manifest.Sections.Where(s => s.AllPlates == file).GroupBy(s => s.Plate))
        {
            var alone = plates.FirstOrDefault(p => p.File == plate.Key).Model;
            double? right = null;
            foreach (var section in plate)
            {
                if (alone is null || Move(alone, all, section.ObjectId) is not { } move)
                {
                    continue;
                }

                right ??= move.By.X;
                if (move.Turned > Squareness || (move.By - new Point3(right.Value, 0, 0)).Length > Slack)
                {
                    yield return Otherwise(Invariant($"{section.Name} lies otherwise in '{file}' than on its plate '{plate.Key}'."));
                }
            }

            shifts.AddRange(right is { } by ? [(plate.Key, by)] : []);
        }

        foreach (var finding in printer is null ? [] : InRow(file, shifts, PlateRow.Pitch(printer.Bed)))
        {
            yield return finding;
        }
    }

    // From a section's place on its own plate to that in the file of all, and how much it is turned; null where it is missing or bent, which is told already.
    private static (Point3 By, double Turned)? Move(ThreeMfModel alone, ThreeMfModel all, int id)
    {
        if (alone.Items.FirstOrDefault(i => i.ObjectId == id) is not { } own || all.Items.FirstOrDefault(i => i.ObjectId == id) is not { } here
            || Bent(own.Placement, alone.UnitMm) is not null || Bent(here.Placement, all.UnitMm) is not null)
        {
            return null;
        }

        double turned = (here.Placement.X - own.Placement.X).Length + (here.Placement.Y - own.Placement.Y).Length;
        return (here.Placement.Shift - own.Placement.Shift, turned);
    }

    // Beds stand in a row, each at a place of its own, the first where it is in its own file.
    private static IEnumerable<Finding> InRow(string file, List<(string Plate, double By)> shifts, double pitch)
    {
        var taken = new HashSet<double>();
        foreach (var (plate, by) in shifts)
        {
            double place = Math.Clamp(Math.Round(by / pitch), 0, shifts.Count - 1);
            if (Math.Abs(by - (place * pitch)) > Slack)
            {
                yield return Otherwise(
                    Invariant($"The sections of plate '{plate}' lie {Math.Abs(by - (place * pitch)):0.###} mm off their bed in '{file}', where beds ")
                        + Invariant($"stand {pitch:0.###} mm apart."));
            }
            else if (!taken.Add(place))
            {
                yield return Otherwise(Invariant($"The sections of plate '{plate}' lie on the bed of another plate in '{file}'."));
            }
        }
    }

    private static Finding Otherwise(string what) => Fault("PF8048", what, "Print from the plate's own file, or build the folder again.");

    // What is wrong with a motion, in words; null where it is a turn about the upright and a shift.
    private static string? Bent(AffineMotion motion, double unit)
    {
        var (x, y, z, shift) = motion;
        double[] lengths = [x.Length, y.Length, z.Length];
        double mean = lengths.Sum() / lengths.Length;
        return !double.IsFinite(motion.Determinant) || !double.IsFinite(shift.Length) ? "at no place"
            : Math.Abs(unit - 1) > Squareness ? Invariant($"in a unit of {unit:0.###} mm")
            : motion.Determinant < 0 ? "mirrored"
            : lengths.Any(l => Math.Abs(l - mean) > Squareness) ? "stretched"
            : Math.Abs(mean - 1) > Squareness ? Invariant($"scaled by {mean:0.######}")
            : Math.Abs(Point3.Dot(x, y)) + Math.Abs(Point3.Dot(y, z)) + Math.Abs(Point3.Dot(z, x)) > Squareness ? "skewed"
            : (z - new Point3(0, 0, 1)).Length > Squareness ? "tipped over"
            : null;
    }

    private static string Named(ThreeMfModel model, int id) => model.Objects.FirstOrDefault(o => o.Id == id)?.Name is { Length: > 0 } name ? name
        : Invariant($"object {id}");

    private static Finding PutTogether(string what) => Fault("PF8049", what, "Do not print it; build the folder again.");

    private static Finding Fault(string code, string what, string remedy) => Finding.Error(code, "", what, remedy, FaultKind.Mesh);
}
