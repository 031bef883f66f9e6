using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Projects.Overrides;

/// <summary>Several values for one key, to be tried in one go.</summary>
/// <param name="Key">The key as written.</param>
/// <param name="Values">Its values as written, at least one.</param>
public sealed record Variation(string Key, IReadOnlyList<string> Values)
{
    /// <summary>Most designs tried in one go.</summary>
    public const int MostDesigns = 100;

    private const string Option = "--vary";

    /// <summary>Reads <c>key=value,value,…</c>; commas inside quotes and brackets do not part.</summary>
    public static Outcome<Variation> Parse(string text)
    {
        var first = Override.Parse(text, Option);
        if (first.Value is null)
        {
            return Outcome.Fault<Variation>(
                first.Findings.Select(f => f with
                {
                    Message = $"{Option} takes a key and its values.",
                    Remedy = $"Write {Option} platform[0].ramps.end.length=80,96,120."
                }));
        }

        var values = Parts(first.Value.Value);
        return values.Any(v => v.Length == 0)
            ? Outcome.Fault<Variation>(Finding.Error("PF1017", "", $"A value of {first.Value.Key} is empty.", "Part the values by single commas.")
                with
            { File = Option + " " + text })
            : Outcome.Of(new Variation(first.Value.Key, values));
    }

    /// <summary>Every combination, the last key changing fastest.</summary>
    public static Outcome<IReadOnlyList<IReadOnlyList<Override>>> Combinations(IReadOnlyList<Variation> variations)
    {
        long count = 1;
        foreach (var variation in variations)
        {
            count = Math.Min(count * variation.Values.Count, int.MaxValue);
        }

        if (count > MostDesigns)
        {
            return Outcome.Fault<IReadOnlyList<IReadOnlyList<Override>>>(Finding.Error("PF1019", "", Invariant($"These values make {count} designs, over the ")
                + Invariant($"limit of {MostDesigns}."), "Vary fewer keys at once, or give fewer values.") with
            { File = Option });
        }

        IReadOnlyList<IReadOnlyList<Override>> designs = [[]];
        foreach (var variation in variations)
        {
            designs = [.. designs.SelectMany(d => variation.Values.Select(v => (IReadOnlyList<Override>)[.. d, new Override(variation.Key, v, Option)]))];
        }

        return Outcome.Of(designs);
    }

    private static List<string> Parts(string text)
    {
        var parts = new List<string>();
        int depth = 0, from = 0;
        bool quoted = false;
        for (int i = 0; i <= text.Length; i++)
        {
            if (i == text.Length || (text[i] == ',' && depth == 0 && !quoted))
            {
                parts.Add(text[from..i].Trim());
                from = i + 1;
                continue;
            }

            quoted ^= text[i] == '"';
            depth += quoted ? 0 : text[i] is '[' or '{' ? 1 : text[i] is ']' or '}' ? -1 : 0;
        }

        return parts;
    }
}
