using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Drawings.Sections;
using PlatformForge.Exports.Files;
using PlatformForge.Exports.Looks;
using PlatformForge.Exports.Paper;
using PlatformForge.Exports.Stock;
using PlatformForge.Geometry;
using PlatformForge.Projects.Presets;
using PlatformForge.Projects.Runs;
using PlatformForge.Projects.Watches;
using PlatformForge.Tests.Projects;
using Xunit;

namespace PlatformForge.Tests.Exports;

/// <summary>What lies in and on a deck, in drawings, on paper and on sheet: bricks and margins of copings, inlays, strips.</summary>
public class DeckLineTests
{
    private static readonly Lazy<Dossier> Bricks = new(() => Designed("emberlow")), Margins = new(() => Designed("tawnybrook"));

    private static Dossier Designed(string sample) => DesignRun.Design(Samples.Read(PresetShelf.Sample(sample)!).Value!, RunWatch.None).Value!;

    /// <summary>Every line of a coping lies in a groove of the solids: there the deck is lower than beside it, by the depth that is asked.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Lines_of_a_coping_lie_in_what_is_engraved(bool bricks)
    {
        var platform = (bricks ? Bricks : Margins).Value.Platforms[0];
        var (plan, coping) = (platform.Plan, platform.Plan.Spec.Coping);
        double deep = bricks ? coping.JointDepth : coping.MarginDepth;
        var section = platform.Sections.Sections[1];
        var mesh = section.Solid.Mesh;
        var lines = plan.Faces.SelectMany(f => CopingLines.Of(f, coping)).Where(l => Between(l)).ToArray();
        Assert.True(lines.Length > 20, $"{lines.Length}");
        foreach (var line in lines.Where((_, i) => i % 5 == 0))
        {
            var middle = line.Length == 2 ? (line[0] * 0.3) + (line[^1] * 0.7) : line[line.Length / 2]; // clear of a line laid in along the front
            var on = plan.Spine.Locate(middle, section.From);
            Assert.Equal(plan.TopAt(on.Chainage, on.Reach) - deep, Top(mesh, middle), 0.02);
        }

        bool Between(Point2[] l) => plan.Spine.Locate(l[0], section.From).Chainage > section.From + 5
            && plan.Spine.Locate(l[^1], section.To).Chainage < section.To - 5;
    }

    /// <summary>As many as there are are scored on the deck of sheet and drawn on paper; the key names them.</summary>
    [Fact]
    public void Paper_and_sheet_have_the_margins()
    {
        var platform = Margins.Value.Platforms[0];
        int slabs = platform.Plan.First.CopingJoints.Length + 1;
        var set = PaperSet.Of(Margins.Value, platform, new()).Value!;
        Assert.Contains(set.Key.Items.OfType<SheetText>(), t => t.Text == "bricks or tooled margin of the coping");
        var cut = StockSet.Of(platform, new() { Size = new(420, 297) }).Value!.Parts.Where(p => p.Name.EndsWith(" deck", StringComparison.Ordinal));

        // Two short sides of a rectangle in each slab.
        double side = platform.Plan.Spec.Coping.Width - (2 * platform.Plan.Spec.Coping.Margin);
        var scored = cut.SelectMany(p => p.Lines.Where(l => l.Layer == CutLayer.Score && l.Points.Count == 2)).Select(l => (l.Points[1] - l.Points[0]).Length);
        Assert.Equal(2 * slabs, scored.Count(length => Math.Abs(length - side) < 0.02));
    }

    /// <summary>The enlarged edge shows inlay and strip; the isometric view has their lines.</summary>
    [Fact]
    public void Drawings_show_what_is_laid_in()
    {
        var (dossier, platform) = (Bricks.Value, Bricks.Value.Platforms[0]);
        Assert.Equal(2, platform.Plan.Body.Lines.Select(l => l.Made.Name).Distinct().Count());
        double at = CrossSectionDrawing.Telling(platform.Plan);
        var sheet = CrossSectionDrawing.Draw(dossier, platform, at);
        var colour = LineLooks.Of(platform.Plan.Body.Lines.First(l => l.Made.Rise > 0).Made, platform.Plan.Spec);
        var tactile = sheet.Items.OfType<SheetPath>().Where(p => p.Fill?.Colour == colour).ToArray();
        Assert.Equal(2, tactile.Length); // in the section and in the enlarged edge, as many times wider as the one's scale is larger
        double[] widths = [.. tactile.Select(p => p.Points.Max(q => q.X) - p.Points.Min(q => q.X)).Order()];
        Assert.Equal(8.0 / 3, widths[1] / widths[0], 0.01);
        var plain = platform with { Sections = platform.Sections with { Lines = PlatformForge.Sections.Forms.LineSet.None } };
        Assert.True(IsometricDrawing.Draw(dossier, platform).Items.Count > 1.2 * IsometricDrawing.Draw(dossier, plain).Items.Count);
    }

    // Highest place of a mesh over a point.
    private static double Top(Mesh mesh, Point2 p)
    {
        double top = double.NegativeInfinity;
        for (int i = 0; i < mesh.Triangles.Length; i += 3)
        {
            Point3 a = mesh.Vertices[mesh.Triangles[i]], b = mesh.Vertices[mesh.Triangles[i + 1]], c = mesh.Vertices[mesh.Triangles[i + 2]];
            double area = Cross(a, b, c.X, c.Y), u = Cross(b, c, p.X, p.Y) / area, v = Cross(c, a, p.X, p.Y) / area;
            if (area > 0 && u >= 0 && v >= 0 && u + v <= 1)
            {
                top = Math.Max(top, (u * a.Z) + (v * b.Z) + ((1 - u - v) * c.Z));
            }
        }

        return top;
    }

    private static double Cross(Point3 a, Point3 b, double x, double y) => ((b.X - a.X) * (y - a.Y)) - ((b.Y - a.Y) * (x - a.X));
}
