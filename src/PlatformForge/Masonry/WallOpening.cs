namespace PlatformForge.Masonry;

/// <summary>An opening in a wall laid flat, as it is asked for: all in mm.</summary>
/// <param name="At">Place of its middle along the wall.</param>
/// <param name="Shape">Its figures.</param>
public readonly record struct WallOpening(double At, OpeningShape Shape);

/// <summary>Figures of an opening, mm.</summary>
/// <param name="Width">Its width.</param>
/// <param name="Sill">Height of its lower edge.</param>
/// <param name="Height">From there to its crown.</param>
/// <param name="Rise">From springing to crown; nought under a flat head.</param>
/// <param name="Depth">How far its floor lies behind what is laid beside it.</param>
/// <param name="Ring">Height of the arch's voussoirs; nought where they cannot be printed.</param>
/// <param name="Voussoir">Least width of a voussoir with its joint, along the arch's soffit.</param>
public sealed record OpeningShape(double Width, double Sill, double Height, double Rise, double Depth, double Ring, double Voussoir)
{
    /// <summary>How far the lintel over a flat head lies on the wall on either side, mm; nothing where there is none.</summary>
    public double Bearing { get; init; }

    /// <summary>Which of the openings planned for its platform it is, counted from 1; nothing for one that no plan has.</summary>
    public int Number { get; init; }

    /// <summary>Name of the face behind the wall in which it comes out; null for a recess.</summary>
    public string? Behind { get; init; }
}
