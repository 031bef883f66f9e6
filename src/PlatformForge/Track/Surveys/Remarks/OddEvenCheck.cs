using PlatformForge.Track.Surveys.Readings;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Track.Surveys.Remarks;

/// <summary>
/// The free check of versines: over one curve that begins and ends on straight track, the sums of the odd and of the even
/// stations agree. Where the survey does not begin and end on straight track it says nothing.
/// </summary>
/// <param name="Applies">Whether the check may be used.</param>
/// <param name="Odd">Sum at the first, third … station, mm.</param>
/// <param name="Even">Sum at the others, mm.</param>
/// <param name="Allowed">Difference in mm that reading errors explain in 99 of 100 surveys.</param>
public sealed record OddEvenCheck(bool Applies, double Odd, double Even, double Allowed)
{
    // Stations at either end that have to show straight track.
    private const int EndStations = 2;

    // Normal deviate exceeded, up or down, once in a hundred.
    private const double OnceInHundred = 2.576;

    /// <summary>Whether the sums agree, or the check does not apply.</summary>
    public bool Passes => !Applies || Math.Abs(Odd - Even) <= Allowed;

    /// <summary>Whether the stations are evenly spaced; otherwise the check does not apply.</summary>
    public bool Steady { get; init; } = true;

    // Steps between stations that differ from their mean by no more than this part of it are even: a step is marked by eye.
    private const double EvenPart = 0.05;

    /// <summary>Distance between stations in mm where it is the same everywhere, or null.</summary>
    /// <param name="readings">Versines in order.</param>
    public static double? EvenSpacing(IReadOnlyList<VersineReading> readings)
    {
        if (readings.Count < 2)
        {
            return null;
        }

        double mean = (readings[^1].Station - readings[0].Station) / (readings.Count - 1);
        for (int i = 1; i < readings.Count; i++)
        {
            if (Math.Abs(readings[i].Station - readings[i - 1].Station - mean) > EvenPart * mean)
            {
                return null;
            }
        }

        return mean;
    }

    /// <param name="readings">Versines, in order.</param>
    /// <param name="rulerError">Greatest reading error, mm.</param>
    public static OddEvenCheck Of(IReadOnlyList<VersineReading> readings, double rulerError)
    {
        double odd = 0, even = 0;
        bool straight = readings.Count > 2 * EndStations;
        for (int i = 0; i < readings.Count; i++)
        {
            (odd, even) = i % 2 == 0 ? (odd + readings[i].Versine, even) : (odd, even + readings[i].Versine);
            bool end = i < EndStations || i >= readings.Count - EndStations;
            straight &= !end || Math.Abs(readings[i].Versine) <= rulerError;
        }

        bool steady = EvenSpacing(readings) is not null;
        return new(straight && steady, odd, even, OnceInHundred * rulerError * Math.Sqrt(readings.Count / 3.0)) { Steady = steady };
    }

    /// <summary>The check in words.</summary>
    /// <param name="key">Key of the survey.</param>
    /// <param name="explained">Whether a line was found that meets every versine within its error; then none needs to be misread.</param>
    public Finding AsFinding(string key, bool explained = false) => !Steady
        ? Finding.Note("PF2122", key, "Odd and even sums of the versines: not applicable, since the stations are not evenly spaced.")
        : !Applies
        ? Finding.Note("PF2122", key, "Odd and even sums of the versines: not applicable, since the survey does not begin and end on straight track.")
        : Passes
        ? Finding.Note("PF2122", key, Invariant($"Odd and even sums of the versines agree: {Odd:0.##} and {Even:0.##} mm."))
        : explained
        ? Finding.Note("PF2122", key,
            Invariant($"The sums of odd and even versines are {Odd:0.##} and {Even:0.##} mm, which differ by more than the {Allowed:0.##} mm that reading ")
                + "errors explain in 99 of 100 surveys; yet the line meets every versine within its error.",
            "Look whether a station was skipped.")
        : Finding.Warning("PF2122", key,
            Invariant($"The sums of odd and even versines are {Odd:0.##} and {Even:0.##} mm; reading errors explain a difference of {Allowed:0.##} mm."),
            "One versine or more is misread, or a station was skipped.", FaultKind.Input);
}
