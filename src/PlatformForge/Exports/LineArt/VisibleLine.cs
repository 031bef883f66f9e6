using PlatformForge.Geometry;

namespace PlatformForge.Exports.LineArt;

/// <summary>A stretch of an edge that nothing hides, in mm on the sheet from the picture's top left corner.</summary>
/// <param name="From">One end.</param>
/// <param name="To">The other.</param>
/// <param name="Contour">Whether the body turns away from the eye there; otherwise it is a crease seen on both sides.</param>
internal readonly record struct VisibleLine(Point2 From, Point2 To, bool Contour);
