namespace PlatformForge.Masonry;

/// <summary>Brickwork as it is laid on a wall: all figures in mm of the model.</summary>
/// <param name="Bond">How courses lie over one another.</param>
/// <param name="StretcherCourses">Courses of stretchers to one of headers in English garden wall bond.</param>
/// <param name="Module">Bricks with their joints; none is smaller, they are drawn out so that whole ones fill a wall.</param>
/// <param name="Joint">Width of joints.</param>
/// <param name="Depth">How far bricks stand out of their joints.</param>
/// <param name="Datum">Height of the top of a course, from which all others follow up and down.</param>
/// <param name="Stop">Joint kept at the foot and where a wall stops.</param>
/// <param name="Bed">Least joint kept under the upper edge.</param>
/// <param name="LeastPiece">Pieces of bricks cut by a slope or by the foot that are lower or shorter are left out.</param>
/// <param name="Perpends">Whether upright joints are laid; otherwise bed joints alone.</param>
public sealed record BrickworkSpec(
    Bond Bond, int StretcherCourses, BrickModule Module, double Joint, double Depth, double Datum, double Stop, double Bed, double LeastPiece, bool Perpends);
