using PlatformForge.Projects.Keys;
using PlatformForge.Projects.Reading;
using static System.FormattableString;

namespace PlatformForge.Projects;

/// <summary>Reads the files that surveyed tracks name.</summary>
internal static class SurveyFiles
{
    /// <summary>The tracks with their surveys' texts, which are added to what the run is made from.</summary>
    public static IReadOnlyList<TrackEntry> Load(ProjectDraft draft, BesideProject files, SourceMap places, KeyReading reading, List<string> texts)
    {
        var tracks = new List<TrackEntry>();
        foreach (var track in draft.Tracks)
        {
            if (track.Form is not { } form)
            {
                tracks.Add(track);
                continue;
            }

            var own = new List<string>();
            int number = 0;
            foreach (var source in form.Files)
            {
                string key = number == 0 ? $"{track.Key}.survey.file" : Invariant($"{track.Key}.survey.also[{number - 1}].file");
                var text = files.Read(source.File, key, places.Find(key), BesideProject.LargestSurvey);
                reading.Add(text.Findings);
                own.Add(text.Value ?? "");
                number++;
            }

            texts.AddRange(own);
            tracks.Add(track with { Survey = form.ToSpec(track, own, draft.Layout.Gauge) });
        }

        return tracks;
    }
}
