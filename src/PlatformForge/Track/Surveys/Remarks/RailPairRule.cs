using PlatformForge.Geometry;
using PlatformForge.Track.Surveys.Readings;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Track.Surveys.Remarks;

/// <summary>Two rails of one track lie side by side: left of one another, a gauge apart, and never crossing.</summary>
internal static class RailPairRule
{
    // Readings of each rail that are compared; more tell nothing more.
    private const int MostPairs = 400;

    // Rails this much nearer or farther than the gauge says, in mm, are a wrong gauge or a wrong edge, not reading error.
    private const double WrongEdge = 0.5;

    /// <summary>
    /// Compares the first two runs. Where they lie farther apart or nearer than stated, the readings are taken midway, so that
    /// the one cause is told and not every reading blamed for it.
    /// </summary>
    /// <returns>The runs to fit.</returns>
    public static IReadOnlyList<IReadOnlyList<PlaceReading>> Check(SurveySpec spec, IReadOnlyList<IReadOnlyList<PlaceReading>> runs, List<Finding> findings)
    {
        if (runs.Count < 2 || runs.Any(r => r.Count < RunRule.FewestPlaces))
        {
            return runs;
        }

        double first = runs[0][0].FromCentre, second = runs[1][0].FromCentre, expected = second - first;
        if (first == second)
        {
            CheckSameLine(spec, runs, findings);
            return runs;
        }

        if (Apart(spec.Key, runs, expected, findings) is not { } mean)
        {
            return runs;
        }

        double excess = mean - expected;
        if (!(Math.Abs(excess) > WrongEdge))
        {
            return runs;
        }

        findings.Add(Finding.Warning("PF2123", spec.Key,
            Invariant($"The two measured lines lie {Math.Abs(mean):0.00} mm apart, {Math.Abs(expected):0.00} mm by gauge and rail width."),
            "Check the gauge, the rail width and which edge was measured; the centre is taken midway.", FaultKind.Input));
        return [.. runs.Select(run => run[0].FromCentre == first ? Shifted(run, -excess / 2) : run[0].FromCentre == second ? Shifted(run, excess / 2) : run)];
    }

    // How far to the left of the first line the second lies on the whole, as far as they lie side by side; null, and told, where they cross.
    private static double? Apart(string key, IReadOnlyList<IReadOnlyList<PlaceReading>> runs, double expected, List<Finding> findings)
    {
        var (one, other) = (Thin(runs[0]), Thin(runs[1]));
        double sum = 0;
        int count = 0;
        foreach (var reading in other)
        {
            if (Beside(one, reading.Place) is not { } offset)
            {
                continue;
            }

            if (offset * expected < 0)
            {
                string message = Invariant($"The two measured lines cross: this point lies {Math.Abs(offset):0.##} mm on the wrong side of '{one[0].File}'.");
                findings.Add(RunRule.At(reading, Finding.Error("PF2108", key, message, "Check which file is the left rail, and that both run the same way.")));
                return null;
            }

            sum += offset;
            count++;
        }

        return count == 0 ? expected : sum / count;
    }

    private static PlaceReading[] Shifted(IReadOnlyList<PlaceReading> run, double by) => [.. run.Select(r => r with { FromCentre = r.FromCentre + by })];

    // Two files of one and the same line lie on one another where both have readings.
    private static void CheckSameLine(SurveySpec spec, IReadOnlyList<IReadOnlyList<PlaceReading>> runs, List<Finding> findings)
    {
        var (one, other) = (Thin(runs[0]), Thin(runs[1]));
        double[] beside = [.. other.Select(r => Beside(one, r.Place)).OfType<double>().Order()];
        double apart = beside.Length == 0 ? 0 : beside[beside.Length / 2];
        var measured = spec.Sources[1].Measured;
        if (Math.Abs(apart) <= Math.Max(WrongEdge, SameLineInErrors * spec.RulerError))
        {
            return;
        }

        string what = measured.Part == MeasuredPart.Centre ? "the centre" : measured.Rail == Rail.Left ? "the left rail" : "the right rail";
        string remedy = measured.Part == MeasuredPart.Centre
            ? "Say what was measured: measured = \"running-edge\" with rail = \"left\" for one file and rail = \"right\" for the other."
            : $"Give one of them rail = \"{(measured.Rail == Rail.Left ? "right" : "left")}\": "
            + $"'{(apart * (int)measured.Rail > 0 ? one[0].File : other[0].File)}' lies on that side.";
        findings.Add(RunRule.At(other[0], Finding.Error("PF2131", spec.Key, Invariant($"'{one[0].File}' and '{other[0].File}' are both stated as {what}, but ")
            + Invariant($"lie {Math.Abs(apart):0.00} mm apart."), remedy)));
    }

    // Two measurings of one line lie within so many ruler errors of one another on the whole.
    private const double SameLineInErrors = 4;

    private static List<PlaceReading> Thin(IReadOnlyList<PlaceReading> run)
    {
        int every = Math.Max(1, run.Count / MostPairs);
        return [.. run.Where((_, i) => i % every == 0)];
    }

    /// <summary>Offset of a point from the polyline, left positive, or null where it lies beyond an end.</summary>
    private static double? Beside(List<PlaceReading> line, Point2 point)
    {
        double? found = null;
        for (int i = 1; i < line.Count; i++)
        {
            Point2 a = line[i - 1].Place, step = line[i].Place - a, join = point - a;
            double along = Point2.Dot(join, step) / Point2.Dot(step, step);
            if (along is >= 0 and <= 1)
            {
                double offset = Point2.Cross(step, join) / step.Length;
                found = found is { } best && Math.Abs(best) < Math.Abs(offset) ? best : offset;
            }
        }

        return found;
    }
}
