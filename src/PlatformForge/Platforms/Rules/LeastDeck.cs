using PlatformForge.Platforms.Specs;

namespace PlatformForge.Platforms.Rules;

/// <summary>The least width of a deck on which everything that was asked for finds its place.</summary>
internal static class LeastDeck
{
    /// <summary>The width in mm and what takes it, for the message.</summary>
    public static (double Width, string What) Of(PlatformSpec spec)
    {
        var coping = spec.Coping;
        (double Width, string What) least = (Math.Max(coping.Width, coping.Overhang + spec.FrontDepth + spec.BackDepth), "coping and walls");
        void Raise(double width, string what) => least = width > least.Width ? (width, what) : least;
        if (spec.WhiteLine is { } line)
        {
            Raise(line.Inset + line.Width, "the white line and its inset");
        }

        if (spec.Tactile is { } tactile)
        {
            double own = tactile.Inset + tactile.Width;
            Raise((spec.IsIsland ? 2 * own : own) + LineMake.LeastLand, "the tactile strip and its inset");
        }

        foreach (var (width, what) in spec.Features.Select(f => f.LeastDeck(spec)).OfType<(double, string)>())
        {
            Raise(width, what);
        }

        return least;
    }
}
