namespace PlatformForge.Track.Surveys.Fitting.Lines;

/// <summary>
/// A unit change of curvature, nil before its middle m less half its length ℓ, one after m + ℓ/2, rising evenly between, and
/// what it does to the heading (<see cref="Once"/>) and to the offset (<see cref="Twice(double, double, double)"/>) of the track behind it. A sudden
/// change has ℓ = 0. Beyond it the offset is y²/2 + ℓ²/24 with y = s − m: the shift of a transition.
/// </summary>
internal static class Ramp
{
    /// <summary>Integral of the change up to s.</summary>
    public static double Once(double s, double middle, double length)
    {
        double x = s - middle + (length / 2);
        return x <= 0 ? 0 : x >= length ? s - middle : x * x / (2 * length);
    }

    /// <summary>Integral of <see cref="Once"/> up to s; its slope by the middle is minus <see cref="Once"/>.</summary>
    public static double Twice(double s, double middle, double length) => Twice(s, middle, length, Shift(length));

    /// <summary>The same where the shift is known already.</summary>
    public static double Twice(double s, double middle, double length, double shift)
    {
        double y = s - middle, x = y + (length / 2);
        return x <= 0 ? 0 : x >= length ? (y * y / 2) + shift : x * x * x / (6 * length);
    }

    /// <summary>The shift of a transition of a length.</summary>
    public static double Shift(double length) => length * length / 24;

    /// <summary>Slope of <see cref="Twice(double, double, double)"/> by the square of the length.</summary>
    public static double BySquare(double s, double middle, double length)
    {
        double x = s - middle + (length / 2);
        if (x <= 0)
        {
            return 0;
        }

        double part = x / length;
        return x >= length ? 1.0 / 24 : part * part * ((1.0 / 8) - (part / 12));
    }
}
