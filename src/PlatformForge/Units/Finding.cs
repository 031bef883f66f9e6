using System.Text.RegularExpressions;

namespace PlatformForge.Units;

/// <summary>What kind of fault a finding is: it decides the exit code of the command line.</summary>
public enum FaultKind
{
    /// <summary>The project or a survey file is wrong.</summary>
    Input,

    /// <summary>A design rule is broken: a vehicle fouls, a section does not fit the bed.</summary>
    DesignRule,

    /// <summary>A solid or a written mesh failed its check.</summary>
    Mesh,

    /// <summary>A file could not be written.</summary>
    Output,
}

/// <summary>
/// One fault or remark about the input or the outcome. A room knows only the key at fault, in the form
/// <c>platform[0].deck.width</c>; the Projects room joins file, line and column to it.
/// </summary>
/// <param name="Code">A stable code, PF1xxx project file, PF2xxx track, PF3xxx clearance, PF4xxx platforms,
/// PF5xxx solids, PF6xxx sections, PF7xxx exports, PF8xxx verification.</param>
/// <param name="Severity">How much it matters.</param>
/// <param name="Key">The key of the project file it speaks of, or an empty text.</param>
/// <param name="Message">What is wrong, with figures and units.</param>
/// <param name="Remedy">What would be right or what to try, with a figure where there is one.</param>
public sealed partial record Finding(string Code, Severity Severity, string Key, string Message, string Remedy)
{
    /// <summary>What kind of fault this is.</summary>
    public FaultKind Kind { get; init; } = FaultKind.Input;

    /// <summary>File the fault is in, as the user named it; null until the Projects room has joined it.</summary>
    public string? File { get; init; }

    /// <summary>Line, from 1; 0 when there is none.</summary>
    public int Line { get; init; }

    /// <summary>Column, from 1; 0 when there is none.</summary>
    public int Column { get; init; }

    /// <summary>The remedy as a machine takes it; null where it is no single change of the project file.</summary>
    public Cure? Cure { get; init; }

    /// <summary>Whether something that was asked for is not made: told also to those who want to hear of errors only.</summary>
    public bool IsUnmade { get; init; }

    /// <summary>The finding with a value for its own key as its cure.</summary>
    public Finding Curing(double value) => Curing(Cure.Set(Key, value));

    /// <summary>The finding with a value, as it is written in the file, for a key.</summary>
    public Finding Curing(string key, string value) => Curing(new Cure(CureAct.Set, key, value));

    /// <summary>The finding with a cure.</summary>
    public Finding Curing(Cure? cure) => this with { Cure = cure };

    public static Finding Error(string code, string key, string message, string remedy, FaultKind kind = FaultKind.Input) =>
        new(code, Severity.Error, key, Told(message), Told(remedy)) { Kind = kind };

    public static Finding Warning(string code, string key, string message, string remedy, FaultKind kind = FaultKind.DesignRule) =>
        new(code, Severity.Warning, key, Told(message), Told(remedy)) { Kind = kind };

    public static Finding Note(string code, string key, string message, string remedy = "") =>
        new(code, Severity.Note, key, Told(message), Told(remedy));

    // What rounds to nothing is told without a sign.
    private static string Told(string sentence) => sentence.Contains("-0", StringComparison.Ordinal) ? SignedNil().Replace(sentence, "$1") : sentence;

    [GeneratedRegex(@"(?<![\w.""'=/-])-(0(?:\.0+)?)(?![\w.]*\w)")]
    private static partial Regex SignedNil();
}
