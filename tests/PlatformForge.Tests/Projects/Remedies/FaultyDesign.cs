using System.Globalization;
using System.Text.RegularExpressions;
using PlatformForge.Projects.Keys;
using PlatformForge.Projects.Keys.Grammar;
using PlatformForge.Projects.Overrides;
using PlatformForge.Projects.Remedies;
using PlatformForge.Projects.Runs;
using PlatformForge.Units;

namespace PlatformForge.Tests.Projects.Remedies;

/// <summary>A sound design with one key at fault: a slipped figure, a value of another kind, a misspelt or a missing key, or one too many.</summary>
internal sealed record FaultyDesign(string Change, ProjectSource Source, IReadOnlyList<Finding> Findings)
{
    private static readonly Regex Statement = new(@"(?m)(?<![#""\w][^\n]*)\b(?<key>[a-z_]+) = (?<value>""[^""\n]*""|[-+.\w]+)");

    /// <summary>Random designs that are at fault, from a seed.</summary>
    public static IEnumerable<FaultyDesign> From(int seed, IReadOnlyList<string> samples)
    {
        var random = new Random(seed);
        while (true)
        {
            string text = samples[random.Next(samples.Count)];
            var (change, source) = random.Next(4) == 0 ? Added(random, text) : Changed(random, text);
            var findings = FindingsOf(source);
            if (findings.Any(f => f.Severity == Severity.Error))
            {
                yield return new(change, source, findings);
            }
        }
    }

    /// <summary>
    /// Every number of the key model in turn, at the ends of its range, beyond them, and as figures that no decimal tells exactly: lengths of full size,
    /// thirds. Not all are at fault.
    /// </summary>
    /// <param name="random">Chooses what stands beside a key.</param>
    /// <param name="samples">Texts of sound designs.</param>
    public static IEnumerable<FaultyDesign> OfEveryKey(Random random, IReadOnlyList<string> samples)
    {
        var numbers = Numbers(ProjectKeys.Root, "").ToArray();
        while (true)
        {
            foreach (var (key, rule) in numbers)
            {
                Override[] sets = [new(key, Awkward(random, rule)), .. Beside(random, numbers)];
                var source = new ProjectSource(samples[random.Next(samples.Count)], "halt.toml", null, sets);
                yield return new(string.Join("; ", sets.Select(o => $"{o.Key} = {o.Value}")), source, FindingsOf(source));
            }
        }
    }

    // Half of them stand alone: two figures that do not go together are a fault of their own kind.
    private static IEnumerable<Override> Beside(Random random, (string Key, NumberRule Rule)[] numbers)
    {
        for (int i = random.Next(4) - 1; i > 0; i--)
        {
            var (key, rule) = numbers[random.Next(numbers.Length)];
            yield return new(key, Awkward(random, rule));
        }
    }

    private static string Awkward(Random random, NumberRule rule)
    {
        string Told(double v) => (rule.Whole ? Math.Round(v) : v).ToString(CultureInfo.InvariantCulture);
        var (least, most) = (rule.Range.Lowest, Math.Min(rule.Range.Most, 3000));
        double share = Math.Pow(random.NextDouble(), 4),
            usual = double.TryParse(rule.Default ?? rule.Example, NumberStyles.Float, CultureInfo.InvariantCulture, out double stated) ? stated
                : (least + most) / 20;
        int kind = random.Next(rule.IsLength ? 12 : 8);
        return (rule.IsLength || kind < 4 ? kind : kind + 4) switch
        {
            0 => Told(least),
            1 => Told(rule.Range.Most),
            2 => Told(least - random.NextDouble()),
            3 => Told(least + ((most - least) * share)),
            4 => string.Create(CultureInfo.InvariantCulture, $"\"{Math.Ceiling(share * most * 76.2 / 304.8):0} "
                + $"ft {random.Next(12)}-{(2 * random.Next(8)) + 1}/16 in full size\""),
            5 => string.Create(CultureInfo.InvariantCulture, $"\"{Math.Ceiling(share * 1000):0}/{random.Next(2, 64)} in\""),
            6 or 7 => Told(share / 3),
            _ => Told(Math.Clamp(usual * 4 * random.NextDouble(), least, most)),
        };
    }

    /// <summary>What a run of a project says.</summary>
    public static IReadOnlyList<Finding> FindingsOf(ProjectSource source, params Cure[] cures)
    {
        var read = source.Read(cures);
        return read.Value is { } project ? DesignRun.Design(project, Samples.Known).Findings : read.Findings;
    }

    // One key of the text: its value, its name, or the whole of it.
    private static (string Change, ProjectSource Source) Changed(Random random, string text)
    {
        var all = Statement.Matches(text);
        var one = all[random.Next(all.Count)];
        string key = one.Groups["key"].Value, value = one.Groups["value"].Value;
        string put = random.Next(10) switch
        {
            0 => $"{Misspelt(random, key)} = {value}",
            1 => "",
            _ => $"{key} = {Bad(random, value)}",
        };
        string changed = text[..one.Index] + put + text[(one.Index + one.Length)..];
        return ($"{one.Value} -> {put}", new(Regex.Replace(changed, @"\{ *, *|, *(?=, )|, *(?= *\})", m => m.Value[0] == '{' ? "{ " : ""), "halt.toml"));
    }

    // A key of the model that the text does not have.
    private static (string Change, ProjectSource Source) Added(Random random, string text)
    {
        var numbers = Numbers(ProjectKeys.Root, "").ToArray();
        var (key, rule) = numbers[random.Next(numbers.Length)];
        double size = Math.Pow(10, (random.NextDouble() * 5) - 1.5), value = Math.Round(size * (random.Next(6) == 0 ? -1 : 1), 2);
        string stated = rule.Whole ? Math.Round(value).ToString(CultureInfo.InvariantCulture) : value.ToString(CultureInfo.InvariantCulture);
        return ($"{key} = {stated}", new(text, "halt.toml", null, [new Override(key, stated)]));
    }

    private static IEnumerable<(string Key, NumberRule Rule)> Numbers(TableRule table, string home)
    {
        foreach (var rule in table.Keys)
        {
            string key = home.Length == 0 ? rule.Name : $"{home}.{rule.Name}";
            switch (rule)
            {
                case NumberRule number:
                    yield return (key, number);
                    break;
                case TableRule inner when inner.Name is not ("survey" or "start" or "leading_truck" or "trailing_truck"):
                    foreach (var found in Numbers(inner, key))
                    {
                        yield return found;
                    }

                    break;
                case ListRule { Item: TableRule item } when home.Length == 0:
                    foreach (var found in Numbers(item, key + "[0]"))
                    {
                        yield return found;
                    }

                    break;
                default:
                    break;
            }
        }
    }

    private static string Bad(Random random, string value)
    {
        if (!double.TryParse(value, NumberStyles.Float, CultureInfo.InvariantCulture, out double number))
        {
            string inner = value.Trim('"');
            return random.Next(4) switch { 0 => "7", 1 => $"\"{Misspelt(random, inner)}\"", 2 => "\"\"", _ => "true" };
        }

        string Told(double v) => Math.Round(v, 3).ToString(CultureInfo.InvariantCulture);
        return random.Next(12) switch
        {
            0 => Told(-number),
            1 => "0",
            2 or 3 => Told(number * 10),
            4 => Told(number / 10),
            5 => Told(number * (1 + (random.NextDouble() * 3))),
            6 => Told(number * random.NextDouble()),
            7 => $"\"{Told(number)}\"",
            8 => "nan",
            9 => "true",
            10 => Told(number * 100),
            _ => Told(number * (1.5 + random.NextDouble())),
        };
    }

    private static string Misspelt(Random random, string word)
    {
        if (word.Length < 2)
        {
            return word + "x";
        }

        int at = random.Next(word.Length - 1);
        return random.Next(2) == 0 ? word.Remove(at, 1) : word[..at] + word[at + 1] + word[at] + word[(at + 2)..];
    }
}
