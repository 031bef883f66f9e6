using PlatformForge.Geometry;

namespace PlatformForge.Track;

/// <summary>
/// A stretch of track whose curvature changes linearly along it: straight (nil), circular curve (constant) or
/// clothoid transition.
/// </summary>
public sealed class CentrelineElement
{
    private readonly Point2 startTangent;
    private readonly ClothoidPanel[] panels;
    private readonly double panelLength;

    /// <param name="start">First point, mm.</param>
    /// <param name="heading">Direction at the first point, radians.</param>
    /// <param name="length">Arc length, mm, above zero.</param>
    /// <param name="startCurvature">Curvature at the first point, 1/mm, left positive.</param>
    /// <param name="endCurvature">Curvature at the last point, 1/mm.</param>
    public CentrelineElement(Point2 start, double heading, double length, double startCurvature, double endCurvature)
    {
        (Start, Heading, Length, StartCurvature, EndCurvature) = (start, heading, length, startCurvature, endCurvature);
        startTangent = Point2.FromAngle(heading);
        panels = startCurvature == endCurvature ? [] : ClothoidPanel.Divide(this);
        panelLength = length / Math.Max(1, panels.Length);
    }

    /// <summary>First point, mm.</summary>
    public Point2 Start { get; }

    /// <summary>Direction at the first point, radians.</summary>
    public double Heading { get; }

    /// <summary>Arc length, mm.</summary>
    public double Length { get; }

    /// <summary>Curvature at the first point, 1/mm, left positive.</summary>
    public double StartCurvature { get; }

    /// <summary>Curvature at the last point, 1/mm.</summary>
    public double EndCurvature { get; }

    public bool IsCircular => StartCurvature == EndCurvature && StartCurvature != 0;

    /// <summary>Heading in radians at a distance from the start, not reduced to ±π.</summary>
    public double HeadingAt(double distance) =>
        Heading + (distance * (StartCurvature + ((EndCurvature - StartCurvature) * distance / (2 * Length))));

    public double CurvatureAt(double distance) => StartCurvature + ((EndCurvature - StartCurvature) * distance / Length);

    /// <summary>Frame at a distance in mm from the start, 0 to <see cref="Length"/>.</summary>
    public TrackFrame At(double distance)
    {
        if (panels.Length > 0)
        {
            int panel = Math.Clamp((int)(distance / panelLength), 0, panels.Length - 1);
            return panels[panel].At(distance - ((panel + 0.5) * panelLength), CurvatureAt(distance));
        }

        if (StartCurvature == 0)
        {
            return new(Start + (startTangent * distance), startTangent, 0);
        }

        var (sin, cos) = Math.SinCos(Heading + (StartCurvature * distance));
        var tangent = new Point2(cos, sin);
        return new(Start + ArcChord(distance), tangent, StartCurvature);
    }

    // Chord of an arc by its half angle: the difference of two sines would lose digits where the curve is flat.
    private Point2 ArcChord(double distance)
    {
        double half = StartCurvature * distance / 2;
        var (sin, cos) = Math.SinCos(Heading + half);
        double chord = Math.Abs(half) < FlatHalfTurn ? distance * (1 - (half * half / 6)) : Math.Sin(half) * 2 / StartCurvature;
        return new(chord * cos, chord * sin);
    }

    // Below this half turn in radians the second term of sin x / x leaves an error under 1e-18.
    private const double FlatHalfTurn = 1e-4;
}
