namespace PlatformForge.Solids.Kernel.Meshing.Polygons;

/// <summary>A flat stretch of a named wall face that a relief is to take the place of.</summary>
/// <param name="First">Its first strip by the order of nodes.</param>
/// <param name="Last">Its last strip.</param>
/// <param name="Face">Number of the face.</param>
/// <param name="FacesRight">Whether it is seen from the right of its line.</param>
/// <param name="Paint">What it shows.</param>
/// <param name="Corners">Levels of its corners, counter-clockwise from outside.</param>
internal sealed record FlatPanel(int First, int Last, int Face, bool FacesRight, byte Paint, int[] Corners)
{
    /// <summary>The strip at its right end seen from outside, and whether that is the strip's far end.</summary>
    public (int Strip, bool Far) RightEnd => FacesRight ? (Last, true) : (First, false);

    public (int Strip, bool Far) LeftEnd => FacesRight ? (First, false) : (Last, true);
}
