using FsCheck;
using FsCheck.Xunit;
using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Solids;
using PlatformForge.Solids.Bodies;
using PlatformForge.Solids.Bodies.Layers;
using PlatformForge.Solids.Kernel;
using PlatformForge.Tests.Meshes;
using PlatformForge.Tests.Platforms;
using PlatformForge.Tests.Sections;
using Xunit;

namespace PlatformForge.Tests.Solids.Bodies;

/// <summary>Bodies of platforms along random tracks.</summary>
public class BodyProperties
{
    [Property(MaxTest = 6)]
    public void Every_body_is_a_sound_mesh(int seed)
    {
        var report = MeshCheck.Inspect(SolidRaiser.Raise(PlatformBody.Blocks(Dressed(seed)).All).Mesh);

        // As 32-bit floats only sections are written, and those near the origin.
        Assert.True(report is { IsClosed: true, DegenerateTriangles: 0, Components: 1, Volume: > 0 }, report.ToString());
    }

    [Property(MaxTest = 4)]
    public void Stretches_cut_at_stations_add_up_to_the_whole(int seed)
    {
        var plan = Dressed(seed);
        bool ramps = plan.Spec.StartRamp is not null || plan.Spec.EndRamp is not null;
        var chart = new FacetedPlan(plan);
        double whole = SolidRaiser.Raise(PlatformBody.Blocks(plan).All).ColumnVolume, sum = 0, from = plan.Stations[0];
        foreach (double to in plan.CutCandidates.Select(c => c.Chainage).Where((_, i) => i % 5 == seed % 3).Append(plan.Stations[^1]))
        {
            sum += SolidRaiser.Raise(PlatformBody.Blocks(chart, from, to).All).ColumnVolume;
            from = to;
        }

        // A cut puts nodes on lines that run on in the whole, and the plan grid moves a node by up to half a step. Over seeds 0 to 119 the sum was
        // off by 4e-10 of the whole at most without ramps and by 2.4e-9 with them, and by an eighth of that on a grid eight times finer.
        Assert.Equal(whole, sum, whole * (ramps ? RampedSum : 1e-9));
    }

    [Fact]
    public void The_solid_s_edge_is_the_plan_s_coping_front()
    {
        var plan = Workbench.PendlewickPlan;
        var solid = SolidRaiser.Raise(PlatformBody.Blocks(plan).All);
        const double snap = 1.0 / 8192; // the kernel's plan grid
        foreach (int i in Enumerable.Range(0, plan.Stations.Length))
        {
            var front = plan.ToLayout(plan.Stations[i], plan.CopingFront.Reach[i]);
            Assert.Contains(solid.Mesh.Vertices, v => Math.Abs(v.X - front.X) <= snap && Math.Abs(v.Y - front.Y) <= snap);
        }
    }

    [Fact]
    public void The_top_of_the_solid_is_the_plan_s_walking_surface()
    {
        var plan = Workbench.PendlewickPlan;
        var mesh = SolidRaiser.Raise(PlatformBody.Blocks(plan).All).Mesh;
        int seen = 0;
        for (int i = 0; i < mesh.TriangleCount; i++)
        {
            Point3 a = mesh.Vertices[mesh.Triangles[3 * i]], b = mesh.Vertices[mesh.Triangles[(3 * i) + 1]], c = mesh.Vertices[mesh.Triangles[(3 * i) + 2]];
            // Sides and chamfers of mouths show the deck's paint too.
            var normal = Point3.Cross(b - a, c - a);
            if (mesh.Paints[i] != (byte)Paint.Deck || normal.Z < 0.99 * normal.Length)
            {
                continue;
            }

            foreach (var v in new[] { a, b, c })
            {
                var place = plan.Chart.Locate(new(v.X, v.Y));
                double top = plan.TopAt(place.Chainage, Math.Abs(place.Offset));
                if (v.Z > top - 1)
                {
                    // A facet's chord leaves the curve by 0.01 mm, which on a ramp of 1 in 8 is 0.002 in height.
                    Assert.Equal(top, v.Z, 0.005);
                    seen++;
                }
            }
        }

        Assert.True(seen > 500);
    }

    // Share of the whole by which stretches of a ramped platform may miss it: twice the largest miss seen.
    private const double RampedSum = 5e-9;

    private static PlatformPlan Dressed(int seed) => Bench.Plan(Bench.Request(seed, (EdgeStyle)(Math.Abs(seed % 3)), s =>
    {
        var random = new Random(seed);
        return (s with
        {
            Deck = s.Deck with { Crossfall = random.Next(2) * 60 },
            StartRamp = random.Next(2) == 0 ? null : new(Gradient: 6 + (random.NextDouble() * 6)),
            EndRamp = random.Next(2) == 0 ? null : new(Length: 60 + (random.NextDouble() * 60), FootHeight: random.NextDouble() * -5),
            Ribs = s.Ribs with { LongitudinalCount = random.Next(3) },
            WhiteLine = new() { GrooveDepth = random.Next(2) * 0.2 },
        }).With<FenceSpec>([new()]);
    }));
}
