using Xunit;

namespace PlatformForge.Tests.House;

/// <summary>Lines as .editorconfig says, 160 characters.</summary>
public class LineLengthTests
{
    private const int Wanted = 160;

    [Fact]
    public void No_line_is_longer_than_160_characters() => Assert.Empty(
        from folder in (string[])["src", "tests"]
        from file in Directory.EnumerateFiles(Path.Combine(SourceTree.Root, folder), "*.cs", SearchOption.AllDirectories)
        where !file.Split(Path.DirectorySeparatorChar).Intersect(["obj", "bin"]).Any()
        from line in File.ReadLines(file).Select((text, i) => (Number: i + 1, text.Length))
        where line.Length > Wanted
        select $"{Path.GetRelativePath(SourceTree.Root, file)}:{line.Number}: {line.Length}");
}
