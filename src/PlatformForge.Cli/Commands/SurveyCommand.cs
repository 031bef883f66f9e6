using System.Text.Json;
using McMaster.Extensions.CommandLineUtils;
using PlatformForge.Cli.Answers;
using PlatformForge.Cli.Arguments;
using PlatformForge.Exports.Folders;
using PlatformForge.Exports.Surveys;
using PlatformForge.Projects;
using PlatformForge.Projects.Keys;
using PlatformForge.Projects.Runs;
using PlatformForge.Projects.Watches;
using PlatformForge.Track.Surveys;
using PlatformForge.Track.Surveys.Results;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Cli.Commands;

/// <summary>Shows what a survey says of the track, and how far it may be off.</summary>
internal static class SurveyCommand
{
    private const string Examples = """

        Examples:
          platformforge survey my-halt.toml                       every surveyed track: elements, misread figures, doubt in mm
          platformforge survey my-halt.toml --how-much            from where to where to measure, for the vehicles listed
          platformforge survey my-halt.toml --track up --toml     the recognised alignment, to paste into a project
          platformforge survey my-halt.toml -o survey-sheets      drawings and tables of it
          platformforge survey my-halt.toml --string-lining 200   versines over a chord of 200 mm and proposed slews

        How to measure, the columns of the files, units, drawings: docs/surveys.md
        """;

    /// <summary>Chord of the string-lining table when none is asked for, mm.</summary>
    private const double UsualChord = 200;

    private const double ShortestChord = 10, LongestChord = 10000;

    public static void Add(CommandLineApplication app, Session session) => app.Command("survey", command =>
    {
        command.Description = "Fit the measured tracks: what they are made of, which reading is odd, how far the answer may be off.";
        command.ExtendedHelpText = Examples;
        var project = new ProjectArguments(command);
        var track = command.Option("--track <name>", "One track only.", CommandOptionType.SingleValue);
        var toml = command.Option("--toml", "Only the recognised alignment, as text for a project file.", CommandOptionType.NoValue);
        var lining = command.Option<double>("--string-lining <chord>", "Chord in mm: add a table of versines and slews.", CommandOptionType.SingleValue)
            .Accepts(v => v.Range(ShortestChord, LongestChord));
        var howMuch = command.Option("--how-much",
            "Only from where to where the track has to be measured, for the platforms and vehicles of the project; no readings are needed yet.",
            CommandOptionType.NoValue);
        var folder = command.Option("-o|--output <folder>", "Write drawings and tables into a folder of its own.", CommandOptionType.SingleValue);
        command.OnExecute(() => session.Finish("survey", show => howMuch.HasValue() ? HowMuch(project) : Survey(
            project, track.Value(), toml.HasValue(), lining.HasValue() ? lining.ParsedValue : null, folder.Value(), session.Watch(show))));
    });

    private static CommandResult HowMuch(ProjectArguments arguments)
    {
        var read = arguments.Read(measured: false);
        if (read.Value is not { } project)
        {
            return new(read.Findings);
        }

        var (stretches, across) = (MeasuringStretch.Of(project), MeasuringStretch.Across(project));

        // Readings that are there already are held against it.
        var measured = arguments.Read().Value is { } whole && LaidTrack.LayAll(whole).Value is { } laid
            ? whole.Placed([.. MeasuredEnough.Check(whole, laid)]) : [];
        return new([.. read.Findings, .. measured])
        {
            Plain = o =>
            {
                foreach (string line in stretches.Select(StretchInWords).Concat(across.Select(AcrossInWords)))
                {
                    o.WriteLine(line);
                }
            },
            Json = j =>
            {
                WriteStretches(j, stretches);
                WriteAcross(j, across);
            },
        };
    }

    private static string StretchInWords(MeasuringStretch s)
    {
        string before = s.From < 0
            ? Invariant($" It begins before chainage 0: start {-s.From:0.#} mm or more farther back and count from there, ")
                + "which adds as much to every chainage of the project."
            : "";
        return Invariant($"For platform {s.Platform} measure track {s.Track} from chainage {s.From:0.#} to {s.To:0.#} mm or beyond: along the platform, ")
            + Invariant($"and {s.Beyond:0.#} mm past each end that is not at buffers, the length of {s.Vehicle}.{before} ")
            + "Two or three readings more at either end tell a misread last one.";
    }

    private static string AcrossInWords((string Platform, string Track, string First, string Vehicle, double Beyond) a) =>
        Invariant($"For the other face of platform {a.Platform} measure track {a.Track} wherever the platform lies between it and track {a.First}, ")
        + Invariant($"and {a.Beyond:0.#} mm past each end that is not at buffers, the length of {a.Vehicle}. ")
        + "The ends of that face lie across from those of the first; once both tracks are known, the report tells its chainages.";

    private static void WriteStretches(Utf8JsonWriter json, IReadOnlyList<MeasuringStretch> stretches)
    {
        json.WriteStartArray("stretches");
        foreach (var s in stretches)
        {
            json.WriteStartObject();
            json.WriteString("track", s.Track);
            json.WriteString("platform", s.Platform);
            JsonObject.Number(json, "from_mm", s.From);
            JsonObject.Number(json, "to_mm", s.To);
            json.WriteString("longest_vehicle", s.Vehicle);
            JsonObject.Number(json, "beyond_mm", s.Beyond);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    // Projects without islands have no such list.
    private static void WriteAcross(
        Utf8JsonWriter json, IReadOnlyList<(string Platform, string Track, string First, string Vehicle, double Beyond)> across)
    {
        if (across.Count == 0)
        {
            return;
        }

        json.WriteStartArray("across");
        foreach (var a in across)
        {
            json.WriteStartObject();
            json.WriteString("track", a.Track);
            json.WriteString("platform", a.Platform);
            json.WriteString("first_track", a.First);
            json.WriteString("longest_vehicle", a.Vehicle);
            JsonObject.Number(json, "beyond_mm", a.Beyond);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static CommandResult Survey(ProjectArguments arguments, string? name, bool toml, double? chord, string? folder, RunWatch watch)
    {
        var read = arguments.Read();
        if (read.Value is not { } project)
        {
            return arguments.Refused(read.Findings, watch);
        }

        watch.Begin("fitting the surveys");
        var asked = project with { Tracks = [.. project.Tracks.Where(t => t.Survey is not null && IsAskedFor(t, name))] };
        if (asked.Tracks.Count == 0)
        {
            return new([NoneSurveyed(name) with { File = arguments.File, Line = 1, Column = 1 }]);
        }

        var laid = LaidTrack.LayAll(project with { Tracks = SurveyDoubts.Needed(project, asked.Tracks) }, watch);
        var findings = project.Placed(laid.Findings);
        if (laid.Value is not { } tracks)
        {
            return new(findings) { TellsNotes = true };
        }

        LaidTrack[] fitted = [.. tracks.Where(t => asked.Tracks.Contains(t.Entry))];
        SurveyedTrack[] surveyed = [.. fitted.Select(t => SurveyAdvices.Beside(project, t, tracks, watch))];
        if (surveyed.Where(t => chord > StringLining.LongestChord(t)).MinBy(StringLining.LongestChord) is { } shortest)
        {
            return new([.. findings, TooLong(shortest, chord!.Value)]) { TellsNotes = true };
        }

        var written = folder is null ? null : watch.Gate.Through(() => Write(project, surveyed, chord, folder, watch.Cancel));
        return Told(surveyed, toml, chord, written,
            [.. read.Findings, .. project.Placed([.. MeasuredEnough.Check(project, fitted)]), .. findings, .. written?.Findings ?? []]);
    }

    private static bool IsAskedFor(TrackEntry track, string? name) => name is null || string.Equals(track.Name, name, StringComparison.OrdinalIgnoreCase);

    private static Finding NoneSurveyed(string? name) => Finding.Error(
        "PF1022",
        "track",
        name is null ? "No track of this project is surveyed." : $"There is no surveyed track \"{name}\".",
        "A track is surveyed when it has a [track.survey] in place of an alignment.");

    // What is shown of the tracks, and where the sheets went if they were wanted.
    private static CommandResult Told(SurveyedTrack[] surveyed, bool toml, double? chord, Outcome<FolderReport>? written, Finding[] findings) => new(findings)
    {
        IsTheText = toml,
        InPlace = written?.Value is { } inPlace ? $"The sheets are in place all the same, in {inPlace.Folder}." : null,
        TellsNotes = true,
        Plain = o =>
        {
            Array.ForEach(surveyed, t => SurveyText.Write(o, t, toml, chord));
            if (!toml && written?.Value is { } report)
            {
                o.WriteLine(Invariant($"Wrote {report.Written.Count} files into {report.Folder}; {report.Unchanged.Count} were unchanged."));
            }
        },
        Json = j =>
        {
            j.WriteStartArray("tracks");
            Array.ForEach(surveyed, t => SurveyJson.Write(j, t, chord));
            j.WriteEndArray();
        },
    };

    private static Finding TooLong(SurveyedTrack track, double chord) => Finding.Error(
        "PF1023",
        "--string-lining",
        Invariant($"A chord of {chord:0.##} mm is longer than half of track {track.Line.Name}, which is {track.Line.Length:0} mm long."),
        StringLining.LongestChord(track) < ShortestChord ? "The track is too short for string lining."
            : Invariant($"Give at most {StringLining.LongestChord(track):0} mm."));

    private static Outcome<FolderReport> Write(ProjectSpec project, SurveyedTrack[] tracks, double? chord, string folder, CancellationToken cancel) =>
        OutputFolder.Write(
        folder,
        new(project.Layout.Name, ProgramVersion.Number, project.InputHash, [], []),
        [.. tracks.SelectMany(t => SurveyTables.Files(t, chord ?? UsualChord, project.Layout.Name, "PlatformForge " + ProgramVersion.Number))],
        cancel: cancel);
}
