using PlatformForge.Projects.Reading;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Projects.Keys.Grammar;

/// <summary>A reading under way: collects the faults, and knows the scale as soon as the layout has been read.</summary>
public sealed class KeyReading
{
    private readonly List<Finding> findings = [];

    /// <summary>Scale of the layout; 1:76.2 until it is read, so that reading can go on to find more faults.</summary>
    public ModelScale Scale { get; set; } = new(76.2);

    /// <summary>How messages speak of the file that is read.</summary>
    public FileWords What { get; init; } = FileWords.Project;

    public IReadOnlyList<Finding> Findings => findings;

    public bool HasErrors => findings.Any(f => f.Severity == Severity.Error);

    /// <summary>Adds a fault. A key that is made of an empty table's name and a dot is one of the file's root.</summary>
    public void Fault(string code, string key, SourcePlace place, string message, string remedy, Cure? cure = null) =>
        findings.Add(Finding.Error(code, key.TrimStart('.'), message, remedy) with
        {
            File = place.File,
            Line = place.Line,
            Column = place.Column,
            Cure = cure
        });

    /// <summary>Takes over findings that have their places already.</summary>
    public void Add(IEnumerable<Finding> more) => findings.AddRange(more);

    public double? Number(NumberRule rule, TreeNode node, string key)
    {
        double value;
        switch (node)
        {
            case TreeNumber number:
                value = number.Value;
                break;
            case TreeText text when rule.IsLength:
                if (LengthText.Read(text.Value, Scale) is not { } length)
                {
                    Fault("PF1007", key, node.Place, $"{LastOf(key)} is {node.Kind}, which is not a length.",
                        $"Give {rule.Wanted} of the model, or a text with a unit such as \"25 mm\", \"1/32 in\", \"4 ft 6 in full size\" or \"2.3 m full "
                            + "size\".");
                    return null;
                }

                value = length;
                break;
            default:
                WrongKind(rule, node, key);
                return null;
        }

        if (rule.Range.Holds(value) && (!rule.Whole || value == Math.Floor(value)))
        {
            return value;
        }

        Fault(
            "PF1008",
            key,
            node.Place,
            $"{LastOf(key)} is {Shown(value)}{(rule.Unit.Length > 0 && double.IsFinite(value) ? " " + rule.Unit : "")}.",
            $"Give {rule.Wanted}.",
            double.IsFinite(value) ? Cure.Set(key, Meant(rule, rule.Whole ? Math.Round(value) : value)) : null);
        return null;

        // A sign that slipped in is likelier than a figure at the very end of the range.
        static double Meant(NumberRule rule, double value) => value < 0 && rule.Range.Holds(-value) ? -value : rule.Range.Nearest(value);
    }

    public string? Text(TextRule rule, TreeNode node, string key)
    {
        if (node is not TreeText text)
        {
            WrongKind(rule, node, key);
            return null;
        }

        if (rule.Choices.Count == 0)
        {
            if (string.IsNullOrWhiteSpace(text.Value) || text.Value.Length > 200 || text.Value.Any(Hidden))
            {
                Fault(
                    "PF1008",
                    key,
                    node.Place,
                    $"{LastOf(key)} is empty, longer than 200 letters, or has control characters in it.",
                    "Give a short text in double quotes.");
                return null;
            }

            return ComposedLetters.Of(text.Value);
        }

        if (rule.Choices.FirstOrDefault(c => string.Equals(c, text.Value, StringComparison.OrdinalIgnoreCase)) is { } choice)
        {
            return choice;
        }

        string? near = NearestName.Of(text.Value, rule.Choices);
        Fault("PF1011", key, node.Place, $"{LastOf(key)} is {node.Kind}.", (near is null ? "" : $"Did you mean \"{near}\"? ") + $"Give {rule.Wanted}.");
        return null;
    }

    public bool? Flag(FlagRule rule, TreeNode node, string key)
    {
        if (node is TreeFlag flag)
        {
            return flag.Value;
        }

        WrongKind(rule, node, key);
        return null;
    }

    public TreeTable? Table(KeyRule rule, TreeNode node, string key)
    {
        if (node is TreeTable table)
        {
            return table;
        }

        WrongKind(rule, node, key);
        return null;
    }

    public IReadOnlyList<TreeNode>? List(ListRule rule, TreeNode node, string key)
    {
        if (node is not TreeList list)
        {
            WrongKind(rule, node, key);
            return null;
        }

        if (list.Items.Count >= rule.Least && list.Items.Count <= rule.Most)
        {
            return list.Items;
        }

        Fault("PF1012", key, node.Place, Invariant($"{LastOf(key)} has {list.Items.Count} {(list.Items.Count == 1 ? "entry" : "entries")}."),
            $"Give {rule.Wanted}.");
        return null;
    }

    /// <summary>The last name of a key with its number, as a sentence begins with it.</summary>
    public static string LastOf(string key) => key[(key.LastIndexOf('.') + 1)..];

    // Six places after the point show no less.
    private const double LeastWritten = 1e-6;

    // A number as it is repeated: not with more digits than anybody reads.
    private static string Shown(double value) =>
        double.IsNaN(value) ? "nan, which is no number"
        : double.IsInfinity(value) ? $"{(value < 0 ? "-" : "")}inf, which is no number"
        : Math.Abs(value) is >= 0.01 and < 1e9 or 0 ? Invariant($"{value:0.####}")
        : Math.Abs(value) is >= LeastWritten and < 0.01 ? Invariant($"{value:0.######}") : Invariant($"{value:0.###E+0}");

    // Control characters, line breaks, and signs that turn the direction of writing: a name with them reads as what it is not.
    private static bool Hidden(char c) => char.IsControl(c) || c is '\u2028' or '\u2029' or (>= '\u202A' and <= '\u202E') or (>= '\u2066' and <= '\u2069');

    private void WrongKind(KeyRule rule, TreeNode node, string key) =>
        Fault("PF1007", key, node.Place, $"{LastOf(key)} is {node.Kind}.", IsOneOfSeveral(rule, node, key)
            ? $"Write [[{key}]], in double brackets: there may be several." : $"Give {rule.Wanted}.");

    // A heading in single brackets where there may be several of it.
    private static bool IsOneOfSeveral(KeyRule rule, TreeNode node, string key) => rule is ListRule { Item: TableRule } && node is TreeTable
        && !key.Contains('.');
}
