using System.Globalization;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Plans.Fittings;
using PlatformForge.Units;

namespace PlatformForge.Platforms.WallFittings;

/// <summary>All kinds of things in or before walls, in the order in which they are told.</summary>
public static class FittingKinds
{
    private static readonly FittingKind[] All = [new PierFittings(), new DownpipeFittings(), new OpeningFittings()];

    /// <summary>What they are in a word, as the title of the table of their places.</summary>
    public const string Title = "Openings and piers in walls";

    /// <summary>What a plan's fittings come to.</summary>
    /// <param name="plan">The plan, with its walking surface.</param>
    /// <param name="cuts">Chainages of its cuts, mm; none before they are chosen.</param>
    /// <param name="findings">Takes what is told of places that were moved or left out.</param>
    internal static IReadOnlyList<FittingRow> Of(PlatformPlan plan, IReadOnlyList<double> cuts, List<Finding> findings) => All.Aggregate(
        (IReadOnlyList<FittingRow>)[], (rows, kind) => [.. rows, .. kind.Rows(new(plan with { Fittings = rows }, cuts, findings))]);

    /// <summary>What of a plan's fittings a printer cannot make.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="printer">What the printer can, mm.</param>
    public static IEnumerable<FittingFault> Printed(PlatformPlan plan, PrintFigures printer) => All.SelectMany(k => k.Printed(plan, printer));

    /// <summary>Model mm to a hundredth, as reports say them.</summary>
    internal static string Fine(double mm) => (Math.Round(mm, 2) + 0.0).ToString("F2", CultureInfo.InvariantCulture);
}
