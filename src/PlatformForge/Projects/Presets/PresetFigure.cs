using System.Text.RegularExpressions;

namespace PlatformForge.Projects.Presets;

/// <summary>One figure of a preset with its source.</summary>
/// <param name="Owner">What it belongs to: empty for the vehicle itself, or a part, its sill, a further body.</param>
/// <param name="Key">Its key.</param>
/// <param name="Value">What the preset says.</param>
/// <param name="Source">The words beside it.</param>
public sealed partial record PresetFigure(string Owner, string Key, string Value, string Source)
{
    private static readonly (string Words, SourceStanding Standing)[] Kinds =
        [("published", SourceStanding.Published), ("from memory", SourceStanding.FromMemory), ("common practice", SourceStanding.CommonPractice)];

    /// <summary>How well it is founded.</summary>
    public SourceStanding Standing => Array.Find(Kinds, k => Source.StartsWith(k.Words, StringComparison.Ordinal)).Standing;

    /// <summary>The words for a standing.</summary>
    public static string Say(SourceStanding standing) => Array.Find(Kinds, k => k.Standing == standing).Words;

    /// <summary>Figures of a preset's text: lines of a key, a value and a remark that begins with how well it is founded.</summary>
    internal static IReadOnlyList<PresetFigure> Of(string text)
    {
        var figures = new List<PresetFigure>();
        string body = "", of = "";
        foreach (string line in text.Split('\n'))
        {
            if (Header().Match(line) is { Success: true } header)
            {
                string table = header.Groups[1].Value;
                body = table == "body" ? "body" : table.StartsWith("body.", StringComparison.Ordinal) ? body : "";
                of = table == "body" ? body : Joined(body, table[(table.LastIndexOf('.') + 1)..].Replace('_', ' '));
            }
            else if (Name().Match(line) is { Success: true } name)
            {
                // A body or a part is told by its name from here on.
                (body, of) = of == body && of.Length > 0 ? (name.Groups[1].Value, name.Groups[1].Value)
                    : (body, of.Length == 0 ? "" : Joined(body, name.Groups[1].Value));
            }
            else if (Figure().Match(line) is { Success: true } figure && Kinds.Any(k => figure.Groups[3].Value.StartsWith(k.Words, StringComparison.Ordinal)))
            {
                figures.Add(new(of, figure.Groups[1].Value, figure.Groups[2].Value.Trim('"'), figure.Groups[3].Value));
            }
            else if (Place().Match(line) is { Success: true } place)
            {
                figures.Add(new(of, "plan", place.Groups[1].Value.Replace("\"", "", StringComparison.Ordinal).Replace(" =", "", StringComparison.Ordinal),
                    place.Groups[2].Value));
            }
        }

        return figures;
    }

    private static string Joined(string body, string part) => body.Length == 0 ? part : $"{body}, {part}";

    [GeneratedRegex(@"^\[+([a-z_.]+)\]+")]
    private static partial Regex Header();

    [GeneratedRegex(@"^name = ""([^""]*)""")]
    private static partial Regex Name();

    // A place along the plan of a part.
    [GeneratedRegex(@"^\s+\{ (at = .+?) \},?\s+# ((?:published|from memory|common practice).*?)\s*$")]
    private static partial Regex Place();

    [GeneratedRegex(@"^([a-z_]+) = (\S.*?)\s+# (.+?)\s*$")]
    private static partial Regex Figure();
}
