using PlatformForge.Platforms.WallFittings;
using PlatformForge.Units;

namespace PlatformForge.Solids.Bodies.Walls;

/// <summary>The codes of what a printer cannot make of fronts and holes.</summary>
internal static class FittingFindings
{
    /// <summary>A fault with its code; those of parts have theirs elsewhere.</summary>
    public static Finding Of(FittingFault fault) => fault.Fault switch
    {
        PrintFault.FrontLost => Error("PF5050", fault),
        PrintFault.FrontOfOtherWall => Error("PF5051", fault),
        PrintFault.HoleDepth => Error("PF5052", fault),
        PrintFault.HoleCloses => Error("PF5053", fault),
        PrintFault.HoleOfOtherWall => Error("PF5054", fault),
        PrintFault.HoleUnbridged => Finding.Warning("PF5060", fault.Key, fault.Message, fault.Remedy).Curing(fault.Cure),
        _ => throw new ArgumentOutOfRangeException(nameof(fault)),
    };

    private static Finding Error(string code, FittingFault fault) =>
        Finding.Error(code, fault.Key, fault.Message, fault.Remedy, FaultKind.DesignRule).Curing(fault.Cure);
}
