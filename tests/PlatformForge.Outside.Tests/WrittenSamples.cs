namespace PlatformForge.Outside.Tests;

/// <summary>
/// The samples of presets/samples, built once through the command line: into a temporary folder, or read from where
/// PLATFORMFORGE_BUILT says that they were built already, one folder a sample.
/// </summary>
public sealed class WrittenSamples : IDisposable
{
    private readonly string? own;

    public WrittenSamples()
    {
        Names = [.. Directory.EnumerateFiles(Path.Combine(Tree.Root, "presets", "samples"), "*.toml").Select(f => Path.GetFileNameWithoutExtension(f)).Order(StringComparer.Ordinal)];
        Assert.NotEmpty(Names);
        if (Environment.GetEnvironmentVariable("PLATFORMFORGE_BUILT") is { Length: > 0 } built)
        {
            Folder = built;
            return;
        }

        Folder = own = Directory.CreateTempSubdirectory("platformforge-outside-").FullName;
        foreach (string name in Names)
        {
            var said = CommandLine("build", SampleFile(name), "--output", Path.Combine(Folder, name), "--quiet");
            Assert.True(said.Exit == 0, $"{name}: exit {said.Exit}\n{said.All}");
        }
    }

    /// <summary>Names of the samples.</summary>
    public IReadOnlyList<string> Names { get; }

    /// <summary>Folder that holds a folder for each.</summary>
    public string Folder { get; }

    public static string SampleFile(string name) => Path.Combine(Tree.Root, "presets", "samples", name + ".toml");

    /// <summary>Every written file with an ending, all samples together; at least one a sample.</summary>
    public IReadOnlyList<string> Files(string ending)
    {
        var all = new List<string>();
        foreach (string name in Names)
        {
            string[] files = [.. Directory.EnumerateFiles(Path.Combine(Folder, name), "*" + ending, SearchOption.AllDirectories).Order(StringComparer.Ordinal)];
            Assert.True(files.Length > 0, $"{name} has no file that ends in {ending}.");
            all.AddRange(files);
        }

        return all;
    }

    internal static Tool.Said CommandLine(params IEnumerable<string> arguments) =>
        Tool.Run("dotnet", [Path.Combine(AppContext.BaseDirectory, "PlatformForge.Cli.dll"), .. arguments]);

    public void Dispose()
    {
        if (own is not null)
        {
            Directory.Delete(own, recursive: true);
        }
    }
}

/// <summary>All tests that read the samples share one building of them.</summary>
[CollectionDefinition("samples")]
public sealed class SamplesCollection : ICollectionFixture<WrittenSamples>;
