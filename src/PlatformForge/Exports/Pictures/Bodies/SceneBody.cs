using PlatformForge.Exports.Looks;
using PlatformForge.Geometry;

namespace PlatformForge.Exports.Pictures.Bodies;

/// <summary>A closed mesh to be shown.</summary>
/// <param name="Mesh">The mesh, mm.</param>
/// <param name="Colours">Colour of each paint of the mesh.</param>
/// <param name="Outlined">Whether its sharp edges and its outline are inked.</param>
internal sealed record SceneBody(Mesh Mesh, IReadOnlyList<Rgb> Colours, bool Outlined = true)
{
    /// <summary>How uneven its colour is, as a share: a wash is never flat.</summary>
    public double Grain { get; init; } = 0.05;

    /// <summary>Index of the colour of a triangle.</summary>
    public int PaintOf(int triangle) => Mesh.Paints.Length == 0 ? 0 : Mesh.Paints[triangle];
}

/// <summary>A line of ink in space, mm.</summary>
/// <param name="From">One end.</param>
/// <param name="To">The other.</param>
/// <param name="Contour">Whether the body turns away from the eye there.</param>
/// <param name="Detail">Whether it goes round a brick, and is only drawn where nothing of the body stands behind it.</param>
internal readonly record struct InkLine(Point3 From, Point3 To, bool Contour = false, bool Detail = false);
