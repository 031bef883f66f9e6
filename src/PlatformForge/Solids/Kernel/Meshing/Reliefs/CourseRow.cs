using PlatformForge.Solids.Reliefs;

namespace PlatformForge.Solids.Kernel.Meshing.Reliefs;

/// <summary>A part of an oblong field on one flat piece of a panel: the vertices of its four corners on the wall; those off the wall follow them.</summary>
/// <param name="Left">Place of its left end from the piece's own, grid steps.</param>
/// <param name="Right">Place of its right end, grid steps.</param>
/// <param name="LowLeft">Vertex of a corner on the wall.</param>
/// <param name="HighLeft">Vertex of a corner on the wall.</param>
/// <param name="LowRight">Vertex of a corner on the wall.</param>
/// <param name="HighRight">Vertex of a corner on the wall.</param>
internal readonly record struct CoursePart(int Left, int Right, int LowLeft, int HighLeft, int LowRight, int HighRight);

/// <summary>The parts of fields of one height on one flat piece, from left to right.</summary>
/// <param name="Low">Their lower sides, grid steps.</param>
/// <param name="High">Their upper sides, grid steps.</param>
/// <param name="First">The first of them in the piece's list.</param>
/// <param name="Count">How many there are.</param>
internal readonly record struct CourseRow(int Low, int High, int First, int Count);

/// <summary>An oblong field of a panel.</summary>
internal struct CourseField
{
    /// <summary>Its ends along the panel, its sides, and how far it stands out, mm.</summary>
    public double From, To, Low, High, Out;

    /// <summary>Its first vertex: corners follow one another along its lower side, then along its upper one; below nought where an outline has
    /// them.</summary>
    public int Vertex;

    /// <summary>The pieces that it lies on.</summary>
    public int FirstPiece, LastPiece;

    /// <summary>The field itself.</summary>
    public ReliefField Field;
}
