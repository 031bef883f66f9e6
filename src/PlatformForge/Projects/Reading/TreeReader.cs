using System.Text.RegularExpressions;
using PlatformForge.Units;
using Tomlyn;
using Tomlyn.Parsing;
using Tomlyn.Syntax;

namespace PlatformForge.Projects.Reading;

/// <summary>Turns TOML text into a tree of values with places. Knows nothing of which keys mean anything.</summary>
public static class TreeReader
{
    /// <summary>Most faults of grammar told at once: after the first few they only follow from each other.</summary>
    private const int MostFaults = 10;

    /// <summary>Most letters of the file that are repeated in a message.</summary>
    private const int LongestQuoted = 40;

    /// <param name="text">The text.</param>
    /// <param name="file">How the user named the file.</param>
    /// <param name="what">What kind of file it is; a project file when left out.</param>
    public static Outcome<TreeTable> Read(string text, string file, FileWords? what = null)
    {
        if (TomlBounds.Fault(text, file) is { } beyond)
        {
            return Outcome.Fault<TreeTable>(beyond);
        }

        DocumentSyntax document;
        try
        {
            document = SyntaxParser.Parse(text, file, true);
        }
        catch (TomlException)
        {
            return Outcome.Fault<TreeTable>(Finding.Error("PF1005", "", "The file is nested too deeply.",
                $"A {(what ?? FileWords.Project).Name} needs no more than four levels of brackets.") with
            { File = file, Line = 1, Column = 1 });
        }
        catch (ArgumentException)
        {
            // The parser of version 2.10 throws at an escape that stands for no character instead of reporting it.
            var (line, column) = GrammarFault.BadEscape(text);
            return Outcome.Fault<TreeTable>(Finding.Error("PF1005", "", "A backslash in a text is followed by what stands for no character.",
                @"Write \\ for a backslash; paths take / as well.") with
            { File = file, Line = line, Column = column });
        }

        return document.HasErrors && Faults(document, text, file).ToList() is { Count: > 0 } faults ? Outcome.Fault<TreeTable>(faults)
            : new TreeBuilder(file).Build(document);
    }

    // One a line; after the first, only those whose cause is plain, since one slip makes the parser stumble over the lines that follow.
    private static IEnumerable<Finding> Faults(DocumentSyntax document, string text, string file)
    {
        string[] lines = text.ReplaceLineEndings("\n").Split('\n');
        var told = document.Diagnostics
            .Where(d => d.Kind == DiagnosticMessageKind.Error && !RepeatedKey.IsOfAnotherItem(lines, d.Span.Start.Line, d.Message))
            .DistinctBy(d => d.Span.Start.Line)
            .Select(d => (At: d.Span.Start, d.Message, Line: Math.Clamp(d.Span.Start.Line, 0, lines.Length - 1)))
            .Select(d => (d.At, d.Message, Twice: RepeatedKey.Of(lines, d.Line, d.Message),
                Plain: RepeatedKey.Of(lines, d.Line, d.Message) ?? GrammarFault.Of(lines, d.Line)));
        return told.Where((f, i) => i == 0 || f.Plain is not null).Take(MostFaults).Select(f => Finding.Error(
            f.Twice is null ? "PF1005" : "PF1071",
            "",
            f.Plain?.Message ?? Sentence(f.Message),
            f.Plain?.Remedy ?? (f.Message.StartsWith("Unable to parse", StringComparison.Ordinal) ? "Write a plain number of no more than 15 digits."
                : "Write key = value, one a line; texts in double quotes; lists in [ ]; tables under [name] or [[name]].")) with
        {
            File = file,
            Line = f.At.Line + 1,
            Column = f.At.Column + 1,
        });
    }

    private static string Sentence(string message)
    {
        string plain = Regex.Replace(message.ReplaceLineEndings(" ").Trim(), $"`([^`]{{{LongestQuoted}}})[^`]*`", "`$1…`");
        return plain.EndsWith('.') ? plain : plain + ".";
    }
}
