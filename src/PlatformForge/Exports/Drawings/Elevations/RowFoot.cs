using PlatformForge.Exports.Drawings.Gaps;
using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Geometry;
using static System.FormattableString;

namespace PlatformForge.Exports.Drawings.Elevations;

/// <summary>A section in a row, or a part of one.</summary>
/// <param name="Number">Its number.</param>
/// <param name="From">Where it begins from the row's left end, sheet mm.</param>
/// <param name="To">Where it ends.</param>
/// <param name="Length">Its length, mm of the model; null where the row has only a part of it.</param>
internal sealed record RowSection(int Number, double From, double To, double? Length);

/// <summary>What stands under the line of a row of an elevation: places of what is in and before the walls from their section's left end, and each section's
/// number and length.</summary>
/// <param name="sections">The sections, from left to right.</param>
/// <param name="places">Middles of what is in and before the walls from left to right: place on the sheet from the row's left end, and distance, mm.</param>
internal sealed class RowFoot(IReadOnlyList<RowSection> sections, IReadOnlyList<(double At, double Figure)> places)
{
    // mm: to where lines bend, to the figures and past them, from one to the next, and for the sections' line.
    private const double Bend = 1.2, Figure = 3.2, Past = 11, Gap = 2.8, Line = 6.5;

    // Room that a section's number and length take along it at least, mm; without it the number stands alone.
    private const double Wide = 22;

    /// <summary>Height that it takes, mm.</summary>
    public double Depth => (places.Count > 0 ? Past : 0) + Line;

    /// <summary>Whether so many figures find room side by side.</summary>
    public static bool Holds(int places, double length) => places * Gap <= length + (2 * Gap);

    /// <summary>Draws it under the left end of a row's line.</summary>
    public void Draw(Sheet sheet, Point2 foot)
    {
        double[] shown = Spread.Of([.. places.Select(p => p.At)], Gap);
        for (int i = 0; i < shown.Length; i++)
        {
            double x = foot.X + shown[i];
            sheet.Lines([new(foot.X + places[i].At, foot.Y + 0.4), new(foot.X + places[i].At, foot.Y + Bend), new(x, foot.Y + Figure)], HouseStyle.Dimension);
            sheet.Text(Figures.Mm(places[i].Figure), new(x + 0.8, foot.Y + Figure + 0.4), HouseStyle.Figure, TextAnchor.End, -90);
        }

        double y = foot.Y + (places.Count > 0 ? Past : 0) + 4.4;
        foreach (var (number, from, to, length) in sections)
        {
            if (length is { } mm && to - from > Wide)
            {
                Dimensions.Between(sheet, new(foot.X + from, y), new(foot.X + to, y), 0, Invariant($"{number}: {Figures.Mm(mm)}"));
            }
            else
            {
                sheet.Text(Invariant($"{number}"), new(foot.X + ((from + to) / 2), y - 0.4), HouseStyle.Strong, TextAnchor.Middle);
            }
        }
    }
}
