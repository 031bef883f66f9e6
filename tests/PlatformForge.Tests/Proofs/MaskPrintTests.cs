using System.Collections.Concurrent;
using PlatformForge.Exports.Files;
using PlatformForge.Exports.Manifests;
using PlatformForge.Exports.ThreeMf;
using PlatformForge.Geometry;
using PlatformForge.Projects.Runs;
using PlatformForge.Proofs;
using PlatformForge.Solids;
using PlatformForge.Tests.Exports;
using PlatformForge.Tests.Fixtures;
using PlatformForge.Tests.Meshes;
using PlatformForge.Verification;
using Xunit;

namespace PlatformForge.Tests.Proofs;

/// <summary>
/// Masks that are printed, as their files hold them, laid on the sections as their files hold those: by grooves and corners, the way a person lays them, and by
/// nothing that the plan tells.
/// </summary>
public class MaskPrintTests
{
    // mm: what a mask may leave its line by. What is relieved at the end of a section is told of it alone.
    private const double Near = 0.05;

    private static ProofSets Pendlewick => ProofSets.Pendlewick.Value;

    private static IEnumerable<ManifestProof> Masks(string what) => Pendlewick.Of("mask").Where(m => m.Name.Contains(what, StringComparison.Ordinal));

    [Fact]
    public void Each_deck_has_a_cover_and_each_stretch_of_line_a_stencil_listed_and_on_a_bed()
    {
        var sections = Pendlewick.Set.Manifest.Sections;
        Assert.Equal(sections.Count, Masks("deck cover").Count());
        Assert.Equal(sections.Count(s => Painted(s, Paint.Line).Any()), Masks("line stencil").Count());
        Point2[] bed = [.. Pendlewick.Dossier.Printer.Bed];
        Assert.All(Pendlewick.Of("mask"), mask =>
        {
            Assert.Contains(Pendlewick.Set.Files, f => f.Path == mask.Stl);
            var model = Bed(mask.Plate);
            int item = model.Items.ToList().FindIndex(i => i.ObjectId == mask.ObjectId);
            var (low, high) = model.PlacedMeshes()[item].Box();
            Assert.True(low.X >= 0 && low.Y >= 0 && high.X <= bed.Max(p => p.X) - bed.Min(p => p.X) && high.Y <= bed.Max(p => p.Y) - bed.Min(p => p.Y),
                $"{mask.Name}: {low} to {high}");
        });
    }

    [Fact]
    public void A_mask_is_one_watertight_sheet_of_the_thickness_that_was_asked_for()
    {
        Assert.All(Pendlewick.Of("mask"), mask =>
        {
            var report = MeshCheck.Inspect(Pendlewick.Written(mask));
            Assert.True(report is { OpenEdges: 0, DegenerateTriangles: 0, Components: 1 }, $"{mask.Name}: {report}");
            var (low, high) = Pendlewick.Written(mask).Box();
            Assert.Equal((0, 0.6), (Math.Round(low.Z, 5), Math.Round(high.Z, 5)));
        });
    }

    [Fact]
    public void The_slot_of_a_stencil_bares_the_line_of_its_section_and_nothing_else()
    {
        Assert.All(Masks("line stencil"), mask =>
        {
            var mesh = Pendlewick.Written(mask);
            Point2[] slot = Rings(mesh, 0.05).Single(r => ConvexRing.Area(r) < 0), line = [.. Painted(SectionOf(mask), Paint.Line).Distinct()];
            // Grooves are as deep as a third; where their middles cross the slot, it is laid to the ends of the section.
            Point2[] laid = [.. Grooves(mesh).SelectMany(g => Crossings(slot, g))];
            Assert.True(laid.Length == 4, string.Join(" ", laid) + " of " + string.Join(" ", Grooves(mesh)) + " and " + string.Join(" ", slot));
            var onto = RingFit.Laid(Ends(laid), slot, Ends(line), line);
            Point2[] there = [.. slot.Select(onto)];
            Assert.All(line, p => Assert.True(Holds(there, p) || RingFit.Far(p, there) < Near, $"{mask.Name}: {RingFit.Far(p, there):0.000} at {p}"));
            Assert.All(laid.Select(onto), p => Assert.True(line.Min(q => (q - p).Length) < Near + Relief,
                $"{mask.Name}: a groove is {line.Min(q => (q - p).Length):0.00} off"));

            // And it bares nothing beside the line: but for the millimetre beyond its ends it goes along the line or over a joint of it.
            var painted = Borders(PaintedTriangles(SectionOf(mask), Paint.Line));
            double joint = Pendlewick.Dossier.Platforms[0].Plan.Spec.Coping.JointWidth / 2;
            Point2[] ends = Ends(line);
            Assert.All(there, p => Assert.True(painted.Min(ring => RingFit.Far(p, ring)) < Near
                + (ends.Min(e => (e - p).Length) < 2 ? 1 + Relief + joint : joint), $"{mask.Name}: {p}"));
        });
    }

    [Fact]
    public void A_cover_ends_at_the_copings_back_and_at_the_decks_other_sides()
    {
        Assert.All(Masks("deck cover"), mask =>
        {
            Point2[] cover = Rings(Pendlewick.Written(mask), 0.05).Single();
            Point2[] deck = Outer(PaintedTriangles(SectionOf(mask), Paint.Deck)), coping = [.. Painted(SectionOf(mask), Paint.Coping)];
            var onto = RingFit.Laid(Corners(cover), cover, Corners(deck), deck);
            Point2[] there = [.. cover.Select(onto)];

            // The side along the coping: corners of the mesh's deck that lie over the joint from those of its coping.
            double seam = PlatformForge.Platforms.Surfaces.CopingSeam.Of(Pendlewick.Dossier.Platforms[0].Plan)!.Width;
            Point2[] shared = [.. deck.Where(p => coping.Any(q => (p - q).Length < 1.25 * seam))];
            Assert.True(shared.Length > 8, mask.Name);
            Assert.All(shared, p => Assert.True(RingFit.Far(p, there) < Near, $"{mask.Name}: {RingFit.Far(p, there):0.000} at {p}"));
            Assert.All(deck, p => Assert.True(RingFit.Far(p, there) < Near + Relief, $"{mask.Name}: {RingFit.Far(p, there):0.000} at {p}"));
            Assert.Equal(ConvexRing.Area(deck), ConvexRing.Area(there), (0.001 * ConvexRing.Area(there)) + (2 * Relief * 60));
        });
    }

    [Fact]
    public void A_spoilt_mask_is_refused()
    {
        var mask = Masks("line stencil").First();
        byte[] spoilt = [.. Pendlewick.File(mask.Stl)];
        BitConverter.TryWriteBytes(spoilt.AsSpan(84 + 12), BitConverter.ToSingle(spoilt, 84 + 12) + 1f);
        string[] Codes(byte[] bytes) =>
        [
            .. ProofVerifier.Alone(Pendlewick.Set.Manifest, [.. Pendlewick.Set.Files.Select(f => f.Path == mask.Stl ? new OutputFile(f.Path, bytes) : f)],
                DesignCopy.Of(Pendlewick.Dossier), ProofRun.Sections(Pendlewick.Dossier)).Select(f => f.Code).Distinct(),
        ];
        Assert.Empty(Codes(Pendlewick.File(mask.Stl)));
        Assert.NotEmpty(Codes(spoilt));
        Assert.NotEmpty(Codes(spoilt[..^50]));
    }

    [Fact]
    public void Masks_longer_than_the_bed_come_in_parts_that_are_laid_groove_on_groove()
    {
        var set = Pendlewick.Dossier.Platforms[0].Sections;
        bool Fits(IReadOnlyList<Point2> ring) => ring.Max(p => p.X) - ring.Min(p => p.X) <= 120;
        var parts = MaskPiece.Of(set, Fits);
        Assert.All(parts, p => Assert.True(Fits(p.Outline), p.Name));
        Assert.All(parts.Where(p => p.Slot is not null).GroupBy(p => p.Section), own =>
        {
            MaskPiece[] row = [.. own];
            Assert.True(row.Length > 1);
            foreach (var (a, b) in row.Zip(row.Skip(1)))
            {
                Assert.Equal(0, (a.Ends[1].From - b.Ends[0].From).Length + (a.Ends[1].To - b.Ends[0].To).Length, 1e-9);
                // The slots of both go a millimetre over the place where they meet.
                Assert.True(a.Slot!.Max(p => p.X) > b.Slot!.Min(p => p.X) + 1.5);
            }
        });
    }

    // What is taken off the lower edges of an end face, as is stated.
    private static double Relief => Pendlewick.Dossier.Platforms[0].Sections.Joint.FaceRelief;

    private static ManifestSection SectionOf(ManifestProof mask) =>
        Pendlewick.Set.Manifest.Sections.Single(s => mask.Name.StartsWith(s.Name + ",", StringComparison.Ordinal));

    private static IEnumerable<Point2> Painted(ManifestSection section, Paint paint) => PaintedTriangles(section, paint).SelectMany(t => t);

    private static ThreeMfModel Bed(string path) => Beds.GetOrAdd(path, p => ThreeMfReader.Read(Pendlewick.File(p), p).Value!);

    private static readonly ConcurrentDictionary<string, ThreeMfModel> Beds = new(StringComparer.Ordinal);

    // A section lies on its walking surface: what is up to a tenth of a millimetre over the bed, turned over so as to be seen from above; not what relieves its
    // edges at 45 degrees.
    private static Point2[][] PaintedTriangles(ManifestSection section, Paint paint)
    {
        var mesh = Bed(section.Plate).Objects.Single(o => o.Id == section.ObjectId).Mesh!;
        return
        [
            .. Enumerable.Range(0, mesh.Paints.Length).Where(i => mesh.Paints[i] == (byte)paint)
            .Select(i => mesh.Triangles[(3 * i)..((3 * i) + 3)].Select(k => mesh.Vertices[k]).ToArray())
                .Where(t => t.All(p => Math.Abs(p.Z) < 0.1) && Point3.Cross(t[1] - t[0], t[2] - t[0]) is var n && Math.Abs(n.Z) > 0.8 * n.Length)
                .Select(t => t.Select(p => new Point2(p.X, -p.Y)).ToArray()),
        ];
    }

    // Rings of a level cut, material to their left.
    private static List<Point2[]> Rings(Mesh mesh, double level)
    {
        var next = new Dictionary<Point2, Point2>();
        for (int i = 0; i < mesh.Triangles.Length; i += 3)
        {
            Point3[] t = [.. mesh.Triangles[i..(i + 3)].Select(k => mesh.Vertices[k])];
            Point2[] at = [.. Enumerable.Range(0, 3).Where(k => t[k].Z > level != t[(k + 1) % 3].Z > level).Select(k => Crossing(t[k], t[(k + 1) % 3], level))];
            if (at.Length == 2 && at[0] != at[1])
            {
                bool rises = t.Single(p => t.Count(q => q.Z > level == p.Z > level) == 1) is { } lone && lone.Z > level;
                int first = Array.FindIndex(t, p => t.Count(q => q.Z > level == p.Z > level) == 1);
                Point2 after = Crossing(t[first], t[(first + 1) % 3], level), before = Crossing(t[(first + 2) % 3], t[first], level);
                _ = rises ? next[after] = before : next[before] = after;
            }
        }

        return Chained(next);
    }

    private static Point2 Crossing(Point3 a, Point3 b, double level)
    {
        (a, b) = a.Z < b.Z ? (a, b) : (b, a);
        var p = a + ((b - a) * ((level - a.Z) / (b.Z - a.Z)));
        return new(Math.Round(p.X, 4), Math.Round(p.Y, 4));
    }

    private static List<Point2[]> Chained(Dictionary<Point2, Point2> next)
    {
        var rings = new List<Point2[]>();
        while (next.Count > 0)
        {
            var ring = new List<Point2>();
            for (var p = next.Keys.First(); next.Remove(p, out var to); p = to)
            {
                ring.Add(p);
            }

            rings.Add([.. ring]);
        }

        return rings;
    }

    // The largest ring round triangles.
    private static Point2[] Outer(Point2[][] triangles) => Borders(triangles).MaxBy(ConvexRing.Area)!;

    private static List<Point2[]> Borders(Point2[][] triangles)
    {
        static Point2 Same(Point2 p) => new(Math.Round(p.X, 4), Math.Round(p.Y, 4));
        var edges = new HashSet<(Point2, Point2)>();
        foreach (var t in triangles.Select(t => Array.ConvertAll(t, Same)))
        {
            Point2[] way = Point2.Cross(t[1] - t[0], t[2] - t[0]) > 0 ? t : [t[0], t[2], t[1]];
            for (int k = 0; k < 3; k++)
            {
                _ = edges.Remove((way[(k + 1) % 3], way[k])) || edges.Add((way[k], way[(k + 1) % 3]));
            }
        }

        return Chained(edges.ToDictionary(e => e.Item1, e => e.Item2));
    }

    // Middles of grooves: at half their depth the ring outside is cut into pieces, and what is between two of them is a groove.
    private static IEnumerable<(Point2 From, Point2 To)> Grooves(Mesh mesh)
    {
        var floor = mesh.Vertices.Where(v => v.Z is > 0.1 and < 0.55).Select(v => new Point2(v.X, v.Y)).Distinct().ToArray();
        Point2[] outer = Rings(mesh, 0.05).MaxBy(ConvexRing.Area)!;
        // Feet of grooves on the outline: those of one are as far apart as it is wide.
        var feet = floor.Where(p => RingFit.Far(p, outer) < 1e-3).ToList();
        var middles = new List<Point2>();
        while (feet.Count > 0)
        {
            Point2[] own = [.. feet.Where(p => (p - feet[0]).Length < 0.75)];
            var from = own.MaxBy(p => (p - own[0]).Length);
            var to = own.MaxBy(p => (p - from).Length);
            middles.Add((from + to) * 0.5);
            feet.RemoveAll(own.Contains);
        }

        Assert.Equal(4, middles.Count);
        foreach (var from in middles)
        {
            var to = middles.Where(m => m != from).MinBy(m => (m - from).Length);
            if ((from.X, from.Y).CompareTo((to.X, to.Y)) < 0)
            {
                yield return (from, to);
            }
        }
    }

    private static IEnumerable<Point2> Crossings(Point2[] ring, (Point2 From, Point2 To) line)
    {
        for (int i = 0; i < ring.Length; i++)
        {
            Point2 a = ring[i], b = ring[(i + 1) % ring.Length], along = line.To - line.From;
            double from = Point2.Cross(along, a - line.From), to = Point2.Cross(along, b - line.From);
            if (from > 0 != to > 0)
            {
                yield return a + ((b - a) * (from / (from - to)));
            }
        }
    }

    // The corners of a long narrow row of points, round it: its ends may be askew, and have points between their corners.
    private static Point2[] Ends(Point2[] row)
    {
        const double Askew = 0.5;
        var a = row.MaxBy(p => (p - row[0]).Length);
        var b = row.MaxBy(p => (p - a).Length);
        var along = (b - a) * (1 / (b - a).Length);
        double At(Point2 p) => Point2.Dot(p - a, along);
        double Side(Point2 p) => Point2.Cross(along, p - a);
        double least = row.Min(At), most = row.Max(At);
        Point2[] first = [.. row.Where(p => At(p) < least + Askew)], last = [.. row.Where(p => At(p) > most - Askew)];
        return [first.MinBy(Side), last.MinBy(Side), last.MaxBy(Side), first.MaxBy(Side)];
    }

    // The four places where a ring turns sharply, in order.
    private static Point2[] Corners(Point2[] ring)
    {
        double Turn(int i)
        {
            Point2 before = ring[i] - ring[(i + ring.Length - 1) % ring.Length], after = ring[(i + 1) % ring.Length] - ring[i];
            return Math.Atan2(Point2.Cross(before, after), Point2.Dot(before, after));
        }

        Point2[] corners = [.. Enumerable.Range(0, ring.Length).Where(i => Turn(i) > 0.7).Select(i => ring[i])];
        Assert.Equal(4, corners.Length);
        return corners;
    }

    private static bool Holds(Point2[] ring, Point2 p) => Enumerable.Range(0, ring.Length).Count(i =>
    {
        Point2 a = ring[i], b = ring[(i + 1) % ring.Length];
        return a.Y > p.Y != b.Y > p.Y && p.X < a.X + ((p.Y - a.Y) / (b.Y - a.Y) * (b.X - a.X));
    }) % 2 == 1;
}
