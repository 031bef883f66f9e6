using PlatformForge.Geometry;
using PlatformForge.Platforms;
using PlatformForge.Proofs;
using PlatformForge.Tests.Meshes;
using PlatformForge.Tests.Projects;
using Xunit;

namespace PlatformForge.Tests.Proofs;

/// <summary>Masks as their written solids have them, against the lines and the deck that they are for.</summary>
public class MaskPrintTests
{
    private static ProofSets Pendlewick => ProofSets.Pendlewick.Value;

    [Fact]
    public void A_cover_has_the_decks_area_and_a_stencil_a_slot_as_wide_as_the_line()
    {
        var plan = Pendlewick.Dossier.Platforms[0].Plan;
        var sections = Pendlewick.Dossier.Platforms[0].Sections.Sections;
        var masks = Pendlewick.Of("mask").ToArray();
        Assert.Equal(sections.Count, masks.Count(m => m.Name.EndsWith("deck cover", StringComparison.Ordinal)));
        Assert.Equal(3, masks.Count(m => m.Name.EndsWith("line stencil", StringComparison.Ordinal))); // its line goes over three of the five
        foreach (var mask in masks)
        {
            var mesh = Pendlewick.Written(mask);
            Assert.Equal(0.6, mesh.Box().High.Z, 0.001);

            // Underneath nothing is engraved: the area that lies on the bed is the mask's.
            double area = Down(mesh).Sum(t => Point2.Cross(t.B - t.A, t.C - t.A) / -2);
            var section = sections.Single(s => mask.Name.StartsWith(s.Name + ",", StringComparison.Ordinal));
            var line = plan.Body.Lines[0];
            double from = section.From, to = section.To, at = (Math.Min(to, line.To) + Math.Max(from, line.From)) / 2;
            double wide = line.Far.At(at) - line.Near.At(at);
            bool isCover = mask.Name.EndsWith("deck cover", StringComparison.Ordinal);
            if (isCover)
            {
                // The deck between the coping's back and its own, in plan: a ramp of 1 in 8 is longer by under 1 %.
                Assert.Equal(1, area / Between(plan, plan.CopingBack, plan.Back, from, to), 0.01);
            }
            else
            {
                Assert.Equal(wide, Pendlewick.Figure(mask, "slot, at its middle"), 0.02);

                // A border of 10 mm all round the slot.
                double slot = (Outer(mesh) - area) / wide;
                double own = Math.Min(to, line.To) - Math.Max(from, line.From);
                Assert.InRange(slot, own * 0.9, (own * 1.1) + 2);
            }

            var report = MeshCheck.Inspect(mesh);
            Assert.True(report is { OpenEdges: 0, Components: 1 }, $"{mask.Name}: {report}");
        }
    }

    [Fact]
    public void What_is_longer_than_the_bed_comes_in_parts_that_go_on_it()
    {
        var set = Pendlewick.Dossier.Platforms[0].Sections;
        var whole = MaskPiece.Of(set);
        var parts = MaskPiece.Of(set, ring => ring.Max(p => p.X) - ring.Min(p => p.X) < 90);
        Assert.True(parts.Count > 2 * whole.Count);
        Assert.All(parts, p => Assert.True(p.Box().High.X - p.Box().Low.X < 90, p.Name));
        double Slots(IEnumerable<MaskPiece> pieces) => pieces.Where(p => p.Slot is not null).Sum(p => Math.Abs(ConvexRing.Area([.. p.Slot!])));
        Assert.InRange(Slots(parts), Slots(whole), Slots(whole) * 1.1);

        // Where one ends the next begins: a groove in each, at one place.
        var stencils = parts.Where(p => p.Section == 2 && p.Slot is not null).ToArray();
        Assert.True(stencils.Length > 1);
        Assert.All(stencils.Zip(stencils.Skip(1)), pair => Assert.Equal(0, (pair.First.Ends[1].From - pair.Second.Ends[0].From).Length, 1e-9));
    }

    private static double Between(PlatformPlan plan, PlanLine near, PlanLine far, double from, double to)
    {
        double[] chainages = [.. Enumerable.Range(0, 201).Select(i => from + ((to - from) * i / 200))];
        return Math.Abs(ConvexRing.Area([.. chainages.Select(c => plan.ToLayout(c, near.At(c))), .. Enumerable.Reverse(chainages).Select(c => plan.ToLayout(c, far.At(c)))]));
    }

    private static double Outer(Mesh mesh) => LoopAreas(mesh).Max();

    // Areas inside the loops of the edges of what lies on the bed.
    private static IEnumerable<double> LoopAreas(Mesh mesh)
    {
        var next = new Dictionary<Point2, Point2>();
        var edges = Down(mesh).SelectMany(t => ((Point2 From, Point2 To)[])[(t.A, t.C), (t.C, t.B), (t.B, t.A)]).ToHashSet();
        foreach (var (from, to) in edges.Where(e => !edges.Contains((e.To, e.From))))
        {
            next[from] = to;
        }

        while (next.Count > 0)
        {
            var start = next.Keys.First();
            double area = 0;
            for (var p = start; next.Remove(p, out var to); p = to)
            {
                area += Point2.Cross(p - start, to - start) / 2;
            }

            yield return Math.Abs(area);
        }
    }

    private static IEnumerable<(Point2 A, Point2 B, Point2 C)> Down(Mesh mesh)
    {
        for (int i = 0; i < mesh.Triangles.Length; i += 3)
        {
            Point3 a = mesh.Vertices[mesh.Triangles[i]], b = mesh.Vertices[mesh.Triangles[i + 1]], c = mesh.Vertices[mesh.Triangles[i + 2]];
            if (Math.Max(a.Z, Math.Max(b.Z, c.Z)) < 1e-6)
            {
                yield return (new(a.X, a.Y), new(b.X, b.Y), new(c.X, c.Y));
            }
        }
    }
}
