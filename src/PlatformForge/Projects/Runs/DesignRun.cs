using PlatformForge.Clearance;
using PlatformForge.Exports;
using PlatformForge.Platforms;
using PlatformForge.Platforms.Rules;
using PlatformForge.Units;

namespace PlatformForge.Projects.Runs;

/// <summary>
/// The run from a project to everything known about its platforms: tracks, sweep, plan, sections. Writes nothing. The run
/// stops between rooms, after all faults of a room are told.
/// </summary>
public static class DesignRun
{
    /// <summary>Designs every platform of a project; findings carry file, line and column.</summary>
    public static Outcome<Dossier> Design(ProjectSpec project, RunWatch watch)
    {
        var outcome = Unplaced(project, watch);
        return outcome with { Findings = project.Placed(outcome.Findings) };
    }

    private static Outcome<Dossier> Unplaced(ProjectSpec project, RunWatch watch)
    {
        watch.Stage("laying the tracks");
        var laid = LaidTrack.LayAll(project);
        if (laid.Value is not { } tracks)
        {
            return Outcome.Fault<Dossier>([.. SurveyBrief.Of(laid.Findings), .. Stated(project)]);
        }

        var site = new PlatformSite(project.Layout.Scale, project.Layout.RailTop);
        var jobs = project.Platforms.Select(p => new PlatformJob(project, site, tracks, p)).ToArray();
        var findings = new List<Finding>([.. SurveyBrief.Of(laid.Findings), .. project.TakenOver]);
        findings.AddRange(jobs.SelectMany(j => j.Check()));
        if (findings.Exists(f => f.Severity == Severity.Error))
        {
            findings.AddRange(jobs.SelectMany(j => j.Fit()).DistinctBy(f => (f.Code, f.Key)));
        }

        foreach (var stage in new (string Name, Func<PlatformJob, IEnumerable<Finding>> Work, Func<IEnumerable<Finding>> Together)[]
        {
            ("sweeping the vehicles", j => j.Sweep(), () => []),
            ("planning the platforms", j => j.Plan(), () => PlatformNeighbours.Check([.. jobs.Select(j => j.Planned).OfType<PlatformPlan>()])),
            ("cutting and shaping the sections", j => j.Cut(), () => []),
        })
        {
            if (findings.Exists(f => f.Severity == Severity.Error))
            {
                return Outcome.Fault<Dossier>(findings);
            }

            watch.Stage(stage.Name);
            var told = new Finding[jobs.Length][];
            Parallel.For(0, jobs.Length, new ParallelOptions { CancellationToken = watch.Cancel }, i => told[i] = [.. stage.Work(jobs[i])]);
            findings.AddRange(told.SelectMany(t => t));
            findings.AddRange(stage.Together());
        }

        if (findings.Exists(f => f.Severity == Severity.Error))
        {
            return Outcome.Fault<Dossier>(findings);
        }

        PlatformDossier[] platforms = [.. jobs.Select(j => j.Dossier())];
        findings.AddRange(platforms.SelectMany(p => p.Faces).SelectMany(f => PublishedRules.Hold(project.Layout.Rules, project.Layout.Gauge, f.Plan)));
        return Outcome.Of(Dossier(project, tracks, platforms, findings), findings);
    }

    // Vehicles that cannot run on tracks whose alignments are stated. Vehicles that are impossible by themselves are told with them.
    private static IEnumerable<Finding> Stated(ProjectSpec project) =>
        project.Tracks.Where(t => t.Survey is null).SelectMany(t => VehicleFit.OnAlignment(t.Alignment, project.VehiclesOn(t))).DistinctBy(f => (f.Code, f.Key));

    private static Dossier Dossier(ProjectSpec project, IReadOnlyList<LaidTrack> tracks, PlatformDossier[] platforms, List<Finding> findings) => new()
    {
        Project = project.Layout.Name,
        Scale = project.Layout.Scale,
        Gauge = project.Layout.Gauge,
        RailTop = project.Layout.RailTop,
        RailHeadWidth = project.Layout.RailHead,
        Tracks = [.. tracks.Select(t => t.Run(project))],
        Printer = project.Printer,
        Platforms = platforms,
        Findings = project.Placed(findings),
        InputHash = project.InputHash,
        Version = ProgramVersion.Number,
    };
}
