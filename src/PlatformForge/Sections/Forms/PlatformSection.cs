using PlatformForge.Geometry;
using PlatformForge.Geometry.Meshes;
using PlatformForge.Solids;
using PlatformForge.Solids.Bodies.Walls;
using PlatformForge.Units.Memories;
using static System.FormattableString;

namespace PlatformForge.Sections.Forms;

/// <summary>
/// One printable piece of a platform. <see cref="Solid"/> lies in the layout frame, where the piece will be;
/// <see cref="ToLayout"/> leads from the coordinates of its file (as it stands on the bed, least corner at the origin) to there.
/// </summary>
/// <param name="Platform">Name of the platform, such as Pendlewick up side.</param>
/// <param name="Number">Place in the row by increasing chainage, from 1.</param>
/// <param name="Count">Sections the platform has.</param>
/// <param name="From">Chainage of the lower cut or end, before trim, mm.</param>
/// <param name="To">Chainage of the upper cut or end, before trim, mm.</param>
/// <param name="Solid">The piece with its joints and engraving, layout frame.</param>
/// <param name="ToLayout">Proper rigid motion from file coordinates to the layout frame.</param>
/// <param name="Volumes">How the volume comes about.</param>
/// <param name="Pose">How it stands on the bed: <see cref="PrintPose.DeckDown"/> or <see cref="PrintPose.Upright"/>.</param>
/// <param name="Hull">Convex outline in file coordinates, counter-clockwise, mm.</param>
/// <param name="Size">Box in file coordinates, mm: the least corner is the origin.</param>
/// <param name="Estimate">Filament, time and cost.</param>
/// <param name="Overhangs">What hangs free in that pose.</param>
public sealed record PlatformSection(
    string Platform,
    int Number,
    int Count,
    double From,
    double To,
    Solid Solid,
    RigidTransform ToLayout,
    SectionVolumes Volumes,
    PrintPose Pose,
    IReadOnlyList<Point2> Hull,
    Point3 Size,
    PrintEstimate Estimate,
    OverhangReport Overhangs)
{
    // A slope of 1 in 700: less than that nobody calls a slope.
    private const double LevelCosine = 1 - 1e-6;

    /// <summary>Dowel bores in its two end faces, layout frame.</summary>
    public IReadOnlyList<Bore> Bores { get; init; } = [];

    /// <summary>Outlines of the pockets for plates under its two ends, layout frame, mm.</summary>
    public IReadOnlyList<IReadOnlyList<Point2>> Pockets { get; init; } = [];

    /// <summary>Its faced walls, laid flat.</summary>
    public IReadOnlyList<FacedWall> Faced { get; init; } = [];

    /// <summary>Width of the brim advised, mm; 0 where it needs none.</summary>
    public double Brim { get; init; }

    /// <summary>By how much its file is longer along x and y than the piece is to come out, about the file's origin; <see cref="ToLayout"/> holds for the
    /// piece as it comes
    /// out.</summary>
    public Point2 Stretch { get; init; } = new(1, 1);

    /// <summary>Name for lists and slicers, such as Pendlewick up side 3 of 5.</summary>
    public string Name => Invariant($"{Platform} {Number} of {Count}");

    /// <summary>From where to where it is made, chainages in mm: trimmed where it meets another section, and not at the platform's ends.</summary>
    /// <param name="trim">How much it is trimmed by, mm.</param>
    public (double From, double To) Trimmed(double trim) => (From + (Number > 1 ? trim : 0), To - (Number < Count ? trim : 0));

    /// <summary>Length along the chainage, mm, before trim.</summary>
    public double Length => To - From;

    /// <summary>How it stands on the bed, in words.</summary>
    public string PoseInWords => Pose != PrintPose.DeckDown ? "upright" : Math.Abs(ToLayout.Row2.Z) > LevelCosine ? "deck down" : "deck down, on its slope";

    /// <summary>The mesh in file coordinates, as 32-bit floats and without triangles too flat for these.</summary>
    /// <param name="memory">Where it is looked for first; nowhere when null.</param>
    public Mesh PrintMesh(Memory? memory = null) => (memory ?? Memory.None)
        .Of("print mesh", new PrintInput(Solid, ToLayout), static (i, _) => SliverMender.AsFloats(i.Solid.Mesh.Moved(i.ToLayout.Inverse())));

    /// <summary>The same as it is written, with the printer's correction in it.</summary>
    /// <param name="memory">Where it is looked for first; nowhere when null.</param>
    public Mesh WrittenMesh(Memory? memory = null) => Stretch == new Point2(1, 1) ? PrintMesh(memory) : (memory ?? Memory.None).Of(
        "written mesh", new WrittenInput(Solid, ToLayout, Stretch), static (i, _) =>
        SliverMender.AsFloats(i.Solid.Mesh.Moved(i.ToLayout.Inverse()).Stretched(i.Stretch)));

    private sealed record PrintInput(Solid Solid, RigidTransform ToLayout);

    private sealed record WrittenInput(Solid Solid, RigidTransform ToLayout, Point2 Stretch);
}

/// <summary>
/// How a section's volume comes about, mm³: <c>Finished = Plain - Trim + EndWalls - Bores - Relief - Engraving + Facing</c>.
/// </summary>
/// <param name="Plain">The platform between two cuts; these add up to the whole platform.</param>
/// <param name="Trim">Taken off at the joints so that lengths do not add up.</param>
/// <param name="EndWalls">Hollow filled by end walls and bosses.</param>
/// <param name="Bores">Taken out by dowel bores, slots and their mouths.</param>
/// <param name="Engraving">Taken out by the lettering underneath.</param>
public sealed record SectionVolumes(double Plain, double Trim, double EndWalls, double Bores, double Engraving)
{
    /// <summary>Taken off the edges of the end faces that lie on the bed.</summary>
    public double Relief { get; init; }

    /// <summary>What stands out of its faced walls.</summary>
    public double Facing { get; init; }

    public double Finished => Plain - Trim + EndWalls - Bores - Relief - Engraving + Facing;
}

/// <summary>A dowel bore in an end face: its mouth's middle, the unit direction into the material, and its measures in mm, layout frame.</summary>
/// <param name="Chainage">Chainage of the cut it belongs to.</param>
/// <param name="Mouth">Middle of the bore where its axis meets the end face.</param>
/// <param name="Inward">Unit direction from the mouth into the section, level.</param>
/// <param name="Diameter">Diameter of the circle that the bore's polygon is drawn around.</param>
/// <param name="Depth">Depth from the end face.</param>
/// <param name="Slot">Extra width across, 0 for the round bore.</param>
public sealed record Bore(double Chainage, Point3 Mouth, Point3 Inward, double Diameter, double Depth, double Slot);

/// <summary>Downward faces that have nothing under them in the print pose, mm².</summary>
/// <param name="Unsupported">Area flatter than 45 degrees, above the bed, and wider than a bridge.</param>
/// <param name="Bridged">Level area over a gap that can be bridged between standing walls.</param>
/// <param name="WidestBridge">Widest such gap, mm.</param>
public sealed record OverhangReport(double Unsupported, double Bridged, double WidestBridge)
{
    /// <summary>Area of the largest place with nothing under it, mm².</summary>
    public double Largest { get; init; }

    /// <summary>Its middle, file coordinates.</summary>
    public Point3 LargestAt { get; init; }

    /// <summary>How far the farthest part of the deck that counts as lying on the bed stands off it, mm: a crossfall on a curve is not quite a plane.</summary>
    public double Lift { get; init; }
}
