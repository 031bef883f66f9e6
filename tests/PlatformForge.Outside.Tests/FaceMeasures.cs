using PlatformForge.Geometry;

namespace PlatformForge.Outside.Tests;

/// <summary>
/// What a rule finds on the printed sections of a face, square to its track: coping edge, wall's foot, back edge, the coping's top. Measured in the triangles
/// of the STL files and nothing else, by upright cuts; a place at a section's end face, where what is trimmed and chamfered off leaves nothing to touch, by
/// laying a straight edge along the section.
/// </summary>
internal sealed class FaceMeasures
{
    // Clear of the trim and chamfer of an end face, mm: there the straight edge is laid on, at so much and at twice so much.
    private const double Clear = 1.2;

    // A place so far beyond an end face is still the section's, mm: both ends at a cut are trimmed by less.
    private const double Trim = 0.35;

    // How high over the board a wall's foot is felt, mm: past a bed joint of brickwork.
    private const double FootHigh = 1.2;

    // A straight edge is laid across the coping over so much of it, mm from its edge, and read where it lies at so much: past arrises, nosings and margins.
    private const double Laid = 9, On = 1.5;

    // A section's four corners are looked for at these heights over the board, mm, until one has no opening in a wall; joints of brickwork are less than a
    // notch deep.
    private static readonly double[] Levels = [1, 2, 3, 4];
    private const double Notch = 0.5;

    // Cut beside each place, mm, since one may fall into a groove between two slabs: a groove is narrower, slabs and bricks are longer.
    private static readonly double[] Aside = [0.3, 0.6];

    private readonly List<Section> sections = [];

    public FaceMeasures(WrittenFace face, IEnumerable<double> chainages)
    {
        double[] asked = [.. chainages];
        foreach (var solid in face.Solids)
        {
            var corners = Levels.Select(z => Corners(face, solid, z)).First(c => c.Length == 4);
            (double From, double To) front = (corners[0].Chainage, corners[1].Chainage), back = (corners[2].Chainage, corners[3].Chainage);
            double[] laid = [front.From + Clear, front.From + (2 * Clear), front.To - Clear, front.To - (2 * Clear), back.From + Clear,
                back.From + (2 * Clear), back.To - Clear, back.To - (2 * Clear)];
            double low = Math.Min(front.From, back.From) - Trim, high = Math.Max(front.To, back.To) + Trim;
            var at = asked.Where(s => s > low && s < high).Concat(laid).SelectMany(s => Aside.SelectMany(a => (double[])[s - a, s + a]).Append(s));
            sections.Add(new(solid, front, back, (corners[0].At, corners[2].At), (corners[1].At, corners[3].At),
                new(solid.Triangles, face.Chart, face.Side, at)));
        }
    }

    /// <summary>What was found, mm from the track's middle, and the top over the board.</summary>
    public sealed record Found(int Section, double Edge, double Foot, double Top);

    /// <summary>Of each section that comes to a chainage: two at a cut.</summary>
    public IReadOnlyList<Found> At(double s) => [.. sections.Where(x => Reaches(x.Front, s)).Select(x =>
        new Found(x.Solid.Number, Along(x, x.Front, s, Edge, Math.Min), Along(x, x.Front, s, Foot, Math.Min), Along(x, x.Front, s, Top, Math.Max)))];

    /// <summary>The back edge square across from a chainage; none where the square leaves by an end face before it comes there.</summary>
    public IReadOnlyList<double> Backs(double s) => [.. sections.Where(x => Reaches(x.Back, s)).Select(x => Along(x, x.Back, s, Back, Math.Max))];

    private sealed record Section(WrittenSolid Solid, (double From, double To) Front, (double From, double To) Back, (Point2 Foot, Point2 Far) Lower,
        (Point2 Foot, Point2 Far) Upper, SquareCuts Cuts);

    private static bool Reaches((double From, double To) ends, double s) => s > ends.From - Trim && s < ends.To + Trim;

    private static double Along(Section section, (double From, double To) ends, double s, Func<IReadOnlyList<(Point2 A, Point2 B)>, double> read,
        Func<double, double, double> outer)
    {
        double end = s < ends.From + Clear ? ends.From : s > ends.To - Clear ? ends.To : double.NaN, way = end == ends.From ? Clear : -Clear;
        if (double.IsNaN(end))
        {
            return Felt(section.Cuts, s, read, outer);
        }

        double near = Felt(section.Cuts, end + way, read, outer), far = Felt(section.Cuts, end + (2 * way), read, outer);
        return near + ((far - near) * (s - end - way) / way);
    }

    // A groove only takes away: of a place and the middles of two beside it the farthest out is the body's.
    private static double Felt(SquareCuts cuts, double s, Func<IReadOnlyList<(Point2 A, Point2 B)>, double> read, Func<double, double, double> outer) =>
        Aside.Select(a => (read(cuts.At(s - a)) + read(cuts.At(s + a))) / 2).Append(read(cuts.At(s))).Where(double.IsFinite).DefaultIfEmpty(double.NaN)
        .Aggregate(outer);

    private static IEnumerable<Point2> Points(IReadOnlyList<(Point2 A, Point2 B)> lines) => lines.SelectMany(l => (Point2[])[l.A, l.B]);

    private static double Edge(IReadOnlyList<(Point2 A, Point2 B)> lines) => Points(lines).Select(p => p.X).DefaultIfEmpty(double.NaN).Min();

    private static double Foot(IReadOnlyList<(Point2 A, Point2 B)> lines) => Points(lines).Where(p => p.Y < FootHigh).Select(p => p.X)
        .DefaultIfEmpty(double.NaN).Min();

    private static double Back(IReadOnlyList<(Point2 A, Point2 B)> lines) => Points(lines).Select(p => p.X).DefaultIfEmpty(double.NaN).Max();

    // A straight edge laid across the coping: the stretch of the upper hull that it lies on, carried on to the edge. Grooves, joints and nosings are below it.
    private static double Top(IReadOnlyList<(Point2 A, Point2 B)> lines)
    {
        double edge = Edge(lines), last = edge + Laid;
        var hull = new List<Point2>();
        foreach (var p in lines.SelectMany(l => Within(l, last)).OrderBy(p => p.X).ThenBy(p => p.Y))
        {
            while (hull.Count > 1 && Point2.Cross(hull[^1] - hull[^2], p - hull[^1]) >= 0)
            {
                hull.RemoveAt(hull.Count - 1);
            }

            hull.Add(p);
        }

        for (int i = 0; i + 1 < hull.Count; i++)
        {
            if (hull[i + 1].X > edge + On)
            {
                return hull[i].Y + ((hull[i + 1].Y - hull[i].Y) * (edge - hull[i].X) / (hull[i + 1].X - hull[i].X));
            }
        }

        return double.NaN;
    }

    private static IEnumerable<Point2> Within((Point2 A, Point2 B) line, double last)
    {
        var (a, b) = line.A.X < line.B.X ? line : (line.B, line.A);
        if (a.X <= last)
        {
            yield return a;
            yield return b.X <= last ? b : a + ((b - a) * ((last - a.X) / (b.X - a.X)));
        }
    }

    /// <summary>The face of a cut or end that is told at a chainage, as a line in plan from the wall's foot to the far wall's, both sections' together; none
    /// elsewhere.</summary>
    public (Point2 Foot, Point2 Far)? EndAt(WrittenFace face, double s)
    {
        // An end that is square to no track starts beside its chainage by what the coping overhangs.
        const double beside = 0.6;
        var ends = sections.SelectMany(x => new[] { (At: x.Front.From, Line: x.Lower), (At: x.Front.To, Line: x.Upper) })
            .Where(e => Math.Abs(e.At - s) < beside).Select(e => e.Line).ToArray();
        Point2 Middle(Func<(Point2 Foot, Point2 Far), Point2> of) => ends.Select(of).Aggregate((a, b) => a + b) * (1.0 / ends.Length);
        return ends.Length == 0 ? null : (Middle(e => e.Foot), Middle(e => e.Far));
    }

    // The four corners of its walls at a height: the front's lower and upper one, the back's.
    private static (double Chainage, Point2 At)[] Corners(WrittenFace face, WrittenSolid solid, double z)
    {
        const double Sharp = 0.7; // radians
        if (solid.Cut(new(0, 0, z), new(1, 0, 0), new(0, 1, 0)) is not { Count: > 0 } loops)
        {
            return [];
        }

        var ring = Plane.WithoutNotches(loops.MaxBy(Plane.Area)!, Notch);
        var corners = Enumerable.Range(0, ring.Length)
            .Where(i => Math.Abs(Plane.Turn(ring[(i + ring.Length - 1) % ring.Length], ring[i], ring[(i + 1) % ring.Length])) > Sharp)
            .Select(i => (Place: face.Chart.Locate(ring[i]), At: ring[i])).OrderBy(c => face.Side * c.Place.Left).Select(c => (c.Place.Chainage, c.At))
            .ToArray();
        return [.. corners.Take(2).OrderBy(c => c.Chainage), .. corners.Skip(2).OrderBy(c => c.Chainage)];
    }
}
