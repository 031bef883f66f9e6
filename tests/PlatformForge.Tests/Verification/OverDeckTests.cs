using PlatformForge.Exports.Manifests;
using PlatformForge.Exports.Stl;
using PlatformForge.Geometry;
using PlatformForge.Tests.Cli;
using PlatformForge.Tests.Projects;
using PlatformForge.Track;
using PlatformForge.Units;
using PlatformForge.Verification;
using PlatformForge.Verification.Rules;
using PlatformForge.Verification.Written;
using Xunit;

namespace PlatformForge.Tests.Verification;

/// <summary>Solid over a deck where nothing is planned to stand, such as a pipe before the wall that went on through coping and deck.</summary>
public class OverDeckTests
{
    private const double Top = 20, Pipe = 8.85;

    private static readonly Centreline Track = Pieces.Straight(1200);

    private static readonly Mesh Bar = Pieces.Bar(Track, 400, 800, 24, 70, 0, Top);

    private static DesignFacts Facts(DesignDeck deck) => Pieces.Facts(Track, Pieces.Coach()) with
    {
        Deck = deck,
        Stretches = [new("Pendlewick", Track, Side.Left, 400, 800)],
    };

    private static Mesh Together(Mesh a, Mesh b) =>
        new([.. a.Vertices, .. b.Vertices], [.. a.Triangles, .. b.Triangles.Select(t => t + a.Vertices.Length)], []);

    private static Finding? Told(Mesh mesh, DesignDeck deck) => OverDeckRule.Check([Pieces.Section(mesh)], [mesh], Facts(deck)).SingleOrDefault();

    [Fact]
    public void A_pipe_that_goes_through_the_deck_is_told_with_its_height_and_place()
    {
        var level = new DesignDeck([400, 800], [new(Top)], []);
        var pipe = Together(Bar, Pieces.Bar(Track, 500, 503, 25, 28, 0, Top + Pipe));
        Assert.Null(Told(Bar, level));
        var told = Told(pipe, level)!;
        Assert.Equal(("PF8055", Severity.Error, FaultKind.Mesh), (told.Code, told.Severity, told.Kind));
        Assert.Contains("8.85 mm", told.Message, StringComparison.Ordinal);
        Assert.Matches(@"chainage 50[03]\.0", told.Message);
    }

    /// <summary>What is planned to stand there may, as high as it is planned and no higher, where it is planned and not beside it.</summary>
    [Theory]
    [InlineData(8.85, 0, false)]
    [InlineData(8.85, 0.04, false)]
    [InlineData(8.79, 0, true)]
    [InlineData(8.85, 0.2, true)]
    public void What_is_planned_to_stand_there_may(double rise, double aside, bool told)
    {
        Point2[] ring = [new(500 + aside, 25), new(503 + aside, 25), new(503 + aside, 28), new(500 + aside, 28)];
        var pipe = Together(Bar, Pieces.Bar(Track, 500, 503, 25, 28, 0, Top + Pipe));
        Assert.Equal(told, Told(pipe, new([400, 800], [new(Top)], [new("stump", ring, rise)])) is not null);
    }

    /// <summary>A deck that falls away from chainage 700 on at 1 in 8: 40.8 mm down the ramp it is 5.1 mm lower, and a pipe as high as the level deck stands so
    /// far over it.</summary>
    [Fact]
    public void Beside_a_ramp_it_is_the_ramp_s_own_height_that_counts()
    {
        var deck = new DesignDeck([400, 700, 800], [new(Top), new(Top + (700 / 8.0), -1 / 8.0)], []);
        Mesh With(double high) => Together(Pieces.Bar(Track, 400, 700, 24, 70, 0, Top), Pieces.Bar(Track, 740, 740.8, 25, 28, 0, high));
        Assert.Null(Told(With(Top - 5.1), deck));
        Assert.Contains("5.10 mm", Told(With(Top), deck)!.Message, StringComparison.Ordinal);
    }

    /// <summary>A folder as it is built passes; with one place of its file higher by a millimetre it does not.</summary>
    [Fact]
    public void A_folder_whose_file_has_a_bump_on_the_deck_is_refused()
    {
        using var folder = new TempFolder();
        folder.Write("halt.toml", Samples.Small + "fence = { pitch = 32 }\n");
        var run = CliRun.Of("build", folder["halt.toml"], "--sets", "prints");
        Assert.True(run.Exit == 0, run.Error);
        var whole = FolderReader.Read(folder["halt"]).Value!;
        Assert.Empty(FolderVerifier.Verify(whole).Findings.Select(f => f.Message));

        var manifest = ManifestForm.Read(whole[Manifest.FileName]!, Manifest.FileName).Value!;
        var section = manifest.Sections[0];
        var mesh = StlReader.Read(whole[section.Stl]!, section.Stl).Value!.Mesh.Moved(section.ToLayout);
        double top = mesh.Box().High.Z;
        var bumped = Together(mesh, Pieces.Bar(Track, 400, 402, 40, 42, 1, top + 1)).Moved(section.ToLayout.Inverse());
        var spoilt = new WrittenFolder([.. whole.Files.Where(f => f.Path != section.Stl), new(section.Stl, StlWriter.ToBytes(bumped, section.Name))]);
        Assert.Contains(FolderVerifier.Verify(spoilt).Findings, f => f.Code == "PF8055" && f.Message.Contains("1.00 mm", StringComparison.Ordinal));
    }
}
