namespace PlatformForge.Track;

/// <summary>A side of a track, seen along increasing chainage. Its value is the sign of offsets on that side.</summary>
public enum TrackSide
{
    Left = 1,
    Right = -1,
}
