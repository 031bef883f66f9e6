using PlatformForge.Exports.Drawings.Elevations;
using PlatformForge.Exports.Drawings.Elevations.Walls;
using PlatformForge.Exports.Drawings.Gaps;
using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Looks;
using PlatformForge.Geometry;
using PlatformForge.Masonry;
using PlatformForge.Platforms.Specs;
using PlatformForge.Sections.Forms;
using PlatformForge.Solids;
using PlatformForge.Solids.Bodies.Layers;
using PlatformForge.Tests.Fixtures;
using PlatformForge.Tests.Sections;
using PlatformForge.Track;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Masonry;

/// <summary>Elevations of walls that nothing is laid on, against the meshes of their sections, and the heights and places told beside them.</summary>
public class PlainElevationTests
{
    // What lies so near to a border of the drawing, mm, is not asked.
    private const double Border = 0.06;

    private static readonly ModelScale Scale = new(76.2);

    private static readonly FacingSpec Smooth = FacingSpec.For(Scale) with { Front = WallFinish.Plain, Back = WallFinish.Plain, Ends = WallFinish.Plain };

    public static TheoryData<string, Side> Walls
    {
        get
        {
            var all = new TheoryData<string, Side>();
            foreach (string name in Facings.Keys)
            {
                all.Add(name, Side.Left);
                all.Add(name, Side.Right);
            }

            return all;
        }
    }

    private static readonly Dictionary<string, FacingSpec?> Facings = new()
    {
        ["plain"] = null,
        ["brick before, plain behind"] = FacingSpec.For(Scale) with { Back = WallFinish.Plain, Ends = WallFinish.Plain },
        ["piers"] = Smooth with { Piers = PierSpec.For(Scale) },
        ["downpipes"] = Smooth with { Downpipes = DownpipeSpec.For(Scale) with { On = PierWalls.Both, At = [340] } },
        ["plinth"] = Smooth with { Plinth = PlinthSpec.For(Scale) with { Projection = 0.6 } },
    };

    /// <summary>Wherever the drawing has wall, a ray square to it meets wall, and where it has none, none; fronts and backs, ramps too.</summary>
    [Theory]
    [MemberData(nameof(Walls))]
    public void A_smooth_wall_is_drawn_as_it_is_seen(string name, Side side)
    {
        var plan = Workbench.Straight(260, side, s => s with { Facing = Facings[name], StartRamp = new(Gradient: 8) });
        var set = Workbench.Made(plan, Workbench.Printer, new());
        int walls = 0, others = 0;
        var shown = Facings[name] is null ? Paint.Wall : Paint.Render;
        foreach (var face in Faces(set).Where(f => f.Name == WallNames.Back || (f.Name == WallNames.FrontOf(1) && Facings[name]?.Front != WallFinish.Brick)))
        {
            // Along y: a front on the left is seen from below, where y is less.
            int way = (side == Side.Left) == (face.Name == WallNames.Back) ? -1 : 1, along = (side == Side.Left) == (face.Name == WallNames.Back) ? -1 : 1;
            foreach (var section in set.Sections)
            {
                WallSlice[] slices = [.. face.Slices.Where(s => s.Section == section.Number)];
                var (drawn, foot, length) = Drawn(new ElevationRow(slices, 1, face));
                var seen = new SeenAlongY(section.Solid.Mesh, way, way * 1000);
                double start = slices[0].Wall.Place(slices[0].From).X;
                // Nothing within an end wall's thickness of a cut, which goes up into the deck's edge there.
                for (double x = 2.5; x < length - 2.5; x += 1.137)
                {
                    for (double z = 0.13; z < foot; z += 0.371)
                    {
                        bool?[] looks = [.. Corners(x, foot - z).Select(p => (bool?)(drawn.At(p) == Palette.Of(shown))).Distinct()];
                        if (looks.Length == 1)
                        {
                            bool met = seen.At(start + (along * x), z)?.Paint == shown;
                            Assert.True(looks[0] == met, FormattableString.Invariant($"{name}, {face.Name}, section {section.Number}, {x:0.00} ")
                                + FormattableString.Invariant($"along, {z:0.00} high: on the mesh {met}"));
                            (walls, others) = met ? (walls + 1, others) : (walls, others + 1);
                        }
                    }
                }
            }
        }

        Assert.True(walls > 3000 && others > 100, FormattableString.Invariant($"{walls}, {others}"));
    }

    /// <summary>An end of a platform with a bank, its deck, its coping: as it is seen along the track.</summary>
    [Theory]
    [InlineData(Side.Left, 0, 0.95)]
    [InlineData(Side.Right, 5, 0.95)]
    [InlineData(Side.Left, 0, 1.5)]
    public void An_end_is_drawn_with_its_bank_its_deck_and_its_coping(Side side, double ground, double slope)
    {
        var bank = new BackSpec { Kind = BackKind.Bank, Slope = slope, Ground = ground, Apart = slope > 1 };
        var set = Workbench.Made(Workbench.Straight(260, side, s => s with { Back = bank, StartRamp = new(Gradient: 8, FootHeight: 2) }), Workbench.Printer,
            new());
        foreach (var face in Faces(set).Where(f => f.Name is WallNames.AtStart or WallNames.AtEnd))
        {
            bool isStart = face.Name == WallNames.AtStart;
            var section = isStart ? set.Sections[0] : set.Sections[^1];
            var row = new ElevationRow([.. face.Slices], 1, face);
            var (drawn, foot, length) = Drawn(row);

            // Turned so that who looks along the track looks along y: at the start from less x to more.
            int way = isStart ? 1 : -1;
            var turn = RigidTransform.AboutZ(Math.PI / 2);
            Mesh[] meshes = [section.Solid.Mesh, .. set.Lines.Pieces.Where(p => p.Section == section.Number).Select(p => p.Solid.Mesh)];
            SeenAlongY[] seen = [.. meshes.Select(m => new SeenAlongY(m.Moved(turn), way, way * 1000))];
            int asked = 0;
            double end = isStart ? section.From : section.To, edge = set.Plan.CopingFront.Reach[0];
            double reach = meshes.SelectMany(m => m.Vertices).Where(v => Math.Abs(v.X - end) < 0.1).Max(v => Math.Abs(v.Y));
            for (double x = 0.3; x < length - 0.3; x += 0.37)
            {
                for (double z = 0.13; z < foot; z += 0.171)
                {
                    var looks = Corners(x, foot - z).Select(p => Of(drawn.At(p))).Distinct().ToArray();
                    if (looks.Length == 1)
                    {
                        // Who stands before the start looks along the track: a platform on the left of that has its back on the left.
                        double off = (side == Side.Left) == isStart ? reach - x : edge + x;
                        var met = seen.Select(m => m.At(side == Side.Left ? -off : off, z)).Where(m => m is { } hit && Math.Abs(hit.Y - end) < 0.02)
                            .Select(m => (Paint?)m!.Value.Paint).FirstOrDefault();
                        Assert.True(looks[0] == met, FormattableString.Invariant($"{face.Name}, {x:0.00} along, {z:0.00} high: drawn {looks[0]}, on the ")
                            + FormattableString.Invariant($"mesh {met}"));
                        asked++;
                    }
                }
            }

            Assert.True(asked > 1000);
        }
    }

    [Theory]
    [InlineData(Side.Left)]
    [InlineData(Side.Right)]
    public void A_smooth_retaining_wall_has_its_outline_and_coping(Side side)
    {
        var wall = new RetainingSpec { Height = 16, Thickness = 2.5, Oversail = 0.375, Coping = 1, Plinth = 3, Depth = 0.75, Fit = 0.125 };
        var set = Workbench.Made(Workbench.Straight(260, side, s => s with { Back = new() { Retaining = wall } }), Workbench.Printer, new());
        var face = ElevationFaces.Retaining(set, side == Side.Left);
        Assert.Equal(set.Lines.Pieces.Count, face.Slices.Count);
        Assert.Equal(set.Lines.Pieces.Sum(p => p.Solid.Mesh.Vertices.Max(v => v.X) - p.Solid.Mesh.Vertices.Min(v => v.X)), face.Length, 0.01);
        var row = face.Rows(1000, 1)[0];
        Assert.Equal(["deck 20.0", "plinth 23.0", "wall 35.0", "coping 36.0"], row.Left.Select(l => FormattableString.Invariant($"{l.Word} {l.Height:F1}")));
    }

    /// <summary>Heights beside a row: those of the file, over the rails, under the coping; at the other end of a ramp those that differ.</summary>
    [Fact]
    public void Heights_stand_beside_a_row_at_both_ends()
    {
        // An edge 12 over the rails, a ramp down to their tops, a wall up to the deck's underside.
        var set = Workbench.Made(Workbench.Straight(260, Side.Left, s => s with { StartRamp = new(Gradient: 8) }), Workbench.Printer, new());
        var face = Faces(set).First();
        var row = face.Rows(1000, 1)[0];
        double slab = Math.Max(set.Plan.Spec.Deck.Thickness, set.Plan.Spec.Coping.Thickness), rail = set.Plan.Site.RailTop, top = set.Plan.Profile.Level;
        Assert.Equal([("wall", top - slab), ("coping", top)], row.Right.Select(l => (l.Word, Math.Round(l.Height, 6))));
        Assert.Contains(row.Left, l => l.Word == "coping" && Math.Abs(l.Height - set.Plan.Profile.StartFoot) < 1e-6);
        var sheet = new Sheet(100, 100, "levels");
        RowLevels.Draw(sheet, row.Right, new(50, 80), 1, rail, onRight: true);
        Assert.Contains(FormattableString.Invariant($"coping {top:F1} (+{top - rail:F1})"), sheet.Items.OfType<SheetText>().Select(t => t.Text));
    }

    /// <summary>Places that are too near go apart by the gap, in order, and about their middle; others stay.</summary>
    [Fact]
    public void Figures_are_spread_no_farther_than_they_must_be()
    {
        Assert.Equal([0, 10, 20], Spread.Of([0, 10, 20], 3));
        Assert.Equal([-0.5, 2.5, 20], Spread.Of([1, 1, 20], 3));
        Assert.Equal([4, 7, 10, 13], Spread.Of([7, 8, 9, 10], 3));
        Assert.Empty(Spread.Of([], 3));
    }

    private static IEnumerable<ElevationFace> Faces(SectionSet set) => ElevationFaces.Of(set);

    // Turf, deck, coping, wall, render.
    private static Paint? Of(Rgb? colour)
    {
        foreach (var paint in new[] { Paint.Wall, Paint.Render, Paint.Turf, Paint.Deck, Paint.Coping })
        {
            if (colour == Palette.Of(paint))
            {
                return paint;
            }
        }

        return null;
    }

    private static Point2[] Corners(double x, double y) =>
        [new(x - Border, y - Border), new(x + Border, y - Border), new(x - Border, y + Border), new(x + Border, y + Border), new(x, y)];

    private static (DrawnSheet Drawn, double Foot, double Length) Drawn(ElevationRow row)
    {
        var sheet = new Sheet(row.Length + 1, row.Height + 1, "row");
        row.DrawOn(sheet, new(0, 0));
        return (new DrawnSheet(sheet, _ => false), row.Height - row.Under, row.Length);
    }
}
