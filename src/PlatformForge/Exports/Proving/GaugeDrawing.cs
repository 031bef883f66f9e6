using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Drawings.Sections;
using PlatformForge.Exports.Files;
using PlatformForge.Geometry;
using PlatformForge.Proofs;
using static System.FormattableString;

namespace PlatformForge.Exports.Proving;

/// <summary>The slide gauges of a face as they stand on its track, with what they show; beside them the other proofs of its platform with what they are
/// for.</summary>
internal static class GaugeDrawing
{
    private const double Width = 420, Height = 297; // A3
    private const double Column = 232, Heading = 22, Words = 64; // mm of paper: of the gauges, over them, for what they show
    private const double Behind = 14, Below = 3; // mm of model shown behind the coping and under the baseboard
    private const double LineStep = 3.6;

    private static readonly double[] Enlargements = [5, 4, 3, 2.5, 2, 1.5, 1.25, 1, 0.8, 0.5, 0.4, 0.25, 0.2, 0.1];

    public static Sheet Draw(Dossier dossier, PlatformDossier face, ProofSet set)
    {
        Proof[] gauges = [.. set.Proofs.Where(p => p.Kind == ProofKind.SlideGauge && p.Platform == face.Name && p.Rides?.Track == face.Track)];
        var sheet = new Sheet(Width, Height, Invariant($"{face.FaceName}: gauges and proofs"))
        {
            Description = Invariant($"Slide gauges of {face.FaceName} on their track ")
                + Invariant($"at {string.Join(", ", gauges.Select(g => Figures.Short(g.Rides!.Value.Chainage)))} mm, with what each shows."),
        };
        double upper = TitleBlock.Margin + Heading, lower = Height - TitleBlock.Margin - TitleBlock.Depth - 4,
            each = (lower - upper) / Math.Max(1, gauges.Length);
        double scale = gauges.Length == 0 ? 1 : Scale(dossier, face, gauges, Column - Words, each - 8);
        for (int i = 0; i < gauges.Length; i++)
        {
            One(sheet, dossier, face, gauges[i], scale, new(TitleBlock.Inset, upper + (i * each)), each);
        }

        Others(sheet, face, set, new(TitleBlock.Inset + Column + 6, upper), lower);
        sheet.Text("Gauges and proofs", new(TitleBlock.Inset, TitleBlock.Margin + 9), HouseStyle.Heading);
        sheet.Text("Each slide gauge belongs to its own chainage: on a curve one made for straight track lies. Seen along the track, the platform cut there.",
            new(TitleBlock.Inset, TitleBlock.Margin + 14.5), HouseStyle.Small);
        TitleBlock.Draw(sheet, dossier, face.FaceName, "Gauges and proofs", Invariant($"Gauges {Said(scale)}, all figures in mm of the model"),
            "Heights are over rail top, offsets from the track's middle.", "Files for printing: folder gauges.");
        return sheet;
    }

    private static string Said(double scale) => scale >= 1 ? Invariant($"{Figures.Short(scale)}:1") : Invariant($"1:{Figures.Short(1 / scale)}");

    private static double Scale(Dossier dossier, PlatformDossier face, Proof[] gauges, double width, double height)
    {
        var boxes = gauges.Select(g => g.Solid.Mesh.Box()).ToArray();
        double wide = boxes.Max(b => b.High.X - b.Low.X) + Behind, high = Math.Max(boxes.Max(b => b.High.Y), face.Plan.Spec.Height) + face.Plan.Site.RailTop
            + Below;
        return Enlargements.FirstOrDefault(e => e * wide <= width && e * high <= height, 0.05);
    }

    private static void One(Sheet sheet, Dossier dossier, PlatformDossier face, Proof gauge, double scale, Point2 corner, double depth)
    {
        var (low, high) = gauge.Solid.Mesh.Box();
        double s = gauge.Rides!.Value.Chainage, base0 = corner.Y + depth - 4 - (Below * scale);
        Point2 origin = new(corner.X + (-low.X * scale) + 2, base0);
        Point2 Of(double u, double z) => new(origin.X + (u * scale), origin.Y - (z * scale));
        double right = high.X + Behind - 4, rail = face.Plan.Site.RailTop;
        sheet.Area(Clipped(SectionRing.Of(face.Plan, s), right).Select(p => Of(p.X, p.Y)), new(HouseStyle.Coping), HouseStyle.Outline);
        sheet.Line(Of(low.X, 0), Of(right, 0), HouseStyle.Heavy);
        foreach (int side in (int[])[-1, 1])
        {
            double inner = side * dossier.Gauge / 2, outer = inner + (side * dossier.RailHead), foot = Math.Max(rail - dossier.Scale.ToModel(145), rail / 2);
            sheet.Area([Of(inner, foot), Of(inner, rail), Of(outer, rail), Of(outer, foot)], new(HouseStyle.Hair), HouseStyle.Thin);
        }

        foreach (var (a, b) in Edges(gauge.Solid.Mesh))
        {
            sheet.Line(Of(a.X, a.Y + rail), Of(b.X, b.Y + rail), new(0.2, HouseStyle.Accent));
        }

        sheet.Line(Of(0, -1), Of(0, high.Y + rail + 2), HouseStyle.Centre);
        double x = corner.X + Column - Words, y = corner.Y + 6;
        sheet.Text(Invariant($"{gauge.Mark}  chainage {Figures.Short(s)}"), new(x, y), HouseStyle.Subheading);
        foreach (var figure in gauge.Figures.Where(f => f.What != "chainage"))
        {
            y += LineStep;
            sheet.Text(Invariant($"{Figures.Fine(figure.Value)}  {figure.What}"), new(x, y), HouseStyle.Small);
        }
    }

    // What of a ring lies before a line.
    private static IEnumerable<Point2> Clipped(Point2[] ring, double right)
    {
        for (int i = 0; i < ring.Length; i++)
        {
            Point2 a = ring[i], b = ring[(i + 1) % ring.Length];
            if (a.X <= right)
            {
                yield return a;
            }

            if ((a.X - right) * (b.X - right) < 0)
            {
                yield return a + ((b - a) * ((right - a.X) / (b.X - a.X)));
            }
        }
    }

    // Edges between what faces the reader and what does not, each once.
    private static IEnumerable<(Point3 A, Point3 B)> Edges(Mesh mesh)
    {
        const double level = 0.999;
        var facing = new bool[mesh.TriangleCount];
        for (int t = 0; t < facing.Length; t++)
        {
            Point3 a = mesh.Vertices[mesh.Triangles[3 * t]],
                n = Point3.Cross(mesh.Vertices[mesh.Triangles[(3 * t) + 1]] - a, mesh.Vertices[mesh.Triangles[(3 * t) + 2]] - a);
            facing[t] = n.Z > level * n.Length;
        }

        int[] across = Geometry.Meshes.HalfEdges.Opposites(mesh);
        for (int h = 0; h < across.Length; h++)
        {
            if (facing[h / 3] && !facing[across[h] / 3])
            {
                yield return (mesh.Vertices[mesh.Triangles[h]], mesh.Vertices[mesh.Triangles[h % 3 == 2 ? h - 2 : h + 1]]);
            }
        }
    }

    // Every other proof of the face's platform by its mark, with what it is for under the first of a kind; what has no room is counted, never left out in
    // silence.
    private static void Others(Sheet sheet, PlatformDossier face, ProofSet set, Point2 at, double lower)
    {
        Proof[] others = [.. set.Proofs.Where(p => p.Kind != ProofKind.SlideGauge && (p.Platform.Length == 0 || p.Platform == face.Name))];
        double right = Width - TitleBlock.Inset, y = at.Y + 3, room = lower - LineStep;
        var told = new HashSet<string>(StringComparer.Ordinal);
        for (int i = 0; i < others.Length; i++)
        {
            var proof = others[i];
            var lines = told.Add(proof.Use) ? TextStyle.Wrap(proof.Use, HouseStyle.Small, right - at.X) : [];
            y += i == 0 ? 0 : lines.Count > 0 ? LineStep * 1.6 : LineStep * 1.15;
            if (y + (lines.Count * LineStep) > room)
            {
                sheet.Text(Invariant($"and {others.Length - i} more: {ProofFiles.Folder}/figures.csv has them all."), new(at.X, lower), HouseStyle.Strong);
                return;
            }

            sheet.Text(Invariant($"{(proof.Mark.Length > 0 ? proof.Mark + "  " : "")}{proof.Name}: {proof.Size.X:0} x {proof.Size.Y:0} x {proof.Size.Z:0.#} ")
                + Invariant($"mm, {proof.Estimate.Grams:0.0} g"), new(at.X, y),
                HouseStyle.Strong);
            foreach (string line in lines)
            {
                y += LineStep;
                sheet.Text(line, new(at.X, y), HouseStyle.Small);
            }
        }
    }
}
