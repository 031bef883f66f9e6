using PlatformForge.Geometry;
using PlatformForge.Solids;
using PlatformForge.Solids.Bodies;
using static System.FormattableString;

namespace PlatformForge.Exports.Drawings;

/// <summary>A row of an elevation: faced walls side by side, laid flat, on the line of the baseboard.</summary>
/// <param name="slices">What is drawn, from left to right.</param>
/// <param name="scale">Sheet mm to a mm of the model.</param>
/// <param name="slab">Thickness of what lies on the walls, mm.</param>
/// <param name="paint">What that shows.</param>
internal sealed class ElevationRow(IReadOnlyList<WallSlice> slices, double scale, double slab, Paint paint)
{
    // Pieces of a row farther from one another than this many joints are not neighbours.
    private const double Neighbours = 1.6;

    private const double Numbers = 5.5; // mm under the foot for the sections' numbers

    private const double Faint = 0.72;

    private const double Parted = 6;

    /// <summary>Height on the sheet, numbers included, mm.</summary>
    public double Height => (scale * Top) + Numbers;

    /// <summary>Length on the sheet, mm.</summary>
    public double Length => (scale * slices.Sum(s => s.Length)) + Enumerable.Range(1, slices.Count - 1).Sum(Before);

    /// <summary>Whether a section begins where the row does; otherwise the row before goes on.</summary>
    public bool Begins => slices[0].Begins;

    // On the sheet, mm, between a slice and the one before it whose section is no neighbour: what lies between them has no wall.
    private double Before(int i) => i > 0 && Math.Abs(slices[i].Section - slices[i - 1].Section) > 1 ? Parted : 0;

    private double Top => slices.Max(s => s.Height) + slab;

    /// <summary>Draws it with its upper left corner at a place.</summary>
    public void DrawOn(Sheet sheet, Point2 corner)
    {
        double foot = corner.Y + (scale * Top), x = corner.X;
        for (int first = 0, next; first < slices.Count; first = next)
        {
            x += Before(first);

            // What lies on a section's panels and piers is one slab.
            double from = x, along = 0;
            var slabOver = new List<Point2>();
            for (next = first; next < slices.Count && (next == first || !slices[next].Begins); next++)
            {
                var slice = slices[next];
                Point2 origin = new(x, foot);
                Wall(sheet, slice, p => new(origin.X + (scale * p.X), origin.Y - (scale * p.Y)));
                slabOver.AddRange(slice.Top.Select(p => p + new Point2(along, 0)));
                along += slice.Length;
                x += scale * slice.Length;
            }

            sheet.Area(slabOver.Concat(slabOver.AsEnumerable().Reverse().Select(p => p + new Point2(0, slab)))
                .Select(p => new Point2(from + (scale * p.X), foot - (scale * p.Y))), new(Palette.Of(paint), Faint), HouseStyle.Thin);
            sheet.Text(Invariant($"{slices[first].Section}"), new((from + x) / 2, foot + 4), HouseStyle.Strong, TextAnchor.Middle);
        }

        x = corner.X;
        foreach (var (slice, i) in slices.Select((s, i) => (s, i)))
        {
            x += Before(i);
            Bands(sheet, slice, new(x, foot));
            if (slice.IsPier)
            {
                Sides(sheet, slice, x, foot);
            }

            if (slice.Begins && x > corner.X && Before(i) == 0)
            {
                sheet.Line(new(x, foot - (scale * Top) - 1.5), new(x, foot + 2.5), HouseStyle.Cut);
            }

            x += scale * slice.Length;
        }

        sheet.Line(new(corner.X, foot), new(x, foot), HouseStyle.Outline);
    }

    // What stands out of a wall is drawn over it, with the edges that it throws its shadow from.
    private void Bands(Sheet sheet, WallSlice slice, Point2 origin)
    {
        foreach (var band in slice.Bands)
        {
            if (band.Over(slice) is not (var part, var at))
            {
                continue;
            }

            Point2 Of(Point2 p) => new(origin.X + (scale * (at + p.X)), origin.Y - (scale * p.Y));
            Point2[] foot = [.. part.Edge(part.Wall.Wall.Foot)], top = [.. part.Edge(part.Wall.Wall.Top)];
            sheet.Area(foot.Concat(top.Reverse()).Select(Of), new(HouseStyle.Paper));
            Wall(sheet, part, Of);
            sheet.Lines((part.Wall.Zone.IsFoot ? top : foot).Select(Of), HouseStyle.Thin);
            if (band.IsButtress)
            {
                Buttress(sheet, part, top, Of);
            }
        }
    }

    // The sides of a buttress's front, and the slope over it up to where its part of the wall ends.
    private static void Buttress(Sheet sheet, WallSlice part, Point2[] top, Func<Point2, Point2> of)
    {
        double head = part.Wall.Zone.High;
        if (top.Max(p => p.Y) < head - Slopes)
        {
            Point2[] slope = [.. top, new(part.Length, head), new(0, head)];
            sheet.Area(slope.Select(of), new(Palette.Of(FacingRelief.PaintOf(part.Wall.Finish))), HouseStyle.Thin);
        }

        foreach (double x in (double[])[0, part.Length])
        {
            sheet.Lines([of(new(x, Math.Max(0, part.Wall.Zone.Low))), of(new(x, top[0].Y))], HouseStyle.Thin);
        }
    }

    // A front that ends so far, mm, under its part's upper edge ends in a slope.
    private const double Slopes = 0.3;

    private void Wall(Sheet sheet, WallSlice slice, Func<Point2, Point2> of)
    {
        var work = slice.Wall.Finish;
        var (face, ground) = (Palette.Of(FacingRelief.PaintOf(work)), Palette.Of(FacingRelief.HasMortar(work) ? Paint.Mortar : FacingRelief.PaintOf(work)));
        var top = slice.Edge(slice.Wall.Wall.Top);
        var foot = slice.Edge(slice.Wall.Wall.Foot);
        sheet.Area(foot.Concat(top.Reverse()).Select(of), new(ground, FacingRelief.HasMortar(work) ? Faint : 1));
        Oblongs(sheet, slice, of, (face, FacingRelief.HasMortar(work) ? OnPaper(ground) : ground));
        if (!FacingRelief.HasMortar(work))
        {
            // Joints of the pieces' own colour.
            Joints(sheet, slice, [.. foot, .. top.Reverse()], of);
        }
    }

    private void Sides(Sheet sheet, WallSlice pier, double x, double foot)
    {
        var top = pier.Top;
        foreach (var p in (Point2[])[top[0], top[^1]])
        {
            sheet.Line(new(x + (scale * p.X), foot), new(x + (scale * p.X), foot - (scale * p.Y)), HouseStyle.Thin);
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
    private void Oblongs(Sheet sheet, WallSlice slice, Func<Point2, Point2> of, (Rgb Face, Rgb Ground) colours)
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

                Band(sheet, sorted[i..(end + 1)], row.Key.Item1, row.Key.Item2, of, (fill, colours.Ground, Joint(slice)));
                i = end + 1;
            }
        }

        // Stones without courses have outlines; what slopes and arches cut of courses shows by its joints as all of a course does.
        bool outlined = slice.Wall.Finish == Masonry.WallFinish.Rubble;
        foreach (var (outline, _) in pieces.Where(p => !IsOblong(p.Outline)))
        {
            sheet.Area(outline.Select(of), new(colours.Face, Faint), outlined ? HouseStyle.Fine : null);
        }

        foreach (var (outline, _) in all.Where(p => p.Out < 0))
        {
            sheet.Area(outline.Select(of), new(HouseStyle.Paper));
            sheet.Area(outline.Select(of), new(HouseStyle.Ink, Faint));
        }
    }

    private static bool IsOblong(Point2[] o) => o.Length == 4 && o.Min(p => p.Y) is var low && o.Max(p => p.Y) is var high && o[0].Y == low && o[1].Y == low
        && o[2].Y == high && o[3].Y == high && o[0].X == o[3].X && o[1].X == o[2].X;

    private void Band(
        Sheet sheet, (double From, double To)[] pieces, double low, double high, Func<Point2, Point2> of, (Fill Fill, Rgb Ground, double Joint) look)
    {
        sheet.Area(((Point2[])[new(pieces[0].From, low), new(pieces[^1].To, low), new(pieces[^1].To, high), new(pieces[0].From, high)]).Select(of),
            look.Fill);
        if (pieces.Length > 1)
        {
            // Up one perpend and down the next: what lies between two is in the middle of a bed joint, of the ground's colour as they are.
            double under = low - (look.Joint / 2), over = high + (look.Joint / 2);
            var perpends = pieces.Zip(pieces.Skip(1), (a, b) => (a.To + b.From) / 2)
                .SelectMany((x, i) => i % 2 == 0 ? new[] { new Point2(x, under), new Point2(x, over) } : [new Point2(x, over), new Point2(x, under)]);
            sheet.Lines(perpends.Select(of), new(scale * look.Joint, look.Ground));
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
