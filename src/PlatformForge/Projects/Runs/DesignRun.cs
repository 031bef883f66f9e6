using PlatformForge.Clearance;
using PlatformForge.Exports.Files;
using PlatformForge.Platforms;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Rules;
using PlatformForge.Projects.Watches;
using PlatformForge.Proofs;
using PlatformForge.Sections;
using PlatformForge.Units;

namespace PlatformForge.Projects.Runs;

/// <summary>A platform's plan with its pieces.</summary>
/// <param name="Platform">Its name.</param>
/// <param name="Plan">Its plan.</param>
/// <param name="Pieces">Its pieces by number.</param>
public sealed record PlatformPieces(string Platform, PlatformPlan Plan, IReadOnlyList<SectionPiece> Pieces);

/// <summary>
/// The run from a project to everything known about its platforms: tracks, sweep, plan, sections. Writes nothing. The run
/// stops between rooms, after all faults of a room are told.
/// </summary>
public static class DesignRun
{
    /// <summary>Designs every platform of a project; findings carry file, line and column.</summary>
    public static Outcome<Dossier> Design(ProjectSpec project, RunWatch watch)
    {
        var outcome = Unplaced(KnownVehicles.In(project, watch.Memory), watch);
        return outcome with { Findings = project.Placed(outcome.Findings) };
    }

    /// <summary>
    /// The pieces alone, as soon as they have their shape: for a page that shows them while somebody turns a figure. What is told of them
    /// by figures, and what may be wrong with
    /// them, comes with <see cref="Design"/>, which asks the same memory.
    /// </summary>
    public static Outcome<IReadOnlyList<PlatformPieces>> Shapes(ProjectSpec project, RunWatch watch)
    {
        var outcome = UnplacedShapes(KnownVehicles.In(project, watch.Memory), watch);
        return outcome with { Findings = project.Placed(outcome.Findings) };
    }

    private static Outcome<IReadOnlyList<PlatformPieces>> UnplacedShapes(ProjectSpec project, RunWatch watch)
    {
        var findings = new List<Finding>();
        if (Planned(project, watch, findings) is not (_, { } jobs))
        {
            return Outcome.Fault<IReadOnlyList<PlatformPieces>>(findings);
        }

        watch.Stage(Cutting);
        var pieces = new List<PlatformPieces>();
        foreach (var job in jobs)
        {
            var shaped = job.Shapes();
            findings.AddRange(shaped.Findings);
            pieces.Add(new(job.Planned!.Spec.Name, job.Planned, shaped.Value ?? []));
        }

        return findings.Exists(f => f.Severity == Severity.Error) ? Outcome.Fault<IReadOnlyList<PlatformPieces>>(findings) : new(pieces, findings);
    }

    private static Outcome<Dossier> Unplaced(ProjectSpec project, RunWatch watch)
    {
        var findings = new List<Finding>();
        if (Planned(project, watch, findings) is not ({ } tracks, { } jobs))
        {
            return Outcome.Fault<Dossier>(findings);
        }

        watch.Stage(Cutting);
        Through(jobs, j => j.Cut(), watch, findings);
        if (findings.Exists(f => f.Severity == Severity.Error))
        {
            return Outcome.Fault<Dossier>(findings);
        }

        PlatformDossier[] platforms = [.. jobs.Select(j => j.Dossier())];
        findings.AddRange(platforms.SelectMany(p => p.Faces).SelectMany(f => PublishedRules.Hold(project.Layout.Rules, project.Layout.Gauge, f.Plan)));
        return Outcome.Of(Dossier(project, tracks, platforms, findings), findings);
    }

    private const string Cutting = "cutting and shaping the sections";

    // Tracks and plans without fault, or the faults alone.
    private static (IReadOnlyList<LaidTrack>? Tracks, PlatformJob[]? Jobs) Planned(ProjectSpec project, RunWatch watch, List<Finding> findings)
    {
        watch.Stage("laying the tracks");
        var laid = LaidTrack.LayAll(project, watch);
        findings.AddRange(SurveyBrief.Of(laid.Findings));
        if (laid.Value is not { } tracks)
        {
            findings.AddRange(Stated(project));
            return default;
        }

        var site = new PlatformSite(project.Layout.Scale, project.Layout.RailTop);
        var jobs = project.Platforms.Select(p => new PlatformJob(project, site, tracks, p, watch)).ToArray();
        findings.AddRange(project.TakenOver);
        findings.AddRange(StripRule.Check(project.Printer));
        findings.AddRange(jobs.SelectMany(j => j.Check()));
        if (findings.Exists(f => f.Severity == Severity.Error))
        {
            findings.AddRange(jobs.SelectMany(j => j.Fit()).DistinctBy(f => (f.Code, f.Key)));
            return default;
        }

        watch.Stage("sweeping the vehicles");
        Through(jobs, j => j.Sweep(), watch, findings);
        if (findings.Exists(f => f.Severity == Severity.Error))
        {
            return default;
        }

        watch.Stage("planning the platforms");
        Through(jobs, j => j.Plan(), watch, findings);
        findings.AddRange(PlatformNeighbours.Check([.. jobs.Select(j => j.Planned).OfType<PlatformPlan>()]));
        return findings.Exists(f => f.Severity == Severity.Error) ? default : (tracks, jobs);
    }

    private static void Through(PlatformJob[] jobs, Func<PlatformJob, IEnumerable<Finding>> work, RunWatch watch, List<Finding> findings)
    {
        var told = new Finding[jobs.Length][];
        Parallel.For(0, jobs.Length, new ParallelOptions { CancellationToken = watch.Cancel }, i => told[i] = [.. work(jobs[i])]);
        findings.AddRange(told.SelectMany(t => t));
    }

    // Vehicles that cannot run on tracks whose alignments are stated. Vehicles that are impossible by themselves are told with them.
    private static IEnumerable<Finding> Stated(ProjectSpec project) =>
        project.Tracks.Where(t => t.Survey is null).SelectMany(t => VehicleFit.OnAlignment(t.Alignment, project.VehiclesOn(t)))
        .DistinctBy(f => (f.Code, f.Key));

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
