namespace PlatformForge.Units.Specs;

/// <summary>One key under which a project file states something of a spec.</summary>
/// <param name="Name">The key.</param>
/// <param name="Says">What it is, in words for a person who builds a layout.</param>
public abstract record SpecKey<T>(string Name, string Says)
{
    /// <summary>Whether it has to be given.</summary>
    public bool Required { get; init; }

    /// <summary>A value as it might be written in the file, for 4 mm to the foot; null where the default shows it.</summary>
    public string? Example { get; init; }

    /// <summary>Tells a reader of keys what kind of key it is.</summary>
    public abstract void Tell(ISpecReader<T> reader);

    /// <summary>Its figures in a spec that are out of their range, with their keys under that spec's.</summary>
    internal virtual IEnumerable<StrayFigure> Stray(T spec) => [];
}

/// <summary>A figure that is out of its range.</summary>
/// <param name="Key">Key under that of the spec.</param>
/// <param name="Value">The figure.</param>
/// <param name="Range">What would be taken.</param>
/// <param name="Unit">Unit of both; empty for plain numbers.</param>
internal sealed record StrayFigure(string Key, double Value, NumberRange Range, string Unit);

/// <summary>Goes over the keys of a spec, each of its own kind.</summary>
public interface ISpecReader<T>
{
    void Figure(FigureKey<T> key);

    void Figures(FiguresKey<T> key);

    void Word(WordKey<T> key);

    void Flag(FlagKey<T> key);

    void Table<TInner>(TableKey<T, TInner> key)
        where TInner : class;

    void Tables<TInner>(TablesKey<T, TInner> key);
}

/// <summary>A number in a range.</summary>
/// <param name="Name">The key.</param>
/// <param name="Says">What it is.</param>
/// <param name="Range">What is taken.</param>
/// <param name="Unit">Its unit; empty for plain numbers. Lengths of the model, "mm", may be written in others.</param>
/// <param name="Get">Asks a spec for it; null where it has none.</param>
/// <param name="Set">The spec with another.</param>
public sealed record FigureKey<T>(string Name, string Says, NumberRange Range, string Unit, Func<T, double?> Get, Func<T, double, T> Set)
    : SpecKey<T>(Name, Says)
{
    /// <summary>Whether it counts something.</summary>
    public bool Whole { get; init; }

    public override void Tell(ISpecReader<T> reader) => reader.Figure(this);

    internal override IEnumerable<StrayFigure> Stray(T spec) => Get(spec) is { } value && !Range.Holds(value) ? [new(Name, value, Range, Unit)] : [];
}

/// <summary>A list of numbers in a range.</summary>
public sealed record FiguresKey<T>(string Name, string Says, NumberRange Range, string Unit, Func<T, IReadOnlyList<double>> Get,
    Func<T, IReadOnlyList<double>, T> Set)
    : SpecKey<T>(Name, Says)
{
    public override void Tell(ISpecReader<T> reader) => reader.Figures(this);

    internal override IEnumerable<StrayFigure> Stray(T spec) =>
        Get(spec).Select((value, i) => new StrayFigure(FormattableString.Invariant($"{Name}[{i}]"), value, Range, Unit)).Where(f => !Range.Holds(f.Value));
}

/// <summary>A text; one of the choices when there are any.</summary>
public sealed record WordKey<T>(string Name, string Says, IReadOnlyList<string> Choices, Func<T, string?> Get, Func<T, string, T> Set) : SpecKey<T>(Name, Says)
{
    public override void Tell(ISpecReader<T> reader) => reader.Word(this);
}

/// <summary>true or false.</summary>
public sealed record FlagKey<T>(string Name, string Says, Func<T, bool> Get, Func<T, bool, T> Set) : SpecKey<T>(Name, Says)
{
    public override void Tell(ISpecReader<T> reader) => reader.Flag(this);
}

/// <summary>A table of keys; null where it is left out.</summary>
public sealed record TableKey<T, TInner>(string Name, string Says, SpecKeys<TInner> Inner, Func<T, TInner?> Get, Func<T, TInner, T> Set)
    : SpecKey<T>(Name, Says)
    where TInner : class
{
    public override void Tell(ISpecReader<T> reader) => reader.Table(this);

    internal override IEnumerable<StrayFigure> Stray(T spec) =>
        Get(spec) is { } inner ? Inner.Stray(inner).Select(f => f with { Key = $"{Name}.{f.Key}" }) : [];
}

/// <summary>A list of tables.</summary>
public sealed record TablesKey<T, TInner>(string Name, string Says, SpecKeys<TInner> Inner, Func<T, IReadOnlyList<TInner>> Get,
    Func<T, IReadOnlyList<TInner>, T> Set)
    : SpecKey<T>(Name, Says)
{
    public override void Tell(ISpecReader<T> reader) => reader.Tables(this);

    internal override IEnumerable<StrayFigure> Stray(T spec) =>
        Get(spec).SelectMany((inner, i) => Inner.Stray(inner).Select(f => f with { Key = FormattableString.Invariant($"{Name}[{i}].{f.Key}") }));
}
