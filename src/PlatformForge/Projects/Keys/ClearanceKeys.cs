using PlatformForge.Clearance;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Projects.Keys.Grammar;
using PlatformForge.Projects.Reading;
using PlatformForge.Units;
using static System.FormattableString;

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

    /// <summary>Stated side play of the wheels; null when it comes from <see cref="BackToBack"/>, or is none.</summary>
    public double? WheelsetPlay { get; init; }

    /// <summary>Distance between the backs of the wheels, when the side play is to be found from it.</summary>
    public double? BackToBack { get; init; }

    /// <summary>Thickness of a flange at rail level.</summary>
    public double Flange { get; init; } = 0.8;

    /// <summary>By how much one rail stands above the other at most.</summary>
    public double Cant { get; init; }

    public double PivotPlay { get; init; }

    public double Roll { get; init; }

    public double RollCentre { get; init; }

    public BudgetRule Rule { get; init; } = BudgetRule.Sum;

    /// <summary>The budget of a platform.</summary>
    /// <param name="residual">What a survey leaves uncertain, mm; nil for a track that is stated without a doubt.</param>
    /// <param name="gauge">Distance between the running edges, mm.</param>
    /// <param name="coping">Height of the coping above rail top, mm.</param>
    /// <param name="tallest">Height above rail top of the highest part of any vehicle, mm.</param>
    /// <param name="surveyed">Whether a survey found the residual; otherwise the track states it.</param>
    public ClearanceBudget BudgetWith(double residual, double gauge, double coping, double tallest, bool surveyed = true)
    {
        double wheelset = WheelsetPlay ?? (BackToBack is { } back ? RunningPlay.WheelsetPlay(gauge, back, Flange) : 0);
        string basis = BackToBack is { } between ? Invariant($"(gauge {gauge} - back to back {between} - 2 x flange {Flange}) / 2, ") : "";
        var play = new RunningPlay(wheelset, PivotPlay, Roll, RollCentre) { Cant = RunningPlay.CantAngle(gauge, Cant) };
        return ClearanceBudget.Of(Running, Print, Fitting, Laying, Survey ?? residual, play, coping, tallest, basis,
            Survey is null && surveyed ? "from the survey" : "stated") with
        { Rule = Rule };
    }
}

/// <summary>Keys of <c>[clearance]</c>.</summary>
internal static class ClearanceKeys
{
    private const double Degree = Math.PI / 180;

    /// <summary>Gauge over the greatest cant taken. Full-size railways stay under a ninth; common practice, no source.</summary>
    private const double MostCant = 6;

    /// <summary>
    /// Gauge over the greatest side play taken, each way. Model wheels are about a fifth of their gauge wide (2.8 to 3.5 of 16.5 mm; common practice, no
    /// source): with more than a tenth each way the far wheel drops off its rail.
    /// </summary>
    private const double MostPlay = 10;

    // Rounding of quotients, mm.
    private const double Grain = Tolerances.Rounding;

    private static readonly NumberRange Small = NumberRange.From(0, 50);

    public static KeyTable<ClearanceEntry> Table { get; } = new KeyTable<ClearanceEntry>(_ => new())
        .Length(
            "running",
            Small,
            "Air you want to see between the platform and the vehicle that comes nearest.",
            c => c.Running,
            (c, v) => c with { Running = v },
            required: true)
        .Length("print", Small, "How far a print may be off.", c => c.Print, (c, v) => c with { Print = v })
        .Length("fitting", Small, "How far the sections may be off when they are fixed down.", c => c.Fitting, (c, v) => c with { Fitting = v })
        .Length("laying", Small, "How far the track may lie off the line stated here.", c => c.Laying, (c, v) => c with { Laying = v })
        .Length(
            "survey",
            Small,
            "What measuring the track left uncertain; left out, what the survey itself finds, or the survey_doubt of the track.",
            c => c.Survey,
            (c, v) => c with { Survey = v })
        .Length(
            "wheelset_play",
            NumberRange.From(0, 10),
            "Side play of the wheels between the rails, each way from the middle.",
            c => c.WheelsetPlay,
            (c, v) => c with { WheelsetPlay = v })
        .Length(
            "back_to_back",
            NumberRange.Over0(300),
            "Distance between the backs of a wheelset's wheels; in place of wheelset_play, which then follows from the gauge.",
            c => c.BackToBack,
            (c, v) => c with { BackToBack = v })
        .Length(
            "flange",
            NumberRange.Over0(10),
            "Thickness of a wheel's flange where it meets the rail, for back_to_back.",
            c => c.Flange,
            (c, v) => c with { Flange = v })
        .Length(
            "pivot_play",
            NumberRange.From(0, 10),
            "Side play of a body on the pivots of its bogies, each way across the bogie; what has no pivots has none of it.",
            c => c.PivotPlay,
            (c, v) => c with { PivotPlay = v })
        .Length(
            "cant",
            NumberRange.From(0, 30),
            "By how much one rail stands above the other at most; everything leans by it, counted either way.",
            c => c.Cant,
            (c, v) => c with { Cant = v })
        .Number(
            "roll",
            NumberRange.From(0, 15),
            "degrees",
            "How far a body may lean on its springs, each way.",
            c => c.Roll / Degree,
            (c, v) => c with { Roll = v * Degree })
        .Length(
            "roll_centre",
            NumberRange.From(0, 500),
            "Height above rail top about which bodies lean.",
            c => c.RollCentre,
            (c, v) => c with { RollCentre = v })
        .Choice(
            "rule",
            "How the tolerances are put together: all at their worst, or as chance errors.",
            c => c.Rule,
            (c, v) => c with { Rule = v },
            [("sum", BudgetRule.Sum), ("root-of-squares", BudgetRule.RootOfSquares)])
        .Check((c, table, key, reading) =>
        {
            if (c.WheelsetPlay is not null && c.BackToBack is not null)
            {
                reading.Fault(
                    "PF1013",
                    key + ".back_to_back",
                    table.Find("back_to_back")!.Value.Place,
                    "The clearance has both wheelset_play and back_to_back.",
                    "Give one of them: the side play itself, or what it follows from.",
                    Cure.LeaveOut(key + ".back_to_back"));
            }
        });

    /// <summary>Faults that need the gauge: wheels that do not fit between the rails, rails that stand on edge.</summary>
    public static void CheckAgainst(double gauge, ClearanceEntry clearance, SourceMap places, KeyReading reading)
    {
        CheckBackToBack(gauge, clearance, places, reading);
        CheckSidePlay(gauge, clearance, places, reading);
        if (clearance.Cant > gauge / MostCant)
        {
            reading.Fault(
                "PF1014",
                "clearance.cant",
                places.Find("clearance.cant"),
                Invariant($"A cant of {clearance.Cant:0.####} mm tilts a gauge of {gauge:0.####} mm ")
                    + Invariant($"by {Math.Asin(Math.Min(1, clearance.Cant / gauge)) / Degree:0} degrees."),
                Invariant($"Give at most {Math.Floor(gauge / MostCant * 100) / 100:0.##} mm, a sixth of the gauge."),
                Cure.Set("clearance.cant", Math.Floor(gauge / MostCant * 100) / 100));
        }
    }

    // Wheels so far apart that they do not fit between the rails, or so near that they drop between them.
    private static void CheckBackToBack(double gauge, ClearanceEntry clearance, SourceMap places, KeyReading reading)
    {
        if (clearance.BackToBack is { } back && back + (2 * clearance.Flange) > gauge)
        {
            reading.Fault("PF1014", "clearance.back_to_back", places.Find("clearance.back_to_back"),
                Invariant($"Wheels {back:0.####} mm back to back with flanges of {clearance.Flange:0.####} mm ")
                    + Invariant($"are {back + (2 * clearance.Flange):0.###} mm over the flanges, more than the gauge of {gauge:0.####} mm."),
                gauge > 2 * clearance.Flange ? Invariant($"With these flanges give at most {gauge - (2 * clearance.Flange):0.###} mm back to back.")
                    : Invariant($"Give a flange of less than {gauge / 2:0.###} mm; 0.8 mm is usual."),
                gauge > 2 * clearance.Flange ? Cure.Set("clearance.back_to_back", Math.Round(gauge - (2 * clearance.Flange), 6))
                    : Cure.LeaveOut("clearance.flange"));
        }
        else if (clearance.BackToBack is { } between && RunningPlay.WheelsetPlay(gauge, between, clearance.Flange) > (gauge / MostPlay) + Grain)
        {
            double least = gauge - (2 * clearance.Flange) - (2 * gauge / MostPlay);
            reading.Fault("PF1014", "clearance.back_to_back", places.Find("clearance.back_to_back"),
                Invariant($"Wheels {between:0.####} mm back to back with flanges of {clearance.Flange:0.####} mm ")
                    + Invariant($"have {RunningPlay.WheelsetPlay(gauge, between, clearance.Flange):0.###} mm of side play ")
                    + Invariant($"each way on a gauge of {gauge:0.####} mm: they would drop between the rails."),
                Invariant($"With these flanges give at least {Math.Ceiling((least - Grain) * 100) / 100:0.##} mm back to back, a side play of a tenth of the ")
                    + "gauge.",
                Cure.Set("clearance.back_to_back", Math.Ceiling((least - Grain) * 100) / 100));
        }
    }

    private static void CheckSidePlay(double gauge, ClearanceEntry clearance, SourceMap places, KeyReading reading)
    {
        if (clearance.WheelsetPlay > (gauge / MostPlay) + Grain)
        {
            reading.Fault("PF1014", "clearance.wheelset_play", places.Find("clearance.wheelset_play"),
                Invariant($"A side play of {clearance.WheelsetPlay:0.####} mm each way ")
                    + Invariant($"is more than wheels have on a gauge of {gauge:0.####} mm: they would drop between the rails."),
                Invariant($"Give at most {Math.Floor(((gauge / MostPlay) + Grain) * 100) / 100:0.##} mm, a tenth of the gauge; 0.1 to 0.5 mm is usual."),
                Cure.Set("clearance.wheelset_play", Math.Floor(((gauge / MostPlay) + Grain) * 100) / 100));
        }
    }
}
