namespace PlatformForge.Clearance;

/// <summary>One entry of the clearance budget.</summary>
/// <param name="Name">What it is for, in the user's words: running clearance, print tolerance.</param>
/// <param name="AmountMm">How much, mm.</param>
/// <param name="Basis">Where the figure comes from: stated, preset, survey, computed from gauge and wheels.</param>
/// <param name="Placing">Whether it is added to the reach or was swept with the vehicles.</param>
public sealed record BudgetLine(string Name, double AmountMm, string Basis, BudgetPlacing Placing = BudgetPlacing.Added);

/// <summary>Where an entry of the budget takes effect.</summary>
public enum BudgetPlacing
{
    /// <summary>A wanted distance: always added in full.</summary>
    Wanted,

    /// <summary>A tolerance: added to the reach, in full or within the root of squares.</summary>
    Added,

    /// <summary>Play: swept with the vehicles (larger at their ends), so it is in the reach already and never added again.</summary>
    Swept,
}

/// <summary>How the tolerances of a budget are put together.</summary>
public enum BudgetRule
{
    /// <summary>All at their worst at once.</summary>
    Sum,

    /// <summary>Root of the sum of squares: independent chance errors.</summary>
    RootOfSquares,
}
