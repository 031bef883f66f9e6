using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Platforms.Rules.Findings;

/// <summary>The messages on backs of platforms.</summary>
internal static class BankFindings
{
    public static Finding TooFlat(string key, double slope, double flattest, double angle) => Finding.Error(
        "PF4170",
        key,
        Invariant($"A bank of 1 in {slope:0.###} lies at {angle:0.0#} degrees to the deck, of which 45 print without supports: ")
            + "printed with its section, it would hang free.",
        Invariant($"Give 1 in {flattest:0.##} or steeper; what is flatter is a print of its own behind a wall (apart = true)."),
        FaultKind.DesignRule).Curing(flattest);

    public static Finding NoWall(string key, string what, Cure cure) => Finding.Warning(
        "PF4171",
        key,
        Invariant($"No wall is to be seen at the platform's back, and {what} there would have nothing to be on."),
        "Leave it out, or give back = { kind = \"wall\" }.").Curing(cure);

    public static Finding NoBackWall(string key) => Finding.Warning(
        "PF4171",
        key,
        "An island has a face on either side and no back, and openings there would have nothing to be in.",
        "Give on = \"front\": they are made under both faces.").Curing(Cure.Text(key, "front"));

    public static Finding TwoThings(string key, string other) => Finding.Error(
        "PF4174",
        key,
        $"Along the back a retaining wall is asked for and a {other}: where the ground behind lies higher than the deck there is no place for both.",
        "Leave one of them out.").Curing(Cure.LeaveOut(key));

    public static Finding NoReturn(string key, string end, string what, string? other)
    {
        string rest = other is null ? "" : $" Round the {other} it turns (returns = \"{other}\").";
        return Finding.Error(
            "PF4196",
            key,
            $"A return of the bank is asked for round the platform's {end}, where {what}.",
            "Leave that return out." + rest,
            FaultKind.DesignRule).Curing(Cure.Text(key, other ?? "none"));
    }

    public static Finding NoBack(string key) => Finding.Error(
        "PF4172",
        key + ".kind",
        "An island has a face on either side, and no back.",
        "Leave back out.").Curing(Cure.LeaveOut(key));

    public static Finding GroundTooHigh(string key, double ground, double most) => Finding.Error(
        "PF4173",
        key,
        Invariant($"The ground behind lies {ground:0.###} mm over the baseboard, not below the deck's back edge where that is lowest."),
        Invariant($"Give {most:0.#} mm or less, or make the ramps' feet higher."),
        FaultKind.DesignRule).Curing(most);
}
