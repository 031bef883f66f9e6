using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Geometry;
using static System.FormattableString;

namespace PlatformForge.Exports.Stock;

/// <summary>A sheet of cut lines as a drawing of its own size and nothing else on it: a cutter follows every line that it finds.</summary>
internal static class StockDrawing
{
    private static readonly Pen Cut = new(0.1, new(0xFF, 0x00, 0x00)), Score = new(0.1, new(0x00, 0x00, 0xFF)), Mark = new(0.1, new(0x00, 0x80, 0x00));

    public static Sheet Of(CutSheet sheet, Point2 size, string title)
    {
        var drawing = new Sheet(size.X, size.Y, title)
        {
            HasGround = false,
            Description = Invariant($"{sheet.Parts.Count} parts at full size. Red is cut through, blue is scored, green is drawn."),
        };
        Point2 Down(Point2 p) => new(p.X, size.Y - p.Y);
        foreach (var part in sheet.Parts)
        {
            foreach (var line in part.Lines)
            {
                var points = line.Points.Select(Down);
                if (line.IsClosed)
                {
                    drawing.Area(points, null, PenOf(line.Layer));
                }
                else
                {
                    drawing.Lines(points, PenOf(line.Layer));
                }
            }

            foreach (var round in part.Rounds)
            {
                drawing.Circle(Down(round.Middle), round.Diameter / 2, null, PenOf(round.Layer));
            }

            foreach (var words in part.Words)
            {
                drawing.Text(words.Text, Down(words.At), new(words.Size, Mark.Colour));
            }
        }

        return drawing;
    }

    private static Pen PenOf(CutLayer layer) => layer switch { CutLayer.Cut => Cut, CutLayer.Score => Score, _ => Mark };
}
