using PlatformForge.Geometry;

namespace PlatformForge.Exports.Paper;

/// <summary>Leads from the layout to a sheet at full size: a turn and a shift, then y down.</summary>
/// <param name="Middle">Place on the layout that lies at <paramref name="At"/>.</param>
/// <param name="Along">Unit direction on the layout that runs to the right on the sheet.</param>
/// <param name="At">Place on the sheet, mm from its top left corner.</param>
internal sealed record SheetFrame(Point2 Middle, Point2 Along, Point2 At)
{
    public Point2 ToSheet(Point2 p) => At + Turned(p - Middle);

    public Point2 ToLayout(Point2 q)
    {
        var d = q - At;
        return Middle + (Along * d.X) + (Along.Left * -d.Y);
    }

    /// <summary>A displacement of the layout as it lies on the sheet.</summary>
    public Point2 Turned(Point2 d) => new(Point2.Dot(d, Along), -Point2.Cross(Along, d));

    /// <summary>Angle in degrees, clockwise on the sheet, of a direction of the layout.</summary>
    public double AngleOf(Point2 direction) => Turned(direction) is var t ? Math.Atan2(t.Y, t.X) * 180 / Math.PI : 0;
}

/// <summary>A rectangle on a sheet, mm, y down.</summary>
internal readonly record struct SheetWindow(double Left, double Top, double Right, double Bottom)
{
    public double Width => Right - Left;

    public double Height => Bottom - Top;

    public Point2 Middle => new((Left + Right) / 2, (Top + Bottom) / 2);

    public bool Holds(Point2 p, double rim = 0) => p.X >= Left + rim && p.X <= Right - rim && p.Y >= Top + rim && p.Y <= Bottom - rim;
}
