using PlatformForge.Units;
using Tomlyn.Syntax;
using static System.FormattableString;

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

        private readonly Dictionary<string, int> index = new(StringComparer.Ordinal);

        public List<(string Name, SourcePlace Place, object Value)> Entries { get; } = [];

        public object? Find(string name) => index.TryGetValue(name, out int at) ? Entries[at].Value : null;

        public SourcePlace PlaceOf(string name) => Entries[index[name]].Place;

        public void Add(string name, SourcePlace place, object value)
        {
            index.TryAdd(name, Entries.Count);
            Entries.Add((name, place, value));
        }
    }

    private readonly List<Finding> faults = [];

    /// <summary>The tree; a key that is given in two ways which do not go together is a fault.</summary>
    public Outcome<TreeTable> Build(DocumentSyntax document)
    {
        var root = new Growing(new(file, 1, 1));
        foreach (var pair in document.KeyValues)
        {
            Put(root, pair);
        }

        foreach (var table in document.Tables)
        {
            var names = NamesOf(table.Name!);
            if ((table is TableArraySyntax ? NewItem(root, names) : Descend(root, names)) is not { } home)
            {
                continue;
            }

            foreach (var pair in table.Items.OfType<KeyValueSyntax>())
            {
                Put(home, pair);
            }
        }

        return faults.Count > 0 ? Outcome.Fault<TreeTable>(faults) : Outcome.Of(Finish(root));
    }

    private static TreeTable Finish(Growing table) =>
        new(table.Place, table.Entries.ConvertAll(e => new TreeEntry(e.Name, e.Place, e.Value switch
        {
            Growing inner => Finish(inner),
            List<Growing> items => new TreeList(e.Place, items.ConvertAll(i => (TreeNode)Finish(i))),
            _ => (TreeNode)e.Value,
        })));

    private Growing? Descend(Growing from, IEnumerable<(string Name, SourcePlace Place)> names)
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
                    from.Add(name, place, added);
                    from = added;
                    break;
                default:
                    Twice(from, name, place);
                    return null;
            }
        }

        return from;
    }

    private Growing? NewItem(Growing root, List<(string Name, SourcePlace Place)> names)
    {
        var (name, place) = names[^1];
        if (Descend(root, names.Take(names.Count - 1)) is not { } home)
        {
            return null;
        }

        if (home.Find(name) is not List<Growing> items)
        {
            if (home.Find(name) is not null)
            {
                Twice(home, name, place);
                return null;
            }

            items = [];
            home.Add(name, place, items);
        }

        items.Add(new(place));
        return items[^1];
    }

    private void Put(Growing home, KeyValueSyntax pair)
    {
        var names = NamesOf(pair.Key!);
        var (name, place) = names[^1];
        if (Descend(home, names.Take(names.Count - 1)) is not { } owner)
        {
            return;
        }

        if (owner.Find(name) is not null)
        {
            Twice(owner, name, place);
            return;
        }

        owner.Add(name, place, ValueOf(pair.Value!));
    }

    // The parser checks most of this; what it lets pass are headings that would go on with what was closed in brackets.
    private void Twice(Growing home, string name, SourcePlace place)
    {
        int first = home.PlaceOf(name).Line;
        faults.Add(Finding.Error(
            "PF1042",
            "",
            Invariant($"{name} is given a second time; line {first} has it already{(home.Find(name) is TreeTable or TreeList ? ", closed in brackets" : "")}."),
            Invariant($"Keep one of the two: write all of it in line {first}, or take {name} out there and give it under its heading.")) with
        {
            File = place.File,
            Line = place.Line,
            Column = place.Column,
        });
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
