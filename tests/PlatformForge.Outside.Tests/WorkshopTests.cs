using System.Collections.Concurrent;
using System.Globalization;
using System.IO.Compression;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using PlatformForge.Exports.Manifests;
using PlatformForge.Geometry;
using PlatformForge.Track;

namespace PlatformForge.Outside.Tests;

/// <summary>
/// Every figure of the tables for the workbench, measured anew in the files that are printed: STL cut by planes, 3MF for what is which colour. The design copy
/// tells nothing here but where the track lies.
/// </summary>
[Collection("samples")]
public class WorkshopTests(WrittenSamples samples)
{
    // mm: a table has two digits, a file 32-bit figures, a round hole twelve sides.
    private const double Near = 0.03;

    // Below mouths and reliefs of what lies on the bed, above the deck's underside, mm in the print.
    private const double InDeck = 0.7;

    // More than joints of brickwork are deep, less than what a section's corners are apart, mm.
    private const double Notch = 0.5;

    // Wider than any platform here, mm.
    private const double Widest = 200;

    private static readonly Point3 X = new(1, 0, 0), Y = new(0, 1, 0), Z = new(0, 0, 1);

    [Fact]
    public void Holes_of_the_deck_are_where_the_drilling_list_says_and_as_large()
    {
        int looked = 0;
        foreach (var (table, sections) in Tables("drilling-deck"))
        {
            foreach (var section in sections.Where(s => Lies(s)))
            {
                var loops = section.Solid.Cut(new(0, 0, InDeck), X, Y);
                var rows = table.Where(r => r["section"] == $"{section.Solid.Number}" && (r["depth_mm"] == "through" || Number(r, "depth_mm") > InDeck))
                    .ToList();
                var holes = loops.Where(l => Plane.Area(l) < 0).ToArray();
                Assert.True(rows.Count == holes.Length, $"{section.Solid.Platform} {section.Solid.Number}: {rows.Count} told, {holes.Length} "
                    + $"found: {string.Join(", ", holes.Select(h => $"{-Plane.Area(h):0.00}"))}");
                if (SectionSides.Of(section.Solid.Outline(InDeck), p => section.Place(p, InDeck)) is not { } sides)
                {
                    continue;
                }

                foreach (var hole in holes)
                {
                    var middle = Plane.Middle(hole);
                    double front = Plane.ToLine(middle, sides.Front), lower = Plane.FromLine(middle, sides.Lower[0], sides.Lower[^1]),
                        upper = Plane.FromLine(middle, sides.Upper[0], sides.Upper[^1]);
                    var row = rows.MinBy(r => Math.Abs(Number(r, "from_lower_end_mm") - lower) + Math.Abs(Number(r, "from_coping_edge_mm") - front))!;
                    Assert.True(
                        Math.Abs(Number(row, "from_lower_end_mm") - lower) < Near && Math.Abs(Number(row, "from_higher_end_mm") - upper) < Near
                        && Math.Abs(Number(row, "from_coping_edge_mm") - front) < Near,
                        $"{section.Solid.Platform} {section.Solid.Number}: {string.Join(", ", row.Values)} "
                            + $"measures {front:0.000}, {lower:0.000}, {upper:0.000}");
                    Size(row, hole);
                    rows.Remove(row);
                    looked++;
                }
            }
        }

        Assert.True(looked > 60, $"{looked}");
    }

    [Fact]
    public void Panels_are_as_long_as_posts_stand_apart()
    {
        int looked = 0;
        foreach (var (table, sections) in Tables("posts-and-panels"))
        {
            var wanted = table.Where(r => r["what"] is "panel" or "odd panel" or "gate")
                .SelectMany(r => Enumerable.Repeat(Number(r, "length_mm"), (int)Number(r, "count"))).Order().ToArray();
            if (wanted.Length == 0 || !sections.All(Lies))
            {
                continue;
            }

            // Posts are the holes of the commonest size.
            var holes = sections.SelectMany(s => s.Solid.Cut(new(0, 0, InDeck), X, Y).Where(l => Plane.Area(l) < 0 && l.Length >= 10)
                .Select(l => (Area: Math.Round(Plane.Area(l), 1), At: s.OnLayout(Plane.Middle(l), InDeck), s)))
                .GroupBy(h => h.Area).MaxBy(g => g.Count())!.OrderBy(h => h.s.Chart.Locate(h.At).Chainage).Select(h => h.At).ToArray();
            double[] apart = [.. holes.Zip(holes.Skip(1), (a, b) => (b - a).Length).Order()];
            Assert.Equal(wanted.Length, apart.Length);
            Assert.All(wanted.Zip(apart), p => Assert.Equal(p.First, p.Second, Near));
            looked += apart.Length;
        }

        Assert.True(looked > 20, $"{looked}");
    }

    [Fact]
    public void Bores_are_as_many_as_wide_and_as_deep_as_the_dowels_need()
    {
        int looked = 0;
        foreach (var (table, sections) in Tables("dowels-and-rods"))
        {
            var row = Assert.Single(table);
            if (!row["what"].StartsWith("dowel", StringComparison.Ordinal))
            {
                continue;
            }

            double depth = Number(row, "depth_mm"), wide = Number(row, "goes_into_mm");
            Assert.True(2 * depth + 0.2 >= Number(row, "length_mm"), "a dowel has room in both its bores");
            int bores = 0, deep = 0, beyond = 0;
            foreach (var section in sections.Where(Lies))
            {
                bores += Bores(section, 1.2).Count;
                deep += Bores(section, depth - 0.1).Count;
                beyond += Bores(section, depth + 0.1).Count;
                Assert.All(Bores(section, 1.2), b => Assert.InRange(b.Max(p => p.Y) - b.Min(p => p.Y), wide - Near, (wide * 1.05) + Near));
            }

            Assert.Equal((2 * (int)Number(row, "count"), bores, 0), (bores, deep, beyond));
            looked += bores;
        }

        Assert.True(looked >= 32, $"{looked}");
    }

    [Fact]
    public void Areas_to_be_painted_are_those_of_the_coloured_files()
    {
        foreach (string sample in samples.Names)
        {
            foreach (string file in Directory.GetFiles(Path.Combine(samples.Folder, sample, "tables"), "*-paint.csv"))
            {
                string name = Path.GetFileName(file)[..^"-paint.csv".Length];
                var table = Csv(file);
                var seen = Seen(Path.Combine(samples.Folder, sample), name, SectionsOf(sample).Where(s => s.Name == name).ToArray());
                foreach (var (surface, paint) in new[] { ("deck", 0), ("coping", 1), ("white line", 2), ("walls", 3), ("joints of mortar", 4), ("stone", 5),
                    ("timber", 6), ("concrete and flags", 7), ("paving bricks", 8), ("bricks of the coping", 13),
                        ("render", 14) })
                {
                    // What an inlay or a strip covers is the floor of its groove, and takes no paint.
                    double told = table.Where(r => r["surface"] == surface).Sum(r => Number(r, "area_cm2"));
                    double measured = paint == 2 && IsPrinted(sample, "white line") ? 0 : seen[paint] / 100;
                    Assert.True(Math.Abs(told - measured) <= (0.01 * measured) + 0.1, $"{sample}, {name}, {surface}: {told} told, {measured:0.00} measured");

                    // 100 cm² to a ml, as the report says, by the coats of the table; half as much again stays in brush and palette, in steps of half a ml.
                    foreach (var row in table.Where(r => r["surface"] == surface))
                    {
                        double all = Number(row, "coats") * measured / 100, ready = Math.Ceiling(all * 1.5 / 0.5) * 0.5;
                        Assert.Equal(all, Number(row, "ml_all_coats"), (0.01 * all) + 0.02);
                        Assert.InRange(Number(row, "ml_to_have_ready"), ready - 0.5, ready + 0.5);
                    }
                }
            }
        }
    }

    /// <summary>What the work list counts is what was written: sections, dowels to cut, pieces to have ready.</summary>
    [Fact]
    public void Figures_of_the_work_list_are_those_of_the_files()
    {
        int dowels = 0, pieces = 0;
        foreach (string file in samples.Files("-work-list.csv"))
        {
            string name = Path.GetFileName(file)[..^"-work-list.csv".Length], tables = Path.GetDirectoryName(file)!;
            string[] steps = [.. Csv(file).Select(r => r["what"])];
            int sections = Directory.GetFiles(Path.Combine(tables, "..", "stl"), $"{name}-*.stl")
                .Count(f => int.TryParse(Path.GetFileNameWithoutExtension(f)[(name.Length + 1)..], CultureInfo.InvariantCulture, out _));
            Assert.Contains(steps, s => sections == 1 ? s.StartsWith("The platform is one section", StringComparison.Ordinal)
                : s.Contains($"dry, 1 to {sections},", StringComparison.Ordinal));
            var parts = Csv(Path.Combine(tables, $"{name}-parts.csv"));
            foreach (Match cut in steps.Select(s => Regex.Match(s, @"^Cut (\d+) pieces of ([\d.]+) mm: (.*?)\. Break")).Where(m => m.Success))
            {
                var row = Assert.Single(parts, r => r["what"] == cut.Groups[3].Value && r["how"] == "cut");
                Assert.Equal(cut.Groups[1].Value, row["count"]);
                Assert.StartsWith(cut.Groups[2].Value, row["size"], StringComparison.Ordinal);
                dowels++;
            }

            var ready = steps.Select(s => Regex.Match(s, @"^Have ready the (\d+) pieces")).FirstOrDefault(m => m.Success);
            double listed = parts.Where(r => r["how"] is "bought" or "made" or "bought or made" && r["count"].Length > 0).Sum(r => Number(r, "count"));
            Assert.Equal(listed, ready is null ? 0 : double.Parse(ready.Groups[1].Value, CultureInfo.InvariantCulture));
            pieces += (int)listed;
            Assert.Equal(Directory.GetFiles(Path.Combine(tables, "..", "3mf"), $"{name}-plate-*.3mf").Length > 1,
                steps.Any(s => s.StartsWith("Print the other", StringComparison.Ordinal)));
        }

        Assert.True(dowels > 3 && pieces > 3, $"{dowels} {pieces}");
    }

    [Fact]
    public void Masks_cover_the_deck_and_bare_the_line_as_they_are_printed()
    {
        foreach (string file in samples.Files("-masks.dxf"))
        {
            var cuts = Written.Parse(Tool.Node("read-cuts.mjs", file))
                .Select(e => (Layer: e.Text("layer"), Kind: e.Text("kind"), Closed: e.GetProperty("closed").GetBoolean(),
                    Points: e.GetProperty("points").EnumerateArray().Select(p => new Point2(p[0].GetDouble(), p[1].GetDouble())).ToArray())).ToArray();
            Assert.Equal(["CUT", "MARK"], cuts.Select(c => c.Layer).Distinct().Order());
            Assert.Contains(cuts, c => c is { Layer: "MARK", Kind: "POLYLINE" } && Math.Abs((c.Points[1] - c.Points[0]).Length - 100) < 1e-6);
            string sample = Path.GetFileName(Path.GetDirectoryName(Path.GetDirectoryName(file)))!, name = Path.GetFileName(file)[..^"-masks.dxf".Length];
            var rings = cuts.Where(c => c.Layer == "CUT").Select(c => c.Points).ToArray();
            Assert.All(cuts.Where(c => c.Layer == "CUT"), c => Assert.True(c.Closed));
            // A slot lies within the stencil before it; the rest are outlines, and those with a slot are no covers.
            double slots = 0, covers = 0;
            for (int i = 0; i < rings.Length; i++)
            {
                bool isSlot = i > 0 && Plane.Holds(rings[i - 1], rings[i][0]), hasSlot = i + 1 < rings.Length && Plane.Holds(rings[i], rings[i + 1][0]);
                slots += isSlot ? Math.Abs(Plane.Area(rings[i])) : 0;
                covers += isSlot || hasSlot ? 0 : Math.Abs(Plane.Area(rings[i]));
            }

            var top = TopAreas(Path.Combine(samples.Folder, sample), name);
            var one = SectionsOf(sample).Where(s => s.Name == name && Lies(s)).MaxBy(s => s.Solid.Chainage.To - s.Solid.Chainage.From)!;
            int coping = Coping(one, [.. Coloured(one.Built, name).Single(c => c.Number == one.Solid.Number).Triangles.Where(t => IsTop(t.Corners))]);
            double joints = SectionsOf(sample).Count(s => s.Name == name) * 2 * 1.2; // a slot goes on 1 mm beyond a joint, a mm or so wide
            // Joints between slabs are grooves across the line, of the coping's colour: up to one in twenty of it.
            // One that is a print of its own has no slot; the floor of a tactile strip's rebate lies under the cover.
            double line = IsPrinted(sample, "white line") ? 0 : top[2];
            Assert.True(slots >= line - 0.3 && slots <= (line * 1.05) + (line > 0 ? joints : 0), $"{file}: slots {slots:0.0}, line {line:0.0}");
            // What is let into the deck is open in the print and covered by the mask; a cover reaches to the end faces, whose lower edges are relieved.
            double deck = DeckPaints.Where(p => p != coping).Sum(p => top[p]); // plain, or of flags, setts, planks, bricks
            Assert.InRange(covers, deck, deck * 1.03);
        }
    }

    /// <summary>Boxes of the masks, on each section's own top: what is coloured as deck, and what is coloured as the line with 10 mm of border round
    /// it.</summary>
    [Fact]
    public void Masks_are_as_long_and_wide_as_what_they_lie_on()
    {
        int covers = 0, stencils = 0;
        foreach (var (table, sections) in Tables("masks"))
        {
            foreach (var row in table)
            {
                var section = sections.Single(s => $"{s.Solid.Number}" == row["section"]);
                string where = $"{section.Solid.Platform}, {row["mask"]} of section {row["section"]}";
                if (!Lies(section) || OutlineOf(section) is not { } sides)
                {
                    continue;
                }

                // Along the straight line between the ends of the coping's edge.
                Point2 first = sides.Front[0], along = (sides.Front[^1] - first) * (1 / (sides.Front[^1] - first).Length);
                (double Long, double Wide) Box(IEnumerable<Point2> points) =>
                    points.Select(p => new Point2(Point2.Dot(p - first, along), Point2.Cross(along, p - first))).ToArray() is var q
                    ? (q.Max(p => p.X) - q.Min(p => p.X), q.Max(p => p.Y) - q.Min(p => p.Y)) : default;
                var all = Coloured(section.Built, section.Name).Single(c => c.Number == section.Solid.Number).Triangles;
                var top = all.Where(t => IsTop(t.Corners)).ToArray();
                bool isCover = row["mask"].StartsWith("deck cover", StringComparison.Ordinal);
                // Between two copings nothing but the deck's own colour tells its ends, less their relief.
                bool isIsland = !File.Exists(Path.Combine(section.Built, "tables", section.Name + "-setting-out.csv"));
                // Two lines of one colour, or a deck of its coping's: by colour they are not told apart.
                if ((isIsland && !isCover) || (isCover && Coping(section, top) is var coping
                    && !top.Any(t => t.Corners.Max(p => p.Z) < 0.05 && t.Paint != coping && DeckPaints.Contains(t.Paint))))
                {
                    continue;
                }

                var (length, width) = isCover && isIsland ? Box(Deck(section, all, top, toEnds: false)) : isCover
                    ? (Box(Deck(section, all, top, toEnds: true)).Long, Box(Deck(section, all, top, toEnds: false)).Wide) : Box(Bordered(section, top, row));
                // One digit, facets and trims. A border that goes 11 mm straight on from a chord of 5 mm lies 11 x 16 / 2R beside its curve, 0.15 mm on 600 mm,
                // and 0.04 more for its facets.
                double near = isCover ? 0.12 : 0.05 + 0.15 + 0.04;
                Assert.True(Math.Abs(length - Number(row, "long_mm")) < near + (isIsland ? Relieved : 0) && Math.Abs(width - Number(row, "wide_mm")) < near,
                    $"{where}: {row["long_mm"]} by {row["wide_mm"]} told, {length:0.00} by {width:0.00} measured");
                (covers, stencils) = isCover ? (covers + 1, stencils) : (covers, stencils + 1);
            }
        }

        Assert.True(covers > 20 && stencils > 10, $"{covers} {stencils}");
    }

    // Deck of plain, flags, what is let into it, and setts, planks and bricks.
    private static readonly int[] DeckPaints = [0, 5, 6, 7, 8, 9];
    private const int MortarPaint = 4;

    // Trim and relief of the bed's edges at both ends of a section, mm.
    private const double Relieved = 0.6;

    // What is coloured as deck; and to the end faces themselves, whose edges on the bed are relieved, what lies as far from the track.
    private static IEnumerable<Point2> Deck(Section section, (Point3[] Corners, int Paint)[] all, (Point3[] Corners, int Paint)[] top, bool toEnds)
    {
        double Off(Point3 p) => Math.Abs(section.Place(new(p.X, p.Y), p.Z).Offset);
        int coping = Coping(section, top);
        Point3[] deck = [.. top.Where(t => t.Corners.Max(p => p.Z) < 0.05 && t.Paint != coping && DeckPaints.Contains(t.Paint)).SelectMany(t => t.Corners)
            .Distinct()];
        double near = deck.Min(Off) - 0.01;
        return all.SelectMany(t => t.Corners).Distinct().Where(p => toEnds && p.Z < 1 && Off(p) >= near).Concat(deck).Select(p => new Point2(p.X, p.Y));
    }

    // What the coping is made of: of bricks it has a deck's colour.
    private static int Coping(Section section, (Point3[] Corners, int Paint)[] top) =>
        top.Where(t => t.Paint != MortarPaint && t.Corners.Max(p => p.Z) < 0.1)
        .MinBy(t => t.Corners.Min(p => Math.Abs(section.Place(new(p.X, p.Y), p.Z).Offset))).Paint;

    private static SectionSides? OutlineOf(Section section) =>
        SectionSides.Of(Plane.WithoutNotches(section.Solid.Outline(InDeck), Notch), p => section.Place(p, InDeck));

    // Looks up by less than 37 degrees from straight: what relieves an edge, at 45, is of the top's colour and none of it.
    private static bool IsTop(Point3[] corners) => LooksUp(corners, 0.8);

    private static bool IsRoughlyTop(Point3[] corners) => LooksUp(corners, 0.5);

    private static bool LooksUp(Point3[] corners, double cosine) =>
        Point3.Cross(corners[1] - corners[0], corners[2] - corners[0]) is var n && n.Z < -cosine * n.Length && corners.Average(p => p.Z) < 1;

    // Both edges of the line as they are coloured, put 10 mm outwards and on at either end; a slot goes on 1 mm past a cut first.
    private static IEnumerable<Point2> Bordered(Section section, (Point3[] Corners, int Paint)[] top, Dictionary<string, string> row)
    {
        const double border = 10, beyond = 1;
        var line = top.Where(t => t.Paint == 2).SelectMany(t => t.Corners).Where(p => p.Z < 0.05)
            .Select(p => (At: new Point2(p.X, p.Y), Place: section.Place(new(p.X, p.Y), p.Z))).ToArray();
        double lower = line.Min(p => p.Place.Chainage), upper = line.Max(p => p.Place.Chainage), middle = (lower + upper) / 2;
        // Edges on the bed are relieved at the end faces: a line that comes so near is taken to the cut, and past it where the next section has one too.
        const double trim = 0.1;
        bool HasLine(int number) => Coloured(section.Built, section.Name)
            .Any(c => c.Number == number && c.Triangles.Any(t => t.Paint == 2 && IsTop(t.Corners)));
        double Past(double left, int next) => left > Relieved ? 0 : left + (HasLine(next) ? beyond - trim : 0);
        double below = Past(lower - section.Solid.Chainage.From, section.Solid.Number - 1),
            above = Past(section.Solid.Chainage.To - upper, section.Solid.Number + 1);
        // Corners of a straight pair of edges come two by two: nearer and farther from the track.
        var pairs = line.GroupBy(p => Math.Round(p.Place.Chainage, 1)).OrderBy(g => g.Key)
            .Select(g => (g.Key, Near: g.MinBy(p => Math.Abs(p.Place.Offset)), Far: g.MaxBy(p => Math.Abs(p.Place.Offset)))).ToArray();
        double wide = pairs.Max(p => Math.Abs(p.Far.Place.Offset) - Math.Abs(p.Near.Place.Offset));
        pairs = [.. pairs.Where(p => Math.Abs(p.Far.Place.Offset) - Math.Abs(p.Near.Place.Offset) > wide - 0.05)];
        Assert.Equal(Number(row, "slot_mm"), wide, Near);
        Point2 On(Point2 a, Point2 b, double by) => a + ((a - b) * (by / (a - b).Length));
        foreach (var (near, far) in pairs.Select(p => (p.Near.At, p.Far.At)))
        {
            yield return On(near, far, border);
            yield return On(far, near, border);
        }

        foreach (var (end, inner, past) in new[] { (pairs[0], pairs.First(p => p.Key > pairs[0].Key + (border / 2)), below),
            (pairs[^1], pairs.Last(p => p.Key < pairs[^1].Key - (border / 2)), above) })
        {
            double by = border + past;
            // By chainage: on the inside of a curve that is less.
            double along = Math.Abs(end.Near.Place.Chainage - inner.Near.Place.Chainage);
            Point2 Border((Point2 At, TrackPlace Place) p, (Point2 At, TrackPlace Place) away) => On(p.At, away.At, border);
            Point2 near = Border(end.Near, end.Far), far = Border(end.Far, end.Near);
            yield return near + ((near - Border(inner.Near, inner.Far)) * (by / along));
            yield return far + ((far - Border(inner.Far, inner.Near)) * (by / along));
        }
    }

    [Fact]
    public void The_baseboard_is_drilled_where_wires_and_screws_come_down()
    {
        int looked = 0, wires = 0;
        foreach (var (table, sections) in Tables("drilling-baseboard"))
        {
            foreach (var row in table)
            {
                var section = sections.Single(s => $"{s.Solid.Number}" == row["section"]);
                var at = new Point2(Number(row, "x_mm"), Number(row, "y_mm"));
                var loops = section.Solid.OnLayout().Cut(new(0, 0, 1), X, Y);
                var sides = SectionSides.Of(loops.MaxBy(Plane.Area)!, p => section.Chart.Locate(p));
                if (sides is null)
                {
                    continue;
                }

                Assert.Equal(Number(row, "from_wall_foot_mm"), Plane.ToLine(at, sides.Front), Near);
                Assert.Equal(Number(row, "from_lower_end_mm"), Plane.FromLine(at, sides.Lower[0], sides.Lower[^1]), Near);
                Assert.Equal(Number(row, "chainage_mm"), section.Chart.Locate(at).Chainage, 0.06);
                // Open down to the board there: in a hollow, or in the pilot of a screw.
                Assert.True(loops.Any(l => Plane.Area(l) < 0 && Plane.Holds(l, at)), $"{string.Join(", ", row.Values)} is under plastic");
                looked++;
                wires += row["for"].StartsWith("wires", StringComparison.Ordinal) ? 1 : 0;
            }
        }

        Assert.True(looked >= 3 && wires >= 3, $"{looked}, {wires}");
    }

    [Fact]
    public void Wires_are_as_long_as_their_way_through_the_print()
    {
        int looked = 0;
        foreach (string file in samples.Files(".csv").Where(f => f.EndsWith("-wires.csv", StringComparison.Ordinal)))
        {
            string sample = Path.GetFileName(Path.GetDirectoryName(Path.GetDirectoryName(file)))!, name = Path.GetFileName(file)[..^"-wires.csv".Length];
            var sections = SectionsOf(sample).Where(s => s.Name == name).ToArray();
            var board = Csv(file.Replace("-wires.csv", "-drilling-baseboard.csv", StringComparison.Ordinal))
                .Where(r => r["for"].StartsWith("wires", StringComparison.Ordinal)).ToArray();
            var holes = sections.SelectMany(s => s.Solid.Cut(new(0, 0, InDeck), X, Y).Where(l => Plane.Area(l) < 0)
                .Select(l => (At: s.OnLayout(Plane.Middle(l), InDeck), Section: s))).ToArray();
            foreach (var row in Csv(file))
            {
                var hole = holes.MinBy(h => Math.Abs(h.Section.Chart.Locate(h.At).Chainage - Number(row, "chainage_mm")));
                double along = board.Length == 0 ? 0
                    : board.Min(b => Math.Abs((new Point2(Number(b, "x_mm"), Number(b, "y_mm")) - hole.At).Length - Number(row, "along_channel_mm")));
                Assert.True(along < 0.1, $"{name}: along a channel off by {along:0.00}");
                // The top over the board, from the plane that lies on the bed.
                double top = hole.Section.Solid.ToLayout(new(0, 0, 0)).Z;
                Assert.Equal(top, Number(row, "through_deck_mm") + Number(row, "to_baseboard_mm"), 0.9);
                double sum = Number(row, "through_deck_mm") + Number(row, "along_channel_mm") + Number(row, "to_baseboard_mm") + Number(row, "below_mm");
                Assert.InRange(Number(row, "length_mm"), sum - 0.2, sum + 1.2);
                Assert.Equal(Number(row, "length_mm") * Number(row, "count"), Number(row, "total_length_mm"));
                looked++;
            }
        }

        Assert.True(looked >= 3, $"{looked}");
    }

    [Fact]
    public void Sections_of_the_parts_list_are_as_large_as_their_files()
    {
        foreach (var (table, sections) in Tables("parts"))
        {
            var printed = table.Where(r => r["how"] == "printed").ToArray();
            Assert.Equal(sections.Count, printed.Length);
            foreach (var (row, section) in printed.Zip(sections))
            {
                double[] told = [.. Regex.Matches(row["size"], @"[\d.]+").Select(m => double.Parse(m.Value, CultureInfo.InvariantCulture))];
                var points = section.Solid.Triangles.SelectMany(t => t).ToArray();
                double[] size = [points.Max(p => p.X) - points.Min(p => p.X), points.Max(p => p.Y) - points.Min(p => p.Y),
                    points.Max(p => p.Z) - points.Min(p => p.Z)];
                Assert.All(told.Zip(size), p => Assert.Equal(p.First, p.Second, 0.06));
            }
        }
    }

    // A mix has its parts of what is to be ready, and the line is never pure white (common practice, no source).
    [Fact]
    public void Mixes_share_what_is_to_be_ready_by_their_parts() => Assert.All(samples.Files("-mixes.csv"), file =>
    {
        var paint = Csv(file.Replace("-mixes.csv", "-paint.csv", StringComparison.Ordinal));
        foreach (var mix in Csv(file).GroupBy(r => r["for"]))
        {
            double ready = paint.Where(r => mix.Key.StartsWith(r["surface"], StringComparison.Ordinal)).Sum(r => Number(r, "ml_to_have_ready")),
                parts = mix.Sum(r => Number(r, "parts"));
            Assert.All(mix, r => Assert.Equal(ready * Number(r, "parts") / parts, Number(r, "ml"), 0.0051));
        }

        Assert.All(Csv(file).Where(r => r["for"] == "white line").GroupBy(r => r["for"]),
            line => Assert.Equal(["white 3", "light grey 1"], line.Select(r => $"{r["of"]} {r["parts"]}")));
    });

    private static void Size(Dictionary<string, string> row, Point2[] hole)
    {
        double area = -Plane.Area(hole);
        if (row["shape"] == "round")
        {
            // Twelve sides round a circle: n r² tan(π/n).
            Assert.Equal(Number(row, "along_mm"), 2 * Math.Sqrt(area / (12 * Math.Tan(Math.PI / 12))), Near);
            return;
        }

        Assert.Equal(Number(row, "along_mm") * Number(row, "across_mm"), area, 0.02 * area);
        double[] sides = [.. Enumerable.Range(0, hole.Length).Select(i => (hole[(i + 1) % hole.Length] - hole[i]).Length).OrderDescending()];
        Assert.Equal(Math.Max(Number(row, "along_mm"), Number(row, "across_mm")), sides[0], Near);
    }

    // Holes in the material so deep behind each end face that is a cut, in the frame of that face.
    private static List<Point2[]> Bores(Section section, double depth)
    {
        var found = new List<Point2[]>();
        var solid = section.Solid.OnLayout();
        foreach (var (from, to) in section.Cuts)
        {
            // The ring runs to the left of its material: inwards is to the left of a side.
            Point2 along = (to - from) * (1 / (to - from).Length), on = from + (along.Left * depth);
            found.AddRange(solid.Cut(new(on.X, on.Y, 0), new(along.X, along.Y, 0), Z).Where(l => Plane.Area(l) < 0 && Plane.Area(l) > -40));
        }

        return found;
    }

    // Whether the manifest lists a line of this name as a print of its own.
    private bool IsPrinted(string sample, string line) => ThreeMfTests.Manifest(Path.Combine(samples.Folder, sample)).TryGetProperty("lines", out var lines)
        && lines.EnumerateArray().Any(l => l.Text("name").EndsWith(line, StringComparison.Ordinal));

    // What is seen of each colour, mm²: the top from the 3MF, and upright faces from which nothing of their own section is hit within the width of the widest
    // platform.
    private static double[] Seen(string built, string name, Section[] sections)
    {
        double[] areas = TopAreas(built, name, relieved: true); // a brush goes over relieved edges too
        foreach (var (number, triangles) in Coloured(built, name))
        {
            var section = sections.Single(s => s.Solid.Number == number);
            Point3[][] layout = [.. triangles.Select(t => t.Corners.Select(section.Solid.ToLayout).ToArray())];
            var heights = new Heights(layout);
            for (int i = 0; i < layout.Length; i++)
            {
                var (a, b, c) = (layout[i][0], layout[i][1], layout[i][2]);
                var normal = Point3.Cross(b - a, c - a);
                double twice = normal.Length;
                if (twice < 1e-9 || Math.Abs(normal.Z) > 0.3 * twice)
                {
                    continue;
                }

                Point3 middle = (a + b + c) * (1.0 / 3), way = normal * (1 / twice);
                if (!section.IsAtCut(new(middle.X, middle.Y), new(way.X, way.Y)) && !heights.Between(middle.Z, middle.Z + (way.Z * Widest))
                    .Any(t => IsHit(t, middle + (way * 1e-3), way, Widest)))
                {
                    areas[triangles[i].Paint] += twice / 2;
                }
            }
        }

        return areas;
    }

    private static bool IsHit(Point3[] t, Point3 from, Point3 way, double within)
    {
        // Möller and Trumbore's test of a ray and a triangle.
        Point3 e1 = t[1] - t[0], e2 = t[2] - t[0], h = Point3.Cross(way, e2);
        double det = Point3.Dot(e1, h);
        if (Math.Abs(det) < 1e-12)
        {
            return false;
        }

        var s = from - t[0];
        double u = Point3.Dot(s, h) / det;
        if (u is < 0 or > 1)
        {
            return false;
        }

        var q = Point3.Cross(s, e1);
        double v = Point3.Dot(way, q) / det, at = Point3.Dot(e2, q) / det;
        return v >= 0 && u + v <= 1 && at > 0 && at < within;
    }

    // Faces that lie on the bed or nearly so, by colour, mm²: chamfers and the groove of a line too, which lean or lie less than a mm deep.
    private static double[] TopAreas(string built, string name, bool relieved = false)
    {
        double[] areas = new double[15];
        foreach (var t in Coloured(built, name).SelectMany(s => s.Triangles))
        {
            if (relieved ? IsRoughlyTop(t.Corners) : IsTop(t.Corners))
            {
                areas[t.Paint] += Point3.Cross(t.Corners[1] - t.Corners[0], t.Corners[2] - t.Corners[0]).Length / 2;
            }
        }

        return areas;
    }

    // Each section's triangles in its own frame, with their materials, as the markup has them: of a section with inlays its own body, which stands first.
    private static (int Number, (Point3[] Corners, int Paint)[] Triangles)[] Coloured(string built, string name) =>
        Painted.GetOrAdd((built, name), static of => [.. ReadColoured(of.Built, of.Name)]);

    // A file of brickwork takes a second to read.
    private static readonly ConcurrentDictionary<(string Built, string Name), (int Number, (Point3[] Corners, int Paint)[] Triangles)[]> Painted = [];

    private static IEnumerable<(int Number, (Point3[] Corners, int Paint)[] Triangles)> ReadColoured(string built, string name)
    {
        using var zip = ZipFile.OpenRead(Path.Combine(built, "3mf", name + "-all.3mf"));
        using var stream = zip.GetEntry("3D/3dmodel.model")!.Open();
        var root = XDocument.Load(stream).Root!;
        var parts = root.Descendants().Where(e => e.Name.LocalName == "object").ToDictionary(e => e.Attribute("id")!.Value);
        foreach (string id in root.Descendants().Where(e => e.Name.LocalName == "item").Select(e => e.Attribute("objectid")!.Value))
        {
            var part = parts[parts[id].Descendants().FirstOrDefault(e => e.Name.LocalName == "component")?.Attribute("objectid")?.Value ?? id];
            double N(XElement e, string at) => double.Parse(e.Attribute(at)!.Value, CultureInfo.InvariantCulture);
            Point3[] points = [.. part.Descendants().Where(e => e.Name.LocalName == "vertex").Select(v => new Point3(N(v, "x"), N(v, "y"), N(v, "z")))];
            int usual = int.Parse(part.Attribute("pindex")?.Value ?? "0", CultureInfo.InvariantCulture);
            yield return (int.Parse(id, CultureInfo.InvariantCulture),
                [.. part.Descendants().Where(e => e.Name.LocalName == "triangle")
                    .Select(t => ((Point3[])[points[(int)N(t, "v1")], points[(int)N(t, "v2")], points[(int)N(t, "v3")]],
                        t.Attribute("p1") is null ? usual : (int)N(t, "p1")))]);
        }
    }

    // Printed with its deck on the bed.
    private static bool Lies(Section section) => section.Pose.StartsWith("deck down", StringComparison.Ordinal);

    private IEnumerable<(List<Dictionary<string, string>> Rows, IReadOnlyList<Section> Sections)> Tables(string what)
    {
        foreach (string sample in samples.Names)
        {
            foreach (string file in Directory.GetFiles(Path.Combine(samples.Folder, sample, "tables"), $"*-{what}.csv").Order(StringComparer.Ordinal))
            {
                string name = Path.GetFileName(file)[..^$"-{what}.csv".Length];
                yield return (Csv(file), [.. SectionsOf(sample).Where(s => s.Name == name)]);
            }
        }
    }

    private sealed record Section(string Built, WrittenSolid Solid, Centreline Chart, string Name, int Count, string Pose)
    {
        public Point2 OnLayout(Point2 p, double z) => Solid.ToLayout(new(p.X, p.Y, z)) is var q ? new(q.X, q.Y) : default;

        public TrackPlace Place(Point2 p, double z) => Chart.Locate(OnLayout(p, z));

        /// <summary>Its end faces that are cuts, in plan on the layout as they stand there, material to their left.</summary>
        public IReadOnlyList<(Point2 From, Point2 To)> Cuts { get; } = CutsOf(Solid, Chart, Count);

        // A face that looks out of the section where it was cut off.
        public bool IsAtCut(Point2 at, Point2 way) => Cuts.Any(c =>
            Plane.FromLine(at, c.From, c.To) < 0.6 && Math.Abs(Point2.Cross(c.To - c.From, way)) > 0.7 * (c.To - c.From).Length);

        private static (Point2 From, Point2 To)[] CutsOf(WrittenSolid solid, Centreline chart, int count)
        {
            // Over the baseboard, below all decks: walls all round.
            var ring = Plane.WithoutNotches(solid.OnLayout().Cut(new(0, 0, 3), X, Y).MaxBy(Plane.Area)!, Notch);
            var sides = SectionSides.Of(ring, p => chart.Locate(p));
            IReadOnlyList<Point2>?[] ends = [solid.Number > 1 ? sides?.Lower : null, solid.Number < count ? sides?.Upper : null];
            return [.. ends.OfType<IReadOnlyList<Point2>>().Select(e => (e[0], e[^1]))];
        }
    }

    private IEnumerable<Section> SectionsOf(string sample)
    {
        string built = Path.Combine(samples.Folder, sample);
        var design = DesignForm.Read(File.ReadAllBytes(Path.Combine(built, "design.json")), "design.json").Value!;
        var manifest = Written.Parse(File.ReadAllText(Path.Combine(built, "manifest.json"))).GetProperty("sections").EnumerateArray().ToArray();
        foreach (var (solid, entry) in WrittenSolid.Of(built).Zip(manifest))
        {
            string stl = Path.GetFileNameWithoutExtension(entry.Text("stl")), name = stl[..stl.LastIndexOf('-')];
            var platform = design.Platforms.First(p => p.Name == solid.Platform);
            var row = Csv(Path.Combine(built, "tables", name + "-sections.csv")).Single(r => r["section"] == $"{solid.Number}");
            yield return new(built, solid, platform.ToChart(), name, manifest.Count(m => m.Text("platform") == solid.Platform), row["pose"]);
        }
    }

    private static double Number(Dictionary<string, string> row, string column) => double.Parse(row[column], CultureInfo.InvariantCulture);

    private static List<Dictionary<string, string>> Csv(string file)
    {
        string[][] rows = [.. File.ReadAllText(file).TrimEnd('\n').Split('\n')
            .Select(l => Regex.Matches(l, @"(?:^|,)(?:""((?:[^""]|"""")*)""|([^,""]*))")
                .Select(m => m.Groups[1].Success ? m.Groups[1].Value.Replace("\"\"", "\"", StringComparison.Ordinal) : m.Groups[2].Value).ToArray())];
        return [.. rows.Skip(1).Select(r => rows[0].Zip(r).ToDictionary(p => p.First, p => p.Second))];
    }
}
