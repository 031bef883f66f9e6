using PlatformForge.Clearance;
using PlatformForge.Clearance.Requests;
using PlatformForge.Clearance.Sets;
using PlatformForge.Exports.Documents;
using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Files;
using PlatformForge.Exports.Looks;
using PlatformForge.Exports.Reports.Forms;
using PlatformForge.Exports.Tables;
using PlatformForge.Exports.Workshop;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Requests;
using static System.FormattableString;

namespace PlatformForge.Exports.Reports.Chapters;

/// <summary>Chapters about what runs past: how it is tried, what gap it leaves and why.</summary>
internal static class ClearanceChapters
{
    // Stations of the table of gaps in the report lie so far apart, mm.
    private const double Apart = 25;

    public static void Test(DocumentBuilder to, ReportSource source)
    {
        source.Stage(to, WorkStage.Test);
        foreach (var face in source.Platform.Faces)
        {
            FaceHeading(to, source, face);
            Nearest(to, source, face);
            to.Add(source.Images.Figure(Drawing(source, face, "tightest"), "Each vehicle in its tightest place" + source.Of(face),
                "the sweep of every vehicle, play included"));
            OtherTracks(to, source, face);
            AsBuilt(to, source, face);
            Joints(to, source, face);
        }
    }

    public static void GapsAndBudget(DocumentBuilder to, ReportSource source)
    {
        to.Heading(3, "Gaps and budget");
        foreach (var face in source.Platform.Faces)
        {
            FaceHeading(to, source, face);
            Budget(to, source, face);
            Governing(to, source, face);
            Allowances(to, source, face);
            Gaps(to, source, face);
            to.Add(source.Images.Figure(Drawing(source, face, "gaps"), "What the vehicles need, and the gap it leaves" + source.Of(face),
                "the sweep, the budget and the chosen edge, station by station"));
            to.Add(source.Images.Figure(Drawing(source, face, "gaps-by-style"), "The gap with each style of edge" + source.Of(face),
                "the same sweep and budget with a fitted, a faired and a uniform edge"));
            Stations(to, source, face);
            to.Add(source.Images.Figure(Drawing(source, face, "cross-section"), "Cross-section" + source.Of(face),
                "the plan and the sweep, square to the track"));
        }
    }

    private static void FaceHeading(DocumentBuilder to, ReportSource source, PlatformDossier face)
    {
        if (source.Platform.Plan.Spec.IsIsland)
        {
            to.Title(Invariant($"Face on track {face.Track}"));
        }
    }

    private static string Drawing(ReportSource source, PlatformDossier face, string what)
        => Invariant($"drawings/{OutputFiles.Named(source.Platform, face, source.Name)}-{what}.svg");

    private static void Budget(DocumentBuilder to, ReportSource source, PlatformDossier platform)
    {
        var budget = platform.Budget;
        bool sum = budget.Rule == BudgetRule.Sum;
        to.Table(
            "Clearance budget" + source.Of(platform), ["entry", "mm", "how it counts", "where it comes from"],
            budget.Lines.Select(l => (IReadOnlyList<string>)[l.Name, Figures.Fine(l.AmountMm), Counts(l.Placing), l.Basis]),
                "the project file and what it leaves to defaults, line by line");
        to.Say(Invariant($"Sum {Figures.Fine(budget.Sum)} mm{(sum ? ", which governs" : "")}; tolerances as root of squares ")
            + Invariant($"{Figures.Fine(budget.RootOfSquares)} mm{(sum ? "" : ", which governs")}. Added to the swept reach. The sweep's own error is ")
            + Invariant($"at most {Figures.Fixed(platform.Envelope.ErrorBound, 3)} mm, on the safe side."));
        if (budget.Lines.Any(l => l.Placing == BudgetPlacing.Swept))
        {
            to.Say(Invariant($"With what is swept: sum {Figures.Fine(budget.SumWithPlay)} mm, root of squares ")
                + Invariant($"{Figures.Fine(budget.RootOfSquaresWithPlay)} mm, between the pivots. Beyond them play grows with the distance, as a ")
                + "vehicle lies askew: the sweep takes that in full, at its worst both ways.");
        }
    }

    private static string Counts(BudgetPlacing placing) => placing switch { BudgetPlacing.Wanted => "wanted", BudgetPlacing.Added => "added", _ => "swept" };

    private static void Joints(DocumentBuilder to, ReportSource source, PlatformDossier platform) => to.Table(
        "Between the bodies of a set" + source.Of(platform), ["joint", "by", "on straight track", "platform side", "other side"],
        platform.Joints.Select(j => (IReadOnlyList<string>)
            [
                Between(j.Ahead, j.Behind), j.Joint.Kind switch { BodyJointKind.SharedBogie => "shared bogie", BodyJointKind.Hinge => "hinge", _
                    => "coupling" }, Figures.Fine(j.Joint.Gap),
                Opening(j.Platform), Opening(j.Away),
            ]),
        "the sweep: from corner to corner of the ends, least and greatest while the joint is beside the platform; below 0 they run into one another");

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

    private static void Governing(DocumentBuilder to, ReportSource source, PlatformDossier face) => to.Table(
        "What governs the edge" + source.Of(face), ["chainage", "vehicle", "part", "reaches at most"],
        GoverningStretch.Of(face.Plan).Select(g => (IReadOnlyList<string>)
            [
                Invariant($"{Figures.Short(Math.Round(g.From, 1))} to {Figures.Short(Math.Round(g.To, 1))}"), RequirementTrace.Called(g.Vehicle,
                    g.Track == face.Plan.Spec.Face.Track ? "" : g.Track), g.Part,
                Figures.Fine(g.LargestReach),
            ]),
        "the sweep, play included");

    private static void Allowances(DocumentBuilder to, ReportSource source, PlatformDossier face)
    {
        var plan = face.Plan;
        if (plan.Requirement.Allowances is not { } parts)
        {
            return;
        }

        int count = plan.Requirement.Stations.Length;
        double[] beyond = [.. plan.Requirement.Stations.Select((s, i) => plan.First.CopingFront.At(s) - plan.Requirement.Required(i))];
        IReadOnlyList<string> Row(string name, double[] amounts) =>
            [name, Figures.Fine(amounts.Min()), Figures.Fine(amounts.Sum() / count), Figures.Fine(amounts.Max()), Figures.FullSize(amounts.Max(),
                source.Dossier.Scale)];
        to.Table(
            "What each allowance costs" + source.Of(face), ["part of the coping's reach", "least", "mean", "most", "most at full size"],
            [
                Row("bare reach of the vehicles", parts.Bare), .. parts.Costs.Select(c => Row(c.Name, c.Amount)),
                Row(Invariant($"edge {plan.Spec.Face.Edge.ToString().ToLowerInvariant()}, in straight facets"), beyond),
            ],
            "the sweep once more for each allowance; station by station these add up to the coping's reach, see the tables of gaps; play is counted "
                + "as far as it moves the edge");
    }

    private static void Nearest(DocumentBuilder to, ReportSource source, PlatformDossier face)
    {
        bool surveyed = face.Tightest.Any(t => t.OnAnyLine is not null);
        to.Table(
            "Where each vehicle comes nearest to the coping" + source.Of(face), ["vehicle", "on track", "part", "chainage", "reach, play included",
                "to the coping", "left after play and budget", .. surveyed ? ["wherever the track lies"] : (string[])[]],
            face.Tightest.Select(t => (IReadOnlyList<string>)
                [
                    t.Pose.Vehicle.Name, t.Pose.OtherTrack.Length > 0 ? t.Pose.OtherTrack : face.Plan.Spec.Face.Track, t.Part, t.Where,
                        Figures.Fine(t.Reach), Figures.Fine(t.Left),
                    Figures.Fine(t.Left - face.Budget.Margin),
                    .. !surveyed ? (string[])[]
                        : t.OnAnyLine is { } least ? [Invariant($"{Figures.Fine(least.Left - face.Budget.Margin)} at {least.Chainage:0}")] : ["-"],
                ]),
            "the sweep; a range of chainages is a stretch along which it comes as near everywhere");
        if (surveyed)
        {
            to.Say("All but the last column is told of the line that the survey found. The last is the least that is left to each vehicle after play and "
                + "budget, "
                + "with its chainage, wherever the survey lets the true track lie: the edge was drawn for that.");
        }
    }

    private static void OtherTracks(DocumentBuilder to, ReportSource source, PlatformDossier face) => to.Table(
        "Other tracks beside the platform" + source.Of(face), ["track", "runs", "nearest to", "at chainage", "from its middle",
            "from its nearer rail's running edge", "vehicles on it"],
        NearTrack.All(source.Dossier, face.Plan).Select(t => (IReadOnlyList<string>)
            [
                t.Track, t.Behind ? "behind the platform" : "on the platform's front", t.Behind ? "back edge" : "coping edge", Figures.Fixed(t.Chainage, 0),
                Figures.Mm(t.Distance), Figures.Mm(t.Distance - (source.Dossier.Gauge / 2)), t.Vehicles.Count == 0 ? "none" : string.Join(", ", t.Vehicles),
            ]),
        "the tracks as laid; vehicles of these are swept and held against everything printed as those of the platform's own are, and the verdict "
            + "names each with its track");

    private static void AsBuilt(DocumentBuilder to, ReportSource source, PlatformDossier face)
    {
        if (face.AsBuilt is not { } edge)
        {
            return;
        }

        to.Table(
            "As measured on the layout" + source.Of(face), ["chainage", "gap", "measured from", "planned edge", "true edge", "off by", "least left", "for"],
            edge.Measures.Select(m => (IReadOnlyList<string>)
                [
                    Figures.Mm(m.Reading.Chainage), Figures.Fine(m.Reading.Gap), m.Reading.Vehicle ?? "running edge", Figures.Fine(m.Planned),
                        Figures.Fine(m.True), Figures.Signed(m.OffBy),
                    m.Closest is { } near ? Figures.Fine(near.Left) : "", m.Closest is { } who ? Invariant($"{who.Vehicle} ({who.Part})") : "",
                ]),
            "the readings, held against the plan and the sweep", source.File("as-built", face));
        if (AsBuiltWords.FromRail(edge, source.Dossier.Gauge) is { } how)
        {
            to.Say(how);
        }

        if (edge.Worst is { Closest: { } least } worst)
        {
            to.Say(Invariant($"Worst: line {worst.Reading.Line} of {worst.Reading.File}, chainage {Figures.Mm(worst.Reading.Chainage)}, ")
                + Invariant($"{Figures.Fine(least.Left)} left for {least.Vehicle} ({least.Part}) where {Figures.Fine(least.Planned)} were planned."));
        }
    }

    private static void Gaps(DocumentBuilder to, ReportSource source, PlatformDossier face)
    {
        var (scale, plan) = (source.Dossier.Scale, face.Plan);
        if (plan.Gaps.Rows.Count == 0)
        {
            to.Say("No vehicle has a door sill.");
            return;
        }

        to.Table(
            "Gap to the door sills, by style of edge" + source.Of(face), ["edge", "vehicle", "least", "mean", "mean at full size", "largest",
                "largest at full size", "step", "stepping limit"],
            plan.Gaps.Rows.Select(r => (IReadOnlyList<string>)
                [
                    r.Style.ToString().ToLowerInvariant() + (r.Style == plan.Spec.Face.Edge ? " (chosen)" : ""), r.Vehicle,
                    Invariant($"{Figures.Mm(r.Least)} at {Figures.Fixed(r.LeastAt, 0)}"), Figures.Mm(r.Mean), Figures.FullSize(r.Mean, scale),
                        Invariant($"{Figures.Mm(r.Largest)} at {Figures.Fixed(r.LargestAt, 0)}"),
                    Figures.FullSize(r.Largest, scale), Figures.Mm(r.Step), r.WithinLimit ? "kept" : "exceeded",
                ]),
            "the sweep of the sills, level from coping edge to sill");
        if (plan.Profile.HasRamps)
        {
            to.Say("These are of the level part, without ramps, from which nobody boards; the plots and the tables of gaps by station have the ramps "
                + "too, where gaps may be larger.");
        }

        to.Say(Invariant($"The stepping limit is {SteppingLimit.Horizontal} mm level, {SteppingLimit.Vertical} mm upright and ")
            + Invariant($"{SteppingLimit.Diagonal} mm diagonal at full size ({SteppingLimit.Source}), ")
            + Invariant($"{Figures.Fine(scale.ToModel(SteppingLimit.Horizontal))} mm level in the model; models on sharp curves seldom keep it."));
    }

    private static void Stations(DocumentBuilder to, ReportSource source, PlatformDossier face)
    {
        var need = face.Plan.Requirement;
        bool At(int i) => i == 0 || i == need.Stations.Length - 1 || Math.Floor(need.Stations[i] / Apart) > Math.Floor(need.Stations[i - 1] / Apart);
        ReportSource.Bring(
            to, "Reach and gap, station by station" + source.Of(face), PlatformTables.GapRows(face),
            [
                ("chainage_mm", "chainage"), ("bare_reach_mm", "vehicles reach"), ("required_reach_mm", "with the budget"),
                    ("coping_reach_mm", "coping edge"), ("governing_vehicle", "governed by"),
                .. face.Plan.Gaps.Traces.Take(MostVehicles).Select(t => ($"{t.Vehicle} nearest_gap_mm", t.Vehicle + ", nearest door")),
            ],
            Invariant($"the sweep and the plan, from the track's middle; every {Apart:0} mm here, every station in the file"), source.File("gaps", face), At);
    }

    // More would not fit across a sheet of paper; the file has all.
    private const int MostVehicles = 4;
}
