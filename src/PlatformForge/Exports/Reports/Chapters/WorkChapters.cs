using PlatformForge.Exports.Documents;
using PlatformForge.Exports.Drawings.Elevations;
using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Files;
using PlatformForge.Exports.Reports.Forms;
using PlatformForge.Exports.Tables;
using PlatformForge.Exports.Workshop;
using PlatformForge.Masonry.Finishes;
using PlatformForge.Platforms.Surfaces;
using PlatformForge.Sections.Forms;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Exports.Reports.Chapters;

/// <summary>Chapters in the order of the work: print, cut, set out, join, paint, fit.</summary>
internal static class WorkChapters
{
    public static void Print(DocumentBuilder to, ReportSource source)
    {
        var (set, printer) = (source.Platform.Sections, source.Dossier.Printer);
        source.Stage(to, WorkStage.Print);
        if (set.CountReason.Length > 0)
        {
            to.Say(set.CountReason);
        }

        if (set.Plan.Spec.Deck.Crossfall > 0 && DeckFit.Of(set.Plan) is var fit)
        {
            to.Say(Invariant($"Each section's top is one plane, so that all of it lies on the bed. The coping's edge keeps within ")
                + Invariant($"{Figures.Fine(fit.CopingOff)} mm of its height; the deck falls {Figures.Fine(fit.FallAsked)} mm as asked, ")
                + Invariant($"{Falls(fit)} mm as found at the joints."));
        }

        Sections(to, source);
        FacingWords.Say(to, set, printer.Layer);
        FacingWords.Paving(to, set);
        LineWords.Say(to, set, printer.Layer);
        BackReport.Say(to, set);
        TrestleReport.Say(to, set);
        Walls(to, source);
        Plates(to, source);
        to.Title("Settings of the slicer");
        to.List(PrintWords.Of(set, printer));
        to.Add(source.Images.Figure(Drawing(source, "plates"), "What lies on each plate", "the packing of the sections' outlines on the bed stated"));
    }

    private static void Sections(DocumentBuilder to, ReportSource source)
    {
        var set = source.Platform.Sections;
        to.Table(
            "Sections", ["section", "chainage", "size as printed", "stands", "g", "time", "plate"],
            set.Sections.Select(s => (IReadOnlyList<string>)
                [
                    Invariant($"{s.Number}"), Invariant($"{Figures.Mm(s.From)} to {Figures.Mm(s.To)}"),
                        Invariant($"{Figures.Mm(s.Size.X)} x {Figures.Mm(s.Size.Y)} x {Figures.Mm(s.Size.Z)}"),
                    s.PoseInWords, Figures.Fixed(s.Estimate.Grams, 0), Figures.Time(s.Estimate.Hours),
                    Invariant($"{set.Plates.FirstOrDefault(p => p.Sections.Any(q => q.Section.Number == s.Number))?.Number ?? 0}"),
                ]),
            Invariant($"sizes from the solids; grams and time {PrintEstimate.Basis}"), source.File("sections"));
    }

    // What stands under the deck, laid flat.
    private static void Walls(DocumentBuilder to, ReportSource source)
    {
        var set = source.Platform.Sections;
        if (set.Plan.Trestle is not null)
        {
            string caption = set.Plan.Spec.IsIsland ? "The trestle from both tracks, and a bent" : "The trestle, front and back, and a bent";
            to.Add(source.Images.Figure(Drawing(source, "trestle"), caption, "the design"));
        }

        if (ElevationFaces.Any(set.Plan))
        {
            to.Add(source.Images.Figure(Drawing(source, "elevations"), "Elevations of walls, backs and ends", "the walls as made, laid flat"));
        }

        if (set.Facing?.Finishes.Any(f => f.Work is SheetSpec) == true)
        {
            to.Add(source.Images.Figure(Drawing(source, "strips"), "Strips of sheet to cut, at full size", "the rebates as made, laid flat"));
        }
    }

    private static string Falls(DeckFit fit)
    {
        string least = Figures.Fine(fit.Falls.Min(f => f.Fall)), most = Figures.Fine(fit.Falls.Max(f => f.Fall));
        return least == most ? least : Invariant($"{least} to {most}");
    }

    private static void Plates(DocumentBuilder to, ReportSource source)
    {
        var set = source.Platform.Sections;
        string currency = source.Dossier.Printer.Filament.Currency;
        IReadOnlyList<string> Row(string plate, string sections, PrintEstimate e) =>
            [plate, sections, Figures.Fixed(e.Grams, 0), Figures.Fixed(e.Metres, 1), Figures.Time(e.Hours), e.Cost is { } cost
                ? Invariant($"{Figures.Fixed(cost, 2)} {currency}").TrimEnd() : ""];
        to.Table(
            "Plates", ["plate", "sections", "g", "m of filament", "time", "cost"],
            [
                .. set.Plates.Select(p => Row(Invariant($"{p.Number}"), string.Join(", ", p.Sections.Select(s => Invariant($"{s.Section.Number}"))),
                    p.Estimate)),
                Row("all", Invariant($"{set.Sections.Count} sections"), set.Estimate),
            ],
            "sums over the sections; the slicer decides");
    }

    public static void Cut(DocumentBuilder to, ReportSource source)
    {
        source.Stage(to, WorkStage.Cut);
        source.Bring(to, "parts");
        source.Bring(to, "dowels-and-rods");
        source.Bring(to, "wires");
    }

    public static void SetOut(DocumentBuilder to, ReportSource source)
    {
        source.Stage(to, WorkStage.SetOut);
        to.Add(source.Images.Figure(Drawing(source, "plan"), "Plan", "the design: swept outline, edge, sections and what stands on the platform"));
        foreach (var face in source.Platform.Faces)
        {
            string of = source.Of(face);
            ReportSource.Bring(
                to, "Setting out from the nearer rail" + of, SettingOut.Rows(source.Dossier, face, SettingOut.UsualStep),
                [
                    ("chainage_mm", "chainage"), ("wall_foot_from_rail_outer_face_mm", "wall's foot from rail's outer face"),
                        ("back_edge_from_rail_outer_face_mm", "back edge from the same"),
                    ("coping_edge_from_rail_outer_face_mm", "coping edge from the same"), ("coping_edge_from_running_edge_mm",
                        "coping edge from running edge"), ("coping_top_over_rail_mm", "coping top over rail"),
                    ("section", "section"), ("note", "what is there"),
                ],
                Invariant($"the plan's lines, square to the track; the rail's head is taken {Figures.Fine(source.Dossier.RailHead)} wide"),
                    source.File("setting-out", face));
            ReportSource.Bring(
                to, "Chords from mark to mark" + of, SettingOut.ChordRows(face),
                [
                    ("from", "from"), ("to", "to"), ("along_wall_foot_mm", "along wall's foot"), ("along_coping_edge_mm", "along coping edge"),
                        ("along_back_edge_mm", "along back edge"),
                    ("foot_to_next_back_mm", "foot to next back"), ("back_to_next_foot_mm", "back to next foot"), ("across_foot_to_back_mm",
                        "across, foot to back"),
                ],
                "straight distances on the baseboard between places of the plan", source.File("chords", face));
        }

        source.Bring(to, "drilling-baseboard");
    }

    public static void Join(DocumentBuilder to, ReportSource source)
    {
        var (set, plan) = (source.Platform.Sections, source.Platform.Sections.Plan);
        source.Stage(to, WorkStage.Join);
        to.Table(
            "Joints", ["sections", "chainage", "held by", "end faces apart", "across, coping edge to back"],
            set.Cuts.Select((cut, i) => (IReadOnlyList<string>)
                [
                    Invariant($"{i + 1} and {i + 2}"), Figures.Mm(cut), HeldBy(set, cut), Figures.Fine(2 * set.Joint.EndTrim),
                    Figures.Fine((plan.ToLayout(cut, plan.Back.At(cut)) - plan.ToLayout(cut, plan.CopingFront.At(cut))).Length),
                ]),
            "the cuts and their bores as made; what is trimmed off each end keeps lengths from adding up");
        to.Add(source.Images.Figure(Drawing(source, "assembly"), "How the sections go together", "the sections' solids drawn apart, with what joins them"));
        to.Add(source.Images.Figure(
            FileNames.PictureFromBelow(source.Name), "The sections from below",
                "drawn from the sections' solids, with ribs, joints and what is engraved underneath",
            Invariant($"The sections of {source.Platform.Name} drawn apart and seen from below.")));
    }

    private static string HeldBy(SectionSet set, double cut)
    {
        var bores = set.Sections.SelectMany(s => s.Bores).Where(b => Math.Abs(b.Chainage - cut) < Tolerances.SameLength).ToArray();
        return bores.Length > 0 ? Invariant($"{bores.Length / 2} dowels, one bore in two slotted by {Figures.Short(bores.Max(b => b.Slot))}")
            : set.Joint.Kind == JointKind.Plate && set.Dowels.Count > 0 ? "2 plates from below"
            : "nothing: it comes apart here";
    }

    public static void Paint(DocumentBuilder to, ReportSource source)
    {
        source.Stage(to, WorkStage.Paint);
        source.Bring(to, "paint");
        source.Bring(to, "mixes");
        source.Bring(to, "masks");
        if (source.HasMasks)
        {
            to.Say(Invariant($"Cut lines at full size: masks/{source.Name}-masks.svg and .dxf."));
        }
    }

    public static void Fit(DocumentBuilder to, ReportSource source)
    {
        source.Stage(to, WorkStage.Fit);
        to.Table("Ribs and features, asked and found", MadeText.Headings, MadeText.Rows(source.Platform.Plan), "the project file, and the plan as it came out");
        source.Bring(to, "drilling-deck");
        foreach (var table in source.Platform.Plan.Features.SelectMany(f => f.Tables).GroupBy(t => t.Name, StringComparer.Ordinal))
        {
            to.Table(
                "Table of the " + table.Key, [.. table.First().Headings.Select(Said)],
                table.SelectMany(t => t.Rows).Select(r => (IReadOnlyList<string>)[.. r.Select(WorkTable.Text)]), "the plan", source.File(table.Key));
        }
    }

    // Headings of features are for programs: here in words, and the unit is the report's.
    private static string Said(string heading) =>
        (heading.EndsWith("_mm", StringComparison.Ordinal) ? heading[..^3] : heading).Replace('_', ' ');

    private static string Drawing(ReportSource source, string what) => Invariant($"drawings/{source.Name}-{what}.svg");
}
