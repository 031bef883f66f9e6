using PlatformForge.Geometry;
using PlatformForge.Geometry.Meshes;
using PlatformForge.Sections.Forms;
using PlatformForge.Solids;
using PlatformForge.Units.Memories;

namespace PlatformForge.Proofs;

/// <summary>What a proof is for.</summary>
public enum ProofKind
{
    /// <summary>The whole cross-section, a little way along the track.</summary>
    Slice,

    /// <summary>Rides on both rails and carries height and offset of coping and wall foot.</summary>
    SlideGauge,

    /// <summary>A vehicle's outline with pencil holes.</summary>
    ThrowBoard,

    /// <summary>What carries a throw board between the rails.</summary>
    ThrowShoe,

    /// <summary>The outline of a section in plan, thin.</summary>
    Footprint,

    /// <summary>Covers the deck while copings are painted, or leaves the white line free.</summary>
    Mask,

    /// <summary>Bores or pockets of joints at several fits.</summary>
    JointCoupon,

    /// <summary>Openings of the deck at several fits.</summary>
    HoleCoupon,

    /// <summary>100 mm along and across the bed.</summary>
    Strip,
}

/// <summary>A figure that a proof shows.</summary>
/// <param name="What">What it is of.</param>
/// <param name="Value">The figure.</param>
/// <param name="Unit">Its unit.</param>
public readonly record struct ProofFigure(string What, double Value, string Unit = "mm")
{
    /// <summary>What a slide gauge's play and air are told as.</summary>
    public const string Play = "play between the rails, each side", Air = "air at coping and wall";
}

/// <summary>
/// One solid that is printed to prove something. <see cref="Solid"/> lies in a frame of its own or on the layout; <see cref="FromFile"/> leads from the
/// coordinates of its
/// file, as it stands on the bed, to that frame.
/// </summary>
/// <param name="Group">What it is printed with: one of <see cref="ProofGroups"/>.</param>
/// <param name="Platform">Name of the platform; empty for what belongs to the printer.</param>
/// <param name="Name">What it is called, unlike any other.</param>
/// <param name="Kind">What it is for.</param>
/// <param name="Solid">The solid.</param>
/// <param name="FromFile">From file coordinates to the solid's frame.</param>
/// <param name="Figures">What it shows.</param>
public sealed record Proof(string Group, string Platform, string Name, ProofKind Kind, Solid Solid, RigidTransform FromFile, IReadOnlyList<ProofFigure> Figures)
{
    /// <summary>From the solid's frame to the layout, where it has a place there; null for what has none.</summary>
    public RigidTransform? ToLayout { get; init; }

    /// <summary>Track that it rides on, and the chainage in mm at which it does; null for what rides nowhere.</summary>
    public (string Track, double Chainage)? Rides { get; init; }

    /// <summary>A letter and a number that no other gauge of the build has, cut into it; empty for what is told by its other marks.</summary>
    public string Mark { get; init; } = "";

    /// <summary>Everything that is cut into it, line by line.</summary>
    public IReadOnlyList<string> Engraved { get; init; } = [];

    /// <summary>What it is for and how it is used, in a sentence or two.</summary>
    public string Use { get; init; } = "";

    /// <summary>Convex outline in file coordinates, mm.</summary>
    public IReadOnlyList<Point2> Hull { get; init; } = [];

    /// <summary>Box in file coordinates, mm.</summary>
    public Point3 Size { get; init; }

    /// <summary>Filament, time and cost.</summary>
    public PrintEstimate Estimate { get; init; } = new(0, 0, 0, 0, 0, null);

    /// <summary>What hangs free as it stands on the bed.</summary>
    public OverhangReport Overhangs { get; init; } = new(0, 0, 0);

    /// <summary>By how much its file is longer along x and y than it is to come out.</summary>
    public Point2 Stretch { get; init; } = new(1, 1);

    /// <summary>The mesh as it is written.</summary>
    public Mesh WrittenMesh(Memory? memory = null) => (memory ?? Memory.None).Of(
        "written proof", new Written(Solid, FromFile, Stretch), static (i, _) =>
            SliverMender.AsFloats(i.Solid.Mesh.Moved(i.FromFile.Inverse()).Stretched(i.Stretch)));

    private sealed record Written(Solid Solid, RigidTransform FromFile, Point2 Stretch);
}

/// <summary>A bed's worth of proofs.</summary>
/// <param name="Platform">Name of the platform; empty for what belongs to the printer.</param>
/// <param name="Group">What they have in common.</param>
/// <param name="Number">From 1 within the group.</param>
/// <param name="Proofs">What stands on it, and the shift from its file's coordinates to the bed's.</param>
/// <param name="Estimate">All of it together.</param>
public sealed record ProofPlate(string Platform, string Group, int Number, IReadOnlyList<PlacedProof> Proofs, PrintEstimate Estimate);

/// <summary>A proof on a bed.</summary>
/// <param name="Proof">The proof.</param>
/// <param name="ToBed">A turn about z and a level shift.</param>
public sealed record PlacedProof(Proof Proof, RigidTransform ToBed);

/// <summary>Everything that is printed before the platform is.</summary>
/// <param name="Proofs">In the order in which they are used.</param>
/// <param name="Plates">The beds.</param>
public sealed record ProofSet(IReadOnlyList<Proof> Proofs, IReadOnlyList<ProofPlate> Plates);

/// <summary>What is printed together.</summary>
public static class ProofGroups
{
    public const string Gauges = "gauges", Footprints = "footprints", Masks = "masks", Coupons = "coupons", Strip = "strip";
}
