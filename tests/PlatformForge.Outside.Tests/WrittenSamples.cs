using System.Text.Json;

namespace PlatformForge.Outside.Tests;

/// <summary>
/// The samples of presets/samples, built once through the command line: into a temporary folder, or read from where
/// PLATFORMFORGE_BUILT says that they were built already, one folder a sample.
/// </summary>
public sealed class WrittenSamples
{
    private static readonly Lazy<string> Built = new(Build);

    // Each file is read once for all who ask.
    private static readonly Lazy<IReadOnlyDictionary<string, JsonElement>> Loaded = new(() => Load("*.3mf", "read-3mf.mjs"));
    private static readonly Lazy<IReadOnlyDictionary<string, JsonElement>> Examined = new(() => Load("*.stl", "stl-strict.mjs"));

    /// <summary>Names of the samples.</summary>
    public IReadOnlyList<string> Names { get; } = AllNames();

    /// <summary>The samples whose platforms differ: one that is named after another is the same platform measured or asked for another way.</summary>
    public IEnumerable<string> Different => Names.Where(IsDifferent);

    /// <summary>Folder that holds a folder for each.</summary>
    public string Folder { get; } = Built.Value;

    /// <summary>Whether a sample's platform is no other's.</summary>
    public static bool IsDifferent(string name) => !AllNames().Any(other => name.StartsWith(other + "-", StringComparison.Ordinal));

    /// <summary>What the loader made by others finds in a 3MF of the samples.</summary>
    public static JsonElement Read3Mf(string file) => Loaded.Value[file];

    /// <summary>What the strict reader finds in an STL of the samples.</summary>
    public static JsonElement ReadStl(string file) => Examined.Value[file];

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

    /// <summary>
    /// The program that is run: the one beside the tests, or the one that PLATFORMFORGE_PROGRAM names. The gate names the one that was packed, compiled ahead,
    /// which takes a third of the time to start.
    /// </summary>
    internal static string Program { get; } = Environment.GetEnvironmentVariable("PLATFORMFORGE_PROGRAM") is { Length: > 0 } named
        ? named : Path.Combine(AppContext.BaseDirectory, "PlatformForge.Cli.dll");

    internal static Tool.Said CommandLine(params IEnumerable<string> arguments) =>
        Tool.Run("dotnet", [Program, .. arguments]);

    private static string[] AllNames() =>
        [.. Directory.EnumerateFiles(Path.Combine(Tree.Root, "presets", "samples"), "*.toml").Select(f => Path.GetFileNameWithoutExtension(f))
            .Order(StringComparer.Ordinal)];

    private static string Build()
    {
        if (Environment.GetEnvironmentVariable("PLATFORMFORGE_BUILT") is { Length: > 0 } built)
        {
            return built;
        }

        string own = Directory.CreateTempSubdirectory("platformforge-outside-").FullName;
        AppDomain.CurrentDomain.ProcessExit += (_, _) => Directory.Delete(own, recursive: true);
        foreach (string name in AllNames())
        {
            var said = CommandLine("build", SampleFile(name), "--output", Path.Combine(own, name), "--quiet");
            Assert.True(said.Exit == 0, $"{name}: exit {said.Exit}\n{said.All}");
        }

        return own;
    }

    private static Dictionary<string, JsonElement> Load(string pattern, string reader)
    {
        // A folder at a time: all of them in one run come near to the limit of a program of others where something else runs.
        return Directory.EnumerateDirectories(Built.Value)
            .Select(folder => Directory.GetFiles(folder, pattern, SearchOption.AllDirectories))
            .Where(files => files.Length > 0)
            .SelectMany(files => Written.Parse(Tool.Node(reader, files)))
            .ToDictionary(r => r.Text("file"));
    }
}

/// <summary>Tests that read the samples share one building of them; those that slice or draw them wait for other programs and run beside the rest.</summary>
[CollectionDefinition("samples")]
public sealed class SamplesCollection : ICollectionFixture<WrittenSamples>;

/// <inheritdoc cref="SamplesCollection"/>
[CollectionDefinition("samples sliced")]
public sealed class SlicedSamplesCollection : ICollectionFixture<WrittenSamples>;

/// <inheritdoc cref="SamplesCollection"/>
[CollectionDefinition("samples drawn")]
public sealed class DrawnSamplesCollection : ICollectionFixture<WrittenSamples>;
