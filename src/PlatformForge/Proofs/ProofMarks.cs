using System.Globalization;

namespace PlatformForge.Proofs;

/// <summary>Numbers the gauges of a build by kind: S1 for a slice, G1 for a slide gauge, B1 for a throw board, F1 for a footprint, M1 for a mask.</summary>
internal sealed class ProofMarks
{
    private readonly Dictionary<string, int> last = new(StringComparer.Ordinal);

    /// <summary>The next of a kind.</summary>
    public string Next(string kind)
    {
        last[kind] = last.GetValueOrDefault(kind) + 1;
        return kind + last[kind].ToString(CultureInfo.InvariantCulture);
    }
}
