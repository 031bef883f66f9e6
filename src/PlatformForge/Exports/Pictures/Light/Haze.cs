using System.Runtime.CompilerServices;
using PlatformForge.Geometry;

namespace PlatformForge.Exports.Pictures.Light;

/// <summary>The drawings' paper, into which what lies far off fades.</summary>
internal sealed class Haze
{
    // Share of the paper in what is farthest.
    private const double Thickest = 0.45;

    private readonly View view;
    private readonly double near, far;

    public Haze(View view, IReadOnlyList<Point3>? framed)
    {
        this.view = view;
        double[] ahead = framed is null || view.Eye is null ? [] : [.. framed.Select(view.Ahead)];
        (near, far) = ahead.Length > 0 && ahead.Max() > ahead.Min() ? (ahead.Min(), ahead.Max()) : (0, double.PositiveInfinity);
    }

    /// <summary>The paper of all sheets.</summary>
    public static LinearColour Paper { get; } = LinearColour.Of(PlatformForge.Exports.Drawings.Ink.HouseStyle.Paper);

    /// <summary>A colour as it is seen at a place.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public LinearColour Over(LinearColour colour, Point3 place)
    {
        double share = double.IsFinite(far) ? Thickest * Math.Clamp((view.Ahead(place) - near) / (far - near), 0, 2)
            / (1 + Math.Clamp((view.Ahead(place) - far) / (far - near), 0, 1)) : 0;
        return (colour * (1 - share)) + (Paper * share);
    }
}
