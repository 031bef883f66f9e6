using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Geometry;
using static System.FormattableString;

namespace PlatformForge.Exports.Paper;

/// <summary>The bars by which a print is measured: 100 mm and 4 in on one line, across the sheet at its foot and up it at its left.</summary>
internal static class ScaleBars
{
    private const double Inches = 4 * Figures.MmPerInch;
    private static readonly Pen Line = new(0.15, HouseStyle.Ink), Fine = new(0.1, HouseStyle.Ink);
    private static readonly TextStyle Words = new(2, HouseStyle.Ink), Bold = new(2.2, HouseStyle.Ink, Bold: true);

    public static void DrawOn(Sheet sheet, SheetRoom room)
    {
        Bar(sheet, new(room.Window.Left, room.Window.Bottom + 7.5), new(1, 0), "across");
        Bar(sheet, new(room.Window.Left - 5.5, room.Window.Bottom), new(0, -1), "up");
    }

    // Runs from a place in a direction; mm on its left as one looks along it, inches on its right.
    private static void Bar(Sheet sheet, Point2 from, Point2 along, string which)
    {
        var left = new Point2(along.Y, -along.X);
        double angle = Math.Atan2(along.Y, along.X) * 180 / Math.PI;
        Point2 At(double x, double y) => from + (along * x) + (left * y);
        sheet.Line(At(0, 0), At(Inches, 0), Line);
        for (int mm = 0; mm <= PaperSpec.BarLength; mm += 10)
        {
            bool isEnd = mm is 0 or 100;
            sheet.Line(At(mm, 0), At(mm, isEnd ? 3 : mm == 50 ? 2 : 1.2), isEnd ? Line : Fine);
        }

        for (int half = 0; half <= 8; half++)
        {
            sheet.Line(
                At(half * Figures.MmPerInch / 2, 0),
                At(half * Figures.MmPerInch / 2, half is 0 or 8 ? -3 : half % 2 == 0 ? -1.8 : -1),
                half is 0 or 8 ? Line : Fine);
        }

        sheet.Text(Invariant($"100 mm {which}: measure between the ticks"), At(50, 3.4), Bold, TextAnchor.Middle, angle);
        sheet.Text("0", At(0.6, 1.4), Words, TextAnchor.Start, angle);
        sheet.Text("100", At(PaperSpec.BarLength - 0.6, 1.4), Words, TextAnchor.End, angle);
        sheet.Text("0", At(0.6, -2.8), Words, TextAnchor.Start, angle);
        sheet.Text("4 in", At((Inches / 2) + 6, -3.4), Words, TextAnchor.Middle, angle);
    }
}
