using PlatformForge.Geometry;
using PlatformForge.Masonry;

namespace PlatformForge.Solids.Bodies.Walls;

/// <summary>An opening of a faced wall in its place.</summary>
/// <param name="Wall">Name of the wall.</param>
/// <param name="At">Its middle in plan, on the wall's ground.</param>
/// <param name="Shape">Its figures.</param>
public sealed record PlacedOpening(string Wall, Point2 At, OpeningShape Shape);
