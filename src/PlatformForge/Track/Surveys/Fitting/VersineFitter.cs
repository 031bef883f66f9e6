using PlatformForge.Geometry;
using PlatformForge.Track.Surveys.Fitting.Lines;
using PlatformForge.Track.Surveys.Readings;

namespace PlatformForge.Track.Surveys.Fitting;

/// <summary>Fits versines: a search on their linear equivalents, then the exact fit with the closing chord.</summary>
internal static class VersineFitter
{
    /// <summary>The fits in question, cheapest first.</summary>
    public static FittedShapes Fit(VersineSurvey survey, double sigma)
    {
        double[] chainages = Chainages(survey);
        double length = chainages[^1] + (survey.Chord / 2);
        var groups = VersineGroups.Of(survey, chainages, sigma);
        var observations = groups.Observations;
        var found = new ProfileSearch(observations, length, placed: false).Run(Suspects.Among(observations));
        var kept = FitChoice.Distinct(SmoothSearch.Unless(found, observations, length, placed: false));
        double offset = survey.FromCentre;
        var targets = new List<FitTarget>(groups.Targets);
        if (survey.Closing is { } closing)
        {
            double error = closing.Error is { } stated ? stated / Math.Sqrt(3) : sigma;
            double Chainage(double station) => station - survey.Readings[0].Station + chainages[0];
            targets.Add(new ChordTarget(Chainage(closing.From), Chainage(closing.To), closing.Length, offset, error));
            if (closing.Versine is { } height)
            {
                targets.Add(new ChordHeightTarget(Chainage(closing.From), Chainage(closing.To), height, offset, error));
            }
        }

        // Heading and place at the start are the user's word.
        var start = survey.Start - (Point2.FromAngle(survey.Heading).Left * offset);
        int misread = -1;
        ExactFit Without(ProfileFit f, int target) =>
            ExactFit.Polish(survey.Track, f.Profile, start, survey.Heading, targets,
                [.. f.LeftOut, .. Enumerable.Range(f.LeftOut.Length, targets.Count - f.LeftOut.Length).Select(i => i == target)]);
        ExactFit Exact(ProfileFit f) => Without(f, misread);

        // The closing chord is a reading like any other, and is left out at the same price.
        double all = Exact(kept[0]).SquareSum;
        var clearest = Enumerable.Range(observations.Length, targets.Count - observations.Length)
            .Select(i => (Target: i, Gain: all - Without(kept[0], i).SquareSum)).DefaultIfEmpty().MaxBy(c => c.Gain);
        misread = clearest.Gain > ProfileFit.OutlierPrice(observations.Length) ? clearest.Target : -1;
        return FittedShapes.Of(kept, Exact, [.. Enumerable.Range(0, observations.Length).Where(i => groups.Single && kept[0].LeftOut[i])], [], null)
        with
        {
            Closing = misread < 0 ? null : targets[misread],
        };
    }

    /// <summary>Chainage of the centre at each station. A rail on the inside of a curve is shorter than the centre, by its
    /// offset times the turn, which the versines themselves give.</summary>
    public static double[] Chainages(VersineSurvey survey)
    {
        double half = survey.Chord / 2;
        double[] chainages = new double[survey.Readings.Count];
        for (int i = 0; i < chainages.Length; i++)
        {
            double from = i == 0 ? Math.Min(0, survey.Readings[0].Station - half) : survey.Readings[i - 1].Station;
            double bend = Curvature(survey.Readings[i].Versine, half), step = survey.Readings[i].Station - from;
            chainages[i] = (i == 0 ? 0 : chainages[i - 1]) + (step * (1 + (survey.FromCentre * bend)));
        }

        return chainages;
    }

    /// <summary>Curvature of the arc with a versine over a half chord, from v(2R − v) = h².</summary>
    public static double Curvature(double versine, double half) => 2 * versine / ((half * half) + (versine * versine));
}
