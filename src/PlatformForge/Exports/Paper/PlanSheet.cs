using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Paper.FullSize;
using PlatformForge.Geometry;
using static System.FormattableString;

namespace PlatformForge.Exports.Paper;

/// <summary>Draws one full-size sheet: what lies in its window, how it joins its neighbours, the bars, and whose it is.</summary>
internal sealed class PlanSheet(FullSizeFigures figures, FigureIndex index, PaperSpec paper, SheetRoom room, SheetOrigin origin)
{
    private const double CrossArm = 4, CrossedAside = 13; // mm: from a cross to its ends, and to the middle of its figures

    public Sheet Draw(SheetTile tile, int count)
    {
        var sheet = new Sheet(room.Width, room.Height, Invariant($"{figures.Name}: sheet {tile.Number} of {count}"))
        {
            Stretch = paper.Stretch,
            HasGround = false,
            Description = Invariant($"Full-size plan of {figures.Name}, sheet {tile.Number} of {count}{Chainages(tile)}."),
        };
        double radius = Math.Sqrt((tile.Window.Width * tile.Window.Width) + (tile.Window.Height * tile.Window.Height)) / 2;
        foreach (var line in index.Near(tile.Frame.Middle, radius))
        {
            Draw(sheet, tile, line);
        }

        var words = new WindowWords(sheet, tile.Window);
        Marks(sheet, tile, words, radius);
        Joins(sheet, tile, words);
        Names(sheet, tile, words, radius);
        sheet.Box(tile.Window.Left, tile.Window.Top, tile.Window.Width, tile.Window.Height, null, PaperLooks.Frame);
        ScaleBars.DrawOn(sheet, room);
        SheetFoot.DrawOn(sheet, room, paper, Invariant($"{figures.Name}, sheet {tile.Number} of {count}"),
            Chainages(tile).Replace(", c", " C", StringComparison.Ordinal), origin);
        return sheet;
    }

    private static string Chainages(SheetTile tile) => tile.Range.To > tile.Range.From ? Invariant($", chainage {tile.Range.From:0} to {tile.Range.To:0} mm")
        : "";

    private static void Draw(Sheet sheet, SheetTile tile, FigureLine line)
    {
        var (_, pen, fill) = PaperLooks.Of(line.Kind);
        var points = Array.ConvertAll(line.Points, tile.Frame.ToSheet);
        if (line.IsArea)
        {
            var ring = WindowCutter.Area(points, tile.Window);
            if (ring.Count > 2)
            {
                sheet.Area(ring, fill, pen);
            }

            return;
        }

        foreach (var piece in WindowCutter.Lines(points, tile.Window))
        {
            sheet.Lines(piece, pen!);
        }
    }

    private void Marks(Sheet sheet, SheetTile tile, WindowWords words, double radius)
    {
        foreach (var mark in figures.Marks.Where(m => (m.At - tile.Frame.Middle).Length < radius))
        {
            var at = tile.Frame.ToSheet(mark.At);
            if (!tile.Window.Holds(at))
            {
                continue;
            }

            double arm = (mark.Diameter / 2) + 0.9;
            if (mark.Diameter > 0)
            {
                sheet.Circle(at, mark.Diameter / 2, null, PaperLooks.Cross);
            }

            sheet.Line(at - new Point2(arm, 0), at + new Point2(arm, 0), PaperLooks.Cross);
            sheet.Line(at - new Point2(0, arm), at + new Point2(0, arm), PaperLooks.Cross);
            words.Keep(at, arm);
        }
    }

    private static void Joins(Sheet sheet, SheetTile tile, WindowWords words)
    {
        foreach (var join in tile.Joins)
        {
            Point2 from = tile.Frame.ToSheet(join.From), to = tile.Frame.ToSheet(join.To);
            foreach (var piece in WindowCutter.Lines([from, to], tile.Window))
            {
                sheet.Lines(piece, PaperLooks.Join);
            }

            foreach (var cross in join.Crosses)
            {
                var at = tile.Frame.ToSheet(cross);
                if (tile.Window.Holds(at))
                {
                    Cross(sheet, at);
                    words.Keep(at, CrossArm);
                    words.Put(
                        Invariant($"{cross.X:0.0}, {cross.Y:0.0}"),
                        HouseStyle.Small,
                        0,
                        ((Point2[])[new(CrossedAside, -3), new(-CrossedAside, -3), new(CrossedAside, 3), new(-CrossedAside, 3)]).Select(d => at + d));
                }
            }

            double angle = Math.Atan2(to.Y - from.Y, to.X - from.X) * 180 / Math.PI;
            words.Put(
                "join " + join.Name,
                HouseStyle.Subheading,
                angle,
                ((double[])[0.3, 0.7, 0.2, 0.8]).SelectMany(share => Beside(from + ((to - from) * share), to - from)));
        }
    }

    private static IEnumerable<Point2> Beside(Point2 at, Point2 along)
    {
        var aside = along.Left * (2.6 / Math.Max(1, along.Length));
        return [at + aside, at - aside];
    }

    // A ring and a cross: the ring is seen first, the cross is what is laid on the other.
    private static void Cross(Sheet sheet, Point2 at)
    {
        sheet.Circle(at, CrossArm / 2, null, PaperLooks.Cross);
        sheet.Line(at - new Point2(CrossArm, 0), at + new Point2(CrossArm, 0), PaperLooks.Cross);
        sheet.Line(at - new Point2(0, CrossArm), at + new Point2(0, CrossArm), PaperLooks.Cross);
    }

    private void Names(Sheet sheet, SheetTile tile, WindowWords words, double radius)
    {
        foreach (var name in figures.Words.Where(w => (w.About - tile.Frame.Middle).Length < radius).OrderByDescending(w => w.Type))
        {
            var at = tile.Frame.ToSheet(name.About);
            if (!tile.Window.Holds(at))
            {
                continue;
            }

            Point2 along = tile.Frame.Turned(name.Along), outward = tile.Frame.Turned(name.Outward);
            double[] asides = name.IsLed ? [0, 9, -9, 18, -18] : [0];
            var places = name.Off.SelectMany(off => asides.Select(aside => at + (outward * off) + (along * aside)));
            if (words.Put(name.Text, PaperLooks.Of(name.Type), tile.Frame.AngleOf(name.Along), places) is { } put && name.IsLed)
            {
                var lead = put - at;
                double length = lead.Length;
                var style = PaperLooks.Of(name.Type);
                if (length > style.Size)
                {
                    sheet.Line(at, at + (lead * (Math.Max(0, length - style.Size) / length)), new(0.1, HouseStyle.Quiet));
                }
            }
        }
    }
}

/// <summary>Whose a sheet is.</summary>
/// <param name="Line">Project, scale, program, hash: one line.</param>
/// <param name="Verdict">What holding the design against its vehicles came to, in a line; empty where that was not done.</param>
internal sealed record SheetOrigin(string Line, string Verdict);
