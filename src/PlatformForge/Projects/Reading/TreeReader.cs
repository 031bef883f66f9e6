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
            return Outcome.Fault<TreeTable>(Finding.Error("PF1005", "", "The file is nested too deeply.", $"A {(what ?? FileWords.Project).Name} needs no more than four levels of brackets.") with { File = file, Line = 1, Column = 1 });
        }
        catch (ArgumentException)
        {
            // The parser of version 2.10 throws at an escape that stands for no character instead of reporting it.
            var (line, column) = GrammarFault.BadEscape(text);
            return Outcome.Fault<TreeTable>(Finding.Error("PF1005", "", "A backslash in a text is followed by what stands for no character.", @"Write \\ for a backslash; paths take / as well.") with { File = file, Line = line, Column = column });
        }

        if (document.HasErrors)
        {
            return Outcome.Fault<TreeTable>(Faults(document, text, file));
        }

        return new TreeBuilder(file).Build(document);
    }

    // One a line; after the first, only those whose cause is plain, since one slip makes the parser stumble over the lines that follow.
    private static IEnumerable<Finding> Faults(DocumentSyntax document, string text, string file)
    {
        string[] lines = text.ReplaceLineEndings("\n").Split('\n');
        var told = document.Diagnostics
            .Where(d => d.Kind == DiagnosticMessageKind.Error)
            .DistinctBy(d => d.Span.Start.Line)
            .Select(d => (At: d.Span.Start, d.Message, Plain: GrammarFault.Of(lines, Math.Clamp(d.Span.Start.Line, 0, lines.Length - 1))));
        return told.Where((f, i) => i == 0 || f.Plain is not null).Take(MostFaults).Select(f => Finding.Error(
            "PF1005",
            "",
            f.Plain?.Message ?? Sentence(f.Message),
            f.Plain?.Remedy ?? "Write key = value, one a line; texts in double quotes; lists in [ ]; tables under [name] or [[name]].") with
        {
            File = file,
            Line = f.At.Line + 1,
            Column = f.At.Column + 1,
        });
    }

    private static string Sentence(string message)
    {
        string plain = message.ReplaceLineEndings(" ").Trim();
        return plain.EndsWith('.') ? plain : plain + ".";
    }
}
