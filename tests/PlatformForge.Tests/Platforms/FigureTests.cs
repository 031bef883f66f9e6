using PlatformForge.Masonry;
using PlatformForge.Platforms;
using PlatformForge.Platforms.Islands;
using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Rules.Findings;
using PlatformForge.Platforms.Specs;
using PlatformForge.Track;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Platforms;

/// <summary>Figures that findings offer, each worked out by hand: what is wrong, by how much, and what would be right.</summary>
public class FigureTests
{
    [Theory]
    [InlineData(-10, 1000, 100, "lay 110 mm more track")]
    [InlineData(1350, 1000, 100, "lay 450 mm more track")]
    public void Track_that_is_missing_is_what_lies_beyond_its_end_and_what_the_longest_vehicle_needs(double chainage, double length, double need,
        string told) =>
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
        Assert.Contains("Lengthen the platform by 80 mm, shorten the ramps to 190 mm together, or give a gradient of 1 in 7.916 or steeper", finding.Remedy,
            StringComparison.Ordinal);
        Assert.Equal((CureAct.Set, key, value), (finding.Cure!.Act, finding.Cure.Key, finding.Cure.Value));
    }

    [Fact]
    public void A_ramp_that_leaves_no_room_for_the_other_is_left_out() =>
        Assert.Equal((CureAct.LeaveOut, "p.ramps.end"), PlatformFindings.RampsTooLong("p.ramps", 190, 200, 190, 8).Cure is { } cure ? (cure.Act, cure.Key)
            : default);

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

    /// <summary>Of four entries that come to 30 mm on a platform 20 mm wide, one may be what the others leave; half of that is offered, and never more than is
    /// usual.</summary>
    [Theory]
    [InlineData(0.8, "0.4")]
    [InlineData(8, "1")]
    public void A_budget_wider_than_the_platform_names_its_largest_entry_and_what_it_may_be(double most, string value) =>
        Assert.Equal(("clearance.laying", value), PlatformFindings.AllowanceTooLarge("c", 30, "up", 20, "track laying", most, "clearance.laying").Cure
            is { } cure ? (cure.Key, cure.Value) : default);

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

    /// <summary>A height of 2 ft 6 in to 3 ft is published (see the finding): 10 to 12 mm at 4 mm to the foot. Heights that keep within it over two levels of
    /// rail.</summary>
    [Theory]
    [InlineData(11, 9.2, "A height of 11.8 mm keeps")] // rails 1.8 higher there: from 10 + 1.8
    [InlineData(11, 12.8, "A height of 10.2 mm keeps")] // 1.8 lower: to 12 − 1.8
    [InlineData(12, 9, "No height keeps")] // 3 mm are more than the 2 between
    public void A_height_over_two_levels_of_rail_keeps_within_what_is_published_over_both(double height, double second, string told)
    {
        var spec = Island with { Height = height };
        Assert.Contains(told, IslandFindings.Heights(spec, new(new(76.2), 8), second).Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void Heights_that_are_published_over_both_levels_are_noted_and_no_more() =>
        Assert.Equal(Severity.Note, IslandFindings.Heights(Island with { Height = 11 }, new(new(76.2), 8), 10.5).Severity);

    private static PlatformSpec Island =>
        new("island", new FaceSpec("up", Side.Left, 100, 500)) { OtherFace = new FaceSpec("down", Side.Right, double.NaN, double.NaN) };

    /// <summary>Piers 3.27 wide with panels as wide between them: 6.54, told in tenths so that it works.</summary>
    [Fact]
    public void Piers_too_close_are_told_twice_their_width()
    {
        Assert.Equal("6.6", PierFindings.TooClose("p", new() { Width = 3.27, Pitch = 5 }).Cure!.Value);
        var crowded = PierFindings.Crowded("p", 100, 104, 6.54, 1);
        Assert.Equal("106.6", crowded.Cure!.Value);
        Assert.Contains("Put it at 106.6 mm", crowded.Remedy, StringComparison.Ordinal);
    }

    /// <summary>A segmental arch rises by a sixth of its width, a semicircular one by half (any handbook of building): the width offered leaves a wall under
    /// it.</summary>
    [Theory]
    [InlineData(OpeningHead.Segmental, 6)]
    [InlineData(OpeningHead.Semicircular, 2)]
    public void An_arch_higher_than_its_opening_is_told_a_width_that_leaves_some_wall_under_it(OpeningHead head, int share)
    {
        var opening = new OpeningSpec { Head = head, Width = 40, Height = 6 };
        double width = double.Parse(OpeningFindings.TooWide("p", opening).Cure!.Value, System.Globalization.CultureInfo.InvariantCulture);
        Assert.InRange(width / share, 0.9 * 6, 0.96 * 6);
    }

    [Theory]
    [InlineData(0.051, "0.1 mm are clear")]
    [InlineData(0.049, "nothing is clear")]
    [InlineData(-0.049, "nothing is clear")]
    [InlineData(-0.051, "lies 0.1 mm over the edge")]
    public void What_would_be_told_as_no_distance_is_told_in_words(double clear, string told) =>
        Assert.Contains(told, PlatformFindings.Clear("seat", clear), StringComparison.Ordinal);

    [Fact]
    public void What_stands_too_near_the_edge_is_told_an_inset_or_how_much_deck_is_missing()
    {
        Assert.Contains("Widen the deck by 4 mm", PlatformFindings.ClearWidth("k", "seat", 20, 24, (0, false)).Remedy, StringComparison.Ordinal);
        Assert.Null(PlatformFindings.ClearWidth("k", "seat", 20, 24, (0, false)).Cure);
        var moved = PlatformFindings.ClearWidth("k", "seat", 20, 24, (3, true));
        Assert.StartsWith("An inset of 3 mm or more", moved.Remedy, StringComparison.Ordinal);
        Assert.Equal("3", moved.Cure!.Value);
    }

    [Fact]
    public void A_groove_that_leaves_too_little_under_it_is_refused_however_shallow()
    {
        // A coping 1.2 thick keeps 0.4: 0.8 may be taken out.
        Assert.DoesNotContain(
            PlatformPlanner.Plan(Bench.Straight(s => s with
            {
                WhiteLine = new() { GrooveDepth = 0.79 },
                Coping = s.Coping with { Thickness = 1.2 }
            })).Findings, f => f.Severity == Severity.Error);
        var wrong = PlatformPlanner.Plan(Bench.Straight(s => s with { WhiteLine = new() { GrooveDepth = 0.9 }, Coping = s.Coping with { Thickness = 1.2 } }));
        Assert.Equal("platform[0].line.groove_depth", Assert.Single(wrong.Findings, f => f.Severity == Severity.Error).Key);
    }

    /// <summary>Gaps in a fence from 204 to 796 mm whose holes need 2.4: what is wrong with each, in words.</summary>
    [Theory]
    [InlineData(500, 500.5, "is less than 2.4 mm long")]
    [InlineData(700, 900, "lies off the fence")]
    [InlineData(100, 300, "lies off the fence")]
    [InlineData(500, 450, "ends before it begins")]
    [InlineData(205, 250, "leaves less than 2.4 mm of fence before it")]
    public void A_gap_that_cannot_be_is_told_why(double from, double to, string told) =>
        Assert.Contains(told, FenceFindings.FenceGap("k", new(from, to), 204, 796, 2.4).Message, StringComparison.Ordinal);

    [Theory]
    [InlineData(0, false, false)]
    [InlineData(0.3, true, true)]
    [InlineData(0.3, false, false)]
    public void A_strip_that_stands_up_may_not_lie_where_bodies_pass_over(double rise, bool passing, bool isWrong)
    {
        var request = Bench.Straight(s => s with
        {
            Face = s.Face with { BodiesPassOver = passing },
            WhiteLine = new() { Form = LineForm.Strip, Rise = rise },
        });
        Assert.Equal(isWrong, PlatformPlanner.Check(request.Spec, Bench.Site, request.Chart, [Bench.Fleet]).Any(f => f.Code == "PF4152"));
    }

    /// <summary>Square to the track what is required is what is swept and the budget; of a style that keeps it in every direction what that asks for.</summary>
    [Fact]
    public void What_is_required_is_the_reach_and_the_budget()
    {
        var trace = new RequirementTrace([0, 1], [18, 19.5], 1.25, [0, 0], ["body", "body"], ["coach", "coach"]) { OtherTracks = ["", "down"] };
        Assert.Equal((19.25, 20.75), (trace.Required(0), trace.Required(1)));
        Assert.Equal(19.5, (trace with { Kept = [19.5, 21] }).Required(0));
        Assert.Equal((0, 1, -1, -1), (trace.IndexOf("coach"), trace.IndexOf("coach", "down"), trace.IndexOf("van"), trace.IndexOf("coach", "up")));
    }

    /// <summary>Planks are twelve feet long unless stated (common practice, no source), flags 900 by 600 mm (a designated size of BS 7263-1, from
    /// memory).</summary>
    [Theory]
    [InlineData(PavingKind.Planks, 12 * 304.8)]
    [InlineData(PavingKind.Flags, 900)]
    public void Pieces_of_paving_have_their_full_size_at_every_scale(PavingKind kind, double length) =>
        Assert.Equal(length, (PavingSpec.For(new(148)) with { Kind = kind }).Length * 148, 1e-6);
}
