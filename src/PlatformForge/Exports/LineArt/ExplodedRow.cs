using PlatformForge.Geometry;
using PlatformForge.Sections;
using PlatformForge.Track;

namespace PlatformForge.Exports.LineArt;

/// <summary>A dowel on its way from one section into the next.</summary>
/// <param name="Joint">The joint, by the section of lower chainage.</param>
/// <param name="Body">The dowel, midway between them.</param>
/// <param name="From">Mouth of its bore in the section of lower chainage.</param>
/// <param name="To">Mouth of its bore in the next.</param>
internal sealed record LooseDowel(int Joint, Mesh Body, Point3 From, Point3 To);

/// <summary>
/// The sections of a platform in a row, drawn apart at their joints, with the dowels between them; lying on their decks where they are turned over.
/// </summary>
internal sealed class ExplodedRow
{
    // So many that none of a dowel's long edges is a crease.
    private const int Sides = 16;

    private readonly RigidTransform[] placed;

    /// <summary>Draws the sections apart.</summary>
    /// <param name="platform">The platform.</param>
    /// <param name="gap">How far apart neighbours stand, mm.</param>
    /// <param name="turnedOver">Whether they lie deck down, as they are joined.</param>
    public ExplodedRow(PlatformDossier platform, double gap, bool turnedOver)
    {
        var plan = platform.Plan;
        var sections = platform.Sections.Sections;
        var (chord, trackside) = Axes(platform);
        var turn = turnedOver ? HalfTurnAbout(chord) : RigidTransform.Identity;
        placed = new RigidTransform[sections.Count];
        var offset = default(Point3);
        for (int i = 0; i < sections.Count; i++)
        {
            placed[i] = RigidTransform.Shift(offset.X, offset.Y, offset.Z).Then(turn);
            var step = i + 1 < sections.Count ? plan.ToLayout(sections[i].To, plan.CopingFront.At(sections[i].To)) : default;
            if (i + 1 < sections.Count)
            {
                var ahead = plan.ToLayout(sections[i].To + Reach, plan.CopingFront.At(sections[i].To)) - step;
                offset += new Point3(ahead.X, ahead.Y, 0) * (gap / ahead.Length);
            }
        }

        Sections = [.. sections.Select((s, i) => s.Solid.Mesh.Moved(placed[i]))];
        Dowels = [.. Enumerable.Range(0, sections.Count - 1).SelectMany(i => Between(sections, i))];

        // The side that has the track comes to the front; then the row rises to the right, as isometric drawings have it.
        var front = turnedOver ? trackside * -1 : trackside;
        Rising = (chord.X * front.Y) - (chord.Y * front.X) < 0;
        var along = Rising ? chord : chord * -1;
        Toward = front + (along * -1) + new Point3(0, 0, 1);
    }

    // How far along the track a direction is taken over, mm.
    private const double Reach = 0.5;

    /// <summary>The sections where they are drawn.</summary>
    public IReadOnlyList<Mesh> Sections { get; }

    /// <summary>The dowels between them.</summary>
    public IReadOnlyList<LooseDowel> Dowels { get; }

    /// <summary>Direction to the eye of an isometric view from the track's side: all three axes are foreshortened alike (ISO 5456-3).</summary>
    public Point3 Toward { get; }

    /// <summary>Whether chainage rises to the right.</summary>
    public bool Rising { get; }

    /// <summary>Where a point of a section is drawn.</summary>
    /// <param name="section">Index of the section, from 0.</param>
    /// <param name="point">The point in the layout.</param>
    public Point3 Place(int section, Point3 point) => placed[section].Apply(point);

    private IEnumerable<LooseDowel> Between(IReadOnlyList<PlatformSection> sections, int joint)
    {
        var leaving = sections[joint].Bores.Where(b => b.Chainage == sections[joint].To).ToArray();
        var entering = sections[joint + 1].Bores.Where(b => b.Chainage == sections[joint].To).ToArray();
        foreach (var bore in leaving)
        {
            var other = entering.MinBy(b => (b.Mouth - bore.Mouth).Length);
            if (other is not null)
            {
                Point3 from = Place(joint, bore.Mouth), to = Place(joint + 1, other.Mouth);
                yield return new(joint, Rod((from + to) * 0.5, to - from, bore.Diameter / 2, bore.Depth), from, to);
            }
        }
    }

    /// <summary>Direction from the platform's start to its end, and square to it, from the platform towards the track.</summary>
    private static (Point3 Chord, Point3 Trackside) Axes(PlatformDossier platform)
    {
        var plan = platform.Plan;
        var (from, to) = (plan.Spec.Face.From, plan.Spec.Face.To);
        var join = plan.ToLayout(to, plan.CopingFront.At(to)) - plan.ToLayout(from, plan.CopingFront.At(from));
        var chord = join * (1 / join.Length);
        var away = plan.Side.Outward(chord);
        return (new(chord.X, chord.Y, 0), new(-away.X, -away.Y, 0));
    }

    private static RigidTransform HalfTurnAbout(Point3 level) => new(
        new((2 * level.X * level.X) - 1, 2 * level.X * level.Y, 0),
        new(2 * level.X * level.Y, (2 * level.Y * level.Y) - 1, 0),
        new(0, 0, -1),
        default);

    private static Mesh Rod(Point3 middle, Point3 along, double radius, double half)
    {
        var axis = along * (1 / along.Length);
        Point3 side = Pictures.View.Unit(Point3.Cross(axis, new(0, 0, 1))), up = Point3.Cross(side, axis);
        Point3 Corner(int k, double end)
        {
            var (sin, cos) = Math.SinCos(2 * Math.PI * k / Sides);
            return middle + (axis * end) + (side * (radius * cos)) + (up * (radius * sin));
        }

        var points = Enumerable.Range(0, Sides).Select(k => Corner(k, -half)).Concat(Enumerable.Range(0, Sides).Select(k => Corner(k, half))).ToArray();
        var triangles = new List<int>();
        for (int k = 0; k < Sides; k++)
        {
            int next = (k + 1) % Sides;
            triangles.AddRange([k, k + Sides, next, next, k + Sides, next + Sides]);
            triangles.AddRange(k is > 0 and < Sides - 1 ? [0, k, k + 1, Sides, Sides + k + 1, Sides + k] : []);
        }

        return new(points, [.. triangles], []);
    }
}
