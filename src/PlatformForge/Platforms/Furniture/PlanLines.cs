namespace PlatformForge.Platforms.Furniture;

/// <summary>The long lines of a platform, all parallel to its coping front.</summary>
internal sealed record PlanLines(PlanLine CopingFront, PlanLine CopingBack, PlanLine WallFace, PlanLine WallBack, PlanLine BackWallFace, PlanLine Back)
{
    public static PlanLines Of(PlatformSpec spec, PlanLine front)
    {
        double face = spec.Coping.Overhang, width = spec.Deck.Width;
        return new(
            front,
            front.Shifted(spec.Coping.Width),
            front.Shifted(face),
            front.Shifted(face + spec.Walls.FrontThickness),
            front.Shifted(width - spec.Walls.BackThickness),
            front.Shifted(width));
    }

    /// <summary>The same as a body on a spine.</summary>
    public BodyPlan Body => new()
    {
        Stations = CopingFront.Stations,
        CopingFront = CopingFront,
        CopingBack = CopingBack,
        WallFace = WallFace,
        WallBack = WallBack,
        BackWallFace = BackWallFace,
        Back = Back,
    };
}
