using System.Reflection;

namespace PlatformForge.Projects;

/// <summary>Version of the program, as it is shown and written into results.</summary>
public static class ProgramVersion
{
    /// <summary>The version with the commit where the build knew it.</summary>
    public static string Text { get; } =
        typeof(ProgramVersion).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion ?? "unknown";

    /// <summary>The version alone, for results that are to be the same from one commit to the next.</summary>
    public static string Number { get; } = Text.Split('+')[0];
}
