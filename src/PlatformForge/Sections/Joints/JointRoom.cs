using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Sections.Forms;
using PlatformForge.Solids.Bodies.Layers;
using PlatformForge.Units;

namespace PlatformForge.Sections.Joints;

/// <summary>
/// How deep a joint goes into a section, and how much room a section has. Without the room a boss reaches out of the section's other end,
/// or into what the joint there brings.
/// </summary>
internal static class JointRoom
{
    /// <summary>Room that is just enough is enough, however its figure was rounded, mm; far below the plan grid.</summary>
    private const double Rounding = Tolerances.Rounding;

    public static bool IsEnough(double room, double needed) => room >= needed - Rounding;

    /// <summary>Depth in mm from a cut to the far side of its end wall and bosses.</summary>
    /// <param name="joint">The joint.</param>
    /// <param name="printer">Its least wall stands behind a bore.</param>
    /// <param name="dowels">False at a cut that no dowel crosses.</param>
    public static double Depth(JointSpec joint, PrinterSpec printer, bool dowels)
    {
        double bore = dowels && joint.Kind != JointKind.None ? joint.BoreDepth + printer.LeastWall : 0;
        return joint.EndTrim + Math.Max(joint.EndWall, bore);
    }

    /// <summary>
    /// Least length in mm of a section between two chainages, along the chainage (end walls) and square to its starting cut (bosses): on the
    /// inside of a curve it is shorter than the chainage tells. What is square to the other cut counts no more in this direction.
    /// </summary>
    public static double Between(FacetedPlan chart, double from, double to)
    {
        var forward = chart.Forward(from);
        double Along(PlanLine line) => Point2.Dot(chart.On(line, to) - chart.CrossLine(from).Origin, forward);
        return Math.Min(to - from, Math.Min(Along(chart.Plan.WallFace), Along(chart.Plan.Outer)));
    }
}
