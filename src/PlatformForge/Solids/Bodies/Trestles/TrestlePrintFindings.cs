using PlatformForge.Units;

namespace PlatformForge.Solids.Bodies.Trestles;

/// <summary>The messages on what a printer makes of a trestle.</summary>
internal static class TrestlePrintFindings
{
    public static Finding NoPlates(string key) => Finding.Error(
        "PF5059",
        key + ".kind",
        "Plates are let in from underneath into what stands on the baseboard, and a trestle stands on posts.",
        "Give kind = \"dowel\": dowels lie in the caps under the deck.",
        FaultKind.DesignRule).Curing(Cure.Text(key + ".kind", "dowel"));
}
