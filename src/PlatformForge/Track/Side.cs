namespace PlatformForge.Track;

/// <summary>A side of a track, seen along increasing chainage. The number is the sign of layout offsets on that side.</summary>
public enum Side
{
    Left = 1,
    Right = -1,
}
