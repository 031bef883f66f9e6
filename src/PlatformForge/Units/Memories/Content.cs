using System.Buffers;
using System.Buffers.Binary;
using System.Globalization;
using System.Runtime.InteropServices;

namespace PlatformForge.Units.Memories;

/// <summary>What stands before a value among the bytes of a fingerprint, so that no two contents give the same bytes.</summary>
internal enum ContentMark : byte
{
    None,
    Text,
    Number,
    Whole,
    List,
    Packed,
    Object,
}

/// <summary>Writes plain values as bytes: numbers by their bits, text by its letters.</summary>
internal static class Content
{
    public static void Mark(ArrayBufferWriter<byte> content, ContentMark mark)
    {
        content.GetSpan(1)[0] = (byte)mark;
        content.Advance(1);
    }

    public static void Whole(ArrayBufferWriter<byte> content, long value)
    {
        BinaryPrimitives.WriteInt64LittleEndian(content.GetSpan(sizeof(long)), value);
        content.Advance(sizeof(long));
    }

    public static void Text(ArrayBufferWriter<byte> content, string text)
    {
        Mark(content, ContentMark.Text);
        Whole(content, text.Length);
        content.Write(MemoryMarshal.AsBytes(text.AsSpan()));
    }

    /// <summary>Writes nothing, text, a number or an enumeration's value.</summary>
    /// <returns>Whether the value was one of them.</returns>
    public static bool Plain(ArrayBufferWriter<byte> content, object? value)
    {
        switch (value)
        {
            case null:
                Mark(content, ContentMark.None);
                return true;
            case string text:
                Text(content, text);
                return true;
            case double or float:
                Mark(content, ContentMark.Number);
                Whole(content, BitConverter.DoubleToInt64Bits(Convert.ToDouble(value, CultureInfo.InvariantCulture)));
                return true;
            case ulong large:
                Mark(content, ContentMark.Whole);
                Whole(content, unchecked((long)large));
                return true;
            case bool or char or sbyte or byte or short or ushort or int or uint or long or Enum:
                Mark(content, ContentMark.Whole);
                Whole(content, value is char letter ? letter : Convert.ToInt64(value, CultureInfo.InvariantCulture));
                return true;
            default:
                return false;
        }
    }
}
