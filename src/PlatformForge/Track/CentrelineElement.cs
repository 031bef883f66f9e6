using PlatformForge.Geometry;

namespace PlatformForge.Track;

/// <summary>
/// A stretch of track whose curvature changes linearly along it: straight (nil), circular curve (constant) or
/// clothoid transition.
/// </summary>
/// <param name="Start">First point, mm.</param>
/// <param name="Heading">Direction at the first point, radians.</param>
/// <param name="Length">Arc length, mm, above zero.</param>
/// <param name="StartCurvature">Curvature at the first point, 1/mm, left positive.</param>
/// <param name="EndCurvature">Curvature at the last point, 1/mm.</param>
public sealed record CentrelineElement(Point2 Start, double Heading, double Length, double StartCurvature, double EndCurvature)
{
    // Nodes and weights of the 8-point Gauss-Legendre rule on [-1, 1] (Abramowitz and Stegun, table 25.4).
    private static readonly double[] Nodes = [0.1834346424956498, 0.5255324099163290, 0.7966664774136267, 0.9602898564975363];
    private static readonly double[] Weights = [0.3626837833783620, 0.3137066458778873, 0.2223810344533745, 0.1012285362903763];

    // A panel turns by no more than this, which keeps the rule's error below 1e-14 of the panel's length.
    private const double PanelTurn = 0.5;

    private readonly Point2 startTangent = Point2.FromAngle(Heading);

    public bool IsStraight => StartCurvature == 0 && EndCurvature == 0;

    public bool IsCircular => StartCurvature == EndCurvature && StartCurvature != 0;

    /// <summary>Heading in radians at a distance from the start, not reduced to ±π.</summary>
    public double HeadingAt(double distance) =>
        Heading + (distance * (StartCurvature + ((EndCurvature - StartCurvature) * distance / (2 * Length))));

    public double CurvatureAt(double distance) => StartCurvature + ((EndCurvature - StartCurvature) * distance / Length);

    /// <summary>Frame at a distance in mm from the start, 0 to <see cref="Length"/>.</summary>
    public TrackFrame At(double distance)
    {
        if (IsStraight)
        {
            return new(Start + (startTangent * distance), startTangent, 0);
        }

        double heading = HeadingAt(distance);
        var tangent = Point2.FromAngle(heading);
        return IsCircular
            ? new(Start + ((tangent - startTangent).Left * (-1 / StartCurvature)), tangent, StartCurvature)
            : new(Start + Integral(distance), tangent, CurvatureAt(distance));
    }

    private Point2 Integral(double distance)
    {
        double turn = Math.Max(Math.Abs(StartCurvature), Math.Abs(EndCurvature)) * distance;
        int panels = Math.Max(1, (int)Math.Ceiling(turn / PanelTurn));
        double half = distance / panels / 2, x = 0, y = 0;
        for (int panel = 0; panel < panels; panel++)
        {
            double middle = ((2 * panel) + 1) * half;
            for (int i = 0; i < Nodes.Length; i++)
            {
                var (s1, c1) = Math.SinCos(HeadingAt(middle - (half * Nodes[i])));
                var (s2, c2) = Math.SinCos(HeadingAt(middle + (half * Nodes[i])));
                x += Weights[i] * (c1 + c2);
                y += Weights[i] * (s1 + s2);
            }
        }

        return new(x * half, y * half);
    }
}
