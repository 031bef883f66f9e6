using PlatformForge.Exports.Manifests;
using PlatformForge.Exports.Proving;
using PlatformForge.Exports.Reports;
using PlatformForge.Exports.Reports.Forms;
using PlatformForge.Exports.ThreeMf;
using PlatformForge.Proofs;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Verification.Rules;

/// <summary>
/// What a manifest says in words and figures that no shape is measured by, held against the other files of its folder: names against the design copy, the
/// report and the objects of the 3MF files; numbers and chainages of sections against the row that a platform is cut into, and against the report.
/// </summary>
/// <param name="manifest">What is held.</param>
/// <param name="design">The design copy; null where it cannot be read.</param>
/// <param name="report">The report; null where the folder has none.</param>
/// <param name="figures">What gauges and proofs show; null where there are none.</param>
internal sealed class AgreementRule(Manifest manifest, DesignCopy? design, ReportDocument? report, ProofDocument? figures)
{
    /// <summary>What makers of a 3MF file of ours are called, before the version.</summary>
    private const string Maker = Manifest.OurTool + " ";

    /// <summary>What is told of the folder as a whole and of its parts.</summary>
    public IEnumerable<Finding> Check() =>
        [.. OfProject(), .. manifest.Sections.SelectMany(OfReport), .. manifest.Lines.SelectMany(OfReport), .. manifest.Proofs.SelectMany(OfProof),
            .. design is null ? [] : design.Platforms.SelectMany(Row)];

    /// <summary>What 3MF files tell of themselves.</summary>
    /// <param name="plates">The files as they were read.</param>
    public IEnumerable<Finding> Check(IReadOnlyList<(string File, ThreeMfModel Model)> plates) =>
        [.. OfVersion(plates), .. plates.SelectMany(p => Names(p.File, p.Model))];

    private IEnumerable<Finding> OfProject() =>
        [.. design is null ? [] : Same("the project", manifest.Project, DesignCopy.FileName, design.Project),
            .. report is null ? [] : Same("the project", manifest.Project, ReportFiles.Data, report.Project),
            .. report is null ? [] : Same("the program's version", manifest.Version, ReportFiles.Data, report.Version),
            .. report is null ? [] : Same("the hash of the input", manifest.InputHash, ReportFiles.Data, report.InputHash)];

    // Every 3MF file names its maker.
    private IEnumerable<Finding> OfVersion(IReadOnlyList<(string File, ThreeMfModel Model)> plates) =>
        from plate in plates
        from made in plate.Model.Metadata.Where(m => m.Name == "Application" && m.Value.StartsWith(Maker, StringComparison.Ordinal)).Take(1)
        from finding in Same("the program's version", manifest.Version, plate.File, made.Value[Maker.Length..])
        select finding;

    private IEnumerable<Finding> OfReport(ManifestSection section)
    {
        if (report?.Platforms.FirstOrDefault(p => p.Name == section.Platform) is not { } platform)
        {
            return report is null ? [] : [Missing(section.Name)];
        }

        return platform.Sections.FirstOrDefault(s => s.Number == section.Number) is not { } told ? [Missing(section.Name)]
            : [.. Same("a section", section.Name, ReportFiles.Data, told.Name),
                .. Same(Invariant($"the beginning of {section.Name}"), section.From, ReportFiles.Data, told.From),
                .. Same(Invariant($"the end of {section.Name}"), section.To, ReportFiles.Data, told.To)];
    }

    private IEnumerable<Finding> OfReport(ManifestLine line)
    {
        string form = line.IsInlay ? "inlay" : "strip";
        return report is null || report.Platforms.Any(p => p.Name == line.Platform && p.Lines is { } lines
            && lines.Any(l => l.Section == line.Section && l.Form == form && l.Depth == line.Depth && l.Rise == line.Rise)) ? [] : [Missing(line.Name)];
    }

    // A proof belongs to a platform of the folder or to the printer, and is told with its figures.
    private IEnumerable<Finding> OfProof(ManifestProof proof)
    {
        if (design is not null && proof.Platform.Length > 0 && design.Platforms.All(p => p.Name != proof.Platform))
        {
            yield return Fault("PF8052",
                Invariant($"'{Manifest.FileName}' has {proof.Name} belong to platform '{proof.Platform}', which '{DesignCopy.FileName}' does not know."));
        }

        if (figures is null || figures.Proofs.FirstOrDefault(f => f.File == proof.Stl) is not { } told)
        {
            yield break;
        }

        double? Figure(string what) => told.Figures.FirstOrDefault(f => f.What == what)?.Value;
        foreach (var finding in Same("a kind", proof.Kind, ProofFiles.Data, told.Kind)
            .Concat(proof.Rides is { } r && Figure(ProofFigure.Play) is { } play ? Same(Invariant($"the play of {proof.Name}"), r.Play, ProofFiles.Data, play)
                : [])
            .Concat(proof.Rides is { } a && Figure(ProofFigure.Air) is { } air ? Same(Invariant($"the air of {proof.Name}"), a.Air, ProofFiles.Data, air) : []))
        {
            yield return finding;
        }
    }

    // What slicers list the objects as.
    private IEnumerable<Finding> Names(string file, ThreeMfModel model) =>
        from part in manifest.Sections.Where(s => s.Plate == file || s.AllPlates == file).Select(s => (s.Name, s.ObjectId))
            .Concat(manifest.Lines.Where(l => l.Plate == file || l.AllPlates == file).Select(l => (l.Name, l.ObjectId)))
            .Concat(manifest.Proofs.Where(p => p.Plate == file).Select(p => (p.Name, p.ObjectId)))
        from thing in model.Objects.Where(o => o.Id == part.ObjectId).Take(1)
        from finding in Same("a part", part.Name, file, thing.Name)
        select finding;

    // The sections of a platform are numbered as they follow one another, from its first chainage to its last.
    private IEnumerable<Finding> Row(DesignPlatform platform)
    {
        ManifestSection[] own = [.. manifest.Sections.Where(s => s.Platform == platform.Name).OrderBy(s => s.Number)];
        double reached = platform.Face.From;
        for (int i = 0; i < own.Length; i++)
        {
            if (own[i].Number != i + 1)
            {
                yield return OutOfRow(Invariant($"has no section {i + 1} of '{platform.Name}'"));
                yield break;
            }

            if (own[i].From != reached)
            {
                string before = i == 0 ? "the platform begins" : "what is before it ends";
                yield return OutOfRow(Invariant($"has {own[i].Name} begin at chainage {own[i].From:0.####} mm, where {before} at {reached:0.####}"));
            }

            reached = own[i].To;
        }

        if (own.Length > 0 && reached != platform.Face.To)
        {
            yield return OutOfRow(
                Invariant($"has the sections of '{platform.Name}' end at chainage {reached:0.####} mm, where the platform ends at {platform.Face.To:0.####}"));
        }
    }

    private static Finding Missing(string name) => Fault("PF8052", Invariant($"'{Manifest.FileName}' lists {name}, which '{ReportFiles.Data}' does not tell ")
        + "of so.");

    private static Finding OutOfRow(string what) => Fault("PF8053", Invariant($"'{Manifest.FileName}' {what}."));

    private static IEnumerable<Finding> Same<T>(string what, T said, string file, T other)
        where T : IEquatable<T>
    {
        if (!said.Equals(other))
        {
            yield return Fault("PF8052", Invariant($"'{Manifest.FileName}' tells {what} as '{said}', but '{file}' as '{other}'."));
        }
    }

    private static Finding Fault(string code, string what) =>
        Finding.Error(code, "", what, "One of the two was changed: build the folder again.", FaultKind.Mesh);
}
