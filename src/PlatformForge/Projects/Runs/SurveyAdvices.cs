using PlatformForge.Clearance;
using PlatformForge.Clearance.Requests;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Exports.Files;
using PlatformForge.Platforms.Specs;
using PlatformForge.Projects.Keys;
using PlatformForge.Projects.Reading;
using PlatformForge.Projects.Watches;
using PlatformForge.Sections.Forms;
using PlatformForge.Track.Surveys.Remarks;
using PlatformForge.Track.Surveys.Results;
using PlatformForge.Units.Memories;

namespace PlatformForge.Projects.Runs;

/// <summary>
/// Which reading to take again and what it would leave, in the line of the budget that tells what the survey takes: for the report. It is found by fitting
/// the survey many
/// times, which a mere check need not wait for.
/// </summary>
public static class SurveyAdvices
{
    /// <summary>The design with the advice in its budgets.</summary>
    /// <param name="project">The project.</param>
    /// <param name="dossier">Its design.</param>
    /// <param name="watch">Whose memory is asked, and who stops the work.</param>
    public static Dossier In(ProjectSpec project, Dossier dossier, RunWatch watch)
    {
        if (!dossier.Platforms.SelectMany(p => p.Faces).Any(f => f.Budget.Lines.Any(IsOfSurvey)) || LaidTrack.LayAll(project, watch).Value is not { } tracks)
        {
            return dossier;
        }

        var advised = tracks.Where(t => t.Survey is not null)
            .ToDictionary(t => t.Entry.Name, t => Doubts(project, t, tracks, watch), StringComparer.Ordinal);
        PlatformDossier Told(PlatformDossier face) => !advised.TryGetValue(face.Track, out var doubts)
            || doubts.FirstOrDefault(d => d.Platform == face.Name) is not { } doubt || AdviceWords.Of(doubt) is not { Length: > 0 } words ? face
            : face with
            {
                Budget = face.Budget with
                {
                    Lines = [.. face.Budget.Lines.Select(l => IsOfSurvey(l)
                ? l with { Basis = $"{l.Basis}; {words}" } : l)]
                }
            };
        return dossier with { Platforms = [.. dossier.Platforms.Select(p => Told(p) with { FurtherFaces = [.. p.FurtherFaces.Select(Told)] })] };
    }

    private static bool IsOfSurvey(BudgetLine line) => line.Name == ClearanceBudget.SurveyResidual && line.Placing == BudgetPlacing.Swept;

    /// <summary>A surveyed track with a doubt for every platform that faces it, and the advice with each.</summary>
    /// <param name="project">The project.</param>
    /// <param name="track">The track.</param>
    /// <param name="tracks">All that are laid, see <see cref="SurveyDoubts.Needed"/>.</param>
    /// <param name="watch">Whose memory is asked, and who stops the work.</param>
    public static SurveyedTrack Beside(ProjectSpec project, LaidTrack track, IReadOnlyList<LaidTrack> tracks, RunWatch watch) =>
        track.Survey! with { Doubts = Doubts(project, track, tracks, watch) };

    private static IReadOnlyList<ReachDoubt> Doubts(ProjectSpec project, LaidTrack track, IReadOnlyList<LaidTrack> tracks, RunWatch watch) =>
        watch.Memory.Of("advice", new Input(project.Layout, project.Clearance, project.Platforms, project.Vehicles, project.Sets, track, tracks), Doubts,
            watch.Cancel);

    private static IReadOnlyList<ReachDoubt> Doubts(Input input, CancellationToken cancel) =>
        SurveyDoubts.With(KnownVehicles.In(input.Project, Memory.None), input.Track, input.Tracks).Doubts;

    /// <summary>What the doubts hang on: nothing of the printer, nor where in a file anything was written.</summary>
    private sealed record Input(
        LayoutSpec Layout, ClearanceEntry Clearance, IReadOnlyList<PlatformSpec> Platforms, IReadOnlyList<Vehicle> Vehicles, IReadOnlyList<VehicleSet> Sets,
        LaidTrack Track,
        IReadOnlyList<LaidTrack> Tracks)
    {
        public ProjectSpec Project => new(Layout, [], Vehicles, Clearance, Platforms, AnyPrinter, new())
        {
            Places = SourceMap.Empty,
            InputHash = "",
            Sets = Sets
        };

        private static readonly PrinterSpec AnyPrinter = PrinterSpec.Oblong(1, 1, 1);
    }
}
