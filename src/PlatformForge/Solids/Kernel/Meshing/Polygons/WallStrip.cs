namespace PlatformForge.Solids.Kernel.Meshing.Polygons;

/// <summary>
/// A stretch of wall along one edge of the plan, from a lower to an upper level at either end; "near" is the edge's lower node.
/// </summary>
/// <param name="Edge">Edge of the plan.</param>
/// <param name="NearLow">Lower level at the near end.</param>
/// <param name="NearHigh">Upper level at the near end.</param>
/// <param name="FarLow">Lower level at the far end.</param>
/// <param name="FarHigh">Upper level at the far end.</param>
/// <param name="FacesRight">Whether air is on the edge's right.</param>
/// <param name="Paint">Paint of the material behind it.</param>
/// <param name="Face">Number of the named wall face that it is part of; nought for none.</param>
internal readonly record struct WallStrip(int Edge, int NearLow, int NearHigh, int FarLow, int FarHigh, bool FacesRight, byte Paint, int Face)
{
    /// <summary>Whether two strips along one line can be one panel.</summary>
    public bool ShowsAs(in WallStrip other) => FacesRight == other.FacesRight && Paint == other.Paint && Face == other.Face;
}
