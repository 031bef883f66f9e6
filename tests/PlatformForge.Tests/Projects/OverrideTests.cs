using PlatformForge.Projects.Overrides;
using Xunit;

namespace PlatformForge.Tests.Projects;

public class OverrideTests
{
    [Theory]
    [InlineData("platform[0].deck.thickness=2.25")]
    [InlineData("platform.halt.deck.thickness = 2.25")]
    [InlineData("platform.Halt.deck.thickness=2.25")]
    [InlineData("platform.deck.thickness=2.25")]
    [InlineData("platform[0].deck={ thickness = 2.25 }")]
    [InlineData("platform[0].deck.thickness=2.25 mm")]
    public void Any_value_can_be_set_by_number_by_name_or_where_there_is_only_one(string set) =>
        Assert.Equal(2.25, Samples.Sound(Samples.Small, set).Platforms[0].Deck.Thickness);

    [Fact]
    public void A_value_of_a_list_entry_with_blanks_in_its_name_is_set_by_hyphens()
    {
        var project = Samples.Sound(Samples.Pendlewick, "vehicle.long-coach.width=36", "track.alignment[2].length=600", "layout.name=Marrowby Cross");
        Assert.Equal(18, project.Vehicles[0].Parts[0].Outline.Max(p => p.Y));
        Assert.Equal("Marrowby Cross", project.Layout.Name);
        Assert.Equal(600, ((PlatformForge.Track.CurveSpec)project.Tracks[0].Elements[2]).Length);
    }

    [Fact]
    public void A_length_set_in_place_of_a_gradient_takes_it_away()
    {
        var ramp = Samples.Sound(Samples.Pendlewick, "platform[0].ramps.end.length=110").Platforms[0].EndRamp!;
        Assert.Equal((110.0, null), (ramp.Length, ramp.Gradient));
        var curve = (PlatformForge.Track.CurveSpec)Samples.Sound(Samples.Pendlewick, "track[0].alignment[2].angle=30").Tracks[0].Elements[2];
        Assert.Equal((null, Math.PI / 6), (curve.Length, curve.Angle));
    }

    [Theory]
    [InlineData("vehicle.long-coash.width=36", "PF1018", "Known: long-coach, suburban-coach, tender-engine, tank-engine, van.")]
    [InlineData("vehicle[9].width=36", "PF1018", "Known: long-coach")]
    [InlineData("layout.name.width=36", "PF1018", "Set layout.name itself.")]
    [InlineData("platform[0].deck.thicknes=2", "PF1006", "Did you mean thickness?")]
    [InlineData("platform[0].deck.thickness=-2", "PF1008", "Give a number from 0.2 to 50 mm.")]
    [InlineData("platform[0].deck.thickness=nan", "PF1008", "Give a number from 0.2 to 50 mm.")]
    [InlineData("platform[0].deck.thickness=thick", "PF1007", "Give a number from 0.2 to 50 mm of the model")]
    public void A_wrong_override_is_told_by_the_option_it_came_in(string set, string code, string remedy)
    {
        var finding = Assert.Single(Samples.Read(Samples.Pendlewick, set).Findings);
        Assert.Equal((code, "--set " + set, 0), (finding.Code, finding.File, finding.Line));
        Assert.StartsWith(remedy, finding.Remedy, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("=2")]
    [InlineData("platform[0].deck.thickness")]
    [InlineData("platform[0].deck.thickness=")]
    [InlineData("platform[x].deck=2")]
    [InlineData("platform[0.deck=2")]
    [InlineData("platform[0]x.deck=2")]
    [InlineData("a..b=2")]
    [InlineData("a.b.c.d.e.f.g.h.i=2")]
    public void What_is_no_key_and_value_is_refused(string set) =>
        Assert.Equal("PF1017", Assert.Single(Override.Parse(set).Findings).Code);

    [Fact]
    public void Values_are_parted_by_commas_outside_quotes_and_brackets()
    {
        Assert.Equal(["80", "96", "120"], Variation.Parse("platform[0].ramps.end.length=80, 96,120").Value!.Values);
        Assert.Equal(["[180, 180]", "[220, 220]"], Variation.Parse("printer.bed=[180, 180],[220, 220]").Value!.Values);
        Assert.Equal(["\"a,b\"", "c"], Variation.Parse("layout.name=\"a,b\",c").Value!.Values);
        Assert.Equal("PF1017", Assert.Single(Variation.Parse("layout.name=1,,2").Findings).Code);
    }

    [Fact]
    public void Every_combination_is_tried_once_and_their_number_is_bounded()
    {
        var designs = Variation.Combinations([new("a", ["1", "2"]), new("b", ["3", "4", "5"])]).Value!;
        Assert.Equal(["a=1 b=3", "a=1 b=4", "a=1 b=5", "a=2 b=3", "a=2 b=4", "a=2 b=5"],
            designs.Select(d => string.Join(' ', d.Select(o => $"{o.Key}={o.Value}"))));
        string[] many = [.. Enumerable.Range(0, 40).Select(i => $"{i}")];
        var refused =
            Assert.Single(Variation.Combinations([new("a", many), new("b", many), new("c", many), new("d", many), new("e", many), new("f", many),
                new("g", many)]).Findings);
        Assert.Equal("PF1019", refused.Code);
    }

    [Fact]
    public void A_number_that_the_list_does_not_go_to_is_told_with_what_the_list_holds()
    {
        var finding = Assert.Single(Samples.Read(Samples.Small, "platform[3].height=5").Findings);
        Assert.Equal(("PF1018", "platform[3].height"), (finding.Code, finding.Key));
        Assert.Contains("halt", finding.Remedy, StringComparison.Ordinal);
    }
}
