using System.Reflection;
using System.Text.RegularExpressions;

namespace PlatformForge.Benchmarks.Ahead;

/// <summary>General methods over concrete types that the runtime told of having compiled, found again by reflection.</summary>
internal sealed partial class CompiledMethods
{
    private const BindingFlags Own = BindingFlags.Static | BindingFlags.Instance | BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.DeclaredOnly;

    private readonly TypeNames _types = new();
    private readonly HashSet<string> _seen = new(StringComparer.Ordinal);
    private readonly HashSet<MethodBase> _known = [];
    private readonly List<MethodBase> _found = [];

    /// <summary>The methods, in the order in which they were first compiled.</summary>
    public IReadOnlyList<MethodBase> Found => _found;

    /// <summary>Entries whose type or method was not found: stubs, methods made at run time, types of other programs.</summary>
    public int Unknown { get; private set; }

    /// <summary>Reads a map of compiled code: methods of general types, with the types' names.</summary>
    public void ReadMap(string path)
    {
        foreach (string line in File.ReadLines(path))
        {
            var match = MapLine().Match(line);
            var (type, method) = (match.Groups[1].Value, match.Groups[2].Value);
            if (match.Success && type.Contains('[', StringComparison.Ordinal) && _seen.Add(type + "::" + method))
            {
                Add(type, method, []);
            }
        }
    }

    /// <summary>Reads the compiler's summary: general methods, with what they were made for.</summary>
    public void ReadSummary(string path)
    {
        foreach (string line in File.ReadLines(path))
        {
            var match = SummaryLine().Match(line);
            string entry = match.Groups[1].Value;
            if (match.Success && _seen.Add(entry) && OutsideBrackets(entry) is { } parted && _types.ListOf(parted.Arguments) is { } arguments)
            {
                Add(parted.Type, parted.Method, arguments);
            }
        }
    }

    [GeneratedRegex(@"^\S+ \S+ .*?\[[A-Za-z][^\]]*\] (.+)::([^(]+)\(.*\[QuickJitted\]$")]
    private static partial Regex MapLine();

    [GeneratedRegex(@"JIT compiled (.+) \[Tier0")]
    private static partial Regex SummaryLine();

    // "Type[...]:Method[...](...)": the colon outside of all brackets parts them.
    private static (string Type, string Method, string Arguments)? OutsideBrackets(string entry)
    {
        int depth = 0, colon = 0;
        for (; colon < entry.Length && (entry[colon] != ':' || depth > 0); colon++)
        {
            depth += entry[colon] switch { '[' => 1, ']' => -1, _ => 0 };
        }

        string rest = entry[Math.Min(colon + 1, entry.Length)..];
        int end = rest.IndexOf('(', StringComparison.Ordinal), open = rest.IndexOf('[', StringComparison.Ordinal);
        return open > 0 && open < end && rest[end - 1] == ']' ? (entry[..colon], rest[..open], rest[(open + 1)..(end - 1)]) : null;
    }

    private void Add(string typeName, string name, Type[] arguments)
    {
        bool any = false;
        if (_types.Of(typeName) is { ContainsGenericParameters: false } type)
        {
            foreach (var method in type.GetMembers(Own).OfType<MethodBase>().Where(m => m.Name == name && !m.IsAbstract))
            {
                if (Made(method, arguments) is { } made)
                {
                    any = true;
                    if (_known.Add(made))
                    {
                        _found.Add(made);
                    }
                }
            }
        }

        Unknown += any ? 0 : 1;
    }

    private static MethodBase? Made(MethodBase method, Type[] arguments)
    {
        // A constructor has no type parameters of its own, and refuses the question.
        if ((method is ConstructorInfo ? [] : method.GetGenericArguments()).Length != arguments.Length)
        {
            return null;
        }

        try
        {
            return arguments.Length == 0 ? method : ((MethodInfo)method).MakeGenericMethod(arguments);
        }
        catch (ArgumentException)
        {
            // What it is made for is not allowed: the summary tells enumerations as whole numbers.
            return null;
        }
    }
}
