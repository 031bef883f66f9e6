using PlatformForge.Platforms.Islands;
using PlatformForge.Platforms.Specs;
using PlatformForge.Track;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Platforms;

/// <summary>What says that a place is too narrow, or a deck too thin, where plain sums tell it.</summary>
public class WaistAndBossTests
{
    private static readonly PlatformSpec Spec = new("island", new FaceSpec("up", Side.Left, 100, 500, EdgeStyle.Uniform))
    {
        OtherFace = new FaceSpec("down", Side.Right, double.NaN, double.NaN, EdgeStyle.Uniform),
    };

    /// <summary>Between two copings of 9 mm nothing is needed; walls 1.5 thick under overhangs of 1.5 leave 2 mm between them on 8 mm.</summary>
    [Theory]
    [InlineData(9, 1.5, 1.5, 17.9, "two copings", true)]
    [InlineData(9, 1.5, 1.5, 7.9, "two copings", false)]
    [InlineData(3, 2, 1.5, 8.9, "both walls", false)]
    public void An_island_pinched_is_told_what_has_no_room_and_the_coping_that_has(
        double coping, double overhang, double wall, double width, string what, bool offered)
    {
        var spec = Spec with { Coping = Spec.Coping with { Width = coping, Overhang = overhang }, Walls = Spec.Walls with { FrontThickness = wall } };
        var findings = new List<Finding>();
        var made = WidthRule.Check(spec, Bench.Site, new(width, 300, 310), findings);
        var told = Assert.Single(findings);
        Assert.Equal((Severity.Error, width), (told.Severity, made.Deck.Width));
        Assert.Contains(what, told.Message, StringComparison.Ordinal);
        Assert.Equal(offered, told.Cure is not null && told.Cure.Key.EndsWith("coping.width", StringComparison.Ordinal));
    }

    /// <summary>Twelve feet are the least (common practice, no source): 48 mm at 4 mm to the foot.</summary>
    [Theory]
    [InlineData(47.9, true)]
    [InlineData(48.1, false)]
    public void An_island_under_twelve_feet_wide_is_warned_of(double width, bool warned)
    {
        var findings = new List<Finding>();
        WidthRule.Check(Spec, Bench.Site with { Scale = new(76.2) }, new(width, 300, 310), findings);
        Assert.Equal(warned ? Severity.Warning : Severity.Note, Assert.Single(findings).Severity);
    }

    /// <summary>
    /// An opening that leaves less of the deck under it than two printed lines has a boss there; one that goes right through needs none.
    /// </summary>
    [Theory]
    [InlineData(0.5, false)]
    [InlineData(0.69, false)]
    [InlineData(0.71, true)]
    [InlineData(1.5, true)]
    [InlineData(4.0, true)]
    [InlineData(null, false)]
    public void What_goes_nearly_through_the_deck_has_material_under_it(double? depth, bool boss) =>
        Assert.Equal(boss, FeatureSite.Boss(Spec with { Deck = new() { Thickness = 1.5 } }, depth) > 0);
}
