using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;

namespace PlatformForge.Exports.Drawings.Sections;

/// <summary>The outline of a bank's shell cut square to the track, mm: reach, and height over the baseboard.</summary>
internal static class BankRing
{
    /// <summary>From below the deck's back edge down its face, and up the inner side to the deck's underside.</summary>
    /// <param name="bank">The bank.</param>
    /// <param name="s">Chainage, mm.</param>
    /// <param name="edge">Reach of the deck's edge.</param>
    /// <param name="top">Its height.</param>
    /// <param name="deck">Thickness of the deck.</param>
    public static Point2[] Of(PlanBank bank, double s, double edge, double top, double deck)
    {
        double foot = bank.Foot.At(s), inner = Math.Max(edge, foot - bank.Thickness), within = edge + (bank.Slope * deck) - bank.Thickness;
        double over = Math.Max(0, top - bank.Depth - ((inner - edge) / bank.Slope));
        return [new(foot, bank.Ground), new(foot, 0), new(inner, 0), new(inner, over), new(within, top - deck)];
    }

    /// <summary>The outline of a bank that is a print of its own.</summary>
    /// <param name="bank">The bank.</param>
    /// <param name="s">Chainage, mm.</param>
    /// <param name="top">Height of the deck's edge.</param>
    public static Point2[] Apart(PlanBank bank, double s, double top) =>
        [new(bank.Edge.At(s), 0), new(bank.Edge.At(s), top), new(bank.Foot.At(s), bank.Ground), new(bank.Foot.At(s), 0)];
}
