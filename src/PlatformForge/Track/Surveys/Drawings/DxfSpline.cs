using PlatformForge.Geometry;

namespace PlatformForge.Track.Surveys.Drawings;

/// <summary>A B-spline, rational where weights are given, evaluated by de Boor's rule (C. de Boor, "On calculating with
/// B-splines", 1972).</summary>
internal sealed class DxfSpline(int degree, double[] knots, Point2[] control, double[] weights)
{
    // Points drawn per knot span: chords of a span that bends by a quarter turn then stay within some millionths of its size.
    private const int PerSpan = 256;

    public void Draw(CurveFlattener pen)
    {
        for (int i = 1; i < knots.Length; i++)
        {
            if (!(knots[i] >= knots[i - 1]))
            {
                throw new UnreadableDrawingException("A spline's knots do not rise.");
            }
        }

        bool begun = false;
        for (int span = degree; span < control.Length; span++)
        {
            double from = knots[span], width = knots[span + 1] - from;
            if (!(width > 0))
            {
                continue;
            }

            if (!begun)
            {
                pen.LineTo(At(span, from));
                begun = true;
            }

            if (degree == 1)
            {
                pen.LineTo(At(span, from + width));
            }
            else
            {
                int at = span;
                double second = 8 * CurveFlattener.RelativeError * PerSpan * PerSpan;
                pen.Sample(second, 1, 1, t => At(at, from + (width * t)));
            }
        }
    }

    private Point2 At(int span, double t)
    {
        Span<double> x = stackalloc double[degree + 1], y = stackalloc double[degree + 1], w = stackalloc double[degree + 1];
        for (int j = 0; j <= degree; j++)
        {
            int i = span - degree + j;
            w[j] = weights.Length == 0 ? 1 : weights[i];
            (x[j], y[j]) = (control[i].X * w[j], control[i].Y * w[j]);
        }

        for (int round = 1; round <= degree; round++)
        {
            for (int j = degree; j >= round; j--)
            {
                int i = span - degree + j;
                double a = (t - knots[i]) / (knots[i + degree - round + 1] - knots[i]);
                x[j] = ((1 - a) * x[j - 1]) + (a * x[j]);
                y[j] = ((1 - a) * y[j - 1]) + (a * y[j]);
                w[j] = ((1 - a) * w[j - 1]) + (a * w[j]);
            }
        }

        return new(x[degree] / w[degree], y[degree] / w[degree]);
    }
}
