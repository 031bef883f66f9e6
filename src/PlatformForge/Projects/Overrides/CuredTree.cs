using System.Globalization;
using PlatformForge.Projects.Keys.Grammar;
using PlatformForge.Projects.Reading;
using PlatformForge.Units;

namespace PlatformForge.Projects.Overrides;

/// <summary>The keys of a project with a cure taken.</summary>
internal static class CuredTree
{
    /// <summary>The tree with the cure in it; the same tree where the cure's key has no place.</summary>
    public static TreeTable Of(TreeTable root, Cure cure, KeyReading reading)
    {
        if (cure.Act == CureAct.Set)
        {
            return new Override(cure.Key, cure.Value, "cure").ApplyTo(root, reading);
        }

        return KeyPath.Split(cure.Key) is { } names ? (TreeTable)Without(root, names, 0, cure.Act == CureAct.Rename ? cure.Value : null) : root;
    }

    /// <summary>What stands under a key; null when nothing does.</summary>
    public static TreeNode? Find(TreeTable root, string key)
    {
        TreeNode? node = root;
        foreach (string name in KeyPath.Split(key) ?? [])
        {
            node = node switch
            {
                TreeTable table => table.Find(name)?.Value,
                TreeList list when IndexOf(name) is { } at && at < list.Items.Count => list.Items[at],
                _ => null,
            };
        }

        return node;
    }

    private static TreeNode Without(TreeNode home, IReadOnlyList<string> names, int at, string? renamed)
    {
        bool last = at == names.Count - 1;
        switch (home)
        {
            case TreeTable table when table.Find(names[at]) is { } entry:
                return new TreeTable(table.Place, [.. table.Entries.SelectMany(e => e != entry ? [e]
                    : !last ? [e with { Value = Without(e.Value, names, at + 1, renamed) }]
                    : renamed is null ? Array.Empty<TreeEntry>() : [e with { Name = renamed }])]);
            case TreeList list when IndexOf(names[at]) is { } index && index < list.Items.Count:
                return new TreeList(list.Place,
                    [.. list.Items.SelectMany((item, i) => i != index ? [item] : last ? Array.Empty<TreeNode>() : [Without(item, names, at + 1, renamed)])]);
            default:
                return home;
        }
    }

    private static int? IndexOf(string name) => int.TryParse(name, NumberStyles.None, CultureInfo.InvariantCulture, out int index) ? index : null;
}
