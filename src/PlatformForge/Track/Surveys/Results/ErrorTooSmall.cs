using PlatformForge.Track.Surveys.Fitting;
using PlatformForge.Track.Surveys.Readings;

namespace PlatformForge.Track.Surveys.Results;

/// <summary>
/// A ruler error that is stated too small makes a survey full of kinks and misread figures: errors of reading are taken for bends of the track. It is told
/// by trying
/// larger ones: where the readings are far likelier with one of those, and go with a simpler line, nothing else is to be blamed first.
/// </summary>
/// <param name="Least">The least ruler error within which that line meets all readings, mm, in whole hundredths, tried.</param>
/// <param name="Kinks">Kinks that the line has for the stated error.</param>
/// <param name="Misread">Readings that do not go with that line, or are in doubt.</param>
/// <param name="LeftOut">Those of them that are left out of it.</param>
public sealed record ErrorTooSmall(double Least, int Kinks, int Misread, int LeftOut)
{
    // Errors tried, in parts of the stated one, and none beyond this, mm: nobody reads a ruler so badly.
    private static readonly double[] Larger = [2.5, 6, 14, 32];
    private const double MostError = 1.5;

    // A likelihood of one in a hundred and fifty, e^(−10/2), is told.
    private const double Clearly = 10, Near = 6;

    // One misread figure, or one kink, is what it is.
    private const int Suspicious = 2;

    /// <summary>Null where the stated error serves, where readings are too many for it to matter, and where the line has nothing odd.</summary>
    internal static ErrorTooSmall? Of(PlaceSurvey survey, FittedShapes found, bool scattered)
    {
        int kinks = found.Fits[0].Profile.KinkAt.Length, misread = found.LeftOut.Length + found.InDoubt.Length;
        if (survey.Runs.Sum(r => r.Count) > PlaceFitter.MostSingle || (kinks + misread < Suspicious && !scattered && !found.Fits[0].Profile.Knotted))
        {
            return null;
        }

        (double Error, FittedShapes Found) At(double error) => (error, PlaceFitter.Fit(survey.Track, survey.Runs, error / Math.Sqrt(3)));
        var tried = Larger.Select(l => l * survey.RulerError).Where(e => e < MostError).AsParallel().AsOrdered().Select(At).AsSequential()
            .Append((Error: survey.RulerError, Found: found)).ToArray();

        // Of errors that are nearly as likely the largest: its line is the simplest.
        double likeliest = tried.Min(t => t.Found.Worth);
        var best = tried.Where(t => t.Found.Worth < likeliest + Near).MaxBy(t => t.Error);
        if (!(best.Found.Worth < found.Worth - Clearly) || Odd(best.Found) >= Math.Max(Suspicious, kinks + misread))
        {
            return null;
        }

        double least = Math.Ceiling(100 * ResidualTable.Of(survey, best.Found.Fits[0].Line, best.Found.LeftOut)
            .Where(r => !r.IsOutlier).Max(r => Math.Abs(r.Miss))) / 100;
        return least > survey.RulerError && Odd(At(least).Found) < Suspicious ? new(least, kinks, misread, found.LeftOut.Length) : null;
    }

    private static int Odd(FittedShapes found) => found.Fits[0].Profile.KinkAt.Length + found.LeftOut.Length + found.InDoubt.Length;
}
