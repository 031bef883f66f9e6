using PlatformForge.Platforms.Surfaces;
using PlatformForge.Sections.Forms;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Sections;

/// <summary>Figures that findings offer, each worked out by hand.</summary>
public class FigureTests
{
    [Theory]
    [InlineData(9.47, "it is 8.3 mm longer, or make the dowels 9.4 mm long or shorter", "9.4")]
    [InlineData(4.9, "it is 8.3 mm longer.", null)]
    public void A_section_shorter_than_its_joints_is_told_by_how_much_and_the_longest_dowel(double dowel, string told, string? cure)
    {
        var finding = SectionFindings.SectionTooShort("joint", 100, 130, 22.25, 30.5, dowel);
        Assert.Contains(told, finding.Remedy, StringComparison.Ordinal);
        Assert.Equal(cure, finding.Cure?.Value);
    }

    /// <summary>A bed of 200 by 180 that a piece misses by 12.34 mm: 212.4 by 192.4 of the same shape would do.</summary>
    [Fact]
    public void A_piece_too_large_for_the_bed_is_told_the_bed_that_takes_it()
    {
        var finding = SectionFindings.PieceTooLarge(PrinterSpec.Oblong(200, 180, 200) with { Margin = 5, Key = "printer" }, (10, 260), (1, 3), (250, 60),
            12.34, 4.9, 31.5);
        Assert.Contains("on the bed of 200 by 180 mm", finding.Message, StringComparison.Ordinal);
        Assert.Contains("measures 212.4 by 192.4 mm, of which 5 mm are kept free", finding.Remedy, StringComparison.Ordinal);
        Assert.Contains("On this bed it may be 31.5 mm wide: make the deck narrower", finding.Remedy, StringComparison.Ordinal);
        Assert.Equal(("printer.bed", "[212.4, 192.4]"), (finding.Cure!.Key, finding.Cure.Value));
    }

    [Fact]
    public void A_piece_too_tall_is_told_the_height_that_takes_it()
    {
        var finding = SectionFindings.PieceTooTall("printer", 0, 100, 212.34, 200);
        Assert.Contains("Lower the platform by 12.4 mm", finding.Remedy, StringComparison.Ordinal);
        Assert.Equal("212.4", finding.Cure!.Value);
    }

    [Fact]
    public void A_wall_too_thin_is_told_the_wall_and_the_nozzle_that_print()
    {
        var finding = SectionFindings.WallTooThin("k", "back wall", 0.61, 0.8);
        Assert.Contains("Make it 0.80 mm or more, or print with a nozzle of 0.30 mm", finding.Remedy, StringComparison.Ordinal); // two lines of 0.305
        Assert.DoesNotContain("nozzle of", SectionFindings.WallTooThin("k", "back wall", 0.19, 0.8).Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void The_longest_section_asked_is_told_what_the_cuts_allow() =>
        Assert.Equal("40.3", SectionFindings.LongestTooShort("k", 100, 140.25, 30).Cure!.Value);

    [Fact]
    public void A_dowel_too_large_is_told_the_largest_or_another_joint()
    {
        Assert.Equal(("k.dowel_diameter", "1.43"), SectionFindings.DowelTooLarge("k", 100, 1.75, 1.439, "here").Cure is { } cure ? (cure.Key, cure.Value)
            : default);
        Assert.Equal("k.kind", SectionFindings.DowelTooLarge("k", 100, 1.75, 0.49, "here").Cure!.Key);
    }

    [Fact]
    public void A_figure_out_of_range_is_told_by_the_last_word_of_its_key()
    {
        var finding = SectionFindings.OutOfRange("printer.infill", new("printer.infill", 2, NumberRange.From(0, 1), ""));
        Assert.StartsWith("infill is 2.", finding.Message, StringComparison.Ordinal);
        Assert.Equal("1", finding.Cure!.Value);
    }

    /// <summary>What was tried is offered; where nothing served, the crossfall is to be left out.</summary>
    [Fact]
    public void A_deck_off_its_height_is_told_what_was_tried_or_to_lie_level()
    {
        var fit = new DeckFit(-0.2, 0.3, 120, [(100, 0.9), (200, 1.2)], 1);
        var tried = SectionFindings.DeckOffItsHeight("p", fit,
            [("a crossfall of 80", Cure.Set("p.deck.crossfall", 80)), ("shorter sections", Cure.Set("s.longest", 90))]);
        Assert.Equal("Tried, and within both: a crossfall of 80, or shorter sections.", tried.Remedy);
        Assert.Equal("80", tried.Cure!.Value);
        Assert.Contains("up to 0.30 mm off its height, farthest at 120.0 mm", tried.Message, StringComparison.Ordinal);
        Assert.Contains("up to 0.200 mm off", tried.Message, StringComparison.Ordinal);
        var none = SectionFindings.DeckOffItsHeight("p", fit, []);
        Assert.StartsWith("Leave the crossfall out", none.Remedy, StringComparison.Ordinal);
        Assert.Equal("0", none.Cure!.Value);
    }
}
