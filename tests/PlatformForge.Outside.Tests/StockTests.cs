using System.Globalization;
using System.Xml.Linq;
using PlatformForge.Exports.Manifests;
using PlatformForge.Geometry;
using PlatformForge.Tests.Fixtures;
using PlatformForge.Track;

namespace PlatformForge.Outside.Tests;

/// <summary>
/// Cut lines as others read them: a DXF parser of others (dxf-parser, npm) finds in every sheet the lines that its SVG has; its pieces, put together again, are
/// held against the sections' own STL files, cut by planes: from sheet the platform is the one that is printed.
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

    // Of the edge in card: so wide, or as wide as the platform.
    private const double Card = 35;

    // The card is as wide square to the platform's middle line, against which edges of an island lean by up to 0.3 (cosine).
    private const double Leaning = 0.95;

    // More than joints of a facing are deep, less than what a section's corners are apart, mm.
    private const double Notch = 0.5;

    // A smooth section with pockets for plates in both its ends has so many; bricks give hundreds.
    private const int MostCorners = 16;

    private readonly string folder = Directory.CreateTempSubdirectory("platformforge-sheet-").FullName;
    private IReadOnlyList<Piece> pieces = [];
    private Dictionary<string, Centreline> charts = [];
    private string sample = "";

    public void Dispose() => Directory.Delete(folder, recursive: true);

    /// <summary>
    /// One build, one reading, every kind of piece. The gate reads a platform on a curve with ramps and holes and one with faced walls; of
    /// <c>PLATFORMFORGE_SHEETS=all</c> every sample is read, or those that it names.
    /// </summary>
    [Fact]
    public void Pieces_of_sheet_make_the_platform_that_is_printed()
    {
        string asked = Environment.GetEnvironmentVariable("PLATFORMFORGE_SHEETS") ?? "pendlewick,tawnybrook";
        string[] samples = asked == "all" ? [.. Directory.GetFiles(Path.GetDirectoryName(WrittenSamples.SampleFile("any"))!, "*.toml")
            .Select(f => Path.GetFileNameWithoutExtension(f)!).Order()] : asked.Split(',');
        var faults = new List<string>();
        foreach (string name in samples)
        {
            try
            {
                Holds(name);
            }
            catch (Xunit.Sdk.XunitException fault)
            {
                faults.Add(
                    $"{name}: {fault.Message} {fault.StackTrace?.Split('\n').FirstOrDefault(l => l.Contains(nameof(StockTests), StringComparison.Ordinal))}");
            }
        }

        Assert.True(faults.Count == 0, string.Join("\n", faults));
    }

    private void Holds(string name)
    {
        sample = name;
        string built = Path.Combine(folder, name);
        if (Environment.GetEnvironmentVariable("PLATFORMFORGE_SHEETS_BUILT") is { Length: > 0 } before)
        {
            built = Path.Combine(before, name);
        }
        else
        {
            var said = WrittenSamples.CommandLine("build", WrittenSamples.SampleFile(name), "--output", built, "--sets", "prints,sheet", "--force", "--quiet");
            Assert.True(said.Exit == 0, said.Error);
        }

        string[] files = Directory.GetFiles(Path.Combine(built, "sheet"), "*.dxf");
        Assert.True(files.Length >= 3, string.Join(", ", files));
        Entity[] all = [.. Written.Parse(Tool.Node("read-cuts.mjs", files)).Select(Entity.Of)];
        pieces = [.. all.GroupBy(e => e.File).Where(sheet => !IsOutside(sheet.Key)).SelectMany(sheet => Piece.Of([.. sheet]))];
        charts = DesignForm.Read(File.ReadAllBytes(Path.Combine(built, "design.json")), "design.json").Value!.Platforms.DistinctBy(p => p.Name)
            .ToDictionary(p => p.Name, p => p.ToChart());
        Assert.Equal(Directory.GetFiles(Path.Combine(built, "sheet"), "*-parts.csv").Sum(f => File.ReadAllLines(f).Length - 1), pieces.Count);
        SvgHasTheSameLines(all);
        var solids = WrittenSolid.Of(built);
        OtherFaces(all, solids);
        foreach (var solid in solids)
        {
            Deck(solid);
            Edge(solid);
            Walls(solid);
            RibsAndEnds(solid);
        }
    }

    private static bool IsOutside(string file) => file.EndsWith("-outside.dxf", StringComparison.Ordinal);

    // What is scored on the other face of strips: turned over, its outlines are those that are cut, and its lines lie on the joints of the print's brickwork.
    private void OtherFaces(Entity[] all, IReadOnlyList<WrittenSolid> solids)
    {
        foreach (var sheet in all.GroupBy(e => e.File).Where(g => IsOutside(g.Key)))
        {
            var front = all.Where(e => e.File == sheet.Key.Replace("-outside.dxf", ".dxf", StringComparison.Ordinal) && e is { Layer: "CUT", Closed: true })
                .ToArray();
            double width = SheetWidth(sheet.Key);
            Assert.All(sheet, e => Assert.True(e.Layer == "SCORE" || (e.Layer == "MARK" && e.Closed)));
            Entity[] outlines = [.. sheet.Where(e => e.Layer == "MARK")];
            Assert.Equal(front.Length, outlines.Length);
            foreach (var cut in front)
            {
                Point2[] turned = [.. cut.Points.Select(p => new Point2(width - p.X, p.Y))];
                var outline = outlines.Single(o => turned.All(p => o.Points.Min(q => (q - p).Length) < 0.01));
                var scores = sheet.Where(e => e.Layer == "SCORE" && Plane.Holds(outline.Points, (e.Points[0] + e.Points[1]) * 0.5)).ToArray();
                Assert.All(scores.SelectMany(e => e.Points),
                    p => Assert.True(Plane.Holds(outline.Points, p) || Plane.ToLine(p, [.. outline.Points, outline.Points[0]]) < 0.01));
                var piece = pieces.Single(p => p.Outline.Length == cut.Points.Length && p.Outline.Zip(cut.Points).All(z => (z.First - z.Second).Length < 1e-9));
                BedsAreThePrints(solids.Single(s => s.Number == piece.Name[0] - '0'), piece, [.. scores.Select(e => e.Points)]);
            }
        }
    }

    // At the height of a bed joint that runs the strip's whole length the print is thinner than in the middles of the courses under and over it.
    private static void BedsAreThePrints(WrittenSolid solid, Piece strip, Point2[][] scores)
    {
        double[] beds = [.. scores.Where(l => Math.Abs(l[0].Y - l[1].Y) < 0.01 && Math.Abs(l[1].X - l[0].X) > 0.98 * (strip.High.X - strip.Low.X))
            .Select(l => l[0].Y - strip.Low.Y).Order()];
        Assert.True(beds.Length > 2, $"{strip.Name}: {beds.Length} beds");
        var layout = solid.OnLayout();
        double Area(double height) => layout.Cut(new(0, 0, height), X, Y).Max(Plane.Area);
        foreach (var (low, high) in new[] { (beds[0], beds[1]), (beds[1], beds[2]) })
        {
            // A tenth of a millimetre along one face at least.
            Assert.True(Area((low + high) / 2) - Area(low) > 0.1 * (strip.High.X - strip.Low.X), $"{strip.Name}: a joint at {low:0.000}");
        }
    }

    private static double SheetWidth(string dxf) =>
        double.Parse(XDocument.Load(Path.ChangeExtension(dxf, ".svg")).Root!.Attribute("width")!.Value.Replace("mm", "", StringComparison.Ordinal),
            CultureInfo.InvariantCulture);

    // The edge in card, whole: its front is the print's coping edge as it lies on the layout, its ends are the print's, its back is square to the track so far
    // behind.
    private void Edge(WrittenSolid solid)
    {
        // An island has two, one along either side.
        Piece[] edges = [.. pieces.Where(p => p.Name.StartsWith($"{solid.Number} edge", StringComparison.Ordinal))];
        Assert.InRange(edges.Length, 1, 2);
        var loop = solid.Cut(new(0, 0, solid.Farthest), X, Y).MaxBy(l => Math.Abs(Plane.Area(l)))!;
        Point2[] ring = [.. loop.Select(p => solid.ToLayout(new(p.X, p.Y, solid.Farthest))).Select(p => new Point2(p.X, p.Y))];
        var (front, back) = Sides(solid, Plane.Area(ring) > 0 ? ring : [.. ring.Reverse()]);
        var (own, other) = (edges[0], edges[^1]);
        if (own != other && Off(own, front, back) + Off(other, back, front) > Off(own, back, front) + Off(other, front, back))
        {
            (own, other) = (other, own);
        }

        Edge(own, ring, front, back);
        if (own != other)
        {
            Edge(other, ring, back, front);
        }
    }

    private static double Off(Piece piece, Point2[] front, Point2[] back) => LaidEdge(piece, front, back).Off;

    private static (Func<Point2, Point2> Onto, Point2[] Front, double Off) LaidEdge(Piece piece, Point2[] front, Point2[] back)
    {
        Point2[] cut = Plane.Area(piece.Outline) > 0 ? piece.Outline : [.. piece.Outline.Reverse()], corners = Corners(cut);

        // Which of its long sides is the front, and which way it runs: as the print's front, with the back to the same hand.
        bool left = Point2.Cross(front[^1] - front[0], back[0] - front[0]) > 0;
        int[] at = [.. corners.Select(c => Array.IndexOf(cut, c))];
        return Enumerable.Range(0, 4).Select(k =>
        {
            Point2[] own = Walk(cut, at[k], at[(k + 1) % 4]), run = left ? own : [.. own.Reverse()];
            var onto = Onto(run[0], run[^1], front[0], front[^1]);
            Point2[] there = [.. own.Select(onto)];
            return (Onto: onto, Front: there, Off: Math.Abs(Length(own) - Length(front)) + front.Max(p => Plane.ToLine(p, there)));
        }).MinBy(l => l.Off);
    }

    private void Edge(Piece piece, Point2[] ring, Point2[] front, Point2[] back)
    {
        Point2[] cut = Plane.Area(piece.Outline) > 0 ? piece.Outline : [.. piece.Outline.Reverse()], corners = Corners(cut);
        var laid = LaidEdge(piece, front, back);
        Assert.True(front.All(p => Plane.ToLine(p, laid.Front) < Near) && Length(laid.Front) - Length(front) is > -Near and < (2 * Trim) + (2 * Near),
            $"{sample} {piece.Name}: front off by {laid.Off:0.000}");

        // Every other corner: as far behind the front as the card is wide, or on the print's own back where that is nearer; at its ends on the print's end
        // faces.
        foreach (var p in cut.Select(laid.Onto).Where(p => Plane.ToLine(p, laid.Front) > Near))
        {
            double off = Plane.ToLine(p, front), width = Plane.ToLine(p, back);
            Assert.True((off > Leaning * Card && off < Card + Near) || (off < Card && width < Near + Trim),
                $"{sample} {piece.Name}: {off:0.000} behind the edge, {width:0.000} from the back at {p}");
            Assert.True(Plane.Holds(ring, p) || Plane.ToLine(p, [.. ring, ring[0]]) < Near + Trim, $"{sample} {piece.Name}: outside the print at {p}");
        }

        Point2[] behind = [.. corners.Select(laid.Onto).Where(p => Plane.ToLine(p, laid.Front) > Near)];
        Assert.Equal(2, behind.Length);
        Assert.All(behind, p => Assert.True(Math.Min(Plane.FromLine(p, front[0], back[0]), Plane.FromLine(p, front[^1], back[^1])) < Near + Trim,
            $"{sample} {piece.Name}: an end at {p}"));
    }

    // The turn and shift that lays a stretch on another of nearly its length, middle on middle.
    private static Func<Point2, Point2> Onto(Point2 from, Point2 to, Point2 a, Point2 b)
    {
        Point2 d = to - from, e = b - a, here = (from + to) * 0.5, there = (a + b) * 0.5;
        var x = Point2.FromAngle(Math.Atan2(Point2.Cross(d, e), Point2.Dot(d, e)));
        return p => there + (x * (p - here).X) + (x.Left * (p - here).Y);
    }

    // The deck, in its own plane, as the section shows it seen from above: outline, holes.
    private void Deck(WrittenSolid solid)
    {
        var piece = One(solid, "deck");
        var loops = solid.Cut(new(0, 0, solid.Farthest), X, Y).Select(l => l.Select(p => new Point2(p.X, -p.Y)).Reverse().ToArray()).ToArray();
        Point2[] printed = loops.MaxBy(Plane.Area)!, cut = Plane.Area(piece.Outline) > 0 ? piece.Outline : [.. piece.Outline.Reverse()];
        var onto = RingFit.Laid(Corners(cut), cut, Corners(printed), printed);
        Point2[] there = [.. cut.Select(onto)];
        int free = 0;
        foreach (var p in printed)
        {
            double off = Plane.ToLine(p, [.. there, there[0]]);
            Assert.True(off < Near + Trim, $"{sample} {piece.Name}: {off:0.000} at {p}");
            free += off < Near ? 1 : 0;
        }

        // All but the corners at its ends.
        Assert.True(free >= printed.Length - 4, $"{sample} {piece.Name}: {printed.Length - free}");
        double width = Corners(printed) is var c ? Math.Min((c[1] - c[0]).Length, (c[2] - c[1]).Length) : 0;
        Assert.InRange(Plane.Area(cut) - Plane.Area(printed), -0.5, (2 * (Trim + 0.05) * width) + 0.5);

        // Holes that go through the sheet are where they are in the print.
        Point2[] holes = [.. loops.Where(l => Plane.Area(l) < 0).Select(Plane.Middle)], own = [.. piece.Holes.Select(onto)];
        Assert.Equal(holes.Length, own.Length);
        Assert.All(own, h => Assert.True(holes.Min(p => (p - h).Length) < 2 * Near, $"{sample} {piece.Name}: a hole at {h}"));
        Assert.All(piece.Diameters, d => Assert.True(loops.Any(l => Plane.Area(l) < 0 && Math.Abs(Plane.Area(l) + (d * d * Math.PI / 4)) < 0.12 * d * d),
            $"{sample} {piece.Name}: Ø {d}"));
    }

    // A strip is as long as the wall's face is, and as high as the deck leaves it; its marks are at the ribs, as seen from inside.
    private void Walls(WrittenSolid solid)
    {
        // Half-way up the lowest course where there are courses: at its bed the outline is that of the joints' ground.
        var layout = solid.OnLayout();
        var loops = layout.Cut(new(0, 0, 0.4), X, Y);
        var outer = loops.MaxBy(Plane.Area)!;
        var (front, back) = Sides(solid, outer);
        bool isFaced = TurnsSharply(outer) > MostCorners;
        int count = pieces.Count(p => p.Name.EndsWith(" deck", StringComparison.Ordinal));
        foreach (var (name, face, other) in new[] { ("front wall", front, back),
            (pieces.Any(p => p.Name == $"{solid.Number} back wall") ? "back wall" : "second front wall", back, front) })
        {
            var piece = One(solid, name);
            double length = piece.High.X - piece.Low.X;
            // Of a faced wall the line may be that of its joints' ground, on a curve shorter by their depth times the turn, and bricks stop a joint short of
            // both its ends.
            double turn = Enumerable.Range(1, face.Length - 2).Sum(i => Math.Abs(Plane.Turn(face[i - 1], face[i], face[i + 1])));
            double lost = isFaced ? Notch * (1 + turn) : 0;
            Assert.InRange(length - Length(face), -Near - lost, (2 * Trim) + Near + lost);

            // A print is trimmed where it meets another, not at the platform's ends.
            double more = solid.Number == 1 ? 0 : solid.Number == count ? length - Length(face) : (length - Length(face)) / 2;

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
            // A rib that leans against the wall meets the strip's inner face elsewhere than the print's.
            var hollows = Hollows(loops, face);
            var opposite = Hollows(loops, other);
            Assert.Equal(opposite.Length, hollows.Length);
            double[] ribs = [.. hollows.Zip(hollows.Skip(1)).Zip(opposite.Zip(opposite.Skip(1)), (a, b) =>
            {
                Point2 here = (a.First.To + a.Second.From) * 0.5, there = (b.First.To + b.Second.From) * 0.5,
                    across = (there - here) * (1 / (there - here).Length);
                double off = Plane.ToLine(here, face), gains = Plane.ToLine(here + across, face) - off;
                return Where(face, here + (across * ((Strip - off) / gains)));
            })], lines = [.. piece.Marks.Where(m => Math.Abs(m.From.X - m.To.X) < 0.01).Select(m => At(m.From.X)).Order()];
            Assert.Equal(2 * ribs.Length, lines.Length);
            for (int i = 0; i < ribs.Length; i++)
            {
                Assert.True(Math.Abs(ribs[i] - ((lines[2 * i] + lines[(2 * i) + 1]) / 2)) < 0.15,
                    $"{piece.Name}: rib {i + 1} at {ribs[i]:0.000}, marked at {(lines[2 * i] + lines[(2 * i) + 1]) / 2:0.000}, more {more:0.000}");
                Assert.Equal(Thick, lines[(2 * i) + 1] - lines[2 * i], 0.01);
            }
        }
    }

    // What is hollow beside a wall, by rising chainage: first and last corner beside it.
    private static (Point2 From, Point2 To)[] Hollows(IReadOnlyList<Point2[]> loops, Point2[] face) =>
        [.. loops.Where(l => Plane.Area(l) < -20).Select(l => l.Where(p => Plane.ToLine(p, face) < 2).OrderBy(p => Where(face, p)).ToArray())
            .Where(l => l.Length > 1)
            .Select(l => (From: l[0], To: l[^1])).OrderBy(h => Where(face, h.From))];

    // Ribs and end walls fill what is between the strips; slots are as wide as the sheet, half as deep as the rib, and as many as ribs cross.
    private void RibsAndEnds(WrittenSolid solid)
    {
        var sides = Sides(solid, solid.OnLayout().Cut(new(0, 0, 0.4), X, Y).MaxBy(Plane.Area)!);

        // An island may be narrowest between its ends.
        double[] wide = [(sides.Front[0] - sides.Back[0]).Length, (sides.Front[^1] - sides.Back[^1]).Length,
            .. sides.Front.Skip(1).SkipLast(1).Select(p => Plane.ToLine(p, sides.Back))];
        var ends = pieces.Where(p => p.Name.StartsWith($"{solid.Number} end wall", StringComparison.Ordinal)).ToArray();
        var ribs = pieces.Where(p => p.Name.StartsWith($"{solid.Number} rib ", StringComparison.Ordinal) && !p.Name.Contains("along", StringComparison.Ordinal))
            .ToArray();
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

    private Piece One(WrittenSolid solid, string what) =>
        pieces.SingleOrDefault(p => p.Name == $"{solid.Number} {what}" || p.Name.StartsWith($"{solid.Number} {what},", StringComparison.Ordinal))
        ?? throw new Xunit.Sdk.XunitException($"no piece {solid.Number} {what}");

    // SVG of the same sheet: as many points a layer, in the same box.
    private void SvgHasTheSameLines(Entity[] all)
    {
        foreach (var sheet in all.GroupBy(e => e.File))
        {
            var svg = XDocument.Load(Path.ChangeExtension(sheet.Key, ".svg")).Root!;
            double height = double.Parse(svg.Attribute("height")!.Value.Replace("mm", "", StringComparison.Ordinal), CultureInfo.InvariantCulture);
            foreach (var (layer, colour) in (ReadOnlySpan<(string, string)>)[("CUT", "#FF0000"), ("SCORE", "#0000FF"), ("MARK", "#008000")])
            {
                Point2[] theirs = [.. sheet.Where(e => e.Layer == layer && e.Kind is not ("TEXT" or "CIRCLE")).SelectMany(e => e.Points).OrderBy(p => p.X)
                    .ThenBy(p => p.Y)];
                Point2[] ours = [.. Points(svg, colour).Select(p => new Point2(p.X, height - p.Y)).OrderBy(p => p.X).ThenBy(p => p.Y)];
                Assert.Equal(theirs.Length, ours.Length);
                var cells = ours.ToLookup(p => (Math.Round(p.X, 1), Math.Round(p.Y, 1)));
                Assert.All(theirs, p => Assert.True(
                    Enumerable.Range(0, 9).Any(i => cells[(Math.Round(p.X + (((i % 3) - 1) * 0.01), 1), Math.Round(p.Y + (((i / 3) - 1) * 0.01), 1))]
                        .Any(q => (q - p).Length < 0.01)),
                    $"{sheet.Key}: {layer} {p}"));
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

    private static double Slope(WrittenSolid solid) =>
        1 / Math.Abs(Point3.Cross(solid.ToLayout(X) - solid.ToLayout(default), solid.ToLayout(Y) - solid.ToLayout(default)).Z);

    // Long sides of a section's outline on the layout, both by rising chainage, the one by the track first; joints of a facing are passed over.
    private (Point2[] Front, Point2[] Back) Sides(WrittenSolid solid, Point2[] ring)
    {
        var chart = charts[solid.Platform];
        ring = TurnsSharply(ring) <= MostCorners ? ring : [.. Plane.WithoutNotches(ring, Notch)];
        var corners = Corners(ring);
        int[] at = [.. corners.Select(c => Array.IndexOf(ring, c))];
        Point2[][] sides = [.. Enumerable.Range(0, 4).Select(k => Walk(ring, at[k], at[(k + 1) % 4]))];
        double Along(Point2 p) => chart.Locate(p).Chainage;
        var ends = sides.OrderBy(side => Along(side[0]) + Along(side[^1])).ToArray();
        Point2[] Rising(Point2[] side) => Along(side[^1]) > Along(side[0]) ? side : [.. side.Reverse()];
        var two = ends[1..3].OrderBy(side => Math.Abs(chart.Locate(side[0]).Offset) + Math.Abs(chart.Locate(side[^1]).Offset)).Select(Rising).ToArray();
        return (two[0], two[1]);
    }

    private static int TurnsSharply(Point2[] ring) => Enumerable.Range(0, ring.Length)
        .Count(i => Math.Abs(Plane.Turn(ring[(i + ring.Length - 1) % ring.Length], ring[i], ring[(i + 1) % ring.Length])) > 0.7);

    private static Point2[] Walk(Point2[] ring, int from, int to) =>
        [.. Enumerable.Range(0, ((to - from + ring.Length) % ring.Length) + 1).Select(i => ring[(from + i) % ring.Length])];

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

    // The four places where what is round a ring turns sharply, in order: what is let into its sides, as for plates, has none.
    private static Point2[] Corners(Point2[] ring)
    {
        Point2[] hull = Hull(ring);
        Point2[] corners = [.. Enumerable.Range(0, hull.Length)
            .Where(i => Plane.Turn(hull[(i + hull.Length - 1) % hull.Length], hull[i], hull[(i + 1) % hull.Length]) > 0.7).Select(i => hull[i])];
        Assert.Equal(4, corners.Length);
        return [.. corners.OrderBy(c => Array.IndexOf(ring, c))];
    }

    // Convex hull, to the left round (Andrew's chains).
    private static Point2[] Hull(Point2[] points)
    {
        var sorted = points.Distinct().OrderBy(p => p.X).ThenBy(p => p.Y).ToArray();
        return [.. Chain(sorted), .. Chain([.. sorted.Reverse()])];

        static IEnumerable<Point2> Chain(Point2[] row)
        {
            var chain = new List<Point2>();
            foreach (var p in row)
            {
                while (chain.Count > 1 && Point2.Cross(chain[^1] - chain[^2], p - chain[^1]) <= 0)
                {
                    chain.RemoveAt(chain.Count - 1);
                }

                chain.Add(p);
            }

            return chain.SkipLast(1);
        }
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

                // The name of a paved deck stands in the gap of 3 mm below it, from its lower left corner on.
                bool IsBelow(Point2 p) => ring.Points.Min(q => q.X) is var left && ring.Points.Min(q => q.Y) is var low && p.X > left && p.X < left + 1
                    && p.Y < low && p.Y > low - 3;
                Entity[] own = [.. rounds.Where(r => On(r.Points[0]))];
                yield return new(
                    string.Join(" ", sheet.Where(e => e.Kind == "TEXT" && (On(e.Points[0]) || IsBelow(e.Points[0])))
                        .Select(e => e.Text.Replace("  ", " ", StringComparison.Ordinal))),
                    ring.Points,
                    [.. own.Select(r => r.Points[0]), .. rings.Where(r => r != ring && On(r.Points[0])).Select(r => Plane.Middle(r.Points))],
                    [.. own.Select(r => 2 * r.Radius)],
                    [.. sheet.Where(e => e.Layer == "MARK" && e.Points.Length == 2 && On((e.Points[0] + e.Points[1]) * 0.5))
                        .Select(e => (e.Points[0], e.Points[1]))]);
            }
        }

        /// <summary>What is cut into it from its lower or its upper edge: width, depth, and height of the piece there.</summary>
        public List<(double Width, double Deep, double Height)> Slots()
        {
            var found = new List<(double, double, double)>();
            for (int i = 0; i < Outline.Length; i++)
            {
                // Across the end of a slot two of its corners are turned the other way round than the outline.
                Point2 before = Outline[(i + Outline.Length - 1) % Outline.Length], a = Outline[i], b = Outline[(i + 1) % Outline.Length],
                    after = Outline[(i + 2) % Outline.Length];
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
