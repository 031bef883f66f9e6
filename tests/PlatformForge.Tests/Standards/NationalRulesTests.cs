using PlatformForge.Clearance.Rules;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Standards;

public class NationalRulesTests
{
    /// <summary>Bane NOR: Ai = 1680 + Ki, Ay = 1680 + Ky.</summary>
    [Theory]
    [InlineData(180, 1905.0, 1855.0)]
    [InlineData(200, 1882.5, 1837.5)]
    [InlineData(300, 1815.0, 1785.0)]
    [InlineData(1000, 1720.5, 1711.5)]
    public void Norwegian_edges_are_the_published_ones(double radius, double inside, double outside)
    {
        Assert.Equal(inside, EuropeanRules.NorwegianEdge(radius, inside: true)!.Value, 1e-9);
        Assert.Equal(outside, EuropeanRules.NorwegianEdge(radius, inside: false)!.Value, 1e-9);
        Assert.Null(EuropeanRules.NorwegianEdge(179, inside: true));
        Assert.Equal(1680, EuropeanRules.NorwegianEdge(double.PositiveInfinity, inside: true));
    }

    /// <summary>915/76.2 = 12.008 and 1447.5/76.2 = 18.996 mm: the 12 mm and 19 mm of 4 mm scale practice.</summary>
    [Fact]
    public void A_platform_of_4_mm_practice_meets_British_rules_and_a_lower_nearer_one_is_told_both_figures()
    {
        var scale = new ModelScale(76.2);
        var good = new RuleSubject(scale, 16.5, 12, [new(500, 19, 0), new(600, 22, -1.0 / 760)])
        {
            Width = 62,
            RampGradient = 1.0 / 8,
            Crossfall = 1.0 / 80,
            Overhang = 4
        };
        Assert.Empty(NationalRules.Find("british")!.Hold(good));
        Assert.Empty(NationalRules.Find("british-traditional")!.Hold(good));
        var warnings = NationalRules.Find("british")!.Hold(good with { Height = 10, Edge = [new(500, 18, 0)], Width = 30 });
        Assert.Equal(["PF3050", "PF3051", "PF3052"], warnings.Select(w => w.Code));
        Assert.All(warnings, w => Assert.Equal(Severity.Warning, w.Severity));
        Assert.Contains("11.35", warnings[0].Message, StringComparison.Ordinal);
        Assert.Contains("19.00", warnings[1].Message, StringComparison.Ordinal);
        Assert.Contains("chainage 500", warnings[1].Message, StringComparison.Ordinal);
        Assert.Contains("32.8", warnings[2].Message, StringComparison.Ordinal);
    }

    /// <summary>Planning aid 2005, H0: A 20 mm, heights 11/8.7/6.3/4.4; NEM 103: E 7 mm at 700 mm for group C.</summary>
    [Fact]
    public void Continental_edges_are_widened_on_curves()
    {
        var subject = new RuleSubject(new(87), 16.5, 8.7, [new(0, 20, 0), new(400, 27, 1.0 / 700), new(800, 27, -1.0 / 700)]);
        Assert.Empty(NationalRules.Find("continental-c")!.Hold(subject));
        var near = NationalRules.Find("continental-c")!.Hold(subject with { Edge = [new(400, 26.5, 1.0 / 700)] });
        Assert.Contains("27.00", Assert.Single(near).Message, StringComparison.Ordinal);
        Assert.Equal("PF3050", Assert.Single(NationalRules.Find("continental-a")!.Hold(subject with { Height = 12 })).Code);
    }

    [Fact]
    public void Continental_tables_are_not_applied_to_a_scale_that_only_shares_the_gauge_and_say_so() =>
        Assert.Equal("PF3055", Assert.Single(NationalRules.Find("continental-c")!.Hold(new(new(76.2), 16.5, 12, [new(0, 10, 0)]))).Code);

    /// <summary>EBO § 13: 380 to 960 mm, objects 3.00 m from the centre. Netherlands: 760 mm, 1700 mm. Bane NOR TRV:03993: 1 in 40. All at 1:87.</summary>
    [Fact]
    public void What_stands_on_a_platform_its_taper_and_its_overhang_are_held_to_what_is_published()
    {
        var subject = new RuleSubject(new(87), 16.5, 8.7, [new(0, 20, 0), new(40, 20.9, 0), new(80, 20.9, 0)])
        {
            Overhang = 1,
            Standing = [new("seat", new(40, 20.9, 0), 14)]
        };
        Assert.Equal(34.9, subject.Standing[0].FromCentre, 1e-9);
        Assert.Empty(NationalRules.Find("german")!.Hold(subject));
        Assert.Equal("PF3058", Assert.Single(NationalRules.Find("german")!.Hold(subject with { Standing = [new("seat", new(40, 20.9, 0), 13)] })).Code);
        Assert.Equal("PF3050", Assert.Single(NationalRules.Find("german")!.Hold(subject with { Height = 4 })).Code);
        Assert.Empty(NationalRules.Find("dutch")!.Hold(subject));
        Assert.Equal("PF3051", Assert.Single(NationalRules.Find("dutch")!.Hold(subject with { Edge = [new(0, 19.4, 0)] })).Code);

        // 0.9 in 40 is 1 in 44; 1.1 in 40 is 1 in 36.
        Assert.DoesNotContain(NationalRules.Find("norwegian")!.Hold(subject), w => w.Code == "PF3056");
        Assert.Contains("1 in 36.4", NationalRules.Find("norwegian")!.Hold(subject with { Edge = [new(0, 20, 0), new(40, 21.1, 0)] })
            .Single(w => w.Code == "PF3056").Message, StringComparison.Ordinal);

        // 2000/87 = 22.99 clear and 1 ft, 3.50 mm, of overhang.
        Assert.Equal(["PF3057", "PF3060"], NationalRules.Find("british")!.Hold(subject with { Height = 10.5, Width = 40, Edge = [new(0, 20, 0)] })
            .Select(w => w.Code));

        // H0: half of BL1 is 24 mm; E is 7 mm at a radius of 700 mm for group C.
        Assert.DoesNotContain(NationalRules.Find("continental-c")!.Hold(subject with { Edge = [] }), w => w.Code == "PF3058");
        Assert.Contains("31.0", NationalRules.Find("continental-c")!.Hold(subject with { Edge = [], Standing = [new("roof", new(40, 27, 1.0 / 700), 3)] })
            .Single(w => w.Code == "PF3058").Message, StringComparison.Ordinal);
    }

    /// <summary>Degree of curve and radius of STANDARDS 2.6 and 4.2, chord of 100 ft: 5 degrees 1146.28 ft, 10 573.69, 45 130.66; the published table has whole
    /// feet.</summary>
    [Theory]
    [InlineData(5, 1146.28)]
    [InlineData(10, 573.69)]
    [InlineData(20, 287.94)]
    [InlineData(45, 130.66)]
    public void Degrees_of_curve_are_those_of_the_chord_definition(double degree, double radiusFt) =>
        // half the last digit printed
        Assert.InRange(degree, AmericanRules.DegreeOfCurve((radiusFt + 0.005) * 304.8), AmericanRules.DegreeOfCurve((radiusFt - 0.005) * 304.8));

    /// <summary>1 in 8 is the steepest: a ramp of 1 in 5 to a deck of 12 mm has to be 8·12 = 96 mm long. 2 ft 6 in to 3 ft are 10 to 12 mm at 1:76.2.</summary>
    [Fact]
    public void A_platform_of_old_British_practice_is_from_10_to_12_mm_high_and_its_ramps_not_steeper_than_1_in_8()
    {
        string Heights(double height) =>
            string.Join(' ', NationalRules.Find("british-traditional")!.Hold(new(new(76.2), 16.5, height, [new(500, 19, 0)])).Select(w => w.Code));
        Assert.Equal(("PF3050", "", "", "PF3050"), (Heights(9.9), Heights(10), Heights(12), Heights(12.1)));
        var warning = Assert.Single(NationalRules.Find("british-traditional")!.Hold(new(new(76.2), 16.5, 12, [new(500, 19, 0)]) { RampGradient = 1.0 / 5 }));
        Assert.Equal("PF3053", warning.Code);
        Assert.Contains("fall 1 in 5.0, steeper than the published 1 in 8", warning.Message, StringComparison.Ordinal);
        Assert.Contains("96 mm long", warning.Remedy, StringComparison.Ordinal);
    }

    /// <summary>
    /// A high platform of 48 in beside a curve of 10 degrees, 573.69 ft: 67 + 10·1 1/2 = 82 in. A low one of 8 in, 5/8 in more or less, asks for neither.
    /// </summary>
    [Theory]
    [InlineData(48, 82, 573.69, "")]
    [InlineData(48, 81, 573.69, "PF3051")]
    [InlineData(48, 66, 1e9, "PF3051 PF3051")]
    [InlineData(48, 67, 1e9, "")]
    [InlineData(8.6, 50, 573.69, "")]
    [InlineData(9, 50, 573.69, "PF3050")]
    [InlineData(7.4, 50, 573.69, "")]
    [InlineData(7, 50, 573.69, "PF3050")]
    public void American_platforms_keep_the_widths_and_heights_of_the_practice(double heightIn, double edgeIn, double radiusFt, string codes)
    {
        const double Inch = 25.4 / 87.1;
        var subject = new RuleSubject(new(87.1), 16.5, heightIn * Inch, [new(0, edgeIn * Inch, -1 / (radiusFt * 12 * Inch))]);
        Assert.Equal(codes, string.Join(' ', NationalRules.Find("american")!.Hold(subject).Select(w => w.Code)));
    }

    [Fact]
    public void Every_rule_names_its_source_or_says_that_it_is_from_memory()
    {
        Assert.Equal(NationalRules.All.Select(r => r.Name).Order(StringComparer.Ordinal), NationalRules.All.Select(r => r.Name));
        Assert.All(NationalRules.All, r => Assert.All(r.Sources, s => Assert.True(s.Source.Length > 8 && s.Clause.Length > 8)));
    }
}
