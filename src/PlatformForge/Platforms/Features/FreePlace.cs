using PlatformForge.Units;

namespace PlatformForge.Platforms.Features;

/// <summary>Finds the nearest chainage at which something stands clear of everything else.</summary>
internal static class FreePlace
{
    // Places are told to a tenth of a millimetre, rounded away from what they clear.
    private const double Unit = 10;

    // Sums of stated lengths that differ by less than this, mm, are equal.
    private const double Grain = Tolerances.Rounding;

    /// <summary>The chainage, in tenths of a mm; null when nothing is free.</summary>
    /// <param name="wanted">Where it stands, mm.</param>
    /// <param name="taken">Stretches that its middle keeps out of, mm.</param>
    /// <param name="least">First chainage that its middle may have.</param>
    /// <param name="most">Last chainage that it may have.</param>
    public static double? Nearest(double wanted, IReadOnlyCollection<(double From, double To)> taken, double least, double most)
    {
        double first = Math.Ceiling((least - Grain) * Unit) / Unit, last = Math.Floor((most + Grain) * Unit) / Unit;
        bool Free(double s) => s >= first && s <= last && !taken.Any(t => s > t.From + Grain && s < t.To - Grain);
        double[] free = [.. taken.SelectMany(t => new[] { Math.Floor((t.From + Grain) * Unit) / Unit, Math.Ceiling((t.To - Grain) * Unit) / Unit })
            .Append(first).Append(last).Where(Free)];
        return free.Length > 0 ? free.MinBy(s => Math.Abs(s - wanted)) : null;
    }
}
