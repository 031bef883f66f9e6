using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
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
    // The coefficients of the tangent c(n), x and y, and those of the position, c(n)/(n+1), side by side: all four series run at once.
    private readonly Vector256<double>[] terms = new Vector256<double>[Terms];

    private ClothoidPanel(double heading, double curvature, double rate, double half, Point2 start)
    {
        var (y, x) = Math.SinCos(heading);
        double xBefore = 0, yBefore = 0;
        for (int n = 0; n < Terms; n++)
        {
            double share = 1.0 / (n + 1);
            terms[n] = Vector256.Create(x, y, x * share, y * share);
            double px = (curvature * x) + (rate * xBefore), py = (curvature * y) + (rate * yBefore);
            (xBefore, yBefore) = (x, y);
            (x, y) = (-py / (n + 1), px / (n + 1));
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
        var sums = Sums(fromMiddle);
        return new(new(middle.X + (sums[2] * fromMiddle), middle.Y + (sums[3] * fromMiddle)), new(sums[0], sums[1]), curvature);
    }

    private Point2 Run(double fromMiddle)
    {
        var sums = Sums(fromMiddle);
        return new(sums[2] * fromMiddle, sums[3] * fromMiddle);
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private Vector256<double> Sums(double fromMiddle)
    {
        var sums = Vector256<double>.Zero;
        for (int n = Terms - 1; n >= 0; n--)
        {
            sums = (sums * fromMiddle) + terms[n];
        }

        return sums;
    }
}
