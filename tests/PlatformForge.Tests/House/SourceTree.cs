using System.Runtime.CompilerServices;

namespace PlatformForge.Tests.House;

/// <summary>Where the source tree lies, for tests that read files of it.</summary>
internal static class SourceTree
{
    public static string Root { get; } = FindRoot();

    private static string FindRoot([CallerFilePath] string here = "")
    {
        var folder = new DirectoryInfo(Path.GetDirectoryName(here)!);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "PlatformForge.sln")))
        {
            folder = folder.Parent;
        }

        // A deterministic build maps source paths away; then the test runs below the tree.
        folder ??= new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "PlatformForge.sln")))
        {
            folder = folder.Parent ?? throw new DirectoryNotFoundException("The source tree was not found above the test.");
        }

        return folder.FullName;
    }
}
