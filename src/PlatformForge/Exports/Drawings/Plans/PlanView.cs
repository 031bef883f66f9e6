using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;

namespace PlatformForge.Exports.Drawings.Plans;

/// <summary>Leads from the layout frame to a sheet: turned so that the platform lies level, shrunk to a round scale, y down.</summary>
internal sealed class PlanView
{
    // Reductions in use on drawings (ISO 5455 lists the powers of 1, 2 and 5; the steps between fill paper better).
    private static readonly double[] Reductions = [0.5, 1, 1.25, 1.5, 2, 2.5, 3, 4, 5, 6, 7.5, 10, 12.5, 15, 20, 25, 30, 40, 50, 75, 100];

    private readonly Point2 along;
    private Point2 origin;

    private PlanView(Point2 along, double reduction)
    {
        this.along = along;
        Reduction = reduction;
    }

    /// <summary>How many mm of the layout one mm of paper shows.</summary>
    public double Reduction { get; }

    /// <summary>How the scale is said.</summary>
    public string Scale => Reduction >= 1 ? FormattableString.Invariant($"1:{Figures.Short(Reduction)}")
        : FormattableString.Invariant($"{Figures.Short(1 / Reduction)}:1");

    /// <summary>Height in mm of paper that the points take.</summary>
    public double Height { get; private set; }

    /// <summary>A view of points in which a direction of the layout runs to the right, in a width of paper, its box centred.</summary>
    public static PlanView Of(IReadOnlyList<Point2> points, Point2 direction, double left, double top, double width)
    {
        var unit = direction * (1 / direction.Length);
        var turned = points.Select(p => Turn(p, unit)).ToArray();
        double x0 = turned.Min(p => p.X), x1 = turned.Max(p => p.X), y0 = turned.Min(p => p.Y), y1 = turned.Max(p => p.Y);
        double reduction = Array.Find(Reductions, r => (x1 - x0) / r <= width);
        var view = new PlanView(unit, reduction > 0 ? reduction : Math.Ceiling((x1 - x0) / width));
        view.Height = (y1 - y0) / view.Reduction;
        view.origin = new(left + ((width - ((x1 - x0) / view.Reduction)) / 2) - (x0 / view.Reduction), top - (y0 / view.Reduction));
        return view;
    }

    /// <summary>Direction from the start to the end of a platform.</summary>
    public static Point2 ChordOf(PlatformPlan plan) =>
        plan.ToLayout(plan.Spec.Face.To, plan.CopingFront.At(plan.Spec.Face.To)) - plan.ToLayout(plan.Spec.Face.From, plan.CopingFront.At(plan.Spec.Face.From));

    public Point2 Of(Point2 p) => origin + (Turn(p, along) * (1 / Reduction));

    /// <summary>Angle on the sheet in degrees, clockwise, of a direction in the layout.</summary>
    public double AngleOf(Point2 direction)
    {
        var turned = Turn(direction, along);
        return Math.Atan2(turned.Y, turned.X) * 180 / Math.PI;
    }

    private static Point2 Turn(Point2 p, Point2 along) => new(Point2.Dot(p, along), -Point2.Cross(along, p));
}
