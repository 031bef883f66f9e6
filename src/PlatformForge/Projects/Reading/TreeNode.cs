namespace PlatformForge.Projects.Reading;

/// <summary>A value of a project file with the place it was written at.</summary>
public abstract class TreeNode(SourcePlace place)
{
    public SourcePlace Place { get; } = place;

    /// <summary>What it is, for messages: a number, a text.</summary>
    public abstract string Kind { get; }
}

public sealed class TreeNumber(SourcePlace place, double value) : TreeNode(place)
{
    public double Value { get; } = value;

    // Told as the file writes it.
    public override string Kind => double.IsInfinity(Value) ? $"the number {(Value < 0 ? "-" : "")}inf"
        : FormattableString.Invariant($"the number {Value}").Replace("NaN", "nan", StringComparison.Ordinal);
}

public sealed class TreeText(SourcePlace place, string value) : TreeNode(place)
{
    /// <summary>Longest text repeated in a message.</summary>
    private const int ShownLength = 40;

    public string Value { get; } = value;

    public override string Kind => $"the text \"{(Value.Length > ShownLength ? Value[..ShownLength] + "…" : Value).ReplaceLineEndings(" ")}\"";
}

public sealed class TreeFlag(SourcePlace place, bool value) : TreeNode(place)
{
    public bool Value { get; } = value;

    public override string Kind => Value ? "true" : "false";
}

/// <summary>A date or a time: nothing in a project file is one.</summary>
public sealed class TreeDate(SourcePlace place) : TreeNode(place)
{
    public override string Kind => "a date or time";
}

public sealed class TreeList(SourcePlace place, IReadOnlyList<TreeNode> items) : TreeNode(place)
{
    public IReadOnlyList<TreeNode> Items { get; } = items;

    public override string Kind => FormattableString.Invariant($"a list of {Items.Count}");
}

/// <summary>A key of a table, where the key itself stands, and what it holds.</summary>
public sealed record TreeEntry(string Name, SourcePlace Place, TreeNode Value);

/// <summary>A table with its keys in the order of the file.</summary>
public sealed class TreeTable(SourcePlace place, IReadOnlyList<TreeEntry> entries) : TreeNode(place)
{
    public IReadOnlyList<TreeEntry> Entries { get; } = entries;

    public override string Kind => "a table";

    private const int FewEntries = 16;

    private Dictionary<string, TreeEntry>? index;

    public TreeEntry? Find(string name)
    {
        if (Entries.Count <= FewEntries)
        {
            return Entries.FirstOrDefault(e => string.Equals(e.Name, name, StringComparison.Ordinal));
        }

        index ??= Entries.DistinctBy(e => e.Name).ToDictionary(e => e.Name, StringComparer.Ordinal);
        return index.GetValueOrDefault(name);
    }

    /// <summary>The text under a key; null when there is none or it is something else.</summary>
    public string? TextOf(string name) => (Find(name)?.Value as TreeText)?.Value;

    /// <summary>The same table with one key replaced or added.</summary>
    public TreeTable With(TreeEntry entry)
    {
        var changed = new List<TreeEntry>(Entries);
        int at = changed.FindIndex(e => string.Equals(e.Name, entry.Name, StringComparison.Ordinal));
        if (at < 0)
        {
            changed.Add(entry);
        }
        else
        {
            changed[at] = entry;
        }

        return new(Place, changed);
    }

    /// <summary>
    /// This table over another: its values win, tables under the same key are laid over each other, everything else is
    /// replaced whole.
    /// </summary>
    public TreeTable Over(TreeTable below)
    {
        var laid = new List<TreeEntry>(below.Entries.Select(e => Find(e.Name) is { } own ? Over(own, e) : e));
        laid.AddRange(Entries.Where(e => below.Find(e.Name) is null));
        return new(Place, laid);
    }

    private static TreeEntry Over(TreeEntry own, TreeEntry below) =>
        own.Value is TreeTable upper && below.Value is TreeTable lower ? own with { Value = upper.Over(lower) } : own;
}
