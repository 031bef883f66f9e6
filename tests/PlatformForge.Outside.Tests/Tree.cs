using System.Runtime.CompilerServices;

namespace PlatformForge.Outside.Tests;

/// <summary>Places in the source tree.</summary>
internal static class Tree
{
    public static string Root { get; } = Find();

    public static string Project => Path.Combine(Root, "tests", "PlatformForge.Outside.Tests");

    private static string Find([CallerFilePath] string here = "")
    {
        // A deterministic build maps source paths away; then the test runs below the tree.
        foreach (string? start in new[] { Path.GetDirectoryName(here), AppContext.BaseDirectory })
        {
            for (string? folder = start; folder is not null; folder = Path.GetDirectoryName(folder))
            {
                if (File.Exists(Path.Combine(folder, "PlatformForge.sln")))
                {
                    return folder;
                }
            }
        }

        throw new DirectoryNotFoundException("The source tree was not found above the test.");
    }
}
