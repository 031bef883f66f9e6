using System.Globalization;
using PlatformForge.Exports.Stl;
using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Surfaces;
using PlatformForge.Sections.Forms;
using PlatformForge.Solids.Bodies.Copings;

namespace PlatformForge.Outside.Tests;

/// <summary>How much of a section's walking surface an independent slicer puts into the first layer.</summary>
internal static class FirstLayer
{
    // Of the first layer all is as a nozzle of 0.4 mm lays it, threads and what is told by the nozzle's width; layers above it, which nobody looks at, are as
    // high as the slicer makes them. Against a whole section sliced in layers of 0.32 mm the first has 0.03 to 0.3 % less of thread, in under half the time.
    private static readonly string[] Settings =
    [
        "--export-gcode", "--bed-shape", "0x0,500x0,500x500,0x500", "--dont-arrange", "--first-layer-height", "0.2", "--layer-height", "2",
        "--nozzle-diameter", "2",
        "--first-layer-extrusion-width", "0.4", "--min-feature-size", "0.1", "--min-bead-width", "0.34", "--wall-transition-length", "0.4",
        "--wall-transition-filter-deviation", "0.1", "--fill-density", "0%", "--perimeters", "2", "--top-solid-layers", "0", "--bottom-solid-layers", "1",
        "--skirts", "0", "--brim-width", "0", "--elefant-foot-compensation", "0", "--gcode-comments",
    ];

    /// <summary>Share of the walking surface as planned that threads of the first layer cover; the layer is 0.2 mm high and cut at half its height.</summary>
    public static double Held(PlatformPlan plan, PlatformSection section, JointSpec joint)
    {
        var planned = Planned(plan, section, joint);
        string stem = Path.Combine(Path.GetTempPath(), $"platformforge-{Guid.NewGuid():N}");
        try
        {
            File.WriteAllBytes(stem + ".stl", StlWriter.ToBytes(section.PrintMesh(), section.Name));
            var said = Tool.Run("prusa-slicer", [.. Settings, "--output", stem + ".gcode", stem + ".stl"]);
            Assert.True(File.Exists(stem + ".gcode"), said.All);
            var found = new Raster(section.Size.X, section.Size.Y);
            foreach (var (from, to, width) in Threads(File.ReadLines(stem + ".gcode")))
            {
                found.Thread(from, to, width);
            }

            return planned.Common(found) / planned.Area;
        }
        finally
        {
            File.Delete(stem + ".stl");
            File.Delete(stem + ".gcode");
        }
    }

    // From the plan alone: the strip between coping and back, less what is stated to be cut into it.
    private static Raster Planned(PlatformPlan plan, PlatformSection section, JointSpec joint)
    {
        var toBed = section.ToLayout.Inverse();
        var sheet = new Raster(section.Size.X, section.Size.Y);
        double chamfer = plan.Spec.Coping.ArrisChamfer;
        double end = joint.EndTrim + joint.FaceRelief, mouth = plan.Spec.Deck.MouthChamfer;
        double a = section.From + (section.Number > 1 ? end : 0), b = section.To - (section.Number < section.Count ? end : 0);
        bool isIsland = plan.Faces.Count > 1;
        sheet.Fill(Strip(a, b, s => plan.CopingFront.At(s) + chamfer, s => plan.Back.At(s) - (isIsland ? chamfer : 0)));

        // Joints of a coping are square to the track that it faces.
        foreach (var face in plan.Spec.Coping.JointDepth > 0 ? plan.Faces : [])
        {
            double half = plan.Spec.Coping.JointWidth / 2;
            foreach (double groove in face.CopingJoints)
            {
                Point2 At(double s, double t) => Down(face.ToLayout(s, t), face.Profile.At(s));
                sheet.Fill(
                    [
                        At(groove - half, face.CopingFront.At(groove) - 1), At(groove + half, face.CopingFront.At(groove) - 1),
                        At(groove + half, face.CopingBack.At(groove)), At(groove - half, face.CopingBack.At(groove)),
                    ], false);
            }
        }

        // Joints of a coping's bricks and lines beside its margins, on a platform with a back; joints of a paving.
        foreach (var groove in isIsland ? [] : CopingGrooves.Of(plan.Faces[0], plan.Spec.Coping))
        {
            Cut(groove.From, groove.To, s => plan.CopingFront.At(s) + groove.Near, s => plan.CopingFront.At(s) + groove.Far);
        }

        // The joint between coping and deck.
        if (CopingSeam.Of(plan) is { } border)
        {
            Cut(border.From, border.To, s => plan.CopingBack.At(s) - border.Width, plan.CopingBack.At);
            if (plan.Body.FarCopingBack is { } beyond)
            {
                Cut(border.From, border.To, beyond.At, s => beyond.At(s) + border.Width);
            }
        }

        if (PavingLayout.Of(plan) is { } paving)
        {
            double half = plan.Spec.Deck.Paving!.Joint / 2;
            foreach (var seam in paving.Joints)
            {
                double more = seam.IsAcross ? half : 0, wide = seam.IsAcross ? 0 : half;
                PlanLine near = paving.At(seam.Near, -wide), far = paving.At(seam.Far, wide);
                Cut(seam.From - more, seam.To + more, near.At, far.At);
            }
        }

        foreach (var line in plan.Body.Lines.Where(l => l.GrooveDepth > 0))
        {
            sheet.Fill(Strip(Math.Max(a, line.From), Math.Max(a, Math.Min(b, line.To)), line.Near.At, line.Far.At), false);
        }

        foreach (var open in plan.Openings)
        {
            var (s, t) = (open.Middle.Chainage, open.Middle.Reach);
            if (open.IsRound)
            {
                sheet.Fill(Raster.Disc(Bed(s, t), ((open.Across / 2) + mouth) / Math.Cos(Math.PI / 12)), false);
                continue;
            }

            var (middle, along) = (plan.ToLayout(s, t), plan.Chart.At(s).Tangent);
            Point2 x = along * ((open.Along / 2) + mouth), y = along.Left * ((open.Across / 2) + mouth);
            sheet.Fill([.. new[] { middle - x - y, middle + x - y, middle + x + y, middle - x + y }.Select(p => Down(p, plan.TopAt(s, t)))], false);
        }

        return sheet;

        void Cut(double from, double to, Func<double, double> near, Func<double, double> far)
        {
            if (Math.Min(b, to) > Math.Max(a, from))
            {
                sheet.Fill(Strip(Math.Max(a, from), Math.Min(b, to), near, far), false);
            }
        }

        Point2[] Strip(double from, double to, Func<double, double> near, Func<double, double> far)
        {
            double[] stations = [from, .. plan.Stations.Where(s => s > from && s < to), to];
            return [.. stations.Select(s => Bed(s, near(s))), .. stations.Reverse().Select(s => Bed(s, far(s)))];
        }

        Point2 Bed(double s, double t) => Down(plan.ToLayout(s, t), plan.TopAt(Math.Clamp(s, a, b), t));

        Point2 Down(Point2 p, double z) => toBed.Apply(new(p.X, p.Y, z)) is var q ? new(q.X, q.Y) : default;
    }

    // Moves that press plastic out below the first change to a second layer.
    private static IEnumerable<(Point2 From, Point2 To, double Width)> Threads(IEnumerable<string> gcode)
    {
        int layer = 0;
        double width = 0.4;
        Point2 at = default;
        foreach (string line in gcode)
        {
            if (line.StartsWith(";LAYER_CHANGE", StringComparison.Ordinal) && ++layer > 1)
            {
                yield break;
            }

            if (line.StartsWith(";WIDTH:", StringComparison.Ordinal))
            {
                width = double.Parse(line[7..], CultureInfo.InvariantCulture);
            }

            if (!line.StartsWith("G1 ", StringComparison.Ordinal) && !line.StartsWith("G0 ", StringComparison.Ordinal))
            {
                continue;
            }

            var words = line.Split(';')[0].Split(' ', StringSplitOptions.RemoveEmptyEntries).Skip(1)
                .ToDictionary(w => w[0], w => double.Parse(w[1..], CultureInfo.InvariantCulture));
            Point2 to = new(words.GetValueOrDefault('X', at.X), words.GetValueOrDefault('Y', at.Y));
            if (layer == 1 && words.GetValueOrDefault('E') > 0 && to != at)
            {
                yield return (at, to, width);
            }

            at = to;
        }
    }
}
