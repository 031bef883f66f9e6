using PlatformForge.Units;

namespace PlatformForge.Platforms.WallFittings;

/// <summary>What a printer cannot make of a thing in or before a wall, in words; the rooms that know printers give it its code.</summary>
/// <param name="Fault">What is wrong, by what it is wrong with.</param>
/// <param name="Key">The key that is to be changed.</param>
/// <param name="Message">What is wrong, with the figure.</param>
/// <param name="Remedy">What would be right.</param>
/// <param name="Cure">The same as a change of the file.</param>
public sealed record FittingFault(PrintFault Fault, string Key, string Message, string Remedy, Cure Cure);

/// <summary>What may be wrong with the print of fronts that step out, of holes, and of parts that stand before a wall.</summary>
public enum PrintFault
{
    /// <summary>Too small for the lines of a nozzle.</summary>
    FrontLost,

    /// <summary>Of another kind than the wall's finish.</summary>
    FrontOfOtherWall,

    /// <summary>Leaves too little behind it, or is no deeper than joints.</summary>
    HoleDepth,

    /// <summary>Closes between two lines.</summary>
    HoleCloses,

    /// <summary>In a wall that takes none.</summary>
    HoleOfOtherWall,

    /// <summary>Wider than is printed in the air.</summary>
    HoleUnbridged,

    /// <summary>Reaches over the height at which a wall is laid in two parts.</summary>
    HoleParted,

    /// <summary>Too thin for the lines of a nozzle.</summary>
    PartLost,

    /// <summary>Hangs free where it is printed.</summary>
    PartHangs,
}
