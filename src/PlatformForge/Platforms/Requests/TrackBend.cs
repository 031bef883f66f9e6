using PlatformForge.Track;

namespace PlatformForge.Platforms.Requests;

/// <summary>Curvature of a track without its position, which would cost an integral on transitions.</summary>
internal static class TrackBend
{
    /// <summary>Curvature at a chainage in mm, 1/mm, left positive; nil beyond the ends, where the track goes on straight.</summary>
    public static double CurvatureAt(this Centreline track, double chainage)
    {
        if (chainage < 0 || chainage > track.Length)
        {
            return 0;
        }

        int element = track.ElementAt(chainage);
        return track.Elements[element].CurvatureAt(chainage - track.StartOf(element));
    }
}
