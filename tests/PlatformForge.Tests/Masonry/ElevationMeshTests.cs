using PlatformForge.Exports.Drawings.Elevations;
using PlatformForge.Exports.Drawings.Elevations.Walls;
using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Looks;
using PlatformForge.Geometry;
using PlatformForge.Masonry;
using PlatformForge.Solids;
using PlatformForge.Solids.Bodies.Layers;
using PlatformForge.Tests.Fixtures;
using PlatformForge.Tests.Sections;
using PlatformForge.Track;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Masonry;

/// <summary>Elevations against the meshes of their sections: at places all over a wall, what the drawing shows is what somebody before the wall sees.</summary>
public class ElevationMeshTests
{
    private const double Slab = 1.5;

    // A drawing's borders are as exact as its joints' middles, mm; what lies so near to one is not asked.
    private const double Border = 0.06;

    // As far as the deepest profile and a joint go, mm.
    private const double Corner = 2;

    private static readonly ModelScale Scale = new(76.2);

    private static readonly FacingSpec Bricks = FacingSpec.For(Scale);

    private static readonly DownpipeSpec Pipes = DownpipeSpec.For(Scale) with { On = PierWalls.Front, At = [330, 420] };

    public static TheoryData<string> Walls => [.. Facings.Keys];

    private static readonly Dictionary<string, (FacingSpec Facing, bool HasRamp)> Facings = new()
    {
        ["flat"] = (Bricks, true),
        ["plinth and corbel"] = (Bricks with { Plinth = PlinthSpec.For(Scale) with { Projection = 0.6 }, Corbel = CorbelSpec.For(Scale) }, true),
        ["plinth and corbel alike"] = (Bricks with { Plinth = PlinthSpec.For(Scale), Corbel = CorbelSpec.For(Scale) }, true),
        ["corbel"] = (Bricks with { Corbel = CorbelSpec.For(Scale) }, true),
        ["batter"] = (Bricks with { Batter = 1.5 }, true),
        ["piers and plinth"] = (Bricks with { Plinth = PlinthSpec.For(Scale) with { Projection = 0.6 }, Piers = PierSpec.For(Scale) }, true),
        ["downpipes"] = (Bricks with { Downpipes = Pipes }, true),
        ["downpipes, plinth and corbel"] = (
            Bricks with { Downpipes = Pipes, Plinth = PlinthSpec.For(Scale) with { Projection = 0.6 }, Corbel = CorbelSpec.For(Scale) }, true),
        ["a downpipe before a wall all round"] = (Bricks with { Downpipes = Pipes with { At = [280] } }, false),
        ["buttresses"] = (Bricks with { Piers = PierSpec.For(Scale) with { Height = 12 } }, true),
        ["buttresses and plinth"] = (Bricks with { Plinth = PlinthSpec.For(Scale), Piers = PierSpec.For(Scale) with { Height = 12 } }, false),
        ["leaning buttresses"] = (Bricks with { Batter = 1, Piers = PierSpec.For(Scale) with { Height = 12 } }, false),
    };

    /// <summary>At ends askew a plinth ends farther on than the wall over it: the coping is drawn level to the end all the same.</summary>
    [Theory]
    [InlineData(25, -20)]
    [InlineData(-40, 40)]
    public void A_coping_over_a_plinth_is_level_up_to_ends_askew(double start, double end)
    {
        var plan = Workbench.Straight(300, Side.Left, s => s with
        {
            Skew = new() { Start = start, End = end },
            Facing = Bricks with { Plinth = PlinthSpec.For(Scale), Corbel = CorbelSpec.For(Scale) },
        });
        var set = Workbench.Made(plan, Workbench.Printer, new());
        double under = plan.TopAt(300, 20) - Slab;
        Assert.All(ElevationFaces.Of(set), face => Assert.All(face.Slices, slice => Assert.All(slice.Top, p => Assert.Equal(under, p.Y, 1e-3))));
    }

    [Theory]
    [MemberData(nameof(Walls))]
    public void Everywhere_a_drawing_shows_what_is_seen_of_the_mesh(string name)
    {
        var (facing, hasRamp) = Facings[name];
        var plan = Workbench.Straight(hasRamp ? 260 : 150, Side.Left, s => s with { Facing = facing, StartRamp = hasRamp ? new(Gradient: 8) : null });
        int[] asked = new int[4];
        var set = Workbench.Made(plan, Workbench.Printer, new());
        var front = ElevationFaces.Of(set).Single(f => f.Name == WallNames.FrontOf(1));
        foreach (var section in set.Sections)
        {
            WallSlice[] slices = [.. front.Slices.Where(s => s.Section == section.Number)];
            var row = new ElevationRow(slices, 1, new(WallNames.FrontOf(1), slices, Slab, Paint.Coping) { Fittings = front.Fittings });
            var sheet = new Sheet(row.Length + 1, row.Height + 1, name);
            row.DrawOn(sheet, new(0, 0));
            var drawn = new DrawnSheet(sheet, p => Of(p.Colour) == Look.Joints);
            double foot = slices.Max(s => s.Height) + Slab, start = slices[0].Wall.Place(slices[0].From).X, wall = plan.WallFace.Reach[0];
            var seen = new SeenAlongY(section.Solid.Mesh, 1, wall + 6);

            // Steps that no course and no brick is a multiple of; round the corners at both ends bricks stand beyond what is laid flat.
            for (double x = Corner; x < row.Length - Corner; x += 1.137)
            {
                for (double z = 0.11; z < foot; z += 0.173)
                {
                    // The drawing as it is all round the place, then what a ray meets there.
                    Look[] looks = [.. Round.Select(o => Of(drawn.At(new Point2(x, foot - z) + (o * Border)))).Distinct()];
                    if (looks.Length == 1)
                    {
                        var met = Of(seen.At(start + x, z)?.Paint);
                        string where = FormattableString.Invariant($"{name}, section {section.Number}, {x:0.00} along, {z:0.00} high");
                        Assert.True(looks[0] == met, $"{where}: drawn {looks[0]}, on the mesh {met}");
                        asked[(int)met]++;
                    }
                }
            }
        }

        // Nothing, bricks and joints were all of them asked for often enough to say so.
        Assert.True(asked[(int)Look.Bricks] > 3000 && asked[(int)Look.Joints] > 200, string.Join(", ", asked));
        Assert.Equal(facing.Downpipes is not null, asked[(int)Look.Iron] > 50);
    }

    private static readonly Point2[] Round = [new(-1, -1), new(1, -1), new(-1, 1), new(1, 1), new(0, 0)];

    private enum Look
    {
        Other,
        Bricks,
        Joints,
        Iron,
    }

    private static Look Of(Paint? paint) => paint switch { Paint.Wall => Look.Bricks, Paint.Mortar => Look.Joints, Paint.Iron => Look.Iron, _ => Look.Other };

    private static Look Of(Rgb? colour)
    {
        var mortar = Palette.Of(Paint.Mortar);

        // On paper: as faint as joints are drawn, without being seen through.
        bool isMortar = colour is { } c && Math.Abs(c.R - mortar.R) < 24 && Math.Abs(c.G - mortar.G) < 24 && Math.Abs(c.B - mortar.B) < 32 && c.R > c.B;
        return colour == Palette.Of(Paint.Wall) ? Look.Bricks : isMortar ? Look.Joints
            : colour == Palette.Of(Paint.Iron) ? Look.Iron : Look.Other;
    }
}
