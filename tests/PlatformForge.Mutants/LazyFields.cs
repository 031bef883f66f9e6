using System.Reflection;
using System.Runtime.CompilerServices;

namespace PlatformForge.Mutants;

/// <summary>
/// What tests and library work out once and keep in a static field. Before each test it is forgotten, so that a mutant is seen by every test
/// that leans on it and leaves nothing behind for the next one.
/// </summary>
internal static class LazyFields
{
    private const BindingFlags Inner = BindingFlags.NonPublic | BindingFlags.Instance;

    private static readonly List<(object Lazy, (FieldInfo Field, object? Value)[] AtFirst)> Known = [.. Find()];

    public static void Forget()
    {
        foreach (var (lazy, fields) in Known)
        {
            foreach (var (field, value) in fields)
            {
                field.SetValue(lazy, value);
            }
        }
    }

    private static IEnumerable<(object, (FieldInfo, object?)[])> Find()
    {
        foreach (var field in new[] { "PlatformForge", "PlatformForge.Tests", "PlatformForge.Cli" }.SelectMany(a =>
            Assembly.Load(a).GetTypes()).Where(t => !t.ContainsGenericParameters)
            .SelectMany(t => t.GetFields(BindingFlags.Static | BindingFlags.Public | BindingFlags.NonPublic))
            .Where(f => f.FieldType.IsGenericType && f.FieldType.GetGenericTypeDefinition() == typeof(Lazy<>)))
        {
            RuntimeHelpers.RunClassConstructor(field.DeclaringType!.TypeHandle);
            if (field.GetValue(null) is { } lazy)
            {
                yield return (lazy, [.. new[] { "_state", "_factory", "_value" }.Select(n => lazy.GetType().GetField(n, Inner)!).Select(f => (f,
                    f.GetValue(lazy)))]);
            }
        }
    }
}
