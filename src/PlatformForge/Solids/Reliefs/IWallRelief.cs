namespace PlatformForge.Solids.Reliefs;

/// <summary>What takes the place of named wall faces' plain panels: courses, planks, a pattern. Given for several faces, it goes round the corners between
/// them.</summary>
public interface IWallRelief
{
    /// <summary>
    /// The fields that stand out of a panel or are sunk into it. They lie inside its border and apart from one another, and may run over its folds; no corner
    /// of one stands on a fold unless its outline crosses the fold there.
    /// </summary>
    IEnumerable<ReliefField> Fields(WallPanel panel);

    /// <summary>What the wall shows between the fields, as meshes number it (<c>Solids.Paint</c>); as without a relief where null.</summary>
    byte? Ground => null;

    /// <summary>Whether fields of other walls come out in it, which are told first: a flat wall of one face, with no fields of its own.</summary>
    bool IsBehind => false;

    /// <summary>What the fields show; what the wall shows without a relief where null.</summary>
    byte? Face => null;
}
