using PlatformForge.Masonry;
using PlatformForge.Platforms.Features;
using PlatformForge.Units;

namespace PlatformForge.Platforms.Specs;

/// <summary>
/// A side platform as asked for. Lengths are mm of the model; every part has defaults for 4 mm scale, and
/// <see cref="For"/> gives those of another scale. Heights are above rail top, as the trade states them.
/// </summary>
/// <param name="Name">Name of the platform.</param>
/// <param name="Face">Where it faces its track.</param>
public sealed record PlatformSpec(string Name, FaceSpec Face)
{
    /// <summary>Full-size height of a platform above rail top, mm (Track Design Handbook RT/CE/S/04, A.8.1).</summary>
    public const double FullSizeHeight = 915;

    /// <summary>Key of this platform in the project file, for findings.</summary>
    public string Key { get; init; } = "platform[0]";

    /// <summary>A second face on the platform's other side, which makes it an island; null where the platform has a back. Its ends lie straight across from
    /// those of
    /// <see cref="Face"/>, whatever they say, and ramps, cuts and the deck's width follow from the first face.</summary>
    public FaceSpec? OtherFace { get; init; }

    /// <summary>All faces in the order of the project file.</summary>
    public IReadOnlyList<FaceSpec> Faces => OtherFace is { } other ? [Face, other] : [Face];

    /// <summary>Whether it has faces on both sides.</summary>
    public bool IsIsland => OtherFace is not null;

    /// <summary>Key of the face that is worked on in the project file, for findings.</summary>
    public string FaceKey => $"{Key}.{Face.Key}";

    /// <summary>The white line along the face that is worked on.</summary>
    public WhiteLineSpec? EdgeLine => Face.WhiteLine ?? WhiteLine;

    /// <summary>Height of the coping's top above rail top. Default 915/76.2 = 12.008.</summary>
    public double Height { get; init; } = FullSizeHeight / 76.2;

    /// <summary>Ramp at the lower chainage; null ends the platform with a wall.</summary>
    public RampSpec? StartRamp { get; init; }

    /// <summary>Ramp at the higher chainage.</summary>
    public RampSpec? EndRamp { get; init; }

    public DeckSpec Deck { get; init; } = new();

    public CopingSpec Coping { get; init; } = new();

    public WallSpec Walls { get; init; } = new();

    public RibSpec Ribs { get; init; } = new();

    /// <summary>What closes it behind; of no meaning on an island.</summary>
    public BackSpec Back { get; init; } = new();

    /// <summary>How far its ends are off the square.</summary>
    public SkewSpec Skew { get; init; } = new();

    /// <summary>Bents that carry the deck in place of walls and ribs; null where walls do.</summary>
    public TrestleSpec? Trestle { get; init; }

    /// <summary>What its walls are faced with; null leaves them plain.</summary>
    public FacingSpec? Facing { get; init; }

    /// <summary>What the wall under the coping takes up behind its face, mm: its thickness, and what it is set back by.</summary>
    public double FrontDepth => Walls.FrontThickness + (Facing?.SetBack(false) ?? 0);

    /// <summary>The same platform, its coping told how deep the wall under it is, since an overhang that is not stated follows it, its
    /// facing whether a back wall is seen, its white lines where margins of the coping are told by lines, its kerb what
    /// goes through it, and its fence what it keeps before.</summary>
    internal PlatformSpec Seated => this with
    {
        Coping = Coping with { Seat = SeatDepth },
        WhiteLine = OffMargins(WhiteLine),
        Face = Face with { WhiteLine = OffMargins(Face.WhiteLine) },
        OtherFace = OtherFace is { } other ? other with { WhiteLine = OffMargins(other.WhiteLine) } : null,
        Facing = Facing is { } facing ? facing with { HasBack = IsIsland || Back.ShowsWall } : null,
        Features = Back.Retaining is { } wall ? [.. Features.Select(f => f.Before(BackSpec.Lip + wall.Taken))] : Features,
        Back = Back.Kerb is { } kerb ? Back with { Kerb = kerb with { Carried = Features.Select(f => f.BackReach).DefaultIfEmpty(0).Max() } } : Back,
    };

    /// <summary>The same platform, seated, for a nozzle and layers of so many mm: what of it is not stated yields to them. Walls give first, then what is cut
    /// into them.</summary>
    internal PlatformSpec Printed(double nozzle, double layer = 0.2)
    {
        var joints = Facing?.Printed(nozzle, double.PositiveInfinity, double.PositiveInfinity);
        var walls = Walls.Printed(nozzle, joints is null ? default : (joints.CutInto(false), joints.CutInto(true), joints.CutIntoEnds));
        return (this with
        {
            Walls = walls,
            Ribs = Ribs.Printed(nozzle),
            Trestle = Trestle?.Printed(nozzle),
            WhiteLine = WhiteLine?.Printed(nozzle, layer),
            Face = Face with { WhiteLine = Face.WhiteLine?.Printed(nozzle, layer) },
            OtherFace = OtherFace is { } other ? other with { WhiteLine = other.WhiteLine?.Printed(nozzle, layer) } : null,
            Tactile = Tactile?.Printed(nozzle),
            Features = [.. Features.Select(f => f.Printed(nozzle))],
            Deck = Deck.Printed(nozzle),
            Facing = Facing?.Printed(nozzle, walls.FrontThickness, IsIsland ? walls.FrontThickness : walls.BackThickness),
        }).Seated;
    }

    private WhiteLineSpec? OffMargins(WhiteLineSpec? line) => line is null ? null : line with { Margins = (Coping with { Seat = SeatDepth }).Margins };

    /// <summary>How much of the wall's depth the coping has to lie on, mm from the wall's face: all of it, but for what corbelled courses bring out under it;
    /// so much at least that
    /// it covers what is set back, with half the wall.</summary>
    public double SeatDepth => Math.Max(FrontDepth - (Facing?.Corbel?.Out ?? 0), FrontDepth - (Walls.FrontThickness / 2));

    /// <summary>What the back wall takes up, mm; nothing where there is none.</summary>
    public double BackDepth => IsIsland || Back.HasWall ? Walls.BackThickness + (Facing?.SetBack(true) ?? 0) : 0;

    /// <summary>What the wall at either end takes up, mm: of two the deeper.</summary>
    public double EndDepth => Math.Max(EndDepthAt(false), EndDepthAt(true));

    /// <summary>What the wall at an end takes up, mm: its thickness, and what it is set back by.</summary>
    public double EndDepthAt(bool atEnd) => Walls.EndThickness + (Facing?.ProfileDepth ?? 0) + Coping.EndOverhang(atEnd);

    public WhiteLineSpec? WhiteLine { get; init; }

    /// <summary>The tactile strip along its edges; null where there is none.</summary>
    public TactileSpec? Tactile { get; init; }

    /// <summary>All that stands on it and is let into it, those of one kind together in their order.</summary>
    public IReadOnlyList<FeatureSpec> Features { get; init; } = [];

    /// <summary>The same platform with each of its features changed, or, where the change gives none, without it. A feature keeps its kind.</summary>
    internal PlatformSpec WithFeatures(Func<FeatureSpec, FeatureSpec?> change) => this with { Features = [.. Features.Select(change).OfType<FeatureSpec>()] };

    /// <summary>Chainages at which the platform must be cut; a coping joint is put there, and dowels hold the sections in line as at any cut.</summary>
    public IReadOnlyList<double> ForcedCuts { get; init; } = [];

    /// <summary>Chainages of joints in the baseboard: the platform is cut there, and nothing crosses, since the joint has to come apart.</summary>
    public IReadOnlyList<double> BaseboardJoints { get; init; } = [];

    /// <summary>All cuts that are stated, of both kinds.</summary>
    public IEnumerable<double> StatedCuts => ForcedCuts.Concat(BaseboardJoints);

    /// <summary>The features of a kind.</summary>
    public IReadOnlyList<T> Of<T>()
        where T : FeatureSpec => [.. Features.OfType<T>()];

    /// <summary>The same platform with other features of a kind, after those of all other kinds.</summary>
    public PlatformSpec With<T>(IReadOnlyList<T> features)
        where T : FeatureSpec => this with { Features = Replaced(features) };

    /// <summary>A platform with the defaults of a scale.</summary>
    public static PlatformSpec For(ModelScale scale, string name, FaceSpec face) => new(name, face)
    {
        Height = scale.ToModel(FullSizeHeight),
        Deck = DeckSpec.For(scale),
        Coping = CopingSpec.For(scale),
    };

    private FeatureSpec[] Replaced<T>(IReadOnlyList<T> features)
        where T : FeatureSpec => [.. Features.Where(f => f is not T), .. features];
}
