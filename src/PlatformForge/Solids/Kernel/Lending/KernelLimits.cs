namespace PlatformForge.Solids.Kernel.Lending;

/// <summary>The kernel's own small numbers. Lengths in plan are in grid steps, heights in mm.</summary>
internal static class KernelLimits
{
    /// <summary>A hot pixel reaches this much further than half a step, so that lines that were meant to meet, and do so to
    /// rounding, are bent to one node whichever side of the pixel's border the noise puts them.</summary>
    public const double PixelReach = 0.5 + 0.01;

    /// <summary>Nearer than this to a segment's line an end counts as touching it, not as crossing it: half of the pixel's extra reach.</summary>
    public const double Touch = 0.005;

    /// <summary>Two plan points as near as this, but rounded to neighbouring nodes, are one point.</summary>
    public const double SamePoint = 0.02;

    /// <summary>A line along which two surfaces cross is left out where it runs nearer than this to an outline: the surfaces then
    /// meet on that outline.</summary>
    public const double CrossingClearance = 1.5;

    /// <summary>An edge of the rounded plan lies nearer than this to the segment it came from.</summary>
    public const double BentBy = 2;

    /// <summary>Surfaces that agree on average over a face to this height are one surface: ten times what blocks promise.</summary>
    public const double SameSurface = 1e-6;

    /// <summary>Heights at one plan node that differ by no more are one level (to which comes what a surface rises in one step).
    /// 2^-14 mm: coarser than a 32-bit float at 500 mm, a thirtieth of a printer's step.</summary>
    public const double SameLevel = 1.0 / 16384;

    /// <summary>Agreement asked between the mesh's volume and that of its polygons, as a part of the whole.</summary>
    public const double VolumeAgreement = 1e-9;

    /// <summary>What straight walls may take or give against columns over nodes that the grid has moved off them, as a part of the whole. Of 24
    /// sections of samples the most was a millionth; levels made one count besides.</summary>
    public const double Straightened = 3e-6;

    /// <summary>How often the plan may be noded anew before the kernel gives up.</summary>
    public const int GreatestRounds = 6;
}
