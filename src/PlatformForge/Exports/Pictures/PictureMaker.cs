using System.Collections.Concurrent;
using System.Runtime.CompilerServices;
using PlatformForge.Exports.Looks;
using PlatformForge.Exports.Pictures.Bodies;
using PlatformForge.Exports.Pictures.Light;
using PlatformForge.Geometry;

namespace PlatformForge.Exports.Pictures;

/// <summary>What a picture shows and how.</summary>
/// <param name="Bodies">Closed meshes.</param>
/// <param name="Toward">Direction to the eye.</param>
/// <param name="Level">Direction that runs to the right on the sheet.</param>
/// <param name="Sunward">Direction to the sun.</param>
/// <param name="Ground">Height of the ground that catches shadows, mm; null floats the bodies.</param>
internal sealed record Scene(IReadOnlyList<SceneBody> Bodies, Point3 Toward, Point3 Level, Point3 Sunward, double? Ground)
{
    /// <summary>Where the eye is; null for a parallel view.</summary>
    public Point3? Eye { get; init; }

    /// <summary>What must be in the picture; null for everything.</summary>
    public IReadOnlyList<Point3>? Framed { get; init; }

    /// <summary>Whether what lies far off fades into the paper.</summary>
    public bool Fades { get; init; } = true;

    /// <summary>Corners of a box that holds all that is seen, where the picture shows a small part of its bodies: shade is worked out for that alone, as much
    /// finer, and has soft edges; null for all.</summary>
    public IReadOnlyList<Point3>? Shaded { get; init; }

    /// <summary>Free room round the bodies, as a share of the picture's width.</summary>
    public double Margin { get; init; } = 0.045;

    /// <summary>Least height over width; long bodies get a sky rather than a letter box.</summary>
    public double LeastAspect { get; init; } = 0.36;

    /// <summary>Greatest height over width.</summary>
    public double MostAspect { get; init; } = 1;
}

/// <summary>
/// Draws scenes: every pixel is the mean of nine samples, lit by sun and sky, with sharp edges inked. Strips of rows are independent, so
/// any number of threads gives the same bytes.
/// A run draws two or three pictures and ends: the inner loops, here and in what this uses, are compiled at full strength at once, since the
/// usual warming up would take longer than the pictures.
/// </summary>
internal sealed class PictureMaker
{
    private const int Fine = 3; // samples a pixel each way
    private const int StripRows = 16; // pixels
    private const double InkWidth = 0.8; // pixels
    private const double InkStrength = 0.34;
    private const double InkBias = 0.12; // mm: less than the least step worth showing

    private static readonly Rgb InkColour = new(0x3A, 0x33, 0x2C);

    private readonly Scene scene;
    private readonly View view; // in samples
    private readonly Lighting lighting;
    private readonly int width;
    private readonly int height;
    private readonly List<(Point3[] On, SceneBody Body, int First, StripBins Bins)> placed = [];
    private readonly Surface[] surfaces; // a triangle each
    private readonly List<(LinearColour Colour, double Grain)> looks = []; // a paint of a body each
    private readonly List<InkLine> ink = [];
    private readonly Haze haze;
    private readonly StripBins lines;

    private PictureMaker(Scene scene, int width, int threads)
    {
        this.scene = scene;
        this.width = width;
        (view, height) = Framed(scene, width);
        int first = 0;
        foreach (var body in scene.Bodies)
        {
            var on = new Point3[body.Mesh.Vertices.Length];
            view.Project(body.Mesh.Vertices, on);
            placed.Add((on, body, first, StripBins.Of(body.Mesh.TriangleCount, Strips, StripRows * Fine, i => Extent(on, body.Mesh, 3 * i))));
            first += body.Mesh.TriangleCount;
        }

        surfaces = new Surface[first];
        foreach (var (_, body, at, _) in placed)
        {
            int own = looks.Count;
            looks.AddRange(body.Colours.Select(c => (LinearColour.Of(c), body.Grain)));
            for (int i = 0; i < body.Mesh.TriangleCount; i++)
            {
                surfaces[at + i] = new(View.Unit(SharpEdges.Normal(body.Mesh, i)), own + body.PaintOf(i));
            }
        }

        ink.AddRange(scene.Bodies.Where(b => b.Outlined).SelectMany(b => SharpEdges.Of(b.Mesh, view)).Where(l => !l.Detail)
            .Select(l => new InkLine(view.Project(l.From), view.Project(l.To))));
        lines = StripBins.Of(ink.Count, Strips, StripRows * Fine,
            i => (Math.Min(ink[i].From.Y, ink[i].To.Y) - (InkWidth * Fine), Math.Max(ink[i].From.Y, ink[i].To.Y) + (InkWidth * Fine)));
        lighting = new(scene.Bodies, scene.Sunward, new(0, 0, scene.Ground is null && view.Toward.Z < 0 ? -1 : 1), scene.Level, width * height, threads,
            scene.Shaded);
        haze = new(view, scene.Fades ? scene.Framed : null);
    }

    // The view in samples that puts the scene into a picture so wide, and the picture's height in pixels.
    private static (View View, int Height) Framed(Scene scene, int width)
    {
        var plain = View.Along(scene.Toward, scene.Level) with { Eye = scene.Eye };
        var (left, top, right, bottom) = plain.Box(scene.Framed is { } framed ? [[.. framed]] : scene.Bodies.Select(b => b.Mesh.Vertices));
        double room = width * (1 - (2 * scene.Margin)), scale = room / (right - left);
        double tall = ((bottom - top) * scale) + (2 * scene.Margin * width);
        if (tall > width * scene.MostAspect)
        {
            scale *= ((width * scene.MostAspect) - (2 * scene.Margin * width)) / ((bottom - top) * scale);
            tall = width * scene.MostAspect;
        }

        int rows = (int)Math.Round(Math.Max(tall, width * scene.LeastAspect));
        double x = Fine * ((width / 2.0) - ((left + right) / 2 * scale)), y = Fine * ((rows / 2.0) - ((top + bottom) / 2 * scale));
        return (plain.Enlarged(scale * Fine, x, y), rows);
    }

    public static PixelImage Draw(Scene scene, int width, int threads = -1) => new PictureMaker(scene, width, threads).Draw(threads);

    private int Strips => (height + StripRows - 1) / StripRows;

    private PixelImage Draw(int threads)
    {
        var pixels = new byte[3 * width * height];

        // A strip's samples take some megabytes: whoever has finished one uses them again for the next.
        var rasters = new ConcurrentBag<Raster>();
        Parallel.For(0, Strips, new ParallelOptions { MaxDegreeOfParallelism = threads }, strip =>
        {
            int top = strip * StripRows, rows = Math.Min(StripRows, height - top);
            var raster = rasters.TryTake(out var used) ? used : new Raster(width * Fine, StripRows * Fine);
            raster.Begin(top * Fine, rows * Fine);
            foreach (var (on, body, first, bins) in placed)
            {
                foreach (int i in bins.On(strip))
                {
                    Fill(raster, on, body.Mesh, 3 * i, first + i);
                }
            }

            foreach (int i in lines.On(strip))
            {
                var line = ink[i];
                raster.Ink(line.From, line.To, InkWidth * Fine, view.DepthOf(InkBias, (line.From.Z + line.To.Z) / 2));
            }

            var sky = new SkyMemo(width);
            for (int y = top; y < top + rows; y++)
            {
                sky.Begin(y);
                for (int x = 0; x < width; x++)
                {
                    Resolve(raster, sky, x, y, top, pixels.AsSpan(3 * ((y * width) + x), 3));
                }
            }

            rasters.Add(raster);
        });
        return new(width, height, pixels);
    }

    /// <summary>The mean of a pixel's samples; those that show the same triangle are lit once, at their middle.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Resolve(Raster raster, SkyMemo sky, int x, int y, int top, Span<byte> to)
    {
        int at = ((y - top) * Fine * width * Fine) + (x * Fine);
        int inked = 0, first = raster.Shown[at];
        bool alike = true;
        double depth = 0;
        for (int j = 0; j < Fine; j++)
        {
            int row = at + (j * width * Fine);
            ReadOnlySpan<int> shown = raster.Shown.AsSpan(row, Fine);
            ReadOnlySpan<bool> covered = raster.Inked.AsSpan(row, Fine);
            ReadOnlySpan<float> deep = raster.Depth.AsSpan(row, Fine);
            for (int i = 0; i < Fine; i++)
            {
                alike &= shown[i] == first;
                inked += covered[i] ? 1 : 0;
                depth += deep[i];
            }
        }

        // Within a surface, and on paper, all samples show the same.
        var colour = alike ? Light(sky, x, first, (x * Fine) + (Fine / 2.0), (y * Fine) + (Fine / 2.0), depth / (Fine * Fine)) : Mixed(raster, sky, x, y, at);
        double cover = InkStrength * inked / (Fine * Fine);
        ((colour * (1 - cover)) + (LinearColour.Of(InkColour) * cover)).Put(to);
    }

    // Of a pixel whose samples show several things.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private LinearColour Mixed(Raster raster, SkyMemo sky, int x, int y, int at)
    {
        Span<int> shown = stackalloc int[Fine * Fine];
        Span<int> counts = stackalloc int[Fine * Fine];
        Span<(double X, double Y, double Z)> sums = stackalloc (double, double, double)[Fine * Fine];
        int kinds = 0;
        for (int j = 0; j < Fine; j++)
        {
            for (int i = 0; i < Fine; i++)
            {
                int sample = at + (j * width * Fine) + i, what = raster.Shown[sample], kind = kinds > 0 && shown[kinds - 1] == what ? kinds - 1
                    : shown[..kinds].IndexOf(what);
                if (kind < 0)
                {
                    kind = kinds++;
                    shown[kind] = what;
                    (counts[kind], sums[kind]) = (0, default);
                }

                counts[kind]++;
                sums[kind] = (sums[kind].X + (x * Fine) + i + 0.5, sums[kind].Y + (y * Fine) + j + 0.5, sums[kind].Z + (what < 0 ? 0 : raster.Depth[sample]));
            }
        }

        LinearColour colour = default;
        for (int kind = 0; kind < kinds; kind++)
        {
            double share = 1.0 / counts[kind];
            var (sx, sy, sz) = sums[kind];
            colour += Light(sky, x, shown[kind], sx * share, sy * share, sz * share) * ((double)counts[kind] / (Fine * Fine));
        }

        return colour;
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private LinearColour Light(SkyMemo sky, int pixel, int what, double x, double y, double depth)
    {
        if (what == Raster.Nothing)
        {
            var paper = Haze.Paper;
            return scene.Ground is { } ground && view.OnLevel(x, y, ground) is { } foot
                ? haze.Over(paper * (1 - GroundShade + (GroundShade * lighting.OnGround(foot, Open(sky, pixel, what, foot, Lighting.Up)))), foot)
                : paper;
        }

        ref readonly var surface = ref surfaces[what];
        var point = view.Unproject(x, y, depth);
        var (colour, grain) = looks[surface.Look];
        return haze.Over((colour * (lighting.At(point, surface.Normal, Open(sky, pixel, what, point, surface.Normal)) * Wash.At(point, grain))).Bent(), point);
    }

    private double Open(SkyMemo sky, int pixel, int what, Point3 point, Point3 normal)
    {
        if (!sky.Knows(pixel, what, out double open))
        {
            open = lighting.Open(point, normal);
            sky.Keep(pixel, what, open);
        }

        return open;
    }

    // What a triangle is to the light.
    private readonly record struct Surface(Point3 Normal, int Look);

    // How much of their darkness shadows keep on the paper that is the ground.
    private const double GroundShade = 0.62;

    // The rows that a triangle takes; NaN where it reaches behind the eye.
    private (double Top, double Bottom) Extent(Point3[] on, Mesh mesh, int corner)
    {
        int a = mesh.Triangles[corner], b = mesh.Triangles[corner + 1], c = mesh.Triangles[corner + 2];
        return IsAhead(mesh.Vertices[a], mesh.Vertices[b], mesh.Vertices[c])
            ? (Math.Min(on[a].Y, Math.Min(on[b].Y, on[c].Y)), Math.Max(on[a].Y, Math.Max(on[b].Y, on[c].Y)))
            : (double.NaN, double.NaN);
    }

    private bool IsAhead(Point3 a, Point3 b, Point3 c) => view.Eye is null
        || (view.Ahead(a) >= View.Near && view.Ahead(b) >= View.Near && view.Ahead(c) >= View.Near);

    // A triangle that reaches behind the eye is cut off before it.
    private void Fill(Raster raster, Point3[] on, Mesh mesh, int corner, int what)
    {
        int a = mesh.Triangles[corner], b = mesh.Triangles[corner + 1], c = mesh.Triangles[corner + 2];
        if (IsAhead(mesh.Vertices[a], mesh.Vertices[b], mesh.Vertices[c]))
        {
            raster.Fill(in on[a], in on[b], in on[c], what);
            return;
        }

        var kept = new List<Point3>(4);
        Point3[] ring = [mesh.Vertices[a], mesh.Vertices[b], mesh.Vertices[c]];
        for (int i = 0; i < ring.Length; i++)
        {
            Point3 p = ring[i], q = ring[(i + 1) % ring.Length];
            double ahead = view.Ahead(p) - View.Near, next = view.Ahead(q) - View.Near;
            if (ahead >= 0)
            {
                kept.Add(view.Project(p));
            }

            if (ahead >= 0 != next >= 0)
            {
                kept.Add(view.Project(p + ((q - p) * (ahead / (ahead - next)))));
            }
        }

        for (int i = 1; i + 1 < kept.Count; i++)
        {
            raster.Fill(kept[0], kept[i], kept[i + 1], what);
        }
    }
}
