using PlatformForge.Exports.Drawings.Elevations.Walls;
using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Sections.Forms;

namespace PlatformForge.Exports.Stock;

/// <summary>The joints of a wall's facing for the outer face of the strip that the wall is bent from: what a print has in relief is scored there.</summary>
internal static class FacingScores
{
    /// <summary>Lines on a strip as it is drawn, seen from inside.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="section">Whose walls are meant.</param>
    /// <param name="face">Name of the wall face.</param>
    /// <param name="strip">The strip's outline, seen from inside, its left end at 0.</param>
    /// <param name="length">Its length, mm.</param>
    /// <returns>None where the face is smooth.</returns>
    public static IReadOnlyList<CutLine> Of(PlatformPlan plan, PlatformSection section, string face, IReadOnlyList<Point2> strip, double length)
    {
        // No strip has what stands before its wall: courses go on behind that.
        WallSlice[] slices = [.. WallSlice.Of([(section.Number, FittingGaps.Closed(plan, section.Faced, section.From, section.To))], face)];

        // A print is trimmed at its ends; a strip goes to the cut.
        double start = (length - slices.Sum(s => s.Length)) / 2;
        var lines = new List<CutLine>();
        foreach (var slice in slices)
        {
            foreach (var (part, at) in slice.Parts())
            {
                double left = start + at;
                Point2 Seen(Point2 p) => new(length - left - p.X, p.Y);
                lines.AddRange(FacingJoints.Of(part).SelectMany(j => FacingJoints.Within(strip, Seen(j.A), Seen(j.B)))
                    .Select(j => new CutLine(CutLayer.Score, [j.A, j.B], IsClosed: false)));
            }

            start += slice.Length;
        }

        return lines;
    }
}
