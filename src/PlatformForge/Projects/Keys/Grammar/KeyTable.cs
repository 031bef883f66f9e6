using PlatformForge.Projects.Reading;
using PlatformForge.Units;
using PlatformForge.Units.Specs;
using static System.FormattableString;

namespace PlatformForge.Projects.Keys.Grammar;

/// <summary>
/// The keys of one kind of table and what each of them sets in a record. Defaults are asked of the record itself.
/// </summary>
/// <param name="defaults">The record with nothing stated, at a scale.</param>
public sealed class KeyTable<T>(Func<ModelScale, T> defaults)
{
    /// <summary>Most tables in a list of tables, and most entries in a plain list.</summary>
    private const int MostItems = 1000;

    private readonly List<(KeyRule Rule, Func<T, TreeNode, string, KeyReading, T> Apply)> keys = [];
    private readonly List<Action<T, TreeTable, string, KeyReading>> checks = [];

    /// <summary>The keys that a room states of one of its specs.</summary>
    public KeyTable(SpecKeys<T> spec)
        : this(spec.DefaultsAt)
    {
        var reader = new SpecTable(this);
        foreach (var key in spec.All)
        {
            key.Tell(reader);
            if (key.Example is { } example)
            {
                Example(example);
            }
        }

        foreach (var check in spec.Checks)
        {
            Check((record, node, key, reading) =>
            {
                switch (check(record, key))
                {
                    case null:
                        break;
                    case { Under: null } whole:
                        reading.Fault("PF1013", key, node.Place, whole.Message, whole.Remedy, whole.Cure);
                        break;
                    case { Under: { } under } fault:
                        reading.Fault("PF1014", $"{key}.{under}", (node.Find(under)?.Value ?? node).Place, fault.Message, fault.Remedy, fault.Cure);
                        break;
                }
            });
        }
    }

    public IReadOnlyList<KeyRule> Rules => keys.ConvertAll(k => k.Rule);

    /// <summary>The record with nothing stated.</summary>
    public T DefaultsAt(ModelScale scale) => defaults(scale);

    public TableRule AsRule(string name, string says) => new(name, says, Rules);

    /// <summary>A length in mm of the model.</summary>
    public KeyTable<T> Length(string name, NumberRange range, string says, Func<T, double?> get, Func<T, double, T> set, bool required = false) =>
        Number(name, range, "mm", says, get, set, required);

    public KeyTable<T> Number(
        string name,
        NumberRange range,
        string unit,
        string says,
        Func<T,
        double?> get,
        Func<T,
        double,
        T> set,
        bool required = false,
        bool whole = false)
    {
        var rule = WithDefault(
            new NumberRule(name, says, range, unit, whole) { Required = required },
            get,
            v => v is { } d && double.IsFinite(d) ? ShortNumber(d) : null);
        keys.Add((rule, (record, node, key, reading) => reading.Number(rule, node, key) is { } value ? set(record, value) : record));
        return this;
    }

    public KeyTable<T> Text(string name, string says, Func<T, string?> get, Func<T, string, T> set, bool required = false, params string[] choices)
    {
        var rule = WithDefault(new TextRule(name, says, choices) { Required = required }, get, v => string.IsNullOrEmpty(v) || required ? null : $"\"{v}\"");
        keys.Add((rule, (record, node, key, reading) => reading.Text(rule, node, key) is { } value ? set(record, value) : record));
        return this;
    }

    /// <summary>One of the values of an enumeration, under its names in the file.</summary>
    /// <remarks>Plain loops: every enumeration makes every general function that it goes through anew, which a process that reads one file pays for.</remarks>
    public KeyTable<T> Choice<TChoice>(
        string name,
        string says,
        Func<T,
        TChoice> get,
        Func<T,
        TChoice,
        T> set,
        (string Name, TChoice Value)[] choices,
        bool required = false)
        where TChoice : struct
    {
        string[] names = new string[choices.Length];
        for (int i = 0; i < names.Length; i++)
        {
            names[i] = choices[i].Name;
        }

        return Text(name, says, record => Named(get(record)), (record, text) => set(record, choices[Array.IndexOf(names, text)].Value), required, names);

        string? Named(TChoice value)
        {
            for (int i = 0; i < names.Length; i++)
            {
                if (choices[i].Value.Equals(value))
                {
                    return names[i];
                }
            }

            return null;
        }
    }

    public KeyTable<T> Flag(string name, string says, Func<T, bool> get, Func<T, bool, T> set)
    {
        var rule = WithDefault(new FlagRule(name, says), t => (bool?)get(t), v => v == true ? "true" : "false");
        keys.Add((rule, (record, node, key, reading) => reading.Flag(rule, node, key) is { } value ? set(record, value) : record));
        return this;
    }

    /// <summary>A list of numbers.</summary>
    public KeyTable<T> Numbers(
        string name,
        NumberRange range,
        string unit,
        string says,
        Func<T,
        IReadOnlyList<double>,
        T> set,
        int least = 0,
        int most = MostItems,
        bool required = false)
    {
        var item = new NumberRule("", says, range, unit);
        var rule = new ListRule(name, says, item, least, most) { Required = required };
        return Own(rule, (record, node, key, reading) =>
        {
            if (reading.List(rule, node, key) is not { } nodes)
            {
                return record;
            }

            var values = nodes.Select((n, i) => reading.Number(item, n, Invariant($"{key}[{i}]"))).ToArray();
            return values.All(v => v is not null) ? set(record, values.Select(v => v!.Value).ToArray()) : record;
        });
    }

    /// <summary>A list of texts.</summary>
    public KeyTable<T> Texts(string name, string says, Func<T, IReadOnlyList<string>, T> set)
    {
        var item = new TextRule("", says, []);
        var rule = new ListRule(name, says, item, 0, MostItems);
        return Own(rule, (record, node, key, reading) =>
        {
            var values = reading.List(rule, node, key)?.Select((n, i) => reading.Text(item, n, Invariant($"{key}[{i}]"))).ToArray();
            return values is not null && values.All(v => v is not null) ? set(record, values!) : record;
        });
    }

    /// <summary>A table inside; it starts from what the record holds, or from the inner defaults when that is nothing.</summary>
    public KeyTable<T> Table<TInner>(string name, string says, KeyTable<TInner> inner, Func<T, TInner?> get, Func<T, TInner, T> set, bool required = false)
        where TInner : class
    {
        var rule = inner.AsRule(name, says) with { Required = required };
        keys.Add((rule, (record, node, key, reading) =>
            reading.Table(
                rule,
                node,
                key) is { } table ? set(record, inner.Read(get(record) ?? inner.DefaultsAt(reading.Scale), table, key, reading)) : record));
        return this;
    }

    /// <summary>A list of tables.</summary>
    /// <param name="name">The key, in the singular as each is one.</param>
    /// <param name="says">What one of them is.</param>
    /// <param name="inner">Keys of one.</param>
    /// <param name="named">Gives a record the key it stands under.</param>
    /// <param name="set">Puts the list into the record.</param>
    /// <param name="least">Fewest.</param>
    public KeyTable<T> Tables<TInner>(
        string name,
        string says,
        KeyTable<TInner> inner,
        Func<TInner,
        string,
        TInner> named,
        Func<T,
        IReadOnlyList<TInner>,
        T> set,
        int least = 0)
    {
        var item = inner.AsRule("", says);
        var rule = new ListRule(name, says, item, least, MostItems) { Required = least > 0 };
        return Own(rule, (record, node, key, reading) =>
        {
            if (reading.List(rule, node, key) is not { } nodes)
            {
                return record;
            }

            var items = new List<TInner>();
            for (int i = 0; i < nodes.Count; i++)
            {
                string place = Invariant($"{key}[{i}]");
                if (reading.Table(item, nodes[i], place) is { } table)
                {
                    items.Add(inner.Read(named(inner.DefaultsAt(reading.Scale), place), table, place, reading));
                }
            }

            return set(record, items);
        });
    }

    /// <summary>A key with its own way of reading.</summary>
    public KeyTable<T> Own(KeyRule rule, Func<T, TreeNode, string, KeyReading, T> apply)
    {
        keys.Add((rule, apply));
        return this;
    }

    /// <summary>Gives the last key a value that shows how it is written.</summary>
    public KeyTable<T> Example(string example)
    {
        keys[^1] = (keys[^1].Rule with { Example = example }, keys[^1].Apply);
        return this;
    }

    /// <summary>A look at the whole table once its keys are read without fault.</summary>
    public KeyTable<T> Check(Action<T, TreeTable, string, KeyReading> check)
    {
        checks.Add(check);
        return this;
    }

    /// <summary>Reads a table over a record; every fault goes into the reading.</summary>
    public T Read(T record, TreeTable table, string key, KeyReading reading)
    {
        int before = reading.Findings.Count;
        var meant = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var entry in table.Entries.Where(e => keys.TrueForAll(k => k.Rule.Name != e.Name)))
        {
            if (UnknownKey.Report(entry, key, Rules, reading) is { } near)
            {
                meant.TryAdd(near, entry.Name);
            }
        }

        foreach (var (rule, apply) in keys)
        {
            string inner = key.Length == 0 ? rule.Name : key + "." + rule.Name;
            if (table.Find(rule.Name) is { } entry)
            {
                record = apply(record, entry.Value, inner, reading);
            }
            else if (rule.Required)
            {
                reading.Fault(
                    "PF1009",
                    inner,
                    table.Place,
                    $"{(key.Length == 0 ? "The file" : key)} has no {rule.Name}: {rule.Says}",
                    $"Add {rule.Name}, {rule.Wanted}.",
                    Misspelt(meant, rule, key));
            }
        }

        if (reading.Findings.Count == before)
        {
            checks.ForEach(c => c(record, table, key, reading));
        }

        return record;
    }

    // The first key that was meant for one that is missing.
    private static Cure? Misspelt(Dictionary<string, string> meant, KeyRule missing, string key) =>
        meant.TryGetValue(missing.Name, out string? written) ? Cure.Rename(key.Length == 0 ? written : $"{key}.{written}", missing.Name) : null;

    private TRule WithDefault<TRule, TValue>(TRule rule, Func<T, TValue> get, Func<TValue, string?> write)
        where TRule : KeyRule
    {
        return rule.Required ? rule : rule with { DefaultAt = scale => write(get(defaults(scale))) };
    }

    private static string ShortNumber(double value) => Math.Round(value, 4).ToString(System.Globalization.CultureInfo.InvariantCulture);

    // Puts each key of a room's spec into the table.
    private sealed class SpecTable(KeyTable<T> table) : ISpecReader<T>
    {
        public void Figure(FigureKey<T> key) => table.Number(key.Name, key.Range, key.Unit, key.Says, key.Get, key.Set, key.Required, key.Whole);

        public void Figures(FiguresKey<T> key) => table.Numbers(key.Name, key.Range, key.Unit, key.Says, key.Set);

        public void Word(WordKey<T> key) => table.Text(key.Name, key.Says, key.Get, key.Set, key.Required, [.. key.Choices]);

        public void Flag(FlagKey<T> key) => table.Flag(key.Name, key.Says, key.Get, key.Set);

        public void Table<TInner>(TableKey<T, TInner> key)
            where TInner : class => table.Table(key.Name, key.Says, new KeyTable<TInner>(key.Inner), key.Get, key.Set, key.Required);

        public void Tables<TInner>(TablesKey<T, TInner> key) => table.Tables(key.Name, key.Says, new KeyTable<TInner>(key.Inner), (inner, _) => inner, key.Set);
    }
}
