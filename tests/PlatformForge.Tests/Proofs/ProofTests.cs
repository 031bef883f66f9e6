using System.Globalization;
using System.Text;
using PlatformForge.Exports.Files;
using PlatformForge.Exports.Manifests;
using PlatformForge.Exports.Stl;
using PlatformForge.Exports.ThreeMf;
using PlatformForge.Geometry;
using PlatformForge.Projects.Runs;
using PlatformForge.Tests.Meshes;
using PlatformForge.Track;
using PlatformForge.Units;
using PlatformForge.Verification;
using Xunit;

namespace PlatformForge.Tests.Proofs;

public class ProofTests
{
    private static ProofSets Pendlewick => ProofSets.Pendlewick.Value;

    [Fact]
    public void There_is_one_of_everything_that_is_printed_before_a_platform()
    {
        var kinds = Pendlewick.Set.Manifest.Proofs.CountBy(p => p.Kind).ToDictionary(StringComparer.Ordinal);
        Assert.Equal(1, kinds["strip"]);
        Assert.Equal(1, kinds["coupon of joints"]);
        Assert.Equal(1, kinds["coupon of holes"]);
        Assert.Equal(1, kinds["test slice"]);
        Assert.Equal(3, kinds["slide gauge"]);
        Assert.Equal(2, kinds["shoe of a throw board"]);
        Assert.Equal(Pendlewick.Dossier.Platforms[0].Sections.Sections.Count, kinds["footprint"]);
    }

    [Fact]
    public void Every_solid_is_watertight_by_the_mesh_checker_as_it_was_written_and_hangs_nowhere_free()
    {
        foreach (var proof in Pendlewick.Set.Manifest.Proofs)
        {
            var report = MeshCheck.Inspect(Pendlewick.Written(proof));
            Assert.True(report is { OpenEdges: 0, DegenerateTriangles: 0, Components: 1 }, $"{proof.Name}: {report}");
            Assert.Equal(Pendlewick.Made(proof).Solid.ColumnVolume, report.Volume, 1e-4 * report.Volume);
            Assert.True(Pendlewick.Made(proof).Overhangs.Unsupported < 0.2, $"{proof.Name}: {Pendlewick.Made(proof).Overhangs}");
        }
    }

    [Fact]
    public void A_bed_holds_what_the_manifest_says_each_the_same_solid_as_its_own_file()
    {
        foreach (var plate in Pendlewick.Set.Manifest.Proofs.GroupBy(p => p.Plate))
        {
            var model = ThreeMfReader.Read(Pendlewick.File(plate.Key), plate.Key).Value!;
            Assert.Equal(plate.Select(p => p.ObjectId).Order(), model.Items.Select(i => i.ObjectId).Order());
            Assert.All(plate, p => Assert.Equal(Pendlewick.Written(p).Volume(), model.Objects.Single(o => o.Id == p.ObjectId).Mesh!.Volume(), 0.01));
        }
    }

    [Fact]
    public void Bytes_repeat()
    {
        var again = ProofSets.Files(Pendlewick.Dossier);
        Assert.All(Pendlewick.Set.Files.Where(f => f.Path.StartsWith("gauges/", StringComparison.Ordinal)),
            f => Assert.Equal(f.Bytes, again.Files.Single(g => g.Path == f.Path).Bytes));
    }

    [Fact]
    public void A_folder_with_gauges_is_verified_with_them()
    {
        Assert.True(FolderVerifier.Verify(Pendlewick.Folder(m => m)).IsClear);
        Assert.Empty(Codes(m => m));

        // A gauge that is said to stand elsewhere, one of another height, and a slice that is not where its section is.
        Assert.Contains("PF7522", Codes(Moved("slide gauge", new(0, 0, -0.4))));
        Assert.Contains("PF7520", Codes(Moved("slide gauge", new(0, 0, 0.4))));
        Assert.Contains("PF7521", Codes(Moved("slide gauge", new(1.5, 1.5, 0))));
        Assert.Contains("PF7524", Codes(Moved("test slice", new(3, 3, 0))));
        Assert.Contains("PF7523",
            Codes(m => m with { Proofs = [.. m.Proofs.Select(p => p.Rides is { } r ? p with { Rides = r with { Track = "down" } } : p)] }));
    }

    [Fact]
    public void A_gauge_with_a_hole_in_its_mesh_is_found()
    {
        var gauge = Pendlewick.Of("slide gauge").First();
        var whole = Pendlewick.Written(gauge);
        OutputFile[] files =
            [.. Pendlewick.Set.Files.Select(f => f.Path == gauge.Stl
                ? new OutputFile(f.Path, StlWriter.ToBytes(whole with { Triangles = whole.Triangles[3..] }, gauge.Name)) : f)];
        var found = ProofVerifier.Alone(Pendlewick.Set.Manifest, files, DesignCopy.Of(Pendlewick.Dossier), ProofRun.Sections(Pendlewick.Dossier));
        Assert.Contains(found, f => f is { Code: "PF8010", Kind: FaultKind.Mesh } && f.Message.Contains(gauge.Stl, StringComparison.Ordinal));
    }

    [Fact]
    public void A_plate_of_gauges_that_cannot_be_read_is_told()
    {
        string plate = Pendlewick.Set.Manifest.Proofs[0].Plate;
        OutputFile[] files = [.. Pendlewick.Set.Files.Select(f => f.Path == plate ? new OutputFile(f.Path, f.Bytes[..^40]) : f)];
        var found = ProofVerifier.Alone(Pendlewick.Set.Manifest, files, DesignCopy.Of(Pendlewick.Dossier), ProofRun.Sections(Pendlewick.Dossier));
        Assert.Contains(found, f => f.Severity == Severity.Error && f.Message.Contains(plate, StringComparison.Ordinal));
    }

    [Fact]
    public void The_table_has_the_figures_of_the_written_solids()
    {
        var rows = Encoding.UTF8.GetString(Pendlewick.File("gauges/figures.csv")).Split('\n', StringSplitOptions.RemoveEmptyEntries).Skip(1).Select(Cells)
            .ToArray();
        foreach (var proof in Pendlewick.Set.Manifest.Proofs)
        {
            double Told(string what) => double.Parse(rows.Single(r => r[2] == proof.Name && r[4] == what)[5], CultureInfo.InvariantCulture);
            var mesh = Pendlewick.Written(proof);
            var (low, high) = mesh.Box();
            Assert.Equal(high.X - low.X, Told("size on the bed, x"), 0.001);
            Assert.Equal(high.Y - low.Y, Told("size on the bed, y"), 0.001);
            Assert.Equal(high.Z - low.Z, Told("height on the bed"), 0.001);

            // No more plastic than the solid's volume at PLA's 1.24 g/cm³, and not less than its walls.
            double solid = mesh.Volume() * 1.24 / 1000;
            Assert.InRange(Told("plastic"), solid * 0.3, solid * 1.02);
        }
    }

    [Fact]
    public void The_strip_is_a_hundred_millimetres_along_the_bed_and_across_it_in_both_its_files()
    {
        var strip = Pendlewick.Of("strip").Single();
        var model = ThreeMfReader.Read(Pendlewick.File(strip.Plate), strip.Plate).Value!;
        Assert.Equal((new Point3(1, 0, 0), new Point3(0, 1, 0)), (model.Items[0].Placement.X, model.Items[0].Placement.Y));
        foreach (var mesh in (Mesh[])[Pendlewick.Written(strip), model.Objects[0].Mesh!])
        {
            // At half a block's height, well above legs and chamfers, only blocks are cut.
            var (x, y) = (Faces(mesh, 6, along: true), Faces(mesh, 6, along: false));
            foreach (double[] faces in (double[][])[x, y])
            {
                double over = faces[^1] - faces[0], between = faces[2] - faces[1];
                Assert.Equal(110, over, 0.001);
                Assert.Equal(90, between, 0.001);
                Assert.Equal(100, (over + between) / 2, 0.001);
            }
        }
    }

    [Fact]
    public void A_footprint_lies_under_its_section_and_has_its_outline()
    {
        foreach (var (proof, section) in Pendlewick.Of("footprint").OrderBy(p => p.Name, StringComparer.Ordinal)
            .Zip(Pendlewick.Dossier.Platforms[0].Sections.Sections))
        {
            var placed = Pendlewick.Placed(proof);
            Assert.Equal(0.6, placed.Box().High.Z, 0.001);
            var outline = ConvexRing.Hull(placed.Vertices.Select(v => new Point2(v.X, v.Y)));
            var own = ConvexRing.Hull(section.Solid.Mesh.Vertices.Select(v => new Point2(v.X, v.Y)));
            Assert.Equal(ConvexRing.Area(own), ConvexRing.Area(outline), 0.002 * ConvexRing.Area(own));
            Assert.True(own.Max(p => Outside(outline, p)) < 0.05 && outline.Max(p => Outside(own, p)) < 0.15, proof.Name);
        }
    }

    [Fact]
    public void A_test_slice_is_ten_millimetres_of_the_platform_where_it_is_tightest()
    {
        var proof = Pendlewick.Of("test slice").Single();
        var slice = Pendlewick.Placed(proof);
        var plan = Pendlewick.Dossier.Platforms[0].Plan;
        double at = Pendlewick.Figure(proof, "chainage of its middle");
        double[] chainages = [.. slice.Vertices.Select(v => plan.Chart.Locate(new(v.X, v.Y)).Chainage)];
        Assert.Equal(at - 5, chainages.Min(), 0.02);
        Assert.Equal(at + 5, chainages.Max(), 0.02);

        // Nowhere along the level part does a vehicle come nearer to the coping than here, by the sweep's own stations.
        double Left(double s) => plan.CopingFront.At(s)
            - plan.Requirement.Swept[(int)Math.Round((s - plan.Requirement.Stations[0]) / (plan.Requirement.Stations[1] - plan.Requirement.Stations[0]))];
        Assert.True(Enumerable.Range((int)plan.Profile.StartHead + 1, (int)(plan.Profile.EndHead - plan.Profile.StartHead) - 1).Min(s => Left(s)) > Left(at)
            - 0.03);

        // The outline of a cut through its middle is the plan's: coping, top, back.
        var offsets = slice.Vertices.Select(v => plan.Side.Reach(plan.Chart.Locate(new(v.X, v.Y)).Offset)).ToArray();
        Assert.Equal(plan.CopingFront.At(at), offsets.Min(), 0.05);
        Assert.Equal(plan.Back.At(at), offsets.Max(), 0.05);
        Assert.Equal(plan.Site.RailTop + 12, slice.Box().High.Z, 0.15);
        Assert.Equal(0, slice.Box().Low.Z, 0.001);
    }

    // How far a point lies outside a convex ring.
    private static double Outside(Point2[] ring, Point2 p) =>
        Enumerable.Range(0, ring.Length).Max(i => Point2.Cross(p - ring[i], ring[(i + 1) % ring.Length] - ring[i])
            / (ring[(i + 1) % ring.Length] - ring[i]).Length);

    private static string[] Codes(Func<Manifest, Manifest> told) =>
        [.. ProofVerifier.Alone(told(Pendlewick.Set.Manifest), Pendlewick.Set.Files, DesignCopy.Of(Pendlewick.Dossier), ProofRun.Sections(Pendlewick.Dossier))
            .Select(f => f.Code).Distinct()];

    private static Func<Manifest, Manifest> Moved(string kind, Point3 by) => m => m with
    {
        Proofs = [.. m.Proofs.Select(p => p.Kind == kind ? p with { ToLayout = p.ToLayout!.Then(RigidTransform.Shift(by.X, by.Y, by.Z)) } : p)],
    };

    // Places of upright faces that a level cut meets, square to an axis, rising.
    private static double[] Faces(Mesh mesh, double level, bool along)
    {
        var found = new SortedSet<double>();
        for (int i = 0; i < mesh.Triangles.Length; i += 3)
        {
            Point3[] t = [.. mesh.Triangles[i..(i + 3)].Select(k => mesh.Vertices[k])];
            double Across(Point3 p) => along ? p.X : p.Y;
            double Beside(Point3 p) => along ? p.Y : p.X;
            bool flat = t.Max(Across) - t.Min(Across) < 1e-4, cut = t.Min(p => p.Z) < level && t.Max(p => p.Z) > level, own = t.Max(Beside) < 12;
            if (flat && cut && own)
            {
                found.Add(Math.Round(t[0].X * (along ? 1 : 0) + (t[0].Y * (along ? 0 : 1)), 4));
            }
        }

        return [.. found];
    }

    private static string[] Cells(string row)
    {
        var cells = new List<string>();
        foreach (var piece in row.Split('"').Select((p, i) => (p, i)))
        {
            if (piece.i % 2 == 1)
            {
                cells[^1] += piece.p;
                continue;
            }

            string[] parts = piece.p.Split(',');
            cells = cells.Count == 0 ? [.. parts] : [.. cells[..^1], cells[^1] + parts[0], .. parts[1..]];
        }

        return [.. cells];
    }
}
