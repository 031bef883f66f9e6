namespace PlatformForge.Tests.Cli;

/// <summary>A folder of its own for a test, gone afterwards.</summary>
internal sealed class TempFolder : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("platformforge");

    public string Path => folder.FullName;

    public string this[string name] => System.IO.Path.Combine(folder.FullName, name);

    public string Write(string name, string text)
    {
        File.WriteAllText(this[name], text);
        return this[name];
    }

    /// <summary>Every file below, with the hash of its bytes.</summary>
    public IReadOnlyList<string> Listing(string below = "") =>
        [.. Directory.EnumerateFiles(System.IO.Path.Combine(Path, below), "*", SearchOption.AllDirectories)
            .Select(f => System.IO.Path.GetRelativePath(System.IO.Path.Combine(Path, below), f).Replace('\\', '/') + " "
                + Convert.ToHexString(System.Security.Cryptography.SHA256.HashData(File.ReadAllBytes(f))))
            .Order(StringComparer.Ordinal)];

    public void Dispose() => folder.Delete(true);
}
