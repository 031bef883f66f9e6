using PlatformForge.Track.Surveys.Readings;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Track.Surveys.Remarks;

/// <summary>Figures that were all written to a coarser step than the stated ruler error allows: rounding alone puts them off by more than nobody is said to
/// be.</summary>
internal static class RoundingRule
{
    // Fewer figures, or fewer different ones, may all be such multiples by chance.
    private const int Fewest = 8, FewestDifferent = 5;

    // Steps that people read to, in the unit of the file: decimal, and halves of it.
    private static readonly double[] Steps = [10, 5, 2.5, 2, 1, 0.5, 0.25, 0.2, 0.125, 0.1, 0.0625, 0.05, 0.03125, 0.02];

    // What a figure with a few decimals is off by as a binary number, in steps.
    private const double Exact = 1e-6;

    public static Finding? Check(Survey survey)
    {
        Reading[] readings = [.. survey switch { PlaceSurvey p => p.Runs.SelectMany(r => r).Where(r => r.DrawnAt is null), VersineSurvey v => v.Readings, _ =>
            (IEnumerable<Reading>)[] }];
        if (readings.Length < Fewest || readings.DistinctBy(r => r.Unit).Count() > 1)
        {
            return null;
        }

        double unit = readings[0].Unit.Millimetres();
        double[] figures = [.. readings.SelectMany(Figures)];
        bool Are(double step) => figures.All(f => Math.Abs((f / step) - Math.Round(f / step)) < Exact);
        double coarsest = Steps.FirstOrDefault(s => s * unit / 2 > survey.RulerError + Tolerances.Rounding && Are(s));
        if (coarsest == 0 || figures.Select(f => Math.Round(f / coarsest)).Distinct().Count() < FewestDifferent)
        {
            return null;
        }

        string sign = readings[0].Unit.Sign();
        return Finding.Warning(
            "PF2202",
            survey.Key + ".ruler_error",
            Invariant($"All figures are whole multiples of {coarsest:0.#####} {sign}: rounded so, each may be off by {coarsest * unit / 2:0.###} mm, more ")
                + Invariant($"than the ruler error of {survey.RulerError:0.###} mm that is stated. What is told of the line holds for readings within that ")
                + "only.",
            Invariant($"Read to finer parts, or state ruler_error = {Math.Ceiling(1000 * coarsest * unit / 2) / 1000:0.###} at least."),
            FaultKind.Input);
    }

    // As the file has them.
    private static IEnumerable<double> Figures(Reading reading)
    {
        double unit = reading.Unit.Millimetres();
        return reading switch
        {
            PlaceReading { Ordinate: { } o } => [o.Offset / unit],
            PlaceReading p => [p.Place.X / unit, p.Place.Y / unit],
            VersineReading v => [v.Written(v.Versine)],
            _ => [],
        };
    }
}
