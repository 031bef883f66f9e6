using PlatformForge.Geometry;
using PlatformForge.Track.Surveys.Readings;
using static System.FormattableString;

namespace PlatformForge.Track.Surveys.Drawings;

/// <summary>
/// Reads the lines of an ASCII DXF drawing: LINE, ARC, LWPOLYLINE and POLYLINE with bulges, SPLINE and ELLIPSE. What else
/// the file draws is counted by kind. Group codes are those of the published DXF reference.
/// </summary>
internal static class DxfDrawingReader
{
    private const int MostSplineDegree = 10;

    public static Drawing Read(string text)
    {
        var pairs = DxfText.Pairs(text);
        if (!pairs.Any(p => p.Code == 0 && p.Value == "SECTION"))
        {
            throw new UnreadableDrawingException("The file has no DXF section.", 1);
        }

        var lines = new Lines();
        (double? Size, string Told, int Line) unit = (null, "it does not set $INSUNITS", 1);
        string section = "";
        for (int i = 0; i < pairs.Count;)
        {
            int next = NextEntity(pairs, i + 1);
            var entity = new DxfEntity(pairs, i, next);
            if (entity.Kind is "SECTION")
            {
                section = entity.Text(2, "");
                unit = section == "HEADER" ? Unit(pairs, i, next) : unit;
            }
            else if (entity.Kind is "ENDSEC")
            {
                section = "";
            }
            else if (section == "ENTITIES")
            {
                next = entity.Kind == "POLYLINE" ? EndOfPolyline(pairs, next) : next;
                lines.Take(new DxfEntity(pairs, i, next));
            }

            i = next;
        }

        return new(lines.Pieces, unit.Size, [.. lines.Skipped], unit.Told, unit.Line) { Remarks = lines.Remarks };
    }

    // What is drawn, as far as it was read.
    private sealed class Lines
    {
        private readonly DrawingBudget budget = new();
        private int throughPoints;

        public List<DrawnPiece> Pieces { get; } = [];

        /// <summary>How many of each kind were passed over.</summary>
        public SortedDictionary<string, int> Skipped { get; } = new(StringComparer.Ordinal);

        public string[] Remarks => throughPoints == 0 ? [] :
        [
            Invariant($"{throughPoints} SPLINE without control points: only the points that it passes through are known, and they are joined by straight ")
                + "lines. To have the curve itself, save it with its control points or as a polyline.",
        ];

        public void Take(DxfEntity entity)
        {
            if (Draw(entity, budget) is { } piece)
            {
                Pieces.Add(piece);
                throughPoints += entity.Kind == "SPLINE" && entity.Vertices(10, -1).Count == 0 ? 1 : 0;
            }
            else
            {
                Skipped[entity.Kind] = Skipped.GetValueOrDefault(entity.Kind) + 1;
            }
        }
    }

    // The first pair from one on that begins an entity or a section.
    private static int NextEntity(List<DxfPair> pairs, int from)
    {
        int next = from;
        while (next < pairs.Count && pairs[next].Code != 0)
        {
            next++;
        }

        return next;
    }

    private static int EndOfPolyline(List<DxfPair> pairs, int from)
    {
        int i = from;
        while (i < pairs.Count && !(pairs[i].Code == 0 && pairs[i].Value is not "VERTEX"))
        {
            i++;
        }

        return i < pairs.Count && pairs[i].Value == "SEQEND" ? NextEntity(pairs, i + 1) : i;
    }

    private static (double? Unit, string Told, int Line) Unit(List<DxfPair> pairs, int from, int to)
    {
        for (int i = from; i + 1 < to; i++)
        {
            if (pairs[i].Code != 9 || pairs[i].Value != "$INSUNITS")
            {
                continue;
            }

            int code = pairs[i + 1].Whole;
            LengthUnit? unit = code switch
            {
                1 => LengthUnit.Inch,
                2 => LengthUnit.Foot,
                4 => LengthUnit.Millimetre,
                5 => LengthUnit.Centimetre,
                6 => LengthUnit.Metre,
                _ => null,
            };
            return unit is { } known
                ? (known.Millimetres(), Invariant($"$INSUNITS says {known.Sign()}"), pairs[i].Line)
                : (null, code == 0 ? "$INSUNITS says that it has no unit" : Invariant($"$INSUNITS has the value {code}, which is no unit of a track plan"),
                    pairs[i].Line);
        }

        return (null, "it does not set $INSUNITS", pairs[from].Line);
    }

    private static DrawnPiece? Draw(DxfEntity entity, DrawingBudget budget)
    {
        try
        {
            budget.Element(0);
            return Drawn(entity, new CurveFlattener(budget));
        }
        catch (UnreadableDrawingException fault) when (fault.Line == 0)
        {
            throw new UnreadableDrawingException(fault.Message, entity.Line);
        }
    }

    private static DrawnPiece? Drawn(DxfEntity entity, CurveFlattener pen)
    {
        if (!Follow(entity, pen) || pen.Count < 2)
        {
            return null;
        }

        var points = pen.ToArray();
        // An entity drawn from below the sheet has its x mirrored.
        return new([entity.Layer], entity.Mirrored ? [.. points.Select(p => new Point2(-p.X, p.Y))] : points, pen.Straights, entity.Line);
    }

    // Takes the pen along an entity; false where it is no line.
    private static bool Follow(DxfEntity entity, CurveFlattener pen)
    {
        switch (entity.Kind)
        {
            case "LINE":
                pen.LineTo(entity.Point(10));
                pen.LineTo(entity.Point(11));
                return true;
            case "ARC":
                Arc(entity, pen);
                return true;
            case "LWPOLYLINE":
                Polyline(entity, pen, WholeVertices(entity));
                return true;

            // Meshes and the control frames of curves are no lines; 1 is closed, 8 a line in space.
            case "POLYLINE" when (entity.Flags & ~(1 | 8 | 128)) == 0:
                Polyline(entity, pen, entity.PolylineVertices());
                return true;
            case "ELLIPSE":
                Ellipse(entity, pen);
                return true;
            case "SPLINE":
                Spline(entity, pen);
                return true;
            default:
                return false;
        }
    }

    private static IReadOnlyList<(Point2 Point, double Bulge)> WholeVertices(DxfEntity entity)
    {
        var vertices = entity.Vertices(10, 42);
        return entity.Number(90, vertices.Count) <= vertices.Count
            ? vertices
            : throw new UnreadableDrawingException(
                Invariant($"A LWPOLYLINE says that it has {entity.Number(90, 0):0} vertices and has {vertices.Count}: some of it is missing."), entity.Line);
    }

    private static void Arc(DxfEntity entity, CurveFlattener pen)
    {
        double radius = entity.Number(40), from = entity.Angle(50), sweep = entity.Angle(51) - from;
        sweep = sweep - (2 * Math.PI * Math.Floor(sweep / (2 * Math.PI)));
        var centre = entity.Point(10);
        pen.LineTo(centre + (radius * Point2.FromAngle(from)));
        pen.EllipseTo(centre, new(radius, 0), new(0, radius), from, sweep);
    }

    private static void Ellipse(DxfEntity entity, CurveFlattener pen)
    {
        Point2 centre = entity.Point(10), major = entity.Point(11), minor = major.Left * entity.Number(40);
        double from = entity.Number(41, 0), sweep = entity.Number(42, 2 * Math.PI) - from;
        sweep += sweep <= 0 ? 2 * Math.PI : 0;
        if (Math.Abs(sweep) > 2 * Math.PI + 1)
        {
            throw new UnreadableDrawingException("An ellipse goes round more than once.", entity.Line);
        }

        pen.LineTo(centre + (Math.Cos(from) * major) + (Math.Sin(from) * minor));
        pen.EllipseTo(centre, major, minor, from, sweep);
    }

    private static void Polyline(DxfEntity entity, CurveFlattener pen, IReadOnlyList<(Point2 Point, double Bulge)> vertices)
    {
        for (int i = 0; i < vertices.Count; i++)
        {
            if (i == 0)
            {
                pen.LineTo(vertices[0].Point);
            }
            else
            {
                pen.BulgeTo(vertices[i].Point, vertices[i - 1].Bulge);
            }
        }

        if ((entity.Flags & 1) != 0 && vertices.Count > 2)
        {
            pen.BulgeTo(vertices[0].Point, vertices[^1].Bulge);
        }
    }

    private static void Spline(DxfEntity entity, CurveFlattener pen)
    {
        int degree = (int)entity.Number(71, 3);
        double[] knots = entity.Numbers(40), weights = entity.Numbers(41);
        var control = entity.Vertices(10, -1).Select(v => v.Point).ToArray();
        if (control.Length == 0)
        {
            // Only the points it goes through are given: drawn straight between them and told as placed points.
            foreach (var (point, _) in entity.Vertices(11, -1))
            {
                pen.LineTo(point);
            }

            return;
        }

        if (degree is < 1 or > MostSplineDegree || knots.Length != control.Length + degree + 1 || (weights.Length != 0 && weights.Length != control.Length))
        {
            throw new UnreadableDrawingException("A spline's knots, control points and degree do not agree.", entity.Line);
        }

        new DxfSpline(degree, knots, control, weights).Draw(pen);
    }
}
