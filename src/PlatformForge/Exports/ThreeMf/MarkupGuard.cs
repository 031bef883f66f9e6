using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Exports.ThreeMf;

/// <summary>
/// XML text on its way to its reader, refused as soon as one tag or text grows beyond <see cref="InputLimits.ModelText"/>: the reader
/// itself would hold an attribute or a text of any length in memory before anybody could look at it.
/// </summary>
internal sealed class MarkupGuard(TextReader inner) : TextReader
{
    // Texts may hold the sign that parts an attribute's name from its value.
    private const int SignsOfText = 1000;

    private int run, attributes;

    public override int Peek() => inner.Peek();

    public override int Read()
    {
        Span<char> one = stackalloc char[1];
        return Read(one) == 0 ? -1 : one[0];
    }

    public override int Read(char[] buffer, int index, int count) => Read(buffer.AsSpan(index, count));

    public override int Read(Span<char> buffer)
    {
        int got = inner.Read(buffer);
        for (var rest = (ReadOnlySpan<char>)buffer[..got]; rest.Length > 0;)
        {
            int next = rest.IndexOf('<');
            var part = next < 0 ? rest : rest[..next];
            run += part.Length;
            attributes += part.Count('=');
            if (attributes > InputLimits.MarkupAttributes + SignsOfText)
            {
                throw new ThreeMfFault(Invariant($"an element of its XML has more than {InputLimits.MarkupAttributes} attributes, which is the limit"));
            }

            if (run > InputLimits.ModelText)
            {
                throw new ThreeMfFault(Invariant($"a tag or a text of its XML is longer than {InputLimits.ModelText} letters, which is the limit"));
            }

            (run, attributes) = next < 0 ? (run, attributes) : (0, 0);
            rest = next < 0 ? [] : rest[(next + 1)..];
        }

        return got;
    }

    protected override void Dispose(bool disposing)
    {
        if (disposing)
        {
            inner.Dispose();
        }

        base.Dispose(disposing);
    }
}
