using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Solids.Bodies;

/// <summary>What is told of joints on the skew.</summary>
internal static class SkewJointFindings
{
    /// <param name="key">Key of the joint.</param>
    /// <param name="cut">Chainage of the cut, mm.</param>
    /// <param name="isPlate">Whether plates hold it, and not dowels.</param>
    /// <param name="length">Their length, mm.</param>
    /// <param name="out">How far the bosses round them would stand out of a wall, mm.</param>
    /// <param name="most">The greatest length with which they stay within; null where none does.</param>
    public static Finding RunsOut(string key, double cut, bool isPlate, double length, double @out, double? most)
    {
        string what = isPlate ? "plates" : "dowels";
        return Finding.Error(
            "PF5068",
            key + ".dowel_length",
            Invariant($"The cut at {cut:0.###} mm lies askew and its {what}, {length:0.##} mm long, square to it: ")
                + Invariant($"what is round them would stand {@out:0.0#} mm out of a wall."),
            most is { } fits ? Invariant($"Make them {fits:0.#} mm long or shorter, or give the cut a smaller angle.")
                : "Give the cut a smaller angle, or make it one of baseboard_joints, which nothing crosses.",
            FaultKind.DesignRule).Curing(most is { } cure ? Cure.Set(key + ".dowel_length", cure) : null);
    }
}
