using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using PlatformForge.Geometry;

namespace PlatformForge.Outside.Tests;

/// <summary>
/// A face of a written platform as a stranger has it: its tables by name, the track it belongs to by the elements in the design copy, and the solids of its
/// sections on the layout, from their STL files and the motions in the manifest.
/// </summary>
internal sealed record WrittenFace(string Built, string Platform, string Stem, string Name, int Side, double From, double To, OwnTrack Chart,
    JsonElement Design, JsonElement Face, JsonElement Budget, IReadOnlyList<WrittenSolid> Solids)
{
    /// <summary>Faces of all platforms in a built folder.</summary>
    public static IEnumerable<WrittenFace> Of(string built)
    {
        var design = Written.Parse(File.ReadAllText(Path.Combine(built, "design.json")));
        var manifest = Written.Parse(File.ReadAllText(Path.Combine(built, "manifest.json"))).GetProperty("sections").EnumerateArray().ToArray();
        var solids = WrittenSolid.Of(built);
        foreach (var platform in design.GetProperty("platforms").EnumerateArray())
        {
            string name = platform.Text("name"), stl = Path.GetFileNameWithoutExtension(manifest.First(m => m.Text("platform") == name).Text("stl")),
                stem = stl[..stl.LastIndexOf('-')];
            WrittenSolid[] own = [.. solids.Where(s => s.Platform == name).Select(s => s.OnLayout())];
            bool hasTwo = platform.TryGetProperty("other_face", out var other) && other.ValueKind == JsonValueKind.Object;
            foreach (var face in hasTwo ? new[] { platform, other } : [platform])
            {
                var told = face.GetProperty("face");
                yield return new(
                    built, name, stem, hasTwo ? $"{stem}-{told.Text("track").Replace(' ', '-')}" : stem, told.Text("side") == "left" ? 1 : -1,
                    told.Number("from"), told.Number("to"),
                    new(face.GetProperty("chart")), design, told, face.GetProperty("budget"), own);
            }
        }
    }

    /// <summary>Elements and vehicles of its track.</summary>
    public JsonElement Track => Design.GetProperty("tracks").EnumerateArray().Single(t => t.Text("name") == Face.Text("track"));

    public List<Dictionary<string, string>> Table(string what) => Csv(Path.Combine(Built, "tables", $"{Name}-{what}.csv"));

    /// <summary>Where a reach from the track's middle lies on the layout.</summary>
    public Point2 OnLayout(double chainage, double reach) => Chart.At(chainage) is var (place, along) ? place + (along.Left * (Side * reach)) : default;

    /// <summary>A table's rows by its headings (RFC 4180).</summary>
    public static List<Dictionary<string, string>> Csv(string file)
    {
        string[][] rows = [.. File.ReadAllText(file).TrimEnd('\n').Split('\n')
            .Select(l => Regex.Matches(l, @"(?:^|,)(?:""((?:[^""]|"""")*)""|([^,""]*))")
                .Select(m => m.Groups[1].Success ? m.Groups[1].Value.Replace("\"\"", "\"", StringComparison.Ordinal) : m.Groups[2].Value).ToArray())];
        return [.. rows.Skip(1).Select(r => rows[0].Zip(r).ToDictionary(p => p.First, p => p.Second))];
    }

    public static double Number(Dictionary<string, string> row, string column) => double.Parse(row[column], CultureInfo.InvariantCulture);
}
