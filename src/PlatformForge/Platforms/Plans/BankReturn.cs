using PlatformForge.Geometry;
using PlatformForge.Platforms.Specs;

namespace PlatformForge.Platforms.Plans;

/// <summary>
/// The return of a bank: from the deck's back corner a quarter of a cone falls as the bank does, from square behind the corner round to the line of the back
/// edge drawn on beyond the end. Its facets are planes through the corner's top and chords of the arc at its foot, so that each is a little steeper than the
/// bank and none flatter.
/// </summary>
/// <param name="IsAtEnd">Whether it is at the higher chainage.</param>
/// <param name="Corner">The corner in the layout.</param>
/// <param name="Top">Height of its top over the baseboard, mm.</param>
/// <param name="Toe">Where it meets the ground, from the bank's foot round.</param>
public sealed record BankReturn(bool IsAtEnd, Point2 Corner, double Top, IReadOnlyList<Point2> Toe)
{
    // A quarter in so many facets: the longest on a usual bank is 4 mm long and lies 0.1 mm inside its arc.
    private const int Facets = 8;

    /// <summary>Share of the radius at which the middle of a chord lies.</summary>
    public static double ChordDepth => Math.Cos(Math.PI / (4 * Facets));

    /// <summary>Radius of the arc, mm.</summary>
    public double Radius => (Toe[0] - Corner).Length;

    /// <summary>Those that are asked for at ends where a bank can turn: without a ramp, and square.</summary>
    /// <param name="plan">The platform.</param>
    /// <param name="bank">Its bank.</param>
    internal static IReadOnlyList<BankReturn> Of(PlatformPlan plan, PlanBank bank) =>
        [.. Enumerable.Range(0, 2).Select(i => i > 0).Where(end => IsAsked(plan.Spec.Back.Returns, end) && CanTurn(plan.Spec, end))
            .Select(end => Turned(plan, bank, end))];

    /// <summary>Whether one is asked for at an end.</summary>
    internal static bool IsAsked(BankReturns asked, bool atEnd) => asked == BankReturns.Both || asked == (atEnd ? BankReturns.End : BankReturns.Start);

    /// <summary>Whether a bank can turn round an end.</summary>
    internal static bool CanTurn(PlatformSpec spec, bool atEnd) =>
        (atEnd ? spec.EndRamp : spec.StartRamp) is null && (atEnd ? spec.Skew.End : spec.Skew.Start) == 0;

    private static BankReturn Turned(PlatformPlan plan, PlanBank bank, bool atEnd)
    {
        int last = atEnd ? plan.Stations.Length - 1 : 0, before = atEnd ? last - 1 : 1;
        Point2 corner = plan.ToLayout(plan.Stations[last], bank.Edge.Reach[last]), foot = plan.ToLayout(plan.Stations[last], bank.Foot.Reach[last]);
        Point2 behind = foot - corner, beyond = behind.Left;
        if (Point2.Dot(beyond, corner - plan.ToLayout(plan.Stations[before], bank.Edge.Reach[before])) < 0)
        {
            beyond *= -1;
        }

        return new(atEnd, corner, plan.TopAt(plan.Stations[last], bank.Edge.Reach[last]), [.. Enumerable.Range(0, Facets + 1)
            .Select(i => i == 0 ? foot : i * Math.PI / (2 * Facets) is var turn ? corner + (behind * Math.Cos(turn)) + (beyond * Math.Sin(turn)) : default)]);
    }
}
