using System.Reflection;

namespace PlatformForge.Mutants;

/// <summary>The switch inside the mutated library, seen from the process that runs the tests.</summary>
internal static class Switch
{
    /// <summary>Number of no mutant.</summary>
    public const int Off = -1;

    private static readonly Type Type = typeof(Units.Finding).Assembly.GetType("PlatformForge.MutantSwitch", throwOnError: true)!;

    private static readonly FieldInfo ActiveField = Type.GetField("Active")!;

    private static readonly FieldInfo PassedField = Type.GetField("Passed")!;

    private static readonly bool[] Once = (bool[])Type.GetField("Once")!.GetValue(null)!;

    /// <summary>The mutant that is switched on.</summary>
    public static int Active
    {
        get => (int)ActiveField.GetValue(null)!;
        set => ActiveField.SetValue(null, value);
    }

    /// <summary>Begins to note which mutants are passed.</summary>
    public static void Note() => PassedField.SetValue(null, new bool[Once.Length]);

    /// <summary>Those passed since <see cref="Note"/>.</summary>
    public static int[] Passed() => Numbers((bool[])PassedField.GetValue(null)!);

    /// <summary>Those whose first passing in this process was inside what a type works out when it is first used.</summary>
    public static int[] InTypes() => Numbers(Once);

    private static int[] Numbers(bool[] marks) => [.. Enumerable.Range(0, marks.Length).Where(i => marks[i])];
}
