using PlatformForge.Exports.Drawings.Ink;
using static System.FormattableString;

namespace PlatformForge.Exports.Paper;

/// <summary>What stands at the foot of every full-size sheet, beside the bar: which it is, how it is printed, whose it is.</summary>
internal static class SheetFoot
{
    public static void DrawOn(Sheet sheet, SheetRoom room, PaperSpec paper, string heading, string more, SheetOrigin origin)
    {
        double x = room.Window.Left + Math.Max(108, room.Window.Width * 0.5), top = room.Window.Bottom, space = room.Window.Right - x;
        string corrected = paper.MeasuredBars is { } b ? Invariant($", drawn for a printer that makes 100 mm {b.X:0.##} across and {b.Y:0.##} up") : "";
        string[] lines =
        [
            Invariant($"{paper.SizeInWords}, full size{corrected}. Print at 100 %, not fitted to the page.") + more,
            origin.Line,
            TitleBlock.Caution,
        ];
        var style = HouseStyle.Small with { Size = 2 };
        sheet.Text(heading, new(x, top + 5.2), TitleBlock.Fitting(heading, HouseStyle.Subheading, space));
        for (int i = 0; i < lines.Length; i++)
        {
            sheet.Text(lines[i], new(x, top + 9 + (3.4 * i)), TitleBlock.Fitting(lines[i], style, space));
        }
    }
}
