using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;

namespace PlatformForge.Platforms.Islands;

/// <summary>
/// Turns the lines across a platform with a back from the square to its skew ends, and to cuts between and back again: evenly over a stretch long
/// enough that none crosses another, so that
/// ribs, cuts and facets turn with them. The edge, and all boundaries where they meet the lines, stay where they were.
/// </summary>
internal static class SkewCarrier
{
    /// <summary>The body with its ends askew; the same where none is.</summary>
    public static BodyPlan Of(PlatformSpec spec, FacePlan face, BodyPlan body)
    {
        if (!spec.Skew.IsAny || spec.IsIsland)
        {
            return body;
        }

        double[] stations = body.Stations;
        var (lines, behind, back) = Turned(spec, face, body);

        // A line across at a skew end meets what runs along the back beyond the platform's own end, where the back itself runs on beside the track.
        double[] before = [.. behind.Where(s => s < stations[0] - BodyCarrier.OnePlace)],
            after = [.. behind.Where(s => s > stations[^1] + BodyCarrier.OnePlace)];
        PlanLine Met(PlanLine line) => new(stations, BodyCarrier.Met(
            lines,
            [
                .. before.Order().Select(s => face.ToLayout(s, line.Reach[0])),
                .. stations.Select((s, i) => face.ToLayout(s, line.Reach[i])),
                .. after.Order().Select(s => face.ToLayout(s, line.Reach[^1])),
            ],
            stations));
        PlanLine far = new(stations, back);
        return body with
        {
            Across = new(stations, Array.ConvertAll(lines, l => l.Origin), Array.ConvertAll(lines, l => l.Away), behind),
            CopingBack = Met(body.CopingBack),
            WallFace = Met(body.WallFace),
            WallBack = Met(body.WallBack),
            BackWallFace = spec.BackDepth > 0 ? Met(body.BackWallFace) : far,
            FarWallFace = far,
            Back = far,
            Lines = [.. face.Lines.Select(line => line with { Near = Met(line.Near), Far = Met(line.Far) })],
        };
    }

    // The lines across at all stations, where each meets the back, and how far from the track along it.
    private static (CrossLine[] Lines, double[] Behind, double[] Back) Turned(PlatformSpec spec, FacePlan face, BodyPlan body)
    {
        double[] stations = body.Stations, behind = new double[stations.Length], back = new double[stations.Length];
        double width = spec.Deck.Width;
        var lines = new CrossLine[stations.Length];
        for (int i = 0; i < stations.Length; i++)
        {
            double s = stations[i], front = body.CopingFront.Reach[i];
            behind[i] = s + Ahead(spec, s);
            Point2 a = face.ToLayout(s, front), b = behind[i] == s ? face.ToLayout(s, front + width) : On(face, body.Back, behind[i]);
            var away = (b - a) * (1 / (b - a).Length);
            (lines[i], back[i]) = (new(a - (away * front), away), front + (b - a).Length);
        }

        return (lines, behind, back);
    }

    // By how much farther along the track a line across meets the back than the edge, mm.
    private static double Ahead(PlatformSpec spec, double s) => SkewSpec.Lines(spec).Sum(c =>
        SkewSpec.Share(spec.Deck.Width, c.Angle, Math.Abs(s - c.At)) * SkewSpec.Shift(spec.Deck.Width, c.Angle));

    // A place on the back, beyond its ends too: there it runs on beside the track.
    private static Point2 On(FacePlan face, PlanLine back, double chainage)
    {
        double[] stations = back.Stations;
        if (chainage <= stations[0] || chainage >= stations[^1])
        {
            return face.ToLayout(chainage, back.At(chainage));
        }

        int found = Array.BinarySearch(stations, chainage), i = Math.Clamp(found >= 0 ? found : ~found - 1, 0, stations.Length - 2);
        Point2 a = face.ToLayout(stations[i], back.Reach[i]), b = face.ToLayout(stations[i + 1], back.Reach[i + 1]);
        return a + ((b - a) * ((chainage - stations[i]) / (stations[i + 1] - stations[i])));
    }
}
