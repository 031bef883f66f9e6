using System.Globalization;
using PlatformForge.Exports;
using PlatformForge.Exports.Files;
using PlatformForge.Exports.Folders;
using PlatformForge.Exports.Manifests;
using PlatformForge.Exports.Stl;
using PlatformForge.Exports.ThreeMf;
using PlatformForge.Exports.Workshop;
using PlatformForge.Geometry;
using PlatformForge.Platforms;
using PlatformForge.Platforms.Specs;
using PlatformForge.Projects.Presets;
using PlatformForge.Projects.Runs;
using PlatformForge.Projects.Watches;
using PlatformForge.Proofs;
using PlatformForge.Sections.Forms;
using PlatformForge.Sections.Rules;
using PlatformForge.Solids;
using PlatformForge.Solids.Kernel;
using PlatformForge.Tests.Meshes;
using PlatformForge.Tests.Projects;
using PlatformForge.Tests.Sections;
using PlatformForge.Track;
using PlatformForge.Units;
using PlatformForge.Verification;
using Xunit;

namespace PlatformForge.Tests.Masonry;

/// <summary>Lines and strips that are prints of their own: inlays, and strips in rebates.</summary>
public class PrintedLineTests
{
    private static readonly Lazy<Dossier> Emberlow = new(() => DesignRun.Design(Samples.Read(PresetShelf.Sample("emberlow")!).Value!, RunWatch.None).Value!);

    private static readonly Lazy<(Manifest Manifest, OutputFile[] Files)> Written = new(() =>
    {
        var set = OutputFiles.Made(Emberlow.Value, new() { Pictures = false, Drawings = false, Tables = false, Report = false, Masks = false });
        var listed = OutputFolder.Listing(set.Manifest, set.Files);
        return (listed, [.. set.Files, new(Manifest.FileName, ManifestForm.ToBytes(listed))]);
    });

    [Theory]
    [InlineData(Side.Left)]
    [InlineData(Side.Right)]
    public void An_inlay_fills_what_is_cut_for_it_and_nothing_more(Side side)
    {
        SectionSet whole = Made(s => s, side), inlaid = Made(s => s with { WhiteLine = Inlay }, side);
        var piece = Assert.Single(inlaid.Lines.Pieces);
        Assert.Equal(whole.Sections[0].Solid.ColumnVolume, inlaid.Sections[0].Solid.ColumnVolume + piece.Solid.ColumnVolume, 1e-6);
        Assert.Equal(400 * 1.25 * 0.4, piece.Solid.ColumnVolume, 1e-6); // from end to end, as wide and as deep as stated

        // In the coordinates of its section's file it lies on the bed, as the deck does, and comes no higher than it is deep.
        var (low, high) = piece.WrittenMesh().Box();
        Assert.Equal(inlaid.Sections[0].ToLayout, piece.ToLayout);
        Assert.Equal((0, 0.4), (Math.Round(low.Z, 4), Math.Round(high.Z, 4)));
        Assert.All((Mesh[])[piece.Solid.Mesh, piece.WrittenMesh(), inlaid.Sections[0].PrintMesh()],
            m => Assert.True(MeshCheck.Inspect(m) is { IsClosed: true, DegenerateTriangles: 0, Components: 1 }));
        Assert.All(piece.Solid.Mesh.Paints, p => Assert.Equal((byte)Paint.Line, p));
        Assert.Empty(inlaid.Lines.Plates);
    }

    [Theory]
    [InlineData(StripPattern.Plain)]
    [InlineData(StripPattern.Studs)]
    [InlineData(StripPattern.Ribs)]
    public void A_strip_stands_on_its_rebate_with_air_beside_it_and_rises_over_the_deck(StripPattern pattern)
    {
        var spec = new TactileSpec { Inset = 9, Width = 5, Depth = 0.5, Fit = 0.125, Rise = 0.25, Pattern = pattern, Stud = 0.8, Pitch = 1.6 };
        var set = Made(s => s with { Tactile = spec }, Side.Left);
        var piece = Assert.Single(set.Lines.Pieces);
        Assert.True(MeshCheck.Inspect(piece.Solid.Mesh) is { IsClosed: true, DegenerateTriangles: 0, Components: 1 });
        Assert.True(MeshCheck.Inspect(piece.WrittenMesh()) is { IsClosed: true, DegenerateTriangles: 0 });
        var (low, high) = piece.Solid.Mesh.Box();
        Assert.Equal((19.5, 20.25), (low.Z, high.Z)); // the deck is 20 over the baseboard

        // Closed form: body with its air taken off all round, and what stands on it.
        double width = 5 - 0.25, length = 400 - 0.25, body = width * length;
        double volume = pattern switch
        {
            StripPattern.Plain => body * 0.75,
            StripPattern.Studs => (body * 0.5) + (Math.Floor(length / 1.6) * Math.Floor(width / 1.6) * 0.64 * 0.25),
            _ => (body * 0.5) + (Math.Floor(width / 1.6) * (length - 0.8) * 0.8 * 0.25),
        };
        Assert.Equal(volume, piece.Solid.ColumnVolume, 2e-4 * volume);

        // It is printed right way up: what is its underside on the layout lies on the bed.
        Assert.Equal(1, piece.ToLayout.Row2.Z, 1e-9);
        Assert.Equal(0, piece.WrittenMesh().Box().Low.Z, 1e-6);
        Assert.Equal(0, set.Sections[0].Overhangs.Unsupported);
        Assert.Equal(PrintPose.DeckDown, set.Sections[0].Pose);
        Assert.Equal(piece, Assert.Single(Assert.Single(set.Lines.Plates).Pieces).Piece);
    }

    [Fact]
    public void Files_of_lines_are_named_by_what_they_are()
    {
        var lines = Written.Value.Manifest.Lines;
        Assert.All(lines, l => Assert.Matches($"^stl/[a-z-]+-0{l.Section}-{(l.IsInlay ? "white-line" : "tactile-strip")}-[12]\\.stl$", l.Stl));
        Assert.Equal(lines.Count, lines.Select(l => l.Stl).Distinct().Count());
    }

    /// <summary>Where a strip is narrower than the pitch of its ribs it has one all the same, half a pitch's air from its ends.</summary>
    [Fact]
    public void A_strip_narrower_than_a_pitch_has_one_rib()
    {
        var spec = new TactileSpec { Inset = 9, Width = 1.5, Depth = 0.5, Fit = 0.125, Rise = 0.25, Pattern = StripPattern.Ribs, Stud = 0.75, Pitch = 1.75 };
        var plan = Workbench.Straight(400, change: s => s with { Tactile = spec });
        var line = Assert.Single(plan.Body.Lines, l => l.Made.Name == LineMake.Tactile);
        double volume = SolidRaiser.Volume([.. PlatformForge.Solids.Bodies.LineBlocks.Of(new(plan), line, 200, 600)]);
        Assert.Equal((399.75 * 1.25 * 0.5) + ((399.75 - 1) * 0.75 * 0.25), volume, 1e-3);
    }

    [Fact]
    public void Lines_end_at_the_ramps_tops_and_at_each_cut_and_follow_the_curve()
    {
        var dossier = Emberlow.Value;
        var (set, plan) = (dossier.Platforms[0].Sections, dossier.Platforms[0].Sections.Plan);
        Assert.Equal(2 * 2, set.Lines.Pieces.Count); // the first section is the ramp
        double trim = set.Joint.EndTrim;
        foreach (var piece in set.Lines.Pieces)
        {
            var section = set.Sections[piece.Section - 1];
            var band = plan.Body.Lines[piece.Line - 1];
            Assert.True(MeshCheck.Inspect(piece.Solid.Mesh) is { IsClosed: true, DegenerateTriangles: 0, Components: 1 });
            Assert.Equal(plan.Profile.StartHead, band.From);
            double from = Math.Max(section.From + (section.Number > 1 ? trim : 0), band.From + piece.Made.Fit);
            double to = Math.Min(section.To - (section.Number < section.Count ? trim : 0), band.To - piece.Made.Fit);
            double[] at = [.. piece.Solid.Mesh.Vertices.Select(v => plan.Chart.Locate(new(v.X, v.Y)).Chainage)];
            Assert.Equal(from, at.Min(), 0.01); // the facets' chords
            Assert.Equal(to, at.Max(), 0.01);
            Assert.All(piece.Solid.Mesh.Vertices, v =>
            {
                var (s, d) = plan.Chart.Locate(new(v.X, v.Y));
                Assert.InRange(Math.Abs(d), band.Near.At(s) + piece.Made.Fit - 0.02, band.Far.At(s) - piece.Made.Fit + 0.02);
            });
        }
    }

    [Fact]
    public void In_its_package_a_section_is_a_group_of_its_body_and_its_inlay_and_strips_lie_on_a_bed_of_their_own()
    {
        var (manifest, files) = Written.Value;
        Assert.Equal(4, manifest.Lines.Count);
        foreach (var line in manifest.Lines)
        {
            var model = ThreeMfReader.Read(Bytes(files, line.Plate), line.Plate).Value!;
            var own = Assert.Single(model.Objects, o => o.Id == line.ObjectId);
            Assert.Equal(Solid(files, line.Stl).TriangleCount, own.Mesh!.TriangleCount);
            if (line.IsInlay)
            {
                var group = Assert.Single(model.Objects, o => o.Components.Any(c => c.ObjectId == line.ObjectId));
                Assert.Equal((line.Section, 2), (group.Id, group.Components.Count));
                Assert.All(group.Components, c => Assert.Equal(AffineMotion.Identity, c.Placement));
                Assert.Contains(model.Items, i => i.ObjectId == group.Id);
            }
            else
            {
                Assert.Contains(model.Items, i => i.ObjectId == line.ObjectId);
            }
        }

        Assert.DoesNotContain(FolderVerifier.Verify(new WrittenFolder(files)).Findings, f => f.Severity == Severity.Error);
    }

    [Theory]
    [InlineData(0, 0, 0.1, "PF8050")] // stands off its floor
    [InlineData(0, 0, -0.1, "PF8050")] // stands in it
    [InlineData(0, 0.4, 0, "PF8050")] // beside its rebate
    public void A_strip_that_does_not_fit_its_section_is_refused(double x, double y, double z, string code)
    {
        var (manifest, files) = Written.Value;
        var line = manifest.Lines.First(l => !l.IsInlay);
        var spoilt = manifest with
        {
            Lines = [.. manifest.Lines.Select(l => l == line ? l with { ToLayout = l.ToLayout.Then(RigidTransform.Shift(x, y, z)) }
            : l)]
        };
        OutputFile[] other = [.. files.Where(f => f.Path != Manifest.FileName), new(Manifest.FileName, ManifestForm.ToBytes(spoilt))];
        Assert.Contains(FolderVerifier.Verify(new WrittenFolder(other)).Findings, f => f.Code == code && f.Message.Contains(line.Name,
            StringComparison.Ordinal));
    }

    [Fact]
    public void A_group_with_its_inlay_left_out_or_moved_is_refused()
    {
        var (manifest, files) = Written.Value;
        var line = manifest.Lines.First(l => l.IsInlay);
        var model = ThreeMfReader.Read(Bytes(files, line.Plate), line.Plate).Value!;
        foreach (var change in (Func<ThreeMfComponent, ThreeMfComponent?>[])[c => c.ObjectId == line.ObjectId ? null : c, c => c.ObjectId == line.ObjectId
            ? c with { Placement = c.Placement with { Shift = new(0.3, 0, 0) } } : c])
        {
            var spoilt = model
                with
            { Objects = [.. model.Objects.Select(o => o with { Components = [.. o.Components.Select(change).OfType<ThreeMfComponent>()] })] };
            OutputFile[] other = [.. files.Where(f => f.Path != line.Plate), new(line.Plate, ThreeMfWriter.ToBytes(spoilt))];
            Assert.Contains(FolderVerifier.Verify(new WrittenFolder(other)).Findings, f => f.Code == "PF8049");
        }
    }

    [Fact]
    public void What_is_printed_in_its_colour_has_no_stencil_and_takes_no_paint()
    {
        var platform = Emberlow.Value.Platforms[0];
        Assert.DoesNotContain(MaskPiece.Of(platform.Sections), m => m.Slot is not null);
        var areas = SurfaceAreas.Of(platform.Sections);
        Assert.Equal((0, 0), (areas[(int)Paint.Line], areas[(int)Paint.Tactile]));
        var painted = Made(s => s with { WhiteLine = new() { Inset = 1, Width = 1.25 } }, Side.Left);
        Assert.Equal(500 + (2 * 1.25 * 0.2), SurfaceAreas.Of(painted)[(int)Paint.Line], 1e-3); // and at both ends the skin that shows it
    }

    [Fact]
    public void What_cannot_be_made_is_refused_with_a_figure_that_is_taken()
    {
        Assert.Empty(Check(Inlay, null));
        Refused("PF5042", Inlay with { Width = 0.5 }, (l, v) => l with { Width = v });
        Refused("PF5043", Inlay with { Depth = 0.2 }, (l, v) => l with { Depth = v });
        var odd = Assert.Single(Check(Inlay with { Depth = 0.5 }, null));
        Assert.Equal(("PF5044", Severity.Warning), (odd.Code, odd.Severity));
        Assert.Empty(Check(Inlay with { Depth = Figure(odd) }, null));
        Assert.Contains(Check(null, new() { Inset = 9, Stud = 0.5 }), f => f.Code == "PF5045");
        var told = Assert.Single(Check(null, new() { Inset = 9 }));
        Assert.Equal(("PF5046", Severity.Note), (told.Code, told.Severity));
    }

    /// <summary>A strip of 4 mm from 19 to 23, a hole of 1.2 with a printed line of 0.4 about it: in the way from 18 to 24.</summary>
    [Theory]
    [InlineData(21, true)]
    [InlineData(18.1, true)]
    [InlineData(17.9, false)]
    [InlineData(23.9, true)]
    [InlineData(24.1, false)]
    public void A_hole_under_a_strip_is_told(double inset, bool meets)
    {
        var hole = new HoleSpec(250, inset, InsetFrom.Edge) { Diameter = 1, Fit = 0.2 };
        var plan = Workbench.Straight(96, change: s => (s with { WhiteLine = null, Tactile = new() { Inset = 19, Width = 4 } }).With<HoleSpec>([hole]));
        var found = LineRule.Check(plan, Workbench.Printer).Where(f => f.Code == "PF5041").ToArray();
        Assert.Equal(meets ? 1 : 0, found.Length);
        Assert.AllOrNone(found, f => Assert.Contains(FormattableString.Invariant($"at 250.0 mm along the track and {inset - 19:F1} mm ")
            + "from", f.Message, StringComparison.Ordinal));
    }

    [Fact]
    public void Strips_keep_off_the_line_the_decks_end_holes_and_bodies_that_pass_over()
    {
        Fault("PF4151", s => s with { WhiteLine = Inlay, Tactile = new() { Inset = 2 } }, (s, v) => s with { Tactile = s.Tactile! with { Inset = v } });
        Fault("PF4152", s => s with { Face = s.Face with { BodiesPassOver = true }, Tactile = new() { Inset = 9 } }, (s,
            v) => s with { Tactile = s.Tactile! with { Rise = v } });
        var deep = Findings(s => s with { Tactile = new() { Inset = 9, Depth = 1.1 } });
        Assert.Contains(deep, f => f.Key.EndsWith("tactile.depth", StringComparison.Ordinal) && f.Severity == Severity.Error);
        var off = Findings(s => s with { Tactile = new() { Inset = s.Deck.Width - 2 } });
        Assert.Contains(off, f => f.Severity == Severity.Error);
    }

    private static readonly WhiteLineSpec Inlay = new() { Inset = 1, Width = 1.25, Form = LineForm.Inlay };

    private static void Fault(string code, Func<PlatformSpec, PlatformSpec> change, Func<PlatformSpec, double, PlatformSpec> mend)
    {
        var fault = Assert.Single(Findings(change), f => f.Severity == Severity.Error);
        Assert.Equal(code, fault.Code);
        Assert.DoesNotContain(Findings(s => mend(change(s), Figure(fault))), f => f.Code == code);
    }

    private static void Refused(string code, WhiteLineSpec line, Func<WhiteLineSpec, double, WhiteLineSpec> mend)
    {
        var fault = Assert.Single(Check(line, null));
        Assert.Equal((code, Severity.Error), (fault.Code, fault.Severity));
        Assert.Empty(Check(mend(line, Figure(fault)), null));
    }

    private static IReadOnlyList<Finding> Findings(Func<PlatformSpec, PlatformSpec> change) => PlatformPlanner.Plan(Platforms.Bench.Straight(change)).Findings;

    private static double Figure(Finding fault) => double.Parse(fault.Cure!.Value, CultureInfo.InvariantCulture);

    private static List<Finding> Check(WhiteLineSpec? line, TactileSpec? tactile) =>
        [.. LineRule.Check(Workbench.Straight(96, change: s => s with { WhiteLine = line, Tactile = tactile }), Workbench.Printer)];

    private static SectionSet Made(Func<PlatformSpec, PlatformSpec> change, Side side) =>
        Workbench.Made(Workbench.Straight(400, side, s => change(s with { Coping = s.Coping with { SlabLength = 0 } })),
            Workbench.Printer with { Bed = PrinterSpec.Oblong(500, 500, 250).Bed }, new());

    private static byte[] Bytes(IEnumerable<OutputFile> files, string path) => files.First(f => f.Path == path).Bytes;

    private static Mesh Solid(IEnumerable<OutputFile> files, string path) => StlReader.Read(Bytes(files, path), path).Value!.Mesh;
}
