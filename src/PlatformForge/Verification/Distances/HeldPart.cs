using PlatformForge.Clearance.Vehicles;
using PlatformForge.Verification.Written;

namespace PlatformForge.Verification.Distances;

/// <summary>A vehicle's part made ready for measuring.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Carrier">What carries it.</param>
/// <param name="Own">Its own heights, mm above the baseboard.</param>
/// <param name="Bare">Its outline, and the height band in which things are held away from it while it stands true.</param>
/// <param name="Loose">The same while it moves as it can: one outline where it stays upright, one a slice of height where it leans.</param>
internal sealed record HeldPart(string Name, PartCarrier Carrier, Slab Own, HeldOutline Bare, IReadOnlyList<HeldOutline> Loose)
{
    /// <param name="part">The part.</param>
    /// <param name="facts">What the platforms are held to.</param>
    /// <param name="railTop">Height of its track's rails over the baseboard, mm.</param>
    /// <param name="levels">Heights above the baseboard between which what leans is told apart, mm.</param>
    /// <param name="rolls">Whether what carries it leans on springs.</param>
    public static HeldPart Of(VehiclePart part, DesignFacts facts, double railTop, double[] levels, bool rolls = true)
    {
        double low = Math.Min(part.ZLow - facts.VerticalAllowance, facts.HeldDownTo + facts.RailTop - railTop ?? double.PositiveInfinity);
        var bare = new HeldOutline(Slab.Under(railTop + low, railTop + part.ZHigh + facts.VerticalAllowance), new(part.Outline));
        var leaning = new Leaning(part, rolls ? facts.Play : facts.Play with { Roll = 0 });
        var loose = leaning.Leans
            ? Slices(leaning, facts, railTop, levels)
            : [bare with { Slab = Slab.Under(railTop + low, railTop + part.ZHigh + facts.VerticalGap) }];
        return new(part.Name, part.Carrier, new(railTop + part.ZLow, railTop + part.ZHigh), bare, [.. loose]);
    }

    // What stands in a slice is held away from all of the part that comes within the vertical gap of everything in the slice, or, where no platform may
    // reach under a body,
    // from all that comes higher than the gap below it. So nothing is said to be too near that is not.
    private static IEnumerable<HeldOutline> Slices(Leaning leaning, DesignFacts facts, double railTop, double[] levels)
    {
        for (int i = 0; i + 1 < levels.Length; i++)
        {
            double low = levels[i] - railTop, high = levels[i + 1] - railTop, middle = (low + high) / 2;
            double from = Math.Min(high - facts.VerticalGap, middle), to = facts.HeldDownTo is null ? Math.Max(low + facts.VerticalGap, middle)
                : double.PositiveInfinity;
            if (leaning.Between(from, to) is { } outline)
            {
                yield return new(new(levels[i], levels[i + 1]), new(outline));
            }
        }
    }
}

/// <summary>An outline that what stands in a height band is held away from.</summary>
internal sealed record HeldOutline(Slab Slab, OutlineDistance Outline);
