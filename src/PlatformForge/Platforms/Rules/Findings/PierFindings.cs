using PlatformForge.Masonry;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Platforms.Rules.Findings;

/// <summary>The messages on piers.</summary>
internal static class PierFindings
{
    public static Finding TooClose(string key, PierSpec piers)
    {
        double pitch = Math.Ceiling(2 * piers.Width * 10) / 10;
        return Finding.Error(
            "PF4153",
            key + ".facing.piers.pitch",
            Invariant($"Piers {piers.Width:0.###} mm wide every {piers.Pitch:0.###} mm leave panels of {Math.Max(0, piers.Pitch - piers.Width):0.###} mm, ")
                + "narrower than the piers.",
            Invariant($"Give a pitch of {pitch:0.#} mm or more."),
            FaultKind.DesignRule).Curing(pitch);
    }

    public static Finding Crowded(string key, double before, double at, double least, int index) => Finding.Error(
        "PF4154",
        Invariant($"{key}.facing.piers.at[{index}]"),
        Invariant($"The pier at {at:0.##} mm stands {at - before:0.##} mm from the one at {before:0.##}: both are {least / 2:0.###} mm wide, and a panel that ")
            + "wide has to lie between them.",
        Invariant($"Put it at {Math.Ceiling((before + least) * 10) / 10:0.#} mm or farther on, or leave it out."),
        FaultKind.DesignRule).Curing(Math.Ceiling((before + least) * 10) / 10);

    public static Finding LeftOut(string key, double at, (double From, double To) room) => Finding.Warning(
        "PF4155",
        key + ".facing.piers.at",
        Invariant($"The pier at {at:0.##} mm is left out: it would stand beyond the platform's end, or where the wall is lower than the pier is wide."),
        Invariant($"Give places from {room.From:0.#} to {room.To:0.#} mm."));

    /// <param name="key">Of the platform.</param>
    /// <param name="at">The place stated, mm.</param>
    /// <param name="to">Where it stands instead, mm.</param>
    /// <param name="index">Which of the places stated it is.</param>
    public static Finding Moved(string key, double at, double to, int index) => Finding.Warning(
        "PF4156",
        Invariant($"{key}.facing.piers.at[{index}]"),
        Invariant($"The pier at {at:0.##} mm would be cut in two by a joint between sections; ")
            + Invariant($"it stands at {to:0.##} mm, and the joint lies in the angle beside it."),
        Invariant($"Give {to:0.##} mm, or have the sections cut elsewhere.")).Curing(Math.Round(to, 3));

    public static Finding NoBack(string key) => Finding.Warning(
        "PF4157",
        key + ".facing.piers.on",
        "Both walls of an island are fronts: piers at its back are not made.",
        "Give on = \"front\".").Curing(Cure.Text(key + ".facing.piers.on", "front"));
}
