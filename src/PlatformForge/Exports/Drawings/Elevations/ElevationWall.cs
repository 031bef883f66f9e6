using PlatformForge.Exports.Drawings.Elevations.Walls;
using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Looks;
using PlatformForge.Geometry;
using PlatformForge.Masonry;
using PlatformForge.Solids;
using PlatformForge.Solids.Bodies.Walls;

namespace PlatformForge.Exports.Drawings.Elevations;

/// <summary>The pieces of a wall in an elevation, its joints and its openings.</summary>
internal static class ElevationWall
{
    // Pieces of a row farther from one another than this many joints are not neighbours.
    private const double Neighbours = 1.6;

    private const double Faint = ElevationRow.Faint;

    /// <summary>Draws it.</summary>
    /// <param name="sheet">Where to draw.</param>
    /// <param name="slice">The wall, or a part of one.</param>
    /// <param name="of">From mm of the wall laid flat to the sheet.</param>
    /// <param name="scale">Sheet mm to a mm of the model.</param>
    public static void Draw(Sheet sheet, WallSlice slice, Func<Point2, Point2> of, double scale)
    {
        var work = slice.Wall.Finish;
        var (face, ground) = (Palette.Of(slice.Wall.Shows), Palette.Of(FacingRelief.HasMortar(work) ? Paint.Mortar : slice.Wall.Shows));
        Point2[] outline = ElevationRow.Outline(slice);
        sheet.Area(outline.Select(of), new(ground, FacingRelief.HasMortar(work) || IsPlain(slice) ? Faint : 1));
        if (IsPlain(slice))
        {
            Openings(sheet, slice.Pieces(), of);
            return;
        }

        Oblongs((sheet, scale), slice, of, (face, FacingRelief.HasMortar(work) ? OnPaper(ground) : ground));
        if (!FacingRelief.HasMortar(work))
        {
            // Joints of the pieces' own colour.
            Joints(sheet, slice, outline, of);
        }
    }

    private static void Joints(Sheet sheet, WallSlice slice, Point2[] outline, Func<Point2, Point2> of)
    {
        foreach (var (a, b) in FacingJoints.Of(slice).SelectMany(j => FacingJoints.Within(outline, j.A, j.B)))
        {
            sheet.Line(of(a), of(b), HouseStyle.Fine);
        }
    }

    // Oblongs of a row are drawn as one band with its perpends over it: a long wall has many thousands of them.
    private static void Oblongs((Sheet Sheet, double Scale) on, WallSlice slice, Func<Point2, Point2> of, (Rgb Face, Rgb Ground) colours)
    {
        var all = slice.Pieces().ToArray();
        var pieces = all.Where(p => p.Out > 0).ToArray();
        double most = pieces.Select(p => p.Out).DefaultIfEmpty(0).Max();
        foreach (var row in pieces.Where(p => IsOblong(p.Outline)).GroupBy(p => (p.Outline[0].Y, p.Outline[2].Y, p.Out)).OrderBy(r => r.Key.Out))
        {
            var fill = new Fill(colours.Face, row.Key.Out < most ? Faint / 2 : Faint);
            var sorted = row.OrderBy(p => p.Outline.Min(q => q.X)).Select(p => (From: p.Outline.Min(q => q.X), To: p.Outline.Max(q => q.X))).ToArray();
            for (int i = 0; i < sorted.Length;)
            {
                int end = i;
                while (end + 1 < sorted.Length && sorted[end + 1].From - sorted[end].To < Neighbours * Joint(slice))
                {
                    end++;
                }

                Band(on, sorted[i..(end + 1)], row.Key.Item1, row.Key.Item2, of, (fill, colours.Ground, Joint(slice)));
                i = end + 1;
            }
        }

        foreach (var lintel in slice.Wall.Finish == WallFinish.Brick ? slice.Lintels() : [])
        {
            on.Sheet.Area(lintel.Select(of), new(HouseStyle.Paper));
            on.Sheet.Area(lintel.Select(of), new(Palette.Of(Paint.Concrete), Faint));
        }

        // Stones without courses have outlines; what slopes and arches cut of courses shows by its joints as all of a course does.
        bool outlined = slice.Wall.Finish == WallFinish.Rubble;
        foreach (var (outline, _, _) in pieces.Where(p => !IsOblong(p.Outline)))
        {
            on.Sheet.Area(outline.Select(of), new(colours.Face, Faint), outlined ? HouseStyle.Fine : null);
        }

        Openings(on.Sheet, all, of);
    }

    // Recesses are grey, what goes right through is black.
    private static void Openings(Sheet sheet, IEnumerable<(Point2[] Outline, double Out, bool Through)> pieces, Func<Point2, Point2> of)
    {
        foreach (var (outline, _, through) in pieces.Where(p => p.Out < 0))
        {
            sheet.Area(outline.Select(of), new(HouseStyle.Paper));
            sheet.Area(outline.Select(of), new(HouseStyle.Ink, through ? 1 : Faint));
        }
    }

    private static bool IsPlain(WallSlice slice) => slice.Wall.Finish == WallFinish.Plain;

    private static bool IsOblong(Point2[] o) => o.Length == 4 && o.Min(p => p.Y) is var low && o.Max(p => p.Y) is var high && o[0].Y == low && o[1].Y == low
        && o[2].Y == high && o[3].Y == high && o[0].X == o[3].X && o[1].X == o[2].X;

    private static void Band(
        (Sheet Sheet, double Scale) on, (double From, double To)[] pieces, double low, double high, Func<Point2, Point2> of,
        (Fill Fill, Rgb Ground, double Joint) look)
    {
        on.Sheet.Area(((Point2[])[new(pieces[0].From, low), new(pieces[^1].To, low), new(pieces[^1].To, high), new(pieces[0].From, high)]).Select(of),
            look.Fill);
        if (pieces.Length > 1)
        {
            // Up one perpend and down the next: what lies between two is in the middle of a bed joint, of the ground's colour as they are.
            double under = low - (look.Joint / 2), over = high + (look.Joint / 2);
            var perpends = pieces.Zip(pieces.Skip(1), (a, b) => (a.To + b.From) / 2)
                .SelectMany((x, i) => i % 2 == 0 ? new[] { new Point2(x, under), new Point2(x, over) } : [new Point2(x, over), new Point2(x, under)]);
            on.Sheet.Lines(perpends.Select(of), new(on.Scale * look.Joint, look.Ground));
        }
    }

    // A colour as faint as areas are, without being seen through.
    private static Rgb OnPaper(Rgb colour)
    {
        static byte Mixed(byte on, byte paper) => (byte)Math.Round((Faint * on) + ((1 - Faint) * paper));
        return new(Mixed(colour.R, HouseStyle.Paper.R), Mixed(colour.G, HouseStyle.Paper.G), Mixed(colour.B, HouseStyle.Paper.B));
    }

    private static double Joint(WallSlice slice) => slice.Wall.Joint;
}
