using System.Buffers;
using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Looks;
using PlatformForge.Exports.Pictures;
using PlatformForge.Geometry;

namespace PlatformForge.Exports.Drawings.Painting;

/// <summary>
/// Paints a sheet in pixels, for those whose viewer shows no SVG: round pens with smooth rims, areas, and letters of our own
/// drawn with a pen, since no typeface is the same on every machine. Same sheet, same pixels.
/// </summary>
public sealed class SheetPainter
{
    /// <summary>Pixels to a mm of paper where nothing else is said: 152 to the inch.</summary>
    public const double UsualScale = 6;

    private const int Channels = 3;

    private const double Tile = 3; // mm after which stripes come round again

    private readonly byte[] pixels;
    private readonly Mask mask;
    private readonly double scale;
    private readonly int width;

    private SheetPainter(int width, int height, double scale, Mask mask, byte[] pixels)
    {
        (this.width, this.scale, this.mask, this.pixels) = (width, scale, mask, pixels);
        int row = width * Channels, length = row * height;
        for (int i = 0; i < row; i += Channels)
        {
            (pixels[i], pixels[i + 1], pixels[i + 2]) = (HouseStyle.Paper.R, HouseStyle.Paper.G, HouseStyle.Paper.B);
        }

        for (int i = row; i < length; i += row)
        {
            pixels.AsSpan(0, row).CopyTo(pixels.AsSpan(i));
        }
    }

    /// <summary>The sheet as a picture.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="scale">Pixels to a mm of paper.</param>
    public static PixelImage Paint(Sheet sheet, double scale = UsualScale)
    {
        var (across, down) = Size(sheet, scale);
        var picture = new byte[across * down * Channels];
        Paint(sheet, scale, picture);
        return new(across, down, picture);
    }

    /// <summary>The sheet as a PNG, painted where others were painted before it.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="scale">Pixels to a mm of paper.</param>
    public static byte[] ToPng(Sheet sheet, double scale)
    {
        var (across, down) = Size(sheet, scale);
        byte[] picture = ArrayPool<byte>.Shared.Rent(across * down * Channels);
        try
        {
            Paint(sheet, scale, picture);
            return PngWriter.ToBytes(new(across, down, picture), isDrawing: true);
        }
        finally
        {
            ArrayPool<byte>.Shared.Return(picture);
        }
    }

    private static (int Across, int Down) Size(Sheet sheet, double scale) => ((int)Math.Ceiling(sheet.Width * scale), (int)Math.Ceiling(sheet.Height * scale));

    private static void Paint(Sheet sheet, double scale, byte[] to)
    {
        var (across, down) = Size(sheet, scale);
        using var cover = new Mask(across, down);
        var painter = new SheetPainter(across, down, scale, cover, to);
        foreach (var item in sheet.Items)
        {
            painter.Item(item);
        }
    }

    private void Item(SheetItem item)
    {
        switch (item)
        {
            case SheetPath path:
                Look(path.Points, path.Closed, path.Fill, path.Pen);
                break;
            case SheetCircle circle:
                int chords = (int)Math.Clamp(Math.Ceiling(circle.Radius * scale), 12, 90);
                Look([.. Enumerable.Range(0, chords).Select(k => circle.Middle + (Point2.FromAngle(2 * Math.PI * k / chords) * circle.Radius))], true,
                    circle.Fill, circle.Pen);
                break;
            case SheetText words:
                double pen = words.Style.Size * (words.Style.Bold ? PenStrokes.Bold : PenStrokes.Regular) * scale;
                foreach (var stroke in PenStrokes.Of(words))
                {
                    Stroke(stroke, false, pen);
                }

                Put(words.Style.Colour, 1, Pattern.Plain);
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(item), item.GetType().Name);
        }
    }

    private void Look(IReadOnlyList<Point2> points, bool closed, Fill? fill, Pen? pen)
    {
        if (fill is not null)
        {
            mask.Area([.. points.Select(p => p * scale)]);
            Put(fill.Colour, fill.Opacity, fill.Pattern);
        }

        if (pen is not null)
        {
            foreach (var (from, to) in Dashes.Of(points, closed, pen.Dashes))
            {
                mask.Stroke(from * scale, to * scale, pen.Width * scale);
            }

            Put(pen.Colour, 1, Pattern.Plain);
        }
    }

    private void Stroke(IReadOnlyList<Point2> points, bool closed, double pen)
    {
        foreach (var (from, to) in Dashes.Of(points, closed, []))
        {
            mask.Stroke(from * scale, to * scale, pen);
        }
    }

    private void Put(Rgb colour, double opacity, Pattern pattern) => mask.Take((at, part) =>
    {
        double strength = part * opacity;
        if (pattern != Pattern.Plain)
        {
            strength *= Stripes.Ink(pattern, (at % width / scale) % Tile, (at / width / scale) % Tile, scale);
        }

        int i = at * Channels;
        pixels[i] = Mix(pixels[i], colour.R, strength);
        pixels[i + 1] = Mix(pixels[i + 1], colour.G, strength);
        pixels[i + 2] = Mix(pixels[i + 2], colour.B, strength);
    });

    private static byte Mix(byte under, byte over, double part) => (byte)Math.Round(under + ((over - under) * part));
}
