using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;

namespace PlatformForge.Exports.Drawings.Elevations.Walls;

/// <summary>The faces of a bank's return, as elevations show them from behind and from beyond the end, from where each is seen.</summary>
internal static class ReturnFacets
{
    /// <summary>The line round each: where they meet in a corner thicker ones would be a blot.</summary>
    public static readonly Pen Pen = new(0.08, HouseStyle.Quiet);

    /// <summary>Corners of each, places in plan with their heights over the baseboard, mm; first of all the ground under them where it lies over the
    /// baseboard.</summary>
    public static IEnumerable<IReadOnlyList<(Point2 Place, double Height)>> Of(PlanBank bank, BankReturn turn)
    {
        if (bank.Ground > 0)
        {
            Point2 from = turn.Toe[0], to = turn.Toe[^1];
            yield return [(from, 0), (to, 0), (to, bank.Ground), (from, bank.Ground)];
        }

        for (int i = 0; i + 1 < turn.Toe.Count; i++)
        {
            yield return [(turn.Corner, turn.Top), (turn.Toe[i], bank.Ground), (turn.Toe[i + 1], bank.Ground)];
        }
    }
}
