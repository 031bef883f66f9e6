using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Track.Surveys;

/// <summary>A survey has to cover a platform and the longest vehicle's length beyond both its ends: vehicles reach over a
/// platform's end from where it is not.</summary>
public static class SurveyExtentRule
{
    /// <summary>Faults of a line that ends too soon.</summary>
    /// <param name="key">Key of the survey.</param>
    /// <param name="line">The surveyed centreline.</param>
    /// <param name="from">First chainage of the platform, mm.</param>
    /// <param name="to">Last chainage, mm.</param>
    /// <param name="longest">Length of the longest vehicle, mm.</param>
    public static IEnumerable<Finding> Check(string key, Centreline line, double from, double to, double longest)
    {
        if (from < longest)
        {
            yield return Finding.Error("PF2128", key, Invariant($"The survey begins {from:0} mm before the platform; the longest vehicle is {longest:0} mm long."), Invariant($"Measure from {longest - from:0} mm farther back."));
        }

        if (line.Length - to < longest)
        {
            yield return Finding.Error("PF2128", key, Invariant($"The survey ends {line.Length - to:0} mm behind the platform; the longest vehicle is {longest:0} mm long."), Invariant($"Measure {longest - line.Length + to:0} mm farther on."));
        }
    }
}
