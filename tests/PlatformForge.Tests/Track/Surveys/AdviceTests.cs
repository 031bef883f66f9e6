using PlatformForge.Tests.Track.Surveys.Admissible;
using PlatformForge.Track.Surveys;
using PlatformForge.Track.Surveys.Admissible;
using Xunit;

namespace PlatformForge.Tests.Track.Surveys;

/// <summary>What a survey advises to read again.</summary>
public class AdviceTests
{
    /// <summary>Where a misread reading was left out, that one is to be read again, not the neighbour that stands in for it, and it leaves less.</summary>
    [Fact]
    public void The_reading_that_was_left_out_is_the_one_to_read_again()
    {
        int looked = 0;
        for (int k = 0; k < 8; k++)
        {
            var line = MadeUpSurvey.Track(new Random(5200 + k));
            var track = TrackSurveyor.Fit(MadeUpSurvey.String(line, new Random(k), 40, 0.25, MadeUpSurvey.Flexible, 3)).Value!;
            if (track.Outliers.Count() != 1 || track.Doubted.Count > 0 || !track.IsBoundAsFlexible || track.Outliers.Single() is not { } misread || misread.Chainage < 200 || misread.Chainage > track.Line.Length - 200)
            {
                continue;
            }

            looked++;
            var doubt = new AdmissibleDoubt(track.Flexible!, track.Line);
            var measure = MadeUpSurvey.Coach(misread.Chainage)[1];
            var advice = doubt.Advise(measure, track.Outliers.Concat(track.Doubted));
            Assert.Same(misread.Reading, advice.Repeat);
            Assert.True(advice.RepeatLeaves <= doubt.Bound([measure])[0].Most + AdmissibleLines.Closeness);
            Assert.NotSame(misread.Reading, doubt.Advise(measure, []).Repeat);
        }

        Assert.True(looked > 2, $"{looked}");
    }
}
