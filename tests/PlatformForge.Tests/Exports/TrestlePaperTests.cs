using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Drawings.Trestles;
using PlatformForge.Exports.Files;
using PlatformForge.Exports.Paper;
using PlatformForge.Projects;
using PlatformForge.Projects.Runs;
using PlatformForge.Projects.Watches;
using Xunit;

namespace PlatformForge.Tests.Exports;

/// <summary>Full-size sheets of a trestle.</summary>
public class TrestlePaperTests
{
    private static readonly Lazy<Dossier> Designed = new(() => DesignRun.Design(
        ProjectReader.ReadFile(Path.Combine(House.SourceTree.Root, "presets", "finished", "wrenlow.toml")).Value!, RunWatch.None).Value!);

    [Theory]
    [InlineData(210, 297)]
    [InlineData(297, 420)]
    public void They_hold_front_and_back_of_every_section_and_its_bents_at_full_size(double width, double height)
    {
        var platform = Assert.Single(Designed.Value.Platforms);
        var plan = platform.Sections.Plan;
        var set = PaperSet.Of(Designed.Value, platform, new() { SizeName = "", Size = new(width, height) }).Value!;
        Assert.NotEmpty(set.Trestle);

        // Lines of the baseboard under the fronts and backs together are as long as the posts' outer faces from end to end.
        double[] at = [.. plan.Stations];
        double long0 = new[] { plan.Trestle!.Rows[0].Near, plan.Trestle.Rows[^1].Far }
            .Sum(face => at.Zip(at.Skip(1), (a, b) => (plan.ToLayout(b, face.At(b)) - plan.ToLayout(a, face.At(a))).Length).Sum());
        var paths = set.Trestle.SelectMany(s => s.Items.OfType<SheetPath>()).ToArray();
        Assert.Equal(long0, paths.Where(p => !p.Closed && p.Pen == HouseStyle.Outline
            && p.Points[0].Y == p.Points[1].Y).Sum(p => p.Points[1].X - p.Points[0].X), 0.01); // facets' chords here, the curve there

        // In a bent posts are as wide as asked and stand from the baseboard to the deck's underside at full size.
        var spec = plan.Spec.Trestle!;
        double level = plan.Profile.Level - plan.Spec.Deck.Thickness;
        var posts = paths.Where(p => p.Closed && p.Points.Count == 4).Select(p => (Wide: p.Points.Max(q => q.X) - p.Points.Min(q => q.X),
            High: p.Points.Max(q => q.Y) - p.Points.Min(q => q.Y)))
            .Where(p => Math.Abs(p.Wide - spec.Post) < 1e-6 && Math.Abs(p.High - level) < 1e-6);
        Assert.True(posts.Count() >= plan.Trestle.Rows.Count);
        Assert.All(set.Trestle, sheet => Assert.All(sheet.Items.OfType<SheetPath>(), p => Assert.All(p.Points, q => Assert.True(q.X > 7.9
            && q.Y > 7.9 && q.X < sheet.Width - 7.9 && q.Y < sheet.Height - 7.9))));

        // Braces along the platform, each once, rise at 45 degrees at full size: on the sheets of front and back, none other does.
        var braces = PlatformForge.Solids.Bodies.Trestles.LongitudinalBraces.Of(new(plan), out _);
        Assert.True(braces.Count > 40);
        Assert.Equal(braces.Count, paths.Count(p => p.Closed && p.Points.Count == 4 && p.Points[1] - p.Points[0] is var side && side.Length > 4
            && Math.Abs(Math.Abs(side.X) - Math.Abs(side.Y)) < 0.02 * side.Length));
        Assert.Contains("the trestle on", string.Join(" ", set.Key.Items.OfType<SheetText>().Select(t => t.Text)), StringComparison.Ordinal);
    }

    /// <summary>The fence of the halt stands over its front and its back, broken off on paper; the row is as much higher.</summary>
    [Fact]
    public void What_stands_on_its_deck_is_drawn_over_it_with_its_name()
    {
        var platform = Assert.Single(Designed.Value.Platforms);
        foreach (bool isBack in (bool[])[false, true])
        {
            TrestleElevation whole = new(platform, isBack), broken = new(platform, isBack, 4);
            foreach (var row in whole.Rows(2000))
            {
                // Posts of 1350 mm at 1:148, near the edge of a deck that falls to its back.
                var plan = platform.Sections.Plan;
                double deck = plan.Stations.Where(s => s >= row.Min(p => p.From) && s <= row.Max(p => p.To)).Max(s => plan.TopAt(s, plan.Back.At(s))),
                    tall = whole.Tall(row);
                var sheet = new Sheet(2000, 200, "row");
                whole.DrawRow(sheet, row, new(40, 150));
                Assert.Contains(sheet.Items.OfType<SheetText>(), t => t.Text == "fence");
                Assert.InRange(sheet.Items.OfType<SheetPath>().Where(p => p.Pen == HouseStyle.Fine).Min(p => p.Points.Min(q => q.Y)), 150 - tall,
                    150 - deck - 9);
                Assert.InRange(broken.Tall(row), deck + 4 - 1e-9, tall - 3);
            }
        }
    }
}
