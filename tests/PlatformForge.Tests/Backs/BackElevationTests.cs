using PlatformForge.Exports.Drawings.Elevations;
using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Looks;
using PlatformForge.Geometry;
using PlatformForge.Masonry;
using PlatformForge.Platforms.Specs;
using PlatformForge.Sections.Forms;
using PlatformForge.Solids;
using PlatformForge.Tests.Fixtures;
using PlatformForge.Tests.Sections;
using PlatformForge.Track;
using Xunit;

namespace PlatformForge.Tests.Backs;

/// <summary>Elevations of what is no plain wall, against the meshes: at places all over it the drawing shows what somebody before it sees.</summary>
public class BackElevationTests
{
    // What lies so near to a border of the drawing, mm, is not asked.
    private const double Border = 0.06;

    private static readonly RetainingSpec Wall = new() { Height = 16, Thickness = 2.5, Oversail = 0.375, Coping = 1, Plinth = 3, Depth = 0.75, Fit = 0.125 };

    [Theory]
    [InlineData(Side.Left, WallFinish.Brick)]
    [InlineData(Side.Right, WallFinish.Stone)]
    public void A_retaining_wall_is_drawn_with_plinth_coursing_and_coping_as_it_is_seen(Side side, WallFinish front)
    {
        var set = Made(side, s => s with { Facing = FacingSpec.For(new(76.2)) with { Front = front }, Back = new() { Retaining = Wall } });
        var face = ElevationFaces.Retaining(set, side == Side.Left);
        Assert.Equal(20, face.Base, 1e-6);
        Assert.Equal(set.Lines.Pieces.Count, face.Slices.Count);
        double at = 0;
        foreach (var slice in face.Slices)
        {
            var row = new ElevationRow([slice], 1, face);
            var (drawn, foot) = Drawn(row);
            Assert.Equal(Wall.Height, foot, 1e-6);
            int way = side == Side.Left ? 1 : -1, asked = 0;
            var seen = new SeenAlongY(set.Lines.Pieces.Single(p => p.Section == slice.Section).Solid.Mesh, way, way * 1000);
            double start = slice.Wall.Place(0).X;
            for (double x = 1; x < slice.Length - 1; x += 1.137)
            {
                for (double z = 0.13; z < foot; z += 0.171)
                {
                    if (Look(drawn, x, foot - z) is { } look && seen.At(start + (way * x), 20 + z) is { } met)
                    {
                        string where = FormattableString.Invariant($"{x:0.00} along, {z:0.00} over the deck");
                        Assert.True(look == met.Paint, $"{where}: drawn {look}, on the mesh {met.Paint}");
                        asked++;
                    }
                }
            }

            Assert.True(asked > 1000);
            at += slice.Length;
        }

        Assert.Equal(set.Lines.Pieces.Sum(p => p.Solid.Mesh.Vertices.Max(v => v.X) - p.Solid.Mesh.Vertices.Min(v => v.X)), at, 0.01);
    }

    [Theory]
    [InlineData(Side.Left, 0)]
    [InlineData(Side.Right, 5)]
    public void A_bank_is_drawn_from_the_decks_edge_to_the_ground_as_it_is_seen(Side side, double ground)
    {
        var ramp = new RampSpec(Gradient: 8, FootHeight: ground > 0 ? 2 : null);
        var set = Made(side, s => s with { Back = new() { Kind = BackKind.Bank, Ground = ground }, StartRamp = ramp });
        Compare(set, (looked, met) => looked == Paint.Turf == (met?.Paint == Paint.Turf), 3000);
    }

    /// <summary>Of an open back: ends of ribs and the deck's edge lie in the plane of the backscene, all else behind it.</summary>
    [Theory]
    [InlineData(Side.Left)]
    [InlineData(Side.Right)]
    public void An_open_back_is_drawn_with_the_ribs_that_end_there(Side side)
    {
        var set = Made(side, s => s with { Back = new() { Kind = BackKind.Open }, StartRamp = new(Gradient: 8) });
        double plane = (side == Side.Left ? 1 : -1) * set.Plan.Back.Reach[0];
        Compare(set, (looked, met) => looked is null == (met is not { } m || Math.Abs(m.Y - plane) > 0.01), 3000);
    }

    private static void Compare(SectionSet set, Func<Paint?, (Paint Paint, double Y)?, bool> agree, int least)
    {
        var sight = new BackSight(set);
        int way = set.Plan.Side == Side.Left ? -1 : 1, asked = 0;
        var rows = sight.Rows(90, 1, []);
        Assert.Equal(sight.Length, rows.Sum(r => r.Covers), 1e-9);
        double at = 0, left = (way < 0 ? set.Sections.Max(s => s.To) : set.Sections.Min(s => s.From));
        SeenAlongY[] seen = [.. set.Sections.Select(s => new SeenAlongY(s.Solid.Mesh, way, way * 1000))];
        foreach (var row in rows)
        {
            var (drawn, foot) = Drawn(row);
            for (double x = 0.7; x < row.Covers - 0.7; x += 1.137)
            {
                // Nothing within a joint's play of a cut, where both sections draw in.
                double s = left + (way * (at + x));
                if (set.Sections.Any(p => Math.Abs(p.From - s) < 0.4 || Math.Abs(p.To - s) < 0.4))
                {
                    continue;
                }

                for (double z = 0.13; z < foot; z += 0.371)
                {
                    var looks = Corners(x, foot - z).Select(p => BackLook(drawn.At(p))).Distinct().ToArray();
                    if (looks.Length == 1)
                    {
                        var met = seen.Select(m => m.At(s, z)).Where(m => m is not null).OrderBy(m => way * m!.Value.Y).FirstOrDefault();
                        string where = FormattableString.Invariant($"{at + x:0.00} along, {z:0.00} high");
                        Assert.True(agree(looks[0], met), $"{where}: drawn {looks[0]}, on the mesh {met}");
                        asked++;
                    }
                }
            }

            at += row.Covers;
        }

        Assert.True(asked > least, asked.ToString(System.Globalization.CultureInfo.InvariantCulture));
    }

    // Turf, the deck's edge and ribs' ends; nothing else of a back lies before its hollow.
    private static Paint? BackLook(Rgb? colour) => colour == Palette.Of(Paint.Turf) ? Paint.Turf : colour == Palette.Of(Paint.Deck) ? Paint.Deck
        : colour == HouseStyle.Coping ? Paint.Wall : null;

    private static Paint? Look(DrawnSheet drawn, double x, double y)
    {
        Paint?[] looks = [.. Corners(x, y).Select(p => Of(drawn.At(p))).Distinct()];
        return looks.Length == 1 ? looks[0] : null;
    }

    private static Paint? Of(Rgb? colour)
    {
        foreach (var paint in new[] { Paint.Wall, Paint.Stone, Paint.Coping })
        {
            if (colour == Palette.Of(paint))
            {
                return paint;
            }
        }

        // As faint as joints are drawn, without being seen through.
        var mortar = Palette.Of(Paint.Mortar);
        return colour is { } c && Math.Abs(c.R - mortar.R) < 24 && Math.Abs(c.G - mortar.G) < 24 && Math.Abs(c.B - mortar.B) < 32 ? Paint.Mortar : null;
    }

    private static Point2[] Corners(double x, double y) =>
        [new(x - Border, y - Border), new(x + Border, y - Border), new(x - Border, y + Border), new(x + Border, y + Border), new(x, y)];

    private static (DrawnSheet Drawn, double Foot) Drawn(IElevationRow row)
    {
        var sheet = new Sheet(row.Length + 1, row.Height + 1, "row");
        row.DrawOn(sheet, new(0, 0));

        // Numbers of sections stand under the line that a row stands on.
        return (new DrawnSheet(sheet, p => Of(p.Colour) == Paint.Mortar), row.Height - row.Under);
    }

    private static SectionSet Made(Side side, Func<PlatformSpec, PlatformSpec> change) => Workbench.Made(
        Workbench.Straight(300, side, s => change(s with { Ribs = new() { Pitch = 30 }, Deck = s.Deck with { Width = 40 } })), Workbench.Printer, new());
}
