using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Sections.Beds;
using PlatformForge.Sections.Forms;
using PlatformForge.Sections.Poses;
using PlatformForge.Solids.Bodies.Layers;

namespace PlatformForge.Sections.Cuts;

/// <summary>Which part of a platform's height profile a section takes in.</summary>
internal enum SectionShape
{
    Level,
    Ramp,

    /// <summary>Part of a ramp and part of the level deck: no one face lies flat.</summary>
    Mixed,
}

/// <summary>
/// How large a section between two chainages will be on the bed, from the corners of its plan alone: quick enough to
/// ask for every pair of candidates.
/// </summary>
internal sealed class SectionOutline
{
    private readonly FacetedPlan chart;
    private readonly PrintPose pose;
    private readonly PlatformPlan plan;
    private readonly TopSurface top;

    // Both edges of the platform at its stations, with the height of the walking surface there.
    private readonly Point3[] front, back;

    // A bank that prints with its section; null where there is none.
    private readonly PlanBank? bank;

    public SectionOutline(FacetedPlan chart, PrintPose pose)
    {
        (this.chart, this.pose, plan) = (chart, pose, chart.Plan);
        top = new(chart);
        front = Array.ConvertAll(chart.Stations, s => Corner(plan.CopingFront, s));
        back = Array.ConvertAll(chart.Stations, s => Corner(plan.Back, s));
        bank = plan.Bank is { IsApart: false } shell ? shell : null;
    }

    public SectionShape Shape(double from, double to)
    {
        var profile = plan.Profile;
        return from >= profile.StartHead && to <= profile.EndHead ? SectionShape.Level
            : to <= profile.StartHead || from >= profile.EndHead ? SectionShape.Ramp
            : SectionShape.Mixed;
    }

    /// <summary>Direction of the chord between the middles of both ends.</summary>
    public Point2 Along(double from, double to) => Middle(to) - Middle(from);

    /// <summary>Convex outline on the bed and height over it, mm.</summary>
    public (Point2[] Hull, double Height) Printed(double from, double to)
    {
        var turn = Turn(from, to);
        var corners = new List<Point2>();
        double low = double.PositiveInfinity, high = double.NegativeInfinity;
        Take(Corner(plan.CopingFront, from));
        Take(Corner(plan.Back, from));
        for (int i = chart.FacetAt(from) + 1; i < chart.Stations.Length && chart.Stations[i] < to; i++)
        {
            Take(front[i]);
            Take(back[i]);
        }

        Take(Corner(plan.CopingFront, to));
        Take(Corner(plan.Back, to));
        foreach (var toe in bank is null ? [] : chart.Chainages(from, to).Select(s => chart.On(bank.Foot, s))
            .Concat(bank.ReturnsIn(from, to).SelectMany(r => r.Toe)))
        {
            var a = turn.Apply(new Point3(toe.X, toe.Y, 0));
            corners.Add(new(a.X, a.Y));
        }

        return (ConvexRing.Hull(corners), high - low);

        void Take(Point3 p)
        {
            Point3 a = turn.Apply(p), b = turn.Apply(p with { Z = 0 });
            corners.Add(new(a.X, a.Y));
            if (a.X != b.X || a.Y != b.Y)
            {
                corners.Add(new(b.X, b.Y));
            }

            (low, high) = (Math.Min(low, Math.Min(a.Z, b.Z)), Math.Max(high, Math.Max(a.Z, b.Z)));
        }
    }

    /// <summary>Whether it lies on the bed at some turn and under the printer's height.</summary>
    public bool Fits(double from, double to, BedShape bed, double height)
    {
        var (hull, tall) = Printed(from, to);
        return tall <= height && bed.Fits(hull, Lean(tall));
    }

    /// <summary>Room in mm to keep for a deck with crossfall that lies on its own slope: its walls lean out by their height times the slope.</summary>
    public double Lean(double tall) => pose != PrintPose.Upright && plan.Spec.Deck.Crossfall > 0 ? tall / plan.Spec.Deck.Crossfall : 0;

    /// <summary>The turn that the plan alone lets expect: lying where the section is level or all ramp, otherwise upright.</summary>
    public RigidTransform Turn(double from, double to)
    {
        var along = Along(from, to);
        return pose == PrintPose.Upright || Shape(from, to) == SectionShape.Mixed ? PrintTurn.Upright(along)
            : PrintTurn.Lying(top.Along((from + to) / 2), along);
    }

    /// <summary>Planes of the walking surface between two chainages.</summary>
    public IEnumerable<HeightPlane> Surfaces(double from, double to)
    {
        double[] ends = [from, .. plan.Surface.Breaks.Where(s => s > from && s < to), to];
        return ends.Zip(ends.Skip(1), (a, b) => top.Along((a + b) / 2));
    }

    private Point3 Corner(PlanLine line, double chainage)
    {
        var p = chart.On(line, chainage);
        return new(p.X, p.Y, top.Along(chainage).At(p));
    }

    private Point2 Middle(double chainage) => (chart.On(plan.CopingFront, chainage) + chart.On(plan.Back, chainage)) * 0.5;
}
