using PlatformForge.Exports.Pictures;
using PlatformForge.Exports.Pictures.Bodies;
using PlatformForge.Exports.Pictures.Light;
using PlatformForge.Geometry;

namespace PlatformForge.Exports.LineArt;

/// <summary>Bodies drawn in lines, seen from far away along one direction, what is hidden left out, fitted into a box on a sheet.</summary>
internal sealed class LinePicture
{
    // Dots a mm of sheet, by which it is found what hides what: fine enough for a wall of two lines of a nozzle at any scale that is drawn.
    private const double Dots = 8;

    // A line lies on the surfaces that it bounds; they may be nearer than it by what a sloping surface rises over this many dots.
    private const double OwnSurface = 4;

    // How far beside a brick's edge, in dots, and how much behind it, mm, the next surface lies where the edge is the wall's own.
    private const double Aside = 6, Rim = 2;

    // What runs this little across the picture, in dots, is seen along itself and has no side.
    private const double NoDot = 1e-9;

    // Shorter than this, in dots, nothing is shown or left out: rounding on the rim of a surface.
    private const int Stub = 3;

    private readonly IReadOnlyList<Mesh> bodies;
    private readonly View view;

    /// <summary>Fits the bodies.</summary>
    /// <param name="bodies">What is drawn, mm.</param>
    /// <param name="toward">Direction to the eye.</param>
    /// <param name="room">Width and height of the box, mm on the sheet.</param>
    public LinePicture(IReadOnlyList<Mesh> bodies, Point3 toward, Point2 room)
    {
        this.bodies = bodies;
        var plain = View.Along(toward, Point3.Cross(new(0, 0, 1), toward));
        var (left, top, right, bottom) = plain.Box(bodies.Select(b => b.Vertices));
        Scale = Math.Min(room.X / (right - left), room.Y / (bottom - top));
        Size = new((right - left) * Scale, (bottom - top) * Scale);
        view = plain with { Scale = Scale * Dots, OriginX = 1 - (left * Scale * Dots), OriginY = 1 - (top * Scale * Dots) };
    }

    /// <summary>Sheet mm for a mm of the model, across the line of sight.</summary>
    public double Scale { get; }

    /// <summary>Width and height that are used, mm on the sheet.</summary>
    public Point2 Size { get; }

    /// <summary>Where a point falls, mm from the box's top left corner.</summary>
    public Point2 Of(Point3 p)
    {
        var dot = view.Project(p);
        return new((dot.X - 1) / Dots, (dot.Y - 1) / Dots);
    }

    /// <summary>Every stretch of an edge that is seen.</summary>
    /// <param name="cancel">Gives up between bodies.</param>
    public IReadOnlyList<VisibleLine> Lines(CancellationToken cancel = default)
    {
        using var field = new DepthField((int)Math.Ceiling(Size.X * Dots) + 3, (int)Math.Ceiling(Size.Y * Dots) + 3);
        foreach (var body in bodies)
        {
            cancel.ThrowIfCancellationRequested();
            field.Add(body, view);
        }

        var lines = new List<VisibleLine>();
        foreach (var edge in bodies.SelectMany(b => SharpEdges.Of(b, view)))
        {
            cancel.ThrowIfCancellationRequested();
            lines.AddRange(Seen(field, edge));
        }

        return lines;
    }

    private IEnumerable<VisibleLine> Seen(DepthField field, InkLine edge)
    {
        Point3 a = view.Project(edge.From), along = view.Project(edge.To) - a;
        int steps = Math.Max(1, (int)Math.Ceiling(Math.Max(Math.Abs(along.X), Math.Abs(along.Y))));
        double slack = OwnSurface / view.Scale;
        var shown = new bool[steps];
        for (int i = 0; i < steps; i++)
        {
            var at = a + (along * ((i + 0.5) / steps));
            shown[i] = field.Behind(at.X, at.Y) <= at.Z + slack && (!edge.Detail || IsRim(at));
        }

        // Half a dozen dots to one side nothing of the wall is left: what stands there is behind it. A wall that is seen nearly along itself goes as far back
        // on one side as it comes forward on the other.
        bool IsRim(Point3 at)
        {
            var side = new Point2(along.X, along.Y).Left * (Aside / Math.Max(NoDot, new Point2(along.X, along.Y).Length));
            double one = field.Behind(at.X + side.X, at.Y + side.Y) - at.Z, other = field.Behind(at.X - side.X, at.Y - side.Y) - at.Z;
            return Math.Min(one, other) < -Rim && one + other < -Rim;
        }

        Point2 Place(int step) => new((a.X - 1 + (along.X * step / steps)) / Dots, (a.Y - 1 + (along.Y * step / steps)) / Dots);
        foreach (var (from, to) in Runs(shown))
        {
            yield return new(Place(from), Place(to), edge.Contour);
        }
    }

    /// <summary>Stretches that are shown, stubs between them closed and stubs alone left out; a whole edge is shown however short it is.</summary>
    private static List<(int From, int To)> Runs(bool[] shown)
    {
        var runs = new List<(int From, int To)>();
        for (int i = 0; i < shown.Length; i++)
        {
            if (!shown[i])
            {
                continue;
            }

            int start = i;
            while (i + 1 < shown.Length && shown[i + 1])
            {
                i++;
            }

            if (runs.Count > 0 && start - runs[^1].To < Stub)
            {
                runs[^1] = (runs[^1].From, i + 1);
            }
            else
            {
                runs.Add((start, i + 1));
            }
        }

        runs.RemoveAll(r => r.To - r.From < Math.Min(Stub, shown.Length));
        return runs;
    }
}
