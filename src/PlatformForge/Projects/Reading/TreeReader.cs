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
    public static Outcome<TreeTable> Read(string text, string file)
    {
        DocumentSyntax document;
        try
        {
            document = SyntaxParser.Parse(text, file, true);
        }
        catch (TomlException)
        {
            return Outcome.Fault<TreeTable>(Finding.Error("PF1005", "", "The file is nested too deeply.", "A project file needs no more than four levels of brackets.") with { File = file, Line = 1, Column = 1 });
        }

        if (document.HasErrors)
        {
            return Outcome.Fault<TreeTable>(document.Diagnostics
                .Where(d => d.Kind == DiagnosticMessageKind.Error)
                .Take(MostFaults)
                .Select(d => Finding.Error("PF1005", "", Sentence(d.Message), "Write key = value, one a line; texts in double quotes; lists in [ ]; tables under [name] or [[name]].") with
                {
                    File = file,
                    Line = d.Span.Start.Line + 1,
                    Column = d.Span.Start.Column + 1,
                }));
        }

        return Outcome.Of(new TreeBuilder(file).Build(document));
    }

    private static string Sentence(string message)
    {
        string plain = message.ReplaceLineEndings(" ").Trim();
        return plain.EndsWith('.') ? plain : plain + ".";
    }
}
