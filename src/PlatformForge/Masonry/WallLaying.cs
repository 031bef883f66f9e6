namespace PlatformForge.Masonry;

/// <summary>What all finishes of a platform's walls have in common, mm of the model.</summary>
/// <param name="Joint">Width of joints.</param>
/// <param name="Depth">How far what stands out does so.</param>
/// <param name="Datum">Height of the top of a course, from which all others follow up and down.</param>
/// <param name="Stop">Joint kept at the foot and where a wall stops.</param>
/// <param name="Bed">Least joint kept under the upper edge.</param>
/// <param name="LeastPiece">Pieces cut by a slope or by the foot that are lower or shorter are left out.</param>
public sealed record WallLaying(double Joint, double Depth, double Datum, double Stop, double Bed, double LeastPiece)
{
    /// <summary>Joint kept over the lower edge, mm: that of stops, but over a ledge of the wall.</summary>
    public double Foot { get; init; } = Stop;

    /// <summary>Height from the ground under the lowest course to the coping, mm, which whole courses fill; nothing where they go on as they come.</summary>
    public double Room { get; init; }

    /// <summary>How far these courses stand before the wall's deepest part, mm: by so much farther apart are its corners, and nearer its inner ones, so the
    /// bond is set
    /// out by the deepest part's lengths.</summary>
    public double Beyond { get; init; }

    /// <summary>Joint kept where a wall ends that does not go round a corner, mm: at a stop, or, together with the other one's, in an inner corner.</summary>
    public double StopAt(bool inside) => inside ? Depth + (Joint / 2) : Stop;
}

/// <summary>A finish with its figures: how it is laid on a wall laid flat.</summary>
/// <param name="Laying">What all finishes have in common.</param>
public abstract record WallWork(WallLaying Laying)
{
    /// <summary>Which finish it is.</summary>
    public abstract WallFinish Finish { get; }

    /// <summary>Lays it on a wall.</summary>
    public abstract IWallPattern On(FlatWall wall);
}

/// <summary>What stands out of a wall laid flat. The same wall and figures, the same regions.</summary>
public interface IWallPattern
{
    /// <summary>How much longer than asked for the pieces of the run are that is drawn out most, as a share.</summary>
    double GreatestDraw { get; }

    /// <summary>What stands out, course by course from the top where there are courses.</summary>
    IEnumerable<WallRegion> Regions();
}
