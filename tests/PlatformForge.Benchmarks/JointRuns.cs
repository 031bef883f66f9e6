using PlatformForge.Tests.Track.Surveys.Admissible;
using PlatformForge.Track;
using PlatformForge.Track.Surveys;
using PlatformForge.Track.Surveys.Admissible;
using PlatformForge.Track.Surveys.Readings;
using PlatformForge.Track.Surveys.Remarks;
using PlatformForge.Track.Surveys.Results;

namespace PlatformForge.Benchmarks;

/// <summary>Sectional track with one of its stated joints off its place: how often that is told, and whether the true line lies within the bound all the same.
/// From seeds that no test has.</summary>
internal static class JointRuns
{
    private const int Stations = 9;
    private const double Error = 0.25, Fine = 0.01;

    /// <summary>One row.</summary>
    /// <param name="off">How far the joint is off, mm, before and behind its place in turn; 0 for true ones.</param>
    /// <param name="spacing">Distance between readings, mm.</param>
    /// <param name="seed">First seed.</param>
    /// <param name="surveys">How many surveys.</param>
    /// <param name="radii">Whether radii are stated.</param>
    public static void Report(double off, double spacing, int seed, int surveys, bool radii)
    {
        var halves = new List<double>();
        var gains = new List<double>();
        double[] limits = [2, 3, 5, 1000];
        var wider = limits.Select(_ => new List<double>()).ToArray();
        int[] honestAt = new int[limits.Length];
        int blamed = 0, told = 0, within = 0, honest = 0;
        for (int k = 0; k < surveys; k++)
        {
            var (line, joints) = MadeUpPieces.Pieces(new Random(seed + (1000 * (int)spacing) + k));
            int moved = 1 + (k % (joints.Length - 2));
            double[] stated = [.. joints.Select((j, i) => i == moved ? j + (k % 2 == 0 ? off : -off) : j)];
            var survey = MadeUpPieces.Told(MadeUpSurvey.String(line, new Random(k), spacing, Error,
                MadeUpPieces.Said(stated, radii ? MadeUpPieces.Radii : [])), line);
            var fitted = TrackSurveyor.Fit(survey);
            var track = fitted.Value!;
            string codes = string.Join(" ", fitted.Findings.Select(f => f.Code)
                .Where(c => c is "PF2192" or "PF2193" or "PF2197" or "PF2198" or "PF2120" or "PF2145").Distinct());
            blamed += codes.Contains("PF2197", StringComparison.Ordinal) || codes.Contains("PF2198", StringComparison.Ordinal) ? 1 : 0;
            double beyond = Beyond(line, track, halves);
            var moves = SectionalLines.Moves(survey, track);
            gains.Add(moves.Select(m => m.Gain).DefaultIfEmpty(0).Max());
            string tried = "";
            for (int g = 0; g < limits.Length; g++)
            {
                double left = Beyond(line, Allowing(survey, track, moves, limits[g]), wider[g]);
                tried += $" {left:0.00}";
                honestAt[g] += codes != "" || left < Fine ? 1 : 0;
            }

            (told, within, honest) = (told + (codes == "" ? 0 : 1), within + (beyond < Fine ? 1 : 0), honest + (codes != "" || beyond < Fine ? 1 : 0));
            if (beyond >= Fine || off > 0)
            {
                Console.WriteLine($"  {k}: gain {gains[^1]:0.0}, outside by {beyond:0.00} [{tried}], {codes}");
            }
        }

        string best =
            string.Join(" ",
                new[] { 0.5, 0.8, 0.9, 0.95, 0.99, 1 }.Select(q => $"{gains.Order().ElementAt((int)Math.Min(gains.Count - 1, q * gains.Count)):0.0}"));
        Console.WriteLine($"off {off}, every {spacing}, radii {radii}: told {told} (a joint {blamed}), within {within}, either {honest} of {surveys}; half of "
            + $"the range {halves.Order().ElementAt(halves.Count / 2):0.000}; gains {best}");
        string allowed =
            string.Join("; ", limits.Select((g, i) => $"{g}: {honestAt[i]} {wider[i].Order().ElementAt(wider[i].Count / 2):0.000} {wider[i].Average():0.000}"));
        Console.WriteLine("  places for a joint allowed for from a gain of so much (1000: none): either, median and mean of half of the range: " + allowed);
    }

    private static SurveyedTrack Allowing(Survey survey, SurveyedTrack track, IReadOnlyList<MovedJoint> moves, double least) =>
        track with { PerhapsMovedSet = new(() => SectionalLines.Perhaps(survey, track, moves, least)) };

    private static double Beyond(Centreline line, SurveyedTrack said, List<double> halves)
    {
        LineMeasure[] measures = [.. Enumerable.Range(0, Stations).SelectMany(i => MadeUpSurvey.Coach(300 + ((said.Line.Length - 600) * i / (Stations - 1))))];
        var ranges = said.DoubtBeside(200, said.Line.Length - 200).Bound(measures);
        halves.AddRange(ranges.Select(r => r.Half));
        return measures.Zip(ranges).Max(p => MadeUpSurvey.Of(line, said.Line, p.First) is var off ? Math.Max(p.Second.Least - off, off - p.Second.Most) : 0);
    }
}
