using PlatformForge.Geometry;

namespace PlatformForge.Exports.Drawings.Ink;

/// <summary>Puts words where no others are: the first free place of those offered is taken, and none when all are taken.</summary>
internal sealed class Labels(Sheet sheet)
{
    private const double Apart = 0.6; // mm between two boxes
    private const double PatchRim = 0.5; // mm of patch round the words
    private readonly List<(double X0, double Y0, double X1, double Y1)> taken = [];

    /// <summary>Writes the words at the first place that is free and on the paper.</summary>
    public bool Put(string text, TextStyle style, params IEnumerable<(Point2 At, TextAnchor Anchor, double Angle)> places) =>
        PutOver(text, style, null, places);

    /// <summary>The same with a patch of colour behind the words, where lines run through.</summary>
    public bool PutOver(string text, TextStyle style, Fill? patch, params IEnumerable<(Point2 At, TextAnchor Anchor, double Angle)> places)
    {
        foreach (var (at, anchor, angle) in places)
        {
            var box = BoxOf(new(text, at, style, anchor, angle));
            if (IsFree(box))
            {
                taken.Add(box);
                if (patch is not null)
                {
                    sheet.Area(new SheetText(text, at, style, anchor, angle).Box(PatchRim), patch);
                }

                sheet.Text(text, at, style, anchor, angle);
                return true;
            }
        }

        return false;
    }

    /// <summary>Keeps words out of a box.</summary>
    public void Keep(double x0, double y0, double x1, double y1) => taken.Add((x0, y0, x1, y1));

    private bool IsFree((double X0, double Y0, double X1, double Y1) box) =>
        box.X0 > TitleBlock.Margin && box.Y0 > TitleBlock.Margin && box.X1 < sheet.Width - TitleBlock.Margin
        && box.Y1 < sheet.Height - TitleBlock.Margin - TitleBlock.Depth
        && !taken.Any(t => box.X0 < t.X1 + Apart && t.X0 < box.X1 + Apart && box.Y0 < t.Y1 + Apart && t.Y0 < box.Y1 + Apart);

    private static (double X0, double Y0, double X1, double Y1) BoxOf(SheetText words)
    {
        var corners = words.Box();
        return (corners.Min(c => c.X), corners.Min(c => c.Y), corners.Max(c => c.X), corners.Max(c => c.Y));
    }
}
