using PlatformForge.Platforms;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Platforms;

/// <summary>Figures that findings offer, each worked out by hand: what is wrong, by how much, and what would be right.</summary>
public class FigureTests
{
    [Theory]
    [InlineData(-10, 1000, 100, "lay 110 mm more track")]
    [InlineData(1350, 1000, 100, "lay 450 mm more track")]
    public void Track_that_is_missing_is_what_lies_beyond_its_end_and_what_the_longest_vehicle_needs(double chainage, double length, double need, string told) =>
        Assert.Contains(told, PlatformFindings.BeyondTrack("k", chainage, length, "coach", need, null).Remedy, StringComparison.Ordinal);

    [Fact]
    public void Track_beside_a_platform_that_is_too_short_is_told_with_what_is_missing()
    {
        var finding = PlatformFindings.TooLittleTrack("face.from", "before", "coach", 80, 228.5, 148.5);
        Assert.Contains("survey 148.5 mm more", finding.Remedy, StringComparison.Ordinal);
        Assert.Equal(("face.from", "148.5"), (finding.Cure!.Key, finding.Cure.Value));
    }

    /// <summary>150 and 120 mm of ramp on 190 mm: 80 mm too long; the longer may be 190 − 120 = 70.</summary>
    [Theory]
    [InlineData(150, 120, "p.ramps.start.length", "70")]
    [InlineData(120, 150, "p.ramps.end.length", "70")]
    public void Ramps_longer_than_the_platform_are_told_by_how_much_and_the_longer_is_shortened(double start, double end, string key, string value)
    {
        var finding = PlatformFindings.RampsTooLong("p.ramps", start, end, 190, 7.9166);
        Assert.Contains("Lengthen the platform by 80 mm, shorten the ramps to 190 mm together, or give a gradient of 1 in 7.916 or steeper", finding.Remedy, StringComparison.Ordinal);
        Assert.Equal((CureAct.Set, key, value), (finding.Cure!.Act, finding.Cure.Key, finding.Cure.Value));
    }

    [Fact]
    public void A_ramp_that_leaves_no_room_for_the_other_is_left_out() =>
        Assert.Equal((CureAct.LeaveOut, "p.ramps.end"), PlatformFindings.RampsTooLong("p.ramps", 190, 200, 190, 8).Cure is { } cure ? (cure.Act, cure.Key) : default);

    [Theory]
    [InlineData(1, 3, "too low for the deck", "Give a height of 3 mm or more", "3")]
    [InlineData(13, 3, "not below the platform at 12 mm", "Give a height of 3 mm or more", "11")]
    public void A_ramp_s_foot_goes_where_the_deck_fits_and_below_the_platform(double foot, double least, string wrong, string right, string value)
    {
        var finding = PlatformFindings.RampFoot("p.foot", foot, least, 12);
        Assert.Contains(wrong, finding.Message, StringComparison.Ordinal);
        Assert.Contains(right, finding.Remedy, StringComparison.Ordinal);
        Assert.Equal(value, finding.Cure!.Value);
        Assert.Equal(CureAct.LeaveOut, PlatformFindings.RampFoot("p.ramps.start.foot", foot, 12, 12).Cure!.Act);
    }

    /// <summary>Of four entries that come to 30 mm on a platform 20 mm wide, one may be what the others leave; half of that is offered, and never more than is usual.</summary>
    [Theory]
    [InlineData(0.8, "0.4")]
    [InlineData(8, "1")]
    public void A_budget_wider_than_the_platform_names_its_largest_entry_and_what_it_may_be(double most, string value) =>
        Assert.Equal(("clearance.laying", value), PlatformFindings.AllowanceTooLarge("c", 30, "up", 20, "track laying", most, "clearance.laying").Cure is { } cure ? (cure.Key, cure.Value) : default);

    [Theory]
    [InlineData(5.0004, "5.001")]
    [InlineData(5.001, "5.001")]
    public void A_least_figure_that_is_offered_is_rounded_so_that_it_works(double least, string offered) =>
        Assert.Equal(offered, PlatformFindings.DeckTooNarrow("k", 4, least, "coping and back").Cure!.Value);

    [Theory]
    [InlineData(5.0016, "5.001")]
    [InlineData(5.001, "5.001")]
    public void A_greatest_figure_that_is_offered_is_rounded_so_that_it_works(double most, string offered) =>
        Assert.Equal(offered, PlatformFindings.CopingPart("k", "chamfer", 7, most, "is too large", ("leave it out", null)).Cure!.Value);
}
