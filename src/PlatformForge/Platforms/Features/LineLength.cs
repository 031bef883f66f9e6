namespace PlatformForge.Platforms.Features;

/// <summary>Length along a line beside the track as a function of chainage, and back: a table over close steps.</summary>
internal sealed class LineLength
{
    // Steps of the table, mm of chainage: over one, no track bends so fast that its stretch changes by a thousandth.
    private const double Step = 1;

    // A step halved so often is a thousandth of a thousandth of a millimetre.
    private const int Halvings = 20;

    private readonly double[] chainage, along;
    private readonly Func<double, double, double> step;

    /// <param name="from">First chainage, mm.</param>
    /// <param name="to">Last chainage, mm.</param>
    /// <param name="step">Length in the layout between two neighbouring chainages, mm.</param>
    public LineLength(double from, double to, Func<double, double, double> step)
    {
        this.step = step;
        int steps = Math.Max(2, (int)Math.Ceiling((to - from) / Step));
        chainage = new double[steps + 1];
        along = new double[steps + 1];
        for (int i = 0; i <= steps; i++)
        {
            chainage[i] = i == steps ? to : from + ((to - from) * i / steps);
            along[i] = i == 0 ? 0 : along[i - 1] + step(chainage[i - 1], chainage[i]);
        }
    }

    /// <summary>From end to end, mm.</summary>
    public double Total => along[^1];

    /// <summary>Length from the start to a chainage, mm.</summary>
    public double To(double s)
    {
        int i = Before(chainage, s);
        return s == chainage[i] ? along[i] : along[i] + step(chainage[i], s);
    }

    /// <summary>Chainage at a length from the start, mm: by halves of a step, since the track may begin to curve anywhere in it.</summary>
    public double At(double length)
    {
        int i = Before(along, length);
        double low = chainage[i], high = chainage[i + 1];
        for (int half = 0; half < Halvings && length > along[i]; half++)
        {
            double middle = (low + high) / 2;
            (low, high) = step(chainage[i], middle) < length - along[i] ? (middle, high) : (low, middle);
        }

        return length <= along[i] ? low : length >= along[i + 1] ? chainage[i + 1] : (low + high) / 2;
    }

    // Index of the step that holds a figure; the last one holds its own end.
    private static int Before(double[] table, double figure)
    {
        int found = Array.BinarySearch(table, figure);
        return Math.Clamp(found >= 0 ? found : ~found - 1, 0, table.Length - 2);
    }
}
