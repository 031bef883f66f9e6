using PlatformForge.Exports.Manifests;
using PlatformForge.Units;
using PlatformForge.Verification;
using Xunit;

namespace PlatformForge.Tests.Verification;

/// <summary>What is said of a folder that cannot be read, by folders of a few bytes.</summary>
public sealed class FolderReaderTests : IDisposable
{
    private readonly string path = Directory.CreateTempSubdirectory("platformforge-read-").FullName;

    public void Dispose() => Directory.Delete(path, recursive: true);

    [Fact]
    public void A_folder_that_is_there_without_a_manifest_is_told_from_one_that_is_not_there()
    {
        Assert.Contains("holds no manifest.json", Told(path), StringComparison.Ordinal);
        Assert.Contains("There is no folder", Told(Path.Combine(path, "elsewhere")), StringComparison.Ordinal);
    }

    /// <summary>Two files that come to a byte more than the limit together, and to no more one by one; they need not be there for that.</summary>
    [Theory]
    [InlineData(0, false)]
    [InlineData(1, true)]
    public void Files_that_come_to_more_than_the_limit_together_are_refused_with_it(long more, bool refused)
    {
        byte[] Of(long second) => List(new("a.stl", InputLimits.FolderBytes / 2, new('0', 64)), new("b.stl", second, new('0', 64)));
        int own = Of(InputLimits.FolderBytes / 2).Length;
        byte[] list = Of((InputLimits.FolderBytes / 2) - own + more);
        Assert.Equal(own, list.Length);
        File.WriteAllBytes(Path.Combine(path, Manifest.FileName), list);
        if (refused)
        {
            Assert.Contains("come to more than the limit of 2048 MB", Told(path), StringComparison.Ordinal);
        }
        else
        {
            Assert.NotNull(FolderReader.Read(path).Value);
        }
    }

    [Fact]
    public void A_manifest_over_the_limit_is_told_as_that()
    {
        using (var list = File.Create(Path.Combine(path, Manifest.FileName)))
        {
            list.SetLength(InputLimits.JsonBytes + 1L);
        }

        Assert.Contains("over the limit of", Told(path), StringComparison.Ordinal);
    }

    [Fact]
    public void An_empty_file_that_is_listed_as_empty_is_read_as_that()
    {
        File.WriteAllBytes(Path.Combine(path, "notes.txt"), []);
        File.WriteAllBytes(Path.Combine(path, Manifest.FileName), List(new ManifestFile("notes.txt", 0, new('0', 64))));
        Assert.Empty(FolderReader.Read(path).Value!["notes.txt"]!);
    }

    private static byte[] List(params ManifestFile[] files) => ManifestForm.ToBytes(new("Pendlewick", "0.1.0", new('0', 64), [], files));

    private static string Told(string folder)
    {
        var finding = Assert.Single(FolderReader.Read(folder).Findings);
        Assert.Equal(("PF8001", FaultKind.Input), (finding.Code, finding.Kind));
        return finding.Message;
    }
}
