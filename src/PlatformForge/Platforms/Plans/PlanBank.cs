using PlatformForge.Platforms.Specs;

namespace PlatformForge.Platforms.Plans;

/// <summary>
/// A bank behind a platform: from the deck's back edge its face falls evenly to the line at which it meets the ground, whose reach follows the height of the
/// deck, so that it draws in beside ramps. It is a shell, as thick everywhere, measured level, as the back wall would be.
/// </summary>
/// <param name="Slope">It falls 1 in this, square to the deck's edge.</param>
/// <param name="Ground">Height of the ground at its foot over the baseboard, mm.</param>
/// <param name="Thickness">Thickness of the shell, level, mm.</param>
/// <param name="Edge">The deck's back edge.</param>
/// <param name="Foot">Where it meets the ground.</param>
public sealed record PlanBank(double Slope, double Ground, double Thickness, PlanLine Edge, PlanLine Foot)
{
    /// <summary>Whether it is a print of its own, solid, behind the wall: its edge lies behind the deck's then by the air between.</summary>
    public bool IsApart { get; init; }

    /// <summary>Its returns round the platform's ends.</summary>
    public IReadOnlyList<BankReturn> Returns { get; init; } = [];

    /// <summary>Whether it turns round an end and prints with its section, which then reaches farther along the track than the platform's edge.</summary>
    public bool IsTurned => !IsApart && Returns.Count > 0;

    /// <summary>Those at the ends that a stretch takes in.</summary>
    public IEnumerable<BankReturn> ReturnsIn(double from, double to) =>
        Returns.Where(r => r.IsAtEnd ? to >= Edge.Stations[^1] : from <= Edge.Stations[0]);

    /// <summary>How far below its face, plumb, the shell's inner side lies, mm.</summary>
    public double Depth => Thickness / Slope;

    /// <summary>The bank of a platform with its walking surface; null where its back is another.</summary>
    public static PlanBank? Of(PlatformPlan plan)
    {
        var back = plan.Spec.Back;
        if (back.Kind != BackKind.Bank || plan.Spec.IsIsland)
        {
            return null;
        }

        var edge = back.Apart ? plan.Back.Shifted(back.Fit) : plan.Back;
        double[] foot = [.. edge.Stations.Zip(edge.Reach, (s, t) => t + Math.Max(0, back.Slope * (plan.TopAt(s, t) - back.Ground)))];
        var bank = new PlanBank(back.Slope, back.Ground, plan.Spec.Walls.BackThickness, edge, new(edge.Stations, foot)) { IsApart = back.Apart };
        return back.Returns == BankReturns.None ? bank : bank with { Returns = BankReturn.Of(plan, bank) };
    }
}
