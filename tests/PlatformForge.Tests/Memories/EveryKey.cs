using System.Globalization;
using PlatformForge.Projects.Keys;
using PlatformForge.Projects.Keys.Grammar;

namespace PlatformForge.Tests.Memories;

/// <summary>Every key that the key model knows, of first entries where there are several, and values for them that a project may well have.</summary>
internal static class EveryKey
{
    /// <summary>Keys by their path, with their rules.</summary>
    public static IReadOnlyList<(string Path, KeyRule Rule)> All { get; } = [.. Under("", ProjectKeys.Root)];

    private static IEnumerable<(string Path, KeyRule Rule)> Under(string path, KeyRule rule) => rule switch
    {
        TableRule table => table.Keys.SelectMany(k => Under(path.Length == 0 ? k.Name : $"{path}.{k.Name}", k)),
        ListRule { Item: TableRule item } => Enumerable.Range(0, 2).SelectMany(i => Under($"{path}[{i}]", item)),
        NumberRule or FlagRule or TextRule { Choices.Count: > 0 } => [(path, rule)],
        _ => [],
    };

    /// <summary>A value as it is written in a file: near the default where there is one, so that most of them make a platform.</summary>
    public static string Value(KeyRule rule, Random random) => rule switch
    {
        NumberRule number => Number(number, random).ToString("R", CultureInfo.InvariantCulture),
        FlagRule => random.Next(2) == 0 ? "true" : "false",
        TextRule text => $"\"{text.Choices[random.Next(text.Choices.Count)]}\"",
        _ => throw new ArgumentOutOfRangeException(nameof(rule)),
    };

    private static double Number(NumberRule rule, Random random)
    {
        double usual = double.TryParse(rule.Default ?? rule.Example, NumberStyles.Float, CultureInfo.InvariantCulture, out double known) ? known
            : Math.Min(rule.Range.Most, rule.Range.Least + 2);
        double value = usual == 0 ? random.NextDouble() * 2 : usual * (0.8 + (0.4 * random.NextDouble()));
        value = rule.Range.Nearest(rule.Whole ? Math.Round(value) : value);
        return rule.Whole ? Math.Round(value) : value;
    }
}
