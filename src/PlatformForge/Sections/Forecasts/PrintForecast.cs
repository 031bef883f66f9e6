using PlatformForge.Geometry;
using PlatformForge.Sections.Forms;

namespace PlatformForge.Sections.Forecasts;

/// <summary>
/// Forecasts what a mesh takes to print: the lines of its layers, measured on cuts through it. The outer walls are gone round; what is left of a layer's
/// area is inner walls, then filling, solid under and over all that lies open, else open. Layers that look alike are cut once for several.
/// </summary>
internal sealed class PrintForecast
{
    // At least these many layers are cut between the crowded ones, however tall the piece.
    private const int LooseCuts = 24;

    // A face is level, and so has solid filling behind it, up to 45 degrees.
    private const double Level = 0.7;

    // Share of the piece's outline that faces of one layer must have for its neighbours to be cut one by one.
    private const double Crowded = 0.02;

    // Open filling under this area is filled solid. Common practice, no source.
    private const double SolidBelow = 70;

    private readonly Mesh mesh;
    private readonly PrinterSpec printer;
    private readonly PrintSpeeds speeds;
    private readonly Strokes strokes;
    private readonly double spacing;
    private readonly double[] up, down;
    private readonly int layers;

    private PrintForecast(Mesh mesh, PrinterSpec printer)
    {
        (this.mesh, this.printer, speeds) = (mesh, printer, printer.Speeds);
        strokes = new(speeds.Acceleration, speeds.CornerJump);
        spacing = printer.LineSpacing;
        layers = Math.Max(1, LayerAt(mesh.Box().High.Z, false) + 1);
        (up, down) = (new double[layers], new double[layers]);
    }

    /// <summary>The forecast for a piece as it stands on the bed, least z at nil.</summary>
    public static PrintEstimate Of(Mesh mesh, double volume, PrinterSpec printer) => new PrintForecast(mesh, printer).Run(volume);

    private PrintEstimate Run(double volume)
    {
        double outline = LevelFaces();
        var cuts = Cuts(outline);
        var (first, crossing) = Crossings(cuts);
        var tracer = new LayerTracer(mesh, speeds);
        double plastic = 0, seconds = 0, openBelow = 0;
        for (int i = 0; i < cuts.Count; i++)
        {
            int layer = cuts[i], stands = (i + 1 < cuts.Count ? cuts[i + 1] : layers) - layer;
            var rings = tracer.Trace(Middle(layer), crossing.AsSpan(first[i]..first[i + 1]), layer == 0);
            var (used, time, open) = Layer(layer, rings, openBelow);
            plastic += used * Thickness(layer) * stands;
            seconds += time * stands;
            openBelow = open;
        }

        return PrintEstimate.Of(volume, plastic, seconds / 3600, printer);
    }

    // Plan area that becomes plastic, time, and area of open filling.
    private (double Used, double Seconds, double Open) Layer(int layer, LayerRings rings, double openBelow)
    {
        double area = Math.Max(rings.Area, 0);
        if (area <= 0 || rings.Length <= 0)
        {
            return default;
        }

        double walls = Math.Min(area, printer.Walls * rings.Length * spacing), inside = area - walls;
        double solid = Math.Min(inside, inside / area * Shell(layer)), open = inside - solid;
        (solid, open) = open < SolidBelow ? (inside, 0) : (solid, open);
        double bridged = Math.Min(solid, openBelow), around = Math.Max((walls / spacing / rings.Length) - 1, 0);
        double infill = layer == 0 ? speeds.FirstLayer : Held(speeds.Infill);
        double time = rings.OuterSeconds + (around * rings.InnerSeconds)
            + Filling(solid - bridged, rings.Length, infill) + Filling(bridged, rings.Length, Held(speeds.Bridge))
            + Filling(open * printer.Infill, rings.Length, infill)
            + Moves(rings, around, inside > 0, area);
        return (walls + solid + (open * printer.Infill), time, open);
    }

    // Between the parts of a layer the nozzle goes without plastic, as far as neighbouring parts are apart.
    private double Moves(LayerRings rings, double around, bool filled, double area)
    {
        double moves = rings.Count * (1 + around) * MovesPerRing + (filled ? rings.Count : 0);
        double length = Math.Sqrt(outlineArea / Math.Max(rings.Count, 1));
        return moves * (strokes.Seconds(length, speeds.Travel, 0, 0) + speeds.Retraction);
    }

    private const double MovesPerRing = 2;
    private double outlineArea;

    // Lines across an area, as long as the mean chord of it (Crofton: pi times area over border).
    private double Filling(double area, double border, double speed)
    {
        if (area <= 0)
        {
            return 0;
        }

        double chord = Math.PI * area / border, turn = strokes.Corner(Math.Sqrt(0.5), speed);
        return area / spacing / chord * strokes.Seconds(chord, speed, turn, turn);
    }

    private double Held(double speed) => Math.Min(speed, speeds.Flow / (spacing * printer.Layer));

    // Plan area within a layer that has open air near above or below it.
    private double Shell(int layer)
    {
        double shell = 0;
        for (int k = 0; k < printer.SolidLayers; k++)
        {
            shell += (layer + k < layers ? up[layer + k] : 0) + (layer - k >= 0 ? down[layer - k] : 0);
        }

        return shell;
    }

    private double LevelFaces()
    {
        double outline = 0;
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            Point3 a = mesh.Vertices[mesh.Triangles[3 * t]], b = mesh.Vertices[mesh.Triangles[(3 * t) + 1]], c = mesh.Vertices[mesh.Triangles[(3 * t) + 2]];
            var normal = Point3.Cross(b - a, c - a);
            if (Math.Abs(normal.Z) <= Level * normal.Length)
            {
                continue;
            }

            double plan = Math.Abs(normal.Z) / 2, z = (a.Z + b.Z + c.Z) / 3;
            (normal.Z > 0 ? up : down)[Math.Clamp(LayerAt(z, normal.Z < 0), 0, layers - 1)] += plan;
            outline += normal.Z < 0 ? plan : 0;
        }

        return outlineArea = outline;
    }

    // The layer under a face that looks up, over one that looks down.
    private int LayerAt(double z, bool above)
    {
        double at = (z - printer.FirstLayerHeight) / printer.Layer;
        return (int)Math.Floor(at + (above ? 1.5 : 0.5));
    }

    private double Thickness(int layer) => layer == 0 ? printer.FirstLayerHeight : printer.Layer;

    private double Middle(int layer) => layer == 0 ? printer.FirstLayerHeight / 2 : printer.FirstLayerHeight + ((layer - 0.5) * printer.Layer);

    // Layers to cut, rising: every one near where much of the piece begins or ends, a few of the others.
    private List<int> Cuts(double outline)
    {
        var crowded = new bool[layers];
        for (int k = 0; k < layers; k++)
        {
            bool busy = up[k] + down[k] > Crowded * outline;
            for (int near = Math.Max(0, k - printer.SolidLayers); busy && near <= Math.Min(layers - 1, k + printer.SolidLayers); near++)
            {
                crowded[near] = true;
            }
        }

        int stride = Math.Max(1, crowded.Count(c => !c) / LooseCuts), since = 0;
        var cuts = new List<int>();
        for (int k = 0; k < layers; k++)
        {
            bool taken = k == 0 || crowded[k] || crowded[k - 1] || since >= stride;
            since = taken ? 1 : since + 1;
            if (taken)
            {
                cuts.Add(k);
            }
        }

        return cuts;
    }

    // Which triangles cross which cut: those of cut i stand from First[i] on.
    private (int[] First, int[] Crossing) Crossings(List<int> cuts)
    {
        var heights = cuts.ConvertAll(Middle);
        var from = new int[mesh.TriangleCount];
        var to = new int[mesh.TriangleCount];
        var first = new int[cuts.Count + 1];
        for (int t = 0; t < from.Length; t++)
        {
            double a = mesh.Vertices[mesh.Triangles[3 * t]].Z, b = mesh.Vertices[mesh.Triangles[(3 * t) + 1]].Z,
                c = mesh.Vertices[mesh.Triangles[(3 * t) + 2]].Z;
            from[t] = Above(heights, Math.Min(a, Math.Min(b, c)));
            to[t] = Above(heights, Math.Max(a, Math.Max(b, c)));
            for (int i = from[t]; i < to[t]; i++)
            {
                first[i + 1]++;
            }
        }

        for (int i = 0; i < cuts.Count; i++)
        {
            first[i + 1] += first[i];
        }

        var crossing = new int[first[^1]];
        int[] next = [.. first];
        for (int t = 0; t < from.Length; t++)
        {
            for (int i = from[t]; i < to[t]; i++)
            {
                crossing[next[i]++] = t;
            }
        }

        return (first, crossing);
    }

    // How many heights are at or under z: the first cut above it.
    private static int Above(List<double> heights, double z)
    {
        int at = heights.BinarySearch(z);
        return at >= 0 ? at + 1 : ~at;
    }
}
