using System.Globalization;
using PlatformForge.Clearance;
using PlatformForge.Clearance.Requests;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Exports.Stl;
using PlatformForge.Geometry;
using PlatformForge.Masonry;
using PlatformForge.Platforms;
using PlatformForge.Platforms.Specs;
using PlatformForge.Sections;
using PlatformForge.Sections.Forms;
using PlatformForge.Track;
using PlatformForge.Units;

namespace PlatformForge.Outside.Tests;

/// <summary>What of a brick wall an independent slicer's path shows: how far its outer line goes back at joints.</summary>
public class BrickDepthTests
{
    // mm along the wall between two places that are looked at.
    private const double Step = 0.02;

    [Theory]
    [InlineData(43.5)]
    [InlineData(76.2)]
    [InlineData(87)]
    public void The_outer_line_goes_back_at_joints_by_all_of_their_depth(double ratio)
    {
        var (section, face, depth, beds) = Wall(new(ratio));
        var layers = Outer(section, face);
        var (perpends, joints) = (new List<double>(), new List<double>());
        foreach (var (z, back) in layers)
        {
            // A layer is cut at half its height: within a bed joint all of it goes back, through a course at perpends alone.
            double off = beds.Min(b => Math.Abs(b.Middle - (z - 0.1)) - (b.Height / 2));
            double[] known = [.. back.Where(double.IsFinite)];
            if (known.Length < back.Length / 2 || z < 3)
            {
                continue;
            }

            if (off < -0.02)
            {
                joints.Add(known.Order().ElementAt(known.Length / 2));
            }
            else if (off > 0.12)
            {
                perpends.AddRange(Deepest(known, depth));
            }
        }

        double perpend = Median(perpends), bed = Median(joints);
        string told = FormattableString.Invariant($"1:{ratio}, joints {depth:0.000} deep: perpends show {perpend:0.000} (of {perpends.Count}), ")
            + FormattableString.Invariant($"beds {bed:0.000} (of {joints.Count})");
        Assert.True(perpends.Count > 100 && joints.Count > 3, told);
        Assert.True(perpend >= 0.95 * depth && bed >= 0.95 * depth && perpend <= 1.05 * depth && bed <= 1.05 * depth, told);
    }

    private static double Median(List<double> all) => all.Order().ElementAt(all.Count / 2);

    // The deepest place of each stretch that lies back by more than half a joint's depth.
    private static IEnumerable<double> Deepest(double[] back, double depth)
    {
        double most = 0;
        foreach (double b in back)
        {
            if (b > depth / 2)
            {
                most = Math.Max(most, b);
            }
            else if (most > 0)
            {
                yield return most;
                most = 0;
            }
        }
    }

    // A straight wall 40 mm long in English bond, deck down; where its face lies in its file, and its bed joints there.
    private static (PlatformSection Section, (Point2 From, Point2 To, Point2 Out) Face, double Depth,
        (double Middle, double Height)[] Beds) Wall(ModelScale scale)
    {
        var track = TrackLayer.Lay(new("up", new(0, 0), 0, [new StraightSpec(900)])).Value!;
        var facing = FacingSpec.For(scale) with { Back = WallFinish.Plain, Ends = WallFinish.Plain };
        var spec = PlatformSpec.For(scale, "wall", new FaceSpec("up", Side.Left, 420, 460, EdgeStyle.Uniform))
            with
        { Facing = facing, Deck = new() { Width = 30 }, Ribs = new() { Pitch = 0, LongitudinalCount = 0 } };
        var coach = new Vehicle("coach", 186, 0, 0, [VehiclePart.Box("body", PartCarrier.Body, -130, 130, 34, 13, 50)]);
        var sweep = EnvelopeSweeper.Sweep(new(track, spec.Face.From, spec.Face.To, [new TrackRun(track, [coach])])).Value!;
        var plan = PlatformPlanner.Plan(new(spec, new(scale, 8), track, sweep, ClearanceBudget.Of(running: 1)));
        Assert.True(plan.Succeeded, string.Join("; ", plan.Findings.Select(f => f.Message)));
        var made = SectionMaker.Make(plan.Value!, PrinterSpec.Oblong(220, 220, 250), new());
        Assert.True(made.Succeeded, string.Join("; ", made.Findings.Select(f => f.Message)));
        var section = Assert.Single(made.Value!.Sections);
        var toFile = section.ToLayout.Inverse();
        Point2 InFile(double s, double t)
        {
            var p = plan.Value!.ToLayout(s, t);
            var q = toFile.Apply(new(p.X, p.Y, 0));
            return new(q.X, q.Y);
        }

        double reach = plan.Value!.Body.WallFace.At(440);
        Point2 a = InFile(424, reach), b = InFile(456, reach), nearer = InFile(424, reach - 1) - a;
        double top = toFile.Apply(new(0, 0, plan.Value.Profile.Level)).Z, down = toFile.Apply(new(0, 0, plan.Value.Profile.Level - 1)).Z - top;
        var rows = section.Faced.Single().Regions.Select(r => (Low: r.Outline.Min(p => p.Y), High: r.Outline.Max(p => p.Y))).Distinct().OrderBy(r => r.Low)
            .ToArray();
        var beds = rows.Zip(rows.Skip(1), (r, s) => (Middle: top + (down * (plan.Value.Profile.Level - ((r.High + s.Low) / 2))), Height: s.Low - r.High))
            .ToArray();
        return (section, (a, b, nearer), facing.Depth, beds);
    }

    // For each layer, by the height of its top: how far the outer line's outer edge lies behind the face at places along it, mm.
    private static List<(double Z, double[] Back)> Outer(PlatformSection section, (Point2 From, Point2 To, Point2 Out) face)
    {
        string stem = Path.Combine(Path.GetTempPath(), $"platformforge-{Guid.NewGuid():N}");
        try
        {
            File.WriteAllBytes(stem + ".stl", StlWriter.ToBytes(section.PrintMesh(), section.Name));
            var said = Tool.Run(
                "prusa-slicer", "--export-gcode", "--output", stem + ".gcode", "--bed-shape", "0x0,500x0,500x500,0x500", "--dont-arrange",
                "--first-layer-height", "0.2", "--layer-height", "0.2",
                "--nozzle-diameter", "0.4", "--external-perimeter-extrusion-width", "0.4", "--fill-density", "0%", "--perimeters", "2", "--top-solid-layers",
                "0", "--bottom-solid-layers", "0", "--skirts", "0",
                "--brim-width", "0", "--elefant-foot-compensation", "0", "--gcode-comments", stem + ".stl");
            Assert.True(File.Exists(stem + ".gcode"), said.All);
            return Paths(File.ReadLines(stem + ".gcode"), face);
        }
        finally
        {
            File.Delete(stem + ".stl");
            File.Delete(stem + ".gcode");
        }
    }

    private static List<(double Z, double[] Back)> Paths(IEnumerable<string> gcode, (Point2 From, Point2 To, Point2 Out) face)
    {
        var along = (face.To - face.From) * (1 / (face.To - face.From).Length);
        int places = (int)((face.To - face.From).Length / Step);
        var layers = new List<(double Z, double[] Back)>();
        double width = 0.4;
        bool outer = false;
        Point2 at = default;
        foreach (string line in gcode)
        {
            if (line.StartsWith(";Z:", StringComparison.Ordinal))
            {
                layers.Add((double.Parse(line[3..], CultureInfo.InvariantCulture), [.. Enumerable.Repeat(double.PositiveInfinity, places)]));
            }
            else if (line.StartsWith(";TYPE:", StringComparison.Ordinal))
            {
                outer = line is ";TYPE:External perimeter" or ";TYPE:Overhang perimeter";
            }
            else if (line.StartsWith(";WIDTH:", StringComparison.Ordinal))
            {
                width = double.Parse(line[7..], CultureInfo.InvariantCulture);
            }
            else if (line.StartsWith("G1 ", StringComparison.Ordinal))
            {
                var words = line.Split(';')[0].Split(' ', StringSplitOptions.RemoveEmptyEntries).Skip(1)
                    .ToDictionary(w => w[0], w => double.Parse(w[1..], CultureInfo.InvariantCulture));
                Point2 to = new(words.GetValueOrDefault('X', at.X), words.GetValueOrDefault('Y', at.Y));
                if (outer && layers.Count > 0 && words.GetValueOrDefault('E') > 0)
                {
                    Lay(layers[^1].Back, (at - face.From, to - face.From), (along, face.Out), width);
                }

                at = to;
            }
        }

        return layers;
    }

    // The least that any thread's outer edge lies behind the face at each place.
    private static void Lay(double[] back, (Point2 From, Point2 To) thread, (Point2 Along, Point2 Out) axes, double width)
    {
        double x0 = Point2.Dot(thread.From, axes.Along), x1 = Point2.Dot(thread.To, axes.Along);
        double y0 = -Point2.Dot(thread.From, axes.Out) - (width / 2), y1 = -Point2.Dot(thread.To, axes.Out) - (width / 2);
        if (Math.Min(y0, y1) > 1.2)
        {
            return; // the wall's other side
        }

        for (int i = Math.Max(0, (int)Math.Ceiling(Math.Min(x0, x1) / Step)); i < back.Length && i * Step <= Math.Max(x0, x1); i++)
        {
            double share = Math.Abs(x1 - x0) < 1e-9 ? 0 : ((i * Step) - x0) / (x1 - x0);
            back[i] = Math.Min(back[i], y0 + ((y1 - y0) * share));
        }
    }
}
