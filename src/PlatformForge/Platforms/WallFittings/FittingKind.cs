using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Plans.Fittings;
using PlatformForge.Units;

namespace PlatformForge.Platforms.WallFittings;

/// <summary>A kind of thing in or before walls: it tells what of it was planned in words and figures that need no knowledge of the kind.</summary>
internal abstract class FittingKind
{
    /// <summary>What was asked for of it, a row each, with its places; none where nothing was.</summary>
    /// <param name="site">Where it may stand.</param>
    public abstract IEnumerable<FittingRow> Rows(FittingSite site);

    /// <summary>What of it a printer cannot make.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="printer">What the printer can.</param>
    public abstract IEnumerable<FittingFault> Printed(PlatformPlan plan, PrintFigures printer);
}

/// <summary>Walls that a kind is placed on.</summary>
/// <param name="Plan">The plan, with the fittings of the kinds before it.</param>
/// <param name="Cuts">Chainages of its cuts, mm; none before they are chosen.</param>
/// <param name="Findings">Takes what is told of places that were moved or left out.</param>
internal sealed record FittingSite(PlatformPlan Plan, IReadOnlyList<double> Cuts, List<Finding> Findings);

/// <summary>What of a printer counts for what stands in or before walls, mm.</summary>
/// <param name="Nozzle">Width of a line.</param>
/// <param name="Lines">Width of the lines that a thing needs to show.</param>
/// <param name="LeastWall">Least that has to stand behind something.</param>
/// <param name="LongestBridge">How far it prints in the air from side to side.</param>
public readonly record struct PrintFigures(double Nozzle, double Lines, double LeastWall, double LongestBridge);
