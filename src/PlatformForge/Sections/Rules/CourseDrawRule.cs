using PlatformForge.Masonry;
using PlatformForge.Masonry.Finishes;
using PlatformForge.Platforms.Plans;
using PlatformForge.Solids.Bodies.Walls;
using PlatformForge.Units;

namespace PlatformForge.Sections.Rules;

/// <summary>
/// Whether bricks of low walls are drawn out by more than a bricklayer would make his beds, and which heights have whole courses at the stated gauge. What is
/// left over of a wall of few courses is shared among few.
/// </summary>
internal static class CourseDrawRule
{
    /// <summary>Share by which courses may be drawn out untold: beds of 17.5 mm in place of 10, in courses of 75 (common practice, no source).</summary>
    public const double Most = 0.1;

    // Heights are offered in steps of this, mm, upwards: a wall that is lower than its courses has one less.
    private const double Step = 0.01;

    /// <param name="plan">The platform.</param>
    /// <param name="course">Height of a course at the gauge, mm.</param>
    public static IEnumerable<Finding> Check(PlatformPlan plan, double course)
    {
        var spec = plan.Spec;
        if (Told(spec.Height, WallProfiles.Under(plan), course) is { } wall)
        {
            yield return FacingFindings.CoursesDrawn(spec.Key + ".height", "wall", wall);
        }

        if (!spec.IsIsland && spec is { Back.Retaining: { } retaining, Facing.Front: WallFinish.Brick }
            && Told(retaining.Height, retaining.Height - retaining.Coping, course) is { } over)
        {
            yield return FacingFindings.CoursesDrawn(spec.Key + ".back.retaining.height", "retaining wall", over);
        }
    }

    // What is to be told of a wall of a height in the file, whose courses lie in so much room.
    private static DrawnCourses? Told(double height, double high, double course)
    {
        double room = high - Coursing.Foot;
        int count = Coursing.Count(course, room);
        if (count == 0 || (room / (count * course)) - 1 <= Most)
        {
            return null;
        }

        double Whole(int courses) => Math.Ceiling(((height - room + (courses * course)) / Step) - Tolerances.Rounding) * Step;
        return new(count, (room / (count * course)) - 1, Math.Round(Whole(count), 2), Math.Round(Whole(count + 1), 2), height);
    }
}
