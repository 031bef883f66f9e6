using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Paper.FullSize;
using PlatformForge.Geometry;
using static System.FormattableString;

namespace PlatformForge.Exports.Paper;

/// <summary>The first sheet of a set: which sheet lies where, what the lines mean, and what to do with it.</summary>
internal sealed class KeySheet(FullSizeFigures figures, PaperSpec paper, SheetRoom room, SheetOrigin origin)
{
    // Of the figures those that say enough on a small map.
    private static readonly FullSizeLine[] OnMap = [FullSizeLine.OtherRail, FullSizeLine.Middle, FullSizeLine.Cut, FullSizeLine.BackEdge,
        FullSizeLine.PlatformEnd, FullSizeLine.CopingEdge, FullSizeLine.BaseboardJoint];
    private static readonly TextStyle Body = new(2.7, HouseStyle.Ink);
    private const double Row = 4.1;

    // mm on the layout from the middle of a track to beyond its sleepers.
    private double BesideTrack => figures.Ground.TrackBed is { Length: > 0 } bed ? (bed[0] - bed[^1]).Length / 2 : 1;

    public Sheet Draw(IReadOnlyList<SheetTile> tiles, string elevations)
    {
        var window = room.Window;
        var sheet = new Sheet(room.Width, room.Height, Invariant($"{figures.Name}: key to {tiles.Count} sheets"))
        {
            Stretch = paper.Stretch,
            HasGround = false,
            Description = Invariant($"Map of the {tiles.Count} full-size sheets of {figures.Name}, what their lines mean, and how they are joined."),
        };
        sheet.Text(figures.Name, new(window.Left, window.Top + 7), HouseStyle.Heading with { Size = 6.5 });
        string words = Invariant($"Full-size plan on {tiles.Count} sheets of {paper.SizeInWords}") + elevations;
        sheet.Text(words, new(window.Left, window.Top + 13), TitleBlock.Fitting(words, HouseStyle.Subheading, window.Width));
        double y = window.Top + 20;
        if (origin.Verdict.Length > 0)
        {
            y = Lines(sheet, origin.Verdict, new(window.Left, y), window.Width, Body with { Bold = true }) + 3;
        }

        y = Map(sheet, tiles, y) + 6;
        double half = (window.Width - 8) / 2;
        double left = Steps(sheet, new(window.Left, y), half), right = Legend(sheet, new(window.Left + half + 8, y), half);
        _ = Math.Max(left, right);
        ScaleBars.DrawOn(sheet, room);
        double x = window.Left + Math.Max(108, window.Width * 0.5), space = window.Right - x;
        sheet.Text("Key", new(x, window.Bottom + 5.2), HouseStyle.Subheading);
        var style = HouseStyle.Small with { Size = 2 };
        sheet.Text(origin.Line, new(x, window.Bottom + 12.4), TitleBlock.Fitting(origin.Line, style, space));
        sheet.Text(TitleBlock.Caution, new(x, window.Bottom + 15.8), TitleBlock.Fitting(TitleBlock.Caution, style, space));
        return sheet;
    }

    // The map: as large as leaves room for the words under it.
    private double Map(Sheet sheet, IReadOnlyList<SheetTile> tiles, double top)
    {
        var window = room.Window;
        var start = figures.PlaceOf(figures.Range.From, 0);
        var chord = figures.PlaceOf(figures.Range.To, 0) - start;
        var along = chord * (1 / Math.Max(1, chord.Length));
        Point2 Turn(Point2 p) => new(Point2.Dot(p - start, along), -Point2.Cross(along, p - start));
        var corners = tiles.SelectMany(t => t.Corners).Select(Turn).ToArray();
        double x0 = corners.Min(p => p.X), x1 = corners.Max(p => p.X), y0 = corners.Min(p => p.Y), y1 = corners.Max(p => p.Y);
        double tall = Math.Max(25, window.Bottom - top - 78), reduction = Math.Max((x1 - x0) / window.Width, (y1 - y0) / tall);
        double left = window.Left + ((window.Width - ((x1 - x0) / reduction)) / 2);
        Point2 Of(Point2 p) => Turn(p) is var q ? new(left + ((q.X - x0) / reduction), top + ((q.Y - y0) / reduction)) : default;
        sheet.Area(figures.Ground.TrackBed.Select(Of), new(HouseStyle.Hair, 0.4), null);
        sheet.Area(figures.Ground.Platform.Select(Of), new(HouseStyle.Deck), null);
        foreach (var tile in tiles)
        {
            sheet.Area(tile.Corners.Select(Of), new(HouseStyle.Swept, 0.06), new(0.2, HouseStyle.Swept));
        }

        foreach (var line in figures.Lines.Where(l => OnMap.Contains(l.Kind)))
        {
            sheet.Lines(line.Points.Select(Of), PaperLooks.Of(line.Kind).Pen! with { Width = 0.2 });
        }

        foreach (var join in tiles.SelectMany(t => t.Joins).DistinctBy(j => j.Name))
        {
            Point2 a = Of(join.From), b = Of(join.To);
            sheet.Line(a, b, PaperLooks.Join);
            sheet.Text(join.Name, (b.Y < a.Y ? b : a) + new Point2(0, -0.8), HouseStyle.Small with { Colour = HouseStyle.Ink }, TextAnchor.Middle);
        }

        Ends(sheet, Of);
        Numbers(sheet, tiles, Of, reduction);
        return top + ((y1 - y0) / reduction);
    }

    private static void Numbers(Sheet sheet, IReadOnlyList<SheetTile> tiles, Func<Point2, Point2> of, double reduction)
    {
        // Numbers stand where the sheet's own part is, away from the platform's lines as far as its window goes.
        double size = Math.Clamp(tiles.Min(t => t.Window.Height) / reduction / 4, 2.2, 6);
        foreach (var tile in tiles)
        {
            var at = of(tile.Frame.ToLayout(tile.Window.Middle)) + new Point2(0, size * 0.36);
            sheet.Circle(at - new Point2(0, size * 0.36), size * 0.8, new(HouseStyle.White), new(0.2, HouseStyle.Swept));
            sheet.Text(Invariant($"{tile.Number}"), at, new(size, HouseStyle.Swept, Bold: true), TextAnchor.Middle);
        }
    }

    // Which track it is, from where to where, on the side of it where the platform is not.
    private void Ends(Sheet sheet, Func<Point2, Point2> of)
    {
        var (from, to) = figures.Range;
        var (least, greatest) = figures.Across((from + to) / 2);
        double aside = greatest + least > 0 ? -BesideTrack : BesideTrack;
        var style = HouseStyle.Small with { Size = 2, Colour = HouseStyle.Ink };
        foreach (var (s, text, anchor) in ((double, string, TextAnchor)[])[
            (from, Invariant($"track {figures.Track}, chainage {from:0}"), TextAnchor.Start), (to, Invariant($"to {to:0}"), TextAnchor.End)])
        {
            // Written along the track.
            double inward = anchor == TextAnchor.Start ? Math.Min(1, (to - from) / 2) : Math.Max(-1, (from - to) / 2);
            Point2 middle = of(figures.PlaceOf(s, 0)), away = of(figures.PlaceOf(s, aside)) - middle;
            var along = (of(figures.PlaceOf(s + inward, 0)) - middle) * Math.Sign(inward);
            sheet.Text(text, middle + away + (away * ((away.Y > 0 ? 0.8 + style.Size : 0.8) / away.Length)), style, anchor,
                Math.Atan2(along.Y, along.X) * 180 / Math.PI);
        }
    }

    private double Steps(Sheet sheet, Point2 at, double width)
    {
        string measured = paper.MeasuredBars is null
            ? "Measure both bars of 100 mm between their ticks. Both right to 0.2 mm: go on. If not, enter what they measure, across and up, as bars under "
            + "[paper] or with --bars, and print again: the sheets are then drawn for your printer."
            : "Measure both bars of 100 mm: with your printer's correction they are now right to 0.2 mm.";
        string[] steps =
        [
            "Print this page alone, at 100 % (actual size), and not fitted to the paper.",
            measured,
            "Print the other sheets the same way. Cut one of two neighbours on their join, with a new blade, cutting away from you.",
            "Lay it on the other so that the crosses of the join meet, and tape. The figures at a cross are its x and y on the layout, mm.",
            "Lay the sheets on the layout and cut out the strip between the rails' outer faces, or lay them under the track: rails must lie on rails.",
            "Push the longest and the widest vehicle through by hand: nothing may reach over the coping edge. Then drill, mark the wall's foot, and print.",
        ];
        double y = at.Y;
        sheet.Text("What to do", new(at.X, y), HouseStyle.Subheading);
        y += Row + 0.8;
        for (int i = 0; i < steps.Length; i++)
        {
            sheet.Text(Invariant($"{i + 1}"), new(at.X, y), Body with { Bold = true });
            y = Lines(sheet, steps[i], new(at.X + 4, y), width - 4, Body) + 0.9;
        }

        return y;
    }

    private double Legend(Sheet sheet, Point2 at, double width)
    {
        double y = at.Y;
        sheet.Text("Lines", new(at.X, y), HouseStyle.Subheading);
        y += Row + 0.6;
        foreach (var kind in figures.Lines.Select(l => l.Kind).Distinct().OrderDescending())
        {
            var (name, pen, _) = PaperLooks.Of(kind);
            if (name.Length == 0 || y > room.Window.Bottom - 1)
            {
                continue;
            }

            sheet.Line(new(at.X, y - 0.9), new(at.X + 11, y - 0.9), pen!);
            sheet.Text(name, new(at.X + 14, y), TitleBlock.Fitting(name, Body, width - 14));
            y += Row - 0.4;
        }

        return y;
    }

    private static double Lines(Sheet sheet, string text, Point2 at, double width, TextStyle style)
    {
        double y = at.Y;
        foreach (string line in TextStyle.Wrap(text, style, width))
        {
            sheet.Text(line, new(at.X, y), style);
            y += style.Size * 1.36;
        }

        return y;
    }
}
