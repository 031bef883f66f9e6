using PlatformForge.Projects.Keys;
using PlatformForge.Track.Surveys;

namespace PlatformForge.Projects.Runs;

/// <summary>What the reading error of a survey means for the reach of vehicles beside a project's platforms.</summary>
public static class SurveyDoubts
{
    /// <summary>The surveyed track with a doubt for every platform that faces it.</summary>
    public static SurveyedTrack With(ProjectSpec project, TrackEntry entry, SurveyedTrack survey)
    {
        var doubts = new List<ReachDoubt>();
        foreach (var face in project.Platforms.Where(p => string.Equals(p.Face.Track, entry.Name, StringComparison.Ordinal)))
        {
            var worst = project.VehiclesOn(entry)
                .Select(v => new ReachDoubt(face.Name, v.Name, survey.Movement.Reach(face.Face.From, face.Face.To, v.PivotCentres, v.Length), survey.Movement.WorstReach(face.Face.From, face.Face.To, v.PivotCentres, v.Length)))
                .MaxBy(d => d.Likely);
            if (worst is not null)
            {
                double half = project.VehiclesOn(entry).Max(v => v.Length) / 2;
                doubts.Add(worst with { Line = survey.Movement.Most(face.Face.From - half, face.Face.To + half) });
            }
        }

        return survey with { Doubts = [.. doubts.OrderByDescending(d => d.Likely)] };
    }
}
