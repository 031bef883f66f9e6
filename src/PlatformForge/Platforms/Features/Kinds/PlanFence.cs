namespace PlatformForge.Platforms.Features.Kinds;

/// <summary>What stands between two posts of a fence.</summary>
internal enum FenceBayKind
{
    /// <summary>One panel of several alike.</summary>
    Panel,

    /// <summary>A panel of another length than the whole ones, to be cut to it.</summary>
    Odd,

    /// <summary>A gate or steps.</summary>
    Gate,
}

/// <summary>From one post to the next.</summary>
/// <param name="Kind">What stands there.</param>
/// <param name="Length">Straight from middle to middle of the two posts, mm: what a panel measures.</param>
/// <param name="Asked">The length asked for: pitch, or a gate's width, mm; null for an odd panel.</param>
internal sealed record FenceBay(FenceBayKind Kind, double Length, double? Asked);

/// <summary>Panels or gates of one kind and length.</summary>
/// <param name="Kind">What they are.</param>
/// <param name="Length">Length of each, mm.</param>
/// <param name="Count">How many.</param>
internal sealed record FencePart(FenceBayKind Kind, double Length, int Count);

/// <summary>A fence as planned.</summary>
/// <param name="Posts">Holes of its posts by increasing chainage.</param>
/// <param name="Bays">What stands between each and the next: one fewer than posts.</param>
internal sealed record PlanFence(IReadOnlyList<RoundHole> Posts, IReadOnlyList<FenceBay> Bays)
{
    // Lengths that are told alike, to a hundredth of a millimetre, are one kind of panel.
    private const int ToldDigits = 2;

    /// <summary>Panels and gates of one kind and length, in order of kind and falling length, with how many there are.</summary>
    public IReadOnlyList<FencePart> Parts =>
        [.. Bays.GroupBy(b => new FencePart(b.Kind, Math.Round(b.Length, ToldDigits), 1)).OrderBy(g => g.Key.Kind).ThenByDescending(g => g.Key.Length)
            .Select(g => g.Key with { Count = g.Count() })];
}
