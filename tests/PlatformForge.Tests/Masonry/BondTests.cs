using PlatformForge.Masonry;
using PlatformForge.Masonry.Finishes;
using Xunit;

namespace PlatformForge.Tests.Masonry;

/// <summary>Courses of bonds, in quarters of a brick, against what the trade says of them (course rules of glossaries of brickwork; see
/// docs/masonry.md).</summary>
public class BondTests
{
    public static TheoryData<Bond, bool> Walls() => new()
    {
        { Bond.English, false }, { Bond.English, true }, { Bond.Flemish, false }, { Bond.Flemish, true },
        { Bond.Stretcher, false }, { Bond.Stretcher, true }, { Bond.EnglishGardenWall, false }, { Bond.EnglishGardenWall, true },
    };

    [Theory]
    [MemberData(nameof(Walls))]
    public void Courses_fill_a_wall_of_any_length_and_no_perpend_stands_over_another(Bond bond, bool isReturn)
    {
        for (int long_ = 6; long_ <= 90; long_++)
        {
            int halves = BondCourses.Halves(bond, long_, 1);
            for (int course = -5; course < 12; course++)
            {
                var (upper, lower) = (Course(bond, halves, course, isReturn), Course(bond, halves, course + 1, isReturn));
                Assert.Equal(2 * halves, upper.Sum());
                Assert.All(upper, b => Assert.InRange(b, 1, 4));
                Assert.Empty(Perpends(upper).Intersect(Perpends(lower)));
            }
        }
    }

    [Theory]
    [InlineData(Bond.English)]
    [InlineData(Bond.Flemish)]
    [InlineData(Bond.Stretcher)]
    public void Perpends_of_every_second_course_stand_over_one_another(Bond bond) =>
        Assert.All(Enumerable.Range(6, 60), halves => Assert.Equal(Course(bond, halves, 0), Course(bond, halves, 2)));

    [Fact]
    public void English_bond_has_whole_courses_of_headers_and_of_stretchers_with_a_closer_after_the_quoin_header()
    {
        Assert.Equal([2, 1, 2, 2, 2, 2, 2, 2, 2, 1, 2], Course(Bond.English, 10, 0));
        Assert.Equal([4, 4, 4, 4, 4], Course(Bond.English, 10, 1));
    }

    [Fact]
    public void Flemish_bond_has_headers_over_the_middles_of_the_stretchers_below()
    {
        Assert.Equal([2, 1, 4, 2, 4, 2, 4, 1, 2], Course(Bond.Flemish, 11, 0));
        Assert.Equal([4, 2, 4, 2, 4, 2, 4], Course(Bond.Flemish, 11, 1));
        Assert.All(Enumerable.Range(8, 60), halves =>
        {
            var middles = Middles(Course(Bond.Flemish, halves, 1), 4).Concat(Middles(Course(Bond.Flemish, halves, 1), 2)).ToHashSet();
            var headers = Middles(Course(Bond.Flemish, halves, 0), 2).Skip(1).SkipLast(1);
            Assert.True(headers.Count(middles.Contains) >= headers.Count() - 2); // what is left over stands beside one header
        });
    }

    [Fact]
    public void Stretcher_bond_is_shifted_by_half_a_brick()
    {
        Assert.Equal([2, 4, 4, 4, 2], Course(Bond.Stretcher, 8, 0));
        Assert.Equal([4, 4, 4, 4], Course(Bond.Stretcher, 8, 1));
    }

    [Theory]
    [InlineData(3)]
    [InlineData(5)]
    public void English_garden_wall_bond_has_a_course_of_headers_to_several_of_stretchers(int stretchers)
    {
        bool[] headers = [.. Enumerable.Range(-12, 24).Select(c => BondCourses.Of(Bond.EnglishGardenWall, stretchers, 12, c, false).Count(b => b == 2) > 3)];
        for (int i = 0; i + stretchers + 1 < headers.Length; i++)
        {
            Assert.Equal(headers[i], headers[i + stretchers + 1]);
            Assert.Single(headers.Skip(i).Take(stretchers + 1), h => h);
        }
    }

    [Fact]
    public void A_quoin_shows_a_header_on_one_wall_and_a_stretcher_on_its_return()
    {
        foreach (var bond in Enum.GetValues<Bond>().Where(b => b != Bond.EnglishGardenWall))
        {
            for (int course = 0; course < 4; course++)
            {
                int[] ends = [Course(bond, 14, course)[0], Course(bond, 14, course, isReturn: true)[0]];
                Assert.Equal([2, 4], ends.Order());
            }
        }

        // There the header course's quoin is three quarters long on the return.
        Assert.Equal((2, 3), (Course(Bond.EnglishGardenWall, 14, 0)[0], Course(Bond.EnglishGardenWall, 14, 0, isReturn: true)[0]));
    }

    [Fact]
    public void Modules_are_those_of_published_brickwork()
    {
        // 225 by 75 mm, 4 courses to 300 mm (BS EN 771 work size with joints of 10 mm); 1:76.2 gives 2.9528, 1.4764 and 0.9843 mm.
        var metric = BrickModule.Of(BrickGauge.Metric, new(76.2));
        Assert.Equal((2.9528, 1.4764, 0.9843), (Math.Round(metric.Stretcher, 4), Math.Round(metric.Header, 4), Math.Round(metric.Course, 4)));
        Assert.Equal(300 / 76.2, 4 * metric.Course, 1e-12);

        // Four courses to a foot (from memory): exactly 1 mm each at 4 mm to the foot.
        Assert.Equal(1, BrickModule.Of(BrickGauge.Imperial, new(76.2)).Course, 1e-12);
    }

    [Fact]
    public void An_even_number_of_stretcher_courses_is_refused_with_one_that_is_taken()
    {
        var fault = FacingSpec.Keys.Checks.Select(c => c(new FacingSpec { StretcherCourses = 4 },
            "platform[0].facing")).OfType<Units.Specs.SpecFault>().Single();
        Assert.Contains("5", fault.Remedy, StringComparison.Ordinal);
        Assert.DoesNotContain(FacingSpec.Keys.Checks, c => c(new FacingSpec { StretcherCourses = 5 }, "platform[0].facing") is not null);
    }

    private static IReadOnlyList<int> Course(Bond bond, int halves, int course, bool isReturn = false) => BondCourses.Of(bond, 3, halves, course, isReturn);

    private static int[] Perpends(IReadOnlyList<int> bricks)
    {
        int at = 0;
        return bricks.SkipLast(1).Select(b => at += b).ToArray();
    }

    private static double[] Middles(IReadOnlyList<int> bricks, int length)
    {
        int at = 0;
        return bricks.Select(b => (At: at += b, Long: b)).Where(b => b.Long == length).Select(b => b.At - (b.Long / 2.0)).ToArray();
    }
}
