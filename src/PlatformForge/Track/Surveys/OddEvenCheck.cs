using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Track.Surveys;

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

    /// <param name="readings">Versines at even stations, in order.</param>
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

        return new(straight, odd, even, OnceInHundred * rulerError * Math.Sqrt(readings.Count / 3.0));
    }

    /// <summary>The check in words.</summary>
    public Finding AsFinding(string key) => !Applies
        ? Finding.Note("PF2122", key, "Odd and even sums of the versines: not applicable, since the survey does not begin and end on straight track.")
        : Passes
        ? Finding.Note("PF2122", key, Invariant($"Odd and even sums of the versines agree: {Odd:0.##} and {Even:0.##} mm."))
        : Finding.Warning("PF2122", key, Invariant($"The sums of odd and even versines are {Odd:0.##} and {Even:0.##} mm; reading errors explain a difference of {Allowed:0.##} mm."), "One versine or more is misread, or a station was skipped.", FaultKind.Input);
}
