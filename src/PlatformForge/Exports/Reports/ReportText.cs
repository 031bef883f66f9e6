using System.Text;
using PlatformForge.Clearance;
using PlatformForge.Clearance.Sets;
using PlatformForge.Exports.Drawings;
using PlatformForge.Platforms;
using PlatformForge.Platforms.Surfaces;
using PlatformForge.Sections;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Exports.Reports;

/// <summary>Writes the report's words.</summary>
internal sealed class ReportText(Dossier dossier)
{
    private readonly StringBuilder text = new();

    public byte[] ToBytes()
    {
        Line(Invariant($"# {MarkdownText.Escaped(dossier.Project)}"));
        Line("");
        Line(Invariant($"Scale 1:{Figures.Short(dossier.Scale.Ratio)}, gauge {Figures.Short(dossier.Gauge)} mm, rail top {Figures.Short(dossier.RailTop)} mm over the baseboard. Lengths are mm of the model unless said otherwise."));
        foreach (var platform in dossier.Platforms)
        {
            Platform(platform);
        }

        Findings();
        Line("");
        Line("## Cautions");
        Line("");
        foreach (string caution in Cautions.Lines)
        {
            Line("- " + caution);
        }

        Line("");
        Line(Invariant($"Made by PlatformForge {dossier.Version} from input {dossier.InputHash}."));
        return Encoding.UTF8.GetBytes(text.ToString());
    }

    private void Platform(PlatformDossier platform)
    {
        var plan = platform.Plan;
        Line("");
        Line(Invariant($"## {MarkdownText.Escaped(platform.Name)}"));
        Line("");
        if (plan.Waist is { } waist)
        {
            Line(Invariant($"An island between tracks {MarkdownText.Escaped(plan.Faces[0].Spec.Track)} and {MarkdownText.Escaped(plan.Faces[1].Spec.Track)}, narrowest at chainage {Figures.Mm(waist.First)} of the one and {Figures.Mm(waist.Second)} of the other: {Figures.Fine(waist.Width)} from edge to edge, {Figures.FullSize(waist.Width, dossier.Scale)} at full size. Sections, cuts and ribs are told along {MarkdownText.Escaped(plan.Faces[0].Spec.Track)}."));
        }

        foreach (var face in platform.Faces)
        {
            if (plan.Spec.IsIsland)
            {
                Heading(Invariant($"Face on track {MarkdownText.Escaped(face.Track)}"));
            }

            Face(face);
        }

        Made(plan);
        Sections(platform.Sections);
    }

    // What is told of one face.
    private void Face(PlatformDossier platform)
    {
        var plan = platform.Plan;
        var face = plan.Spec.Face;
        Line(Invariant($"Faces track {MarkdownText.Escaped(face.Track)} on its {face.Side.ToString().ToLowerInvariant()} from chainage {Figures.Short(face.From)} to {Figures.Short(face.To)}, edge {face.Edge.ToString().ToLowerInvariant()}, coping {Figures.Short(Math.Round(plan.Spec.Height, 3))} above rail top{(plan.Spec.IsIsland ? "" : Invariant($", {Figures.Short(Math.Round(plan.Spec.Deck.Width, 3))} wide"))}."));
        Line(Invariant($"The coping edge lies {Figures.Fine(plan.First.CopingFront.Reach.Min())} to {Figures.Fine(plan.First.CopingFront.Reach.Max())} from the track's middle."));
        Budget(platform);
        Governing(plan);
        Allowances(plan);
        Nearest(platform);
        OtherTracks(platform);
        Gaps(plan);
        AsBuilt(platform);
        Joints(platform);
    }

    private void Budget(PlatformDossier platform)
    {
        Heading("Clearance budget");
        Table(["entry", "mm", "how it counts", "where it comes from"], [.. platform.Budget.Lines.Select(l => (string[])[l.Name, Figures.Fine(l.AmountMm), Counts(l.Placing), l.Basis])]);
        Line("");
        bool sum = platform.Budget.Rule == BudgetRule.Sum;
        Line(Invariant($"Sum {Figures.Fine(platform.Budget.Sum)} mm{(sum ? ", which governs" : "")}; tolerances as root of squares {Figures.Fine(platform.Budget.RootOfSquares)} mm{(sum ? "" : ", which governs")}. Added to the swept reach. The sweep's own error is at most {Figures.Fixed(platform.Envelope.ErrorBound, 3)} mm, on the safe side."));
        if (platform.Budget.Lines.Any(l => l.Placing == BudgetPlacing.Swept))
        {
            Line("");
            Line(Invariant($"With what is swept: sum {Figures.Fine(platform.Budget.SumWithPlay)} mm, root of squares {Figures.Fine(platform.Budget.RootOfSquaresWithPlay)} mm, between the pivots. Beyond them play grows with the distance, as a vehicle lies askew: the sweep takes that in full, at its worst both ways."));
        }
    }

    private static string Counts(BudgetPlacing placing) => placing switch { BudgetPlacing.Wanted => "wanted", BudgetPlacing.Added => "added", _ => "swept" };

    private void Joints(PlatformDossier platform)
    {
        if (platform.Joints.Count == 0)
        {
            return;
        }

        Heading("Between the bodies of a set");
        Table(["joint", "by", "on straight track", "platform side", "other side"],
            [.. platform.Joints.Select(j => (string[])
                [
                    Between(j.Ahead, j.Behind), j.Joint.Kind switch { BodyJointKind.SharedBogie => "shared bogie", BodyJointKind.Hinge => "hinge", _ => "coupling" }, Figures.Fine(j.Joint.Gap),
                    Opening(j.Platform), Opening(j.Away),
                ])]);
        Line("");
        Line("From corner to corner of the ends, least and greatest while the joint is beside the platform; below 0 they run into one another.");
    }

    // The set is named once.
    private static string Between(string ahead, string behind)
    {
        int named = ahead.LastIndexOf(", ", StringComparison.Ordinal);
        return named > 0 && behind.StartsWith(ahead[..(named + 2)], StringComparison.Ordinal)
            ? Invariant($"{ahead[..named]}: {ahead[(named + 2)..]} to {behind[(named + 2)..]}")
            : Invariant($"{ahead} to {behind}");
    }

    private static string Opening(OpeningRange o) =>
        Invariant($"{Figures.Fine(o.Least)} at {Figures.Fixed(o.LeastAt, 0)} to {Figures.Fine(o.Greatest)} at {Figures.Fixed(o.GreatestAt, 0)}");

    private void Governing(PlatformPlan plan)
    {
        Heading("What governs the edge");
        Table(["chainage", "vehicle", "part", "reaches at most"], [.. GoverningStretch.Of(plan).Select(g => (string[])[Invariant($"{Figures.Short(Math.Round(g.From, 1))} to {Figures.Short(Math.Round(g.To, 1))}"), RequirementTrace.Called(g.Vehicle, g.Track == plan.Spec.Face.Track ? "" : g.Track), g.Part, Figures.Fine(g.LargestReach)])]);
    }

    private void Allowances(PlatformPlan plan)
    {
        if (plan.Requirement.Allowances is not { } parts)
        {
            return;
        }

        Heading("What each allowance costs");
        int count = plan.Requirement.Stations.Length;
        double[] beyond = [.. plan.Requirement.Stations.Select((s, i) => plan.First.CopingFront.At(s) - plan.Requirement.Required(i))];
        string[] Row(string name, double[] amounts) => [name, Figures.Fine(amounts.Min()), Figures.Fine(amounts.Sum() / count), Figures.Fine(amounts.Max()), Figures.FullSize(amounts.Max(), dossier.Scale)];
        Table(["part of the coping's reach", "least", "mean", "most", "most at full size"],
            [
                Row("bare reach of the vehicles", parts.Bare), .. parts.Costs.Select(c => Row(c.Name, c.Amount)),
                Row(Invariant($"edge {plan.Spec.Face.Edge.ToString().ToLowerInvariant()}, in straight facets"), beyond),
            ]);
        Line("");
        Line("Station by station these add up to the coping's reach; see the tables of gaps. Play is counted as far as it moves the edge.");
    }

    private void Nearest(PlatformDossier platform)
    {
        if (platform.Tightest.Count == 0)
        {
            return;
        }

        Heading("Where each vehicle comes nearest to the coping");
        Table(["vehicle", "on track", "part", "chainage", "reach, play included", "to the coping", "left after play and budget"],
            [.. platform.Tightest.Select(t => (string[])
                [
                    t.Pose.Vehicle.Name, Track(platform, t), t.Part, t.Where, Figures.Fine(t.Reach), Figures.Fine(t.Left), Figures.Fine(t.Left - platform.Budget.Margin),
                ])]);
        Line("");
        Line("A range of chainages is a stretch along which it comes as near everywhere.");
        if (platform.Budget.SurveyedMost is { } surveyed)
        {
            Line($"What the survey leaves uncertain is not taken off what is left: on the true track up to {Figures.Fine(surveyed)} mm of it may be gone.");
        }
    }

    private static string Track(PlatformDossier platform, TightPlace place) => place.Pose.OtherTrack.Length > 0 ? place.Pose.OtherTrack : platform.Plan.Spec.Face.Track;

    private void OtherTracks(PlatformDossier platform)
    {
        if (NearTrack.All(dossier, platform.Plan) is not { Count: > 0 } tracks)
        {
            return;
        }

        Heading("Other tracks beside the platform");
        Table(["track", "runs", "nearest to", "at chainage", "from its middle", "from its nearer rail's running edge", "vehicles on it"],
            [.. tracks.Select(t => (string[])
                [
                    t.Track, t.Behind ? "behind the platform" : "on the platform's front", t.Behind ? "back edge" : "coping edge", Figures.Fixed(t.Chainage, 0),
                    Figures.Mm(t.Distance), Figures.Mm(t.Distance - (dossier.Gauge / 2)), t.Vehicles.Count == 0 ? "none" : string.Join(", ", t.Vehicles),
                ])]);
        Line("");
        Line("Vehicles of these tracks are swept and held against everything printed as those of the platform's own are; the verdict names each with its track.");
    }

    private void AsBuilt(PlatformDossier platform)
    {
        if (platform.AsBuilt is not { } edge)
        {
            return;
        }

        Heading("As measured on the layout");
        Table(["chainage", "gap", "measured from", "planned edge", "true edge", "off by", "least left", "for"],
            [.. edge.Measures.Select(m => (string[])
                [
                    Figures.Mm(m.Reading.Chainage), Figures.Fine(m.Reading.Gap), m.Reading.Vehicle ?? "running edge", Figures.Fine(m.Planned), Figures.Fine(m.True), Figures.Signed(m.OffBy),
                    m.Closest is { } near ? Figures.Fine(near.Left) : "", m.Closest is { } who ? Invariant($"{who.Vehicle} ({who.Part})") : "",
                ])]);
        if (AsBuiltWords.FromRail(edge, dossier.Gauge) is { } how)
        {
            Line("");
            Line(how);
        }

        if (edge.Worst is { Closest: { } least } worst)
        {
            Line("");
            Line(Invariant($"Worst: line {worst.Reading.Line} of {MarkdownText.Escaped(worst.Reading.File)}, chainage {Figures.Mm(worst.Reading.Chainage)}, {Figures.Fine(least.Left)} left for {MarkdownText.Escaped(least.Vehicle)} ({MarkdownText.Escaped(least.Part)}) where {Figures.Fine(least.Planned)} were planned."));
        }
    }

    private void Gaps(PlatformPlan plan)
    {
        Heading("Gap to the door sills, by style of edge");
        if (plan.Gaps.Rows.Count == 0)
        {
            Line("No vehicle has a door sill.");
            return;
        }

        Table(["edge", "vehicle", "least", "mean", "mean at full size", "largest", "largest at full size", "step", "stepping limit"],
            [.. plan.Gaps.Rows.Select(r => (string[])
                [
                    r.Style.ToString().ToLowerInvariant() + (r.Style == plan.Spec.Face.Edge ? " (chosen)" : ""), r.Vehicle,
                    Invariant($"{Figures.Mm(r.Least)} at {Figures.Fixed(r.LeastAt, 0)}"), Figures.Mm(r.Mean), Figures.FullSize(r.Mean, dossier.Scale), Invariant($"{Figures.Mm(r.Largest)} at {Figures.Fixed(r.LargestAt, 0)}"),
                    Figures.FullSize(r.Largest, dossier.Scale), Figures.Mm(r.Step), r.WithinLimit ? "kept" : "exceeded",
                ])]);
        Line("");
        if (plan.Profile.HasRamps)
        {
            Line("These are of the level part, without ramps, from which nobody boards; the plots and the tables of gaps by station have the ramps too, where gaps may be larger.");
        }

        Line(Invariant($"The stepping limit is {SteppingLimit.Horizontal} mm level, {SteppingLimit.Vertical} mm upright and {SteppingLimit.Diagonal} mm diagonal at full size ({SteppingLimit.Source}), {Figures.Fine(dossier.Scale.ToModel(SteppingLimit.Horizontal))} mm level in the model; models on sharp curves seldom keep it."));
    }

    private void Made(PlatformPlan plan)
    {
        var rows = MadeText.Rows(plan);
        if (rows.Count > 0)
        {
            Heading("Ribs and features, asked and found");
            Table(MadeText.Headings, rows);
        }
    }

    private void Sections(SectionSet set)
    {
        Heading("Sections and plates");
        if (set.CountReason.Length > 0)
        {
            Line(set.CountReason);
            Line("");
        }

        if (set.Plan.Spec.Deck.Crossfall > 0 && DeckFit.Of(set.Plan) is var fit)
        {
            Line(Invariant($"Each section's top is one plane, so that all of it lies on the bed. The coping's edge keeps within {Figures.Fine(fit.CopingOff)} mm of its height; the deck falls {Figures.Fine(fit.FallAsked)} mm as asked, {Figures.Fine(fit.Falls.Min(f => f.Fall))} to {Figures.Fine(fit.Falls.Max(f => f.Fall))} mm as found at the joints."));
            Line("");
        }

        Table(["section", "chainage", "size as printed", "stands", "g", "time", "plate"],
            [.. set.Sections.Select(s => (string[])
                [
                    Invariant($"{s.Number}"), Invariant($"{Figures.Mm(s.From)} to {Figures.Mm(s.To)}"), Invariant($"{Figures.Mm(s.Size.X)} x {Figures.Mm(s.Size.Y)} x {Figures.Mm(s.Size.Z)}"),
                    s.PoseInWords, Figures.Fixed(s.Estimate.Grams, 0), Hours(s.Estimate),
                    Invariant($"{set.Plates.FirstOrDefault(p => p.Sections.Any(q => q.Section.Number == s.Number))?.Number ?? 0}"),
                ])]);
        Line("");
        foreach (var plate in set.Plates)
        {
            Line(Invariant($"- Plate {plate.Number}: section{(plate.Sections.Count == 1 ? "" : "s")} {string.Join(", ", plate.Sections.Select(s => Invariant($"{s.Section.Number}")))}; {Figures.Fixed(plate.Estimate.Grams, 0)} g, {Figures.Fixed(plate.Estimate.Metres, 1)} m, about {Hours(plate.Estimate)}{Cost(plate.Estimate)}"));
        }

        Line(Invariant($"- All: {Figures.Fixed(set.Estimate.Grams, 0)} g, {Figures.Fixed(set.Estimate.Metres, 1)} m, about {Hours(set.Estimate)}{Cost(set.Estimate)}"));
        foreach (var dowel in set.Dowels)
        {
            Line(Invariant($"- Cut {dowel.Count} x {dowel.What}, {Figures.Short(dowel.Length)} long"));
        }

        Line("");
        foreach (string line in PrintWords.Of(set, dossier.Printer))
        {
            Line("- " + line);
        }

        Line("");
        Line(Invariant($"Estimates: {PrintEstimate.Basis}."));
    }

    private void Findings()
    {
        Line("");
        Line("## Findings");
        Line("");
        if (dossier.Findings.Count == 0)
        {
            Line("None.");
        }

        foreach (var f in dossier.Findings)
        {
            string key = f.Key.Length > 0 ? Invariant($" `{f.Key.Replace('`', '?')}`") : "";
            Line(Invariant($"- {Word(f.Severity)} {f.Code}{key}: {MarkdownText.Escaped(f.Message)} {MarkdownText.Escaped(f.Remedy)}").TrimEnd());
        }
    }

    private static string Word(Severity severity) => severity switch { Severity.Error => "Error", Severity.Warning => "Warning", _ => "Note" };

    private static string Hours(PrintEstimate e) => Figures.Time(e.Hours);

    private string Cost(PrintEstimate e) => e.Cost is { } cost ? Invariant($", {Figures.Fixed(cost, 2)} {MarkdownText.Escaped(dossier.Printer.Filament.Currency)}").TrimEnd() : "";

    private void Heading(string heading)
    {
        Line("");
        Line("### " + heading);
        Line("");
    }

    /// <summary>A table whose columns line up in plain text too.</summary>
    private void Table(IReadOnlyList<string> headings, IReadOnlyList<string[]> rows)
    {
        rows = [.. rows.Select(r => r.Select(MarkdownText.Escaped).ToArray())];
        int[] widths = [.. headings.Select((h, i) => Math.Max(3, rows.Select(r => r[i].Length).Append(h.Length).Max()))];
        string Row(IEnumerable<string> cells) => "| " + string.Join(" | ", cells.Select((c, i) => c.PadRight(widths[i]))) + " |";
        Line(Row(headings));
        Line("|" + string.Join("|", widths.Select(w => new string('-', w + 2))) + "|");
        foreach (string[] row in rows)
        {
            Line(Row(row));
        }
    }

    private void Line(string line) => text.Append(line).Append('\n');
}
