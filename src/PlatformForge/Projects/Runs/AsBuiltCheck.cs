using PlatformForge.Clearance;
using PlatformForge.Clearance.Requests;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Exports.Files;
using PlatformForge.Platforms.AsBuilt;
using PlatformForge.Projects.Reading;
using PlatformForge.Track.Surveys.Readings;
using PlatformForge.Track.Surveys.Tables;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Projects.Runs;

/// <summary>As-built feedback: gaps measured on the finished layout, from a table to what they leave for the vehicles.</summary>
public static class AsBuiltCheck
{
    private static readonly TableColumn Chainage = new("chainage", ["chainage", "at", "station", "distance", "along"]);
    private static readonly TableColumn Gap = new("gap", ["gap", "gaps", "reading", "measured"]);
    private static readonly TableColumn Vehicle = new("vehicle", ["vehicle", "coach", "stock"], Needed: false);
    private static readonly TableColumn Platform = new("platform", ["platform", "face"], Needed: false);

    /// <summary>The same for a file on disk.</summary>
    public static Outcome<IReadOnlyList<AsBuiltEdge>> OfFile(Dossier dossier, string path, IReadOnlyList<Vehicle>? extra = null)
    {
        var read = ProjectText.Read(path, path, what: FileWords.Measured);
        return read.Value is { } text ? Of(dossier, text, path, extra) : Outcome.Fault<IReadOnlyList<AsBuiltEdge>>(read.Findings);
    }

    /// <summary>
    /// Reads a table with the columns chainage and gap, and if wanted vehicle and platform, in any order, with units in brackets where they are not
    /// mm, and holds it against a design.
    /// </summary>
    /// <param name="dossier">The design.</param>
    /// <param name="text">The table's text.</param>
    /// <param name="file">Its name, for findings.</param>
    /// <param name="extra">Vehicles that the design did not know of: what is left for them is told too.</param>
    public static Outcome<IReadOnlyList<AsBuiltEdge>> Of(Dossier dossier, string text, string file, IReadOnlyList<Vehicle>? extra = null)
    {
        var findings = new List<Finding>();
        var source = new SurveySource(file, text, MeasuredLine.Centre);
        if (SurveyTable.Read(source, "", [Chainage, Gap], Vehicle, -1, findings) is not { } table || findings.Count > 0)
        {
            return Outcome.Fault<IReadOnlyList<AsBuiltEdge>>(findings);
        }

        if (table.Lines.Length == 0)
        {
            return Outcome.Fault<IReadOnlyList<AsBuiltEdge>>(Finding.Error("PF1030", "", "The file has a header and no readings.",
                "Write one row for each gap measured.") with
            { File = file, Line = 1, Column = 1 });
        }

        // Any fault of the rows has been told above.
        string[]? platforms = SurveyTable.Read(source, "", [Chainage, Gap], Platform, -1, [])!.Words;
        PlatformDossier[] faces = [.. dossier.Platforms.SelectMany(p => p.Faces)];
        var readings = faces.Select(_ => new List<EdgeReading>()).ToArray();
        for (int r = 0; r < table.Lines.Length; r++)
        {
            int at = FaceOf(faces, platforms?[r] ?? "", file, table.Lines[r], findings);
            if (table.Columns[1][r] < 0)
            {
                findings.Add(Finding.Error("PF1031", "", Invariant($"A gap of {table.Columns[1][r]:0.##} mm is below ")
                    + "0.", "Write 0 where the vehicle touches.") with
                { File = file, Line = table.Lines[r], Column = 1 });
            }
            else if (at >= 0)
            {
                string vehicle = table.Words?[r] ?? "";
                readings[at].Add(new(file, table.Lines[r], OnChart(faces[at], table.Columns[0][r]), table.Columns[1][r], vehicle.Length == 0 ? null : vehicle));
            }
        }

        return findings.Count > 0 ? Outcome.Fault<IReadOnlyList<AsBuiltEdge>>(findings) : Held(dossier, readings, extra ?? []);
    }

    private static Outcome<IReadOnlyList<AsBuiltEdge>> Held(Dossier dossier, List<EdgeReading>[] readings, IReadOnlyList<Vehicle> extra)
    {
        var edges = new List<Outcome<AsBuiltEdge>>();
        foreach (var (platform, own) in dossier.Platforms.SelectMany(p => p.Faces).Zip(readings).Where(p => p.Second.Count > 0))
        {
            var swept = WithExtra(dossier, platform, extra);
            edges.Add(swept.Value is { } envelope ? AsBuiltEdge.Of(platform.Plan, envelope, platform.Budget, dossier.Gauge, own)
                : Outcome.Fault<AsBuiltEdge>(swept.Findings));
        }

        Finding[] all = [.. edges.SelectMany(e => e.Findings)];
        return edges.Exists(e => e.Value is null) ? Outcome.Fault<IReadOnlyList<AsBuiltEdge>>(all) : new([.. edges.Select(e => e.Value!)], all);
    }

    // What is swept with the further vehicles on the faced track too.
    private static Outcome<SweptEnvelope> WithExtra(Dossier dossier, PlatformDossier platform, IReadOnlyList<Vehicle> extra)
    {
        if (extra.Count == 0)
        {
            return Outcome.Of(platform.Envelope);
        }

        var run = dossier.Tracks.First(t => string.Equals(t.Ride.Name, platform.Plan.Spec.Face.Track, StringComparison.Ordinal));
        var face = platform.Plan.Spec.Face;
        TrackRun[] runs = [run with { Vehicles = [.. run.Vehicles, .. extra] }, .. dossier.Tracks.Where(t => t != run)];

        // The design's own vehicles have track enough. What is not known of a further one is told where it is held against the sections (PF3026).
        return EnvelopeSweeper.Sweep(new(platform.Plan.Chart, face.From, face.To, runs) { Play = platform.Budget.Play, StraightBeyondEnds = true });
    }

    // A face is called by its platform, and of an island with its track, or by that alone.
    private static int FaceOf(PlatformDossier[] faces, string name, string file, int line, List<Finding> findings)
    {
        string[] names = [.. faces.Select(p => p.FaceName)];
        int island = Array.FindIndex(faces, f => f.Plan.Spec.IsIsland && string.Equals(f.Track, name, StringComparison.OrdinalIgnoreCase));
        if (island >= 0)
        {
            return island;
        }

        int at = name.Length == 0 && names.Length == 1 ? 0 : Array.FindIndex(names, n => string.Equals(n, name, StringComparison.OrdinalIgnoreCase));
        if (at < 0)
        {
            findings.Add(Finding.Error("PF1032", "", name.Length == 0 ? "The reading does not say at which platform it was taken."
                : $"There is no platform \"{name}\".", $"Give a column \"platform\" with one of: {string.Join(", ", names.Select(n => $"\"{n}\""))}.")
                with
            { File = file, Line = line, Column = 1 });
        }

        return at;
    }

    // People measure along the track as it lies; the plan counts along its smooth chart.
    private static double OnChart(PlatformDossier platform, double chainage) =>
        platform.Ride is { } ride && chainage >= 0 && chainage <= ride.Length ? platform.Plan.Chart.Locate(ride.At(chainage).Position).Chainage : chainage;
}
