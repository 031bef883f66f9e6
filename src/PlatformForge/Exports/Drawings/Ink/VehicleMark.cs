using PlatformForge.Exports.Looks;
using PlatformForge.Geometry;

namespace PlatformForge.Exports.Drawings.Ink;

/// <summary>A small shape for each vehicle, by its place in the project, in its colour.</summary>
internal static class VehicleMark
{
    // Corners round the middle; the first kind is a circle.
    private static readonly int[] Corners = [0, 4, 3, 5, 6, 8];

    public static void Draw(Sheet sheet, Point2 at, double radius, int vehicle, Rgb colour)
    {
        int corners = Corners[vehicle % Corners.Length];
        Pen pen = new(0.25, HouseStyle.Paper);
        if (corners == 0)
        {
            sheet.Circle(at, radius, new(colour), pen);
            return;
        }

        double start = corners == 4 ? Math.PI / 4 : -Math.PI / 2;
        sheet.Area(Enumerable.Range(0, corners).Select(i => at + (Point2.FromAngle(start + (2 * Math.PI * i / corners)) * (radius * 1.25))), new(colour), pen);
    }
}
