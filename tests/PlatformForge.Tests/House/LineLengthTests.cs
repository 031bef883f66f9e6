using Xunit;

namespace PlatformForge.Tests.House;

/// <summary>
/// Lines as .editorconfig says, 160 characters. Many are longer still, most of them findings whose sentences stand in one piece: this number only gets smaller.
/// </summary>
public class LineLengthTests
{
    private const int Wanted = 160, LongerStill = 1010, Longest = 650;

    private static readonly Lazy<(string File, int Line, int Length)[]> Long = new(() =>
    [
        .. from file in Directory.EnumerateFiles(Path.Combine(SourceTree.Root, "src"), "*.cs", SearchOption.AllDirectories)
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
