using PlatformForge.Units;

namespace PlatformForge.Platforms.Features;

/// <summary>Ranges that figures of several kinds of feature share, mm: beyond them a figure is a slip of unit or comma.</summary>
internal static class FigureRanges
{
    public static NumberRange Inset => NumberRange.From(0, 2000);

    /// <summary>What is let into the deck, by its thickness.</summary>
    public static NumberRange Post => NumberRange.From(0.2, 50);

    public static NumberRange Seat => NumberRange.From(0.2, 1000);

    /// <summary>Greatest air that still is a fit, mm: prints come out some tenths small, and a peg with a mm to spare stands in glue alone (common practice, no
    /// source).</summary>
    public const double MostFit = 1;

    /// <summary>What is added so that something goes in.</summary>
    public static NumberRange Fit => NumberRange.From(0, MostFit);

    public static NumberRange Depth => NumberRange.From(0.2, 300);
}
