using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Solids.Bodies.Walls;

/// <summary>The messages on plinths and corbelled courses and what a printer makes of them.</summary>
internal static class ProfilePrintFindings
{
    public static Finding PlinthHangs(string key, double step, double line, int steps) =>
        Hangs(key + ".plinth.steps", step, line, steps, Invariant($"Give {steps} steps or more, or less projection; or print upright."));

    /// <param name="key">Of the facing.</param>
    /// <param name="step">The widest step, mm.</param>
    /// <param name="line">Width of a line of the nozzle, mm.</param>
    /// <param name="projection">How far the plinth may stand out in the steps that its wall has courses for, mm.</param>
    public static Finding PlinthStandsOut(string key, double step, double line, double projection) => Hangs(
        key + ".plinth.projection",
        step,
        line,
        projection,
        Invariant($"Give {projection:0.##} mm or less, since the wall has no courses for more steps; or print upright."));

    public static Finding BatterHangs(string key, double step, double line, double batter)
    {
        double figure = Math.Floor(batter * 100) / 100;
        return Hangs(key + ".batter", step, line, figure, Invariant($"Give {figure:0.##} mm or less; or print upright."));
    }

    private static Finding Hangs(string key, double step, double line, double figure, string remedy) => Finding.Warning(
        "PF5055",
        key,
        Invariant($"Courses at the foot stand up to {step:0.###} mm before the ones over them, more than a line of the nozzle, {line:0.##} mm: ")
            + "printed deck down their undersides hang free.",
        remedy).Curing(figure);

    public static Finding CorbelHangs(string key, double step, double line) => Finding.Warning(
        "PF5056",
        key + ".corbel.projection",
        Invariant($"Each corbelled course stands {step:0.###} mm before the one below, more than a line of the nozzle, {line:0.##} mm: printed ")
            + "upright its underside hangs free.",
        Invariant($"Give {Math.Floor(line * 100) / 100:0.##} mm or less, or print deck down.")).Curing(Math.Floor(line * 100) / 100);

    /// <param name="facing">Key of the facing.</param>
    /// <param name="part">What of it asks for masonry.</param>
    /// <param name="wall">The first wall that is none.</param>
    /// <param name="finish">What that is faced with.</param>
    /// <param name="alone">Whether no other wall is left that is none once that one is brick.</param>
    public static Finding NoMasonry(string facing, string part, string wall, string finish, bool alone) => Finding.Error(
        "PF5057",
        $"{facing}.{(alone ? wall : part)}",
        Invariant($"Plinths, corbelled courses and walls that lean are masonry, all round the platform, and the {wall} ")
            + Invariant($"{(wall == "ends" ? "are" : "is")} faced with {finish}."),
        alone ? $"Face {(wall == "ends" ? "them" : "it")} with \"brick\", \"stone\" or \"rubble\", or leave {(wall == "ends" ? "them" : "it")} \"plain\" "
                + $"(facing.{wall}); or leave facing.{part} out."
            : $"Leave facing.{part} out, or face all walls with \"brick\", \"stone\" or \"rubble\".",
        FaultKind.DesignRule).Curing(alone ? Cure.Text($"{facing}.{wall}", "brick") : Cure.LeaveOut($"{facing}.{part}"));
}
