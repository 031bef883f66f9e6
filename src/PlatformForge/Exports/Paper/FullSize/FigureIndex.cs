using PlatformForge.Geometry;

namespace PlatformForge.Exports.Paper.FullSize;

/// <summary>Finds the figures near a place, so that each sheet looks at its own and the cost of all sheets grows with the platform and not with its
/// square.</summary>
internal sealed class FigureIndex
{
    private const double Cell = 60; // mm: a few cells a sheet

    private readonly FullSizeFigures figures;
    private readonly Dictionary<(int X, int Y), List<(int Line, int Segment)>> lines = [];

    public FigureIndex(FullSizeFigures figures)
    {
        this.figures = figures;
        for (int i = 0; i < figures.Lines.Count; i++)
        {
            var line = figures.Lines[i];
            if (line.IsArea)
            {
                Enter(line.Points, (i, 0));
                continue;
            }

            for (int k = 0; k + 1 < line.Points.Length; k++)
            {
                Enter([line.Points[k], line.Points[k + 1]], (i, k));
            }
        }
    }

    /// <summary>Lines, whole areas and unbroken stretches of lines, that may come within a distance of a place, in the order of the figures.</summary>
    public IEnumerable<FigureLine> Near(Point2 place, double distance)
    {
        var found = new SortedSet<(int Line, int Segment)>();
        for (int x = CellOf(place.X - distance); x <= CellOf(place.X + distance); x++)
        {
            for (int y = CellOf(place.Y - distance); y <= CellOf(place.Y + distance); y++)
            {
                found.UnionWith(lines.GetValueOrDefault((x, y)) ?? []);
            }
        }

        var stretch = new List<Point2>();
        (int Line, int Segment) last = (-1, -1);
        foreach (var at in found)
        {
            var line = figures.Lines[at.Line];
            if (line.IsArea)
            {
                yield return line;
                continue;
            }

            if (stretch.Count > 0 && at != (last.Line, last.Segment + 1))
            {
                yield return figures.Lines[last.Line] with { Points = [.. stretch] };
                stretch.Clear();
            }

            if (stretch.Count == 0)
            {
                stretch.Add(line.Points[at.Segment]);
            }

            stretch.Add(line.Points[at.Segment + 1]);
            last = at;
        }

        if (stretch.Count > 0)
        {
            yield return figures.Lines[last.Line] with { Points = [.. stretch] };
        }
    }

    private static int CellOf(double mm) => (int)Math.Floor(mm / Cell);

    private void Enter(IReadOnlyList<Point2> points, (int Line, int Segment) what)
    {
        for (int x = CellOf(points.Min(p => p.X)); x <= CellOf(points.Max(p => p.X)); x++)
        {
            for (int y = CellOf(points.Min(p => p.Y)); y <= CellOf(points.Max(p => p.Y)); y++)
            {
                if (!lines.TryGetValue((x, y), out var here))
                {
                    lines.Add((x, y), here = []);
                }

                here.Add(what);
            }
        }
    }
}
