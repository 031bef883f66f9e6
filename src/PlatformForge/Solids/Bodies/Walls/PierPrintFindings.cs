using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Solids.Bodies.Walls;

/// <summary>The messages on piers and what a printer makes of them.</summary>
internal static class PierPrintFindings
{
    public static Finding TooSmall(string key, string how, double figure, double least, double nozzle) => Finding.Error(
        "PF5050",
        key,
        Invariant($"Piers {figure:0.###} mm {how} are lost in the lines of a nozzle of {nozzle:0.##} mm; {least:0.###} mm show."),
        Invariant($"Give {Math.Ceiling(least * 100) / 100:0.##} mm or more."),
        FaultKind.DesignRule).Curing(Math.Ceiling(least * 100) / 100);

    public static Finding NoMasonry(string key, string wall, string finish) => Finding.Error(
        "PF5051",
        key,
        Invariant($"Piers are masonry, and the {wall} is faced with {finish}."),
        Invariant($"Face it with brick, stone or rubble, or leave it plain (facing.{wall}); or leave the piers out."),
        FaultKind.DesignRule).Curing(Cure.LeaveOut(key));
}
