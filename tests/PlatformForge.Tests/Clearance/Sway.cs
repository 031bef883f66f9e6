using PlatformForge.Clearance.Vehicles;

namespace PlatformForge.Tests.Clearance;

/// <summary>What lean and cant together add.</summary>
internal static class Sway
{
    /// <summary>The most in mm that they add to a part's reach at its widest place: one motion at one height, whichever way.</summary>
    public static double Of(RunningPlay play, VehiclePart part)
    {
        double wide = part.Outline.Max(p => Math.Abs(p.Y));
        return play.Lean(part.Carrier).Leftmost(wide, (part.ZLow, part.ZHigh), (double.NegativeInfinity, double.PositiveInfinity))!.Value - wide;
    }
}
