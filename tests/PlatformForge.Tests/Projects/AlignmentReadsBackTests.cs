using PlatformForge.Geometry;
using PlatformForge.Tests.Track.Surveys.Admissible;
using PlatformForge.Track;
using PlatformForge.Track.Surveys;
using Xunit;

namespace PlatformForge.Tests.Projects;

/// <summary>What a survey writes as an alignment is what a project file may say.</summary>
public class AlignmentReadsBackTests
{
    /// <summary>The text of every simulated survey is read without a fault, as the same elements.</summary>
    [Fact]
    public void The_text_of_a_survey_is_read_again()
    {
        int recognised = 0;
        int surveys = Simulations.Of(9, 60);
        Parallel.For(0, surveys, k =>
        {
            var line = MadeUpSurvey.Track(new Random(7300 + k), kinkDegrees: k % 4 == 0 ? 2 : 0);
            var track = TrackSurveyor.Tried(MadeUpSurvey.String(line, new Random(k), 40 + (10 * (k % 3)), 0.25, MadeUpSurvey.Flexible))!;
            if (track.Alignment is not null)
            {
                Interlocked.Increment(ref recognised);
                IsReadBack(AlignmentText.Toml(track), track.Alignment);
            }
        });
        Assert.True(2 * recognised > surveys, $"{recognised}");
    }

    /// <summary>So is that of elements whose curvature is what rounding leaves of nil, a little, or just enough to be told; a radius that is told is no
    /// longer, and a kink no less, than a file may state.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(2.2e-19)]
    [InlineData(-3e-9)]
    [InlineData(4e-7)]
    [InlineData(-9.999e-7)]
    [InlineData(1e-6)]
    [InlineData(-1.0001e-6)]
    [InlineData(1 / 600.0)]
    public void Curvature_of_next_to_nothing_is_straight(double nearly)
    {
        (double Start, double End, double Turn)[] bends = [(nearly, nearly, 0), (nearly, -1 / 700.0, 2e-7), (-1 / 700.0, -1 / 700.0, 0),
            (-1 / 700.0, nearly, 0), (nearly, nearly, 1e-4), (nearly, nearly, 1e-3), (nearly, 0, 0)];
        var elements = new List<CentrelineElement>();
        var (at, heading) = (new Point2(5, 6), 0.2);
        foreach (var (start, end, turn) in bends)
        {
            var one = new CentrelineElement(at, heading + turn, 200, start, end);
            elements.Add(one);
            (at, heading) = (new Centreline("one", [one]).At(200).Position, one.HeadingAt(200));
        }

        var alignment = AlignmentText.Recognised("up", new("up", elements))!;
        IsReadBack(AlignmentText.Toml(alignment), alignment);
        Assert.DoesNotContain(alignment.Elements, e => e is CurveSpec { Radius: > StraightRule.LongestRadius * 1.000001 }
            or TransitionSpec { ToRadius: > StraightRule.LongestRadius * 1.000001 });
        Assert.Equal(Math.Abs(nearly) < 1e-6, alignment.Elements[0] is StraightSpec);
    }

    private static void IsReadBack(string toml, AlignmentSpec alignment)
    {
        var project = Samples.Sound(Samples.Small.Replace("[[track]]\nname = \"main\"\nalignment = [{ straight = 900 }]\n", toml, StringComparison.Ordinal)
            .Replace("\"main\"", $"\"{alignment.Name}\"", StringComparison.Ordinal));
        var laid = PlatformForge.Projects.Runs.LaidTrack.LayAll(project);
        Assert.DoesNotContain(laid.Findings, f => f.Severity == PlatformForge.Units.Severity.Error);
        Assert.Equal(alignment.Elements.Select(e => e.GetType()), project.Tracks[0].Alignment!.Elements.Select(e => e.GetType()));
    }
}
