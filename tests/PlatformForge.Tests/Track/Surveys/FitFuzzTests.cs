using System.Globalization;
using System.Text;
using PlatformForge.Tests.Projects.Remedies;
using PlatformForge.Track.Surveys;
using PlatformForge.Track.Surveys.Readings;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Track.Surveys;

/// <summary>Readings that no track could give still end in a line or in a clean fault.</summary>
public class FitFuzzTests
{
    private static void Survives(SurveySpec spec)
    {
        var outcome = TrackSurveyor.Survey(spec);
        Assert.Empty(outcome.Findings.SelectMany(f => Sentences.Complaints(f, string.Concat(spec.Sources.Select(s => s.Text)))));
        if (outcome.Value is { } track)
        {
            Assert.True(double.IsFinite(track.Line.Length) && track.Line.Length > 0);
            Assert.All(track.Movement.Likely, w => Assert.True(double.IsFinite(w) && w > 0));
            Assert.All(track.Residuals, r => Assert.True(double.IsFinite(r.Miss)));
        }
        else
        {
            Assert.Contains(outcome.Findings, f => f.Severity == Severity.Error);
        }
    }

    private static string Table(string heads, IEnumerable<(double A, double B)> rows)
    {
        var text = new StringBuilder(heads).Append('\n');
        foreach (var (a, b) in rows)
        {
            text.Append(CultureInfo.InvariantCulture, $"{a:R};{b:R}\n");
        }

        return text.ToString();
    }

    public static TheoryData<string> Shapes() => ["noise", "tiny", "huge", "circle", "spiral", "zigzag", "cluster", "steep", "step", "five"];

    [Theory]
    [MemberData(nameof(Shapes))]
    public void Any_row_of_points_ends_in_a_line_or_a_fault(string shape)
    {
        var random = new Random(shape.Length);
        double R() => random.NextDouble() - 0.5;
        int n = shape == "five" ? 5 : 18;
        var points = Enumerable.Range(0, n).Select(i => shape switch
        {
            "noise" => (40.0 * i, 60 * R()),
            "tiny" => (1e-7 * i, 1e-8 * R()),
            "huge" => (50_000.0 * i, 9000 * R()),
            "circle" => (300 * Math.Cos(0.36 * i), 300 * Math.Sin(0.36 * i)),
            "spiral" => ((100 + (20 * i)) * Math.Cos(0.5 * i), (100 + (20 * i)) * Math.Sin(0.5 * i)),
            "zigzag" => (40.0 * i, i % 2 == 0 ? 20 : -20),
            "cluster" => (i < 9 ? 0.01 * i : 1000 + (0.01 * i), R() / 1000),
            "steep" => (0.1 * i, 40.0 * i),
            "step" => (40.0 * i, i < 9 ? 0 : 25),
            _ => (100.0 * i, i * i),
        });
        Survives(Samples.Points(Table("x;y", points)));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void Any_offsets_and_versines_end_in_a_line_or_a_fault(int seed)
    {
        var random = new Random(seed);
        Survives(Samples.Offsets(Table("distance;offset", Enumerable.Range(0, 16).Select(i => (i * 80.0, 200 * random.NextDouble())))));
        string versines = Table("station;versine", Enumerable.Range(0, 16).Select(i => (100.0 * (i + 1), 40 * (random.NextDouble() - 0.5))));
        Survives(Samples.Versines(versines));
        Survives(Samples.Versines(versines, new ClosingChord(100, 1500, 900, 100, 0.5)));
        Survives(Samples.Versines(Table("station;versine", Enumerable.Range(0, 8).Select(i => (100.0 * (i + 1), 95.0)))));
    }

    [Fact]
    public void Readings_all_exact_on_a_line_are_no_trouble() =>
        Survives(Samples.Points(Table("x;y", Enumerable.Range(0, 12).Select(i => (100.0 * i, 0.0)))));
}
