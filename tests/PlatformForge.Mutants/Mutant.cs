using Microsoft.CodeAnalysis;

namespace PlatformForge.Mutants;

/// <summary>One change of one place of the source.</summary>
/// <param name="Room">Folder of the library.</param>
/// <param name="File">Its file, from the library's folder.</param>
/// <param name="Line">Its line, from 1.</param>
/// <param name="Member">The member that holds it.</param>
/// <param name="Operator">Which of <see cref="Operators"/> made it.</param>
/// <param name="Was">The text that is changed.</param>
/// <param name="Becomes">What it becomes.</param>
/// <param name="Shape">How the change is put behind the switch.</param>
/// <param name="Node">The node that is changed.</param>
internal sealed record Mutant(
    string Room, string File, int Line, string Member, string Operator, string Was, string Becomes, Shape Shape, SyntaxNode Node)
{
    /// <summary>Tells the mutant apart through changes elsewhere in the source: file, member, operator, text and which of equal ones.</summary>
    public string Key { get; init; } = "";

    /// <summary>Number behind the switch.</summary>
    public int Id { get; init; }

    public override string ToString() => $"{Key} {File}:{Line} {Member}: {Operator}: {Was} -> {Becomes}";
}

/// <summary>How a change is put behind the switch.</summary>
internal enum Shape
{
    /// <summary>An expression: the one or the other.</summary>
    Either,

    /// <summary>A truth: turned round.</summary>
    Negated,

    /// <summary>A statement: the one or the other, which may be nothing.</summary>
    Statement,

    /// <summary>A named constant: becomes a property.</summary>
    Constant,
}
