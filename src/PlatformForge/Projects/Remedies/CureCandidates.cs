using System.Globalization;
using PlatformForge.Projects.Keys.Grammar;
using PlatformForge.Projects.Overrides;
using PlatformForge.Projects.Reading;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Projects.Remedies;

/// <summary>What may mend a finding, the likeliest first: what its room offers, then what the key model knows of its key.</summary>
internal static class CureCandidates
{
    private static readonly (string First, string Second)[] Rising = [("from", "to"), ("low", "high")];

    // A micrometre: nothing is told finer.
    private const int Digits = 3;

    // Most names of the file that are offered for a reference, and most figures that may be the slip.
    private const int MostNames = 5;

    // A figure so many times what its key has when left out, or so small a part of it, is likelier a slip than the bed is too small.
    private const double FarOff = 4;

    public static IEnumerable<Cure> Of(Finding finding, TreeTable tree) =>
        OfFarFigures(finding, tree).Concat(OfRoom(finding, tree)).Concat(OfSlip(finding.Code, finding.Key, tree)).Concat(OfKey(finding.Key, tree));

    // A piece that is too large for the bed comes of what leaves no place for a cut, or no room on the bed: figures of the file that are far off what is usual,
    // the farthest first, with the usual one.
    private static IEnumerable<Cure> OfFarFigures(Finding finding, TreeTable tree) => finding.Code == "PF6001"
        ? (from home in (string[])["printer", "platform"]
           from key in Figures(home, tree.Find(home)?.Value)
           let rule = KeyModel.RuleOf(key) as NumberRule
           where rule is { Required: false }
           let usual = rule.DefaultAt?.Invoke(ValueSearch.ScaleOf(tree)) ?? rule.Default
           let off = Math.Abs(Math.Log(Math.Abs((ValueSearch.Stated(tree, key, rule) ?? double.NaN) / ValueSearch.Parsed(usual) ?? double.NaN)))
           where double.IsFinite(off) && off > Math.Log(FarOff)
           orderby off descending
           select new Cure(CureAct.Set, key, usual)).Take(MostNames)
        : [];

    // Keys of the file that hold a figure, or a text that may be one.
    private static IEnumerable<string> Figures(string key, TreeNode? node) => node switch
    {
        TreeNumber or TreeText => [key],
        TreeTable table => table.Entries.SelectMany(e => Figures($"{key}.{e.Name}", e.Value)),
        TreeList list => list.Items.SelectMany((item, i) => Figures(Invariant($"{key}[{i}]"), item)),
        _ => [],
    };

    // What the room offers that found it, rounded first, and else the key left out.
    private static IEnumerable<Cure> OfRoom(Finding finding, TreeTable tree)
    {
        if (finding.Cure is { } own)
        {
            foreach (var rounded in Rounded(own))
            {
                yield return rounded;
            }

            yield return own;
            if (own.Key != finding.Key && own.Act == CureAct.Set && CuredTree.Find(tree, own.Key) is not null
                && KeyModel.RuleOf(own.Key) is { Required: false })
            {
                yield return Cure.LeaveOut(own.Key);
            }
        }
    }

    // What is likelier wrong than the key that a finding names.
    private static IEnumerable<Cure> OfSlip(string code, string key, TreeTable tree)
    {
        if (code is "PF3020" or "PF4004" && Buffers(key, tree) is { } buffers)
        {
            yield return buffers;
        }

        if (code == "PF1014" && TheOther(key, tree) is { } other)
        {
            yield return other;
        }
    }

    // What the key model knows of the key.
    private static IEnumerable<Cure> OfKey(string key, TreeTable tree)
    {
        if (KeyModel.RuleOf(key) is not { } rule)
        {
            yield break;
        }

        var node = CuredTree.Find(tree, key);
        foreach (var cure in OfRule(rule, node, key))
        {
            yield return cure;
        }

        if (node is not null && !rule.Required && rule is not TableRule && !key.EndsWith(']'))
        {
            yield return Cure.LeaveOut(key);
        }

        foreach (string name in NamesFor(rule, key, tree))
        {
            yield return Cure.Text(key, name);
        }

        if ((node is null || (node is not TreeTable && !key.EndsWith(']'))) && KeyModel.ExampleOf(key) is { } example)
        {
            yield return new(CureAct.Set, key, example.ReplaceLineEndings(" "));
        }

        // A key that is missing from a table that need not be there.
        string home = key[..Math.Max(0, key.LastIndexOf('.'))];
        if (node is null && home.Length > 0 && !home.EndsWith(']') && KeyModel.RuleOf(home) is { Required: false })
        {
            yield return Cure.LeaveOut(home);
        }
    }

    /// <summary>Other keys whose figure may be the slip, to be looked round: the first of two that have to rise, and what makes a piece too large for the
    /// bed.</summary>
    public static IEnumerable<string> Others(Finding finding, TreeTable tree)
    {
        if (finding.Code == "PF1014"
            && Rising.FirstOrDefault(r => finding.Key.EndsWith("." + r.Second, StringComparison.Ordinal)) is { First: { } first, Second: { } second })
        {
            yield return finding.Key[..^second.Length] + first;
        }

        if (finding.Code == "PF6001")
        {
            int platforms = (tree.Find("platform")?.Value as TreeList)?.Items.Count ?? 0;
            foreach (string key in Enumerable.Range(0, Math.Min(platforms, MostNames)).Select(i => Invariant($"platform[{i}].deck.width"))
                .Append("printer.margin").Where(k => CuredTree.Find(tree, k) is not null))
            {
                yield return key;
            }
        }
    }

    // A figure with no more digits than somebody would write, where that works too: the nearest, then the one below and the one above.
    private static IEnumerable<Cure> Rounded(Cure cure)
    {
        if (cure.Act != CureAct.Set || !double.TryParse(cure.Value, NumberStyles.Float, CultureInfo.InvariantCulture, out double value)
            || !double.IsFinite(value) || Math.Round(value, Digits) == value)
        {
            return [];
        }

        double unit = Math.Pow(10, Digits);
        return new[] { Math.Round(value, Digits), Math.Floor(value * unit) / unit, Math.Ceiling(value * unit) / unit }
            .Distinct().Select(v => Cure.Set(cure.Key, v));
    }

    private static IEnumerable<Cure> OfRule(KeyRule rule, TreeNode? node, string key)
    {
        switch (rule)
        {
            case NumberRule when node is TreeText text && FigureText.Read(text.Value) is { } meant:
                yield return Cure.Set(key, meant);
                break;
            case TextRule { Choices.Count: > 0 } choice:
                string? near = node is TreeText written ? NearestName.Of(written.Value, choice.Choices) : null;
                foreach (string name in choice.Choices.OrderBy(c => c != near).ThenBy(c => $"\"{c}\"" != choice.Default))
                {
                    yield return Cure.Text(key, name);
                }

                break;
            case TextRule when node is TreeNumber figure:
                yield return Cure.Text(key, figure.Value.ToString(CultureInfo.InvariantCulture));
                break;
            case TableRule table when Within(table, node) is { } inner:
                yield return new(CureAct.Set, key, $"{{ {inner} }}");
                break;
            default:
                break;
        }
    }

    // A word or a figure in the place of a table is meant for one of its keys: the first that has such a word, or takes a figure.
    private static string? Within(TableRule table, TreeNode? node) => node switch
    {
        TreeText text => table.Keys.OfType<TextRule>().FirstOrDefault(k => k.Choices.Contains(text.Value)) is { } word
            ? $"{word.Name} = \"{text.Value}\"" : null,
        TreeNumber number => table.Keys.OfType<NumberRule>().FirstOrDefault(k => k.Range.Holds(number.Value)) is { } figure
            ? Invariant($"{figure.Name} = {number.Value:R}") : null,
        _ => null,
    };

    // Of two figures that have to rise the first may be the slip: it is put below the second.
    private static Cure? TheOther(string key, TreeTable tree) =>
        Rising.FirstOrDefault(r => key.EndsWith("." + r.Second, StringComparison.Ordinal)) is { First: { } first, Second: { } second }
        && CuredTree.Find(tree, key) is TreeNumber stated
            ? Cure.Set(key[..^second.Length] + first, stated.Value - 1)
            : null;

    // A track that ends at buffer stops needs no more of it known: both ends, or the one that a platform's end lies at.
    private static Cure? Buffers(string key, TreeTable tree)
    {
        if (tree.Find("track")?.Value is not TreeList tracks)
        {
            return null;
        }

        string? faced = key.StartsWith("platform", StringComparison.Ordinal)
            ? (CuredTree.Find(tree, key[..key.LastIndexOf('.')] + ".track") as TreeText)?.Value : null;
        int index = faced is null ? 0 : tracks.Items.ToList().FindIndex(t => (t as TreeTable)?.TextOf("name") == faced);
        string track = faced is null ? key : Invariant($"track[{index}]");
        string? now = (CuredTree.Find(tree, track + ".buffers") as TreeText)?.Value;
        string end = key.EndsWith(".from", StringComparison.Ordinal) ? "start" : "end";
        return index < 0 ? null : Cure.Text(track + ".buffers", faced is null || (now is "start" or "end" && now != end) ? "both" : end);
    }

    // Names that a reference may mean: those of the tracks for a track.
    private static IEnumerable<string> NamesFor(KeyRule rule, string key, TreeTable tree) =>
        rule is TextRule && key.EndsWith("face.track", StringComparison.Ordinal) && tree.Find("track")?.Value is TreeList tracks
            ? tracks.Items.OfType<TreeTable>().Select(t => t.TextOf("name")).OfType<string>().Take(MostNames)
            : [];
}
