using PlatformForge.Exports.Looks;
using PlatformForge.Geometry;
using PlatformForge.Track;

namespace PlatformForge.Exports.Pictures.Bodies;

/// <summary>
/// A stretch of track for pictures: ballast, sleepers and rails as plain solids. Proportions of common British bullhead
/// track at full size (from memory); nothing is ever made from them.
/// </summary>
internal static class TrackBodies
{
    private const double SleeperLength = 2590; // 8 ft 6 in
    private const double SleeperWidth = 254; // 10 in
    private const double SleeperPitch = 760; // 2 ft 6 in
    private const double RailHeight = 145;
    private const double RailWidth = 70;
    private const double FacetLength = 4; // mm of the model

    private static readonly Rgb BallastColour = new(0x9B, 0x94, 0x8A);
    private static readonly Rgb SleeperColour = new(0x56, 0x47, 0x3C);
    private static readonly Rgb RailColour = new(0x8A, 0x74, 0x66);

    /// <summary>Track between two chainages.</summary>
    public static IEnumerable<SceneBody> Of(Centreline line, double from, double to, double ratio, double gauge, double railTop)
    {
        int facets = Math.Max(1, (int)Math.Ceiling((to - from) / FacetLength));
        var stations = Enumerable.Range(0, facets + 1).Select(i => from + ((to - from) * i / facets)).ToArray();
        double foot = Math.Max(railTop - (RailHeight / ratio), railTop / 2), bed = Math.Max(foot - (60 / ratio), railTop / 4);
        double half = SleeperLength / ratio / 2, shoulder = half + (150 / ratio), toe = shoulder + (1.2 * bed);
        yield return new(
            SweptProfile.Along(line, stations, [new(-toe, 0), new(toe, 0), new(shoulder, bed), new(-shoulder, bed)]), [BallastColour]);
        yield return new(SweptProfile.Joined([.. Sleepers(line, from, to, ratio, half, foot)]), [SleeperColour]);
        foreach (int side in (int[])[1, -1])
        {
            double near = side * gauge / 2, far = near + (side * RailWidth / ratio);
            var (low, high) = (Math.Min(near, far), Math.Max(near, far));
            yield return new(SweptProfile.Along(line, stations, [new(low, foot), new(high, foot), new(high, railTop), new(low, railTop)]), [RailColour]);
        }
    }

    private static IEnumerable<Mesh> Sleepers(Centreline line, double from, double to, double ratio, double half, double top)
    {
        double pitch = SleeperPitch / ratio, width = SleeperWidth / ratio;
        int count = Math.Max(1, (int)((to - from) / pitch));
        double first = from + ((to - from - ((count - 1) * pitch)) / 2);
        for (int i = 0; i < count; i++)
        {
            yield return SweptProfile.Box(line.At(first + (i * pitch)), width / 2, -half, half, top / 4, top);
        }
    }
}
