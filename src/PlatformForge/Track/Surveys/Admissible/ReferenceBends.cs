using PlatformForge.Geometry;

namespace PlatformForge.Track.Surveys.Admissible;

/// <summary>Lines told by their curvature at even nodes, even between them: clothoids end to end.</summary>
internal static class ReferenceBends
{
    // Begun a little within the bounds, so that every row has room.
    private const double Inside = 0.9;

    /// <summary>Curvatures at the nodes that come near those of any line, kinks and sudden changes too, within the bounds.</summary>
    /// <param name="line">The line.</param>
    /// <param name="first">Its chainage at the first node, mm.</param>
    /// <param name="grid">The nodes.</param>
    /// <param name="bend">Greatest curvature, 1/mm.</param>
    /// <param name="rate">Greatest rate of change, 1/mm².</param>
    public static double[] Of(Centreline line, double first, SplineGrid grid, double bend, double rate)
    {
        int n = grid.Cells + 1;
        double[] bends = new double[n];
        double most = Inside * bend, step = Inside * rate * grid.Step;
        for (int j = 0; j < n; j++)
        {
            double s = first + grid.Node(j);
            var (a, b) = (line.At(s - (grid.Step / 2)).Tangent, line.At(s + (grid.Step / 2)).Tangent);
            bends[j] = Math.Clamp(Math.Atan2(Point2.Cross(a, b), Point2.Dot(a, b)) / grid.Step, -most, most);
        }

        // The least line over it and the greatest under it that change no faster; midway between them does not either.
        double[] over = [.. bends], under = [.. bends];
        for (int j = 1; j < n; j++)
        {
            (over[j], under[j]) = (Math.Max(over[j], over[j - 1] - step), Math.Min(under[j], under[j - 1] + step));
        }

        for (int j = n - 2; j >= 0; j--)
        {
            (over[j], under[j]) = (Math.Max(over[j], over[j + 1] - step), Math.Min(under[j], under[j + 1] + step));
        }

        return [.. over.Zip(under, (a, b) => (a + b) / 2)];
    }

    /// <summary>Draws curvatures that all but touch their bounds a little towards nil, so that every row has room; those of a middle line
    /// never do.</summary>
    public static void KeepInside(double[] bends, double step, double bend, double rate)
    {
        double most = bends.Max(b => Math.Abs(b) / bend);
        for (int j = 1; j < bends.Length; j++)
        {
            most = Math.Max(most, Math.Abs(bends[j] - bends[j - 1]) / (rate * step));
        }

        for (int j = 0; j < bends.Length && most > Nearest; j++)
        {
            bends[j] *= Nearest / most;
        }
    }

    private const double Nearest = 0.9999;

    /// <summary>The line.</summary>
    public static Centreline Lay(string name, Point2 start, double heading, double[] bends, SplineGrid grid)
    {
        var elements = new CentrelineElement[grid.Cells];
        for (int j = 0; j < elements.Length; j++)
        {
            elements[j] = new(start, heading, grid.Step, bends[j], bends[j + 1]);
            start = elements[j].At(grid.Step).Position;
            heading = elements[j].HeadingAt(grid.Step);
        }

        return new(name, elements);
    }
}
