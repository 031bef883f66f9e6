using PlatformForge.Tests.Track.Surveys.Admissible;
using PlatformForge.Track.Surveys;
using PlatformForge.Track.Surveys.Admissible;

namespace PlatformForge.Benchmarks;

/// <summary>How often the true reach lies within what a survey says of it, by how the track is said to be laid: track of the class and track that is not, made up from seeds that no test has.</summary>
internal static class HonestyRuns
{
    private const int Surveys = 100, Seed = 880_000, Stations = 9;

    // What the locating of a place and the joins between stations come to, mm.
    private const double Fine = 0.01;

    public static void Report()
    {
        Console.WriteLine("truth, spacing, error: covered in flexible | at odds told | reading named or in doubt | a line outside told | told in all | covered or told | half range median, 95th || sectional covered, median || unknown covered, median");
        foreach (var (spacing, error) in new[] { (100, 0.25), (50, 0.25), (50, 0.1), (25, 0.25) })
        {
            Row("of the class", spacing, error, 200, 0, 0);
        }

        foreach (int spacing in new[] { 100, 50 })
        {
            Row("misread by 5 errors", spacing, 0.25, 200, 0, 5);
            Row("kink 4", spacing, 0.25, 200, 4, 0);
            Row("ease 50", spacing, 0.25, 50, 0, 0);
            Row("kink 2", spacing, 0.25, 200, 2, 0);
            Row("kink 1", spacing, 0.25, 200, 1, 0);
        }
    }

    private static void Row(string truth, double spacing, double error, double ease, double kink, double misread)
    {
        int[] covered = new int[3];
        int odds = 0, named = 0, outside = 0, toldInAll = 0, either = 0;
        var halves = Enumerable.Range(0, 3).Select(_ => new List<double>()).ToArray();
        for (int k = 0; k < Surveys; k++)
        {
            var random = new Random(Seed + (1000 * (int)spacing) + k);
            var line = MadeUpSurvey.Track(random, ease, kink);
            var survey = MadeUpSurvey.String(line, random, spacing, error, Laying.Usual(76.2, LaidAs.Flexible), misread * error * ((random.Next(2) * 2) - 1));
            var track = TrackSurveyor.Fit(survey).Value!;
            bool told = track.ContradictsFlexible, doubted = track.Outliers.Concat(track.Doubted).Any(), beyond = track.Outside is not null, within = false;
            foreach (var laid in new[] { LaidAs.Flexible, LaidAs.Sectional, LaidAs.Unknown })
            {
                var said = track with { Laying = Laying.Usual(76.2, laid), FlexibleSet = laid == LaidAs.Sectional ? null : track.FlexibleSet };
                LineMeasure[] measures = [.. Enumerable.Range(0, Stations).SelectMany(i => MadeUpSurvey.Coach(400 + ((track.Line.Length - 800) * i / (Stations - 1))))];
                var ranges = said.DoubtBeside(250, track.Line.Length - 250).Bound(measures);
                bool all = measures.Zip(ranges).All(p => MadeUpSurvey.Of(line, track.Line, p.First) is var off && off > p.Second.Least - Fine && off < p.Second.Most + Fine);
                covered[(int)laid] += all ? 1 : 0;
                within |= laid == LaidAs.Flexible && all;
                halves[(int)laid].AddRange(ranges.Select(r => r.Half));
            }

            bool any = told || doubted || beyond;
            (odds, named, outside) = (odds + (told ? 1 : 0), named + (doubted ? 1 : 0), outside + (beyond ? 1 : 0));
            (toldInAll, either) = (toldInAll + (any ? 1 : 0), either + (within || any ? 1 : 0));
        }

        double At(LaidAs laid, double share) => halves[(int)laid].Order().ElementAt((int)(share * halves[(int)laid].Count));
        Console.WriteLine($"{truth,-20} {spacing,4} {error,5} {covered[1],4} | {odds,4} | {named,4} | {outside,4} | {toldInAll,4} | {either,4} | {At(LaidAs.Flexible, 0.5):0.00} {At(LaidAs.Flexible, 0.95):0.00} || {covered[2],4} {At(LaidAs.Sectional, 0.5):0.00} || {covered[0],4} {At(LaidAs.Unknown, 0.5):0.00}");
    }
}
