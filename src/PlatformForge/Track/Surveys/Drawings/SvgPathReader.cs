using PlatformForge.Geometry;

namespace PlatformForge.Track.Surveys.Drawings;

/// <summary>
/// Walks the data of an SVG path, all commands (SVG 2, section 9.3), and hands each subpath over flattened. As the standard
/// asks, what comes before a fault is kept out: a path that cannot be read wholly is refused wholly.
/// </summary>
internal sealed class SvgPathReader(SvgTransform transform, DrawingBudget budget)
{
    private readonly List<(Point2[] Points, bool Straights)> subpaths = [];
    private CurveFlattener line = new(budget);
    private Point2 here, start, control;
    private char previous;

    public static IReadOnlyList<(Point2[] Points, bool Straights)> Read(string data, SvgTransform transform, DrawingBudget budget) =>
        new SvgPathReader(transform, budget).Walk(data);

    private List<(Point2[] Points, bool Straights)> Walk(string data)
    {
        var text = new SvgPathText(data);
        while (!text.AtEnd())
        {
            char command = text.Command() ?? throw new UnreadableDrawingException("The path's data has a number where a command belongs.");
            if (previous == '\0' && command is not ('M' or 'm'))
            {
                throw new UnreadableDrawingException("The path does not begin with a move.");
            }

            if (command is 'Z' or 'z')
            {
                Draw(start);
                (here, previous) = (start, 'Z');
                continue;
            }

            do
            {
                Step(command, ref text);
                previous = char.ToUpperInvariant(command);
                command = command switch { 'M' => 'L', 'm' => 'l', _ => command };
            }
            while (text.AtNumber());
        }

        Finish();
        return subpaths;
    }

    private void Step(char command, ref SvgPathText text)
    {
        var origin = char.IsAsciiLetterLower(command) ? here : default;
        switch (char.ToUpperInvariant(command))
        {
            case 'M':
                Finish();
                here = start = origin + Pair(ref text);
                return;
            case 'L':
                Draw(origin + Pair(ref text));
                return;
            case 'H':
                Draw(new(origin.X + text.Number(), here.Y));
                return;
            case 'V':
                Draw(new(here.X, origin.Y + text.Number()));
                return;
            case 'C':
                Cubic(origin + Pair(ref text), origin + Pair(ref text), origin + Pair(ref text));
                return;
            case 'S':
                Cubic(previous is 'C' or 'S' ? (2 * here) - control : here, origin + Pair(ref text), origin + Pair(ref text));
                return;
            case 'Q':
                Quadratic(origin + Pair(ref text), origin + Pair(ref text));
                return;
            case 'T':
                Quadratic(previous is 'Q' or 'T' ? (2 * here) - control : here, origin + Pair(ref text));
                return;
            case 'A':
                double rx = text.Number(), ry = text.Number(), turn = text.Number() * Math.PI / 180;
                bool large = text.Flag(), sweep = text.Flag();
                Arc(rx, ry, turn, large, sweep, origin + Pair(ref text));
                return;
            default:
                throw new UnreadableDrawingException($"The path's data has the unknown command '{command}'.");
        }
    }

    private static Point2 Pair(ref SvgPathText text) => new(text.Number(), text.Number());

    private CurveFlattener Pen()
    {
        if (line.Count == 0)
        {
            line.LineTo(transform.Apply(here));
        }

        return line;
    }

    private void Draw(Point2 end)
    {
        Pen().LineTo(transform.Apply(end));
        here = end;
    }

    private void Cubic(Point2 c1, Point2 c2, Point2 end)
    {
        Pen().CubicTo(transform.Apply(c1), transform.Apply(c2), transform.Apply(end));
        (here, control) = (end, c2);
    }

    private void Quadratic(Point2 c, Point2 end)
    {
        Pen().QuadraticTo(transform.Apply(c), transform.Apply(end));
        (here, control) = (end, c);
    }

    /// <summary>An elliptical arc, from end points to centre as in SVG 2, appendix B.2.4 and B.2.5.</summary>
    private void Arc(double rx, double ry, double turn, bool large, bool sweep, Point2 end)
    {
        (rx, ry) = (Math.Abs(rx), Math.Abs(ry));
        var pen = Pen();
        if (rx == 0 || ry == 0 || end == here)
        {
            Draw(end);
            return;
        }

        var (sin, cos) = Math.SinCos(turn);
        var half = (here - end) * 0.5;
        double x = (cos * half.X) + (sin * half.Y), y = (cos * half.Y) - (sin * half.X);
        double small = (x * x / (rx * rx)) + (y * y / (ry * ry));
        if (small > 1)
        {
            (rx, ry) = (rx * Math.Sqrt(small), ry * Math.Sqrt(small));
        }

        double square = (x * x * ry * ry) + (y * y * rx * rx);
        double factor = Math.Sqrt(Math.Max(0, ((rx * rx * ry * ry) - square) / square)) * (large == sweep ? -1 : 1);
        double cx = factor * rx * y / ry, cy = -factor * ry * x / rx;
        var middle = (here + end) * 0.5;
        var centre = new Point2((cos * cx) - (sin * cy) + middle.X, (sin * cx) + (cos * cy) + middle.Y);
        double from = Math.Atan2((y - cy) / ry, (x - cx) / rx), to = Math.Atan2((-y - cy) / ry, (-x - cx) / rx), swept = to - from;
        swept += sweep && swept < 0 ? 2 * Math.PI : !sweep && swept > 0 ? -2 * Math.PI : 0;
        pen.EllipseTo(transform.Apply(centre), transform.Turn(new Point2(cos, sin) * rx), transform.Turn(new Point2(-sin, cos) * ry), from, swept);
        Draw(end);
    }

    private void Finish()
    {
        if (line.Count > 1)
        {
            subpaths.Add((line.ToArray(), line.Straights));
        }

        line = new(budget);
    }
}
