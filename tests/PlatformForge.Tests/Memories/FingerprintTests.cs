using System.Collections;
using System.Reflection;
using System.Runtime.CompilerServices;
using PlatformForge.Projects.Presets;
using PlatformForge.Projects.Runs;
using PlatformForge.Projects.Watches;
using PlatformForge.Tests.Projects;
using PlatformForge.Units;
using PlatformForge.Units.Memories;
using Xunit;

namespace PlatformForge.Tests.Memories;

public class FingerprintTests
{
    private const BindingFlags Own = BindingFlags.Instance | BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.DeclaredOnly;

    private static Fingerprint Of(object? value) => new Fingerprints().Of("test", value);

    [Theory]
    [InlineData("pendlewick", true)]
    [InlineData("pendlewick-sets", false)]
    public void A_change_of_any_field_of_a_project_or_of_what_comes_of_it_changes_the_fingerprint(string sample, bool designed)
    {
        var project = Samples.Sound(PresetShelf.Sample(sample)!);
        object[] parts = [project.Layout, project.Tracks, project.Vehicles, project.Sets, project.Clearance, project.Platforms, project.Printer,
            project.Sections, .. designed ? DesignRun.Design(project, RunWatch.None).Value!.Platforms : []];
        int changed = 0;
        foreach (object part in parts)
        {
            foreach (var (owner, field) in FieldsBelow(part))
            {
                object? before = field.GetValue(owner);
                if (!Changed(before, field.FieldType, out object? after))
                {
                    continue;
                }

                var print = Of(owner);
                field.SetValue(owner, after);
                var other = Of(owner);
                field.SetValue(owner, before);
                Assert.True(print != other, $"{owner.GetType().Name}.{field.Name}");
                changed++;
            }
        }

        Assert.True(changed > 60, $"{changed}");
    }

    [Fact]
    public void What_holds_the_same_has_the_same_fingerprint()
    {
        object Read() => Samples.Sound(Samples.Pendlewick) with { Places = null! };
        Assert.Equal(Of(Read()), Of(Read()));
        Assert.NotEqual(Of(Read()),
            Of(Samples.Sound(Samples.Pendlewick, "platform[0].deck.thickness=1.6000000000000001") with { Places = null!, Printer = new([], 1) }));
    }

    [Fact]
    public void Lists_and_texts_are_told_apart_by_where_they_end()
    {
        object[] values =
        [
            new int[][] { [1], [2, 3] }, new int[][] { [1, 2], [3] }, new[] { 1, 2, 3 }, new long[] { 1, 2, 3 }, "123", new[] { "12", "3" },
            new[] { "1", "23" }, 0.0, -0.0, 0, false, "",
            Array.Empty<int>(), double.NaN, new[] { 1.0, 2.0 }, (1.0, 2.0), new List<object?> { null }, new List<object?>(), 1.0f / 3, 1.0 / 3,
        ];
        Assert.Equal(values.Length - 1, values.Select(Of).Distinct().Count()); // no and nil are the same number: no field is now one, now the other
    }

    [Fact]
    public void What_may_change_later_or_hides_what_it_holds_is_refused()
    {
        foreach (object value in new object[] { new Lazy<int>(() => 1), (Func<int>)(() => 1), new Dictionary<string, int>(), new HashSet<int>(),
            new Changeable { Figure = 1 }, new Holder(new Lazy<int>(() => 1)) })
        {
            Assert.Throws<BrokenInvariantException>(() => Of(value));
        }
    }

    private sealed class Changeable
    {
        public int Figure { get; set; }
    }

    private sealed record Holder(object Inner);

    // One object for each field of each type that can be reached.
    private static List<(object Owner, FieldInfo Field)> FieldsBelow(object root)
    {
        var found = new List<(object, FieldInfo)>();
        var seen = new HashSet<object>(ReferenceEqualityComparer.Instance);
        var fields = new HashSet<FieldInfo>();
        Walk(root);
        return found;

        void Walk(object? value)
        {
            if (value is null or string or Enum || value.GetType().IsPrimitive || !seen.Add(value))
            {
                return;
            }

            if (value is IEnumerable list)
            {
                foreach (object? item in list.Cast<object?>().Take(50))
                {
                    Walk(item);
                }

                return;
            }

            for (var type = value.GetType(); type is not null && type != typeof(object) && type != typeof(ValueType); type = type.BaseType)
            {
                foreach (var field in type.GetFields(Own))
                {
                    object? now = field.GetValue(value);
                    if (!value.GetType().IsValueType && fields.Contains(field) is false && Changed(now, field.FieldType, out _))
                    {
                        fields.Add(field);
                        found.Add((value, field));
                    }

                    Walk(now);
                }
            }
        }
    }

    // A value of the same type that is another one; false where none is at hand.
    private static bool Changed(object? value, Type type, out object? other)
    {
        other = value switch
        {
            double d => double.IsFinite(d) ? d + 1 : 0.0,
            int i => i + 1,
            bool b => !b,
            string s => s + "x",
            Enum e => Enum.ToObject(e.GetType(), Convert.ToInt64(e, null) + 1),
            Array { Length: > 0 } a => Shorter(a),
            IList { Count: > 0 } list when type.IsInterface => Shorter(list),
            ValueType v => Struct(v),
            null when Nullable.GetUnderlyingType(type) is { } inner => Activator.CreateInstance(inner),
            null when type == typeof(string) => "x",
            _ => null,
        };
        return other is not null;
    }

    private static Array? Shorter(IList list)
    {
        var item = list.GetType() is { IsArray: true } array ? array.GetElementType()!
            : list.GetType().GetInterfaces().First(i => i.IsGenericType && i.GetGenericTypeDefinition() == typeof(IList<>)).GetGenericArguments()[0];
        var shorter = Array.CreateInstance(item, list.Count - 1);
        for (int i = 0; i < shorter.Length; i++)
        {
            shorter.SetValue(list[i], i);
        }

        return shorter;
    }

    private static object? Struct(ValueType boxed)
    {
        object value = RuntimeHelpers.GetObjectValue(boxed);
        foreach (var field in value.GetType().GetFields(Own))
        {
            if (Changed(field.GetValue(value), field.FieldType, out object? other))
            {
                field.SetValue(value, other);
                return value;
            }
        }

        return null;
    }
}
