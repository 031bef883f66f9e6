using PlatformForge.Clearance;
using PlatformForge.Exports;
using PlatformForge.Track.Surveys;

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
            .ToDictionary(t => t.Entry.Name, t => watch.Memory.Of("advice", new Input(project, t, tracks), Doubts, watch.Cancel), StringComparer.Ordinal);
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

    private static IReadOnlyList<ReachDoubt> Doubts(Input input, CancellationToken cancel) =>
        SurveyDoubts.With(KnownVehicles.In(input.Project, Units.Memories.Memory.None), input.Track, input.Tracks).Doubts;

    private sealed record Input(ProjectSpec Project, LaidTrack Track, IReadOnlyList<LaidTrack> Tracks);
}
