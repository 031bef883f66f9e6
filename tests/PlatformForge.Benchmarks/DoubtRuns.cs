using PlatformForge.Clearance.Requests;
using PlatformForge.Clearance.Sweeping;
using PlatformForge.Geometry;
using PlatformForge.Track;
using PlatformForge.Track.Surveys.Admissible;
using PlatformForge.Track.Surveys.Readings;

namespace PlatformForge.Benchmarks;

/// <summary>What a survey leaves uncertain of the reach of five vehicles beside a metre of platform, from the set of admissible lines to every part's
/// range.</summary>
internal static class DoubtRuns
{
    private const double RulerError = 0.25, Platform = 1000, Before = 500;

    private static readonly Laying Laid = Laying.Usual(76.2, LaidAs.Flexible);

    private static readonly Centreline Line = TrackLayer.Lay(new("up", default, 0, [
        new StraightSpec(400), new TransitionSpec(250, 760, Hand.Left), new CurveSpec(760, Hand.Left, 620), new TransitionSpec(250, null, Hand.Left),
        new StraightSpec(600)])).Value!;

    public static void Report()
    {
        Console.WriteLine();
        Console.WriteLine("doubt beside 1 m, readings    median ms   least ms  processor ms    limit   of it the set, least ms");
        foreach (int readings in new[] { 22, 42, 85, 1000, 100_000 })
        {
            var bands = Readings(readings);
            var request = new EnvelopeRequest(Line, Before, Before + Platform, [new(Line, EnvelopeRuns.Vehicles)]);
            int repeats = readings > 1000 ? 3 : 9;
            var set = Timing.Of(() => AdmissibleLines.Of(Laid, bands, Line), repeats);
            var whole = Timing.Of(() => SurveyDoubt.Of(request, 0, new AdmissibleDoubt(AdmissibleLines.Of(Laid, bands, Line), Line)), repeats);
            Console.WriteLine(
                $"{readings,-28} {whole.Median,10:F1} {whole.Least,10:F1} {whole.Processor,13:F1} {(readings > 1000 ? 3000 : 100),8} {set.Least,12:F1}");
        }
    }

    private static ReadingBand[] Readings(int count)
    {
        var random = new Random(3);
        var bands = new ReadingBand[count];
        for (int i = 0; i < count; i++)
        {
            var at = Line.At(Line.Length * i / (count - 1));
            Point2 place = at.Position + (at.Tangent.Left * (((2 * random.NextDouble()) - 1) * RulerError));
            bands[i] = new(new PlaceReading("f", i + 2, LengthUnit.Millimetre, place, 0), RulerError);
        }

        return bands;
    }
}
