using System.Buffers;
using System.Collections;
using System.Collections.Concurrent;
using System.Reflection;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Text;

namespace PlatformForge.Units.Memories;

/// <summary>How the values of a type are told.</summary>
internal enum FormKind
{
    /// <summary>Field by field, in place: a struct, or a record that holds plain values alone.</summary>
    InPlace,

    /// <summary>Field by field, as an object with a fingerprint of its own.</summary>
    Object,

    /// <summary>Item by item.</summary>
    List,

    /// <summary>An array of numbers without gaps, by its bytes.</summary>
    Packed,
}

/// <summary>A type as fingerprints see it, worked out once a type.</summary>
/// <param name="Kind">How its values are told.</param>
/// <param name="Name">Its name, as it stands before its fields.</param>
/// <param name="Fields">All fields of it and of what it derives from.</param>
/// <param name="WritePacked">Writes an array by its bytes.</param>
internal sealed record TypeForm(FormKind Kind, byte[] Name, FieldInfo[] Fields, Action<Array, ArrayBufferWriter<byte>>? WritePacked)
{
    private static readonly ConcurrentDictionary<Type, TypeForm> Known = new();

    /// <summary>The form of a type; throws where its values may change once they are made, or hide what they hold.</summary>
    public static TypeForm Of(Type type) => Known.GetOrAdd(type, static t => Make(t));

    private static TypeForm Make(Type type)
    {
        byte[] name = Encoding.UTF8.GetBytes(type.ToString() + "\0");
        if (type.IsArray && IsPacked(type.GetElementType()!))
        {
            var writer = typeof(TypeForm).GetMethod(nameof(Pack), BindingFlags.NonPublic | BindingFlags.Static)!.MakeGenericMethod(type.GetElementType()!);
            return new(FormKind.Packed, name, [], writer.CreateDelegate<Action<Array, ArrayBufferWriter<byte>>>());
        }

        if (typeof(IList).IsAssignableFrom(type))
        {
            return new(FormKind.List, name, [], null);
        }

        var fields = new List<FieldInfo>();
        for (var at = type; at is not null && at != typeof(object) && at != typeof(ValueType); at = at.BaseType)
        {
            fields.AddRange(at.GetFields(BindingFlags.Instance | BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.DeclaredOnly));
        }

        bool holds = type.IsValueType || fields.TrueForAll(f => f.IsInitOnly);
        if (!holds || typeof(Delegate).IsAssignableFrom(type))
        {
            throw new BrokenInvariantException($"Memory: a {type.Name} can't be told by what it holds, so nothing can be remembered that depends on one.");
        }

        return new(type.IsValueType || fields.TrueForAll(f => IsPlain(f.FieldType)) ? FormKind.InPlace : FormKind.Object, name, [.. fields], null);
    }

    private static void Pack<T>(Array array, ArrayBufferWriter<byte> content)
        where T : struct
    {
        Content.Mark(content, ContentMark.Packed);
        Content.Whole(content, Unsafe.SizeOf<T>());
        Content.Whole(content, array.Length);
        content.Write(MemoryMarshal.AsBytes(new ReadOnlySpan<T>((T[])array)));
    }

    // Nothing that it would be worth to keep a fingerprint of.
    private static bool IsPlain(Type type) =>
        type.IsPrimitive || type.IsEnum || type == typeof(string) || IsPacked(type) || (type.IsArray && IsPacked(type.GetElementType()!))
        || (Nullable.GetUnderlyingType(type) is { } inner && IsPlain(inner));

    // Numbers, and structs of doubles alone, which leave no gaps.
    private static bool IsPacked(Type type) =>
        (type.IsPrimitive && type != typeof(IntPtr) && type != typeof(UIntPtr))
        || (type.IsValueType && !type.IsPrimitive && !type.IsEnum && Nullable.GetUnderlyingType(type) is null
            && type.GetFields(BindingFlags.Instance | BindingFlags.Public | BindingFlags.NonPublic) is { Length: > 0 } fields
            && Array.TrueForAll(fields, f => f.FieldType == typeof(double) || (!f.FieldType.IsPrimitive && IsPacked(f.FieldType))));
}
