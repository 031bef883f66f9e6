using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Projects.Keys.Grammar;

/// <summary>
/// What one key of the project file may hold. From these rules come the faults of reading, the schema for editors and the
/// commented starting file, so that they can't drift apart.
/// </summary>
/// <param name="Name">The key.</param>
/// <param name="Says">What it is, in words for a person who builds a layout.</param>
public abstract record KeyRule(string Name, string Says)
{
    public bool Required { get; init; }

    private static readonly ModelScale Shown = new(76.2), Other = new(152.4);

    /// <summary>The value taken when the key is left out, as it would be written in the file; null when there is none.</summary>
    public string? Default { get => field ?? DefaultAt?.Invoke(Shown); init; }

    /// <summary>A value as it might be written in the file, for 4 mm to the foot; null where the default shows it.</summary>
    public string? Example { get; init; }

    /// <summary>Whether <see cref="Default"/> is the one for 4 mm to the foot and other scales have theirs.</summary>
    public bool DefaultFollowsScale => DefaultAt is { } at && at(Shown) is { } shown && shown != at(Other);

    /// <summary>The same for a scale; null when there is none for any.</summary>
    public Func<ModelScale, string?>? DefaultAt { get; init; }

    /// <summary>What is wanted, as it ends the sentence "Give …".</summary>
    public abstract string Wanted { get; }
}

/// <summary>A number. <paramref name="Unit"/> is empty for plain numbers; a key in mm also takes a text with another unit.</summary>
public sealed record NumberRule(string Name, string Says, NumberRange Range, string Unit, bool Whole = false) : KeyRule(Name, Says)
{
    /// <summary>Whether it is a length, which may also be written as a text such as "4 ft 6 in full size".</summary>
    public bool IsLength => Unit == "mm";

    public override string Wanted => (Whole ? "a whole number " : "a number ") + Range.InWords(Unit);
}

/// <summary>A text; one of the choices when there are any.</summary>
public sealed record TextRule(string Name, string Says, IReadOnlyList<string> Choices) : KeyRule(Name, Says)
{
    public override string Wanted => Choices.Count == 0 ? "a text in double quotes" : string.Join(" or ", Choices.Select(c => $"\"{c}\""));
}

/// <summary>true or false.</summary>
public sealed record FlagRule(string Name, string Says) : KeyRule(Name, Says)
{
    public override string Wanted => "true or false";
}

/// <summary>A list in square brackets (or, of tables, under double brackets).</summary>
public sealed record ListRule(string Name, string Says, KeyRule Item, int Least, int Most) : KeyRule(Name, Says)
{
    public override string Wanted => Least == Most ? Invariant($"a list of {Least}: {Item.Wanted}")
        : Invariant($"a list of {Least} to {Most}, each {Item.Wanted}");
}

/// <summary>A table of keys.</summary>
public sealed record TableRule(string Name, string Says, IReadOnlyList<KeyRule> Keys) : KeyRule(Name, Says)
{
    public override string Wanted => "a table with " + string.Join(", ", Keys.Take(6).Select(k => k.Name)) + (Keys.Count > 6 ? " …" : "");
}

/// <summary>One of two kinds of value.</summary>
public sealed record EitherRule(string Name, string Says, KeyRule First, KeyRule Second) : KeyRule(Name, Says)
{
    public override string Wanted => First.Wanted + ", or " + Second.Wanted;
}
