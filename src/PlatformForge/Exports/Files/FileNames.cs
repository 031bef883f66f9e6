using System.Text;
using PlatformForge.Sections.Forms;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Exports.Files;

/// <summary>Names of written files: plain small letters, digits and hyphens, the same on every system.</summary>
public static class FileNames
{
    private const int Longest = 60;

    /// <summary>Names that some systems keep for devices, whatever follows a point after them.</summary>
    private static readonly HashSet<string> Reserved = new(
        ((string[])["con", "prn", "aux", "nul", "conin", "conout", "clock"]).Concat(Enumerable.Range(0, 10).SelectMany(n => new[] { Invariant($"com{n}"),
            Invariant($"lpt{n}") })),
        StringComparer.Ordinal);

    /// <summary>
    /// A name in plain letters: accents fall away, letters of other scripts are written in plain ones where there is a usual way, anything
    /// else becomes a hyphen; never empty, and never a name that a system keeps for itself.
    /// </summary>
    public static string Plain(string name)
    {
        var plain = new StringBuilder();
        foreach (var letter in name.EnumerateRunes())
        {
            foreach (char c in PlainLetters.Of(letter) ?? "-")
            {
                if (char.IsAsciiLetterOrDigit(c))
                {
                    plain.Append(char.ToLowerInvariant(c));
                }
                else if (plain.Length > 0 && plain[^1] != '-')
                {
                    plain.Append('-');
                }
            }
        }

        string cut = plain.ToString(0, Math.Min(plain.Length, Longest)).Trim('-');
        return cut.Length == 0 ? "platform" : Reserved.Contains(cut) ? cut + "-1" : cut;
    }

    /// <summary>Plain names for several things, told apart by a number where two would be alike, or would give files of one name.</summary>
    public static IReadOnlyList<string> Distinct(IEnumerable<string> names) => Distinct(names.Select(n => (n, (IReadOnlyList<string>)[])));

    /// <summary>The same for platforms, of which some have files of their own for each track beside them: "island" beside "up" has some that begin as those
    /// of a platform named "island-up" do.</summary>
    public static IReadOnlyList<string> Distinct(IEnumerable<(string Name, IReadOnlyList<string> Tracks)> platforms)
    {
        var names = new List<string>();
        var taken = new HashSet<string>(StringComparer.Ordinal);
        foreach (var (name, tracks) in platforms)
        {
            string plain = Plain(name), free = plain;
            string[] Stems() => [free, FromBelow(free), FromNear(free), .. Beside(free, tracks)];
            for (int i = 2; Stems().Any(taken.Contains); i++)
            {
                free = Invariant($"{plain}-{i}");
            }

            taken.UnionWith(Stems());
            names.Add(free);
        }

        return names;
    }

    /// <summary>What the files of a platform that tell of one track each begin with, track by track.</summary>
    public static IReadOnlyList<string> Beside(string platform, IReadOnlyList<string> tracks) => [.. (tracks.Count == 0 ? []
        : Distinct(tracks)).Select(t => Invariant($"{platform}-{t}"))];

    public static string Section(string platform, int number) => Invariant($"stl/{platform}-{number:D2}.stl");

    /// <summary>A line or strip of a section that is a print of its own.</summary>
    public static string Line(string platform, LinePiece piece) => Invariant($"stl/{Part(platform, piece)}.stl");

    /// <summary>The number of such a part: what it is, and its place among the platform's lines, from 1.</summary>
    public static string Part(string platform, LinePiece piece) => Invariant($"{platform}-{piece.Section:D2}-{Plain(piece.Made.Name)}-{piece.Line}");

    /// <summary>A bed's worth of strips.</summary>
    public static string Strips(string platform, int number) => Invariant($"3mf/{platform}-strips-{number:D2}.3mf");

    public static string Plate(string platform, int number) => Invariant($"3mf/{platform}-plate-{number:D2}.3mf");

    public static string AllPlates(string platform) => Invariant($"3mf/{platform}-all.3mf");

    public static string Picture(string platform) => Invariant($"pictures/{platform}.png");

    public static string PictureFromBelow(string platform) => Invariant($"pictures/{FromBelow(platform)}.png");

    /// <summary>The picture of a stretch of its front.</summary>
    public static string PictureFromNear(string platform) => Invariant($"pictures/{FromNear(platform)}.png");

    private static string FromBelow(string platform) => platform + "-below";

    private static string FromNear(string platform) => platform + "-near";
}
