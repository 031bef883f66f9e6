using PlatformForge.Clearance;

namespace PlatformForge.Projects.Keys;

/// <summary>The clearance budget as the project states it, mm of the model and radians.</summary>
public sealed record ClearanceEntry
{
    public double Running { get; init; } = double.NaN;

    public double Print { get; init; } = 0.2;

    public double Fitting { get; init; } = 0.2;

    public double Laying { get; init; }

    /// <summary>Stated residual of the survey; null takes what the survey of the faced track found.</summary>
    public double? Survey { get; init; }

    public double WheelsetPlay { get; init; }

    public double PivotPlay { get; init; }

    public double Roll { get; init; }

    public double RollCentre { get; init; }

    public BudgetRule Rule { get; init; } = BudgetRule.Sum;

    /// <summary>The budget where a survey leaves a residual in mm of its own; nil for a track that is stated.</summary>
    public ClearanceBudget BudgetWith(double residual) =>
        ClearanceBudget.Of(Running, Print, Fitting, Laying, Survey ?? residual, new RunningPlay(WheelsetPlay, PivotPlay, Roll, RollCentre)) with { Rule = Rule };
}

/// <summary>Keys of <c>[clearance]</c>.</summary>
internal static class ClearanceKeys
{
    private const double Degree = Math.PI / 180;

    private static readonly NumberRange Small = NumberRange.From(0, 50);

    public static KeyTable<ClearanceEntry> Table { get; } = new KeyTable<ClearanceEntry>(_ => new())
        .Length("running", Small, "Air you want to see between the platform and the vehicle that comes nearest.", c => c.Running, (c, v) => c with { Running = v }, required: true)
        .Length("print", Small, "How far a print may be off.", c => c.Print, (c, v) => c with { Print = v })
        .Length("fitting", Small, "How far the sections may be off when they are fixed down.", c => c.Fitting, (c, v) => c with { Fitting = v })
        .Length("laying", Small, "How far the track may lie off the line stated here.", c => c.Laying, (c, v) => c with { Laying = v })
        .Length("survey", Small, "What measuring the track left uncertain; left out, what the survey itself finds.", c => c.Survey, (c, v) => c with { Survey = v })
        .Length("wheelset_play", NumberRange.From(0, 10), "Side play of the wheels between the rails, each way from the middle.", c => c.WheelsetPlay, (c, v) => c with { WheelsetPlay = v })
        .Length("pivot_play", NumberRange.From(0, 10), "Side play of a body on its bogies, each way.", c => c.PivotPlay, (c, v) => c with { PivotPlay = v })
        .Number("roll", NumberRange.From(0, 15), "degrees", "How far a body may lean, each way.", c => c.Roll / Degree, (c, v) => c with { Roll = v * Degree })
        .Length("roll_centre", NumberRange.From(0, 500), "Height above rail top about which bodies lean.", c => c.RollCentre, (c, v) => c with { RollCentre = v })
        .Choice("rule", "How the tolerances are put together: all at their worst, or as chance errors.", c => c.Rule, (c, v) => c with { Rule = v }, [("sum", BudgetRule.Sum), ("root-of-squares", BudgetRule.RootOfSquares)]);
}
