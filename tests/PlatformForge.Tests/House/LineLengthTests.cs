using Xunit;

namespace PlatformForge.Tests.House;

/// <summary>
/// Lines as .editorconfig says, 160 characters. A few are longer still, where what is told has a choice inside it: this number only gets smaller.
/// </summary>
public class LineLengthTests
{
    private const int Wanted = 160, LongerStill = 44, Longest = 320;

    private static readonly Lazy<(string File, int Line, int Length)[]> Long = new(() =>
    [
        .. from folder in (string[])["src", "tests"]
           from file in Directory.EnumerateFiles(Path.Combine(SourceTree.Root, folder), "*.cs", SearchOption.AllDirectories)
           where !file.Split(Path.DirectorySeparatorChar).Intersect(["obj", "bin"]).Any()
           from line in File.ReadLines(file).Select((text, i) => (Number: i + 1, text.Length))
           where line.Length > Wanted
           select (Path.GetRelativePath(SourceTree.Root, file), line.Number, line.Length),
    ]);

    [Fact]
    public void There_are_no_more_long_lines_than_there_were() => Assert.InRange(Long.Value.Length, 0, LongerStill);

    [Fact]
    public void No_line_is_longer_than_the_longest_was() => Assert.DoesNotContain(Long.Value, l => l.Length > Longest);
}
