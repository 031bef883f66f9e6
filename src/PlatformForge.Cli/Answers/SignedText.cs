using static System.FormattableString;

namespace PlatformForge.Cli.Answers;

/// <summary>A length with its sign, and none before what rounds to nil.</summary>
internal static class SignedText
{
    /// <summary>To a hundredth of a millimetre: +0.12, -0.30, 0.00.</summary>
    public static string Of(double mm)
    {
        double shown = Math.Round(mm, 2) + 0.0;
        return shown > 0 ? Invariant($"+{shown:0.00}") : Invariant($"{(shown == 0 ? 0 : shown):0.00}");
    }
}
