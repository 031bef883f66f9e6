using PlatformForge.Exports;
using PlatformForge.Exports.Files;
using PlatformForge.Exports.Folders;
using PlatformForge.Exports.Manifests;
using PlatformForge.Geometry;
using PlatformForge.Platforms.Specs;
using PlatformForge.Projects;
using PlatformForge.Projects.Runs;
using PlatformForge.Projects.Watches;
using PlatformForge.Tests.House;
using PlatformForge.Tests.Sections;
using PlatformForge.Track;
using PlatformForge.Units;
using PlatformForge.Verification;
using PlatformForge.Verification.Written;
using Xunit;

namespace PlatformForge.Tests.Verification;

/// <summary>What stands on and behind sections as prints of its own is held against vehicles as they are.</summary>
public class BesideTests
{
    private const double Rounding = 1e-4; // of what is laid to the plan's grid and written in 32 bits

    private static readonly Lazy<(Dossier Design, OutputFile[] Files, Manifest Manifest)> Ottermoss = new(() =>
    {
        var design = DesignRun.Design(ProjectReader.ReadFile(Path.Combine(SourceTree.Root, "presets", "finished", "ottermoss.toml")).Value!,
            RunWatch.None).Value!;
        var made = OutputFiles.Made(design, new() { Pictures = false, Drawings = false, Tables = false, Report = false, Masks = false });
        var manifest = OutputFolder.Listing(made.Manifest, made.Files);
        return (design, [.. made.Files, new(Manifest.FileName, ManifestForm.ToBytes(manifest))], manifest);
    });

    /// <summary>A bank of 1 in 1½ reaches 0.25 + 30 beyond the edge of a deck 20 high, and a coach 34.5 wide on a track 150 away comes to 132.75.</summary>
    [Fact]
    public void A_bank_of_its_own_is_as_near_to_a_track_behind_it_as_its_foot()
    {
        var back = new BackSpec { Kind = BackKind.Bank, Apart = true, Slope = 1.5, Fit = 0.25 };
        var set = Workbench.Made(Workbench.Straight(150, Side.Left, s => s with { Back = back }), Workbench.Printer, new());
        double edge = set.Plan.Back.Reach[0];
        var behind = new Centreline("down", [new(new(-200, 150), 0, 1200, 0, 0)]);
        var sections = set.Sections.Select(s => new WrittenSection("halt", s.Name, s.Name, s.PrintMesh(), s.ToLayout)).ToArray();
        var banks = set.Lines.Pieces.Select(l => new WrittenSection("halt", "bank", "bank", l.WrittenMesh(), l.ToLayout)).ToArray();
        var facts = Pieces.Facts(behind, Pieces.Coach(width: 34.5)) with { HeldDownTo = -Pieces.RailTop };
        Assert.Equal(132.75 - edge, SectionsVerifier.Verify(sections, facts).Closest!.Clearance, Rounding);
        var near = SectionsVerifier.Verify(sections, banks, [facts]).Closest!;
        Assert.Equal(132.75 - edge - 30.25, near.Clearance, Rounding);
        Assert.Equal("bank", near.Section);

        // Where only what a body meets at its own heights counts, from 2 mm over rails 8 up: the bank is 15 nearer to its edge there.
        // cut a little above the height
        Assert.Equal(132.75 - edge - 30.25 + 15, SectionsVerifier.Verify(sections, banks, [facts with { HeldDownTo = null }]).Closest!.Clearance, 0.05);
    }

    [Fact]
    public void A_motion_that_mirrors_a_strip_is_told()
    {
        var bar = Pieces.Section(Pieces.Bar(Pieces.Straight(1000), 400, 800, 30, 70, 0, 20));
        var strip = Pieces.Section(Pieces.Bar(Pieces.Straight(1000), 400, 800, 40, 50, 20, 22), "strip");
        Assert.Empty(SectionsVerifier.Verify([bar], [strip], [Pieces.Facts(Pieces.Straight(1000), Pieces.Coach())]).Findings);
        var mirrored = strip with { ToLayout = strip.ToLayout with { Row1 = new(0, -1, 0) } };
        Assert.Contains(SectionsVerifier.Verify([bar], [mirrored], [Pieces.Facts(Pieces.Straight(1000), Pieces.Coach())]).Findings,
            f => f.Code == "PF8031" && f.Message.Contains("strip", StringComparison.Ordinal));
    }

    [Fact]
    public void A_written_folder_with_banks_is_clear_and_says_what_the_design_says()
    {
        var (design, files, manifest) = Ottermoss.Value;
        Assert.Contains(manifest.Lines, l => l.Depth == 0);
        var verdict = FolderVerifier.Verify(new(files));
        Assert.True(verdict.IsClear);
        Assert.Equal(TrialVerdict.Of(design).Closest!.Clearance, verdict.Closest!.Clearance, 1e-6);
    }

    /// <summary>The bank stands behind a deck 30 mm wide: moved 45 towards the track it lies before the edge, and a coach runs into it.</summary>
    [Fact]
    public void A_banks_piece_moved_into_the_tracks_envelope_is_found_by_the_vehicle_that_hits_it()
    {
        var verdict = Moved(new(0, 45, 0), null);
        Assert.Contains(verdict.Findings, f => f is { Code: "PF8020", Severity: Severity.Error } && f.Message.Contains(", bank", StringComparison.Ordinal)
            && f.Message.Contains("branch coach", StringComparison.Ordinal));
        Assert.False(verdict.IsClear);
    }

    [Fact]
    public void A_banks_piece_that_stands_away_from_its_section_is_refused()
    {
        Assert.Contains(Moved(new(0, -2.5, 0), null).Findings, f => f.Code == "PF8050" && f.Message.Contains("from its section", StringComparison.Ordinal));
        Assert.DoesNotContain(Moved(new(0, -1.5, 0), null).Findings, f => f.Code == "PF8050");
    }

    [Fact]
    public void A_strip_of_a_platform_that_the_design_does_not_know_is_named_as_not_held()
    {
        var verdict = Moved(default, "elsewhere");
        Assert.Contains(verdict.Findings, f => f.Code == "PF8041" && f.Message.Contains("elsewhere", StringComparison.Ordinal));
        Assert.Contains(verdict.NotHeld, n => n.Contains(", bank", StringComparison.Ordinal));
        Assert.False(verdict.IsClear);
    }

    // The first bank of the platform on the straight, on the right of its track, moved or said to belong elsewhere.
    private static Verdict Moved(Point3 by, string? platform)
    {
        var (_, files, manifest) = Ottermoss.Value;
        var bank = manifest.Lines.First(l => l.Depth == 0);
        var other = bank with { ToLayout = bank.ToLayout.Then(RigidTransform.Shift(by.X, by.Y, by.Z)), Platform = platform ?? bank.Platform };
        var spoilt = manifest with { Lines = [.. manifest.Lines.Select(l => l == bank ? other : l)] };
        return FolderVerifier.Verify(new([.. files.Where(f => f.Path != Manifest.FileName), new(Manifest.FileName, ManifestForm.ToBytes(spoilt))]));
    }
}
