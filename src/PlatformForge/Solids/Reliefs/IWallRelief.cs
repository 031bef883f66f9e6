namespace PlatformForge.Solids.Reliefs;

/// <summary>What takes the place of a named wall face's plain panels: courses, planks, a pattern.</summary>
public interface IWallRelief
{
    /// <summary>
    /// The fields that stand out of a panel or are sunk into it. They lie inside its border and apart from one another, and may run over its folds.
    /// </summary>
    IEnumerable<ReliefField> Fields(WallPanel panel);
}
