using PlatformForge.Geometry;
using PlatformForge.Masonry;
using PlatformForge.Platforms;
using PlatformForge.Platforms.Plans;
using PlatformForge.Sections;
using PlatformForge.Sections.Forms;
using PlatformForge.Tests.Fixtures;
using PlatformForge.Tests.Sections;
using PlatformForge.Track;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Masonry;

/// <summary>Openings right through walls, by the meshes of sections.</summary>
public class ThroughTests
{
    private static readonly ModelScale Scale = new(76.2);

    private static readonly OpeningSpec Cable = OpeningSpec.For(Scale) with { Kind = OpeningKind.Cable, IsThrough = true, Pitch = 30 },
        Refuge = OpeningSpec.For(Scale) with { IsThrough = true };

    private static readonly FacingSpec Open = FacingSpec.For(Scale) with { Openings = [Cable], Ends = WallFinish.Plain };

    [Theory]
    [InlineData(Side.Left, WallFinish.Brick, OpeningHead.Flat, false)]
    [InlineData(Side.Right, WallFinish.Stone, OpeningHead.Segmental, false)]
    [InlineData(Side.Left, WallFinish.Rubble, OpeningHead.Semicircular, true)]
    [InlineData(Side.Right, WallFinish.Brick, OpeningHead.Semicircular, true)]
    public void Sections_with_openings_right_through_are_sound_and_of_their_volume(Side side, WallFinish front, OpeningHead head, bool isBack)
    {
        var facing = Open with { Front = front, Back = front, Openings = [Cable, Refuge with { Head = head, IsBack = isBack }] };
        var set = Workbench.Made(Straight(230, side, facing, true), Workbench.Printer, new());
        Assert.All(set.Sections, SoundSection.Check);
        Assert.Equal(set.Plan.WallOpenings.Count, set.Sections.Sum(s => s.Faced.Sum(w => w.Regions.Count(r => r.Behind is not null))));
        Assert.True(set.Plan.WallOpenings.Count > 4);
    }

    [Fact]
    public void Openings_right_through_on_a_curve_are_sound_and_of_their_volume()
    {
        var set = Workbench.Made(
            Workbench.PendlewickAs(p => p with
            {
                Face = p.Face with { To = p.Face.From + 240 },
                EndRamp = null,
                Features = [],
                Facing = Open with { Openings = [Cable, Refuge, Cable with { IsBack = true }] },
            }),
            Workbench.Printer,
            new());
        Assert.All(set.Sections, SoundSection.Check);
        Assert.True(set.Plan.WallOpenings.Count > 4);
    }

    [Fact]
    public void Openings_right_through_of_any_figures_are_sound() => Assert.All(Simulations.Cases(2, 200), seed =>
    {
        var random = new Random(seed);
        var shape = Refuge with
        {
            Head = (OpeningHead)random.Next(3),
            Width = 2 + (random.NextDouble() * 12),
            Height = 7.6 + (random.NextDouble() * 2),
            Sill = 0.5 + (random.NextDouble() * 3),
            Pitch = 15 + (random.NextDouble() * 30),
            IsBack = random.Next(2) == 0,
        };
        var facing = Open with { Bond = (Bond)random.Next(4), Front = (WallFinish)(1 + random.Next(3)), Seed = random.Next(1000), Openings = [shape, Cable] };
        var side = (Side)((2 * random.Next(2)) - 1);
        Assert.All(Workbench.Made(Straight(125 + (random.NextDouble() * 160), side, facing, random.Next(2) == 0), Workbench.Printer, new()).Sections,
            SoundSection.Check);
    });

    [Fact]
    public void An_opening_right_through_takes_its_area_by_the_wall_and_its_pad()
    {
        // From the joints' ground to the pad's face: an oblong hole, and an arch of chords.
        foreach (var spec in new[] { Cable, Refuge })
        {
            var with = One(spec);
            var hole = with.Faced.SelectMany(w => w.Regions).Single(r => r.Out < 0);
            double area = Area(hole.Outline), laid = with.Faced.Sum(w => w.Regions.Where(r => r.Out > 0).Sum(r => r.Out * Area(r.Outline)));
            double deep = Plan.WallBack.Reach[0] - Plan.Body.WallLine.Reach[0] + OpeningSpec.PadDepth;
            Assert.Equal(laid - (area * deep), with.Volumes.Facing, (area * Tolerances.GridStep) + (1e-6 * laid)); // the walls lie on the grid
        }
    }

    [Fact]
    public void A_line_of_sight_goes_through_the_opening_and_nothing_stands_before_the_face()
    {
        var section = One(Cable);
        var mesh = section.Solid.Mesh;
        double z = Cable.Sill + (Cable.Height / 2);
        Assert.DoesNotContain(Crossed(mesh, 275, z), y => y < Plan.WallBack.Reach[0] + 1);
        Assert.Equal(2, Crossed(mesh, 275 + (3 * Cable.Width), z).Count(y => y < Plan.WallBack.Reach[0] + 1));
        Assert.Equal(Plan.WallFace.Reach[0], mesh.Vertices.Where(v => v.Z < 15).Min(v => v.Y), 1e-4);
    }

    [Fact]
    public void Nothing_stands_behind_an_opening_right_through() => Assert.All(Simulations.Cases(4, 60), seed =>
    {
        var random = new Random(seed);
        var plan = Straight(420 + (random.NextDouble() * 90), Side.Left, Open with { Openings = [Cable with { Pitch = 20 }] }, random.Next(2) == 0);
        double[] cuts = [plan.Stations[0] + 150 + (20 * random.NextDouble()), plan.Stations[0] + 300 + (20 * random.NextDouble())];
        var made = PlatformPlanner.Divided(plan, cuts, 12).Value!;
        Assert.True(made.WallOpenings.Count > 8);
        Assert.All(made.WallOpenings, o =>
        {
            double half = (o.Spec.Width / 2) + (112.5 / 76.2);
            Assert.DoesNotContain(cuts, c => Math.Abs(c - o.Chainage) < half + 12);
            Assert.DoesNotContain(made.Ribs, r => r.To > o.Chainage - half && r.From < o.Chainage + half
                && r.Near.At(o.Chainage) < made.WallBack.At(o.Chainage) + 1);
        });
    });

    [Fact]
    public void What_is_behind_a_wall_is_told_and_the_remedy_works()
    {
        var told = PlatformPlanner.Divided(Straight(150, Side.Left, Open with { Openings = [Cable with { At = [240, 275] }] }, false), [241], 10);
        var finding = Assert.Single(told.Findings, f => f.Code is "PF4160" or "PF4190");
        Assert.Equal([275.0], told.Value!.WallOpenings.Select(o => o.Chainage));
        Assert.NotNull(finding);
        var near = PlatformPlanner.Divided(Straight(150, Side.Left, Open with { Openings = [Cable with { At = [247, 275] }] }, false), [241], 10);
        var way = Assert.Single(near.Findings, f => f.Code == "PF4190");
        double moved = double.Parse(way.Cure!.Value, System.Globalization.CultureInfo.InvariantCulture);
        var cured = PlatformPlanner.Divided(Straight(150, Side.Left, Open with { Openings = [Cable with { At = [moved, 275] }] }, false), [241], 10);
        Assert.DoesNotContain(cured.Findings, f => f.Code is "PF4160" or "PF4190");
        Assert.Equal(2, cured.Value!.WallOpenings.Count);
    }

    [Fact]
    public void A_sill_is_bridged_from_side_to_side_as_far_as_the_printer_does_and_a_wider_one_is_told()
    {
        var plan = Straight(150, Side.Left, Open with { Openings = [Refuge with { Head = OpeningHead.Flat, At = [275] }], Back = WallFinish.Plain }, false);
        var made = SectionMaker.Make(plan, Workbench.Printer, new());
        Assert.DoesNotContain(made.Findings, f => f.Code == "PF5060");
        var hole = made.Value!.Sections[0].Faced.SelectMany(w => w.Regions).Single(r => r.Behind is not null).Outline;
        double wide = hole.Max(p => p.X) - hole.Min(p => p.X), sill = wide * (Plan.WallBack.Reach[0] - Plan.Body.WallLine.Reach[0] + OpeningSpec.PadDepth);
        Assert.InRange(made.Value.Sections[0].Overhangs.Unsupported, 0, 0.2);

        var narrow = SectionMaker.Make(plan, Workbench.Printer with { LongestBridge = 8 }, new());
        var told = Assert.Single(narrow.Findings, f => f.Code == "PF5060");
        Assert.Equal((Severity.Warning, "8"), (told.Severity, told.Cure!.Value));
        Assert.InRange(narrow.Value!.Sections[0].Overhangs.Unsupported, 0.95 * sill, 1.05 * sill);
    }

    private static PlatformPlan Plan { get; } = Straight(150, Side.Left, Open, false);

    // Heights z of a wall are those over the baseboard, its places along the track.
    private static IEnumerable<double> Crossed(Mesh mesh, double x, double z)
    {
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            Point3[] p = [.. Enumerable.Range(0, 3).Select(k => mesh.Vertices[mesh.Triangles[(3 * t) + k]])];
            double Turn(int i) => ((p[(i + 1) % 3].X - p[i].X) * (z - p[i].Z)) - ((p[(i + 1) % 3].Z - p[i].Z) * (x - p[i].X));
            double[] turns = [Turn(0), Turn(1), Turn(2)];
            double all = turns.Sum();
            if (turns.All(v => v > 0) || turns.All(v => v < 0))
            {
                yield return ((p[0].Y * turns[1]) + (p[1].Y * turns[2]) + (p[2].Y * turns[0])) / all;
            }
        }
    }

    private static double Area(Point2[] ring) => ring.Select((p, i) => Point2.Cross(p, ring[(i + 1) % ring.Length])).Sum() / 2;

    private static PlatformSection One(OpeningSpec spec) =>
        Workbench.Made(Straight(150, Side.Left, Open with { Openings = [spec with { At = [275] }], Back = WallFinish.Plain }, false), Workbench.Printer,
            new()).Sections[0];

    private static PlatformPlan Straight(double length, Side side, FacingSpec? facing, bool ramps) =>
        Workbench.Straight(length, side, s => s with { Facing = facing, StartRamp = ramps ? new(Gradient: 8) : null });
}
