using PlatformForge.Exports.Drawings.Gaps;
using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Geometry;
using static System.FormattableString;

namespace PlatformForge.Exports.Drawings.Elevations;

/// <summary>A height at an end of a row.</summary>
/// <param name="Height">Over the baseboard, mm.</param>
/// <param name="Word">What is so high.</param>
internal sealed record RowLevel(double Height, string Word)
{
    /// <summary>How far from the row's end it is so high, mm of the model.</summary>
    public double In { get; init; }
}

/// <summary>Heights at an end of a row of an elevation, all from the baseboard, with those over the rails in brackets: each beside its place, or moved from it
/// along a bent line so that no two meet.</summary>
internal static class RowLevels
{
    /// <summary>Room that they take beside a row, mm.</summary>
    public const double Room = 34;

    // mm: from the row to where lines bend, to their words, and from one to the next.
    private const double Bend = 2, Words = 6, Gap = 2.9;

    /// <summary>How far they reach over a row whose upper edge lies on the sheet at a height over the baseboard, and under its line, mm.</summary>
    public static (double Over, double Under) Beyond(IReadOnlyList<RowLevel> levels, double scale, (double Base, double Top) row)
    {
        double[] places = Places(levels, scale);
        return places.Length == 0 ? (0, 0)
            : (Math.Max(0, places[^1] + (Gap / 2) - (scale * row.Top)), Math.Max(0, (scale * row.Base) - places[0] + (Gap / 2)));
    }

    /// <summary>Draws them.</summary>
    /// <param name="sheet">Where to draw.</param>
    /// <param name="levels">The heights, from the lowest up.</param>
    /// <param name="zero">Place of the baseboard at the row's end.</param>
    /// <param name="scale">Sheet mm to a mm of the model.</param>
    /// <param name="rail">Height of the rails' tops over the baseboard, mm.</param>
    /// <param name="onRight">Whether they stand to the right of it.</param>
    public static void Draw(Sheet sheet, IReadOnlyList<RowLevel> levels, Point2 zero, double scale, double rail, bool onRight = false)
    {
        int way = onRight ? 1 : -1;
        double[] places = Places(levels, scale);
        for (int i = 0; i < levels.Count; i++)
        {
            double at = zero.Y - (scale * levels[i].Height), shown = zero.Y - places[i];
            double inner = zero.X + (way * (1 - (scale * levels[i].In)));
            sheet.Lines([new(inner, at), new(zero.X + (way * Bend), at), new(zero.X + (way * (Words - 1)), shown)], HouseStyle.Dimension);
            string over = rail > 0 && levels[i].Height != rail && levels[i].Height > 0 ? Invariant($" ({Figures.SignedMm(levels[i].Height - rail)})") : "";
            sheet.Text(Invariant($"{levels[i].Word} {Figures.Mm(levels[i].Height)}{over}"), new(zero.X + (way * Words), shown + 0.8), HouseStyle.Figure,
                onRight ? TextAnchor.Start : TextAnchor.End);
        }
    }

    private static double[] Places(IReadOnlyList<RowLevel> levels, double scale) => Spread.Of([.. levels.Select(l => scale * l.Height)], Gap);
}
