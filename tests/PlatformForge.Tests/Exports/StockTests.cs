using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using PlatformForge.Clearance;
using PlatformForge.Exports.Files;
using PlatformForge.Exports.Stock;
using PlatformForge.Geometry;
using PlatformForge.Platforms;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Platforms.Surfaces;
using PlatformForge.Projects.Presets;
using PlatformForge.Projects.Runs;
using PlatformForge.Sections.Forms;
using PlatformForge.Tests.Projects;
using PlatformForge.Tests.Sections;
using PlatformForge.Track;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Exports;

public class StockTests
{
    private static readonly StockSpec Card = new() { Size = new(420, 297) };

    /// <summary>The card edge is laid by its ticks: each stands at a chainage, and says at which.</summary>
    [Fact]
    public void Ticks_of_the_card_edge_have_their_chainages()
    {
        var edge = Dossier(Workbench.Straight(180)) is var platform ? StockSet.Of(platform, Card).Value!.Sheets.SelectMany(s => s.Parts)
            .Single(p => p.Kind == StockKind.Card) : null!;
        var marks = edge.Lines.Where(l => l.Layer == CutLayer.Mark).ToArray();
        string[] figures = [.. edge.Words.Skip(1).Select(w => w.Text)];
        Assert.Equal(["250", "300", "350"], figures.Order(StringComparer.Ordinal).Where(f => f is not "200"));
        Assert.All(edge.Words.Skip(1), w => Assert.Contains(marks, m => m.Points.Min(p => (p - w.At).Length) < 4));
    }

    /// <summary>The joints of a paved deck are all that is to be seen on it: its name stands beside it, in the gap between parts.</summary>
    [Theory]
    [InlineData(PavingKind.Setts)]
    [InlineData(PavingKind.Flags)]
    public void No_name_stands_on_the_top_of_a_paved_deck(PavingKind kind)
    {
        var platform = Dossier(Workbench.Straight(180, change: s => s with { Deck = s.Deck with { Paving = PavingSpec.For(new(76.2)) with { Kind = kind } } }));
        var sheets = StockSet.Of(platform, Card).Value!.Sheets;
        var sheet = sheets.Single(s => s.Parts.Any(p => p.Name == "1 deck"));
        var words = Assert.Single(sheet.Parts.Single(p => p.Name == "1 deck").Words);
        var (low, high) = MarkRoom.BoxOf(words);
        Assert.Contains("deck", words.Text, StringComparison.Ordinal);
        Assert.All(sheet.Parts.Select(p => p.Lines[0].Points), ring => Assert.True(
            ring.Max(p => p.X) < low.X || ring.Min(p => p.X) > high.X || ring.Max(p => p.Y) < low.Y || ring.Min(p => p.Y) > high.Y));
    }

    /// <summary>A straight level platform of 60 by 180 mm, 20 mm high, from sheet of 2 and strips of 1 mm: every size is school arithmetic.</summary>
    [Theory]
    [InlineData(Side.Left)]
    [InlineData(Side.Right)]
    public void A_straight_platform_comes_apart_into_rectangles(Side side)
    {
        var parts = Parts(Workbench.Straight(180, side, s => s with { Ribs = s.Ribs with { Pitch = 60 } }));
        Assert.Equal(new Point2(180, 60), Rounded(Part(parts, "1 deck").Size));
        Assert.Equal(new Point2(180, 18), Rounded(Part(parts, "1 front wall").Size));
        Assert.Equal(new Point2(180, 18), Rounded(Part(parts, "1 back wall").Size));
        foreach (string across in (string[])["1 end wall at 200", "1 end wall at 380", "1 rib 1", "1 rib 2"])
        {
            // The coping hangs 1 mm over the front wall; two strips of 1 mm stand beside the ribs.
            Assert.Equal(new Point2(60 - 1 - 2, 18), Rounded(Part(parts, across).Size));
        }
    }

    /// <summary>On a straight deck a sheet's scores are the joints that a print has engraved, at the same distances from its end and its edge.</summary>
    [Theory]
    [InlineData(PavingCourses.Across)]
    [InlineData(PavingCourses.Along)]
    public void Joints_of_a_paving_are_scored_where_a_print_has_them(PavingCourses courses)
    {
        var plan = Workbench.Straight(180, change: s => s with { Deck = s.Deck with { Paving = PavingSpec.For(new(76.2)) with { Courses = courses } } });
        var layout = PavingLayout.Of(plan)!;
        double near = layout.Near.Reach[0], width = layout.Far.Reach[0] - near, edge = plan.CopingFront.At(290);
        var deck = Part(Parts(plan), "1 deck");
        double low = deck.Lines[0].Points.Min(p => p.X);
        var scored = deck.Lines.Where(l => l.Layer == CutLayer.Score)
            .Select(l => (Along: l.Points[0].X - low, To: l.Points[^1].X - low, Off: Math.Abs(l.Points[0].Y - EdgeOf(deck)))).ToArray();
        Assert.True(layout.Joints.Count > 30);
        Assert.All(layout.Joints, j => Assert.Contains(scored, s => Near(s.Along, j.From - 200) && Near(s.To, j.To - 200)
            && Near(s.Off, near + (j.Near * width) - edge)));
        static bool Near(double a, double b) => Math.Abs(a - b) < 0.01;
    }

    /// <summary>An island's vehicles pass on both sides: each edge is there in card, as long as that face's coping is in the layout.</summary>
    [Fact]
    public void An_island_has_an_edge_in_card_for_each_face()
    {
        var island = DesignRun.Design(Samples.Sound(PresetShelf.Sample("thornhithe")!), Samples.Known).Value!.Platforms[0];
        var parts = StockSet.Of(island, new() { Size = new(700, 500) }).Value!.Parts.Where(p => p.Kind == StockKind.Card).ToArray();
        Assert.Equal(2 * island.Sections.Sections.Count, parts.Length);
        foreach (var face in island.Plan.Faces)
        {
            CutPart[] own = [.. parts.Where(p => p.Name.EndsWith("edge of " + face.Spec.Track, StringComparison.Ordinal))];
            double Along(IEnumerable<Point2> line) => line.Zip(line.Skip(1), (a, b) => (b - a).Length).Sum();
            Assert.Equal(Along(face.Stations.Select(s => face.ToLayout(s, face.CopingFront.At(s)))),
                own.Sum(p => Along(p.Lines[0].Points.Take(p.Lines[0].Points.Count / 2))), 0.05);

            // Ticks begin at the edge, less what marks keep off a cut.
            Assert.All(own.SelectMany(p => p.Lines.Skip(1).Select(tick => (Edge: p.Lines[0].Points, tick.Points))),
                t => Assert.True(OnLine(t.Edge, t.Points[0]) < 1 && (t.Points[1] - t.Points[0]).Length > 6));
        }

        static double OnLine(IReadOnlyList<Point2> ring, Point2 p) => Enumerable.Range(0, ring.Count).Min(i =>
        {
            Point2 a = ring[i], along = ring[(i + 1) % ring.Count] - a;
            return (a + (along * Math.Clamp(Point2.Dot(p - a, along) / Math.Max(Point2.Dot(along, along), 1e-12), 0, 1)) - p).Length;
        });
    }

    /// <summary>Sheet cannot bend at a ramp's head; a lamp's channel keeps a cut off it here, until it is asked for.</summary>
    [Fact]
    public void A_cut_that_is_offered_at_a_ramps_head_lets_sheet_follow()
    {
        const string text = """
            [layout]
            name = "Larkbeck"
            scale = "1-87"
            rail_top = 7.5
            [[track]]
            name = "main"
            alignment = [{ straight = 320 }, { curve = 560, length = 520, hand = "right" }, { straight = 320 }]
            [[vehicle]]
            preset = "bogie-coach-57ft"
            [clearance]
            running = 0.8
            [[platform]]
            name = "up"
            height = 10
            face = { track = "main", side = "right", from = 330, to = 800, edge = "fitted" }
            ramps = { start = { gradient = 8 }, end = { gradient = 10 } }
            deck = { width = 50, crossfall = 60 }
            baseboard_joints = [610]
            lamp = [{ at = 660, inset = 14, diameter = 2 }]
            """;
        Outcome<PlatformStock> Made(params string[] sets) => StockSet.Of(DesignRun.Design(Samples.Sound(text, sets), Samples.Known).Value!.Platforms[0], Card);
        var fault = Assert.Single(Made().Findings);
        Assert.Equal(("PF7533", "Cut at the head of the ramp: platform[0].cuts = [700]."), (fault.Code, fault.Remedy));
        Assert.True(Made("platform[0].cuts=[700]").Succeeded);
    }

    [Fact]
    public void Walls_that_lean_are_refused_as_sheet_and_upright_ones_with_a_plinth_are_not()
    {
        string text = PlatformForge.Projects.Presets.PresetShelf.Sample("tawnybrook")!;
        Outcome<PlatformStock> Made(params string[] sets) => StockSet.Of(DesignRun.Design(Samples.Sound(text, sets), Samples.Known).Value!.Platforms[0], Card);
        var fault = Assert.Single(Made("platform[0].facing.batter=0.6").Findings);
        Assert.Equal(("PF7542", "platform[0].facing.batter", "0"), (fault.Code, fault.Cure!.Key, fault.Cure.Value));
        Assert.True(Made("platform[0].facing.batter=0").Succeeded);

        // Joints of the plinth's courses are scored with the others, each at its height.
        var plain = Made().Value!.Parts.First(p => p.Name == "1 front wall");
        var stepped = Made("platform[0].facing.plinth.projection=0.4").Value!.Parts.First(p => p.Name == "1 front wall");
        static double[] Beds(CutPart part) =>
            [.. part.Outside.Where(l => l.Points[0].Y == l.Points[1].Y).Select(l => Math.Round(l.Points[0].Y, 2)).Distinct().Order()];
        Assert.Equal(Beds(plain).Length, Beds(stepped).Length);
        Assert.All(Beds(plain).Zip(Beds(stepped)), b => Assert.Equal(b.First, b.Second, 0.011));
        Assert.Contains("not cut", stepped.Note, StringComparison.Ordinal);
    }

    [Fact]
    public void A_trestle_is_refused_as_sheet_and_walls_are_not()
    {
        Outcome<PlatformStock> Made(params string[] sets) =>
            StockSet.Of(DesignRun.Design(Samples.Sound(PlatformForge.Projects.Presets.PresetShelf.Sample("straight-halt")!, sets),
                Samples.Known).Value!.Platforms[0], Card);
        var fault = Assert.Single(Made("platform[0].trestle.kind=timber").Findings);
        Assert.Equal(("PF7536", "platform[0].trestle"), (fault.Code, fault.Cure!.Key));
        Assert.True(Made().Succeeded);
    }

    // The coping's edge on a deck's piece: on the side of the score along it that is nearer to one.
    private static double EdgeOf(CutPart deck)
    {
        double back = deck.Lines.First(l => l.Layer == CutLayer.Score).Points[0].Y, low = deck.Lines[0].Points.Min(p => p.Y),
            high = deck.Lines[0].Points.Max(p => p.Y);
        return back - low < high - back ? low : high;
    }

    /// <summary>A ramp of 1 in 8 is longer along its slope than in plan by the root of 1 + 1/64 (Pythagoras), and no wider.</summary>
    [Fact]
    public void A_ramp_is_as_long_as_its_slope()
    {
        var parts = Parts(Workbench.Straight(300, change: s => s with { StartRamp = new(Gradient: 8), ForcedCuts = [296] }));
        double rise = 12, run = rise * 8;
        var ramp = Part(parts, "1 deck");
        Assert.Equal(Math.Sqrt((run * run) + (rise * rise)), ramp.Size.X, 0.01);
        Assert.Equal(60, ramp.Size.Y, 0.01);
        double[] heights = [.. Part(parts, "1 front wall").Lines[0].Points.Select(p => p.Y)];

        // The deck is 2 mm thick square to its slope.
        Assert.Equal(20 - (2 * Math.Sqrt(1 + (1.0 / 64))), heights.Max(), 0.02);
    }

    /// <summary>
    /// Round a curve a strip is as long as the arc of its outer face, radius times angle, and a deck has the area of a part of a ring; both less what
    /// straight facets
    /// take, which is under one part in ten thousand.
    /// </summary>
    [Theory]
    [InlineData(Hand.Left, Side.Right)]
    [InlineData(Hand.Left, Side.Left)]
    [InlineData(Hand.Right, Side.Right)]
    public void Round_a_curve_lengths_are_radius_times_angle(Hand hand, Side side)
    {
        const double Radius = 700, Length = 180;
        var plan = Curved(Radius, Length, hand, side);
        var parts = Parts(plan);
        double outward = (int)hand == (int)side ? -1 : 1;
        foreach (var (name, line) in (ReadOnlySpan<(string, PlanLine)>)[("1 front wall", plan.WallFace), ("1 back wall", plan.Back)])
        {
            double radius = Radius + (outward * line.Reach[0]);
            Assert.Equal(Length * radius / Radius, Part(parts, name).Size.X, 1e-4 * Length);
        }

        double near = Radius + (outward * plan.CopingFront.Reach[0]), far = Radius + (outward * plan.Back.Reach[0]);
        Assert.Equal(Math.Abs((far * far) - (near * near)) / 2 * Length / Radius, Part(parts, "1 deck").Area, 3e-4 * 60 * Length);
    }

    /// <summary>
    /// Where a rib across and one along meet, the slot of one begins where that of the other ends, and both lie where the two cross in the layout.
    /// </summary>
    [Theory]
    [InlineData(Side.Left)]
    [InlineData(Side.Right)]
    public void Halved_ribs_meet(Side side)
    {
        var plan = Workbench.Straight(180, side, s => s with { Ribs = s.Ribs with { Pitch = 45, LongitudinalCount = 1 } });
        var parts = Parts(plan);
        var along = Part(parts, "1 rib along");
        var ribs = parts.Where(p => p.Name.StartsWith("1 rib ", StringComparison.Ordinal) && p != along).ToArray();
        Assert.Equal(3, ribs.Length);
        double[] floors = [.. along.Lines[0].Points.Where(p => p.Y is > 0.01 and < 17).Select(p => p.X)];
        Assert.Equal(2 * ribs.Length, floors.Length);
        foreach (var rib in ribs)
        {
            var slot = rib.Lines[0].Points.Where(p => p.Y is > 0.01 and < 17).ToArray();
            Assert.Equal(2.1, Math.Abs(slot[1].X - slot[0].X), 1e-6);
            Assert.Equal(9, slot[0].Y, 1e-6);
        }

        Assert.All(along.Lines[0].Points.Where(p => p.Y is > 0.01 and < 17), p => Assert.Equal(9, p.Y, 1e-6));

        // Middles of the slots along: where the ribs across stand, less the end wall's thickness.
        double[] middles = [.. floors.Order().Chunk(2).Select(c => (c[0] + c[1]) / 2)];
        double[] stand = [.. plan.Ribs.Where(r => r.Kind == RibKind.Transverse).Select(r => ((r.From + r.To) / 2) - 200 - 2).Order()];
        Assert.All(middles.Zip(stand), p => Assert.Equal(p.Second, p.First, 1e-6));
    }

    /// <summary>
    /// A strip bent to a radius is stretched by half its thickness over the radius (any handbook of strength of materials): up to 1 in 200 it needs no
    /// slots. Beyond, a half circle
    /// of a strip 2 mm thick takes up π·2 mm, eight slots of 0.8 mm; and where the flats between them keep to a versine v they are no longer than √(8·R·v), so
    /// that on
    /// 150 mm there are 471 / 15.5 = 30.4 of them for 0.2 mm.
    /// </summary>
    [Theory]
    [InlineData(203, 2, 5, 0)]
    [InlineData(150, 2, 5, 8)]
    [InlineData(150, 2, 0.2, 31)]
    [InlineData(150, 1, 0.2, 0)]
    public void Strips_get_relief_slots_where_they_are_too_stiff(double radius, double thickness, double versine, int slots)
    {
        Point2[] half = [.. Enumerable.Range(0, 1801).Select(i => Point2.FromAngle(Math.PI * i / 1800) * radius)];
        Assert.Equal(slots, BendRule.Slots(half, thickness, 0.8, versine));
    }

    /// <summary>Whatever is bent, and of what: nowhere is the line farther from the flats than was asked, or the slots are as near as they may be.</summary>
    [Property(MaxTest = 100)]
    public Property Flats_between_slots_keep_to_the_line() => Prop.ForAll(
        (from first in Gen.Choose(60, 2000)
         from second in Gen.Choose(-2000, 2000)
         from length in Gen.Choose(30, 300)
         from thick in Gen.Choose(1, 6)
         from v in Gen.Choose(2, 60)
         select (first, second, length, thick, v)).ToArbitrary(),
        x =>
        {
            // A curve, then another of either hand, of 1 mm chords.
            var line = new List<Point2> { default };
            double heading = 0;
            for (int i = 0; i < x.length; i++)
            {
                line.Add(line[^1] + Point2.FromAngle(heading));
                heading += 1.0 / (i < x.length / 2 || Math.Abs(x.second) < 60 ? x.first : x.second);
            }

            double versine = x.v / 100.0;
            int slots = BendRule.Slots(line, x.thick, 0.5, versine);
            Assert.True(slots == 0 || slots >= BendRule.Most(line, 0.5) || Farthest(line, slots) <= versine + 1e-9, $"{slots}: {Farthest(line, slots)}");
        });

    // By brute force: each point of the line from the nearest flat.
    private static double Farthest(List<Point2> line, int slots)
    {
        double whole = line.Count - 1;
        double[] knots = [0, .. Enumerable.Range(0, slots).Select(i => whole * (i + 0.5) / slots), whole];
        Point2 At(double s) => s >= whole ? line[^1] : line[(int)s] + ((line[(int)s + 1] - line[(int)s]) * (s - (int)s));
        return line.Max(p => knots.Zip(knots.Skip(1)).Min(k =>
        {
            Point2 a = At(k.First), along = At(k.Second) - a;
            return (p - a - (along * Math.Clamp(Point2.Dot(p - a, along) / Point2.Dot(along, along), 0, 1))).Length;
        }));
    }

    /// <summary>At every scale, with holes near edges and parts turned on their sheets: what is drawn lies within its part and off every line that is
    /// cut.</summary>
    [Theory]
    [InlineData(18, 60, 180)]
    [InlineData(8, 30, 180)]
    [InlineData(6, 22, 90)]
    [InlineData(4, 14, 150)]
    public void Marks_and_words_keep_off_every_cut(double height, double width, double length)
    {
        var plan = Workbench.Straight(length, Side.Right, s => s with
        {
            Height = height,
            Deck = s.Deck with { Width = width },
            WhiteLine = new() { Width = 1 },
            Ribs = s.Ribs with { Pitch = 40, LongitudinalCount = 1 },
        });
        var stock = new StockSpec { Thickness = 1, WallThickness = 0.5, Slot = 0.3, Size = new(210, 148) };
        var made = StockSet.Of(Dossier(plan), stock);
        Assert.True(made.Succeeded, string.Join("; ", made.Findings.Select(f => f.Message)));
        Assert.All(made.Value!.Sheets.SelectMany(s => s.Parts), OffCuts);
    }

    /// <summary>Parts of any shape with marks all over them.</summary>
    [SimulatedProperty(60)]
    public Property Marks_of_any_part_are_cut_short_of_its_cuts() => Prop.ForAll(
        (from w in Gen.Choose(4, 120)
         from h in Gen.Choose(3, 60)
         from slant in Gen.Choose(0, 20)
         from at in Gen.Choose(10, 90)
         from r in Gen.Choose(1, 15)
         from seed in Gen.Choose(0, 9999)
         select (w, h, slant, at, r, seed)).ToArbitrary(),
        x =>
        {
            var random = new Random(x.seed);
            Point2 Any() => new((random.NextDouble() * 1.4 * x.w) - (0.2 * x.w), (random.NextDouble() * 1.4 * x.h) - (0.2 * x.h));
            var part = new CutPart("3 rib along 2", StockKind.Frame,
            [
                new(CutLayer.Cut, [new(0, 0), new(x.w, 0), new(x.w, x.h + x.slant), new(x.w * x.at / 100.0, x.h / 2.0), new(0, x.h)]),
                .. Enumerable.Range(0, 8).Select(i => new CutLine(CutLayer.Mark, [Any(), Any(), Any()], i % 2 == 0)),
            ])
            {
                Rounds = [new(CutLayer.Cut, new(x.w * 0.3, x.h * 0.25), Math.Min(x.r, x.h / 4.0))],
                Words = [new("3  rib along 2", new(3, 1), 2.5)],
            };
            var trimmed = MarkRoom.Lettered(MarkRoom.Trimmed(part), "17", 3);
            OffCuts(trimmed);
            Assert.Equal(OffCutsShare(part), OffCutsShare(trimmed), 0.02 * 8 * (x.w + x.h));
        });

    // How much of the marks, mm, lies where it may: nothing more than that is taken away.
    private static double OffCutsShare(CutPart part)
    {
        const double step = 0.05;
        double sum = 0;
        foreach (var line in part.Lines.Where(l => l.Layer == CutLayer.Mark))
        {
            foreach (var (a, b) in Sides(line))
            {
                int n = Math.Max(1, (int)((b - a).Length / step));
                sum += Enumerable.Range(0, n).Count(i => Allowed(part, a + ((b - a) * ((i + 0.5) / n)), 0)) * (b - a).Length / n;
            }
        }

        return sum;
    }

    private static void OffCuts(CutPart part)
    {
        foreach (var line in part.Lines.Where(l => l.Layer == CutLayer.Mark))
        {
            foreach (var (a, b) in Sides(line))
            {
                Assert.All(Enumerable.Range(0, 41), i => Assert.True(Allowed(part, a + ((b - a) * (i / 40.0)), 1e-6), part.Name));
            }
        }

        Assert.AllOrNone(part.Words, w =>
        {
            // Wider than any letter of ours, and no higher than a capital with what hangs below it.
            var (low, high) = MarkRoom.BoxOf(w);
            Assert.True(high.X - low.X >= 0.7 * w.Size * w.Text.Length);
            for (int i = 0; i <= 40; i++)
            {
                for (int j = 0; j <= 8; j++)
                {
                    Assert.True(Allowed(part, new(low.X + ((high.X - low.X) * i / 40), low.Y + ((high.Y - low.Y) * j / 8)), 1e-6), $"{part.Name}: {w.Text}");
                }
            }
        });
    }

    private static IEnumerable<(Point2 A, Point2 B)> Sides(CutLine line) =>
        line.Points.Zip(line.IsClosed ? line.Points.Skip(1).Append(line.Points[0]) : line.Points.Skip(1));

    // Inside the outline by half a millimetre, and so far outside everything that is cut out of it.
    private static bool Allowed(CutPart part, Point2 p, double slack)
    {
        double off = part.Lines.Where(l => l.Layer == CutLayer.Cut).SelectMany(Sides).Min(s =>
        {
            Point2 along = s.B - s.A;
            double square = Point2.Dot(along, along);
            return (p - s.A - (along * (square > 0 ? Math.Clamp(Point2.Dot(p - s.A, along) / square, 0, 1) : 0))).Length;
        });
        double turned = Sides(part.Lines[0]).Sum(s => Math.Atan2(Point2.Cross(s.A - p, s.B - p), Point2.Dot(s.A - p, s.B - p)));
        return off >= 0.5 - slack && Math.Abs(turned) > 3 && part.Rounds.All(r => (p - r.Middle).Length >= (r.Diameter / 2) + 0.5 - slack);
    }

    /// <summary>Whatever the parts: each lies on one sheet, inside its margins, and none within the gap of another.</summary>
    [Property(MaxTest = 60)]
    public Property Every_part_lies_on_one_sheet_clear_of_the_others() => Prop.ForAll(
        (from sizes in Gen.ListOf(from w in Gen.Choose(3, 280) from h in Gen.Choose(3, 190) from k in Gen.Choose(0, 2) select (w, h, k))
         select sizes.ToArray()).ToArbitrary(),
        sizes =>
        {
            var stock = new StockSpec();
            CutPart[] parts = [.. sizes.Select((s, i) => Box($"{i}", (StockKind)s.k, s.w, s.h))];
            var sheets = StockNesting.Of(parts, stock);
            Assert.Equal(parts.Select(p => p.Name).Order(), sheets.SelectMany(s => s.Parts).Select(p => p.Name).Order());
            foreach (var sheet in sheets)
            {
                var boxes = sheet.Parts.Select(BoxOf).ToArray();
                Assert.All(sheet.Parts, p => Assert.Equal(sheet.Kind, p.Kind));
                Assert.All(boxes, b => Assert.True(b.Low.X >= 5 - 1e-9 && b.Low.Y >= 5 - 1e-9 && b.High.X <= 292 + 1e-9 && b.High.Y <= 205 + 1e-9));
                for (int i = 0; i < boxes.Length; i++)
                {
                    for (int j = 0; j < i; j++)
                    {
                        double apart = Math.Max(Math.Max(boxes[i].Low.X - boxes[j].High.X, boxes[j].Low.X - boxes[i].High.X),
                            Math.Max(boxes[i].Low.Y - boxes[j].High.Y, boxes[j].Low.Y - boxes[i].High.Y));
                        Assert.True(apart >= 3 - 1e-9, $"{sheet.Parts[i].Name} and {sheet.Parts[j].Name} are {apart} apart");
                    }
                }
            }
        });

    [Theory]
    [InlineData("PF7530", 30, 200, 5, 2, 0.8)]
    [InlineData("PF7530", 100, 100, 45, 2, 0.8)]
    [InlineData("PF7531", 297, 210, 5, 2, 0.05)]
    [InlineData("PF7531", 297, 210, 5, 2, 3)]
    [InlineData("PF7532", 297, 210, 5, 18, 0.8)]
    [InlineData("PF7534", 150, 60, 5, 2, 0.8)]
    public void What_cannot_be_cut_is_told_and_what_would_do_works(string code, double width, double height, double margin, double thickness, double slot)
    {
        var platform = Dossier(Workbench.Straight(180));
        var stock = new StockSpec { Size = new(width, height), Margin = margin, Thickness = thickness, Slot = slot };
        var finding = Assert.Single(StockSet.Of(platform, stock).Findings);
        Assert.Equal(code, finding.Code);
        var mended = (finding.Cure?.Key, finding.Cure?.Value) switch
        {
            ("sheet.margin", { } v) => stock with { Margin = Number(v) },
            ("sheet.slot", { } v) => stock with { Slot = Number(v) },
            ("sheet.thickness", { } v) => stock with { Thickness = Number(v) },
            ("sheet.size", { } v) => stock with { Size = new(Number(v.Trim('[', ']').Split(',')[0]), Number(v.Trim('[', ']').Split(',')[1])) },
            _ => null,
        };
        if (mended is not null)
        {
            Assert.DoesNotContain(StockSet.Of(platform, mended).Findings, f => f.Code == code);
        }
    }

    private static double Number(string text) => double.Parse(text, System.Globalization.CultureInfo.InvariantCulture);

    private static CutPart Box(string name, StockKind kind, double w, double h) =>
        new(name, kind, [new(CutLayer.Cut, [new(0, 0), new(w, 0), new(w, h), new(0, h)])]);

    private static (Point2 Low, Point2 High) BoxOf(CutPart part) =>
        (new(part.Lines[0].Points.Min(p => p.X), part.Lines[0].Points.Min(p => p.Y)),
            new(part.Lines[0].Points.Max(p => p.X), part.Lines[0].Points.Max(p => p.Y)));

    private static Point2 Rounded(Point2 p) => new(Math.Round(p.X, 6), Math.Round(p.Y, 6));

    private static CutPart Part(IReadOnlyList<CutPart> parts, string name) => Assert.Single(parts, p => p.Name == name);

    private static IReadOnlyList<CutPart> Parts(PlatformPlan plan)
    {
        var made = StockSet.Of(Dossier(plan), Card);
        Assert.True(made.Succeeded, string.Join("; ", made.Findings.Select(f => f.Message)));
        return made.Value!.Parts;
    }

    private static PlatformDossier Dossier(PlatformPlan plan)
    {
        var sections = Workbench.Made(plan, PrinterSpec.Oblong(320, 320, 300), new());
        return HandDossier.Pendlewick().Platforms[0] with { Plan = sections.Plan, Sections = sections };
    }

    /// <summary>A level platform along one curve, bare of furniture, its front 19 mm from the track's middle.</summary>
    private static PlatformPlan Curved(double radius, double length, Hand hand, Side side)
    {
        var track = TrackLayer.Lay(new("up", new(0, 0), 0, [new CurveSpec(radius, hand, Length: length + 400)])).Value!;
        var spec = new PlatformSpec("curved", new FaceSpec("up", side, 200, 200 + length, EdgeStyle.Uniform))
        {
            Height = 12,
            Coping = new() { Width = 8, Thickness = 1.2, Overhang = 1, SlabLength = 25, JointDepth = 0, ArrisChamfer = 0 },
            Deck = new() { Width = 60, Thickness = 1.5 },
            Ribs = new() { Pitch = 0, LongitudinalCount = 0 },
        };
        var planned = PlatformPlanner.Plan(new(spec, Fixtures.Pendlewick.Site, track, Platforms.Bench.Envelope(track, side, _ => 18),
            ClearanceBudget.Of(running: 1)));
        Assert.True(planned.Succeeded, string.Join("; ", planned.Findings.Select(f => f.Message)));
        return planned.Value!;
    }
}
