namespace PlatformForge.Platforms;

/// <summary>
/// What lies between a platform's faces: the boundaries of its strips along one spine, the chart of its first face. All lines share
/// <see cref="Stations"/>, and are in the spine's chainage and reach, mm.
/// </summary>
public sealed record BodyPlan
{
    /// <summary>Chainages of the spine at which a boundary bends, from the platform's start to its end.</summary>
    public required double[] Stations { get; init; }

    /// <summary>Front edge of the first face's coping.</summary>
    public required PlanLine CopingFront { get; init; }

    public required PlanLine CopingBack { get; init; }

    /// <summary>Face of the first face's wall towards its track.</summary>
    public required PlanLine WallFace { get; init; }

    /// <summary>Inner face of that wall.</summary>
    public required PlanLine WallBack { get; init; }

    /// <summary>Inner face of the wall on the far side: of the back wall, or of the second face's.</summary>
    public required PlanLine BackWallFace { get; init; }

    /// <summary>The platform's far edge: the outer face of its back wall, or the coping front of its second face.</summary>
    public required PlanLine Back { get; init; }
}
