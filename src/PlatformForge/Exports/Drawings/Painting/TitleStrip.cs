using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Pictures;

namespace PlatformForge.Exports.Drawings.Painting;

/// <summary>Puts a title under a picture, on the paper of all sheets, written as the sheets are.</summary>
public static class TitleStrip
{
    private const double Depth = 15, Margin = 8, LeastWidth = 160; // mm of paper

    /// <summary>The picture with its title below it.</summary>
    /// <param name="picture">The picture.</param>
    /// <param name="title">What it shows.</param>
    /// <param name="note">A line in small type.</param>
    /// <param name="right">A line in small type on the right.</param>
    public static PixelImage Under(PixelImage picture, string title, string note, string right)
    {
        double scale = Math.Min(SheetPainter.UsualScale, picture.Width / LeastWidth), width = picture.Width / scale;
        var sheet = new Sheet(width, Depth, title);
        sheet.Line(new(Margin, 0.6), new(width - Margin, 0.6), HouseStyle.Outline);
        sheet.Text(title, new(Margin, 6.6), HouseStyle.Heading);
        sheet.Text(right, new(width - Margin, 6.6), HouseStyle.Label, TextAnchor.End);
        sheet.Text(note, new(Margin, 11.6), TitleBlock.Fitting(note, HouseStyle.Label with { Colour = HouseStyle.Quiet }, width - (2 * Margin)));
        var strip = SheetPainter.Paint(sheet, scale);
        var pixels = new byte[3 * picture.Width * (picture.Height + strip.Height)];
        picture.Pixels.CopyTo(pixels, 0);
        for (int y = 0; y < strip.Height; y++)
        {
            strip.Pixels.AsSpan(3 * y * strip.Width, 3 * Math.Min(strip.Width, picture.Width)).CopyTo(pixels.AsSpan(3 * picture.Width * (picture.Height + y)));
        }

        return new(picture.Width, picture.Height + strip.Height, pixels);
    }
}
