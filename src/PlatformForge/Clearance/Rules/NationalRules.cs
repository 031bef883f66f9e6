using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Clearance.Rules;

/// <summary>A set of published figures that a platform may be held to. What it misses is a warning, never an error: a model may differ.</summary>
public sealed class NationalRules
{
    private readonly IReadOnlyList<RuleClause> clauses;

    internal NationalRules(string name, string title, IReadOnlyList<RuleClause> clauses)
    {
        (Name, Title) = (name, title);
        this.clauses = clauses;
    }

    /// <summary>Name it is chosen by.</summary>
    public string Name { get; }

    /// <summary>What it is.</summary>
    public string Title { get; }

    /// <summary>Each figure with its source, for listings.</summary>
    public IEnumerable<(string Clause, string Source)> Sources => clauses.Select(c => (c.Clause, c.Source));

    /// <summary>All sets, in order of name.</summary>
    public static IReadOnlyList<NationalRules> All { get; } =
    [
        AmericanRules.Set,
        BritishRules.Modern,
        BritishRules.Traditional,
        ContinentalRules.For(VehicleGroup.A),
        ContinentalRules.For(VehicleGroup.B),
        ContinentalRules.For(VehicleGroup.C),
        EuropeanRules.Dutch,
        EuropeanRules.Interoperable,
        EuropeanRules.German,
        EuropeanRules.Norwegian,
    ];

    /// <summary>The set of a name, or null.</summary>
    public static NationalRules? Find(string name) => All.FirstOrDefault(r => r.Name == name);

    /// <summary>Warnings for every clause a platform misses.</summary>
    public IReadOnlyList<Finding> Hold(RuleSubject subject) => [.. clauses.Select(c => c.Hold(subject)).OfType<Finding>()];

    /// <summary>The same, and a note that says how many published figures the platform was held to.</summary>
    public IReadOnlyList<Finding> HoldAndCount(RuleSubject subject)
    {
        var missed = Hold(subject);
        return
        [
            .. missed,
            Finding.Note("PF3059", subject.Key,
                Invariant($"Held to {Title}: {missed.Count} of {Sources.Count()} published figures are missed. Figures that do not speak of such a platform ")
                    + "are not counted as missed."),
        ];
    }
}
