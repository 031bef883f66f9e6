using PlatformForge.Clearance.Vehicles;

namespace PlatformForge.Clearance.Sweeping;

/// <summary>
/// One way in which a vehicle is off the middle of the track: its leading guided point by a share of the most that it can be, −1 to 1, left
/// positive, and its trailing
/// one by another. How far a place of the vehicle reaches is nearly linear in both, so the corners of the square tell of all between, but
/// for a curvature that
/// <see cref="SweepBounds"/> bounds; more states along the square's sides halve that as often as is needed.
/// </summary>
internal readonly record struct PlayState(double Leading, double Trailing)
{
    // How clearly, as a share of a guided point's play, the other way has to reach farther before a way is passed over: far more than the
    // curvature between.
    private const double Clearly = 0.1;

    /// <summary>States for two guided points, of which each can be off or not.</summary>
    /// <param name="points">The guided points.</param>
    /// <param name="steps">Into how many steps a side of the square is cut.</param>
    public static IReadOnlyList<PlayState> Of(in GuidedPoints points, int steps)
    {
        double[] Shares(bool loose) => loose ? [.. Enumerable.Range(0, steps + 1).Select(i => ((2.0 * i) / steps) - 1)] : [0];
        double[] leading = Shares(points.Leading.Most > 0), trailing = Shares(points.Trailing.Most > 0);
        return [.. from a in leading from b in trailing where leading.Length == 1 || trailing.Length == 1 || Math.Abs(a) == 1 || Math.Abs(b) == 1
            select new PlayState(a, b)];
    }

    /// <summary>
    /// Whether a place can be pressed farthest to one side in this state. Outward it moves by the leading point's play times ½ + lever and
    /// the trailing point's
    /// times ½ − lever, times how far it looks aside.
    /// </summary>
    /// <param name="side">+1 to the left, −1 to the right.</param>
    /// <param name="lever">Of the place, in distances of the guided points: x − y·(how much it looks ahead for looking aside) to the left.</param>
    /// <param name="about">By how much the lever may be otherwise: along an edge, or as the outward direction turns at a corner.</param>
    /// <param name="points">Whether a guided point can be off at all.</param>
    public bool CanBeFarthest(int side, double lever, double about, in GuidedPoints points) =>
        (points.Leading.Most == 0 || Fits(side * Leading, 0.5 + lever, about)) && (points.Trailing.Most == 0 || Fits(side * Trailing, 0.5 - lever, about));

    private static bool Fits(double share, double gain, double about) => share switch
    {
        >= 1 => gain + about >= -Clearly,
        <= -1 => gain - about <= Clearly,
        _ => Math.Abs(gain) <= about + Clearly,
    };
}
