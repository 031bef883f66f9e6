using PlatformForge.Geometry;
using PlatformForge.Track.Surveys;
using PlatformForge.Track.Surveys.Readings;

namespace PlatformForge.Outside.Tests;

/// <summary>
/// A plan written by a DXF writer of others (@tarikjabiri/dxf, npm) is read here and by a parser of others (dxf-parser, npm):
/// every place we take lies on what they read, from end to end.
/// </summary>
public sealed class DxfTests : IDisposable
{
    private const double SamePlace = 0.05; // mm: half a step of the other reader's curves is less
    private const double Millimetres = 4; // $INSUNITS

    private readonly string folder = Directory.CreateTempSubdirectory("platformforge-dxf-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public void A_plan_written_by_others_is_read_as_others_read_it()
    {
        string file = Path.Combine(folder, "plan.dxf");
        Tool.Node("write-dxf.mjs", file);
        var layers = Written.Parse(Tool.Node("read-dxf.mjs", file)).ToDictionary(l => l.Text("layer"));
        Assert.Equal(["arc", "bulge", "chain", "line", "polyline", "spline"], layers.Keys.Order(StringComparer.Ordinal));
        Assert.Equal(["ARC", "LINE", "LWPOLYLINE", "POLYLINE", "SPLINE"],
            layers.Values.SelectMany(l => l.GetProperty("kinds").EnumerateArray().Select(k => k.GetString()!)).Distinct().Order(StringComparer.Ordinal));
        string text = File.ReadAllText(file);
        foreach (var (name, layer) in layers)
        {
            Assert.Equal(Millimetres, layer.Number("units"));
            Point2[] theirs = [.. layer.Numbers("x").Zip(layer.Numbers("y"), (x, y) => new Point2(x, y))];
            Point2[] ours = Places(text, name);
            Assert.True(ours.Length >= 5, name);
            Assert.All(ours, p => Assert.True(theirs.Min(q => (q - p).Length) < SamePlace + Step(theirs), $"{name}: {p}"));
            Assert.Contains(theirs, q => (q - ours[0]).Length < SamePlace);
            Assert.Contains(theirs, q => (q - ours[^1]).Length < SamePlace);
            Assert.Equal(Length(theirs), Length(ours), 1e-3 * Length(theirs));
        }
    }

    [Fact]
    public void What_is_no_line_is_listed()
    {
        string file = Path.Combine(folder, "plan.dxf");
        Tool.Node("write-dxf.mjs", file);
        var read = SurveyReader.Read(Spec(File.ReadAllText(file), "arc"));
        Assert.Contains(read.Findings, f => f.Code == "PF2115" && f.Message.Contains("1 TEXT", StringComparison.Ordinal));
    }

    private static DrawingSpec Spec(string text, string layer) =>
        new("t", "k", [new SurveySource("plan.dxf", text, MeasuredLine.Centre, null)], 0.1, DrawingFormat.Dxf, layer);

    private static Point2[] Places(string text, string layer)
    {
        var read = SurveyReader.Read(Spec(text, layer));
        Assert.True(read.Succeeded, $"{layer}: {string.Join('\n', read.Findings)}");
        return [.. ((PlaceSurvey)read.Value!).Runs[0].Select(r => r.Place)];
    }

    // Between two of their points a place of ours may lie half a step off both.
    private static double Step(Point2[] line) => line.Zip(line.Skip(1), (a, b) => (b - a).Length).Where(d => d < 5).Max() / 2;

    private static double Length(Point2[] line) => line.Zip(line.Skip(1), (a, b) => (b - a).Length).Sum();
}
