namespace PlatformForge.Units;

/// <summary>
/// What a stage hands on: a product, or the faults that prevented it. Warnings and notes may ride with a product.
/// </summary>
public sealed record Outcome<T>(T? Value, IReadOnlyList<Finding> Findings) : IAnswer
    where T : class
{
    /// <summary>Whether there is a product and no finding is an error.</summary>
    public bool Succeeded => Value is not null && !Findings.Any(f => f.Severity == Severity.Error);

    object? IAnswer.Inner => Value;
}

/// <summary>Short ways to make an <see cref="Outcome{T}"/>.</summary>
public static class Outcome
{
    public static Outcome<T> Of<T>(T value, IEnumerable<Finding>? findings = null)
        where T : class => new(value, findings?.ToArray() ?? []);

    public static Outcome<T> Fault<T>(params IEnumerable<Finding> findings)
        where T : class => new(null, findings.ToArray());
}
