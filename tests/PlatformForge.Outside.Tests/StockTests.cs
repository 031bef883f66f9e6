using System.Globalization;
using System.Xml.Linq;
using PlatformForge.Geometry;

namespace PlatformForge.Outside.Tests;

/// <summary>
/// Cut lines as others read them: a DXF parser of others (dxf-parser, npm) finds in every sheet the lines that its SVG has; its pieces, put together again, are held
/// against the sections' own STL files, cut by planes: from sheet the platform is the one that is printed.
/// </summary>
public sealed class StockTests : IDisposable
{
    // mm: three digits in a DXF, 32-bit figures in an STL, facets of a curve.
    private const double Near = 0.05;

    // Between two printed sections that much is taken off each (joint.end_trim); sheet goes to the cut itself.
    private const double Trim = 0.1;

    // The sample's sheet: of deck, ribs and end walls, of strips, and what a halving slot is wider.
    private const double Thick = 2, Strip = 1, Fit = 0.1;

    private static readonly Point3 X = new(1, 0, 0), Y = new(0, 1, 0);

    private readonly string folder = Directory.CreateTempSubdirectory("platformforge-sheet-").FullName;
    private readonly IReadOnlyList<Piece> pieces;
    private readonly IReadOnlyList<WrittenSolid> solids;

    public StockTests()
    {
        var said = WrittenSamples.CommandLine("build", WrittenSamples.SampleFile("pendlewick"), "--output", folder, "--sets", "prints,sheet", "--force", "--quiet");
        Assert.True(said.Exit == 0, said.Error);
        string[] files = Directory.GetFiles(Path.Combine(folder, "sheet"), "*.dxf");
        Assert.True(files.Length >= 4, string.Join(", ", files));
        Entity[] all = [.. Written.Parse(Tool.Node("read-cuts.mjs", files)).Select(Entity.Of)];
        pieces = [.. all.GroupBy(e => e.File).SelectMany(sheet => Piece.Of([.. sheet]))];
        solids = WrittenSolid.Of(folder);
        Assert.Equal(File.ReadAllLines(Path.Combine(folder, "sheet", "up-side-parts.csv")).Length - 1, pieces.Count);
        SvgHasTheSameLines(all);
    }

    public void Dispose() => Directory.Delete(folder, recursive: true);

    /// <summary>One build, one reading, every kind of piece.</summary>
    [Fact]
    public void Pieces_of_sheet_make_the_platform_that_is_printed()
    {
        foreach (var solid in solids)
        {
            Deck(solid);
            Walls(solid);
            RibsAndEnds(solid);
        }
    }

    // The deck, in its own plane, as the section shows it seen from above: outline, holes.
    private void Deck(WrittenSolid solid)
    {
        var piece = One(solid, "deck");
        var loops = solid.Cut(new(0, 0, 0.7), X, Y).Select(l => l.Select(p => new Point2(p.X, -p.Y)).Reverse().ToArray()).ToArray();
        Point2[] printed = loops.MaxBy(Plane.Area)!, cut = Plane.Area(piece.Outline) > 0 ? piece.Outline : [.. piece.Outline.Reverse()];
        var onto = Laid(Corners(cut), cut, Corners(printed), printed);
        Point2[] there = [.. cut.Select(onto)];
        int free = 0;
        foreach (var p in printed)
        {
            double off = Plane.ToLine(p, [.. there, there[0]]);
            Assert.True(off < Near + Trim, $"{piece.Name}: {off:0.000} at {p}");
            free += off < Near ? 1 : 0;
        }

        // All but the corners at its ends.
        Assert.True(free >= printed.Length - 4, $"{piece.Name}: {printed.Length - free}");
        double width = Corners(printed) is var c ? Math.Min((c[1] - c[0]).Length, (c[2] - c[1]).Length) : 0;
        Assert.InRange(Plane.Area(cut) - Plane.Area(printed), -0.5, (2 * (Trim + 0.05) * width) + 0.5);

        // Holes that go through the sheet are where they are in the print.
        Point2[] holes = [.. loops.Where(l => Plane.Area(l) < 0).Select(Plane.Middle)], own = [.. piece.Holes.Select(onto)];
        Assert.Equal(holes.Length, own.Length);
        Assert.All(own, h => Assert.True(holes.Min(p => (p - h).Length) < 2 * Near, $"{piece.Name}: a hole at {h}"));
        Assert.All(piece.Diameters, d => Assert.True(loops.Any(l => Plane.Area(l) < 0 && Math.Abs(Plane.Area(l) + (d * d * Math.PI / 4)) < 0.12 * d * d), $"{piece.Name}: Ø {d}"));
    }

    // A strip is as long as the wall's face is, and as high as the deck leaves it; its marks are at the ribs, as seen from inside.
    private void Walls(WrittenSolid solid)
    {
        var layout = solid.OnLayout();
        var loops = layout.Cut(new(0, 0, 1), X, Y);
        var (front, back) = Sides(loops.MaxBy(Plane.Area)!) is var s ? (s.Front, s.Back) : default;
        foreach (var (name, face, other) in new[] { ("front wall", front, back), ("back wall", back, front) })
        {
            var piece = One(solid, name);
            double length = piece.High.X - piece.Low.X;
            Assert.InRange(length - Length(face), -Near, (2 * Trim) + Near);
            double more = (length - Length(face)) / 2;

            // Who looks at it from inside has rising chainage to the right, or to the left.
            Point2 ahead = face[^1] - face[0], towards = face[0] - other[0];
            bool right = Point2.Dot(ahead, new(towards.Y, -towards.X)) > 0;
            double At(double along) => right ? along - piece.Low.X - more : piece.High.X - along - more;
            foreach (var p in piece.Outline.Where(p => p.Y > piece.Low.Y + 0.5))
            {
                // The plane that the section lies on, less the sheet's thickness square to it.
                var on = Along(face, Math.Clamp(At(p.X), 0, Length(face)));
                double height = TopAt(solid, on) - (Thick * Slope(solid));
                Assert.InRange(p.Y - piece.Low.Y, height - 0.1, height + Near);
            }

            // Ribs of the print stand between hollows along this wall, told by the corners of these beside it.
            var hollows = loops.Where(l => Plane.Area(l) < -20).Select(l => l.Where(p => Plane.ToLine(p, face) < 2).Select(p => Where(face, p)).ToArray()).Where(l => l.Length > 1)
                .Select(l => (From: l.Min(), To: l.Max())).OrderBy(h => h.From).ToArray();
            double[] ribs = [.. hollows.Zip(hollows.Skip(1), (a, b) => (a.To + b.From) / 2)], lines = [.. piece.Marks.Where(m => Math.Abs(m.From.X - m.To.X) < 0.01).Select(m => At(m.From.X)).Order()];
            Assert.Equal(2 * ribs.Length, lines.Length);
            for (int i = 0; i < ribs.Length; i++)
            {
                Assert.Equal(ribs[i], (lines[2 * i] + lines[(2 * i) + 1]) / 2, 0.15);
                Assert.Equal(Thick, lines[(2 * i) + 1] - lines[2 * i], 0.01);
            }
        }
    }

    // Ribs and end walls fill what is between the strips; slots are as wide as the sheet, half as deep as the rib, and as many as ribs cross.
    private void RibsAndEnds(WrittenSolid solid)
    {
        var sides = Sides(solid.OnLayout().Cut(new(0, 0, 1), X, Y).MaxBy(Plane.Area)!);
        double[] wide = [(sides.Front[0] - sides.Back[0]).Length, (sides.Front[^1] - sides.Back[^1]).Length];
        var ends = pieces.Where(p => p.Name.StartsWith($"{solid.Number} end wall", StringComparison.Ordinal)).ToArray();
        var ribs = pieces.Where(p => p.Name.StartsWith($"{solid.Number} rib ", StringComparison.Ordinal) && !p.Name.Contains("along", StringComparison.Ordinal)).ToArray();
        var along = pieces.Where(p => p.Name.StartsWith($"{solid.Number} rib along", StringComparison.Ordinal)).ToArray();
        Assert.NotEmpty(ends);
        Assert.NotEmpty(ribs);
        Assert.NotEmpty(along);
        Assert.All(ends.Concat(ribs), p => Assert.InRange(p.High.X - p.Low.X, wide.Min() - (2 * Strip) - Near, wide.Max() - (2 * Strip) + Near));
        Assert.All(ends, p => Assert.Empty(p.Slots()));
        Assert.All(ribs, p => Assert.Equal(along.Length, p.Slots().Count));
        Assert.All(along, p => Assert.Equal(ribs.Length, p.Slots().Count));
        Assert.All(ribs.Concat(along), p => Assert.All(p.Slots(), slot =>
        {
            Assert.Equal(Thick + Fit, slot.Width, 0.01);
            Assert.InRange(slot.Deep, 0.45 * slot.Height, 0.55 * slot.Height);
        }));
    }

    private Piece One(WrittenSolid solid, string what) => Assert.Single(pieces, p => p.Name == $"{solid.Number} {what}");

    // SVG of the same sheet: as many points a layer, in the same box.
    private void SvgHasTheSameLines(Entity[] all)
    {
        foreach (var sheet in all.GroupBy(e => e.File))
        {
            var svg = XDocument.Load(Path.ChangeExtension(sheet.Key, ".svg")).Root!;
            double height = double.Parse(svg.Attribute("height")!.Value.Replace("mm", "", StringComparison.Ordinal), CultureInfo.InvariantCulture);
            foreach (var (layer, colour) in (ReadOnlySpan<(string, string)>)[("CUT", "#FF0000"), ("SCORE", "#0000FF"), ("MARK", "#008000")])
            {
                Point2[] theirs = [.. sheet.Where(e => e.Layer == layer && e.Kind is not ("TEXT" or "CIRCLE")).SelectMany(e => e.Points).OrderBy(p => p.X).ThenBy(p => p.Y)];
                Point2[] ours = [.. Points(svg, colour).Select(p => new Point2(p.X, height - p.Y)).OrderBy(p => p.X).ThenBy(p => p.Y)];
                Assert.Equal(theirs.Length, ours.Length);
                Assert.All(theirs, p => Assert.True(Array.Exists(ours, q => (q - p).Length < 0.01), $"{sheet.Key}: {layer} {p}"));
            }

            Assert.All(sheet, e => Assert.Contains(e.Layer, (string[])["CUT", "SCORE", "MARK"]));
        }
    }

    private static IEnumerable<Point2> Points(XElement svg, string colour) =>
        from path in svg.Descendants()
        where path.Name.LocalName == "path" && string.Equals((string?)path.Attribute("stroke"), colour, StringComparison.OrdinalIgnoreCase)
        from pair in ((string)path.Attribute("d")!).Split(['M', 'L', 'Z', ' '], StringSplitOptions.RemoveEmptyEntries)
        let two = pair.Split(',')
        where two.Length == 2
        select new Point2(double.Parse(two[0], CultureInfo.InvariantCulture), double.Parse(two[1], CultureInfo.InvariantCulture));

    // Height of the walking surface over a place of the layout, and how much longer its slope is than its plan.
    private static double TopAt(WrittenSolid solid, Point2 p)
    {
        Point3 o = solid.ToLayout(default), u = solid.ToLayout(X) - o, v = solid.ToLayout(Y) - o, n = Point3.Cross(u, v);
        return o.Z - (((n.X * (p.X - o.X)) + (n.Y * (p.Y - o.Y))) / n.Z);
    }

    private static double Slope(WrittenSolid solid) => 1 / Math.Abs(Point3.Cross(solid.ToLayout(X) - solid.ToLayout(default), solid.ToLayout(Y) - solid.ToLayout(default)).Z);

    // Long sides of a section's outline on the layout, both by rising chainage; the sample's front is on the inside of its curve, so it is the shorter.
    private static (Point2[] Front, Point2[] Back) Sides(Point2[] ring)
    {
        var corners = Corners(ring);
        int[] at = [.. corners.Select(c => Array.IndexOf(ring, c))];
        Point2[][] sides = [.. Enumerable.Range(0, 4).Select(k => Walk(ring, at[k], at[(k + 1) % 4]))];
        Point2[][] two = (sides[0].Length + sides[2].Length, sides[1].Length + sides[3].Length) is var (even, odd) && even > odd ? [sides[0], sides[2]] : [sides[1], sides[3]];
        Point2[] Rising(Point2[] side) => side[^1].X > side[0].X ? side : [.. side.Reverse()];
        return Length(two[0]) < Length(two[1]) ? (Rising(two[0]), Rising(two[1])) : (Rising(two[1]), Rising(two[0]));
    }

    private static Point2[] Walk(Point2[] ring, int from, int to) => [.. Enumerable.Range(0, ((to - from + ring.Length) % ring.Length) + 1).Select(i => ring[(from + i) % ring.Length])];

    private static double Length(Point2[] line) => line.Zip(line.Skip(1), (a, b) => (b - a).Length).Sum();

    private static Point2 Along(Point2[] line, double at)
    {
        for (int i = 0; ; i++)
        {
            double step = (line[i + 1] - line[i]).Length;
            if (at <= step || i + 2 == line.Length)
            {
                return line[i] + ((line[i + 1] - line[i]) * (at / step));
            }

            at -= step;
        }
    }

    // How far along a line the foot of a point is.
    private static double Where(Point2[] line, Point2 p)
    {
        double before = 0, best = double.PositiveInfinity, found = 0;
        for (int i = 0; i + 1 < line.Length; i++)
        {
            var d = line[i + 1] - line[i];
            double share = Math.Clamp(Point2.Dot(p - line[i], d) / Point2.Dot(d, d), 0, 1), off = (p - line[i] - (d * share)).Length;
            (best, found) = off < best ? (off, before + (share * d.Length)) : (best, found);
            before += d.Length;
        }

        return found;
    }

    // The four places where a ring turns sharply, in order.
    private static Point2[] Corners(Point2[] ring)
    {
        Point2[] corners = [.. Enumerable.Range(0, ring.Length).Where(i => Plane.Turn(ring[(i + ring.Length - 1) % ring.Length], ring[i], ring[(i + 1) % ring.Length]) > 0.7).Select(i => ring[i])];
        Assert.Equal(4, corners.Length);
        return corners;
    }

    // The turn and shift, never turned over, that lays four corners on four others; of the ways round that which has a row nearest to the ring.
    private static Func<Point2, Point2> Laid(Point2[] from, Point2[] ring, Point2[] to, Point2[] row)
    {
        static Point2 Middle(Point2[] all) => all.Aggregate((a, b) => a + b) * (1.0 / all.Length);
        Point2 here = Middle(from), there = Middle(to);
        return Enumerable.Range(0, 4).Select(k =>
        {
            double cross = 0, dot = 0;
            for (int i = 0; i < 4; i++)
            {
                Point2 a = from[(i + k) % 4] - here, b = to[i] - there;
                (cross, dot) = (cross + Point2.Cross(a, b), dot + Point2.Dot(a, b));
            }

            var x = Point2.FromAngle(Math.Atan2(cross, dot));
            Point2 On(Point2 p) => there + (x * (p - here).X) + (x.Left * (p - here).Y);
            return (Func<Point2, Point2>)On;
        }).MinBy(on => ring.Select(on).ToArray() is var laid ? row.Max(p => Plane.ToLine(p, [.. laid, laid[0]])) : 0)!;
    }

    private sealed record Entity(string File, string Layer, string Kind, bool Closed, string Text, double Radius, Point2[] Points)
    {
        public static Entity Of(System.Text.Json.JsonElement e) => new(
            e.Text("file"), e.Text("layer"), e.Text("kind"), e.GetProperty("closed").GetBoolean(), e.Text("text"), e.Number("radius"),
            [.. e.GetProperty("points").EnumerateArray().Select(p => new Point2(p[0].GetDouble(), p[1].GetDouble()))]);
    }

    /// <summary>A piece as it lies on its sheet: its outline, middles of what is cut out of it, its marks, and the name that is written on it.</summary>
    private sealed record Piece(string Name, Point2[] Outline, Point2[] Holes, double[] Diameters, (Point2 From, Point2 To)[] Marks)
    {
        public Point2 Low => new(Outline.Min(p => p.X), Outline.Min(p => p.Y));

        public Point2 High => new(Outline.Max(p => p.X), Outline.Max(p => p.Y));

        public static IEnumerable<Piece> Of(Entity[] sheet)
        {
            Entity[] rings = [.. sheet.Where(e => e is { Layer: "CUT", Closed: true })], rounds = [.. sheet.Where(e => e is { Layer: "CUT", Kind: "CIRCLE" })];
            Assert.All(sheet.Where(e => e.Layer == "CUT"), e => Assert.True(e.Closed || e.Kind == "CIRCLE"));
            foreach (var ring in rings.Where(r => !rings.Any(o => o != r && Plane.Holds(o.Points, r.Points[0]))))
            {
                bool On(Point2 p) => Plane.Holds(ring.Points, p);
                Entity[] own = [.. rounds.Where(r => On(r.Points[0]))];
                yield return new(
                    string.Join(" ", sheet.Where(e => e.Kind == "TEXT" && On(e.Points[0])).Select(e => e.Text.Replace("  ", " ", StringComparison.Ordinal))),
                    ring.Points,
                    [.. own.Select(r => r.Points[0]), .. rings.Where(r => r != ring && On(r.Points[0])).Select(r => Plane.Middle(r.Points))],
                    [.. own.Select(r => 2 * r.Radius)],
                    [.. sheet.Where(e => e.Layer == "MARK" && e.Points.Length == 2 && On((e.Points[0] + e.Points[1]) * 0.5)).Select(e => (e.Points[0], e.Points[1]))]);
            }
        }

        /// <summary>What is cut into it from its lower or its upper edge: width, depth, and height of the piece there.</summary>
        public List<(double Width, double Deep, double Height)> Slots()
        {
            var found = new List<(double, double, double)>();
            for (int i = 0; i < Outline.Length; i++)
            {
                // Across the end of a slot two of its corners are turned the other way round than the outline.
                Point2 before = Outline[(i + Outline.Length - 1) % Outline.Length], a = Outline[i], b = Outline[(i + 1) % Outline.Length], after = Outline[(i + 2) % Outline.Length];
                double way = Math.Sign(Plane.Area(Outline));
                if (way * Plane.Turn(before, a, b) < -1 && way * Plane.Turn(a, b, after) < -1)
                {
                    bool below = before.Y < a.Y;
                    double other = below ? TopAt((a.X + b.X) / 2) : Low.Y, mouth = (before.Y + after.Y) / 2;
                    found.Add((Math.Abs(b.X - a.X), Math.Abs(a.Y - mouth), Math.Abs(other - mouth)));
                }
            }

            return found;
        }

        private double TopAt(double x) => Enumerable.Range(0, Outline.Length).Select(i => (A: Outline[i], B: Outline[(i + 1) % Outline.Length]))
            .Where(e => e.A.X > x != e.B.X > x).Max(e => e.A.Y + ((e.B.Y - e.A.Y) * (x - e.A.X) / (e.B.X - e.A.X)));
    }
}
