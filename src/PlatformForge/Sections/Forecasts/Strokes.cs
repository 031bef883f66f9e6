namespace PlatformForge.Sections.Forecasts;

/// <summary>Time of straight moves between corners, uniform acceleration (any handbook of mechanics: v² = u² + 2as).</summary>
/// <param name="Acceleration">mm/s².</param>
/// <param name="CornerJump">Change of speed that a corner may ask at once, mm/s.</param>
internal readonly record struct Strokes(double Acceleration, double CornerJump)
{
    /// <summary>Speed at which a corner can be taken: turning by an angle at speed v changes the velocity by 2 v sin(angle / 2).</summary>
    public double Corner(double halfSine, double speed) => 2 * halfSine * speed <= CornerJump ? speed : CornerJump / (2 * halfSine);

    /// <summary>Seconds for a straight move.</summary>
    /// <param name="length">mm.</param>
    /// <param name="speed">Speed aimed at, mm/s.</param>
    /// <param name="enter">Speed at its start, mm/s, at most that aimed at.</param>
    /// <param name="leave">Speed at its end, mm/s, at most that aimed at.</param>
    public double Seconds(double length, double speed, double enter, double leave)
    {
        double slower = Math.Min(enter, leave), faster = Math.Max(enter, leave);
        if ((faster * faster) - (slower * slower) >= 2 * Acceleration * length)
        {
            return 2 * length / (slower + Math.Sqrt((slower * slower) + (2 * Acceleration * length)));
        }

        double top = Math.Min(speed, Math.Sqrt((Acceleration * length) + (((enter * enter) + (leave * leave)) / 2)));
        double changing = (((top * top) - (enter * enter)) + ((top * top) - (leave * leave))) / (2 * Acceleration);
        return (((2 * top) - enter - leave) / Acceleration) + ((length - changing) / top);
    }
}
