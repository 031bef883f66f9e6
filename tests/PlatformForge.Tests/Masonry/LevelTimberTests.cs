using PlatformForge.Masonry;
using PlatformForge.Masonry.Finishes;
using Xunit;

namespace PlatformForge.Tests.Masonry;

/// <summary>Planks and sleepers laid level, on walls of every length: that of one is known from outside, and none is longer.</summary>
public class LevelTimberTests
{
    // Sleepers of 8 ft 6 in by 10 in at 1:76.2, a nozzle of 0.4 and joints of 0.25 (from memory, no source).
    private const double Length = 2590.8 / 76.2, Width = 254 / 76.2, Joint = 0.25, Shortest = 0.8 + Joint, Stop = 0.05;

    // Places that are one but for their last digits, mm.
    private const double Last = 1e-6;

    public static TheoryData<double> Rooms() => [0.9, 16.5, 17.5, 18.6, 33, 34.02, 34.5, 35.2, 50, 51.2, 68.4, 100, 180, 237.9, 510];

    [Theory]
    [MemberData(nameof(Rooms))]
    public void None_is_longer_than_a_sleeper_and_none_shorter_than_prints(double room)
    {
        var (courses, pattern) = Laid(room);
        var pieces = courses.SelectMany(c => c).ToArray();
        Assert.Equal(5, courses.Length);
        Assert.True(pieces.Max() <= (1.03 * Length) + Last, $"{pieces.Max()}");
        Assert.True(pieces.Min() >= Math.Min(Shortest, room) - Last, $"{pieces.Min()}");
        Assert.All(courses, c => Assert.Equal(room, c.Sum(), Last));
        Assert.Equal(Math.Max(0, (pieces.Max() / Length) - 1), pattern.GreatestDraw, Last);
    }

    [Theory]
    [MemberData(nameof(Rooms))]
    public void Between_two_ends_all_are_whole_and_each_course_lies_half_of_one_over_the_next(double room)
    {
        var courses = Laid(room).Courses;
        double whole = courses.SelectMany(c => c.Skip(1).SkipLast(1)).DefaultIfEmpty(Length).Max();
        Assert.All(courses, c => Assert.True(c.Skip(1).SkipLast(1).All(p => Math.Abs(p - whole) < Last)));

        // A sleeper and a cut one, or more: a perpend in each pair of courses, none over another.
        Assert.All(courses.Zip(courses.Skip(1)), pair =>
        {
            double[] over = Perpends(pair.First), under = Perpends(pair.Second);
            Assert.True(room < (Length / 2) + Shortest || over.Length + under.Length > 0);
            Assert.True(over.All(o => under.All(u => Math.Abs(o - u) >= (whole / 2) - Last)));
        });
    }

    [Fact]
    public void On_a_section_of_twelve_foot_six_whole_sleepers_and_cut_ones_lie_in_turn()
    {
        // 50 mm at 1:76.2 are 12 ft 6 in: one sleeper of 8 ft 6 in and 4 ft of another, then half of one and 8 ft 3 in.
        var courses = Laid(50).Courses;
        Assert.All(courses, c => Assert.Equal(2, c.Length));
        Assert.Equal([Length, 50 - Length], courses[0].Order().Reverse(), (a, b) => Math.Abs(a - b) < Last);
        Assert.Equal([50 - (Length / 2), Length / 2], courses[1].Order().Reverse(), (a, b) => Math.Abs(a - b) < Last);
    }

    /// <summary>On a short end wall between two long ones no sleeper goes round both corners, whatever its length.</summary>
    [Theory]
    [InlineData(6)]
    [InlineData(14)]
    [InlineData(20)]
    [InlineData(33)]
    public void No_sleeper_goes_round_two_corners(double end)
    {
        double high = 4 * Width, far = 100 + end, along = far + 100;
        var wall = new FlatWall([new(0, 100, false, true, false), new(100, far, true, true, true), new(far, along, true, false, false)],
            [new(0, 0), new(along, 0)], [new(0, high), new(along, high)], [], false);
        var laying = new WallLaying(Joint, 0.26, high - Joint, Stop, Joint, 0.2) { Foot = 0 };
        var sleepers = new LevelTimberSpec(WallFinish.Sleepers, Width, Length, Shortest, laying).On(wall).Regions().Select(r => r.Outline).ToList();
        Assert.NotEmpty(sleepers);
        Assert.DoesNotContain(sleepers, s => s.Min(p => p.X) < 100 && s.Max(p => p.X) > far);
    }

    // Pieces of each course from the top, with their gaps, left to right; the room is what they fill.
    private static (double[][] Courses, IWallPattern Pattern) Laid(double room)
    {
        double along = room - Joint + (2 * Stop), high = 5 * Width;
        var wall = new FlatWall([new(0, along, false, false, false)], [new(0, 0), new(along, 0)], [new(0, high), new(along, high)], [], false);
        var laying = new WallLaying(Joint, 0.26, high - Joint, Stop, Joint, 0.2) { Foot = 0 };
        var pattern = new LevelTimberSpec(WallFinish.Sleepers, Width, Length, Shortest, laying).On(wall);
        double[][] courses =
            [.. pattern.Regions().Select(r => (Left: r.Outline.Min(p => p.X), Right: r.Outline.Max(p => p.X), Top: Math.Round(r.Outline.Max(p => p.Y), 6)))
            .GroupBy(r => r.Top).OrderByDescending(g => g.Key).Select(g => g.OrderBy(r => r.Left).Select(r => r.Right - r.Left + Joint).ToArray())];
        return (courses, pattern);
    }

    private static double[] Perpends(double[] pieces) => [.. Enumerable.Range(1, pieces.Length - 1).Select(i => pieces.Take(i).Sum())];
}
