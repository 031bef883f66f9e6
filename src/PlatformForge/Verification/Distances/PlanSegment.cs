using PlatformForge.Geometry;

namespace PlatformForge.Verification.Distances;

/// <summary>An edge of what a triangle leaves in a height band, in the layout frame.</summary>
internal readonly record struct PlanSegment(Point3 A, Point3 B, int Section);
