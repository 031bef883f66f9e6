using PlatformForge.Units;

namespace PlatformForge.Masonry.Finishes;

/// <summary>
/// Whole courses between the foot of a wall and its coping. A bricklayer marks them on a gauge rod and shares what is left over among the beds, so that none is
/// split (common practice, no source); courses are drawn out here, never pressed.
/// </summary>
public static class Coursing
{
    /// <summary>Ground left under the lowest course, mm: far more than numbers of files, far less than a line of plastic.</summary>
    public const double Foot = 0.05;

    /// <summary>Height of even courses of which whole ones fill a wall, mm: the stated one, or more by less than one in so many as there are.</summary>
    /// <param name="course">The stated height with its bed, mm.</param>
    /// <param name="room">Height from the ground under the lowest course to the coping, mm; in a wall lower than a course that stays as it is.</param>
    public static double Even(double course, double room) => Count(course, room) is var count && count > 0 ? room / count : course;

    /// <summary>How many of them there are.</summary>
    public static int Count(double course, double room) => room > 0 ? (int)Math.Floor((room / course) + Tolerances.Rounding) : 0;

    /// <summary>Heights of courses that differ, from the coping down, mm. What is left over is a course itself where it is as high as the lowest may be,
    /// else it is shared among them.</summary>
    /// <param name="height">Height of a course by its number.</param>
    /// <param name="least">Height of the lowest that there may be.</param>
    /// <param name="room">Height that they fill; none do in a wall lower than that.</param>
    public static IReadOnlyList<double> Varied(Func<int, double> height, double least, double room)
    {
        ArgumentNullException.ThrowIfNull(height);
        var courses = new List<double>();
        double sum = 0;
        for (double next = height(0); sum + next <= room + Tolerances.Rounding; next = height(courses.Count))
        {
            courses.Add(next);
            sum += next;
        }

        if (room - sum >= least)
        {
            courses.Add(room - sum);
            return courses;
        }

        return [.. courses.Select(c => c * room / sum)];
    }
}
