using FsCheck.Xunit;
using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Projects;
using PlatformForge.Projects.Presets;
using PlatformForge.Projects.Runs;
using PlatformForge.Projects.Watches;
using PlatformForge.Sections.Forms;
using PlatformForge.Tests.Platforms;
using Xunit;

namespace PlatformForge.Tests.Sections;

/// <summary>Ribs, fence holes and gates on the written meshes against what was asked for, along random tracks in sizes of 2, 4 and 7 mm scale.</summary>
public class RibsAndFenceFound
{
    // A mesh is on the plan grid, its facets are chords: so much may a length differ, mm.
    private const double Exact = 0.02;

    [Property(MaxTest = 6)]
    public void Ribs_are_evenly_apart_between_cuts_and_never_beyond_the_pitch(int seed)
    {
        var random = new Random(seed);
        double pitch = 15 + (random.NextDouble() * 30);
        var plan = Planned(seed, random, s => s with { Ribs = s.Ribs with { Pitch = pitch, LongitudinalCount = random.Next(3) } });
        var set = Workbench.Made(plan, PrinterSpec.Oblong(220, 220, 250), new());
        double greatest = 0;
        int count = 0;
        foreach (var section in set.Sections)
        {
            var mesh = new WrittenMesh(section);
            foreach (bool back in new[] { false, true })
            {
                double[] gaps = Gaps(plan, section, mesh, back);
                Assert.All(gaps, g => Assert.InRange(g, 0, pitch + Faceted));
                count += back ? gaps.Length - 1 : 0;
                greatest = Math.Max(greatest, gaps.Max());
            }
        }

        Assert.Equal(pitch, set.Plan.RibPitch.Asked);
        Assert.Equal(set.Plan.RibPitch.Count, count);
        Assert.InRange(set.Plan.RibPitch.Greatest, greatest - Faceted, pitch + 1e-6);
    }

    [Fact]
    public void On_the_demo_curve_ribs_are_found_as_the_plan_says_and_as_few_as_the_pitch_allows()
    {
        // With slabs of 20 mm, ribs by whole slabs would be 20 apart under a pitch of 35.
        foreach (var (pitch, slab) in new[] { (30.0, 12.0), (35, 20) })
        {
            var plan = Workbench.PendlewickAs(s => (s with { Coping = s.Coping with { SlabLength = slab }, Ribs = s.Ribs with { Pitch = pitch } })
                .With<SocketSpec>([]).With<FenceSpec>([]));
            var set = Workbench.Made(plan, Workbench.Printer, new());
            foreach (var section in set.Sections)
            {
                // The outside of the curve: the back is the longer side. Even there, the inner face of its wall is nearly so where the curve changes.
                double[] gaps = Gaps(plan, section, new(section), back: true);
                Assert.InRange(gaps.Max() - gaps.Min(), 0, 5 * Exact);
                Assert.Equal(Math.Ceiling(gaps.Sum() / pitch), gaps.Length);
            }
        }
    }

    [Fact]
    public void Under_quillhavens_station_building_ribs_are_within_their_pitch()
    {
        var read = ProjectReader.Read(PresetShelf.Sample("quillhaven")!, "quillhaven.toml");
        var platform = Assert.Single(DesignRun.Design(read.Value!, RunWatch.None).Value!.Platforms);
        double asked = platform.Plan.Spec.Ribs.Pitch, building = platform.Plan.Sockets.Max(k => k.Along);
        Assert.True(building > 2 * asked, "a seat that ribs have to stand under");
        foreach (var section in platform.Sections.Sections)
        {
            Assert.All(Gaps(platform.Plan, section, new(section), back: true), g => Assert.InRange(g, 5, asked + Exact));
        }
    }

    [Property(MaxTest = 6)]
    public void Whole_panels_gates_and_holes_are_found_as_asked(int seed)
    {
        var random = new Random(seed);
        double pitch = 14 + (random.NextDouble() * 24), wide = 10 + (random.NextDouble() * 20), pin = 0.8 + random.NextDouble(),
            depth = 2.5 + random.NextDouble();
        var plan = Planned(seed, random,
            s =>
            s.With<FenceSpec>([new() { Panels = FencePanels.Whole, Pitch = pitch, PinDiameter = pin, Depth = depth,
                Gaps = [new(Middle(s) - (wide / 2), Middle(s) + (wide / 2))] }]));
        // A large bed: where posts stand nearly as far apart as the coping's joints, no cut comes between them for up to 450 mm, and a small bed is refused.
        var set = Workbench.Made(plan, PrinterSpec.Oblong(400, 400, 250), new());
        double top = plan.Profile.Level;
        var found = new List<(Point2 Middle, double Diameter)>();
        foreach (var section in set.Sections)
        {
            var mesh = new WrittenMesh(section);
            var mouths = mesh.Holes(top - 0.6, 2 * pin);
            found.AddRange(mouths);

            // Each goes down to where its floor is asked for, and no farther.
            var above = mesh.Holes(top - depth + 0.05, 2 * pin);
            var below = mesh.Holes(top - depth - 0.05, 2 * pin);
            Assert.All(mouths, m => Assert.Contains(above, h => (h.Middle - m.Middle).Length < 0.01 && Math.Abs(h.Diameter - m.Diameter) < 0.01));
            Assert.All(mouths, m => Assert.DoesNotContain(below, h => (h.Middle - m.Middle).Length < pin / 2));
        }

        Point2[] posts = [.. plan.Fence!.Posts.Select(p => found.MinBy(f => (f.Middle - plan.ToLayout(p.Chainage, p.Reach)).Length).Middle)];
        Assert.Equal(posts.Length, found.Count);
        Assert.All(found, f => Assert.Equal(pin + 0.2, f.Diameter, 0.01));
        double[] lengths = [.. posts.Zip(posts.Skip(1), (a, b) => (b - a).Length)];
        Assert.All(plan.Fence!.Bays, (b, i) => Assert.Equal(b.Length, lengths[i], 0.01));
        Assert.All(plan.Fence!.Bays, (b, i) => Assert.True(b.Kind != FenceBayKind.Panel || Math.Abs(lengths[i] - pitch) < 0.02, $"{b} {lengths[i]}"));
        Assert.Equal(wide, lengths[plan.Fence!.Bays.ToList().FindIndex(b => b.Kind == FenceBayKind.Gate)], 0.01);
    }

    // Inside a facet of a sharp transition a chainage of the solid lies so far beside the track's own, mm, at the reach of a wide platform's back.
    private const double Faceted = 0.15;

    // A path begins and ends so far outside the section, mm.
    private const double Outside = 1;

    private static double Middle(PlatformSpec s) => (s.Face.From + s.Face.To) / 2;

    // Widths, thicknesses and slabs as they are in 2, 4 and 7 mm scale.
    private static PlatformPlan Planned(int seed, Random random, Func<PlatformSpec, PlatformSpec> change)
    {
        var (width, deck, coping, slab) = random.Next(3) switch { 0 => (26.0, 1.2, 4.0, 6.0), 1 => (50.0, 1.6, 8.0, 12.0), _ => (84.0, 2.0, 14.0, 20.0) };
        return Bench.Plan(Bench.Request(seed, EdgeStyle.Faired, s => change(s with
        {
            Deck = s.Deck with { Width = width, Thickness = deck },
            Coping = s.Coping with { Width = coping, SlabLength = slab },
        })));
    }

    // Distances along the inner face of a long wall from cut to rib, rib to rib, rib to cut, of a section.
    private static double[] Gaps(PlatformPlan plan, PlatformSection section, WrittenMesh mesh, bool back)
    {
        const double beside = 0.4, above = 2.5;
        int steps = (int)Math.Ceiling(section.Length / 2);
        Point2 At(double s) => plan.ToLayout(s, back ? plan.BackWallFace.At(s) - beside : plan.WallBack.At(s) + beside);
        Point2[] path = [At(section.From - Outside), .. Enumerable.Range(0, steps + 1).Select(i => At(section.From + (section.Length * i / steps))),
            At(section.To + Outside)];
        double[] lengths = [.. path.Zip(path.Skip(1), (a, b) => (b - a).Length)];
        var walls = mesh.Along(path, above);
        Assert.True(walls.Count >= 2, "two end walls");
        double[] places = [lengths[0], .. walls.Skip(1).SkipLast(1).Select(w => (w.From + w.To) / 2), lengths[..^1].Sum()];
        return [.. places.Zip(places.Skip(1), (a, b) => b - a)];
    }
}
