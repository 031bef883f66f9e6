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
        int looked = 0, named = 0;
        for (int k = 0; k < 8; k++)
        {
            var line = MadeUpSurvey.Track(new Random(5200 + k));
            var track = TrackSurveyor.Tried(MadeUpSurvey.String(line, new Random(k), 40, 0.25, MadeUpSurvey.Flexible, 3))!;
            if (track.Outliers.Count() != 1 || track.Doubted.Count > 0 || !track.IsBoundAsFlexible || track.Outliers.Single() is not { } misread
                || misread.Chainage < 200 || misread.Chainage > track.Line.Length - 200)
            {
                continue;
            }

            looked++;
            var doubt = new AdmissibleDoubt(track.Flexible!, track.Line);
            var measure = MadeUpSurvey.Coach(misread.Chainage)[1];
            double Figure(LineDoubt of) => of.Bound([measure])[0].Most;
            // Where the others hold the line as well without it, nothing is advised.
            if (doubt.Advise(measure, track.Outliers.Concat(track.Doubted), Figure, Figure(doubt)) is { Repeat: { } again } advice)
            {
                named++;
                Assert.Same(misread.Reading, again);
                Assert.True(advice.IsLeftOut);
                Assert.True(advice.RepeatLeaves < Figure(doubt));
            }

            Assert.NotSame(misread.Reading, doubt.Advise(measure, [], Figure, Figure(doubt))?.Repeat);
        }

        Assert.True(looked > 2 && named > 0, $"{named} of {looked}");
    }
}
