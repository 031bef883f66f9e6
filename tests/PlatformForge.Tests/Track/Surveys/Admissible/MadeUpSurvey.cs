using PlatformForge.Geometry;
using PlatformForge.Track;
using PlatformForge.Track.Surveys.Admissible;
using PlatformForge.Track.Surveys.Readings;

namespace PlatformForge.Tests.Track.Surveys.Admissible;

/// <summary>Made-up track and what a person with a string and a ruler reads off it.</summary>
internal static class MadeUpSurvey
{
    public static readonly Laying Flexible = Laying.Usual(76.2, LaidAs.Flexible);

    /// <summary>Track of the flexible class, some 1.5 m of it: straight, R 380 to 1500 all along, a curve between eases of 200 mm and more,
    /// or a reverse curve.</summary>
    public static Centreline Track(Random random, double ease = 200, double kinkDegrees = 0)
    {
        double radius = 380 + (random.NextDouble() * 1120), other = 380 + (random.NextDouble() * 1120), length = ease * (1 + random.NextDouble());
        var (hand, back) = random.Next(2) == 0 ? (Hand.Left, Hand.Right) : (Hand.Right, Hand.Left);
        AlignmentElementSpec[] elements = random.Next(4) switch
        {
            0 => [new StraightSpec(700), new StraightSpec(800)],
            1 => [new CurveSpec(radius, hand, Length: Math.Min(750, radius)), new CurveSpec(radius, hand, Length: Math.Min(750, radius))],
            2 => [new StraightSpec(200 + random.Next(200)), new TransitionSpec(length, radius, hand),
                new CurveSpec(radius, hand, Length: 200 + random.Next(200)), new TransitionSpec(length, null, hand), new StraightSpec(400)],
            _ => [new StraightSpec(100 + random.Next(150)), new TransitionSpec(length, radius, hand),
                new CurveSpec(radius, hand, Length: 100 + random.Next(150)), new TransitionSpec(length, null, hand), new TransitionSpec(length, other, back),
                new CurveSpec(other, back, Length: 300)],
        };
        if (kinkDegrees > 0)
        {
            elements = [.. elements.Take(elements.Length / 2), new KinkSpec(kinkDegrees * Math.PI / 180, hand), .. elements.Skip(elements.Length / 2)];
        }

        return TrackLayer.Lay(new("made up", new(10, 20), 0.3, elements)).Value!;
    }

    /// <summary>Offsets from a string between the ends, read to within an error, evenly; one of them off by more where asked.</summary>
    public static PlaceSurvey String(Centreline line, Random random, double spacing, double error, Laying laying, double misread = 0)
    {
        Point2 from = line.At(0).Position, taut = line.At(line.Length).Position - from, along = taut * (1 / taut.Length);
        int count = (int)(taut.Length / spacing) + 1, bad = misread == 0 ? -1 : random.Next(2, count - 2);
        var readings = new PlaceReading[count];
        double s = 0;
        for (int i = 0; i < count; i++)
        {
            var foot = from + (along * (i * spacing));
            for (int round = 0; round < 50; round++)
            {
                s = Math.Clamp(s + (Point2.Dot(foot - line.At(s).Position, along) / Point2.Dot(line.At(s).Tangent, along)), 0, line.Length);
            }

            double offset = Point2.Dot(line.At(s).Position - foot, along.Left) + (((2 * random.NextDouble()) - 1) * error) + (i == bad ? misread : 0);
            readings[i] = new("f", i + 2, LengthUnit.Millimetre, foot + (along.Left * offset), 0, new(i * spacing, offset, foot, along.Left));
        }

        return new("made up", "track[0].survey", error, [readings]) { Laying = laying };
    }

    public static ReadingBand[] Bands(PlaceSurvey survey) => [.. survey.Runs[0].Select(r => new ReadingBand(r, survey.RulerError))];

    /// <summary>What a coach of 262 over pivots 188 mm asks of a line: places −131, 0 and 131 along it, its middle at a chainage.</summary>
    public static LineMeasure[] Coach(double at) =>
        [.. new[] { -131.0, 0, 131 }.Select(x => new LineMeasure([at + 94, at - 94], [0.5 + (x / 188), 0.5 - (x / 188)]))];

    /// <summary>What a measure is of a line, against the one whose chainages it is told in.</summary>
    public static double Of(Centreline line, Centreline stated, LineMeasure measure) =>
        measure.At.Zip(measure.Weights, (s, w) => -w * line.Locate(stated.At(s).Position).Offset).Sum();
}
