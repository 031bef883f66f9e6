using PlatformForge.Projects.Keys;
using PlatformForge.Projects.Keys.Grammar;
using PlatformForge.Projects.Reading;
using PlatformForge.Units;
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
                reading.Add(text.Findings.Select(f => f with { Remedy = Remedy(f, source.File) }));
                own.Add(text.Value ?? "");
                number++;
            }

            texts.AddRange(own);
            tracks.Add(track with { Survey = form.ToSpec(track, own, draft.Layout.Gauge, draft.Layout.Scale) });
        }

        return tracks;
    }

    // The reader of texts speaks of project files; these are files of readings.
    private static string Remedy(Finding finding, string file) => finding.Code switch
    {
        "PF1001" => "Check the name; it is looked for beside the project file, with large and small letters told apart.",
        "PF1002" => $"Name a file in it, such as \"{file}/up.csv\".",
        "PF1003" => Invariant($"Give {BesideProject.LargestSurvey >> 20} MB or less: a hundred thousand readings take some 2 MB."),
        "PF1040" => "Name a plain file with readings or a drawing in it.",
        "PF1004" => IsDrawing(file) ? "Save the plan as plain SVG or as an ASCII DXF, in UTF-8."
            : "Save the readings from your spreadsheet as CSV text in UTF-8, not as a workbook.",
        _ => finding.Remedy,
    };

    private static bool IsDrawing(string file) => file.EndsWith(".svg", StringComparison.OrdinalIgnoreCase)
        || file.EndsWith(".dxf", StringComparison.OrdinalIgnoreCase);
}
