using PlatformForge.Platforms;

namespace PlatformForge.Exports.Reports;

/// <summary>How far apart the ribs across are, middle to middle, mm: asked at most, found, and where the greatest is.</summary>
public sealed record RibReport(double Asked, int Count, double Least, double Greatest, double GreatestFrom, double GreatestTo)
{
    internal static RibReport Of(RibPitch r) => new(r.Asked, r.Count, r.Least, r.Greatest, r.From, r.To);
}

/// <summary>A fence: chainages of its posts and, from each to the next, what stands there.</summary>
public sealed record FenceReport(double Pitch, FencePanels Panels, double PinDiameter, double HoleDiameter, double? HoleDepth, IReadOnlyList<double> Posts, IReadOnlyList<FenceBayReport> Bays)
{
    internal static FenceReport? Of(PlatformPlan plan) => plan is { Fence: { } fence, Spec.Fence: { } asked }
        ? new(asked.Pitch, asked.Panels, asked.PinDiameter, asked.PinDiameter + asked.Fit, asked.Depth, [.. fence.Posts.Select(p => p.Chainage)], [.. fence.Bays.Select(b => new FenceBayReport(b.Kind, b.Length, b.Asked))])
        : null;
}

/// <summary>What stands between two posts, its length straight from middle to middle, and the length asked for, mm.</summary>
public sealed record FenceBayReport(FenceBayKind Kind, double Length, double? Asked);
