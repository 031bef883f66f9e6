using PlatformForge.Geometry;

namespace PlatformForge.Exports.Drawings.Painting;

/// <summary>Cuts a line into the pieces that a broken pen draws.</summary>
internal static class Dashes
{
    // What is left of a dash under this, mm, is rounding: stepping on by it might not move.
    private const double Nothing = 1e-6;

    /// <param name="points">The line, mm.</param>
    /// <param name="closed">Whether it comes back to its start.</param>
    /// <param name="pattern">Lengths drawn and left out in turn, mm; empty draws all.</param>
    public static IEnumerable<(Point2 From, Point2 To)> Of(IReadOnlyList<Point2> points, bool closed, IReadOnlyList<double> pattern)
    {
        int at = 0;
        double left = pattern.Count > 0 ? pattern[0] : double.PositiveInfinity;
        for (int i = 1; i < points.Count + (closed ? 1 : 0); i++)
        {
            Point2 from = points[i - 1], step = points[i % points.Count] - from;
            double length = step.Length, done = 0;
            while (done < length)
            {
                double next = Math.Min(length, done + left);
                if (at % 2 == 0)
                {
                    yield return (from + (step * (done / length)), from + (step * (next / length)));
                }

                left -= next - done;
                done = next;
                if (left <= Nothing)
                {
                    at = (at + 1) % (pattern.Count + (pattern.Count % 2 * pattern.Count));
                    left = pattern[at % pattern.Count];
                }
            }
        }
    }
}
