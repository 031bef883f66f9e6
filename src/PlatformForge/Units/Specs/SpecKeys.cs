namespace PlatformForge.Units.Specs;

/// <summary>
/// The keys under which a project file states a spec: each with its words, its range, and how it is asked for and set, here and nowhere else. The file's
/// reader,
/// the schema for editors, the starting file, overrides and the room's own rule on figures all take them from here; defaults are those of the record itself.
/// </summary>
/// <param name="defaults">The spec with nothing stated, at a scale.</param>
public sealed class SpecKeys<T>(Func<ModelScale, T> defaults)
{
    private readonly List<SpecKey<T>> keys = [];
    private readonly List<Func<T, string, SpecFault?>> checks = [];

    public IReadOnlyList<SpecKey<T>> All => keys;

    /// <summary>Looks at the whole table, once its keys are read without fault: the spec, and its key.</summary>
    public IReadOnlyList<Func<T, string, SpecFault?>> Checks => checks;

    /// <summary>The spec with nothing stated.</summary>
    public T DefaultsAt(ModelScale scale) => defaults(scale);

    /// <summary>A length in mm of the model.</summary>
    public SpecKeys<T> Length(string name, NumberRange range, string says, Func<T, double?> get, Func<T, double, T> set, bool required = false) =>
        Number(name, range, "mm", says, get, set, required);

    public SpecKeys<T> Number(
        string name, NumberRange range, string unit, string says, Func<T, double?> get, Func<T, double, T> set, bool required = false, bool whole = false) =>
        With(new FigureKey<T>(name, says, range, unit, get, set) { Required = required, Whole = whole });

    /// <summary>A list of lengths.</summary>
    public SpecKeys<T> Lengths(string name, NumberRange range, string says, Func<T, IReadOnlyList<double>> get, Func<T, IReadOnlyList<double>, T> set) =>
        With(new FiguresKey<T>(name, says, range, "mm", get, set));

    public SpecKeys<T> Text(string name, string says, Func<T, string?> get, Func<T, string, T> set, bool required = false, params string[] choices) =>
        With(new WordKey<T>(name, says, choices, get, set) { Required = required });

    /// <summary>One of the values of an enumeration, under its names in the file.</summary>
    // An array gone through by its places: queries over each enumeration's names would be compiled anew for each at every start.
    public SpecKeys<T> Choice<TChoice>(
        string name, string says, Func<T, TChoice> get, Func<T, TChoice, T> set, (string Name, TChoice Value)[] choices, bool required = false)
        where TChoice : struct
    {
        ArgumentNullException.ThrowIfNull(choices);
        var names = new string[choices.Length];
        for (int i = 0; i < names.Length; i++)
        {
            names[i] = choices[i].Name;
        }

        return Text(name, says, spec => Named(get(spec)), (spec, text) => set(spec, choices[Array.IndexOf(names, text)].Value), required, names);

        string? Named(TChoice value)
        {
            for (int i = 0; i < choices.Length; i++)
            {
                if (choices[i].Value.Equals(value))
                {
                    return names[i];
                }
            }

            return null;
        }
    }

    public SpecKeys<T> Flag(string name, string says, Func<T, bool> get, Func<T, bool, T> set) => With(new FlagKey<T>(name, says, get, set));

    /// <summary>A table inside.</summary>
    public SpecKeys<T> Table<TInner>(string name, string says, SpecKeys<TInner> inner, Func<T, TInner?> get, Func<T, TInner, T> set, bool required = false)
        where TInner : class => With(new TableKey<T, TInner>(name, says, inner, get, set) { Required = required });

    /// <summary>A list of tables, under a key in the singular as each is one.</summary>
    public SpecKeys<T> Tables<TInner>(string name, string says, SpecKeys<TInner> inner, Func<T, IReadOnlyList<TInner>> get,
        Func<T, IReadOnlyList<TInner>, T> set) =>
        With(new TablesKey<T, TInner>(name, says, inner, get, set));

    /// <summary>Gives the last key a value that shows how it is written.</summary>
    public SpecKeys<T> Example(string example)
    {
        keys[^1] = keys[^1] with { Example = example };
        return this;
    }

    /// <summary>A look at the whole table once its keys are read without fault: the spec and its key.</summary>
    public SpecKeys<T> Check(Func<T, string, SpecFault?> check)
    {
        checks.Add(check);
        return this;
    }

    public SpecKeys<T> With(SpecKey<T> key)
    {
        keys.Add(key);
        return this;
    }

    /// <summary>All figures that are out of their range.</summary>
    internal IEnumerable<StrayFigure> Stray(T spec) => keys.SelectMany(k => k.Stray(spec));
}
