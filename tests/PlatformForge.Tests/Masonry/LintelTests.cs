using PlatformForge.Exports.Files;
using PlatformForge.Exports.Looks;
using PlatformForge.Projects.Runs;
using PlatformForge.Projects.Watches;
using PlatformForge.Sections.Rules;
using PlatformForge.Solids;
using PlatformForge.Solids.Bodies.Walls;
using PlatformForge.Tests.Meshes;
using PlatformForge.Tests.Projects;
using Xunit;

namespace PlatformForge.Tests.Masonry;

/// <summary>What lies over flat heads, and what smooth walls show.</summary>
public class LintelTests
{
    private static PlatformDossier Made(string add, params string[] sets)
    {
        var run = DesignRun.Design(Samples.Read(Samples.Small + add, ["platform[0].height=12", .. sets]).Value!, RunWatch.None);
        Assert.True(run.Succeeded, string.Join('\n', run.Findings.Select(f => f.Message)));
        return run.Value!.Platforms[0];
    }

    private static string Opening(string kind) => $"[[platform.facing.opening]]\nkind = \"{kind}\"\nhead = \"flat\"\n";

    /// <summary>Bearings of 150 mm at full size (common practice, no source), two thirds of that at least; and no other piece lies over the hole.</summary>
    [Theory]
    [InlineData("refuge", "bond=english")]
    [InlineData("refuge", "bond=flemish")]
    [InlineData("refuge", "bond=stretcher")]
    [InlineData("cable", "bond=english-garden-wall")]
    [InlineData("cable", "front=stone")]
    [InlineData("refuge", "front=stone")]
    public void A_flat_head_has_a_lintel_that_lies_on_the_wall_on_either_side(string kind, string wall)
    {
        var platform = Made(Opening(kind), "platform[0].facing." + wall);
        FacedWall[] walls = [.. platform.Sections.Sections.SelectMany(s => s.Faced)];
        int seen = 0;
        foreach (var faced in walls)
        {
            foreach (var hole in faced.Regions.Where(r => r.Opening > 0))
            {
                double left = hole.Outline.Min(p => p.X), right = hole.Outline.Max(p => p.X), crown = hole.Outline.Max(p => p.Y);
                var over = faced.Regions.Where(r => r.Out > 0 && Math.Abs(r.Outline.Min(p => p.Y) - crown) < 0.1
                    && r.Outline.Max(p => p.X) > left && r.Outline.Min(p => p.X) < right);
                var lintel = Assert.Single(over);
                Assert.True(lintel.IsLintel);
                Assert.InRange(left - lintel.Outline.Min(p => p.X), 100 / 76.2, 230 / 76.2);
                Assert.InRange(lintel.Outline.Max(p => p.X) - right, 100 / 76.2, 230 / 76.2);
                seen++;
            }
        }

        Assert.Equal(platform.Plan.WallOpenings.Count, seen);
        bool isBrick = wall.StartsWith("bond", StringComparison.Ordinal);
        Assert.All(platform.Sections.Sections, s =>
        {
            var report = MeshCheck.Inspect(s.Solid.Mesh);
            Assert.True(report is { IsClosed: true, DegenerateTriangles: 0, Components: 1 }, report.ToString());
            Assert.InRange(s.Solid.ColumnVolume / report.Volume, 1 - 2e-6, 1 + 2e-6);
        });
        Assert.Equal(isBrick, platform.Sections.Sections.Any(s => s.Solid.Mesh.Paints.Contains((byte)Paint.Concrete)));
    }

    [Fact]
    public void A_weep_hole_has_none() => Assert.All(Made(Opening("weep"), "platform[0].facing.bond=english").Sections.Sections.SelectMany(s => s.Faced)
        .SelectMany(w => w.Regions), r => Assert.False(r.IsLintel));

    [Theory]
    [InlineData("")]
    [InlineData("[[platform.facing.opening]]\nkind = \"weep\"\n")]
    [InlineData("[platform.facing.plinth]\n")]
    public void Walls_left_smooth_by_choice_show_as_render_and_those_of_which_nothing_is_said_do_not(string add)
    {
        var smooth = Made(add, "platform[0].facing.front=plain");
        byte[] shown = [.. smooth.Sections.Sections.SelectMany(s => s.Solid.Mesh.Paints).Distinct()];
        Assert.Contains((byte)Paint.Render, shown);
        Assert.DoesNotContain((byte)Paint.Wall, shown);
        Assert.All(Walls(smooth), w => Assert.Equal(Paint.Render, w.Shows));
        var bare = Made("");
        Assert.DoesNotContain((byte)Paint.Render, bare.Sections.Sections.SelectMany(s => s.Solid.Mesh.Paints));
        Assert.All(Walls(bare), w => Assert.Equal(Paint.Wall, w.Shows));
    }

    /// <summary>Render is told from bricks, and from mortar and copings, by its lightness: 15 of the 100 steps of CIE 1976 L* at least.</summary>
    [Fact]
    public void Render_is_lighter_than_what_is_beside_it() => Assert.All([Paint.Wall, Paint.Coping, Paint.Deck], p =>
        Assert.True(Lightness(Paint.Render) - Lightness(p) > 15));

    private static double Lightness(Paint paint)
    {
        static double Linear(byte c) => c <= 10 ? c / 255.0 / 12.92 : Math.Pow(((c / 255.0) + 0.055) / 1.055, 2.4);
        var c = Palette.Of(paint);
        return (116 * Math.Cbrt((0.2126 * Linear(c.R)) + (0.7152 * Linear(c.G)) + (0.0722 * Linear(c.B)))) - 16;
    }

    private static IEnumerable<FacedWall> Walls(PlatformDossier platform) => platform.Sections.Sections
        .SelectMany(s => (FacedWall[])[.. s.Faced, .. PlainWalls.Of(platform.Sections, s)]);
}
