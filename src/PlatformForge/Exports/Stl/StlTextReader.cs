using System.Globalization;
using System.Text;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Exports.Stl;

/// <summary>The text form of STL: words and numbers between blanks.</summary>
internal static class StlTextReader
{
    private const int CornersOfAFacet = 3;

    /// <summary>Whether the bytes begin as the text form does.</summary>
    public static bool Recognises(ReadOnlySpan<byte> bytes)
    {
        var start = bytes.TrimStart(" \t\r\n"u8);
        return start.Length > 5 && Encoding.ASCII.GetString(start[..5]).Equals("solid", StringComparison.OrdinalIgnoreCase) && start[5] <= (byte)' ';
    }

    public static Outcome<StlContents> Read(ReadOnlySpan<byte> bytes, string name)
    {
        string text = Encoding.UTF8.GetString(bytes);
        var solid = new Solid(name, new CornerWelder(text.Length / 200));
        foreach (var line in text.AsSpan().EnumerateLines())
        {
            if (solid.Take(line.Trim()) is { } fault)
            {
                return fault;
            }
        }

        return solid.Finish();
    }

    // What has been read so far.
    private sealed class Solid(string name, CornerWelder welder)
    {
        private readonly List<int> triangles = [];
        private int line, corners;
        private bool ended;
        private string title = "";

        // Takes one line; gives the fault that it has.
        public Outcome<StlContents>? Take(ReadOnlySpan<char> words)
        {
            line++;
            if (words.IsEmpty)
            {
                return null;
            }

            int blank = words.IndexOfAny(' ', '\t');
            var word = blank < 0 ? words : words[..blank];
            var rest = words[word.Length..].Trim();
            if (Is(word, "vertex"))
            {
                return Vertex(rest);
            }

            if (Is(word, "endloop"))
            {
                return EndLoop();
            }

            if (Is(word, "solid"))
            {
                title = rest.ToString();
            }
            else if (Is(word, "endsolid"))
            {
                ended = true;
            }
            else if (!(Is(word, "facet") || Is(word, "outer") || Is(word, "endfacet")))
            {
                return Broken(name, line, Invariant($"holds the unknown word '{Short(word)}'"));
            }

            return null;
        }

        public Outcome<StlContents> Finish()
        {
            if (!ended || corners != 0)
            {
                return Broken(name, line, "is the last one, but the solid has not ended");
            }

            return triangles.Count > 0 && StlReader.Beyond(welder, triangles.ToArray(), name) is { } beyond ? Outcome.Fault<StlContents>(beyond)
                : triangles.Count == 0
                ? Outcome.Fault<StlContents>(StlReader.Fault("PF7104", name, "holds no triangle", "Write it again from a solid that is not empty."))
                : Outcome.Of(new StlContents(new(welder.ToVertices(), [.. triangles], []), title, true, 0));
        }

        private Outcome<StlContents>? Vertex(ReadOnlySpan<char> rest)
        {
            if (!TryCorner(rest, out var c))
            {
                return Broken(name, line, Invariant($"wants three plain numbers of at most {InputLimits.MeshCoordinate:0} after 'vertex'"));
            }

            if (triangles.Count >= 3 * InputLimits.SectionTriangles)
            {
                return Outcome.Fault<StlContents>(StlReader.TooMany(name));
            }

            triangles.Add(welder.IndexOf(c.X, c.Y, c.Z));
            corners++;
            return null;
        }

        private Outcome<StlContents>? EndLoop()
        {
            if (corners != CornersOfAFacet)
            {
                return Broken(name, line, Invariant($"closes a facet of {corners} corners, not {CornersOfAFacet}"));
            }

            corners = 0;
            return null;
        }
    }

    private static bool TryCorner(ReadOnlySpan<char> rest, out (float X, float Y, float Z) corner)
    {
        Span<float> values = stackalloc float[3];
        corner = default;
        int found = 0;
        foreach (var part in rest.SplitAny(' ', '\t'))
        {
            if (rest[part].IsEmpty)
            {
                continue;
            }

            if (found == 3 || !float.TryParse(rest[part], NumberStyles.Float, CultureInfo.InvariantCulture, out values[found])
                || !StlReader.Holds(values[found]))
            {
                return false;
            }

            found++;
        }

        corner = (values[0], values[1], values[2]);
        return found == 3;
    }

    private static bool Is(ReadOnlySpan<char> word, string keyword) => word.Equals(keyword, StringComparison.OrdinalIgnoreCase);

    private static string Short(ReadOnlySpan<char> word) => word.Length > 20 ? string.Concat(word[..20], "…") : word.ToString();

    private static Outcome<StlContents> Broken(string name, int line, string what) =>
        Outcome.Fault<StlContents>(StlReader.Fault("PF7103", name, Invariant($"is broken: line {line} {what}"), "Write it again; the file is damaged."));
}
