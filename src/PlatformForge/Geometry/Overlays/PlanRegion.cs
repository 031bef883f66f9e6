namespace PlatformForge.Geometry.Overlays;

/// <summary>A connected region of the plan, mm.</summary>
/// <param name="Outline">Outer ring, counter-clockwise, not repeated at the end.</param>
/// <param name="Holes">Rings of the holes, clockwise.</param>
/// <param name="Inside">A point well inside the region.</param>
/// <param name="Area">Area without the holes, mm².</param>
/// <param name="Centroid">Centre of the area.</param>
public sealed record PlanRegion(Point2[] Outline, IReadOnlyList<Point2[]> Holes, Point2 Inside, double Area, Point2 Centroid);
