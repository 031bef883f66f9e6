using PlatformForge.Clearance;
using PlatformForge.Clearance.Requests;
using PlatformForge.Clearance.Sweeping;
using PlatformForge.Platforms.Islands;
using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Specs;
using PlatformForge.Track;
using PlatformForge.Track.Charts;
using PlatformForge.Track.Surveys;
using PlatformForge.Track.Surveys.Admissible;
using PlatformForge.Track.Surveys.Readings;
using PlatformForge.Track.Surveys.Results;

namespace PlatformForge.Projects.Runs;

/// <summary>What the reading error of a survey means for the reach of vehicles beside a project's platforms.</summary>
public static class SurveyDoubts
{
    /// <summary>The doubts of all parts that a request sweeps over surveyed tracks.</summary>
    /// <param name="request">What is swept.</param>
    /// <param name="surveys">The surveys of its runs, in their order; null where a track was stated.</param>
    internal static IReadOnlyList<PartDoubt> Of(EnvelopeRequest request, IReadOnlyList<SurveyedTrack?> surveys) =>
        [.. surveys.SelectMany((s, run) => s is { } survey && request.Runs[run].Vehicles.Count > 0 ? SurveyDoubt.Of(request, run, Beside(request, run, survey))
            : [])];

    /// <summary>The same if it was said how the tracks were laid that nobody says it of; null where that cannot be.</summary>
    /// <param name="request">What is swept.</param>
    /// <param name="surveys">The surveys of its runs, in their order; null where a track was stated.</param>
    /// <param name="laid">What a survey leaves uncertain of such a track if it was laid so; null where that cannot be.</param>
    internal static IReadOnlyList<PartDoubt>? If(EnvelopeRequest request, IReadOnlyList<SurveyedTrack?> surveys, Func<SurveyedTrack, LineDoubt?> laid)
    {
        var found = new List<PartDoubt>();
        for (int run = 0; run < surveys.Count; run++)
        {
            if (surveys[run] is not { } survey || request.Runs[run].Vehicles.Count == 0)
            {
                continue;
            }

            if ((survey.Laying.As == LaidAs.Unknown ? laid(survey) : Beside(request, run, survey)) is not { } line)
            {
                return null;
            }

            found.AddRange(SurveyDoubt.Of(request, run, line));
        }

        return found;
    }

    /// <summary>The tracks that have to be laid to tell of some: these, and those whose faces say where an island's second face on one of these lies.</summary>
    public static IReadOnlyList<Keys.TrackEntry> Needed(ProjectSpec project, IReadOnlyList<Keys.TrackEntry> asked) =>
        [.. project.Tracks.Where(t => asked.Contains(t) || project.Platforms.Any(p => p.Face.Track == t.Name && asked.Any(a => a.Name == p.OtherFace?.Track)))];

    /// <summary>The surveyed track with a doubt for every platform that faces it, by whichever of its faces.</summary>
    /// <param name="project">The project.</param>
    /// <param name="track">The track.</param>
    /// <param name="tracks">All that are laid, see <see cref="Needed"/>.</param>
    /// <param name="advised">Whether it is told what another reading would do: the survey is fitted many times for that.</param>
    public static SurveyedTrack With(ProjectSpec project, LaidTrack track, IReadOnlyList<LaidTrack> tracks, bool advised = true)
    {
        var survey = track.Survey!;

        // The same beside the same face with another survey of the track: what its readings would come to.
        double? Tried(PlatformSpec platform, int face, SurveyedTrack other)
        {
            var laid = track with { Chart = KinkRounder.Chart(other.Line), Survey = other };
            return Faces(project, laid, [.. tracks.Select(t => ReferenceEquals(t, track) ? laid : t)], platform).ElementAtOrDefault(face) is { } spec
                ? DoubtCase.Of(project, laid, other, spec)?.Charged : null;
        }

        var doubts = project.Platforms.SelectMany(p => Faces(project, track, tracks, p)
            .Select((f, i) => Beside(project, track, survey, f, advised ? other => Tried(p, i, other) : null))).OfType<ReachDoubt>();
        return survey with { Doubts = [.. doubts.OrderByDescending(d => d.Most)] };
    }

    // The platform by each of its faces on the track, its ends along that track's chart; a second face has them from across the first.
    private static IEnumerable<PlatformSpec> Faces(ProjectSpec project, LaidTrack track, IReadOnlyList<LaidTrack> tracks, PlatformSpec platform)
    {
        bool Is(FaceSpec? face, LaidTrack of) => string.Equals(face?.Track, of.Entry.Name, StringComparison.Ordinal);
        PlatformSpec Along(LaidTrack own) =>
            platform with { Face = platform.Face with { From = own.Chart.FromRide(platform.Face.From), To = own.Chart.FromRide(platform.Face.To) } };
        if (Is(platform.Face, track))
        {
            yield return Along(track);
        }

        if (Is(platform.OtherFace, track) && tracks.FirstOrDefault(t => Is(platform.Face, t)) is { } first)
        {
            PlatformSite Over(LaidTrack of) => new(project.Layout.Scale, of.RailTopOf(project));
            if (IslandTracks.Across(Along(first), first.Chart.Line, track.Chart.Line, Over(first), Over(track)).Value is { } across)
            {
                yield return across.Second;
            }
        }
    }

    private static ReachDoubt? Beside(ProjectSpec project, LaidTrack track, SurveyedTrack survey, PlatformSpec platform, Func<SurveyedTrack, double?>? tried)
    {
        if (DoubtCase.Of(project, track, survey, platform) is not { } own)
        {
            return null;
        }

        var side = platform.Face.Side;
        var worst = own.Found.MaxBy(own.Most)!;
        var along = worst.On(side);
        int at = Enumerable.Range(0, along.Count).MaxBy(i => along[i].Most);
        double chainage = worst.From + (at * worst.Spacing), charged = own.Charged;
        double? If(LineDoubt? laid) => laid is null ? null : own.ChargedFor(laid);
        return new(platform.Name, worst.Vehicle.Name, own.Most(worst), track.Chart.ToRide(chainage), Median(along.Select(r => Math.Max(0, r.Most))),
            Median(along.Select(r => r.Half)))
        {
            Charged = charged,
            Line = charged / project.VehiclesOn(track.Entry).Max(v => Math.Max(1, v.Length / v.PivotCentres)),
            IfFlexible = If(survey.DoubtIfFlexible),
            IfSectional = If(survey.DoubtIfSectional),
            Advice = tried is null ? null : Advise(own, survey, tried),
        };
    }

    // Of flexible lines the set itself tells which reading helps, and what it leaves is tried; otherwise all of it is tried.
    private static ReadingAdvice? Advise(DoubtCase own, SurveyedTrack survey, Func<SurveyedTrack, double?> tried)
    {
        if (own.Swept is not { } swept || Governing(own.Request, swept, swept.With(own.Found), own.Side, own.Line) is not { } measure)
        {
            return null;
        }

        var trials = new ReadingTrials(survey, measure, tried, own.Charged);
        return own.Line is not AdmissibleDoubt lines ? trials.Advise()
            : lines.Advise(measure, survey.Outliers.Concat(survey.Doubted), own.ChargedFor, own.Charged) is { } advice ? trials.Hold(advice)
            : null;
    }

    /// <summary>What a survey leaves uncertain beside one face of a platform.</summary>
    private sealed record DoubtCase(EnvelopeRequest Request, LineDoubt Line, IReadOnlyList<PartDoubt> Found, SweptEnvelope? Swept, Side Side)
    {
        /// <summary>Null where nothing runs beside it.</summary>
        public static DoubtCase? Of(ProjectSpec project, LaidTrack track, SurveyedTrack survey, PlatformSpec platform)
        {
            double from = platform.Face.From, to = platform.Face.To;
            if (project.VehiclesOn(track.Entry).Count == 0 || !(to > from))
            {
                return null;
            }

            var request = new EnvelopeRequest(track.Chart.Line, from, to, [track.Run(project)])
            {
                Play =
                project.Clearance.BudgetWith(0, project.Layout.Gauge, platform.Height, 0).Play
            };
            var line = Beside(request, 0, survey);
            return new(request, line, SurveyDoubt.Of(request, 0, line), EnvelopeSweeper.Sweep(request).Value, platform.Face.Side);
        }

        public double Charged => ChargedOf(Found);

        public double ChargedFor(LineDoubt line) => ChargedOf(SurveyDoubt.Of(Request, 0, line));

        public double Most(PartDoubt doubt) => Math.Max(0, doubt.On(Side).Max(r => r.Most));

        private double ChargedOf(IReadOnlyList<PartDoubt> of) => Swept is null ? of.Max(Most) : Math.Max(0, Swept.With(of).BeyondOf(Swept, Side).Most);
    }

    // What the figure that is charged hangs on: the part that reaches farthest where the farthest reach of all grows most.
    private static LineMeasure? Governing(EnvelopeRequest request, SweptEnvelope swept, SweptEnvelope widened, Side side, LineDoubt line)
    {
        ReachLine before = swept.Composite(side), after = widened.Composite(side);
        int at = Enumerable.Range(0, after.Count).Where(i => double.IsFinite(before.Reach[i]) && after.Governing[i] >= 0).DefaultIfEmpty(-1)
            .MaxBy(i => i < 0 ? 0 : after.Reach[i] - before.Reach[i]);
        return at < 0 ? null : widened.Parts[after.Governing[at]] is var part
            ? SurveyDoubt.Widest(request, 0, part.Vehicle, part.Part, side, after.ChainageOf(at), line) : null;
    }

    // Vehicles beside the stations stand no farther from them than their length.
    private static LineDoubt Beside(EnvelopeRequest request, int run, SurveyedTrack survey)
    {
        var ride = request.Runs[run].Ride;
        double half = request.Runs[run].Vehicles.Max(v => v.Length) / 2;
        double one = ride.Locate(request.Chart.PointAt(request.From)).Chainage, other = ride.Locate(request.Chart.PointAt(request.To)).Chainage;
        return survey.DoubtBeside(Math.Min(one, other) - half, Math.Max(one, other) + half);
    }

    private static double Median(IEnumerable<double> figures)
    {
        double[] sorted = [.. figures.Order()];
        return sorted[sorted.Length / 2];
    }
}
