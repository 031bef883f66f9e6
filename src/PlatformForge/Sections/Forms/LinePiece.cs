using PlatformForge.Geometry;
using PlatformForge.Geometry.Meshes;
using PlatformForge.Platforms.Specs;
using PlatformForge.Solids;
using PlatformForge.Solids.Bodies.Walls;
using PlatformForge.Units.Memories;
using static System.FormattableString;

namespace PlatformForge.Sections.Forms;

/// <summary>
/// A line of a section that is a print of its own: an inlay, which lies in its section's file as in the section, or a strip, which stands on the bed right way
/// up.
/// </summary>
/// <param name="Section">Number of its section.</param>
/// <param name="Line">Its place among the plan's lines, from 1.</param>
/// <param name="Made">How it is made.</param>
/// <param name="Solid">The piece, layout frame.</param>
/// <param name="ToLayout">From file coordinates to the layout frame.</param>
/// <param name="Hull">Convex outline in file coordinates, counter-clockwise, mm.</param>
/// <param name="Size">Box in file coordinates, mm.</param>
/// <param name="Estimate">Filament, time and cost.</param>
public sealed record LinePiece(
    int Section, int Line, LineMake Made, Solid Solid, RigidTransform ToLayout, IReadOnlyList<Point2> Hull, Point3 Size, PrintEstimate Estimate)
{
    /// <summary>By how much its file is longer along x and y than the piece is to come out, about the file's origin.</summary>
    public Point2 Stretch { get; init; } = new(1, 1);

    /// <summary>Its faced walls, laid flat, heights over the baseboard.</summary>
    public IReadOnlyList<FacedWall> Faced { get; init; } = [];

    /// <summary>Whether it is printed within its section.</summary>
    public bool IsInlay => Made.Form == LineForm.Inlay;

    /// <summary>Name for lists and slicers.</summary>
    /// <param name="section">That of its section.</param>
    public string Name(PlatformSection section) => Invariant($"{section.Name}, {Made.Name}{(Line > 1 ? Invariant($" {Line}") : "")}");

    /// <summary>The mesh in file coordinates as it is written, with the printer's correction in it.</summary>
    /// <param name="memory">Where it is looked for first; nowhere when null.</param>
    public Mesh WrittenMesh(Memory? memory = null) => (memory ?? Memory.None).Of(
        "written line", new WrittenInput(Solid, ToLayout, Stretch), static (i,
            _) => SliverMender.AsFloats(i.Solid.Mesh.Moved(i.ToLayout.Inverse()).Stretched(i.Stretch)));

    private sealed record WrittenInput(Solid Solid, RigidTransform ToLayout, Point2 Stretch);
}

/// <summary>A bed's worth of strips.</summary>
/// <param name="Number">From 1.</param>
/// <param name="Pieces">What stands on it, each with the motion from its file to the bed.</param>
/// <param name="Estimate">All of them together.</param>
public sealed record StripPlate(int Number, IReadOnlyList<(LinePiece Piece, RigidTransform ToBed)> Pieces, PrintEstimate Estimate);

/// <summary>All lines of a platform that are prints of their own.</summary>
/// <param name="Pieces">By section, then by line.</param>
/// <param name="Plates">The beds that strips are printed on.</param>
public sealed record LineSet(IReadOnlyList<LinePiece> Pieces, IReadOnlyList<StripPlate> Plates)
{
    public static LineSet None { get; } = new([], []);

    /// <summary>The inlays of a section.</summary>
    public IEnumerable<LinePiece> InlaysOf(int section) => Pieces.Where(p => p.IsInlay && p.Section == section);
}
