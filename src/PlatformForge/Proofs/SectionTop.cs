using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Sections.Forms;

namespace PlatformForge.Proofs;

/// <summary>
/// The top of a section as it can be touched with a rule: its ends as they are printed, and lines and places on its own slope, in the layout frame, mm.
/// </summary>
internal sealed class SectionTop
{
    private readonly PlatformPlan plan;

    public SectionTop(SectionSet set, PlatformSection section)
    {
        plan = set.Plan;
        Section = section;
        (From, To) = section.Trimmed(set.Joint.EndTrim);
    }

    public PlatformSection Section { get; }

    /// <summary>Chainage of its lower end face, what is trimmed off taken away.</summary>
    public double From { get; }

    /// <summary>Chainage of its upper end face.</summary>
    public double To { get; }

    /// <summary>Whether the section holds a place.</summary>
    public bool Holds(PlanPlace place) => place.Chainage >= Section.From && place.Chainage < Section.To;

    /// <summary>A place on the walking surface.</summary>
    public Point3 At(double chainage, double reach)
    {
        var p = plan.ToLayout(chainage, reach);
        return new(p.X, p.Y, plan.Surface.At(Math.Clamp(chainage, From, To) is var s && s < To ? s : (From + To) / 2).At(p));
    }

    /// <summary>A line of the plan on the walking surface, between two chainages of the section.</summary>
    public Point3[] Line(PlanLine line, double from, double to) =>
        [At(from, line.At(from)), .. line.Stations.Where(s => s > from && s < to).Select(s => At(s, line.At(s))), At(to, line.At(to))];

    public Point3[] Line(PlanLine line) => Line(line, From, To);

    /// <summary>Shortest way from a place to the first face's coping edge.</summary>
    public double FromEdge(Point3 p) => ToLine(p, Line(plan.CopingFront));

    /// <summary>Square distance from a place to the edge of an end face.</summary>
    public double FromEnd(Point3 p, double end)
    {
        Point3 a = At(end, plan.CopingFront.At(end)), b = At(end, plan.Back.At(end));
        return Point3.Cross(b - a, p - a).Length / (b - a).Length;
    }

    /// <summary>Shortest way from a point to a line of straight pieces.</summary>
    public static double ToLine(Point3 p, IReadOnlyList<Point3> line)
    {
        double least = double.PositiveInfinity;
        for (int i = 0; i + 1 < line.Count; i++)
        {
            var along = line[i + 1] - line[i];
            double share = Math.Clamp(Point3.Dot(p - line[i], along) / Point3.Dot(along, along), 0, 1);
            least = Math.Min(least, (p - line[i] - (along * share)).Length);
        }

        return least;
    }

    /// <summary>The section's tops in order.</summary>
    public static IReadOnlyList<SectionTop> Of(SectionSet set) => [.. set.Sections.Select(s => new SectionTop(set, s))];
}
