using PlatformForge.Geometry;

namespace PlatformForge.Exports.Drawings.Ink;

/// <summary>The part of a sheet, mm from its upper left corner, into which a drawing goes.</summary>
internal readonly record struct DrawingWindow(double Left, double Top, double Right, double Bottom)
{
    public bool Holds(Point2 place) => place.X > Left && place.X < Right && place.Y > Top && place.Y < Bottom;
}
