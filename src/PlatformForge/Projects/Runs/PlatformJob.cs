using PlatformForge.Clearance;
using PlatformForge.Clearance.Sets;
using PlatformForge.Exports;
using PlatformForge.Platforms;
using PlatformForge.Platforms.Accounts;
using PlatformForge.Sections;
using PlatformForge.Track;
using PlatformForge.Track.Surveys;
using PlatformForge.Units;

namespace PlatformForge.Projects.Runs;

/// <summary>One platform on its way through the rooms; each step needs the one before it to have been without fault.</summary>
internal sealed class PlatformJob
{
    private readonly ProjectSpec project;
    private readonly PlatformSite site;
    private readonly LaidTrack faced;
    private readonly PlatformSpec spec;
    private readonly EnvelopeRequest request;
    private readonly IReadOnlyList<LaidTrack> runs;
    private readonly (double From, double To) asked;
    private readonly RunWatch watch;
    private ClearanceBudget budget;
    private SweptEnvelope? envelope, doubted;
    private PlatformPlan? plan;
    private SectionSet? sections;
    private IReadOnlyList<JointOpening> joints = [];

    public PlatformJob(ProjectSpec project, PlatformSite site, IReadOnlyList<LaidTrack> tracks, PlatformSpec asked, RunWatch watch)
    {
        this.watch = watch;
        this.asked = (asked.Face.From, asked.Face.To);
        (this.project, this.site) = (project, site);
        faced = tracks.First(t => string.Equals(t.Entry.Name, asked.Face.Track, StringComparison.Ordinal));
        double residual = faced.Survey is not null ? 0 : project.VehiclesOn(faced.Entry).Select(v => SurveyMovement.ReachOf(faced.Entry.SurveyDoubt, v.PivotCentres, v.Length)).DefaultIfEmpty(0).Max();
        double tallest = tracks.SelectMany(t => project.VehiclesOn(t.Entry)).SelectMany(v => v.Parts).Select(p => p.ZHigh).DefaultIfEmpty(0).Max();
        budget = project.Clearance.BudgetWith(residual, project.Layout.Gauge, asked.Height, tallest, faced.Survey is not null);

        // The file counts along the track as it is ridden; the plan along its smooth chart.
        spec = asked with { Face = asked.Face with { From = faced.Chart.FromRide(asked.Face.From), To = faced.Chart.FromRide(asked.Face.To) } };
        runs = [faced, .. tracks.Where(t => t != faced)];
        request = new(faced.Chart.Line, spec.Face.From, spec.Face.To, [.. runs.Select(t => t.Run(project))])
        {
            Play = budget.Play,
            Edge = HeldHeights.Edge(spec),
            Key = spec.Key,
        };
    }

    /// <summary>The plan, once it is made.</summary>
    public PlatformPlan? Planned => plan;

    /// <summary>What can be told before anything is swept.</summary>
    public IEnumerable<Finding> Check() => PlatformPlanner.Check(
        spec, site, faced.Chart.Line, project.VehiclesOn(faced.Entry), faced.Entry.StartsAtBuffers, faced.Entry.EndsAtBuffers).Where(f => f.Severity == Severity.Error);

    /// <summary>Vehicles that cannot run the curves beside the platform, for designs that stop before they are swept.</summary>
    public IEnumerable<Finding> Fit() => VehicleFit.OnTrack(request.Runs[0], Math.Clamp(asked.From, 0, request.Runs[0].Ride.Length), Math.Clamp(asked.To, 0, request.Runs[0].Ride.Length));

    public IEnumerable<Finding> Sweep()
    {
        var findings = Take(Remembered("sweep", request, static (r, _) => EnvelopeSweeper.Sweep(r)), out envelope);
        joints = envelope is null ? [] : Remembered("joints of sets", new SideInput(request, spec.Face.Side), static (i, _) => JointSurvey.Over(i.Request, i.Side));
        if (envelope is not null)
        {
            Doubt(envelope);
        }

        return [.. findings, .. JointSurvey.Findings(request, joints)];
    }

    // What surveys leave uncertain is charged where it arises: by part and place, unless the project states a figure of its own.
    private void Doubt(SweptEnvelope swept)
    {
        doubted = swept;
        if (project.Clearance.Survey is null && runs.Any(r => r.Survey is not null))
        {
            doubted = Remembered("doubt", new DoubtInput(request, [.. runs.Select(r => r.Survey)], swept), static (i, _) => i.Swept.With(SurveyDoubts.Of(i.Request, i.Surveys)));
            budget = budget.WithSurveyed(doubted.BeyondOf(swept, spec.Face.Side));
        }
    }

    public IEnumerable<Finding> Plan() => Take(
        Remembered("plan", new PlatformRequest(spec, site, faced.Chart.Line, doubted!, budget)
        {
            Sills = Remembered("sills", new SideInput(request, spec.Face.Side), static (i, _) => SillSurvey.Over(i.Request, i.Side)),
            LessPlay = ReferenceEquals(doubted, envelope) ? LessPlay() : [.. LessPlay(), new(ClearanceBudget.SurveyResidual, envelope!)],
            StartsAtBuffers = faced.Entry.StartsAtBuffers,
            EndsAtBuffers = faced.Entry.EndsAtBuffers,
        }, static (r, _) => PlatformPlanner.Plan(r)),
        out plan).Where(f => plan is null || !PlatformPlanner.IsOfRibs(spec, f));

    public IEnumerable<Finding> Cut()
    {
        var findings = Take(SectionMaker.Make(plan!, project.Printer, project.Sections, watch.Memory, watch.Cancel), out sections);
        plan = sections?.Plan ?? plan;
        return findings;
    }

    /// <summary>The pieces alone, in place of <see cref="Cut"/>.</summary>
    public Outcome<IReadOnlyList<SectionPiece>> Shapes() => SectionMaker.Shapes(plan!, project.Printer, project.Sections, watch.Memory, watch.Cancel);

    private IReadOnlyList<PlayStep> LessPlay() => Remembered("sweeps with less play", request, static (r, _) => PlayCosts.Steps(r));

    private TAnswer Remembered<TInput, TAnswer>(string stage, TInput input, Func<TInput, CancellationToken, TAnswer> make)
        where TInput : class
        where TAnswer : class => watch.Memory.Of(stage, input, make, watch.Cancel);

    private sealed record SideInput(EnvelopeRequest Request, Side Side);

    private sealed record DoubtInput(EnvelopeRequest Request, IReadOnlyList<SurveyedTrack?> Surveys, SweptEnvelope Swept);

    private sealed record PlaceInput(EnvelopeRequest Request, SweptEnvelope Envelope, PlatformPlan Plan);

    private sealed record Places(IReadOnlyList<TightPlace> Tightest, IReadOnlyList<VehicleOutlinePose> Poses)
    {
        public static Places Of(PlaceInput input, CancellationToken cancel)
        {
            var tightest = TightPlaces.Of(input.Request, input.Envelope, input.Plan);
            cancel.ThrowIfCancellationRequested();
            return new(tightest, TightPlaces.Governing(input.Request, input.Envelope, input.Plan.Side, tightest));
        }
    }

    public PlatformDossier Dossier()
    {
        var places = Remembered("tight places", new PlaceInput(request, envelope!, plan!), Places.Of);
        return new(plan!, envelope!, budget, sections!)
        {
            Joints = joints,
            Tightest = places.Tightest,
            Poses = places.Poses,
            Ride = faced.Chart.Fillets.Count > 0 ? faced.Chart.Ride : null,
        };
    }

    private static IEnumerable<Finding> Take<T>(Outcome<T> outcome, out T? product)
        where T : class
    {
        product = outcome.Value;
        return outcome.Findings;
    }
}
