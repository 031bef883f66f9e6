using PlatformForge.Clearance;
using PlatformForge.Clearance.Requests;
using PlatformForge.Clearance.Sets;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Exports.Files;
using PlatformForge.Platforms;
using PlatformForge.Platforms.Accounts;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Specs;
using PlatformForge.Projects.Watches;
using PlatformForge.Sections.Forms;
using PlatformForge.Track;
using PlatformForge.Track.Surveys.Fitting.Lines;
using PlatformForge.Track.Surveys.Results;
using PlatformForge.Units;

namespace PlatformForge.Projects.Runs;

/// <summary>One face of a platform on its way through the rooms: its track, what is swept along it, what is kept from it.</summary>
internal sealed class FaceJob
{
    private readonly ProjectSpec project;
    private readonly PlatformSite site;
    private readonly LaidTrack faced;
    private readonly EnvelopeRequest request;
    private readonly IReadOnlyList<LaidTrack> runs;
    private readonly (double From, double To) asked;
    private readonly RunWatch watch;
    private ClearanceBudget budget;
    private SweptEnvelope? envelope, doubted;
    private IReadOnlyList<JointOpening> joints = [];

    /// <param name="project">The project.</param>
    /// <param name="site">Scale and rail top.</param>
    /// <param name="tracks">All tracks as laid.</param>
    /// <param name="spec">The platform with this face first, its chainages along the track's chart.</param>
    /// <param name="watch">Whose memory is asked first, and who stops it.</param>
    /// <param name="asked">The face's ends along the track as it is ridden, mm.</param>
    public FaceJob(
        ProjectSpec project, PlatformSite site, IReadOnlyList<LaidTrack> tracks,
        PlatformSpec spec, RunWatch watch, (double From, double To) asked)
    {
        (this.project, this.site, this.watch, this.asked, Spec) = (project, site, watch, asked, spec);
        faced = Faced(tracks, spec.Face);
        double residual = faced.Survey is not null ? 0 : project.VehiclesOn(faced.Entry)
            .Select(v => SurveyMovement.ReachOf(faced.Entry.SurveyDoubt, v.PivotCentres, v.Length)).DefaultIfEmpty(0).Max();
        double tallest = tracks.SelectMany(t => project.VehiclesOn(t.Entry).SelectMany(v => v.Parts).Select(p => p.ZHigh + Above(t))).DefaultIfEmpty(0).Max();
        var clearance = spec.Face.Running is { } running ? project.Clearance with { Running = running } : project.Clearance;
        budget = clearance.BudgetWith(residual, project.Layout.Gauge, spec.Height, tallest, faced.Survey is not null);
        runs = [faced, .. tracks.Where(t => t != faced)];
        request = new(faced.Chart.Line, spec.Face.From, spec.Face.To, [.. runs.Select(t => t.Run(project) with { Above = Above(t) })])
        {
            Beyond = HeldHeights.Beyond(budget),
            Play = budget.Play,
            Edge = HeldHeights.Edge(spec),
            Key = spec.Key,
        };

        double Above(LaidTrack track) => track.RailTopOf(project) - site.RailTop;
    }

    /// <summary>The platform with this face first.</summary>
    public PlatformSpec Spec { get; }

    public static LaidTrack Faced(IReadOnlyList<LaidTrack> tracks, FaceSpec face) =>
        tracks.First(t => string.Equals(t.Entry.Name, face.Track, StringComparison.Ordinal));

    /// <summary>What can be told before anything is swept.</summary>
    public IEnumerable<Finding> Check() => PlatformPlanner.Check(
        Spec, site, faced.Chart.Line, project.VehiclesOn(faced.Entry), faced.Entry.StartsAtBuffers, faced.Entry.EndsAtBuffers)
            .Where(f => f.Severity == Severity.Error);

    /// <summary>Vehicles that cannot run the curves beside the face, for designs that stop before they are swept.</summary>
    public IEnumerable<Finding> Fit() =>
        VehicleFit.OnTrack(request.Runs[0], Math.Clamp(asked.From, 0, request.Runs[0].Ride.Length), Math.Clamp(asked.To, 0, request.Runs[0].Ride.Length));

    public IEnumerable<Finding> Sweep()
    {
        var outcome = Remembered("sweep", request, static (r, _) => EnvelopeSweeper.Sweep(r));
        envelope = outcome.Value;
        joints = envelope is null ? []
            : Remembered("joints of sets", new SideInput(request, Spec.Face.Side), static (i, _) => JointSurvey.Over(i.Request, i.Side));
        if (envelope is not null)
        {
            Doubt(envelope);
        }

        return [.. outcome.Findings, .. JointSurvey.Findings(request, joints)];
    }

    // What surveys leave uncertain is charged where it arises: by part and place, unless the project states a figure of its own.
    private void Doubt(SweptEnvelope swept)
    {
        doubted = swept;
        if (project.Clearance.Survey is null && runs.Any(r => r.Survey is not null))
        {
            var input = new DoubtInput(request, [.. runs.Select(r => r.Survey)], swept);
            doubted = Remembered("doubt", input, static (i, _) => i.Swept.With(SurveyDoubts.Of(i.Request, i.Surveys)));
            string admitted = string.Join("; ", runs.Select(r => r.Survey?.Admitted).OfType<string>().Distinct());
            budget = budget.WithSurveyed(Beside(doubted, swept), admitted + SaidOtherwise(input));
        }
    }

    // Along the platform itself: what is swept goes on beyond its ends.
    private (double Least, double Most) Beside(SweptEnvelope of, SweptEnvelope bare) =>
        of.Within(request.From, request.To).BeyondOf(bare.Within(request.From, request.To), Spec.Face.Side);

    // What saying how the track was laid would make of it, where nobody has.
    private string SaidOtherwise(DoubtInput input)
    {
        if (!input.Surveys.Any(s => s is { Laying.As: PlatformForge.Track.Surveys.Readings.LaidAs.Unknown, DoubtIfSectional: not null }))
        {
            return "";
        }

        var otherwise = Remembered("doubt if laid otherwise", input, static (i, _) => new Otherwise(
            SurveyDoubts.If(i.Request, i.Surveys, s => s.DoubtIfFlexible) is { } f ? i.Swept.With(f) : null,
            SurveyDoubts.If(i.Request, i.Surveys, s => s.DoubtIfSectional) is { } p ? i.Swept.With(p) : null));
        string Made(SweptEnvelope? of) => of is null ? "be contradicted" : FormattableString.Invariant($"make it {Beside(of, input.Swept).Most:0.00}");
        return $"; how the track was laid is not said: laid = \"flexible\" would {Made(otherwise.Flexible)}, laid = \"sectional\" "
            + $"would {Made(otherwise.Sectional)}";
    }

    private sealed record Otherwise(SweptEnvelope? Flexible, SweptEnvelope? Sectional);

    /// <summary>What the platform is planned from, as far as this face goes.</summary>
    public PlatformRequest Request() => new(Spec, site, faced.Chart.Line, doubted!, budget)
    {
        Sills = Remembered("sills", new SideInput(request, Spec.Face.Side), static (i, _) => SillSurvey.Over(i.Request, i.Side)),
        LessPlay = ReferenceEquals(doubted, envelope) ? LessPlay() : [.. LessPlay(), new(ClearanceBudget.SurveyResidual, envelope!)],
        Faced = request.Runs[0],
        StartsAtBuffers = faced.Entry.StartsAtBuffers,
        EndsAtBuffers = faced.Entry.EndsAtBuffers,
    };

    /// <summary>Everything known of the platform as this face sees it.</summary>
    /// <param name="plan">The plan on this face's chart.</param>
    /// <param name="sections">What is printed, its chainages along this face.</param>
    public PlatformDossier Dossier(PlatformPlan plan, SectionSet sections)
    {
        var beside = envelope!.Within(request.From, request.To);
        var places = Remembered("tight places",
            new PlaceInput(request, beside, ReferenceEquals(doubted, envelope) ? null : doubted!.Within(request.From, request.To), plan), Places.Of);
        return new(plan, beside, budget, sections)
        {
            Joints = joints,
            Tightest = places.Tightest,
            Poses = places.Poses,
            Ride = faced.Chart.Fillets.Count > 0 ? faced.Chart.Ride : null,
        };
    }

    private IReadOnlyList<PlayStep> LessPlay() => Remembered("sweeps with less play", request, static (r, _) => PlayCosts.Steps(r));

    private TAnswer Remembered<TInput, TAnswer>(string stage, TInput input, Func<TInput, CancellationToken, TAnswer> make)
        where TInput : class
        where TAnswer : class => watch.Memory.Of(stage, input, make, watch.Cancel);

    private sealed record SideInput(EnvelopeRequest Request, Side Side);

    private sealed record DoubtInput(EnvelopeRequest Request, IReadOnlyList<SurveyedTrack?> Surveys, SweptEnvelope Swept);

    private sealed record PlaceInput(EnvelopeRequest Request, SweptEnvelope Envelope, SweptEnvelope? Doubted, PlatformPlan Plan);

    private sealed record Places(IReadOnlyList<TightPlace> Tightest, IReadOnlyList<VehicleOutlinePose> Poses)
    {
        public static Places Of(PlaceInput input, CancellationToken cancel)
        {
            var tightest = TightPlaces.Of(input.Request, input.Envelope, input.Doubted, input.Plan);
            cancel.ThrowIfCancellationRequested();
            return new(tightest, TightPlaces.Governing(input.Request, input.Envelope, input.Plan.Side, tightest));
        }
    }
}
