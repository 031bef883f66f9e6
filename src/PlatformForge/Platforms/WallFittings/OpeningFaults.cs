using PlatformForge.Masonry;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Platforms.WallFittings;

/// <summary>The messages on openings and what a printer makes of them.</summary>
internal static class OpeningFaults
{
    public static FittingFault Depth(string key, double depth, (double Least, double Most) room, string wall, double behind)
    {
        bool deep = depth > room.Least, cures = deep && room.Most > room.Least + 0.1;
        double thickness = Math.Ceiling((depth + behind) * 100) / 100, shallower = Math.Floor(room.Most * 100) / 100;
        return new(
            PrintFault.HoleDepth,
            deep && !cures ? wall : key + ".depth",
            deep ? Invariant($"Openings {depth:0.###} mm deep leave less than {behind:0.###} mm, two lines of the nozzle, of their wall.")
                : Invariant($"Openings {depth:0.###} mm deep are no deeper than joints, which are {room.Least:0.###}."),
            deep ? cures ? Invariant($"Give {shallower:0.##} mm or less, or make the wall {thickness:0.##} mm thick.")
                : Invariant($"Make the wall {thickness:0.##} mm thick.")
                : Invariant($"Give {room.Least + 0.2:0.##} mm or more."),
            deep ? cures ? Cure.Set(key + ".depth", shallower) : Cure.Set(wall, thickness) : Cure.Set(key + ".depth", Math.Round(room.Least + 0.2, 2)));
    }

    public static FittingFault TooSmall(string key, double size, double least) => new(
        PrintFault.HoleCloses,
        key,
        Invariant($"An opening {size:0.###} mm across closes between two lines of the nozzle."),
        Invariant($"Give {Math.Ceiling(least * 100) / 100:0.##} mm or more."),
        Cure.Set(key, Math.Ceiling(least * 100) / 100));

    public static FittingFault TooWideToBridge(string key, double width, double longest) => new(
        PrintFault.HoleUnbridged,
        key + ".width",
        Invariant($"An opening {width:0.###} mm wide goes right through its wall: its sill is laid in the air from side to side, ")
            + Invariant($"and the printer bridges {longest:0.###} mm."),
        Invariant($"Give {longest:0.##} mm or less, or have it made as a recess."),
        Cure.Set(key + ".width", longest));

    /// <param name="key">Key of the opening.</param>
    /// <param name="facing">Key of the facing.</param>
    /// <param name="wall">The wall that it is asked for in.</param>
    /// <param name="finish">What that is faced with.</param>
    public static FittingFault NoMasonry(string key, string facing, string wall, string finish) => new(
        PrintFault.HoleOfOtherWall,
        key,
        Invariant($"Openings are made in smooth walls and in walls of brick, stone or rubble, and the {wall} is {finish}."),
        Invariant($"Face it with \"brick\", \"stone\" or \"rubble\", or leave it \"plain\" (facing.{wall}), or leave the openings out."),
        Cure.Text($"{facing}.{wall}", "brick"));

    public static FittingFault Parted(string key, string facing, OpeningSpec opening, double head) => new(
        PrintFault.HoleParted,
        key,
        Invariant($"No opening is laid: one from {opening.Sill:0.##} to {opening.Sill + opening.Height:0.##} mm over the baseboard reaches over the heads of ")
            + Invariant($"the buttresses, {head:0.##} mm high, where the walls are laid in two parts all round."),
        "Have the piers go up to the coping (leave their height out), or keep the opening, with its arch, under their heads.",
        Cure.LeaveOut(facing + ".piers.height"));
}
