using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;

namespace PlatformForge.Tests;

/// <summary>An opening in a deck as tests ask for it.</summary>
internal sealed record FoundOpening(string Name, double Chainage, double Reach, double Along, double Across, double? Depth, double BossWall)
{
    public double Diameter => Across;
}

/// <summary>A fence as its table tells it.</summary>
internal sealed record FoundFence(IReadOnlyList<FoundOpening> Posts, IReadOnlyList<FenceBay> Bays);

/// <summary>What a plan's neutral results say, by kind: only tests ask for that.</summary>
internal static class FoundFeatures
{
    extension(PlatformPlan plan)
    {
        /// <summary>Oblong openings.</summary>
        public IReadOnlyList<FoundOpening> Sockets => [.. plan.Openings.Where(o => !o.IsRound).Select(Found)];

        /// <summary>Round openings: of fence posts first, then single ones.</summary>
        public IReadOnlyList<FoundOpening> PostHoles => [.. plan.Openings.Where(o => o.IsRound).Select(Found)];

        /// <summary>The fence, read from the rows of its table; null without one.</summary>
        public FoundFence? Fence => plan.Features.FirstOrDefault(f => f.Name == "fence") is { } fence ? Read(fence) : null;
    }

    extension(PlatformSpec spec)
    {
        /// <summary>The sockets among what is asked for.</summary>
        public IReadOnlyList<SocketSpec> Sockets => spec.Of<SocketSpec>();

        /// <summary>The fence among it; null without one.</summary>
        public FenceSpec? Fence => spec.Of<FenceSpec>() is [var fence, ..] ? fence : null;
    }

    private static FoundOpening Found(Opening o) => new(o.Name, o.Middle.Chainage, o.Middle.Reach, o.Along, o.Across, o.Depth, o.BossWall);

    private static FoundFence Read(PlannedFeature fence)
    {
        var table = fence.Tables.Single();
        int next = table.Headings.ToList().IndexOf("next");
        var bays = table.Rows.SkipLast(1).Select(row => new FenceBay(
            row[next].Words switch
            {
                "gate" => FenceBayKind.Gate,
                "odd panel" => FenceBayKind.Odd,
                "panel" => FenceBayKind.Panel,
                var other =>
                throw new InvalidOperationException(other)
            },
            row[next + 1].Figure!.Value,
            row[next + 2].Figure));
        return new([.. fence.Openings.Select(Found)], [.. bays]);
    }
}
