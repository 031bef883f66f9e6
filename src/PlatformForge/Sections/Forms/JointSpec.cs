using PlatformForge.Units;

namespace PlatformForge.Sections.Forms;

/// <summary>How two sections are held in line.</summary>
public enum JointKind
{
    /// <summary>Plain butted ends.</summary>
    None,

    /// <summary>Loose dowels in blind bores of both faces: one round bore, one slotted.</summary>
    Dowel,

    /// <summary>Two flat strips across the joint, let into both pieces from underneath and glued: for platforms too low for dowels.</summary>
    Plate,
}

/// <summary>Joints between sections, mm. Both faces are female, so either can lie on the bed.</summary>
public sealed record JointSpec
{
    private const double UsualEndWall = 2;

    private readonly double? endWall;

    public JointKind Kind { get; init; } = JointKind.Dowel;

    /// <summary>Diameter of the loose dowel; a cut length of filament is 1.75.</summary>
    public double DowelDiameter { get; init; } = 1.75;

    /// <summary>Length to cut a dowel or a plate to; half of it goes into each section.</summary>
    public double DowelLength { get; init; } = 12;

    /// <summary>Bore over dowel, on the diameter.</summary>
    public double Fit { get; init; } = 0.2;

    /// <summary>Bore deeper than half the dowel by this.</summary>
    public double DepthAllowance { get; init; } = 0.5;

    /// <summary>Widening of a bore's mouth against the squashed first layer, on the radius and in depth.</summary>
    public double MouthChamfer { get; init; } = 0.4;

    /// <summary>Play of the slotted bore along the slot, on top of the fit.</summary>
    public double SlotPlay { get; init; } = 1;

    /// <summary>Taken off each end at a joint, so that lengths do not add up: along the track, the end staying square to it. On a curve of curvature κ that is
    /// EndTrim × (1 − κt) at a reach t, 0.1 mm ± 0.02 at 60 mm from a track of 300 mm radius.</summary>
    public double EndTrim { get; init; } = 0.1;

    /// <summary>Greatest trim of an end, mm: a wider joint would show, and the dowels would hardly reach.</summary>
    public const double MostEndTrim = 1;

    /// <summary>Thickness of the wall that closes a section at a joint.</summary>
    public double EndWall
    {
        get => endWall ?? UnaskedEndWall;
        init => endWall = value;
    }

    /// <summary>What such a wall is thick where that is not stated, mm.</summary>
    public double UnaskedEndWall { get; init; } = UsualEndWall;

    /// <summary>The joint for a nozzle so wide, mm: unasked its walls are two lines thick.</summary>
    internal JointSpec Printed(double nozzle) => this with { UnaskedEndWall = Math.Max(UsualEndWall, PrintedLines.Two(nozzle)) };

    /// <summary>Width of a plate; a strip of sheet plastic (common practice, no source).</summary>
    public double PlateWidth { get; init; } = 5;

    /// <summary>Thickness of a plate; sheet plastic of 1 mm (common practice, no source).</summary>
    public double PlateThickness { get; init; } = 1;

    /// <summary>Chamfer of the end face along the edge that lies on the bed, against the squashed first layer.</summary>
    public double FaceRelief { get; init; } = 0.3;

    /// <summary>Key of the joint in the project file, for findings.</summary>
    public string Key { get; init; } = "joint";

    /// <summary>Diameter of the bore.</summary>
    public double BoreDiameter => DowelDiameter + Fit;

    /// <summary>Width of a plate's pocket.</summary>
    public double PocketWidth => PlateWidth + Fit;

    /// <summary>Height of a plate's pocket over the baseboard.</summary>
    public double PocketHeight => PlateThickness + Fit;

    /// <summary>Depth of the bore or the pocket from the section's end face.</summary>
    public double BoreDepth => (DowelLength / 2) - EndTrim + DepthAllowance;
}
