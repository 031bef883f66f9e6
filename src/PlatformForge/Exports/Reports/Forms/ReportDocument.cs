using System.Text.Json.Serialization;
using PlatformForge.Clearance;
using PlatformForge.Exports.Files;
using PlatformForge.Exports.Looks;
using PlatformForge.Exports.Workshop;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Specs;
using PlatformForge.Sections.Forms;
using PlatformForge.Units;

namespace PlatformForge.Exports.Reports.Forms;

/// <summary>The report as figures, for other programs: the file report.json, format 2. Forms of its own, so that a renamed property of the program does not
/// change the
/// file. Lengths in mm of the model unless the name says full size.</summary>
public sealed record ReportDocument(
    string Tool, int Format, string Project, string Version, string InputHash, double Ratio, double Gauge, double RailTop, VerdictReport? Verdict,
    IReadOnlyList<PlatformReport> Platforms, IReadOnlyList<FindingReport> Findings, IReadOnlyList<string> Cautions)
{
    /// <summary>The form of the file that this program writes and reads.</summary>
    public const int OurFormat = 2;

    internal static ReportDocument Of(Dossier dossier, IReadOnlyList<BenchTables> bench) => new(
        Manifests.Manifest.OurTool, OurFormat, dossier.Project, dossier.Version, dossier.InputHash, dossier.Scale.Ratio, dossier.Gauge, dossier.RailTop,
        VerdictReport.Of(dossier.Verdict),
        [.. dossier.Platforms.Select((p, i) => PlatformReport.Of(p, dossier, bench[i]))],
        [.. dossier.Findings.Select(f => new FindingReport(f.Code, f.Severity, f.Key, f.Message, f.Remedy))],
        Workshop.Cautions.Lines);
}

/// <summary>What holding the design against its vehicles came to, mm.</summary>
public sealed record VerdictReport(string Line, bool Clear, IReadOnlyList<HeldReport> Vehicles)
{
    internal static VerdictReport? Of(VerdictBrief? v) => v is null ? null : new(
        v.Line, v.IsClear,
        [.. v.Vehicles.Select(h => new HeldReport(h.Vehicle, h.Track, h.Part, h.Where, h.Clears, h.Left))]);
}

/// <summary>How near a vehicle comes to anything printed, mm; null where it comes to the height of nothing printed.</summary>
public sealed record HeldReport(string Vehicle, string Track, string Part, string Where, double? Clears, double? Left);

/// <summary>A table for the workbench: columns by their keys, and in each cell a number, words, or null.</summary>
public sealed record BenchReport(string Name, string Title, string Basis, IReadOnlyList<string> Columns, IReadOnlyList<IReadOnlyList<CellReport>> Rows)
{
    internal static BenchReport Of(WorkTable t) => new(
        t.Name, t.Title, t.Basis, [.. t.Columns.Select(c => c.Key)],
        [.. t.Rows.Select(r => (IReadOnlyList<CellReport>)[.. r.Select(c => new CellReport(c.Figure, c.Figure is null ? c.Words : null))])]);
}

/// <summary>A cell: a figure, or words where there is none.</summary>
public sealed record CellReport(double? Figure, string? Words);

public sealed record FindingReport(string Code, Severity Severity, string Key, string Message, string Remedy);

/// <summary>One platform's figures.</summary>
public sealed record PlatformReport(
    string Name, FaceReport Face, double Height, double DeckWidth, double LeastReach, double LargestReach, double EnvelopeError,
    BudgetReport Budget, IReadOnlyList<AllowanceReport> Allowances, IReadOnlyList<JointReport> Joints, IReadOnlyList<GoverningStretch> Governing,
        IReadOnlyList<NearestReport> Nearest, IReadOnlyList<NearTrackReport> OtherTracks, IReadOnlyList<GapReport> Gaps,
    Tables.LimitForm SteppingLimit, AsBuiltReport? AsBuilt,
    IReadOnlyList<SectionReport> Sections, string CountReason, IReadOnlyList<PlateReport> Plates, IReadOnlyList<DowelReport> Dowels,
    EstimateReport Estimate, string EstimateBasis, PrintReport Print, RibReport Ribs, IReadOnlyList<FeatureReport> Features, IReadOnlyList<BenchReport> Bench,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] OtherFaceReport? OtherFace = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] WaistReport? Waist = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] FacingReport? Facing = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] IReadOnlyList<LineReport>? Lines = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] BackReport? Back = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] TrestleReport? Trestle = null)
{
    internal static PlatformReport Of(PlatformDossier platform, Dossier dossier, BenchTables bench)
    {
        var scale = dossier.Scale;
        var plan = platform.Plan;
        return new(
            platform.Name, FaceReport.Of(plan.Spec.Face), plan.Spec.Height, plan.Spec.Deck.Width,
            plan.First.CopingFront.Reach.Min(), plan.First.CopingFront.Reach.Max(), platform.Envelope.ErrorBound,
            BudgetReport.Of(platform.Budget),
            AllowanceReport.Of(plan.Requirement, scale),
            [.. platform.Joints.Select(JointReport.Of)],
            GoverningStretch.Of(plan),
            [.. platform.Tightest.Select(t => NearestReport.Of(t, plan, platform.Budget.Margin))],
            [.. NearTrack.All(dossier, plan).Select(NearTrackReport.Of)],
            [.. plan.Gaps.Rows.Select(r => GapReport.Of(r, scale))],
            Tables.LimitForm.At(scale),
            AsBuiltReport.Of(platform.AsBuilt),
            [.. platform.Sections.Sections.Select(SectionReport.Of)],
            platform.Sections.CountReason,
            [.. platform.Sections.Plates.Select(p => new PlateReport(p.Number, [.. p.Sections.Select(s => s.Section.Number)], EstimateReport.Of(p.Estimate)))],
            [.. platform.Sections.Dowels.Select(d => new DowelReport(d.What, d.Diameter, d.Length, d.Count))],
            EstimateReport.Of(platform.Sections.Estimate),
            PrintEstimate.Basis,
            PrintReport.Of(dossier.Printer),
            RibReport.Of(plan.RibPitch),
            [.. plan.Features.Select(f => FeatureReport.Of(plan, f))],
            [.. bench.All.Select(BenchReport.Of)],
            platform.FurtherFaces is [var other, ..] ? OtherFaceReport.Of(other, dossier) : null,
            plan.Waist is { } waist ? new(waist.Width, scale.ToFullSize(waist.Width), waist.First,
                waist.Second)
            { Heights = [.. plan.Faces.Select(FaceHeightsReport.Of)] } : null,
            FacingReport.Of(platform.Sections),
            LineReport.Of(platform.Sections),
            BackReport.Of(platform.Sections),
            TrestleReport.Of(platform.Sections));
    }
}

/// <summary>The clearance budget line by line, with both ways of adding up and the one that governs.</summary>
public sealed record BudgetReport(IReadOnlyList<BudgetLineReport> Lines, BudgetRule Rule, double Sum,
    double RootOfSquares, double Margin, double SumWithPlay, double RootOfSquaresWithPlay)
{
    internal static BudgetReport Of(ClearanceBudget b) => new(
        [.. b.Lines.Select(l => new BudgetLineReport(l.Name, l.AmountMm, l.Basis, l.Placing))],
        b.Rule, b.Sum, b.RootOfSquares, b.Margin, b.SumWithPlay, b.RootOfSquaresWithPlay);
}

/// <summary>The narrowest place of an island: edge to edge, mm of the model and of full size, and its chainage on the track of either face.</summary>
public sealed record WaistReport(double Width, double FullSize, double At, double AtOther)
{
    /// <summary>Heights along either face, the first one first.</summary>
    public required IReadOnlyList<FaceHeightsReport> Heights { get; init; }
}

/// <summary>
/// Heights along a face, mm: its rails over the baseboard, its coping above those, and where its ramps begin, with their lengths and the heights of their
/// feet above rail top; an end
/// without a ramp has a length of 0 and no foot. Start is at the lower chainage of its track.
/// </summary>
public sealed record FaceHeightsReport(string Track, double RailTop, double Coping, double StartRamp, double? StartFoot, double EndRamp, double? EndFoot)
{
    internal static FaceHeightsReport Of(FacePlan face)
    {
        var p = face.Profile;
        return new(face.Spec.Track, face.RailTop, p.Level - face.RailTop, p.StartHead - p.From, p.StartHead > p.From ? p.StartFoot - face.RailTop : null,
            p.To - p.EndHead, p.To > p.EndHead ? p.EndFoot - face.RailTop : null);
    }
}

/// <summary>What is told of an island's second face, in its own track's chainage.</summary>
public sealed record OtherFaceReport(
    FaceReport Face, double LeastReach, double LargestReach, double EnvelopeError, BudgetReport Budget,
    IReadOnlyList<AllowanceReport> Allowances, IReadOnlyList<JointReport> Joints,
    IReadOnlyList<GoverningStretch> Governing, IReadOnlyList<NearestReport> Nearest,
    IReadOnlyList<NearTrackReport> OtherTracks, IReadOnlyList<GapReport> Gaps, AsBuiltReport? AsBuilt)
{
    internal static OtherFaceReport Of(PlatformDossier face, Dossier dossier)
    {
        var plan = face.Plan;
        return new(
            FaceReport.Of(plan.Spec.Face), plan.First.CopingFront.Reach.Min(),
            plan.First.CopingFront.Reach.Max(), face.Envelope.ErrorBound, BudgetReport.Of(face.Budget),
            AllowanceReport.Of(plan.Requirement, dossier.Scale),
            [.. face.Joints.Select(JointReport.Of)],
            GoverningStretch.Of(plan),
            [.. face.Tightest.Select(t => NearestReport.Of(t, plan, face.Budget.Margin))],
            [.. NearTrack.All(dossier, plan).Select(NearTrackReport.Of)],
            [.. plan.Gaps.Rows.Select(r => GapReport.Of(r, dossier.Scale))],
            AsBuiltReport.Of(face.AsBuilt));
    }
}

/// <summary>What an allowance costs along a platform: how much farther away it keeps the coping, mm of the model and its most at full size.</summary>
public sealed record AllowanceReport(string Name, double Least, double Mean, double Most, double MostFullSize)
{
    internal static IReadOnlyList<AllowanceReport> Of(RequirementTrace need, ModelScale scale) =>
        need.Allowances is { } parts ? [.. parts.Costs.Select(c => new AllowanceReport(c.Name, c.Amount.Min(), c.Amount.Sum() / c.Amount.Length,
            c.Amount.Max(), scale.ToFullSize(c.Amount.Max())))] : [];
}

/// <summary>Where a vehicle comes nearest to the coping, mm, and the stretch along which it comes as near.</summary>
public sealed record NearestReport(string Vehicle, string Track, string Part, double Chainage, double StretchFrom, double StretchTo, double Reach,
    double Left, double LeftAfterBudget)
{
    internal static NearestReport Of(TightPlace t, PlatformPlan plan, double margin) =>
        new(t.Pose.Vehicle.Name, t.Pose.OtherTrack.Length > 0 ? t.Pose.OtherTrack : plan.Spec.Face.Track, t.Part, t.Chainage, t.Stretch.From, t.Stretch.To,
            t.Reach, t.Left, t.Left - margin);
}

/// <summary>A stretch along which the same part of the same vehicle reaches farthest.</summary>
public sealed record GoverningStretch(double From, double To, string Vehicle, string Part, string Track, double LargestReach)
{
    internal static IReadOnlyList<GoverningStretch> Of(PlatformPlan plan)
    {
        var need = plan.Requirement;
        var stretches = new List<GoverningStretch>();
        for (int from = 0, to; from < need.Stations.Length; from = to)
        {
            to = from + 1;
            double most = need.Swept[from];
            while (to < need.Stations.Length && need.GoverningVehicle[to] == need.GoverningVehicle[from] && need.GoverningPart[to] == need.GoverningPart[from])
            {
                most = Math.Max(most, need.Swept[to++]);
            }

            if (need.GoverningVehicle[from] >= 0)
            {
                stretches.Add(new(need.Stations[from], need.Stations[to - 1], need.Vehicles[need.GoverningVehicle[from]], need.GoverningPart[from],
                    plan.TrackOf(need.GoverningVehicle[from]), most));
            }
        }

        return stretches;
    }
}

/// <summary>Gap to a vehicle's door sill with a style of edge; the limit is <see cref="SteppingLimit"/>.</summary>
public sealed record GapReport(
    EdgeStyle Style, string Vehicle, double Least, double LeastAt, double Mean, double Largest, double LargestAt, double Step,
    double LargestFullSize, double StepFullSize, double DiagonalFullSize, bool LevelWithinLimit, bool StepWithinLimit, bool DiagonalWithinLimit)
{
    internal static GapReport Of(GapRow r, ModelScale scale) => new(
        r.Style, r.Vehicle, r.Least, r.LeastAt, r.Mean, r.Largest, r.LargestAt, r.Step,
        scale.ToFullSize(r.Largest), scale.ToFullSize(r.Step), scale.ToFullSize(r.Diagonal), r.HorizontalWithinLimit, r.VerticalWithinLimit,
            r.DiagonalWithinLimit);
}

/// <summary>A section's measures.</summary>
public sealed record SectionReport(
    int Number, string Name, double From, double To, double SizeX, double SizeY, double SizeZ, double Volume, PrintPose Pose, string Stands, double Brim,
        double UnsupportedArea, double WidestBridge, EstimateReport Estimate)
{
    internal static SectionReport Of(PlatformSection s) => new(
        s.Number, s.Name, s.From, s.To, s.Size.X, s.Size.Y, s.Size.Z, s.Volumes.Finished, s.Pose, s.PoseInWords, s.Brim, s.Overhangs.Unsupported,
            s.Overhangs.WidestBridge, EstimateReport.Of(s.Estimate));
}

/// <summary>A plate and the numbers of the sections on it.</summary>
public sealed record PlateReport(int Number, IReadOnlyList<int> Sections, EstimateReport Estimate);
