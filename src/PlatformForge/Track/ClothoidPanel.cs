using PlatformForge.Geometry;

namespace PlatformForge.Track;

/// <summary>
/// A short stretch of a clothoid as a power series about its middle. With heading θ(τ) = θm + κm·τ + κ'·τ²/2 the unit
/// tangent y = e^(iθ) obeys y' = i(κm + κ'τ)y, so its coefficients follow from one another:
/// c(n+1) = i(κm·c(n) + κ'·c(n−1))/(n+1); position is the series integrated term by term. A panel turns by at most
/// <see cref="PanelTurn"/> P. The slowest series is that of a panel with no curvature in its middle, which runs in powers of
/// κ'τ²/2 ≤ P/4: the first term left out is below (P/4)^6/6! = 4e-13 in the tangent and a tenth of that times the panel's half length in the
/// position.
/// </summary>
internal sealed class ClothoidPanel
{
    /// <summary>Greatest turn of a panel, radians.</summary>
    public const double PanelTurn = 0.1;

    private const int Terms = 11;

    private readonly Point2 middle;
    private readonly double[] x = new double[Terms];
    private readonly double[] y = new double[Terms];

    // c(n), the coefficients of the tangent, are kept; those of the position are c(n)/(n+1).
    private ClothoidPanel(double heading, double curvature, double rate, double half, Point2 start)
    {
        var (s, c) = Math.SinCos(heading);
        (x[0], y[0]) = (c, s);
        for (int n = 0; n + 1 < Terms; n++)
        {
            double px = curvature * x[n], py = curvature * y[n];
            if (n > 0)
            {
                px += rate * x[n - 1];
                py += rate * y[n - 1];
            }

            (x[n + 1], y[n + 1]) = (-py / (n + 1), px / (n + 1));
        }

        middle = start - Run(-half);
    }

    /// <summary>Divides a clothoid into panels of equal length.</summary>
    public static ClothoidPanel[] Divide(CentrelineElement element)
    {
        double turn = Math.Max(Math.Abs(element.StartCurvature), Math.Abs(element.EndCurvature)) * element.Length;
        var panels = new ClothoidPanel[Math.Max(1, (int)Math.Ceiling(turn / PanelTurn))];
        double half = element.Length / panels.Length / 2, rate = (element.EndCurvature - element.StartCurvature) / element.Length;
        var start = element.Start;
        for (int i = 0; i < panels.Length; i++)
        {
            double at = ((2 * i) + 1) * half;
            panels[i] = new(element.HeadingAt(at), element.CurvatureAt(at), rate, half, start);
            start = panels[i].middle + panels[i].Run(half);
        }

        return panels;
    }

    /// <summary>Frame at a distance from the middle of the panel, mm; the curvature is handed through.</summary>
    public TrackFrame At(double fromMiddle, double curvature)
    {
        double tx = x[Terms - 1], ty = y[Terms - 1];
        double px = tx * Reciprocal[Terms - 1], py = ty * Reciprocal[Terms - 1];
        for (int n = Terms - 2; n >= 0; n--)
        {
            tx = (tx * fromMiddle) + x[n];
            ty = (ty * fromMiddle) + y[n];
            px = (px * fromMiddle) + (x[n] * Reciprocal[n]);
            py = (py * fromMiddle) + (y[n] * Reciprocal[n]);
        }

        return new(new(middle.X + (px * fromMiddle), middle.Y + (py * fromMiddle)), new(tx, ty), curvature);
    }

    private Point2 Run(double fromMiddle)
    {
        double px = 0, py = 0;
        for (int n = Terms - 1; n >= 0; n--)
        {
            px = (px * fromMiddle) + (x[n] * Reciprocal[n]);
            py = (py * fromMiddle) + (y[n] * Reciprocal[n]);
        }

        return new(px * fromMiddle, py * fromMiddle);
    }

    private static readonly double[] Reciprocal = [.. Enumerable.Range(1, Terms).Select(n => 1.0 / n)];
}
