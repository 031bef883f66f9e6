using PlatformForge.Geometry;
using PlatformForge.Track.Surveys.Fitting;
using PlatformForge.Track.Surveys.Readings;
using PlatformForge.Units;

namespace PlatformForge.Track.Surveys.Results;

/// <summary>Holds every reading against a fitted line.</summary>
internal static class ResidualTable
{
    private const int MostRounds = 30;

    // Places on an ordinate are found to this, mm.
    private const double Settled = Tolerances.CentrelinePosition;

    /// <param name="survey">The readings.</param>
    /// <param name="line">The line.</param>
    /// <param name="leftOut">Indices of readings that the fit left out.</param>
    public static IReadOnlyList<ReadingResidual> Of(Survey survey, Centreline line, int[] leftOut)
    {
        if (survey is VersineSurvey versines)
        {
            double[] chainages = VersineFitter.Chainages(versines);
            return [.. versines.Readings.Select((r, i) =>
            {
                double fitting = VersineOfLine.Of(line, chainages[i], versines.Chord, versines.FromCentre);
                return new ReadingResidual(r, chainages[i], r.Versine - fitting, fitting, null, leftOut.Contains(i));
            })];
        }

        var runs = ((PlaceSurvey)survey).Runs;
        var table = new List<ReadingResidual>();
        foreach (var run in runs)
        {
            double guess = line.Locate(run[0].Place).Chainage;
            for (int i = 0; i < run.Count; i++)
            {
                guess += i == 0 ? 0 : Point2.Dot(run[i].Place - run[i - 1].Place, line.At(guess).Tangent);
                var place = line.Locate(run[i].Place, guess);
                guess = place.Chainage;
                double miss = place.Offset - run[i].FromCentre;
                var (fitting, at) = Fitting(line, run[i], place.Chainage);
                table.Add(new(run[i], place.Chainage, miss, fitting, at, leftOut.Contains(table.Count)));
            }
        }

        return table;
    }

    /// <summary>The same with every reading named that misses by more than a bound in mm: in long files the fit took it among its neighbours.</summary>
    public static IReadOnlyList<ReadingResidual> Named(IReadOnlyList<ReadingResidual> table, double bound) =>
        table.Count <= PlaceFitter.MostSingle ? table : [.. table.Select(r => Math.Abs(r.Miss) > bound ? r with { IsOutlier = true } : r)];

    /// <summary>What the reading should have said: the place where its ordinate meets the measured line, or the nearest place.</summary>
    private static (double? Offset, Point2 Place) Fitting(Centreline line, PlaceReading reading, double chainage)
    {
        if (reading.Ordinate is not { } ordinate)
        {
            return (null, line.PointAt(chainage, reading.FromCentre));
        }

        var along = ordinate.Square.Left;
        double s = chainage;
        for (int round = 0; round < MostRounds; round++)
        {
            var frame = line.At(s);
            double slope = Point2.Dot(frame.Tangent, along) * (1 - (frame.Curvature * reading.FromCentre));
            double step = Point2.Dot(ordinate.Foot - frame.At(reading.FromCentre), along) / slope;
            if (!double.IsFinite(step))
            {
                break;
            }

            s += step;
            if (Math.Abs(step) < Settled)
            {
                break;
            }
        }

        var place = line.PointAt(s, reading.FromCentre);
        return (Point2.Dot(place - ordinate.Foot, ordinate.Square), place);
    }
}
