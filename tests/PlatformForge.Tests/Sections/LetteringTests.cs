using PlatformForge.Platforms.Plans;
using PlatformForge.Sections.Marks;
using PlatformForge.Solids.Bodies.Layers;
using Xunit;

namespace PlatformForge.Tests.Sections;

/// <summary>Where lettering has room underneath, and that it keeps within.</summary>
public class LetteringTests
{
    /// <summary>A rectangle's area, nothing where it is turned inside out.</summary>
    [Theory]
    [InlineData(0, 0.5, 0, 4, 2)]
    [InlineData(0, 4, 0, 0.5, 2)]
    [InlineData(3, 1, 0, 4, 0)]
    [InlineData(0, 4, 3, 1, 0)]
    public void A_patch_has_the_area_of_its_sides(double from, double to, double near, double far, double area) =>
        Assert.Equal(area, new Patch(from, to, near, far).Area, 1e-12);

    [Fact]
    public void Clear_patches_lie_between_ribs_and_walls_all_along()
    {
        var straight = Workbench.Straight(150, change: s => s with { Ribs = new() { Pitch = 60, LongitudinalCount = 1 } });
        Assert.Equal(2 * (straight.Ribs.Count(r => r.Kind == RibKind.Transverse) + 1), Patch.Clear(straight, 205, 345).Count);
        foreach (var plan in new[] { straight, Workbench.PendlewickPlan })
        {
            Assert.All(Patch.Clear(plan, plan.Stations[0], plan.Stations[^1]), patch =>
            {
                for (double s = patch.From; s <= patch.To; s += 0.5)
                {
                    Assert.True(patch.Near >= plan.WallBack.At(s) + Patch.Border - 1e-9 && patch.Far <= plan.BackWallFace.At(s) - Patch.Border + 1e-9);
                    Assert.DoesNotContain(plan.Ribs, r => r.From < s && r.To > s && r.Near.At(s) < patch.Far && r.Far.At(s) > patch.Near);
                }
            });
        }
    }

    /// <summary>Letters as large as they go keep within a clear patch, on a curve too: every corner of every stroke, by its place along and beside the
    /// track.</summary>
    [Fact]
    public void The_largest_letters_keep_within_their_patch_on_a_curve()
    {
        var plan = Workbench.PendlewickPlan;
        var chart = new FacetedPlan(plan);
        var heights = new List<double>();
        foreach (var section in Workbench.PendlewickSections.Sections)
        {
            double from = section.From + 8, to = section.To - 8;
            var letters = Engraving.Of(chart, from, to, section.Number, 5, "WHARF", new() { EngravingHeight = 100 }, Workbench.Printer);
            var patches = Patch.Clear(plan, from, to);
            Assert.NotEmpty(letters.Removed);
            heights.Add(letters.Height);
            Assert.All(letters.Removed, stroke =>
            {
                var corners = stroke.Outline.Select(p => plan.Spine.Locate(p)).ToArray();
                Assert.Contains(patches, patch => corners.All(c => c.Chainage >= patch.From - Patch.Border && c.Chainage <= patch.To + Patch.Border
                    && c.Reach >= patch.Near - Patch.Border && c.Reach <= patch.Far + Patch.Border));
            });
        }

        Assert.InRange(heights.Max(), 4.5, 10); // a bay's width, less what the curve takes
    }

    /// <summary>Strokes of the least letters are one line of the nozzle wide.</summary>
    [Theory]
    [InlineData(0.25)]
    [InlineData(0.4)]
    [InlineData(0.6)]
    public void The_least_letters_have_strokes_of_one_line(double nozzle) => Assert.Equal(
        nozzle, Engraving.LeastHeight(Workbench.Printer with { Nozzle = nozzle }) / EngravedLetters.CapHeight * EngravedLetters.StrokeWidth, 1e-12);

    [Fact]
    public void Lines_of_one_size_have_one_height_and_an_empty_one_that_of_a_capital()
    {
        Assert.Equal(new LetterBlock(["O"], LetterBlock.RoundLetters).Height, new LetterBlock(["H"], LetterBlock.RoundLetters).Height, 1e-9);
        Assert.True(new LetterBlock(["H"]).Height < new LetterBlock(["H"], LetterBlock.RoundLetters).Height);
        Assert.Equal((0, EngravedLetters.CapHeight), EngravedLetters.Reach(""));
    }

    /// <summary>A name that has room on one line is written on one.</summary>
    [Fact]
    public void Three_words_stand_on_one_line_where_it_takes_them()
    {
        var chart = new FacetedPlan(Workbench.Straight(200, change: s => s with { Ribs = new() { Pitch = 120, LongitudinalCount = 0 } }));
        var rib = Assert.Single(chart.Plan.Ribs, r => r.Kind == RibKind.Transverse);
        var strokes = Engraving.Of(chart, 205, 395, 1, 1, "AA BB CC", new(), Workbench.Printer).Removed.SelectMany(b => b.Outline).ToArray();

        // The number stands in one bay, the name in the other: longer than high, and little higher than its letters of 7, whose round ones and strokes reach
        // on.
        foreach (var bay in new[] { strokes.Where(p => p.X < rib.From).ToArray(), [.. strokes.Where(p => p.X > rib.To)] })
        {
            double along = bay.Max(p => p.X) - bay.Min(p => p.X), across = bay.Max(p => p.Y) - bay.Min(p => p.Y);
            Assert.InRange(Math.Min(along, across), 7, 9);
        }
    }
}
