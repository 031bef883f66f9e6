using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.WallFittings;
using PlatformForge.Sections.Forms;
using PlatformForge.Solids.Bodies.Walls;
using PlatformForge.Units;

namespace PlatformForge.Sections.Rules;

/// <summary>What of things in and before walls a printer can make.</summary>
internal static class FittingPrintRule
{
    public static IEnumerable<Finding> Check(PlatformPlan plan, PrinterSpec printer) => FittingKinds.Printed(
        plan, new(printer.Nozzle, FacingFit.LeastLines * printer.Nozzle, printer.LeastWall, printer.LongestBridge)).Select(Told);

    private static Finding Told(FittingFault fault) => fault.Fault switch
    {
        PrintFault.PartLost => Finding.Error("PF6080", fault.Key, fault.Message, fault.Remedy, FaultKind.DesignRule).Curing(fault.Cure),
        PrintFault.PartHangs => Finding.Warning("PF6081", fault.Key, fault.Message, fault.Remedy).Curing(fault.Cure),
        PrintFault.HoleParted => Finding.Warning("PF6083", fault.Key, fault.Message, fault.Remedy).Curing(fault.Cure),
        _ => FittingFindings.Of(fault),
    };
}
