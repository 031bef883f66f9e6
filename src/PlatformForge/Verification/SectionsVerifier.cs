using PlatformForge.Geometry;
using PlatformForge.Sections.Forms;
using PlatformForge.Units;
using PlatformForge.Verification.Distances;
using PlatformForge.Verification.Rules;
using PlatformForge.Verification.Written;
using static System.FormattableString;

namespace PlatformForge.Verification;

/// <summary>Front door of the room for meshes that were read back: pure, no files.</summary>
public static class SectionsVerifier
{
    /// <summary>
    /// Checks every section by itself (sound mesh, walls the printer can print), where it stands, and the least distance to every vehicle over poses of the
    /// room's own choosing. How it lies on the bed is a matter of its plate, see <see cref="FolderVerifier"/>.
    /// </summary>
    public static Verdict Verify(IReadOnlyList<WrittenSection> sections, DesignFacts facts, CancellationToken cancel = default)
    {
        return Verify(sections, [facts], cancel);
    }

    /// <summary>The same of a platform with several faces, held to each by what that face's track and budget ask.</summary>
    public static Verdict Verify(IReadOnlyList<WrittenSection> sections, IReadOnlyList<DesignFacts> faces, CancellationToken cancel = default)
    {
        return Verify(sections, [], faces, cancel);
    }

    /// <summary>The same with what stands on or behind the sections as prints of their own: lines, strips, banks. They come as near to vehicles
    /// as they do; what else there is to check of them is a matter of their sections, see <see cref="LineVerifier"/>.</summary>
    public static Verdict Verify(IReadOnlyList<WrittenSection> sections, IReadOnlyList<WrittenSection> beside, IReadOnlyList<DesignFacts> faces,
        CancellationToken cancel = default)
    {
        var (figures, findings) = Measured(sections, faces[0].Printer);
        var held = Hold(sections, beside, faces, cancel);
        return held with { Sections = figures, Findings = [.. findings, .. held.Findings] };
    }

    /// <summary>What all faces of a platform found together.</summary>
    internal static Verdict Hold(IReadOnlyList<WrittenSection> sections, IReadOnlyList<WrittenSection> beside, IReadOnlyList<DesignFacts> faces,
        CancellationToken cancel)
    {
        Verdict[] held = [.. faces.Select(f => Hold(sections, beside, f, cancel))];
        return held.Length == 1 ? held[0] : new(
            held.Select(v => v.Closest).Aggregate((Nearness?)null, Nearness.Less),
            held.Select(v => v.Tightest).Aggregate((Nearness?)null, Nearness.Less),
            VehicleVerdict.Joined(held.SelectMany(v => v.Vehicles)),
            [],
            [.. held.SelectMany(v => v.Findings).Distinct()]);
    }

    /// <summary>Sections by themselves: their figures, and what is wrong with their meshes and, where a printer is given, their walls; in their
    /// order.</summary>
    internal static (SectionVerdict[] Figures, IReadOnlyList<Finding> Findings) Measured(IReadOnlyList<WrittenSection> sections, PrinterSpec? printer)
    {
        var figures = new SectionVerdict[sections.Count];
        var findings = new IReadOnlyList<Finding>[sections.Count];
        Parallel.For(0, sections.Count, i => (figures[i], findings[i]) = Measure(sections[i], printer));
        return (figures, [.. findings.SelectMany(f => f)]);
    }

    private static (SectionVerdict Figures, IReadOnlyList<Finding> Findings) Measure(WrittenSection section, PrinterSpec? printer)
    {
        var soundness = MeshSoundness.Of(section.Mesh);
        var faults = MeshRule.Check(section.File == section.Name ? section.Name : Invariant($"{section.Name} in '{section.File}'"), soundness, byIndex: false)
            .ToArray();
        var (low, high) = section.Mesh.Box();
        var thinnest = WallRule.Thinnest(section.Mesh);
        var figures = new SectionVerdict(section.Name, section.File, section.Mesh.TriangleCount, soundness.Volume, high - low, faults.Length == 0,
            thinnest?.Thickness)
        { ThinnestAt = thinnest?.At };
        return (figures, [.. faults, .. printer is null ? [] : WallRule.Check(figures, printer)]);
    }

    /// <summary>Where the sections stand, and what comes near them. Without sections there is nothing to come near to.</summary>
    private static Verdict Hold(IReadOnlyList<WrittenSection> sections, IReadOnlyList<WrittenSection> beside, DesignFacts facts, CancellationToken cancel)
    {
        var findings = new List<Finding>();
        WrittenSection[] bodies = [.. sections, .. beside];
        Mesh[] placed = [.. bodies.Select(s => s.Mesh.Moved(s.ToLayout))];
        findings.AddRange(PlaceRule.Check(sections, placed, facts));
        findings.AddRange(PlaceRule.Bent(beside));
        findings.AddRange(OverDeckRule.Check(sections, placed, facts));
        var vehicles = new List<VehicleVerdict>();
        foreach (var run in sections.Count == 0 ? [] : facts.Runs)
        {
            var verdicts = new TrackSearch(run, facts, bodies, placed, cancel).Run();
            for (int i = 0; i < verdicts.Length; i++)
            {
                if (verdicts[i] is { } verdict)
                {
                    vehicles.Add(verdict);
                }
                else
                {
                    findings.Add(Finding.Error("PF8022", run.Vehicles[i].Key.Length > 0 ? run.Vehicles[i].Key : run.Key, Invariant($"'{run.Vehicles[i].Name}' ")
                        + Invariant($"cannot stand beside the platform on track '{run.Ride.Name}' with all its axles on the track."),
                        "Lay more track beyond the platform's ends, or take the vehicle off this track.", FaultKind.DesignRule));
                }
            }
        }

        findings.AddRange(ClearanceRule.Check(vehicles, facts.Asked));
        return new(
            vehicles.Select(v => v.Closest).Aggregate((Nearness?)null, Nearness.Less),
            vehicles.Select(v => v.Tightest).Aggregate((Nearness?)null, Nearness.Less),
            vehicles,
            [],
            findings);
    }
}
