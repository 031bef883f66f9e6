using System.Security.Cryptography;
using System.Text.Json;
using PlatformForge.Clearance;
using PlatformForge.Clearance.Requests;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Exports.Manifests;
using PlatformForge.Exports.Proving;
using PlatformForge.Exports.Reports;
using PlatformForge.Exports.Reports.Forms;
using PlatformForge.Exports.Stl;
using PlatformForge.Exports.ThreeMf;
using PlatformForge.Geometry;
using PlatformForge.Units;
using PlatformForge.Verification.Rules;
using PlatformForge.Verification.Written;
using static System.FormattableString;

namespace PlatformForge.Verification;

/// <summary>
/// Front door of the room for a finished folder: what was written is read back and held against the trains. Pure: the bytes
/// come from <see cref="FolderReader"/>.
/// </summary>
public static class FolderVerifier
{
    // Triangles. From here on plates are looked at first and what reading held, some hundred megabytes, is let go of before distances are looked for, which
    // hold as much again: the collector, which sees a machine with room, would wait.
    private const int Many = 100_000;

    /// <summary>
    /// Verifies a folder against the design copy it holds.
    /// </summary>
    /// <param name="folder">What was read.</param>
    /// <param name="extra">Further vehicles to run on every faced track: would they clear what is built?</param>
    /// <param name="cancel">Gives up.</param>
    /// <returns>A verdict in every case: a folder too damaged to measure has findings and no clearances, and what was held against nothing is named.</returns>
    public static Verdict Verify(WrittenFolder folder, IReadOnlyList<Vehicle>? extra = null, CancellationToken cancel = default)
    {
        var findings = new List<Finding>();
        var manifest = Take(ManifestForm.Read(folder[Manifest.FileName] ?? [], Manifest.FileName), findings);
        if (manifest is null)
        {
            return new(null, null, [], [], findings) { NotHeld = ["anything: the manifest cannot be read"] };
        }

        findings.AddRange(manifest.Files.SelectMany(f => Untouched(f, folder[f.Path], folder.Refused.GetValueOrDefault(f.Path))));
        var read = Read(manifest, folder, findings);
        var (figures, verdicts) = Measured(read, folder, extra ?? [], findings, cancel);
        List<string> open = [.. Unread(read), .. Unlisted(folder, findings)];
        var (design, sections) = (read.Design, read.Sections);
        if (manifest.Sections.Count == 0)
        {
            findings.Add(NoSections());
            findings.AddRange(design is null ? [] : ProofVerifier.Check(manifest, design, read.Proofs, sections));
            open.Add("anything: the folder has no section");
            return new(null, null, [], figures, findings) { NotHeld = open };
        }

        if (design is null)
        {
            findings.Add(Finding.Error("PF8004", "", Invariant($"Without {DesignCopy.FileName} there is nothing to hold the sections against."),
                "Build the folder again.", FaultKind.Mesh));
            return new(null, null, [], figures, findings) { NotHeld = [.. open, Invariant($"anything: {DesignCopy.FileName} cannot be read")] };
        }

        findings.AddRange(ProofVerifier.Check(manifest, design, read.Proofs, sections));
        findings.AddRange(LineVerifier.Check(manifest, read.Lines, sections));
        open.AddRange(NothingToHold(manifest, design, extra ?? [], findings));
        findings.AddRange(BeyondLimits(design, extra ?? []));
        return Merged(verdicts, figures, findings) with { NotHeld = open };
    }

    // Every solid measured, and every platform of the design copy held against the trains, side by side.
    private static (SectionVerdict[] Figures, Verdict[] Verdicts) Measured(
        FolderContents read, WrittenFolder folder, IReadOnlyList<Vehicle> extra, List<Finding> findings, CancellationToken cancel)
    {
        var (manifest, design, sections) = (read.Manifest, read.Design, read.Sections);
        SectionVerdict[] figures = [];
        Verdict[] verdicts = [];
        IReadOnlyList<Finding> inMeshes = [], inPrints = [];
        bool isLarge = read.Solids.Values.Sum(m => m.TriangleCount) > Many;
        if (isLarge)
        {
            inPrints = Prints(manifest, folder, read.Solids, design, read.Told);
            GC.Collect();
        }

        bool isWhole = sections.Count == manifest.Sections.Count;
        WrittenSection[] beside = [.. LineVerifier.Bodies(manifest, read.Lines)];
        Parallel.Invoke(
            new ParallelOptions { CancellationToken = cancel },
            () => (figures, inMeshes) = SectionsVerifier.Measured(sections, design?.Printer),
            () => verdicts = design is null ? [] : [.. design.Platforms.Select(p => Held(design, p, sections, beside, extra, isWhole, cancel))],
            () => inPrints = isLarge ? inPrints : Prints(manifest, folder, read.Solids, design, read.Told));
        findings.AddRange([.. inMeshes, .. inPrints]);
        return (figures, verdicts);
    }

    // Lines and sections that the manifest names and that could not be read.
    private static IEnumerable<string> Unread(FolderContents read) =>
        read.Manifest.Lines.Where(l => !read.Lines.ContainsKey(l.Stl)).Select(l => Invariant($"{l.Name}, which could not be read"))
            .Concat(read.Manifest.Sections.Where(s => read.Sections.All(r => r.File != s.Stl)).Select(s => Invariant($"{s.Name}, which could not be read")));

    // Further vehicles that a faced track is no road for.
    private static IEnumerable<Finding> BeyondLimits(DesignCopy design, IReadOnlyList<Vehicle> extra) =>
        design.Platforms.SelectMany(p => p.Faces).SelectMany(p => design.Tracks.Where(t => t.Name == p.Face.Track)
            .Select(t => t.ToRun() with { Vehicles = extra })
            .SelectMany(run => VehicleFit.Limits(run, p.Face.From, p.Face.To).Concat(VehicleFit.Beyond(run, p.ToChart(), p.Face.From, p.Face.To))));

    // What a folder's files hold: solids are those of sections, lines and proofs, by file.
    private sealed record FolderContents(Manifest Manifest, DesignCopy? Design, AgreementRule Told, List<WrittenSection> Sections,
        Dictionary<string, Mesh> Solids, Dictionary<string, Mesh> Proofs, Dictionary<string, Mesh> Lines);

    private static FolderContents Read(Manifest manifest, WrittenFolder folder, List<Finding> findings)
    {
        var (design, told, sections, solids) = ReadDesign(manifest, folder, findings);
        var (proofs, proofFaults) = ProofVerifier.Read(manifest, folder);
        findings.AddRange(proofFaults);
        var (lines, lineFaults) = LineVerifier.Read(manifest, folder);
        findings.AddRange(lineFaults);
        foreach (var (file, mesh) in proofs.Concat(lines))
        {
            solids.TryAdd(file, mesh);
        }

        return new(manifest, design, told, sections, solids, proofs, lines);
    }

    // The design and its sections. They are read side by side; what was found in them is told in the order of the folder.
    private static (DesignCopy? Design, AgreementRule Told, List<WrittenSection> Sections, Dictionary<string, Mesh> Solids) ReadDesign(
        Manifest manifest, WrittenFolder folder, List<Finding> findings)
    {
        DesignCopy? design = null;
        ReportDocument? report = null;
        ProofDocument? figures = null;
        List<WrittenSection> sections = [];
        Dictionary<string, Mesh> solids = [];
        List<Finding> inDesign = [], inSections = [];
        Parallel.Invoke(
            () => (sections, solids) = ReadSections(manifest, folder, inSections),
            () =>
            {
                design = folder[DesignCopy.FileName] is { } bytes ? Take(DesignForm.Read(bytes, DesignCopy.FileName), inDesign) : null;
                report = folder[ReportFiles.Data] is { } told ? Take(ReportReader.Read(told, ReportFiles.Data), inDesign) : null;
                figures = folder[ProofFiles.Data] is { } shown ? Take(Figures(shown), inDesign) : null;
            });
        findings.AddRange([.. inDesign, .. inSections]);
        return (design, new AgreementRule(manifest, design, report, figures), sections, solids);
    }

    // What is wrong with the files to print, and with what the manifest tells of them. Plates are read platform by platform and let go of: together they hold
    // twice what the sections do.
    private static Finding[] Prints(Manifest manifest, WrittenFolder folder, Dictionary<string, Mesh> solids, DesignCopy? design, AgreementRule told)
    {
        var rule = new PlateRule(manifest, solids);
        var findings = new List<Finding>();
        foreach (var files in Groups(manifest))
        {
            var plates = ReadPlates(files, folder, findings);
            findings.AddRange([.. rule.Check(plates, design?.Printer), .. told.Check(plates)]);
        }

        return [.. findings, .. rule.Strangers(), .. told.Check()];
    }

    // 3MF files that are held against one another: each with the file of all plates that has its sections too. All of them where a manifest mixes those up.
    private static IEnumerable<IGrouping<string, string>> Groups(Manifest manifest)
    {
        var withAll = manifest.Sections.GroupBy(s => s.Plate, StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => g.Select(s => s.AllPlates).Distinct().ToArray(),
            StringComparer.Ordinal);
        bool isPlain = withAll.Values.All(all => all.Length == 1 && (all[0] is not { } file || !withAll.ContainsKey(file)));
        return manifest.Files.Select(f => f.Path).Where(p => p.EndsWith(".3mf", StringComparison.OrdinalIgnoreCase))
            .GroupBy(p => isPlain ? withAll.GetValueOrDefault(p)?[0] ?? p : "", StringComparer.Ordinal);
    }

    private static Outcome<ProofDocument> Figures(byte[] bytes)
    {
        try
        {
            return Outcome.Of(JsonForms.Read(bytes, ProofJson.Forms.ProofDocument));
        }
        catch (JsonException fault)
        {
            return Outcome.Fault<ProofDocument>(Finding.Error("PF8054", "", "The figures of gauges and proofs "
                + Invariant($"'{ProofFiles.Data}' {JsonFault.Words(fault)}."),
                "Build the folder again.", FaultKind.Mesh));
        }
    }

    // A platform's sections against the trains, and what stands on and behind them.
    private static Verdict Held(DesignCopy design, DesignPlatform platform, List<WrittenSection> sections, WrittenSection[] beside,
        IReadOnlyList<Vehicle> extra, bool isWhole, CancellationToken cancel) => SectionsVerifier.Hold([.. sections.Where(s => s.Platform == platform.Name)],
            [.. beside.Where(b => b.Platform == platform.Name)], [.. platform.Faces.Select(f => Facts(design, f, extra, isWhole))], cancel);

    // What a platform is held to, from the design copy.
    private static DesignFacts Facts(DesignCopy design, DesignPlatform platform, IReadOnlyList<Vehicle> extra, bool isWhole)
    {
        var face = platform.Face;
        double railTop = design.Tracks.FirstOrDefault(t => t.Name == face.Track)?.RailTop ?? design.RailTop;
        return new()
        {
            RailTop = railTop,
            Runs = [.. design.Tracks.Where(t => t.Name != platform.OtherTrack)
                .Select(t => Over(design, t) with { Vehicles = t.Name == face.Track ? [.. t.Vehicles, .. extra] : t.Vehicles })],
            Play = platform.Budget.Play,
            Asked = platform.Budget.Margin,
            VerticalAllowance = face.BodiesPassOver ? face.VerticalGap : 0,
            VerticalGap = face.VerticalGap,
            HeldDownTo = face.BodiesPassOver ? null : -railTop,
            Deck = platform.Deck,
            Stretches = isWhole
                ? [new(platform.Name, platform.ToChart(), face.Side, face.From, face.To) { IsSkew = platform.OtherTrack.Length > 0 || platform.IsSkew }]
                : [],
        };
    }

    // Every track with the height of its rails, whatever the faced one's is.
    private static TrackRun Over(DesignCopy design, DesignTrack track) => track.ToRun() with { RailTop = track.RailTop ?? design.RailTop };

    // A folder of paper, sheet, gauges, a scene or a survey is sound and still nothing that vehicles could be run past.
    private static Finding NoSections() => Finding.Error("PF8051", "",
        "The folder has no section of a platform: it was made without the set prints, so that there is nothing to hold against the vehicles.",
        "Name a folder that was built with its prints, as 'platformforge build my-halt.toml' does.");

    // Sections that no platform of the design copy claims, and a design copy that claims or runs nothing; each named as not held.
    private static IEnumerable<string> NothingToHold(Manifest manifest, DesignCopy design, IReadOnlyList<Vehicle> extra, List<Finding> findings)
    {
        const string Remedy = "Build the folder again.";
        if (design.Platforms.Count == 0)
        {
            findings.Add(Finding.Error("PF8042", "",
                Invariant($"{DesignCopy.FileName} names no platform, so that nothing tells where the sections should stand."), Remedy, FaultKind.Mesh));
        }

        if (extra.Count == 0 && design.Tracks.All(t => t.Vehicles.Count == 0))
        {
            findings.Add(Finding.Error("PF8043", "",
                Invariant($"{DesignCopy.FileName} names no vehicle, so that there is nothing to hold the sections against."), Remedy, FaultKind.Mesh));
            return ["anything: there is no vehicle"];
        }

        (string Platform, string Name)[] orphans = [.. manifest.Sections.Select(s => (s.Platform, s.Name))
            .Concat(manifest.Lines.Select(l => (l.Platform, l.Name)))
            .Where(s => design.Platforms.All(p => p.Name != s.Platform))];
        findings.AddRange(orphans.GroupBy(s => s.Platform, StringComparer.Ordinal).Select(g => Finding.Error("PF8041", "",
            Invariant($"{g.First().Name} belongs to platform '{g.Key}'{(g.Count() > 1 ? Invariant($", as do {g.Count() - 1} more") : "")}, ")
                + Invariant($"which {DesignCopy.FileName} does not know: it was held against no vehicle."), Remedy, FaultKind.Mesh)));
        return orphans.Select(s => Invariant($"{s.Name}, of an unknown platform"));
    }

    private static IEnumerable<string> Unlisted(WrittenFolder folder, List<Finding> findings)
    {
        if (folder.Unlisted.Count > 0)
        {
            const int NamedAtMost = 5;
            string names = string.Join(", ", folder.Unlisted.Take(NamedAtMost).Select(p => Invariant($"'{p}'"))) + (folder.Unlisted.Count > NamedAtMost
                ? Invariant($" and {folder.Unlisted.Count - NamedAtMost} more") : "");
            findings.Add(Finding.Warning("PF8047", "", Invariant($"The folder holds {names}, of which the manifest knows nothing: it was not looked at."),
                "Do not print it as part of this build; move it elsewhere."));
            yield return names + ", not of this build";
        }
    }

    private static T? Take<T>(Outcome<T> outcome, List<Finding> findings)
        where T : class
    {
        findings.AddRange(outcome.Findings);
        return outcome.Value;
    }

    /// <summary>Whether a file is there and as it was written.</summary>
    internal static IEnumerable<Finding> Untouched(ManifestFile file, byte[]? bytes, string? refused)
    {
        if (refused is not null)
        {
            yield return Finding.Error("PF8003", "", Invariant($"'{file.Path}' {refused}."),
                "Build the folder again, into an empty folder if you want to keep the changed file.", FaultKind.Mesh);
        }
        else if (bytes is null)
        {
            yield return Finding.Error("PF8002", "", Invariant($"'{file.Path}' is named by the manifest but is not there."), "Build the folder again.",
                FaultKind.Mesh);
        }
        else if (bytes.Length != file.Bytes || Convert.ToHexStringLower(SHA256.HashData(bytes)) != file.Sha256)
        {
            yield return Finding.Error("PF8003", "",
                Invariant($"'{file.Path}' is not as it was written: ")
                    + Invariant($"{(bytes.Length == file.Bytes ? "its bytes are others" : Invariant($"{bytes.Length} bytes for {file.Bytes}"))}."),
                "Build the folder again, into an empty folder if you want to keep the changed file.", FaultKind.Mesh);
        }
    }

    private static List<(string File, ThreeMfModel Model)> ReadPlates(IEnumerable<string> files, WrittenFolder folder, List<Finding> findings)
    {
        var plates = new List<(string File, ThreeMfModel Model)>();
        foreach (string path in files)
        {
            if (folder[path] is { } bytes && Take(ThreeMfReader.Read(bytes, path), findings) is { } model)
            {
                plates.Add((path, model));
                findings.AddRange(model.Objects.Where(o => o.Mesh is not null).SelectMany(o => MeshRule.Check(Invariant($"{o.Name} in '{path}'"),
                    MeshSoundness.Of(o.Mesh!), byIndex: true)));
            }
        }

        return plates;
    }

    // Sections as they come out, and the solids as they are written, by file.
    private static (List<WrittenSection> Sections, Dictionary<string, Mesh> Solids) ReadSections(Manifest manifest, WrittenFolder folder,
        List<Finding> findings)
    {
        var sections = new List<WrittenSection>();
        var solids = new Dictionary<string, Mesh>(StringComparer.Ordinal);
        Point2 back = new(1 / manifest.Stretch.X, 1 / manifest.Stretch.Y);
        foreach (var entry in manifest.Sections)
        {
            if (folder[entry.Stl] is { } bytes && Take(StlReader.Read(bytes, entry.Stl), findings) is { } stl)
            {
                solids.TryAdd(entry.Stl, stl.Mesh);
                sections.Add(new(entry.Platform, entry.Name, entry.Stl, stl.Mesh.Stretched(back), entry.ToLayout));
            }
        }

        return (sections, solids);
    }

    private static Verdict Merged(Verdict[] verdicts, IReadOnlyList<SectionVerdict> figures, List<Finding> findings)
    {
        return new(
            verdicts.Select(v => v.Closest).Aggregate((Nearness?)null, Nearness.Less),
            verdicts.Select(v => v.Tightest).Aggregate((Nearness?)null, Nearness.Less),
            VehicleVerdict.Joined(verdicts.SelectMany(v => v.Vehicles)),
            figures,
            [.. findings, .. verdicts.SelectMany(v => v.Findings).Distinct()])
        {
            Platforms = verdicts.Length,
        };
    }
}
