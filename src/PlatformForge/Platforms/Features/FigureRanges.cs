namespace PlatformForge.Platforms.Features;

/// <summary>Bounds that figures of features share, mm: beyond them a figure is a slip of unit or comma.</summary>
internal static class FigureRanges
{
    /// <summary>No track is so long.</summary>
    public const double Far = Rules.ValueRules.Far;

    public const double WidestDeck = 2000;

    public const double Thinnest = 0.2;

    public const double ThickestPost = 50;

    public const double LargestSeat = 1000;

    public const double LoosestFit = 5;

    public const double Deepest = 300;
}
