using System.Reflection;
using System.Runtime.Loader;
using PlatformForge.Solids.Kernel;

namespace PlatformForge.Benchmarks.Ahead;

/// <summary>
/// Types by the names that the runtime tells: Outer`1+Inner[System.Int32,Other`1[...]]; what is shared by all classes is taken for an object.
/// </summary>
internal sealed class TypeNames
{
    // As the compiler's summary shortens them.
    private static readonly Dictionary<string, Type> Short = new(StringComparer.Ordinal)
    {
        ["System.__Canon"] = typeof(object),
        ["bool"] = typeof(bool),
        ["byte"] = typeof(byte),
        ["sbyte"] = typeof(sbyte),
        ["ubyte"] = typeof(byte),
        ["short"] = typeof(short),
        ["ushort"] = typeof(ushort),
        ["char"] = typeof(char),
        ["int"] = typeof(int),
        ["uint"] = typeof(uint),
        ["long"] = typeof(long),
        ["ulong"] = typeof(ulong),
        ["float"] = typeof(float),
        ["double"] = typeof(double),
    };

    private readonly List<Assembly> _libraries = [typeof(object).Assembly];

    /// <summary>Looks among the framework's libraries and the one of the program that holds all its rooms.</summary>
    public TypeNames()
    {
        string first = typeof(object).Assembly.Location;
        foreach (string file in Directory.GetFiles(Path.GetDirectoryName(first)!, "System.*.dll").Where(f => f != first).Order(StringComparer.Ordinal))
        {
            try
            {
                _libraries.Add(AssemblyLoadContext.Default.LoadFromAssemblyPath(file));
            }
            catch (BadImageFormatException)
            {
                // A library of another kind, which holds no types.
            }
        }

        _libraries.Add(typeof(SolidRaiser).Assembly);
    }

    /// <summary>The type of a name; null where there is none.</summary>
    public Type? Of(string name)
    {
        int at = 0;
        var type = Read(name, ref at);
        return at == name.Length ? type : null;
    }

    /// <summary>Types parted by commas; null if one of them is not found.</summary>
    public Type[]? ListOf(string names)
    {
        var types = new List<Type>();
        for (int at = 0; at < names.Length; at++)
        {
            if (Read(names, ref at) is not { } type)
            {
                return null;
            }

            types.Add(type);
        }

        return [.. types];
    }

    private Type? Read(string text, ref int at)
    {
        int from = at;
        while (at < text.Length && text[at] is not ('[' or ']' or ','))
        {
            at++;
        }

        string name = text[from..at];
        var type = Short.GetValueOrDefault(name) ?? _libraries.Select(l => l.GetType(name)).FirstOrDefault(t => t is not null);
        while (at < text.Length && text[at] == '[')
        {
            type = text[at + 1] == ']' ? ArrayOf(type, ref at) : Made(type, text, ref at);
        }

        return type;
    }

    private static Type? ArrayOf(Type? type, ref int at)
    {
        at += 2;
        return type?.MakeArrayType();
    }

    private Type? Made(Type? type, string text, ref int at)
    {
        var arguments = new List<Type?>();
        do
        {
            at++;
            arguments.Add(Read(text, ref at));
        }
        while (text[at] == ',');
        at++;
        try
        {
            return type is null || arguments.Contains(null) ? null : type.MakeGenericType([.. arguments.Select(a => a!)]);
        }
        catch (ArgumentException)
        {
            // An object does not keep what the type demands of its argument.
            return null;
        }
    }
}
