using PlatformForge.Geometry;
using PlatformForge.Track.Surveys.Admissible;
using PlatformForge.Track.Surveys.Fitting.Lines;
using PlatformForge.Track.Surveys.Readings;
using PlatformForge.Track.Surveys.Remarks;
using PlatformForge.Track.Surveys.Results;
using PlatformForge.Units;

namespace PlatformForge.Track.Surveys;

/// <summary>
/// Why readings do not go with pieces as stated: one misread figure, a radius that is not stated, a sharper kink, a joint elsewhere. Each is tried by
/// itself, first by the set
/// of lines and then by fitting the survey anew, so that nothing is offered that would not do.
/// </summary>
internal static class SectionalCauses
{
    // So many readings, cheapest without first, are fitted anew; among more readings than this none is looked for.
    private const int MostTried = 5;

    // Greatest kinks tried, degrees, and to what part of one they are told.
    private static readonly double[] Kinks = [1, 2, 3, 4, 5, 6, 8, 10, 12, 15];
    private const double KinkStep = 0.1;

    // What is altered costs a figure (G. Schwarz, 1978), and one more where the best of many is taken.
    private const double PriceOfRadius = 2;

    // A kink or a joint comes after a reading: joints are measured once and looked at, readings by the dozen.
    private const double Later = 100;

    /// <summary>What would do by itself, likeliest first; none where the readings go with what was stated, no joints were, or nothing by itself would
    /// do.</summary>
    public static IReadOnlyList<SectionalCause> Of(Survey survey, SurveyedTrack track)
    {
        if (track.Sectional is null || (track.IsBoundAsSectional && !track.RadiiLeftOut) || track.Residuals.Count > SectionalRemarks.MostReadings)
        {
            return [];
        }

        return [.. new SectionalCause?[] { Misread(survey, track), Radius(survey, track), Kink(survey, track), Joint(survey, track) }.OfType<SectionalCause>()
            .OrderBy(c => c.Cost)];
    }

    private static bool Goes(Survey survey) => TrackSurveyor.Tried(survey) is { IsBoundAsSectional: true, RadiiLeftOut: false };

    private static bool Admits(Survey survey, SurveyedTrack track) => SectionalLines.Of(survey, track) is { AtOdds.Length: 0, Strange.Count: 0 };

    private static double Unit(SurveyedTrack track) => Math.Log(Math.Max(12, track.Residuals.Count));

    private static double CostOf(Survey survey, SurveyedTrack track, Reading? without = null)
    {
        var curve = ReferenceLine.TwiceIntegrated(track.Line);
        return SectionalLines.Pieces(survey, track)?.Invoke([.. track.Residuals.Where(r => !ReferenceEquals(r.Reading, without))
            .Select(r => (r.Chainage, curve(r.Chainage) + r.Miss))]) ?? double.PositiveInfinity;
    }

    private static SurveyedTrack Less(SurveyedTrack track, ReadingResidual? told) => track with
    {
        Residuals = [.. track.Residuals.Where(r => !ReferenceEquals(r.Reading, told?.Reading)).Select(r => r with { IsOutlier = false })],
        Doubted = [],
    };

    private static MisreadCause? Misread(Survey survey, SurveyedTrack track)
    {
        var likely = track.Residuals.AsParallel().AsOrdered().Select(r => (Told: r, Cost: CostOf(survey, track, r.Reading))).AsSequential().OrderBy(p => p.Cost)
            .Take(MostTried).Where(p => Admits(survey, Less(track, p.Told)));
        foreach (var (told, cost) in likely)
        {
            var fewer = ReadingTrial.Without(survey, told.Reading);
            if (TrackSurveyor.Tried(fewer) is { IsBoundAsSectional: true, RadiiLeftOut: false } without
                && AmidPieces(without, ResidualTable.Of(survey, without.Line, []).Single(r => ReferenceEquals(r.Reading, told.Reading))) is var other
                    && Goes(ReadingTrial.Again(survey, other)))
            {
                return new(other, cost + ProfileFit.OutlierPrice(track.Residuals.Count));
            }
        }

        return null;
    }

    // The figure midway between those that pieces through the other readings allow; the line found knows nothing of joints.
    private static ReadingResidual AmidPieces(SurveyedTrack without, ReadingResidual told)
    {
        var range = without.Sectional!.Bound([LineMeasure.Offset(told.Chainage)])[0];
        double middle = (range.Least + range.Most) / 2;
        if (told.Reading is not PlaceReading { Ordinate: { } o } || told.Fitting is not { } figure)
        {
            return told with { Miss = told.Miss - middle, FittingPlace = told.FittingPlace!.Value + (without.Line.At(told.Chainage).Tangent.Left * middle) };
        }

        double along = figure + (middle / Point2.Dot(without.Line.At(told.Chainage).Tangent.Left, o.Square));
        return told with { Miss = told.Miss - middle, Fitting = along, FittingPlace = o.Foot + (o.Square * along) };
    }

    // Of the curvatures that joints alone leave to the pieces, those in which none of the stated radii lies have to have another.
    private static RadiusCause? Radius(Survey survey, SurveyedTrack track)
    {
        var alone = survey with { Laying = survey.Laying with { Radii = [] } };
        if (survey.Laying.Radii.Count == 0 || SectionalLines.Of(alone, Less(track, null)) is not { AtOdds.Length: 0 } pieces)
        {
            return null;
        }

        var other = pieces.Sharpness().Where(b => b.Least > 0 && !survey.Laying.Radii.Any(r => 1 / r > b.Least && 1 / r < b.Most)).ToArray();
        if (other.Length == 0 || !(other.Max(b => b.Least) < other.Min(b => b.Most)))
        {
            return null;
        }

        double radius = Math.Round(2 / (other.Max(b => b.Least) + other.Min(b => b.Most)));
        foreach (bool instead in survey.Laying.Radii.Count == 1 ? (bool[])[true, false] : [false])
        {
            var stated = survey with { Laying = survey.Laying with { Radii = instead ? [radius] : [.. survey.Laying.Radii, radius] } };
            if (Admits(stated, Less(track, null)) && Goes(stated))
            {
                return new(radius, instead, CostOf(stated, track) + (PriceOfRadius * Unit(track)));
            }
        }

        return null;
    }

    private static KinkCause? Kink(Survey survey, SurveyedTrack track)
    {
        const double Degree = Math.PI / 180;
        Survey With(double degrees) => survey with { Laying = survey.Laying with { GreatestKink = degrees * Degree } };
        double stated = survey.Laying.GreatestKink / Degree, most = Kinks.FirstOrDefault(k => k > stated && Admits(With(k), Less(track, null)));
        if (most == 0)
        {
            return null;
        }

        double least = Math.Max(stated, Kinks.LastOrDefault(k => k < most));
        while (most - least > KinkStep)
        {
            double middle = (least + most) / 2;
            (least, most) = Admits(With(middle), Less(track, null)) ? (least, middle) : (middle, most);
        }

        double told = Math.Ceiling((most / KinkStep) - Tolerances.WholeQuotient) * KinkStep;
        for (int more = 0; more < 3; more++, told += KinkStep)
        {
            if (told <= Kinks[^1] && Goes(With(told)))
            {
                // Wider for every joint: a kink is the less likely at each the more there may be.
                return new(told * Degree, CostOf(With(told), track) + (2 * survey.Laying.Joints.Count * Math.Log(told / stated)) + Later);
            }
        }

        return null;
    }

    private static JointCause? Joint(Survey survey, SurveyedTrack track)
    {
        foreach (var move in SectionalLines.Moves(survey, Less(track, null)).OrderByDescending(m => m.Gain).Take(2))
        {
            double wanted = Math.Round(move.Wanted);
            var moved = survey with { Laying = survey.Laying with { Joints = [.. survey.Laying.Joints.Select(j => j == move.Stated ? wanted : j)] } };
            if (Admits(moved, Less(track, null)) && Goes(moved))
            {
                return new(move with { Wanted = wanted }, CostOf(moved, track) + ProfileFit.OutlierPrice(track.Residuals.Count) + Later);
            }
        }

        return null;
    }
}
