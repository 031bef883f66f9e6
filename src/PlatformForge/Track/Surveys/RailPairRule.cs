using PlatformForge.Geometry;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Track.Surveys;

/// <summary>Two rails of one track lie side by side: left of one another, a gauge apart, and never crossing.</summary>
internal static class RailPairRule
{
    // Readings of each rail that are compared; more tell nothing more.
    private const int MostPairs = 400;

    // Rails this much nearer or farther than the gauge says, in mm, are a wrong gauge or a wrong edge, not reading error.
    private const double WrongEdge = 0.5;

    /// <summary>Compares the first two runs where they measure different lines of the track.</summary>
    public static void Check(string key, IReadOnlyList<IReadOnlyList<PlaceReading>> runs, List<Finding> findings)
    {
        if (runs.Count < 2 || runs.Any(r => r.Count < RunRule.FewestPlaces) || runs[0][0].FromCentre == runs[1][0].FromCentre)
        {
            return;
        }

        var (one, other) = (Thin(runs[0]), Thin(runs[1]));
        double expected = other[0].FromCentre - one[0].FromCentre, sum = 0;
        int count = 0;
        foreach (var reading in other)
        {
            if (Beside(one, reading.Place) is not { } offset)
            {
                continue;
            }

            if (offset * expected < 0)
            {
                findings.Add(RunRule.At(reading, Finding.Error("PF2108", key, Invariant($"The two measured lines cross: this point lies {Math.Abs(offset):0.##} mm on the wrong side of '{one[0].File}'."), "Check which file is the left rail, and that both run the same way.")));
                return;
            }

            sum += offset;
            count++;
        }

        double mean = count == 0 ? expected : sum / count;
        if (Math.Abs(mean - expected) > WrongEdge)
        {
            findings.Add(Finding.Warning("PF2123", key, Invariant($"The two measured lines lie {Math.Abs(mean):0.00} mm apart, {Math.Abs(expected):0.00} mm by gauge and rail width."), "Check the gauge, the rail width and which edge was measured; the centre is taken midway.", FaultKind.Input));
        }
    }

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
