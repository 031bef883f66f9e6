using PlatformForge.Geometry;

namespace PlatformForge.Solids;

/// <summary>Whether a block's material is put in place or taken out.</summary>
public enum BlockAction
{
    Add,
    Remove,
}

/// <summary>What a surface shows, for materials in 3MF and colours in pictures. The order is the order of materials in files.</summary>
public enum Paint : byte
{
    Deck,
    Coping,
    Line,
    Wall,
    Mortar,
    Stone,
    Timber,
    Concrete,
    Paver,
    Tactile,
    Turf,

    /// <summary>As it is printed: a rebate's floor, which bought sheet covers, and what lies behind it.</summary>
    Bare,

    /// <summary>Cast iron, of what stands before walls.</summary>
    Iron,

    /// <summary>Bricks of a coping: harder and darker than those of a wall or a deck.</summary>
    CopingBrick,

    /// <summary>Walls that are left smooth by choice: render.</summary>
    Render,
}

/// <summary>
/// A vertical prism over a simple plan ring, between two planes, that is added to or removed from all that came before it
/// in the list. Where the upper plane lies below the lower one the block is empty. Curved surfaces are several blocks, one a
/// facet; blocks whose surfaces meet along a shared boundary agree there to 1e-7 mm.
/// </summary>
/// <param name="Outline">Simple ring, counter-clockwise, mm, not repeated at the end.</param>
/// <param name="Lower">Lower surface.</param>
/// <param name="Upper">Upper surface.</param>
/// <param name="Action">Add or remove.</param>
/// <param name="Paint">What the surfaces that this block leaves behind show.</param>
public sealed record ColumnBlock(Point2[] Outline, HeightPlane Lower, HeightPlane Upper, BlockAction Action, Paint Paint)
{
    /// <summary>
    /// Names of the wall faces that the outline makes, one for each of its sides, from corner i to the next; null where a side's is not named, empty where
    /// none is. A name is for all wall of the block's paint along the side: whatever is cut into it later keeps it. Sides with one name that follow one
    /// another make one face, however often it bends.
    /// </summary>
    public IReadOnlyList<string?> WallFaces { get; init; } = [];
}

/// <summary>
/// A finished solid: a closed, oriented 2-manifold mesh and the volume that its columns have, in mm³.
/// </summary>
/// <param name="Mesh">The surface.</param>
/// <param name="ColumnVolume">By arithmetic over the plan's faces, exact for the plan on its grid.</param>
public sealed record Solid(Mesh Mesh, double ColumnVolume)
{
    /// <summary>What the surface encloses, mm³, by the exact areas in plan of its own triangles: to hold the mesh against. It differs from the columns'
    /// volume by what
    /// straight walls take or give where the grid moved nodes off them, less than a grid step of wall.</summary>
    public double MeshVolume { get; init; }

    /// <summary>What reliefs add to plain walls, mm³, by their closed form; part of <see cref="ColumnVolume"/>.</summary>
    public double ReliefVolume { get; init; }
}
