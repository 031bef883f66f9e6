using System.Buffers;
using System.Collections;
using System.Runtime.CompilerServices;

namespace PlatformForge.Units.Memories;

/// <summary>
/// Takes fingerprints of values by all the fields they have, found at run time, so that a property added to a record is in its fingerprint without anybody
/// thinking of
/// it. Only what cannot change once it is made has one: records and other classes whose fields are all read-only, structs, numbers, text, and lists of
/// these. Anything
/// else (a delegate, a lazy value, a dictionary) is refused.
/// </summary>
/// <remarks>An object's fingerprint is taken once and kept as long as the object. Objects inside objects count by their own fingerprints.</remarks>
internal sealed class Fingerprints
{
    private readonly ConditionalWeakTable<object, StrongBox<Fingerprint>> known = [];

    /// <summary>The fingerprint of a question: what is asked, and of what.</summary>
    public Fingerprint Of(string stage, object? input)
    {
        var content = new ArrayBufferWriter<byte>();
        Content.Text(content, stage);
        Add(content, input);
        return Fingerprint.Of(content.WrittenSpan);
    }

    /// <summary>An object that is known to be the answer to a question: its fingerprint is that of the question, and it is not looked into.</summary>
    public void Know(object answer, Fingerprint question) => known.TryAdd(answer, new(question));

    private Fingerprint OfObject(object value, TypeForm form)
    {
        var content = new ArrayBufferWriter<byte>();
        Fields(content, value, form);
        var print = Fingerprint.Of(content.WrittenSpan);
        known.TryAdd(value, new(print));
        return print;
    }

    private void Add(ArrayBufferWriter<byte> content, object? value)
    {
        if (Content.Plain(content, value))
        {
            return;
        }

        if (!value!.GetType().IsValueType && known.TryGetValue(value, out var taken))
        {
            Print(content, taken.Value);
            return;
        }

        var form = TypeForm.Of(value.GetType());
        switch (form.Kind)
        {
            case FormKind.Packed:
                form.WritePacked!((Array)value, content);
                break;
            case FormKind.List:
                List(content, (IList)value);
                break;
            case FormKind.InPlace:
                Fields(content, value, form);
                break;
            default:
                Print(content, OfObject(value, form));
                break;
        }
    }

    private static void Print(ArrayBufferWriter<byte> content, Fingerprint print)
    {
        Content.Mark(content, ContentMark.Object);
        print.Write(content.GetSpan(Fingerprint.Size));
        content.Advance(Fingerprint.Size);
    }

    private void List(ArrayBufferWriter<byte> content, IList list)
    {
        Content.Mark(content, ContentMark.List);
        Content.Whole(content, list.Count);
        foreach (object? item in list)
        {
            Add(content, item);
        }
    }

    private void Fields(ArrayBufferWriter<byte> content, object value, TypeForm form)
    {
        content.Write(form.Name);
        foreach (var field in form.Fields)
        {
            Add(content, field.GetValue(value));
        }
    }
}
