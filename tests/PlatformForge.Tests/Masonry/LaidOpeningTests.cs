using PlatformForge.Exports.Workshop;
using PlatformForge.Masonry;
using PlatformForge.Sections;
using PlatformForge.Sections.Forms;
using PlatformForge.Tests.Fixtures;
using PlatformForge.Tests.Sections;
using PlatformForge.Track;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Masonry;

/// <summary>What the report and the table tell of openings, against the meshes of the sections: seen from before the wall, place by place.</summary>
public class LaidOpeningTests
{
    // As near as tables are to be, mm.
    private const double Near = 0.05;

    // What lies deeper behind the wall's face than this is an opening's floor, or nothing: joints are shallower, mm.
    private const double Deep = 0.5;

    // Halvings of a mm between a place in an opening and one beside it: far finer than is asked.
    private const int Halvings = 16;

    public static TheoryData<Bond, WallFinish, double> Walls => new()
    {
        { Bond.English, WallFinish.Brick, 76.2 }, { Bond.Flemish, WallFinish.Brick, 76.2 }, { Bond.Stretcher, WallFinish.Brick, 43.5 },
        { Bond.EnglishGardenWall, WallFinish.Brick, 43.5 }, { Bond.English, WallFinish.Stone, 76.2 }, { Bond.English, WallFinish.Rubble, 76.2 },
    };

    [Theory]
    [MemberData(nameof(Walls))]
    public void The_table_tells_openings_as_a_ray_finds_them_in_the_mesh(Bond bond, WallFinish finish, double ratio)
    {
        var set = Made(bond, finish, new(ratio));
        var plan = set.Plan;
        var told = HoleReport.Of(set);
        Assert.True(told.Count > 12 && told.Count == plan.WallOpenings.Count, $"{told.Count} of {plan.WallOpenings.Count}");
        foreach (var section in set.Sections)
        {
            double near = plan.Panels(false).Reach[0], far = plan.Panels(true).Reach[0];
            var front = new SeenAlongY(section.Solid.Mesh, 1, far);
            var back = new SeenAlongY(section.Solid.Mesh, -1, near);
            foreach (var opening in told.Where(o => o.Section == section.Number))
            {
                bool Open(double x, double z) => opening.Face == "back" ? back.At(x, z) is not { } b || far - b.Y > Deep
                    : front.At(x, z) is not { } f || f.Y - near > Deep;
                double middle = opening.Sill + (opening.Height / 3);
                Assert.True(Open(opening.At, middle), $"{finish} {bond}: {opening}");
                double left = Edge(x => Open(x, middle), opening.At, -1), right = Edge(x => Open(x, middle), opening.At, 1);
                Assert.Equal(opening.At, (left + right) / 2, Near);
                Assert.Equal(opening.Width, right - left, Near);
                Assert.Equal(opening.Sill, Edge(z => Open(opening.At, z), middle, -1), Near);
                Assert.Equal(opening.Sill + opening.Height, Edge(z => Open(opening.At, z), middle, 1), Near);
            }
        }
    }

    /// <summary>Courses are a quarter higher than stated at most, so that one of their beds lies within five eighths of that; and 1 mm more for what would be
    /// left over the crown.</summary>
    [Theory]
    [InlineData(3)]
    [InlineData(3.8)]
    [InlineData(4.5)]
    public void An_arch_in_high_courses_of_stone_springs_near_to_what_is_asked(double course) => Assert.All(Enumerable.Range(1, 6), seed =>
    {
        var scale = new ModelScale(76.2);
        var refuge = OpeningSpec.For(scale) with { Sill = 2.5, Height = 7, Width = 6, Head = OpeningHead.Segmental, At = [230, 250] };
        var facing = FacingSpec.For(scale) with { Front = WallFinish.Stone, StoneCourse = course, Seed = seed, Openings = [refuge] };
        var plan = Workbench.Straight(90, Side.Left, s => s with { Walls = s.Walls with { FrontThickness = 2.4 }, Facing = facing });
        var laid = LaidHole.Of(plan, Workbench.Made(plan, Workbench.Printer, new()).Sections);
        Assert.Equal(2, laid.Count);
        Assert.All(laid, o => Assert.InRange(o.Height, 7 - (0.625 * course) - 1.1, 7 + (0.625 * course) + 1.1));
    });

    [Theory]
    [InlineData(Bond.English, 76.2)]
    [InlineData(Bond.Flemish, 43.5)]
    [InlineData(Bond.EnglishGardenWall, 43.5)]
    public void Openings_of_one_kind_are_of_one_width_but_for_what_bricks_are_drawn_out(Bond bond, double ratio)
    {
        var set = Made(bond, WallFinish.Brick, new(ratio));
        double draw = set.Sections.Max(s => s.Faced.Max(w => w.Draw));
        foreach (var kind in HoleReport.Of(set).GroupBy(o => (o.Kind, o.Face)))
        {
            Assert.InRange(kind.Max(o => o.Width) / kind.Min(o => o.Width), 1, 1 + draw + 1e-6);
        }
    }

    [Fact]
    public void What_was_asked_for_is_told_beside_what_is_laid_where_the_two_differ()
    {
        var set = Made(Bond.English, WallFinish.Brick, new(76.2));
        var table = WallPlaces.Table(set);
        int At(string key) => table.Columns.Select((c, i) => (c.Key, i)).First(c => c.Key == key).i;
        var weeps = table.Rows.Where(r => r[0].Words == "weep").ToList();
        Assert.True(weeps.Count > 3);
        double asked = 75 / 76.2;
        Assert.All(weeps, r => Assert.Equal(Math.Abs(r[At("width_mm")].Figure!.Value - asked) > Near, r[At("asked_width_mm")].Figure is not null));
        Assert.Contains(weeps, r => r[At("asked_at_mm")].Figure is { } at && Math.Abs(at - r[At("at_mm")].Figure!.Value) > Near);
    }

    [Fact]
    public void What_does_not_fit_between_whole_courses_is_told_with_the_places_that_do()
    {
        // Courses of stone are high: drawn to them, cables would come out in the refuges below.
        var scale = new ModelScale(76.2);
        var (refuge, cable) = (OpeningSpec.For(scale) with { Width = 4.86, Height = 4.9, Sill = 1.17, Head = OpeningHead.Flat, Pitch = 35.3 },
            OpeningSpec.For(scale) with { Kind = OpeningKind.Cable, Pitch = 19.76 });
        var facing = FacingSpec.For(scale) with { Front = WallFinish.Stone, Seed = 96, Openings = [refuge, cable] };
        var told = Warned(facing);
        var finding = Assert.Single(told.Findings, f => f.Code == "PF6082");
        Assert.EndsWith("facing.opening[1].at", finding.Cure!.Key, StringComparison.Ordinal);
        double[] places = [.. finding.Cure.Value.Trim('[', ']').Split(',').Select(p => double.Parse(p, System.Globalization.CultureInfo.InvariantCulture))];
        Assert.True(places.Length > 2);
        var cured = Warned(facing with { Openings = [refuge, cable with { At = places }] });
        Assert.DoesNotContain(cured.Findings, f => f.Code == "PF6082");
        Assert.Equal(places.Length, HoleReport.Of(cured.Value!).Count(o => o.Kind == "cable"));

        static Outcome<SectionSet> Warned(FacingSpec facing) =>
            SectionMaker.Make(Workbench.Straight(130, Side.Left, s => s with { Facing = facing }), Workbench.Printer, new());
    }

    // Where what is open ends, from a place in it on: by steps of a twentieth of a mm, then by halves.
    private static double Edge(Func<double, bool> open, double from, int way)
    {
        const double step = 0.05;
        double inside = from;
        while (open(inside + (way * step)))
        {
            inside += way * step;
        }

        double outside = inside + (way * step);
        for (int i = 0; i < Halvings; i++)
        {
            double half = (inside + outside) / 2;
            (inside, outside) = open(half) ? (half, outside) : (inside, half);
        }

        return inside;
    }

    private static SectionSet Made(Bond bond, WallFinish finish, ModelScale scale)
    {
        var open = OpeningSpec.For(scale);
        var facing = FacingSpec.For(scale) with
        {
            Bond = bond,
            Front = finish,
            Back = finish,
            Piers = PierSpec.For(scale) with { On = PierWalls.Front, Pitch = 70 },
            Openings =
            [
                open with { Width = 8, Height = 7, Sill = 3 },
                open with { Kind = OpeningKind.Weep, Pitch = 21, Width = 75 / scale.Ratio, Height = 75 / scale.Ratio },
                open with { Kind = OpeningKind.Cable, IsThrough = true, IsBack = true, Pitch = 40, Sill = 6 },
            ],
        };
        return Workbench.Made(Workbench.Straight(200, Side.Left, s => s with { Facing = facing }), Workbench.Printer, new());
    }
}
