using PlatformForge.Tests.Track.Surveys.Admissible;
using PlatformForge.Track;
using PlatformForge.Track.Surveys;
using PlatformForge.Track.Surveys.Admissible;
using PlatformForge.Track.Surveys.Readings;
using PlatformForge.Track.Surveys.Results;

namespace PlatformForge.Benchmarks;

/// <summary>How often the true reach lies within what a survey says of it, by how the track is said to be laid: track of the class and track that is not, made
/// up from seeds that no test has.</summary>
internal static class HonestyRuns
{
    private const int Seed = 880_000, Stations = 9;

    // What the locating of a place and the joins between stations come to, mm.
    private const double Fine = 0.01;

    private static readonly (string Truth, double Ease, double Kink, double Misread)[] Truths =
        [("class", 200, 0, 0), ("misread", 200, 0, 5), ("kink4", 200, 4, 0), ("kink2", 200, 2, 0), ("kink1", 200, 1, 0), ("ease50", 50, 0, 0)];

    /// <summary>The whole table, or one row of it.</summary>
    /// <param name="truth">What the track is; null for every row.</param>
    /// <param name="spacing">Distance between readings, mm.</param>
    /// <param name="error">Ruler error, mm.</param>
    /// <param name="seed">First seed.</param>
    /// <param name="surveys">How many surveys a row.</param>
    public static void Report(string? truth = null, double spacing = 100, double error = 0.25, int seed = Seed, int surveys = 100)
    {
        Console.WriteLine("truth, spacing, error: covered in flexible | at odds told | reading named or in doubt | a line outside told | told in all | covered "
            + "or told | half range median, 95th || sectional covered, told, either, median || unknown covered, told, either, median");
        if (truth is not null)
        {
            Row(Truths.Single(t => t.Truth == truth), spacing, error, seed, surveys);
            return;
        }

        foreach (var (own, ruler) in new[] { (100, 0.25), (50, 0.25), (50, 0.1), (25, 0.25) })
        {
            Row(Truths[0], own, ruler, seed, surveys);
        }

        foreach (double own in new[] { 100, 50 })
        {
            foreach (var other in Truths[1..])
            {
                Row(other, own, error, seed, surveys);
            }
        }
    }

    private static void Row((string Truth, double Ease, double Kink, double Misread) truth, double spacing, double error, int seed, int surveys)
    {
        int odds = 0, named = 0, outside = 0;
        int[] covered = new int[3], honest = new int[3], toldAs = new int[3];
        var halves = Enumerable.Range(0, 3).Select(_ => new List<double>()).ToArray();
        var missed = new List<int>();
        for (int k = 0; k < surveys; k++)
        {
            var random = new Random(seed + (1000 * (int)spacing) + k);
            var line = MadeUpSurvey.Track(random, truth.Ease, truth.Kink);
            var survey = MadeUpSurvey.String(line, random, spacing, error, Laying.Usual(76.2, LaidAs.Flexible),
                truth.Misread * error * ((random.Next(2) * 2) - 1));
            var track = TrackSurveyor.Fit(survey).Value!;
            bool doubted = track.Outliers.Concat(track.Doubted).Any(), toldFlexible = track.ContradictsFlexible || track.Outside is not null
                || track.ErrorTooSmall is not null || doubted;
            foreach (var laid in new[] { LaidAs.Flexible, LaidAs.Sectional, LaidAs.Unknown })
            {
                var said = track with { Laying = Laying.Usual(76.2, laid), FlexibleSet = laid == LaidAs.Sectional ? null : track.FlexibleSet };
                bool within = IsCovered(line, said, halves[(int)laid]);
                bool told = laid switch
                {
                    LaidAs.Flexible => toldFlexible,
                    LaidAs.Sectional => doubted || track.ClearKinks.Any(c => Math.Abs(c.Turn) > said.Laying.GreatestKink),
                    _ => doubted,
                };
                covered[(int)laid] += within ? 1 : 0;
                honest[(int)laid] += within || told ? 1 : 0;
                toldAs[(int)laid] += told ? 1 : 0;
                if (laid == LaidAs.Sectional && !within)
                {
                    missed.Add(told ? k : -k);
                }
            }

            (odds, named, outside) = (odds + (track.ContradictsFlexible ? 1 : 0), named + (doubted ? 1 : 0), outside + (track.Outside is null ? 0 : 1));
        }

        double At(LaidAs laid, double share) => halves[(int)laid].Order().ElementAt((int)(share * halves[(int)laid].Count));
        string flexible = $"{covered[1],4} | {odds,4} | {named,4} | {outside,4} | {toldAs[1],4} | {honest[1],4} "
            + $"| {At(LaidAs.Flexible, 0.5):0.00} {At(LaidAs.Flexible, 0.95):0.00}";
        Console.WriteLine($"{truth.Truth,-8} {spacing,4} {error,5} {flexible} || {covered[2],4} {toldAs[2],4} {honest[2],4} {At(LaidAs.Sectional, 0.5):0.00} "
            + $"|| {covered[0],4} {toldAs[0],4} {honest[0],4} {At(LaidAs.Unknown, 0.5):0.00}");
        Console.WriteLine($"    outside of the sectional bound (told as positive): {string.Join(" ", missed)}");
    }

    private static bool IsCovered(Centreline line, SurveyedTrack said, List<double> halves)
    {
        LineMeasure[] measures = [.. Enumerable.Range(0, Stations).SelectMany(i => MadeUpSurvey.Coach(400 + ((said.Line.Length - 800) * i / (Stations - 1))))];
        var ranges = said.DoubtBeside(250, said.Line.Length - 250).Bound(measures);
        halves.AddRange(ranges.Select(r => r.Half));
        return measures.Zip(ranges).All(p => MadeUpSurvey.Of(line, said.Line, p.First) is var off && off > p.Second.Least - Fine && off < p.Second.Most + Fine);
    }
}
