using PlatformForge.Exports.Files;
using PlatformForge.Platforms;
using PlatformForge.Platforms.Islands;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Specs;
using PlatformForge.Projects.Watches;
using PlatformForge.Sections;
using PlatformForge.Sections.Forms;
using PlatformForge.Units;

namespace PlatformForge.Projects.Runs;

/// <summary>One platform on its way through the rooms; each step needs the one before it to have been without fault.</summary>
internal sealed class PlatformJob
{
    private readonly ProjectSpec project;
    private readonly FaceJob[] faces;
    private readonly IReadOnlyList<Finding> faults = [];
    private readonly RunWatch watch;
    private PlatformPlan? plan;
    private SectionSet? sections;

    public PlatformJob(ProjectSpec project, PlatformSite site, IReadOnlyList<LaidTrack> tracks, PlatformSpec asked, RunWatch watch)
    {
        (this.project, this.watch) = (project, watch);

        // The file counts along the track as it is ridden; the plan along its smooth chart.
        var chart = FaceJob.Faced(tracks, asked.Face).Chart;
        var spec = asked with { Face = asked.Face with { From = chart.FromRide(asked.Face.From), To = chart.FromRide(asked.Face.To) } };
        (double, double) ends = (asked.Face.From, asked.Face.To);
        site = site with { RailTop = FaceJob.Faced(tracks, asked.Face).RailTopOf(project) };
        if (spec.OtherFace is not { } other)
        {
            faces = [new(project, site, tracks, spec, watch, ends)];
            return;
        }

        var there = site with { RailTop = FaceJob.Faced(tracks, other).RailTopOf(project) };
        var otherChart = FaceJob.Faced(tracks, other).Chart;
        var across = IslandTracks.Across(spec, chart.Line, otherChart.Line, site, there);
        spec = across.Value?.First ?? spec;
        faults = across.Findings;
        faces = across.Value is { } found
            ? [new(project, site, tracks, found.First, watch, ends),
                new(project, there, tracks, found.Second, watch, (otherChart.ToRide(found.Second.Face.From), otherChart.ToRide(found.Second.Face.To)))]
            : [new(project, site, tracks, spec, watch, ends)];
    }

    /// <summary>The plan, once it is made.</summary>
    public PlatformPlan? Planned => plan;

    /// <summary>What can be told before anything is swept.</summary>
    public IEnumerable<Finding> Check() => [.. faces.SelectMany(f => f.Check()).DistinctBy(f => (f.Code, f.Key, f.Message)), .. faults];

    /// <summary>Vehicles that cannot run the curves beside the platform, for designs that stop before they are swept.</summary>
    public IEnumerable<Finding> Fit() => faces.SelectMany(f => f.Fit());

    public IEnumerable<Finding> Sweep() => faces.SelectMany(f => f.Sweep()).ToArray();

    public IEnumerable<Finding> Plan() => Take(
        watch.Memory.Of("plan", new PlanInput([.. faces.Select(f => f.Request())]), static (i, _) => PlatformPlanner.PlanFaces(i.Faces), watch.Cancel),
        out plan).Where(f => plan is null || !PlatformPlanner.IsOfRibs(faces[0].Spec, f));

    public IEnumerable<Finding> Cut()
    {
        var findings = Take(SectionMaker.Make(plan!, project.Printer, project.Sections, watch.Memory, watch.Cancel), out sections);
        plan = sections?.Plan ?? plan;
        return findings;
    }

    /// <summary>The pieces alone, in place of <see cref="Cut"/>.</summary>
    public Outcome<IReadOnlyList<SectionPiece>> Shapes() => SectionMaker.Shapes(plan!, project.Printer, project.Sections, watch.Memory, watch.Cancel);

    public PlatformDossier Dossier() => faces[0].Dossier(plan!, sections!) with
    {
        FurtherFaces = [.. faces.Skip(1).Select(f => f.Dossier(FaceView.Of(plan!), FaceView.Of(plan!, sections!)))],
    };

    private static IEnumerable<Finding> Take<T>(Outcome<T> outcome, out T? product)
        where T : class
    {
        product = outcome.Value;
        return outcome.Findings;
    }

    private sealed record PlanInput(IReadOnlyList<PlatformRequest> Faces);
}
