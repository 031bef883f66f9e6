using PlatformForge.Projects.Keys.Grammar;
using PlatformForge.Projects.Reading;
using PlatformForge.Units;

namespace PlatformForge.Projects.Overrides;

/// <summary>
/// One value that stands in for that of the project file, written <c>platform[0].deck.thickness=2</c>. An entry of a
/// list is named by its number from 0 or by its name (<c>platform.up-side.deck.thickness</c>, blanks as hyphens); where there is only one it
/// may be left out.
/// </summary>
/// <param name="Key">The key as written.</param>
/// <param name="Value">The value as written: as in the file, or plain text.</param>
/// <param name="Option">How the command line calls it, for findings.</param>
public sealed record Override(string Key, string Value, string Option = "--set")
{
    /// <summary>Longest override taken, letters.</summary>
    private const int Longest = 500;

    /// <summary>Keys that stand for each other: setting one takes the other of the file away.</summary>
    private static readonly (string, string)[] Alternatives = [("length", "gradient"), ("length", "angle")];

    /// <summary>Deepest key taken, names.</summary>
    private const int Deepest = 8;

    /// <summary>Reads <c>key=value</c>.</summary>
    public static Outcome<Override> Parse(string text, string option = "--set")
    {
        int equals = text.IndexOf('=', StringComparison.Ordinal);
        string key = equals < 0 ? "" : text[..equals].Trim(), value = equals < 0 ? "" : text[(equals + 1)..].Trim();
        if (key.Length == 0 || value.Length == 0 || text.Length > Longest || text.Any(char.IsControl)
            || KeyPath.Split(key) is not { Count: > 0 and <= Deepest })
        {
            return Outcome.Fault<Override>(Finding.Error("PF1017", "", $"{option} takes a key and a value.",
                $"Write {option} platform[0].deck.thickness=2, with a key as in the project file.")
                with
            { File = $"{option} {(text.Length > 60 ? text[..60] + "…" : text)}" });
        }

        return Outcome.Of(new Override(key, value, option));
    }

    /// <summary>The tree with this value in it. A key that can't be found is a fault; one that means nothing is left for the key model to refuse.</summary>
    internal TreeTable ApplyTo(TreeTable root, KeyReading reading)
    {
        var place = new SourcePlace($"{Option} {Key}={Value}", 0, 0);
        try
        {
            return (TreeTable)Put(root, KeyPath.Split(Key)!, 0, ValueAt(place), place);
        }
        catch (NoSuchPlaceException e)
        {
            reading.Fault("PF1018", Key, place, e.Message, e.Remedy);
            return root;
        }
    }

    private static TreeNode Put(TreeNode? home, IReadOnlyList<string> names, int at, TreeNode value, SourcePlace place)
    {
        if (at == names.Count)
        {
            return value;
        }

        switch (home)
        {
            case null:
                return Put(new TreeTable(place, []), names, at, value, place);
            case TreeTable table:
                var entry = table.Find(names[at]);
                return WithoutAlternatives(table, names[at]).With(new(names[at], entry?.Place ?? place, Put(entry?.Value, names, at + 1, value, place)));
            case TreeList list:
                int index = KeyPath.IndexIn(list, names[at]);
                bool named = index >= 0;
                if (!named && list.Items is [TreeTable] && !names[at].All(char.IsAsciiDigit))
                {
                    index = 0;
                }

                if (index < 0)
                {
                    throw new NoSuchPlaceException($"{names[at - 1]} has no entry \"{names[at]}\".", "Known: " + KeyPath.EntriesOf(list) + ".");
                }

                var items = list.Items.ToArray();
                items[index] = Put(items[index], names, named ? at + 1 : at, value, place);
                return new TreeList(list.Place, items);
            default:
                throw new NoSuchPlaceException($"{names[at - 1]} is {home.Kind}, so it has no {names[at]}.", $"Set {string.Join('.', names.Take(at))} itself.");
        }
    }

    private static TreeTable WithoutAlternatives(TreeTable table, string name)
    {
        string[] others = [.. Alternatives.Where(a => a.Item1 == name).Select(a => a.Item2), .. Alternatives.Where(a => a.Item2 == name).Select(a => a.Item1)];
        return others.Length == 0 ? table : new(table.Place, [.. table.Entries.Where(e => !others.Contains(e.Name, StringComparer.Ordinal))]);
    }

    private TreeNode ValueAt(SourcePlace place)
    {
        var read = TreeReader.Read("v = " + Value, place.File);
        return read.Value is { Entries: [{ Name: "v" } only] } ? Placed(only.Value, place) : new TreeText(place, Value);
    }

    private static TreeNode Placed(TreeNode node, SourcePlace place) => node switch
    {
        TreeNumber n => new TreeNumber(place, n.Value),
        TreeText t => new TreeText(place, t.Value),
        TreeFlag f => new TreeFlag(place, f.Value),
        TreeList l => new TreeList(place, [.. l.Items.Select(i => Placed(i, place))]),
        TreeTable t => new TreeTable(place, [.. t.Entries.Select(e => new TreeEntry(e.Name, place, Placed(e.Value, place)))]),
        _ => new TreeDate(place),
    };

    /// <summary>Leaves the walk down the tree; never leaves this class.</summary>
    private sealed class NoSuchPlaceException(string message, string remedy) : Exception(message)
    {
        public string Remedy { get; } = remedy;
    }
}
