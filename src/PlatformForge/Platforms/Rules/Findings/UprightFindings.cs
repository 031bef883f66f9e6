using System.Globalization;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Platforms.Rules.Findings;

/// <summary>What is said of the room between a coping and what passes over it or under it, standing level and at its worst.</summary>
internal static class UprightFindings
{
    public static Finding NothingPassesOver(string key, double gap, string what, double level, double leaning) =>
        Finding.Error("PF4026", key,
            Invariant($"Bodies are to pass over the coping {gap:0.###} mm above it, but nothing does: the highest underside, of {what}, ")
                + Invariant($"is {Room(level, leaning)}."),
            leaning >= 0 ? Invariant($"Give a vertical gap of {Down(leaning)} mm or less.") : "Lower the coping, or leave bodies_pass_over out.",
            FaultKind.DesignRule)
            .Curing(leaning >= 0 ? new Cure(CureAct.Set, key, Down(leaning)) : Cure.Set(key[..key.LastIndexOf('.')] + ".bodies_pass_over", false));

    public static Finding AllReachLow(string key, string what, double low, double lowest, double height) =>
        Finding.Warning(
            "PF4205",
            key,
            Invariant($"Bodies may pass over the coping, but none can: the highest underside, of {what}, is {low:0.###} mm above rail ")
                + Invariant($"top{(Leans(low, lowest) ? Invariant($", {lowest:0.###} mm on its lower side when it leans,") : "")} and the ")
                + Invariant($"coping {height:0.###} mm, so the coping is held to all of them."),
            Invariant($"State the undersides of the vehicles' bodies (low) if they are higher, or lower the coping below {lowest:0.###} mm."));

    public static Finding HeldOff(string key, string what, double level, double leaning, double gap) =>
        Finding.Warning(
            "PF4206",
            key,
            Leans(level, leaning)
                ? Invariant($"The underside of the {what} is {Room(level, leaning)}, less than the vertical gap of {gap:0.###} mm, so the coping is held to ")
                + "that part."
                : Invariant($"Between the coping and the {what} are {level:0.###} mm of height, less than the vertical gap of {gap:0.###} mm, so the coping ")
                + "is held to that part.",
            leaning > 0 ? Invariant($"With a vertical gap of {Down(leaning)} mm or less it passes over.")
                : Invariant($"With a coping {Up(-leaning)} mm lower and no vertical gap it passes over, or with less roll and cant."))
                .Curing(leaning > 0 ? new Cure(CureAct.Set, key, Down(leaning)) : null);

    public static Finding PassesOver(string key, string what, double level, double leaning) =>
        Finding.Note("PF4091", key, Invariant($"Of what passes over the coping the {what} comes nearest to it: its underside is {Room(level, leaning)}."));

    /// <param name="key">Key of the overhang.</param>
    /// <param name="what">The part that governs most.</param>
    /// <param name="top">Greatest height above rail top to which it rises, mm.</param>
    /// <param name="share">Share of the edge's length along which the wall governs, 0 to 1.</param>
    /// <param name="farther">How much farther away the coping stands at most for the wall's sake, mm; infinite where nothing reaches the coping's own
    /// height.</param>
    /// <param name="overhang">The overhang with which it would not; null where the coping is too narrow for that.</param>
    public static Finding WallGoverns(string key, string what, double top, double share, double farther, double? overhang)
    {
        string cost = double.IsFinite(farther)
            ? Invariant($"that keeps the coping up to {farther:0.00} mm farther away than what reaches its own height would")
            : "nothing reaches the coping's own height";
        return Finding.Note(
            "PF4090",
            key,
            Invariant($"Along {share * 100:0} % of the edge it is the wall under the coping that has to stand clear, of the {what}, which stays under the ")
                + Invariant($"coping ({top:0.##} mm above rail top at most): {cost}."),
            overhang is { } enough ? Invariant($"With an overhang of {Up(enough)} mm the coping alone governs.") : "");
    }

    private static bool Leans(double level, double leaning) => level - leaning > Told;

    private static string Room(double level, double leaning) => Leans(level, leaning)
        ? leaning >= 0 ? Invariant($"{level:0.###} mm above it standing level and {leaning:0.###} mm on the lower side with roll, cant and play at their ")
        + "worst" : Invariant($"{level:0.###} mm above it standing level, but {-leaning:0.###} mm in it on the lower side with roll, cant and play at their ")
        + "worst"
        : Invariant($"{level:0.###} mm above it");

    // Figures offered are rounded so that the rounded figure works too.
    private static string Up(double value) => (Math.Ceiling((value - Grain) * 1000) / 1000).ToString("0.###", CultureInfo.InvariantCulture);

    private static string Down(double value) => (Math.Floor((value + Grain) * 1000) / 1000).ToString("0.###", CultureInfo.InvariantCulture);

    // Rounding of sums, and what is not worth telling, mm.
    private const double Grain = Tolerances.Rounding, Told = 0.0005;
}
