using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Rules.Findings;
using PlatformForge.Platforms.Specs;
using PlatformForge.Units;

namespace PlatformForge.Platforms.Rules;

/// <summary>
/// Whether a bank that prints with its sections lies steeply enough on the bed, where the deck does, facet by facet: beside a ramp its face, whose foot draws
/// in, lies a little flatter to the deck than it falls square to the edge, and on a curve a ramp falls towards the back as well.
/// </summary>
internal static class BankAngleRule
{
    /// <summary>Least angle between a bank's face and the deck, degrees (common rule for prints without supports, no source).</summary>
    public const double LeastAngle = 45;

    // What facets may be off it, degrees: far less than any printer tells apart.
    private const double Slack = 0.02;

    // Slopes are offered in steps of this, as n of 1 in n; steeper than the last is no bank.
    private const double Step = 0.01, Steepest = 0.2;

    public static void Check(PlatformPlan plan, List<Finding> findings)
    {
        if (Flattest(plan) is { } slope)
        {
            findings.Add(BankFindings.TooFlat(plan.Spec.Key + ".back.slope", plan.Spec.Back.Slope, slope, Least(plan, plan.Bank!)));
        }
    }

    /// <summary>A platform whose bank has no stated slope, with one that prints; null where it has one that does.</summary>
    public static PlatformSpec? Steepened(PlatformPlan plan) =>
        !plan.Spec.Back.StatesSlope && Flattest(plan) is { } slope ? Steeper(plan.Spec, slope) : null;

    private static PlatformSpec Steeper(PlatformSpec spec, double slope) => spec with { Back = spec.Back with { Slope = slope, IsSteepened = true } };

    // The flattest slope under a plan's own that prints; null where that does.
    private static double? Flattest(PlatformPlan plan)
    {
        if (plan.Bank is not { IsApart: false } bank || Least(plan, bank) >= LeastAngle - Slack)
        {
            return null;
        }

        int steps = (int)Math.Ceiling((plan.Spec.Back.Slope / Step) - 1);
        while (steps * Step > Steepest && Least(plan, PlanBank.Of(plan with { Spec = Sloped(plan.Spec, Rounded(steps)) })!) < LeastAngle - Slack)
        {
            steps--;
        }

        return Rounded(steps);
    }

    private static double Rounded(int steps) => Math.Round(steps * Step, 2);

    private static PlatformSpec Sloped(PlatformSpec spec, double slope) => spec with { Back = spec.Back with { Slope = slope } };

    /// <summary>Least angle between a bank's face and the deck that it falls from, degrees.</summary>
    public static double Least(PlatformPlan plan, PlanBank bank)
    {
        double least = 90;
        for (int i = 0; i + 1 < plan.Stations.Length; i++)
        {
            var deck = plan.Surface.At((plan.Stations[i] + plan.Stations[i + 1]) / 2);
            Point3 top0 = Top(i), top1 = Top(i + 1), foot0 = Foot(i), foot1 = Foot(i + 1);
            least = Math.Min(least, Math.Min(Angle(deck, top0, top1, foot1), Angle(deck, top0, foot1, foot0)));

            Point3 Top(int at) => plan.ToLayout(plan.Stations[at], bank.Edge.Reach[at]) is var p ? new(p.X, p.Y, deck.At(p)) : default;
            Point3 Foot(int at) => plan.ToLayout(plan.Stations[at], bank.Foot.Reach[at]) is var p ? new(p.X, p.Y, bank.Ground) : default;
        }

        return least;
    }

    // Between a deck's plane and that of three points, degrees; upright where they lie in line.
    private static double Angle(HeightPlane deck, Point3 a, Point3 b, Point3 c)
    {
        var normal = Point3.Cross(b - a, c - a);
        Point3 up = new(-deck.X, -deck.Y, 1);
        double size = normal.Length * up.Length;
        return size > Tolerances.Rounding ? Math.Acos(Math.Clamp(Math.Abs(Point3.Dot(normal, up)) / size, 0, 1)) * 180 / Math.PI : 90;
    }
}
