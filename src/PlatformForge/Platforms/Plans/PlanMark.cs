using PlatformForge.Geometry;

namespace PlatformForge.Platforms.Plans;

/// <summary>Something that a plan shows of a feature, and the word for it in the key over the plan.</summary>
/// <param name="Legend">The word; marks of one form and word have one line in the key.</param>
public abstract record PlanMark(string Legend)
{
    /// <summary>What is written beside it (on it, where there is room); null for nothing.</summary>
    public string? Label { get; init; }

    /// <summary>Whether it is one of a row, which is named once: its name comes after those of single things.</summary>
    public bool InRow { get; init; }
}

/// <summary>A round opening.</summary>
public sealed record CircleMark(string Legend, PlanPlace Middle, double Diameter) : PlanMark(Legend);

/// <summary>An oblong opening or recess in the deck: a ring in the layout frame, and its sizes along and square to the track, mm.</summary>
public sealed record AreaMark(string Legend, PlanPlace Middle, Point2[] Ring, double Along, double Across) : PlanMark(Legend)
{
    /// <summary>What lies within it, as a cover does in its frame: a ring in the layout frame, and what it is called with its size; null for nothing.</summary>
    public (Point2[] Ring, string Name)? Inner { get; init; }
}

/// <summary>Something below the deck: a ring in the layout frame.</summary>
public sealed record HiddenMark(string Legend, PlanPlace Middle, Point2[] Ring) : PlanMark(Legend);

/// <summary>Something along a line between two places.</summary>
public sealed record LineMark(string Legend, PlanPlace From, PlanPlace To) : PlanMark(Legend);

/// <summary>A way through between two places, with a leaf that opens towards the track about the first of them.</summary>
public sealed record LeafMark(string Legend, PlanPlace From, PlanPlace To) : PlanMark(Legend);
