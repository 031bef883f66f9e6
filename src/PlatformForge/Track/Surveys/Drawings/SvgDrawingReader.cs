using System.Xml;
using PlatformForge.Geometry;
using PlatformForge.Track.Surveys.Readings;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Track.Surveys.Drawings;

/// <summary>
/// Reads the lines of an SVG drawing: path, line, polyline and polygon, through all transforms. Document types with
/// declarations of their own and entities are refused, nothing outside the text is ever fetched.
/// </summary>
internal sealed class SvgDrawingReader
{
    // Elements without anything drawn in them, passed over in silence.
    private static readonly string[] Silent = ["g", "a", "title", "desc", "metadata", "defs", "style", "namedview", "switch"];

    // Elements whose content is not drawn where it stands.
    private static readonly string[] Apart = ["svg", "defs", "symbol", "clipPath", "mask", "marker", "pattern", "metadata", "script", "style", "namedview",
        "foreignObject", "text"];

    private readonly List<DrawnPiece> pieces = [];
    private readonly SortedDictionary<string, int> skipped = new(StringComparer.Ordinal);
    private readonly Stack<(SvgTransform Transform, string[] Names)> groups = new();
    private SvgSheet? sheet;
    private int sheetLine;
    private readonly DrawingBudget budget = new();

    /// <summary>Reads a text; throws <see cref="UnreadableDrawingException"/> where that cannot be done.</summary>
    public static Drawing Read(string text)
    {
        var settings = new XmlReaderSettings
        {
            DtdProcessing = DtdProcessing.Ignore,
            XmlResolver = null,
            MaxCharactersInDocument = PlainText.Longest,
            IgnoreComments = true,
            IgnoreProcessingInstructions = true,
        };
        if (DeclaresInside(text, out int at))
        {
            throw new UnreadableDrawingException("The drawing has a document type declaration (DOCTYPE) with declarations of its own, which may pull in other "
                + "files and is refused.",
                at);
        }

        if (Crowded(text) is { } place)
        {
            throw new UnreadableDrawingException(Invariant($"An element has more than {InputLimits.MarkupAttributes} attributes."), place);
        }

        try
        {
            using var reader = XmlReader.Create(new StringReader(text), settings);
            return Told(reader, new SvgDrawingReader());
        }
        catch (XmlException fault)
        {
            throw new UnreadableDrawingException(Invariant($"The drawing is not well-formed XML near column {fault.LinePosition}."),
                Math.Max(1, fault.LineNumber));
        }
    }

    // A document type that only names the standard is passed over: nothing of it is fetched, and no entity is known. One that
    // goes on in square brackets declares entities.
    private static bool DeclaresInside(string text, out int line)
    {
        int from = text.IndexOf("<!DOCTYPE", StringComparison.OrdinalIgnoreCase);
        line = from < 0 ? 0 : 1 + text.AsSpan(0, from).Count('\n');
        char quote = '\0';
        for (int i = from; from >= 0 && i < text.Length; i++)
        {
            char c = text[i];
            if (quote != '\0')
            {
                quote = c == quote ? '\0' : quote;
            }
            else if (c is '"' or '\'')
            {
                quote = c;
            }
            else if (c is '[' or '>')
            {
                return c == '[';
            }
        }

        return false;
    }

    // Line of the first element with too many attributes, told by their signs '=' outside quotes; the framework's reader is slow with such.
    private static int? Crowded(string text)
    {
        int i = 0;
        for (int at = text.IndexOf('<', StringComparison.Ordinal); at >= 0 && at + 1 < text.Length; at = text.IndexOf('<', i))
        {
            int signs = 0;
            char quote = '\0';
            for (i = at + 1; char.IsAsciiLetter(text[at + 1]) && i < text.Length && (text[i] != '>' || quote != '\0'); i++)
            {
                char c = text[i];
                quote = quote == '\0' ? (c is '"' or '\'' ? c : '\0') : c == quote ? '\0' : quote;
                signs += c == '=' && quote == '\0' ? 1 : 0;
                if (signs > InputLimits.MarkupAttributes)
                {
                    return 1 + text.AsSpan(0, at).Count('\n');
                }
            }
        }

        return null;
    }

    private static Drawing Told(XmlReader reader, SvgDrawingReader drawing)
    {
        try
        {
            return drawing.Walk(reader);
        }
        catch (UnreadableDrawingException fault) when (fault.Line == 0)
        {
            throw new UnreadableDrawingException(fault.Message, LineOf(reader));
        }
    }

    private Drawing Walk(XmlReader reader)
    {
        while (!reader.EOF)
        {
            if (reader.NodeType == XmlNodeType.EndElement)
            {
                if (groups.Count > 0 && reader.LocalName is "g" or "a" or "svg" or "switch")
                {
                    groups.Pop();
                }

                Next(reader);
            }
            else if (reader.NodeType == XmlNodeType.Element)
            {
                Element(reader);
            }
            else
            {
                Next(reader);
            }
        }

        return sheet is null
            ? throw new UnreadableDrawingException("The file is XML, but no SVG drawing.")
            : new(pieces, sheet.MillimetresPerUnit, [.. skipped], sheet.Told, sheetLine);
    }

    private static int LineOf(XmlReader reader) => (reader as IXmlLineInfo)?.LineNumber ?? 1;

    private void Element(XmlReader reader)
    {
        string name = reader.LocalName;
        if (sheet is null)
        {
            sheetLine = LineOf(reader);
            sheet = name == "svg" ? SvgSheet.Read(reader) : throw new UnreadableDrawingException("The file is XML, but no SVG drawing.");
            Enter(reader, sheet.Upright, []);
            return;
        }

        if (Drawn(reader, name))
        {
            Leave(reader, name);
        }
    }

    // Takes in the lines of an element; false where it is a group, which was entered.
    private bool Drawn(XmlReader reader, string name)
    {
        var (outer, names) = groups.Peek();
        try
        {
            var transform = outer.Over(SvgStyle.TransformOf(reader));
            names = NamesOf(reader).ToArray() is { Length: > 0 } own ? [.. own, .. names] : names;
            if (name is "g" or "a" or "switch")
            {
                Enter(reader, transform, names);
                return false;
            }

            foreach (var (line, straights) in Lines(reader, name, transform))
            {
                pieces.Add(new(names, line, straights, LineOf(reader)));
                budget.Names(names.Length);
            }

            return true;
        }
        catch (UnreadableDrawingException fault)
        {
            throw new UnreadableDrawingException(fault.Message, LineOf(reader));
        }
    }

    // Goes on behind an element that is no group; what of it is not drawn is counted.
    private void Leave(XmlReader reader, string name)
    {
        if (!Silent.Contains(name, StringComparer.Ordinal) && name is not ("path" or "line" or "polyline" or "polygon"))
        {
            Skip(name);
        }

        if (name == "style")
        {
            // A style sheet may move what it applies to; that is not followed, and told.
            if (Pass(reader, "transform"))
            {
                Skip("style sheet's transform");
            }
        }
        else if (Apart.Contains(name, StringComparer.Ordinal))
        {
            Pass(reader, "");
        }
        else
        {
            Next(reader);
        }
    }

    private void Skip(string what) => skipped[what] = skipped.GetValueOrDefault(what) + 1;

    // One node on; the limits are held at every element, also of what is passed over.
    private bool Next(XmlReader reader)
    {
        bool more = reader.Read();
        if (more && reader.NodeType == XmlNodeType.Element)
        {
            budget.Element(reader.Depth);
        }

        return more;
    }

    // Over an element with all that it holds; whether its texts have the word in them.
    private bool Pass(XmlReader reader, string word)
    {
        int depth = reader.Depth;
        bool found = false, empty = reader.IsEmptyElement;
        while (Next(reader) && !empty && reader.Depth > depth)
        {
            found |= reader.NodeType is XmlNodeType.Text or XmlNodeType.CDATA && reader.Value.Contains(word, StringComparison.OrdinalIgnoreCase);
        }

        if (!empty && reader.NodeType == XmlNodeType.EndElement && reader.Depth == depth)
        {
            Next(reader);
        }

        return found;
    }

    private void Enter(XmlReader reader, SvgTransform transform, string[] names)
    {
        if (!reader.IsEmptyElement)
        {
            groups.Push((transform, names));
        }

        Next(reader);
    }

    private static IEnumerable<string> NamesOf(XmlReader reader)
    {
        if (reader.GetAttribute("id") is { Length: > 0 } id)
        {
            yield return id;
        }

        // Drawing programs keep the name that the user sees in a label of their own namespace.
        for (bool more = reader.MoveToFirstAttribute(); more; more = reader.MoveToNextAttribute())
        {
            if (reader.LocalName == "label" && reader.NamespaceURI.Length > 0 && reader.Value.Length > 0)
            {
                yield return reader.Value;
            }
        }

        reader.MoveToElement();
    }

    private static readonly string[] EndsOfLine = ["x1", "y1", "x2", "y2"];

    private IReadOnlyList<(Point2[] Points, bool Straights)> Lines(XmlReader reader, string name, SvgTransform transform)
    {
        switch (name)
        {
            case "path":
                return SvgPathReader.Read(reader.GetAttribute("d") ?? "", transform, budget);
            case "line":
                return Polyline(string.Join(' ', EndsOfLine.Select(a => reader.GetAttribute(a) ?? "0")), false, transform);
            case "polyline":
            case "polygon":
                return Polyline(reader.GetAttribute("points") ?? "", name == "polygon", transform);
            default:
                return [];
        }
    }

    private (Point2[] Points, bool Straights)[] Polyline(string list, bool closed, SvgTransform transform)
    {
        var text = new SvgPathText(list);
        var line = new CurveFlattener(budget);
        while (text.AtNumber())
        {
            line.LineTo(transform.Apply(new(text.Number(), text.Number())));
        }

        if (!text.AtEnd())
        {
            throw new UnreadableDrawingException("A list of points has something other than numbers in it.");
        }

        if (closed && line.Count > 2)
        {
            line.LineTo(line.ToArray()[0]);
        }

        return line.Count < 2 ? [] : [(line.ToArray(), true)];
    }
}
