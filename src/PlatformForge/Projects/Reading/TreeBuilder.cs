using PlatformForge.Units;
using Tomlyn.Syntax;

namespace PlatformForge.Projects.Reading;

/// <summary>
/// Joins the tables, dotted keys and lists of tables of a checked TOML document into one tree.
/// </summary>
internal sealed class TreeBuilder(string file)
{
    /// <summary>A table while it is being filled: each key holds a growing table, a list of growing tables, or a finished value.</summary>
    private sealed class Growing(SourcePlace place)
    {
        public SourcePlace Place { get; } = place;

        public List<(string Name, SourcePlace Place, object Value)> Entries { get; } = [];

        public object? Find(string name) => Entries.FirstOrDefault(e => string.Equals(e.Name, name, StringComparison.Ordinal)).Value;
    }

    public TreeTable Build(DocumentSyntax document)
    {
        var root = new Growing(new(file, 1, 1));
        foreach (var pair in document.KeyValues)
        {
            Put(root, pair);
        }

        foreach (var table in document.Tables)
        {
            var names = NamesOf(table.Name!);
            var home = table is TableArraySyntax ? NewItem(root, names) : Descend(root, names);
            foreach (var pair in table.Items.OfType<KeyValueSyntax>())
            {
                Put(home, pair);
            }
        }

        return Finish(root);
    }

    private static TreeTable Finish(Growing table) =>
        new(table.Place, table.Entries.ConvertAll(e => new TreeEntry(e.Name, e.Place, e.Value switch
        {
            Growing inner => Finish(inner),
            List<Growing> items => new TreeList(e.Place, items.ConvertAll(i => (TreeNode)Finish(i))),
            _ => (TreeNode)e.Value,
        })));

    private static Growing Descend(Growing from, IEnumerable<(string Name, SourcePlace Place)> names)
    {
        foreach (var (name, place) in names)
        {
            switch (from.Find(name))
            {
                case Growing inner:
                    from = inner;
                    break;
                case List<Growing> items:
                    from = items[^1];
                    break;
                case null:
                    var added = new Growing(place);
                    from.Entries.Add((name, place, added));
                    from = added;
                    break;
                default:
                    throw new BrokenInvariantException($"Projects: the key {name} was taken for a table though the reader had checked it.");
            }
        }

        return from;
    }

    private static Growing NewItem(Growing root, List<(string Name, SourcePlace Place)> names)
    {
        var home = Descend(root, names.Take(names.Count - 1));
        var (name, place) = names[^1];
        if (home.Find(name) is not List<Growing> items)
        {
            items = [];
            home.Entries.Add((name, place, items));
        }

        items.Add(new(place));
        return items[^1];
    }

    private void Put(Growing home, KeyValueSyntax pair)
    {
        var names = NamesOf(pair.Key!);
        var (name, place) = names[^1];
        Descend(home, names.Take(names.Count - 1)).Entries.Add((name, place, ValueOf(pair.Value!)));
    }

    private TreeNode ValueOf(ValueSyntax value)
    {
        var place = PlaceOf(value);
        switch (value)
        {
            case IntegerValueSyntax whole:
                return new TreeNumber(place, whole.Value);
            case FloatValueSyntax real:
                return new TreeNumber(place, real.Value);
            case BooleanValueSyntax flag:
                return new TreeFlag(place, flag.Value);
            case StringValueSyntax text:
                return new TreeText(place, text.Value ?? "");
            case ArraySyntax array:
                return new TreeList(place, [.. array.Items.Select(i => ValueOf(i.Value!))]);
            case InlineTableSyntax table:
                var inner = new Growing(place);
                foreach (var item in table.Items)
                {
                    Put(inner, item.KeyValue!);
                }

                return Finish(inner);
            default:
                return new TreeDate(place);
        }
    }

    private List<(string Name, SourcePlace Place)> NamesOf(KeySyntax key)
    {
        var names = new List<(string, SourcePlace)> { (NameOf(key.Key!), PlaceOf(key.Key!)) };
        foreach (var dotted in key.DotKeys)
        {
            names.Add((NameOf(dotted.Key!), PlaceOf(dotted.Key!)));
        }

        return names;
    }

    private static string NameOf(BareKeyOrStringValueSyntax key) => key switch
    {
        BareKeySyntax bare => bare.Key?.Text ?? "",
        StringValueSyntax text => text.Value ?? "",
        _ => "",
    };

    private SourcePlace PlaceOf(SyntaxNodeBase node) => new(file, node.Span.Start.Line + 1, node.Span.Start.Column + 1);
}
