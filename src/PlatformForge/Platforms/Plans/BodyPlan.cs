namespace PlatformForge.Platforms.Plans;

/// <summary>
/// What lies between a platform's faces: the boundaries of its strips along one spine. All lines share
/// <see cref="Stations"/>, and are in the spine's chainage and reach, mm.
/// </summary>
public sealed record BodyPlan
{
    /// <summary>Chainages of the spine at which a boundary bends, from the platform's start to its end.</summary>
    public required double[] Stations { get; init; }

    /// <summary>The lines across between two faces; null where the platform has a back, and they are square to its track.</summary>
    public LinesAcross? Across { get; init; }

    /// <summary>Front edge of the first face's coping.</summary>
    public required PlanLine CopingFront { get; init; }

    public required PlanLine CopingBack { get; init; }

    /// <summary>Face of the first face's wall towards its track.</summary>
    public required PlanLine WallFace { get; init; }

    /// <summary>Inner face of that wall.</summary>
    public required PlanLine WallBack { get; init; }

    /// <summary>Inner face of the wall on the far side: of the back wall, or of the second face's.</summary>
    public required PlanLine BackWallFace { get; init; }

    /// <summary>Outer face of the wall on the far side, where the deck ends: the platform's back, or the face of the second face's wall towards its
    /// track.</summary>
    public required PlanLine FarWallFace { get; init; }

    /// <summary>Where walls stand that are faced in relief: behind their faces by its depth, so that what stands out of them stands at the face.</summary>
    public WallGround? Ground { get; init; }

    /// <summary>The line that the first face's wall stands on: <see cref="WallFace"/>, or the ground of its facing.</summary>
    public PlanLine WallLine => Ground?.Near ?? WallFace;

    /// <summary>The line that the wall on the far side stands on.</summary>
    public PlanLine FarWallLine => Ground?.Far ?? FarWallFace;

    /// <summary>
    /// The lines between which walls at joints stand: over the outer walls, or between them where these are faced, whose faces then end alike everywhere.
    /// </summary>
    public (PlanLine Near, PlanLine Far) EndWalls => Ground is null ? (WallFace, FarWallFace) : (WallBack, BackWallFace);

    /// <summary>Chainage at which walls begin, mm.</summary>
    public double WallsFrom => Ground?.From ?? Stations[0];

    /// <summary>Chainage at which walls end, mm.</summary>
    public double WallsTo => Ground?.To ?? Stations[^1];

    /// <summary>Inner edge of the second face's coping; null where the far side is a back.</summary>
    public PlanLine? FarCopingBack { get; init; }

    /// <summary>The platform's far edge: the outer face of its back wall, or the coping front of its second face.</summary>
    public required PlanLine Back { get; init; }

    /// <summary>White lines and tactile strips of all faces.</summary>
    public IReadOnlyList<LineBand> Lines { get; init; } = [];

    /// <summary>What the walking surface is made of, in the order in which it is laid: the deck from wall to wall, then a coping for each face.</summary>
    public IReadOnlyList<PlanStrip> Top => FarCopingBack is { } far
        ? [new(StripRole.Deck, WallLine, FarWallLine), new(StripRole.Coping, CopingFront, CopingBack), new(StripRole.Coping, far, Back)]
        : [new(StripRole.Deck, WallLine, FarWallFace), new(StripRole.Coping, CopingFront, CopingBack)];

    /// <summary>What stands on the baseboard along the platform, near to far.</summary>
    public IReadOnlyList<PlanStrip> Standing => [new(StripRole.Wall, WallLine, WallBack), new(StripRole.Wall, BackWallFace, FarWallLine)];

    /// <summary>Edges of copings with their arrises, each with the direction in reach that leads into the platform.</summary>
    public IReadOnlyList<(PlanLine Edge, int Inward)> Arrises => FarCopingBack is null ? [(CopingFront, 1)] : [(CopingFront, 1), (Back, -1)];

    /// <summary>How wide the platform is at a chainage of the spine, edge to edge along the line across, mm.</summary>
    public double WidthAt(double chainage) => Back.At(chainage) - CopingFront.At(chainage);

    /// <summary>The farthest reach at which something of a size may stand on the deck behind the near coping and before what is on the far side.</summary>
    /// <param name="chainage">Chainage on the spine, mm.</param>
    /// <param name="land">Material kept between it and the outside, mm.</param>
    public double Farthest(double chainage, double land) =>
        FarCopingBack is { } far ? Math.Min(far.At(chainage), FarWallFace.At(chainage) - land) : Back.At(chainage) - land;
}

/// <summary>What a strip of a body is.</summary>
public enum StripRole
{
    /// <summary>The floor.</summary>
    Deck,

    /// <summary>The slabs along an edge.</summary>
    Coping,

    /// <summary>Stands between baseboard and deck.</summary>
    Wall,
}

/// <summary>What lies between two boundaries of a body.</summary>
/// <param name="Role">What it is.</param>
/// <param name="Near">Its boundary towards the first face's track.</param>
/// <param name="Far">Its other boundary.</param>
public sealed record PlanStrip(StripRole Role, PlanLine Near, PlanLine Far);

/// <summary>Where faced walls stand, in the spine's chainage and reach, mm.</summary>
/// <param name="Near">Line of the first face's wall; null where that is plain.</param>
/// <param name="Far">Line of the far wall; null where that is plain.</param>
/// <param name="From">Chainage at which walls begin.</param>
/// <param name="To">Chainage at which walls end.</param>
public sealed record WallGround(PlanLine? Near, PlanLine? Far, double From, double To);
