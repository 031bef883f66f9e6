using System.Globalization;
using System.Text.RegularExpressions;
using PlatformForge.Geometry;
using PlatformForge.Sections;
using PlatformForge.Sections.Forms;
using PlatformForge.Solids.Bodies.Layers;
using PlatformForge.Units.Memories;
using Xunit;

namespace PlatformForge.Tests.Sections;

/// <summary>What is told of a piece, on pieces whose measures are known.</summary>
public class PieceMeasureTests
{
    [Fact]
    public void A_piece_is_as_large_as_its_mesh_and_lies_at_the_origin()
    {
        var section = Assert.Single(Workbench.Made(Workbench.Straight(180), Workbench.Printer, new()).Sections);
        double[] size = [.. new[] { section.Size.X, section.Size.Y, section.Size.Z }.Order()];
        Assert.Equal([20, 60, 180], size, (a, b) => Math.Abs(a - b) < 1e-3);
        var (low, high) = section.PrintMesh().Box();
        Assert.Equal(0, (low - default(Point3)).Length, 1e-4);
        Assert.Equal(0, (high - section.Size).Length, 1e-4);
    }

    /// <summary>Against the squashed first layer an end is chamfered by 0.3 at 45 degrees all across its 60 mm of deck: half a square of 0.3 times
    /// that.</summary>
    [Fact]
    public void An_end_s_relief_is_a_prism_across_the_deck()
    {
        var set = Workbench.Made(Workbench.Straight(400), Workbench.Printer, new() { Engrave = false, Joint = new() { FaceRelief = 0.3 } });
        Assert.Equal(0.3 * 0.3 / 2 * 60, set.Sections[0].Volumes.Relief, 1e-2);
        Assert.All(set.Sections, s => Assert.Equal(s.Volumes.Finished, s.Solid.ColumnVolume, 1e-5 * s.Volumes.Finished));
    }

    /// <summary>The lettering of a short piece keeps off what its joints bring: what it takes out is deck alone, and volumes add up.</summary>
    [Fact]
    public void Volumes_of_short_pieces_add_up_with_their_lettering()
    {
        var set = Workbench.Made(Workbench.Straight(150), Workbench.Printer, new() { LongestSection = 50 });
        Assert.Equal(3, set.Sections.Count);
        Assert.All(set.Sections, s => Assert.True(s.Volumes.Engraving > 1));
        Assert.All(set.Sections, s => Assert.Equal(s.Volumes.Finished, s.Solid.ColumnVolume, 1e-5 * s.Volumes.Finished));
    }

    /// <summary>More than ten times as long as wide (common practice, no source) a piece is advised a brim.</summary>
    [Theory]
    [InlineData(198, 0)]
    [InlineData(206, 5)]
    public void A_slender_piece_is_advised_a_brim(double length, double brim)
    {
        var outcome = SectionMaker.Make(Workbench.Straight(length, change: s => s with { Deck = s.Deck with { Width = 20 } }), Workbench.Printer, new());
        Assert.Equal(brim, Assert.Single(outcome.Value!.Sections).Brim);
        Assert.Equal(brim > 0, outcome.Findings.Any(f => f.Code == "PF6008" && f.Message.Contains("10.3 times", StringComparison.Ordinal)));
    }

    /// <summary>On straight track along x a place's chainage is its x.</summary>
    [Fact]
    public void What_hangs_free_is_told_by_its_chainage()
    {
        var plan = Workbench.Straight(150, change: s => s with { StartRamp = new(Length: 60), Ribs = new() { Pitch = 80, LongitudinalCount = 0 } })
            with
        { CutCandidates = [] };
        var outcome = SectionMaker.Make(plan, Workbench.Printer, new());
        var section = Assert.Single(outcome.Value!.Sections);
        double x = section.ToLayout.Apply(section.Overhangs.LargestAt).X;
        string told = Regex.Match(Assert.Single(outcome.Findings, f => f.Code == "PF6007").Message, @"about chainage (\d+)").Groups[1].Value;
        Assert.Equal(x, double.Parse(told, CultureInfo.InvariantCulture), 0.51);
        Assert.True(Math.Abs(x - 275) > 3, "not the middle of the piece");
    }

    [Fact]
    public void Figures_of_findings_are_rounded_to_hundredths()
    {
        var hole = SectionFindings.OpeningTooNarrow("k", "hole is", 0.999, 1.2, 0.999, 0.999);
        Assert.Contains("Give 1 mm or more, print with a nozzle of 0.99 mm", hole.Remedy, StringComparison.Ordinal);
        Assert.Equal("1", hole.Cure!.Value);
        Assert.Contains("of A B C D E F G H …;", SectionFindings.LettersLeftOut("k", [.. "ABCDEFGHI".Select(c => c.ToString())], "X").Message,
            StringComparison.Ordinal);
        Assert.Contains("of A B C D E F G H;", SectionFindings.LettersLeftOut("k", [.. "ABCDEFGH".Select(c => c.ToString())], "X").Message,
            StringComparison.Ordinal);
    }

    /// <summary>The figures at which the forecast was held against a slicer (decision 0041); those of first layer, corners and retraction are common practice,
    /// no source.</summary>
    [Fact]
    public void Paces_are_those_that_were_held_against_a_slicer()
    {
        PrintSpeeds slow = PrintSpeeds.Of(PrintPace.Ordinary), fast = PrintSpeeds.Of(PrintPace.Fast);
        Assert.Equal((30, 50, 100, 1000), (slow.OuterWall, slow.Wall, slow.Infill, slow.Acceleration));
        Assert.Equal((120, 200, 250, 5000), (fast.OuterWall, fast.Wall, fast.Infill, fast.Acceleration));
        Assert.Equal((30, 50), (slow.FirstLayer, fast.FirstLayer));
        Assert.Equal((10, 10), (slow.CornerJump, fast.CornerJump));
        Assert.Equal((15, 60), (slow.SmallWall, fast.SmallWall)); // half of the wall's, at most
        Assert.Equal((130, 400), (slow.Travel, fast.Travel));
        Assert.Equal((0.1, 0.05), (slow.Retraction, fast.Retraction));
        Assert.Equal((60, 60), (slow.Bridge, fast.Bridge));
        Assert.Equal((12, 22), (slow.Flow, fast.Flow));
    }

    /// <summary>Making lines stops when it is told to, before anything is laid.</summary>
    [Fact]
    public void Lines_are_not_made_once_the_run_is_stopped()
    {
        var set =
            Workbench.Made(Workbench.Straight(60, change: s => s with { Tactile = new() { Inset = 9, Width = 5, Depth = 0.5, Fit = 0.125, Rise = 0.25 } }),
                Workbench.Printer, new());
        var piece = Assert.Single(set.Lines.Pieces);
        Assert.Equal(0, (piece.WrittenMesh().Box().High - piece.Size).Length, 1e-4);
        using var stop = new CancellationTokenSource();
        stop.Cancel();
        Assert.Throws<OperationCanceledException>(() => LineMaker.Of(new FacetedPlan(set.Plan), set.Sections, Workbench.Printer, 0.1, Memory.None, stop.Token));
    }
}
