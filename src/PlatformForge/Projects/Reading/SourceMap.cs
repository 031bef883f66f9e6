using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Projects.Reading;

/// <summary>Where every key of a project was written, so that a room's finding gets its file, line and column.</summary>
public sealed class SourceMap
{
    private readonly Dictionary<string, SourcePlace> places = new(StringComparer.Ordinal);
    private readonly SourcePlace root;

    /// <summary>Of a project that nobody wrote.</summary>
    public static SourceMap Empty { get; } = new(new TreeTable(new("", 0, 0), []));

    public SourceMap(TreeTable tree)
    {
        root = tree.Place;
        Enter("", tree);
    }

    /// <summary>The place of a key such as <c>platform[0].deck.width</c>; of the nearest key around it when it was left to its default.</summary>
    public SourcePlace Find(string key)
    {
        while (key.Length > 0)
        {
            if (places.TryGetValue(key, out var place))
            {
                return place;
            }

            key = key[..Math.Max(0, key.LastIndexOfAny(['.', '[']))];
        }

        return root;
    }

    /// <summary>The finding with its place; one that has a file already keeps it, one without a key gets none.</summary>
    public Finding Join(Finding finding)
    {
        if (finding.File is not null || finding.Key.Length == 0)
        {
            return finding;
        }

        var place = Find(finding.Key);
        return finding with { File = place.File, Line = place.Line, Column = place.Column };
    }

    private void Enter(string key, TreeNode node)
    {
        switch (node)
        {
            case TreeTable table:
                foreach (var entry in table.Entries)
                {
                    string inner = key.Length == 0 ? entry.Name : key + "." + entry.Name;
                    places[inner] = entry.Value is TreeTable or TreeList ? entry.Place : entry.Value.Place;
                    Enter(inner, entry.Value);
                }

                break;
            case TreeList list:
                for (int i = 0; i < list.Items.Count; i++)
                {
                    string inner = Invariant($"{key}[{i}]");
                    places[inner] = list.Items[i].Place;
                    Enter(inner, list.Items[i]);
                }

                break;
            default:
                break;
        }
    }
}
