using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Requests;
using PlatformForge.Sections.Beds;
using PlatformForge.Sections.Forms;
using PlatformForge.Solids;
using PlatformForge.Solids.Bodies;
using PlatformForge.Solids.Kernel;
using PlatformForge.Tests.Meshes;
using Xunit;

namespace PlatformForge.Tests.Sections;

/// <summary>The sections of the demo platform on a curve: what a builder would check with the pieces in hand.</summary>
public class PendlewickSectionTests
{
    /// <summary>What a 32-bit float rounds at the size of a section, mm.</summary>
    private const double Single = 2e-5;

    private static SectionSet Set => Workbench.PendlewickSections;

    private static PlatformPlan Plan => Workbench.PendlewickPlan;

    // Written down, so that finding the tests makes no sections; that these are all of them is held below.
    public static TheoryData<int> Numbers => [1, 2, 3, 4, 5];

    [Fact]
    public void Sections_run_from_end_to_end_and_are_numbered_by_chainage()
    {
        Assert.Equal(Enumerable.Range(1, Set.Sections.Count), Set.Sections.Select(s => s.Number));
        Assert.Equal(Set.Sections.Count, Numbers.Count);
        Assert.Equal(270, Set.Sections[0].From);
        Assert.Equal(1000, Set.Sections[^1].To);
        Assert.All(Set.Sections.Zip(Set.Sections.Skip(1)), pair => Assert.Equal(pair.First.To, pair.Second.From));
        Assert.All(Set.Sections, s => Assert.Equal($"up side {s.Number} of {Set.Sections.Count}", s.Name));
    }

    [Fact]
    public void Cuts_fall_on_coping_joints_clear_of_everything()
    {
        foreach (double cut in Set.Cuts)
        {
            Assert.Contains(cut, Plan.CopingJoints);
            Assert.DoesNotContain(Set.Plan.Ribs, r => r.Kind == RibKind.Transverse && cut > r.From - 2 && cut < r.To + 2);
            Assert.DoesNotContain(Plan.Sockets, s => Math.Abs(cut - s.Chainage) < (s.Along / 2) + 2);
            Assert.DoesNotContain(Plan.PostHoles, h => Math.Abs(cut - h.Chainage) < (h.Diameter / 2) + 2);
        }
    }

    [Fact]
    public void Both_ramps_are_pieces_of_their_own_and_the_rest_is_shared_out_evenly()
    {
        Assert.Equal(366, Set.Cuts[0], 6);
        Assert.Equal(904, Set.Cuts[^1], 6);
        var level = Set.Sections.Skip(1).SkipLast(1).Select(s => s.Length).ToArray();
        Assert.True(level.Max() - level.Min() <= 12.5, "within one coping slab");
    }

    [Fact]
    public void Plain_sections_add_up_to_the_whole()
    {
        double whole = SolidRaiser.Raise(PlatformBody.Blocks(Set.Plan).All).ColumnVolume;
        Assert.Equal(whole, Set.Sections.Sum(s => s.Volumes.Plain), whole * 1e-9);
    }

    [Theory]
    [MemberData(nameof(Numbers))]
    public void A_section_is_the_plain_one_less_trim_bores_and_letters_plus_its_end_walls(int number)
    {
        var section = Set.Sections[number - 1];
        var v = section.Volumes;

        // The kernel's plan grid moves edges by up to 6e-5 mm.
        Assert.Equal(v.Plain - v.Trim + v.EndWalls - v.Bores - v.Relief - v.Engraving, section.Solid.ColumnVolume, section.Solid.ColumnVolume * 1e-5);
        Assert.All(new[] { v.Plain, v.Trim, v.EndWalls, v.Bores, v.Relief, v.Engraving }, part => Assert.True(part > 0));
    }

    [Theory]
    [MemberData(nameof(Numbers))]
    public void A_section_is_a_sound_mesh_that_lies_on_the_bed(int number)
    {
        var section = Set.Sections[number - 1];
        var mesh = section.PrintMesh();
        var report = MeshCheck.Inspect(mesh);
        Assert.True(report.IsClosed && report.DegenerateTriangles == 0 && report.Components == 1, report.ToString());
        var (low, high) = mesh.Box();
        Assert.Equal(0, low.X, Single);
        Assert.Equal(0, low.Y, Single);
        Assert.Equal(0, low.Z, Single);
        Assert.Equal(section.Size.X, high.X, Single);
        Assert.Equal(section.Size.Y, high.Y, Single);
        Assert.Equal(section.Size.Z, high.Z, Single);
        Assert.True(high.X <= 204 && high.Y <= 204 && high.Z <= 250);
        Assert.True(new BedShape(Workbench.Printer).Fits(section.Hull));
    }

    [Theory]
    [MemberData(nameof(Numbers))]
    public void A_section_lies_deck_down_without_supports(int number)
    {
        var section = Set.Sections[number - 1];
        Assert.Equal(PrintPose.DeckDown, section.Pose);
        Assert.Equal(0, section.Overhangs.Unsupported, 0.2);
        Assert.Equal(0, section.Overhangs.Lift, 1e-4);

        // All that is deck or coping and neither chamfer nor bottom of a groove lies in one plane.
        var mesh = section.PrintMesh();
        double deck = 0, onBed = 0;
        for (int i = 0; i < mesh.TriangleCount; i++)
        {
            Point3 a = mesh.Vertices[mesh.Triangles[3 * i]], b = mesh.Vertices[mesh.Triangles[(3 * i) + 1]], c = mesh.Vertices[mesh.Triangles[(3 * i) + 2]];
            double down = -Point3.Cross(b - a, c - a).Z / 2;
            bool floor = Math.Min(a.Z, Math.Min(b.Z, c.Z)) > 0.29 && Math.Max(a.Z, Math.Max(b.Z, c.Z)) < 0.31; // of a groove 0.3 deep
            bool top = !floor && down > 0 && (Paint)mesh.Paints[i] is Paint.Deck or Paint.Coping or Paint.Line;
            deck += top ? down : 0;
            Assert.False(top && down > 0.999 * Point3.Cross(b - a, c - a).Length / 2 && Math.Min(a.Z, Math.Min(b.Z, c.Z)) is > 1e-4 and < 0.25);
            onBed += top && Math.Max(a.Z, Math.Max(b.Z, c.Z)) < 1e-4 ? down : 0;
        }

        Assert.True(onBed > 0.98 * deck, $"{onBed:F0} of {deck:F0} mm²");
    }

    [Theory]
    [MemberData(nameof(Numbers))]
    public void The_motion_to_the_layout_is_rigid_and_proper(int number)
    {
        var t = Set.Sections[number - 1].ToLayout;
        Assert.Equal(1, t.Row0.Length, 12);
        Assert.Equal(1, t.Row1.Length, 12);
        Assert.Equal(1, t.Row2.Length, 12);
        Assert.Equal(0, Point3.Dot(t.Row0, t.Row1), 12);
        Assert.Equal(0, Point3.Dot(t.Row1, t.Row2), 12);
        Assert.Equal(1, Point3.Dot(Point3.Cross(t.Row0, t.Row1), t.Row2), 12);
    }

    [Fact]
    public void Bores_of_neighbours_lie_on_one_line_a_trim_apart()
    {
        foreach (var (a, b) in Set.Sections.Zip(Set.Sections.Skip(1)))
        {
            var pairs = a.Bores.Where(x => x.Chainage == a.To).Zip(b.Bores.Where(x => x.Chainage == b.From)).ToArray();
            Assert.Equal(2, pairs.Length);
            foreach (var (left, right) in pairs)
            {
                Assert.Equal(0, (left.Inward + right.Inward).Length, 12);
                var gap = right.Mouth - left.Mouth;
                Assert.Equal(gap.Length, Point3.Dot(gap, right.Inward), 9);

                // Trims are taken along the track: on its curve bores, which begin in the end faces, are apart by as much as the arc at their reach is longer.
                var on = Set.Plan.Chart.Locate(new(left.Mouth.X, left.Mouth.Y));
                Assert.Equal(0.2 * (1 - (Set.Plan.Chart.CurvatureAt(a.To) * on.Offset)), gap.Length, 2e-5);
                Assert.Equal(left.Slot, right.Slot);
                Assert.Equal(left.Diameter, right.Diameter);
            }
        }
    }

    [Fact]
    public void A_bore_is_open_at_its_mouth_blind_at_its_end_and_as_wide_as_it_says()
    {
        var solids = Set.Sections.Select(s => (s, new Inside(s.Solid.Mesh)));
        foreach (var (section, inside) in solids)
        {
            foreach (var bore in section.Bores)
            {
                Point3 up = new(0, 0, 1), across = Point3.Cross(up, bore.Inward);
                Point3 At(double depth, double side, double high) => bore.Mouth + (bore.Inward * depth) + (across * side) + (up * high);
                Assert.False(inside.Holds(At(0.01, 0, 0)));
                Assert.False(inside.Holds(At(bore.Depth - 0.02, 0, 0)));
                Assert.True(inside.Holds(At(bore.Depth + 0.1, 0, 0)));
                Assert.True(inside.Holds(At(bore.Depth + 0.7, 0, 0)), "two lines of the nozzle behind the bore");

                double r = bore.Diameter / 2;
                for (int k = 0; k < 16; k++)
                {
                    double angle = 2 * Math.PI * k / 16, side = (r * Math.Cos(angle)) + (Math.Sign(Math.Round(Math.Cos(angle), 9)) * bore.Slot / 2);
                    Assert.False(inside.Holds(At(3, side * 0.99, r * Math.Sin(angle) * 0.99)), "the circle is free");
                    double wider = 1.09 / Math.Cos(Math.PI / 8);
                    Assert.True(inside.Holds(At(3, (r * Math.Cos(angle) * wider) + (Math.Sign(Math.Round(Math.Cos(angle), 9)) * bore.Slot / 2),
                        r * Math.Sin(angle) * wider)), "and little more");
                }
            }
        }
    }

    [Fact]
    public void No_dowel_sticks_out_of_the_platform_s_ends()
    {
        Assert.All(Set.Sections[0].Bores, b => Assert.Equal(Set.Sections[0].To, b.Chainage));
        Assert.All(Set.Sections[^1].Bores, b => Assert.Equal(Set.Sections[^1].From, b.Chainage));
    }

    [Fact]
    public void A_piece_turned_end_for_end_does_not_go_on()
    {
        foreach (var section in Set.Sections.Skip(1).SkipLast(1))
        {
            // Distance of each bore from the middle between coping front and back, turned pieces see it with the other sign.
            double Place(Bore b)
            {
                var place = Plan.Chart.Locate(new(b.Mouth.X, b.Mouth.Y), b.Chainage);
                return Math.Abs(place.Offset) - ((Plan.CopingFront.At(b.Chainage) + Plan.Back.At(b.Chainage)) / 2);
            }

            var start = section.Bores.Where(b => b.Chainage == section.From).Select(Place).ToArray();
            var end = section.Bores.Where(b => b.Chainage == section.To).Select(Place).ToArray();
            double miss = start.Min(a => end.Max(b => Math.Abs(a + b)));
            Assert.True(miss > 1 + 0.2, "more than the slot's play and the fit: a dowel in any bore would meet solid wall");
        }
    }

    [Fact]
    public void The_cutting_list_has_two_dowels_a_cut()
    {
        var dowels = Assert.Single(Set.Dowels);
        Assert.Equal(2 * Set.Cuts.Count, dowels.Count);
        Assert.Equal(1.75, dowels.Diameter);
    }

    [Fact]
    public void The_mirrored_platform_has_the_same_sections_by_volume()
    {
        var mirrored = Workbench.Made(Workbench.PendlewickMirrored(), Workbench.Printer, new());
        Assert.Equal(Set.Sections.Count, mirrored.Sections.Count);
        foreach (var (a, b) in Set.Sections.Zip(mirrored.Sections))
        {
            Assert.Equal(a.From, b.From, 6);
            Assert.Equal(a.Volumes.Plain, b.Volumes.Plain, a.Volumes.Plain * 1e-5);
            Assert.Equal(a.Solid.ColumnVolume, b.Solid.ColumnVolume, a.Solid.ColumnVolume * 1e-5);
        }
    }

    [Fact]
    public void The_same_plan_gives_the_same_bytes_beside_other_work_and_in_another_culture()
    {
        var before = System.Globalization.CultureInfo.CurrentCulture;
        try
        {
            System.Globalization.CultureInfo.CurrentCulture = new("de-DE");
            var sets = new SectionSet[2];
            Parallel.For(0, 2, i => sets[i] = Workbench.Made(Plan, Workbench.Printer, new()));
            foreach (var other in sets)
            {
                Assert.All(Set.Sections.Zip(other.Sections), pair =>
                {
                    Assert.Equal(pair.First.Solid.Mesh.Vertices, pair.Second.Solid.Mesh.Vertices);
                    Assert.Equal(pair.First.Solid.Mesh.Triangles, pair.Second.Solid.Mesh.Triangles);
                    Assert.Equal(pair.First.ToLayout, pair.Second.ToLayout);
                    Assert.Equal(pair.First.Name, pair.Second.Name);
                });
                Assert.Equal(Set.Plates.SelectMany(p => p.Sections.Select(s => s.ToBed)), other.Plates.SelectMany(p => p.Sections.Select(s => s.ToBed)));
                Assert.Equal(Set.CountReason, other.CountReason);
            }
        }
        finally
        {
            System.Globalization.CultureInfo.CurrentCulture = before;
        }
    }
}
