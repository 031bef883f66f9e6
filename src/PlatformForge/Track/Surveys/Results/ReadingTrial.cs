using PlatformForge.Geometry;
using PlatformForge.Track.Surveys.Readings;

namespace PlatformForge.Track.Surveys.Results;

/// <summary>A survey as it would be with one reading more, without one, or with another figure in place of one.</summary>
internal static class ReadingTrial
{
    /// <summary>The survey without one of its readings.</summary>
    public static Survey Without(Survey survey, Reading reading) => survey switch
    {
        PlaceSurvey places =>
            places with
            {
                Runs = [.. places.Runs.Select(r => (IReadOnlyList<PlaceReading>)[.. r.Where(p => !ReferenceEquals(p, reading))])
                .Where(r => r.Count > 0)]
            },
        VersineSurvey versines => versines with { Readings = [.. versines.Readings.Where(v => !ReferenceEquals(v, reading))] },
        _ => survey,
    };

    /// <summary>The survey with the figure that would fit in place of the one that was read.</summary>
    public static Survey Again(Survey survey, ReadingResidual told) => survey switch
    {
        PlaceSurvey places =>
            places
            with
            {
                Runs =
                [.. places.Runs.Select(r => (IReadOnlyList<PlaceReading>)[.. r.Select(p => ReferenceEquals(p, told.Reading) ? Fitting(p, told) : p)])]
            },
        VersineSurvey versines =>
            versines with { Readings = [.. versines.Readings.Select(v => ReferenceEquals(v, told.Reading) ? v with { Versine = told.Fitting!.Value } : v)] },
        _ => survey,
    };

    /// <summary>The survey with one reading more, which says what its line says; null where none can be put there.</summary>
    /// <param name="survey">The survey.</param>
    /// <param name="track">What it found.</param>
    /// <param name="chainage">Where the reading is taken, mm.</param>
    public static (Survey Survey, Reading Reading)? More(Survey survey, SurveyedTrack track, double chainage)
    {
        var before = track.Residuals.Where(r => r.Chainage <= chainage).MaxBy(r => r.Chainage);
        var after = track.Residuals.Where(r => r.Chainage > chainage).MinBy(r => r.Chainage);
        return (survey, before?.Reading, after?.Reading) switch
        {
            (PlaceSurvey places, PlaceReading one, PlaceReading) => Place(places, track.Line, one, chainage),
            (VersineSurvey versines, VersineReading one, VersineReading other) =>
                Versine(versines, track.Line, one, other, (chainage - before!.Chainage) / (after!.Chainage - before.Chainage), chainage),
            _ => null,
        };
    }

    private static PlaceReading Fitting(PlaceReading reading, ReadingResidual told) => reading with
    {
        Place = told.FittingPlace!.Value,
        Ordinate = reading.Ordinate is { } o ? o with { Offset = told.Fitting!.Value } : null,
    };

    // Where one stands already another tells nothing, and a file with two at one distance is refused, mm.
    private const double Apart = 5;

    private static (Survey, Reading)? Place(PlaceSurvey survey, Centreline line, PlaceReading near, double chainage)
    {
        var run = survey.Runs.First(r => r.Any(p => ReferenceEquals(p, near)));
        var place = line.PointAt(chainage, near.FromCentre);
        var ordinate = near.Ordinate is { } o ? AsTold(run, o, s => line.PointAt(s, near.FromCentre), chainage) : null;
        place = ordinate is null ? place : ordinate.Foot + (ordinate.Square * ordinate.Offset);
        if (run.Any(p => ordinate is not null && p.Ordinate is { } own ? Math.Abs(own.Distance - ordinate.Distance) < Apart : (p.Place - place).Length < Apart))
        {
            return null;
        }

        var more = near with { Row = 0, DrawnAt = null, Place = place, Ordinate = ordinate };
        return (survey with { Runs = [.. survey.Runs.Select(r => ReferenceEquals(r, run) ? (IReadOnlyList<PlaceReading>)[.. Inserted(r, near, more)] : r)] },
            more);
    }

    // At a whole millimetre along the string, and read to a hundredth: so it is told, and so it will be read.
    private static StringOrdinate AsTold(IReadOnlyList<PlaceReading> run, StringOrdinate near, Func<double, Point2> place, double chainage)
    {
        var at = Ordinate(run, near, place(chainage));
        double whole = Math.Round(at.Distance);
        for (int i = 0; i < Rounds; i++)
        {
            chainage += whole - at.Distance;
            at = Ordinate(run, near, place(chainage));
        }

        return at with { Distance = whole, Offset = Math.Round(at.Offset, 2) };
    }

    // A step along the string is one along the track but for the angle between them: each round takes most of what is left.
    private const int Rounds = 12;

    private static IEnumerable<PlaceReading> Inserted(IReadOnlyList<PlaceReading> run, PlaceReading near, PlaceReading more) =>
        run.SelectMany(p => ReferenceEquals(p, near) ? (PlaceReading[])[p, more] : [p]);

    // Square to the string: feet run along it by its distances.
    private static StringOrdinate Ordinate(IReadOnlyList<PlaceReading> run, StringOrdinate near, Point2 place)
    {
        StringOrdinate first = run[0].Ordinate ?? near, last = run[^1].Ordinate ?? near;
        var along = (last.Foot - first.Foot) * (1 / (last.Distance - first.Distance));
        double on = Point2.Dot(place - near.Foot, along);
        var foot = near.Foot + (along * on);
        return new(near.Distance + on, Point2.Dot(place - foot, near.Square), foot, near.Square);
    }

    private static (Survey, Reading) Versine(VersineSurvey survey, Centreline line, VersineReading one, VersineReading other, double share, double chainage)
    {
        var more = one with
        {
            Row = 0,
            Station = one.Station + (share * (other.Station - one.Station)),
            Versine = VersineOfLine.Of(line, chainage, survey.Chord, survey.FromCentre)
        };
        return (survey with { Readings = [.. survey.Readings.SelectMany(v => ReferenceEquals(v, one) ? (VersineReading[])[v, more] : [v])] }, more);
    }
}
