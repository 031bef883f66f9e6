using System.Globalization;
using System.Text;
using static System.FormattableString;

namespace PlatformForge.Exports;

/// <summary>Names of written files: plain small letters, digits and hyphens, the same on every system.</summary>
public static class FileNames
{
    private const int Longest = 60;

    /// <summary>A name in plain letters: accents fall away, anything else becomes a hyphen; never empty.</summary>
    public static string Plain(string name)
    {
        var plain = new StringBuilder();
        foreach (char c in name.Normalize(NormalizationForm.FormD))
        {
            if (char.IsAsciiLetterOrDigit(c))
            {
                plain.Append(char.ToLowerInvariant(c));
            }
            else if (CharUnicodeInfo.GetUnicodeCategory(c) != UnicodeCategory.NonSpacingMark && plain.Length > 0 && plain[^1] != '-')
            {
                plain.Append('-');
            }
        }

        string cut = plain.ToString(0, Math.Min(plain.Length, Longest)).Trim('-');
        return cut.Length > 0 ? cut : "platform";
    }

    /// <summary>Plain names for several things, told apart by a number where two would be alike.</summary>
    public static IReadOnlyList<string> Distinct(IEnumerable<string> names)
    {
        var taken = new List<string>();
        foreach (string name in names)
        {
            string plain = Plain(name), free = plain;
            for (int i = 2; taken.Contains(free); i++)
            {
                free = Invariant($"{plain}-{i}");
            }

            taken.Add(free);
        }

        return taken;
    }

    public static string Section(string platform, int number) => Invariant($"stl/{platform}-{number:D2}.stl");

    public static string Plate(string platform, int number) => Invariant($"3mf/{platform}-plate-{number:D2}.3mf");

    public static string AllPlates(string platform) => Invariant($"3mf/{platform}-all.3mf");
}
