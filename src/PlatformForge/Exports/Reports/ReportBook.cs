using PlatformForge.Exports.Documents;
using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Files;
using PlatformForge.Exports.Reports.Chapters;
using PlatformForge.Exports.Reports.Forms;
using PlatformForge.Exports.Workshop;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Exports.Reports;

/// <summary>Puts the report together: the verdict first, then each platform in the order of the work, its gaps and budget, findings and cautions.</summary>
internal static class ReportBook
{
    /// <param name="dossier">Everything known.</param>
    /// <param name="platforms">What the chapters of each platform are written from.</param>
    /// <param name="written">Paths of what is written as a file.</param>
    public static Document Of(Dossier dossier, IReadOnlyList<ReportSource> platforms, IReadOnlySet<string> written)
    {
        var to = new DocumentBuilder();
        Verdict(to, dossier, platforms);
        BeforeChapter.Of(to, dossier, platforms[0].Images, written);
        foreach (var source in platforms)
        {
            Platform(to, source);
        }

        Findings(to, dossier);
        to.Heading(2, "Cautions");
        to.List(Cautions.Lines, ListKind.Cautions);
        return new(dossier.Project, Fields(dossier), to.Blocks, Invariant($"Made by PlatformForge {dossier.Version} from input {dossier.InputHash}."));
    }

    private static List<(string Name, string Value)> Fields(Dossier dossier)
    {
        var raised = dossier.Tracks.Where(t => t.RailTop is not null).Select(t => Invariant($"; track {t.Ride.Name} {Figures.Short(t.RailTop!.Value)} mm"));
        var fields = new List<(string Name, string Value)>
        {
            ("Scale", Invariant($"1:{Figures.Short(dossier.Scale.Ratio)}")),
            ("Gauge", Invariant($"{Figures.Short(dossier.Gauge)} mm")),
            ("Rail top over the baseboard", Invariant($"{Figures.Short(dossier.RailTop)} mm{string.Concat(raised)}")),
            ("Lengths", "mm of the model, unless said otherwise"),
        };
        if (dossier.Designer.Length > 0)
        {
            fields.Add(("Drawn up by", dossier.Designer));
        }

        return fields;
    }

    private static void Verdict(DocumentBuilder to, Dossier dossier, IReadOnlyList<ReportSource> platforms)
    {
        to.Heading(2, "Verdict");
        to.Add(dossier.Verdict is { } verdict
            ? new VerdictLineBlock(verdict.IsClear, verdict.Line)
            : new VerdictLineBlock(false, "Not held against the vehicles yet: build or verify the project."));
        to.Table(
            "What was held against what is printed", ["vehicle", "track", "part", "where it comes nearest", "clears by, standing true",
                "left over, play and budget taken off"],
            (dossier.Verdict?.Vehicles ?? []).Select(v => (IReadOnlyList<string>)[v.Vehicle, v.Track, v.Part, v.Where, Known(v.Clears), Known(v.Left)]),
            "the files of the sections, read back as they were written, and every vehicle moved along its track past them");
        to.Table(
            "At a glance", ["platform", "sections", "plates", "print time", "plastic", "to cut", "findings"],
            platforms.Select(p => (IReadOnlyList<string>)
                [
                    p.Platform.Name, Invariant($"{p.Platform.Sections.Sections.Count}"), Invariant($"{p.Platform.Sections.Plates.Count}"),
                        Figures.Time(p.Platform.Sections.Estimate.Hours),
                    Invariant($"{Figures.Fixed(p.Platform.Sections.Estimate.Grams, 0)} g"),
                    p.Platform.Sections.Dowels.Count == 0 ? "nothing" : string.Join(", ", p.Platform.Sections.Dowels.Select(d
                        => Invariant($"{d.Count} x {d.What}"))),
                    Invariant($"{dossier.Findings.Count(f => f.Severity == Severity.Warning)} warnings, ")
                        + Invariant($"{dossier.Findings.Count(f => f.Severity == Severity.Note)} notes"),
                ]),
            "counts of what is printed; time and plastic as in the table of sections; findings are those of the whole run");
    }

    private static string Known(double? mm) => mm is { } known ? Figures.Fine(known) : "";

    private static void Platform(DocumentBuilder to, ReportSource source)
    {
        var (platform, plan) = (source.Platform, source.Platform.Plan);
        to.Heading(2, platform.Name);
        if (plan.Waist is { } waist)
        {
            Island(to, source, waist);
        }

        foreach (var face in platform.Faces)
        {
            Face(to, face.Plan);
        }

        Views(to, source);
        WorkChapters.Print(to, source);
        WorkChapters.Cut(to, source);
        WorkChapters.SetOut(to, source);
        WorkChapters.Join(to, source);
        WorkChapters.Paint(to, source);
        WorkChapters.Fit(to, source);
        ClearanceChapters.Test(to, source);
        ClearanceChapters.GapsAndBudget(to, source);
        var others = source.Images.Others("the design").ToArray();
        if (others.Length > 0)
        {
            to.Heading(3, "More drawings");
            Array.ForEach(others, to.Add);
        }
    }

    // The two tracks of an island, its narrowest place, and the heights along each.
    private static void Island(DocumentBuilder to, ReportSource source, PlatformForge.Platforms.Plans.Waist waist)
    {
        var plan = source.Platform.Plan;
        to.Say(Invariant($"An island between tracks {plan.Faces[0].Spec.Track} and {plan.Faces[1].Spec.Track}, narrowest at chainage ")
            + Invariant($"{Figures.Mm(waist.First)} of the one and {Figures.Mm(waist.Second)} of the other: {Figures.Fine(waist.Width)} from edge ")
            + Invariant($"to edge, {Figures.FullSize(waist.Width, source.Dossier.Scale)} at full size. Sections, cuts and ribs are told along ")
            + Invariant($"{plan.Faces[0].Spec.Track}."));
        foreach (var face in plan.Faces.Select(FaceHeightsReport.Of))
        {
            string Ramp(double length, double? foot) => foot is { } f
                ? Invariant($"a ramp of {Figures.Fine(length)} mm, its foot {Figures.Fine(f)} mm above rail top")
                : "no ramp";
            to.Say(Invariant($"Along {face.Track} the coping is {Figures.Fine(face.Coping)} mm above rails that lie ")
                + Invariant($"{Figures.Fine(face.RailTop)} mm over the baseboard; at the lower ")
                + Invariant($"chainage {Ramp(face.StartRamp, face.StartFoot)}, at the higher {Ramp(face.EndRamp, face.EndFoot)}."));
        }
    }

    // The platform as it will stand, from beside, from near and from above.
    private static void Views(DocumentBuilder to, ReportSource source)
    {
        var platform = source.Platform;
        to.Add(source.Images.Figure(
            FileNames.Picture(source.Name), Invariant($"{platform.Name} as it will stand"),
                "drawn from the sections' solids; track, vehicles and what stands on the platform are shown, not printed",
            Invariant($"The finished platform {platform.Name} seen from beside the track.")));
        if (Pictures.PlatformPictures.TellsFromNear(platform))
        {
            to.Add(source.Images.Figure(
                FileNames.PictureFromNear(source.Name), Invariant($"{platform.Name} from near"), "drawn from the sections' solids",
                Invariant($"A stretch of the front of {platform.Name}, with its coping and deck.")));
        }

        to.Add(source.Images.Figure(
            Invariant($"drawings/{source.Name}-isometric.svg"), Invariant($"{platform.Name} in isometric projection"), "the sections' solids"));
    }

    private static void Face(DocumentBuilder to, PlatformForge.Platforms.Plans.PlatformPlan plan)
    {
        var face = plan.Spec.Face;
        to.Say(
            Invariant($"Faces track {face.Track} on its {face.Side.ToString().ToLowerInvariant()} from chainage {Figures.Short(face.From)} to ")
                + Invariant($"{Figures.Short(face.To)}, edge {face.Edge.ToString().ToLowerInvariant()}, coping ")
                + Invariant($"{Figures.Short(Math.Round(plan.Spec.Height, 3))} above rail ")
                + Invariant($"top{(plan.Spec.IsIsland ? "" : Invariant($", {Figures.Short(Math.Round(plan.Spec.Deck.Width, 3))} wide"))}.")
            + Invariant($" The coping edge lies {Figures.Fine(plan.First.CopingFront.Reach.Min())} to ")
            + Invariant($"{Figures.Fine(plan.First.CopingFront.Reach.Max())} from the track's middle."));
    }

    private static void Findings(DocumentBuilder to, Dossier dossier)
    {
        to.Heading(2, "Findings");
        if (dossier.Findings.Count == 0)
        {
            to.Say("None.");
        }

        foreach (var f in dossier.Findings)
        {
            to.Add(new Remark(Word(f.Severity), f.Code, f.Key, Invariant($"{f.Message} {f.Remedy}").TrimEnd()));
        }
    }

    private static string Word(Severity severity) => severity switch { Severity.Error => "Error", Severity.Warning => "Warning", _ => "Note" };
}
