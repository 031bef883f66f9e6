using System.Buffers.Text;

namespace PlatformForge.Exports.Files;

/// <summary>
/// Writes text straight as UTF-8 bytes through a buffer of its own: no text object a number, no culture. A file of a
/// million numbers costs what its bytes cost.
/// </summary>
internal sealed class Utf8Text(Stream to) : IDisposable
{
    private const int Size = 1 << 16;

    // More room than any number or entity takes.
    private const int Reserve = 32;

    // Beyond this the number no longer fits a 64-bit count of its smallest parts.
    private const double Greatest = 9e18;

    private readonly byte[] buffer = new byte[Size];
    private int used;

    /// <summary>Text that needs no escaping.</summary>
    public Utf8Text Raw(ReadOnlySpan<byte> text)
    {
        if (text.Length > Size - used)
        {
            Flush();
            if (text.Length > Size)
            {
                to.Write(text);
                return this;
            }
        }

        text.CopyTo(buffer.AsSpan(used));
        used += text.Length;
        return this;
    }

    /// <summary>Text for an element or an attribute in double quotes; letters that XML cannot hold become question marks.</summary>
    public Utf8Text Escaped(string text)
    {
        Span<byte> bytes = stackalloc byte[4];
        foreach (var rune in text.EnumerateRunes())
        {
            Raw(rune.Value switch
            {
                '&' => "&amp;"u8,
                '<' => "&lt;"u8,
                '>' => "&gt;"u8,
                '"' => "&quot;"u8,
                '\t' or '\n' or '\r' => " "u8,
                < 32 or (>= 0x7F and <= 0x9F) or 0xFFFE or 0xFFFF => "?"u8,
                _ => bytes[..rune.EncodeToUtf8(bytes)],
            });
        }

        return this;
    }

    public Utf8Text Whole(int value)
    {
        Room();
        Utf8Formatter.TryFormat(value, buffer.AsSpan(used), out int length);
        used += length;
        return this;
    }

    /// <summary>A length in mm to the millionth, without idle nils: <c>-0.25</c>, <c>12</c>. Half a millionth rounds to even.</summary>
    public Utf8Text Length(double mm) => Decimal(mm, 6, 1e6);

    /// <summary>A number to three digits after the point, for drawings.</summary>
    public Utf8Text Thousandths(double value) => Decimal(value, 3, 1e3);

    /// <summary>A number near one, such as the cosine of an angle, to twelve digits after the point.</summary>
    public Utf8Text Ratio(double value) => Decimal(value, 12, 1e12);

    public void Flush()
    {
        to.Write(buffer, 0, used);
        used = 0;
    }

    public void Dispose() => Flush();

    private Utf8Text Decimal(double value, int digits, double scale)
    {
        double scaled = Math.Round(value * scale);
        if (!(Math.Abs(scaled) < Greatest))
        {
            throw new ArgumentOutOfRangeException(nameof(value), "The number cannot be written to the digits asked for.");
        }

        Room();
        long parts = (long)scaled;
        if (parts < 0)
        {
            buffer[used++] = (byte)'-';
            parts = -parts;
        }

        var (whole, rest) = Math.DivRem(parts, (long)scale);
        Utf8Formatter.TryFormat(whole, buffer.AsSpan(used), out int length);
        used += length;
        if (rest != 0)
        {
            Fraction(rest, digits);
        }

        return this;
    }

    private void Fraction(long rest, int digits)
    {
        buffer[used++] = (byte)'.';
        while (rest % 10 == 0)
        {
            rest /= 10;
            digits--;
        }

        for (int i = digits - 1; i >= 0; i--)
        {
            (rest, long digit) = Math.DivRem(rest, 10);
            buffer[used + i] = (byte)('0' + digit);
        }

        used += digits;
    }

    private void Room()
    {
        if (Size - used < Reserve)
        {
            Flush();
        }
    }
}
