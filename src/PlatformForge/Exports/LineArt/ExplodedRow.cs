using PlatformForge.Exports.Files;
using PlatformForge.Geometry;
using PlatformForge.Sections.Forms;
using PlatformForge.Track;

namespace PlatformForge.Exports.LineArt;

/// <summary>A dowel or a plate on its way from one section into the next.</summary>
/// <param name="Joint">The joint, by the section of lower chainage.</param>
/// <param name="Body">The piece, midway between them.</param>
/// <param name="From">Mouth of its bore in the section of lower chainage; the middle of its pocket for a plate.</param>
/// <param name="To">The same in the next.</param>
internal sealed record LoosePiece(int Joint, Mesh Body, Point3 From, Point3 To)
{
    /// <summary>Where its ways to <see cref="From"/> and to <see cref="To"/> begin.</summary>
    public required (Point3 ToFrom, Point3 ToTo) Ways { get; init; }
}

/// <summary>
/// The sections of a platform in a row, drawn apart at their joints, with what joins them between; lying on their decks where they are turned over.
/// </summary>
internal sealed class ExplodedRow
{
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

        Laid = turnedOver ? [] : [.. platform.Sections.Lines.Pieces.Select(p => p.Solid.Mesh.Moved(placed[p.Section - 1]))];
        Sections = [.. sections.Select((s, i) => s.Solid.Mesh.Moved(placed[i]))];
        Loose = [.. Enumerable.Range(0, sections.Count - 1).SelectMany(i => Dowels(sections, i).Concat(Plates(platform.Sections, i, turnedOver ? Lifted : 0)))];

        // The side that has the track comes to the front; then the row rises to the right, as isometric drawings have it.
        var front = turnedOver ? trackside * -1 : trackside;
        Rising = (chord.X * front.Y) - (chord.Y * front.X) < 0;
        var along = Rising ? chord : chord * -1;
        Toward = front + (along * -1) + new Point3(0, 0, 1);
    }

    // How far along the track a direction is taken over, mm.
    private const double Reach = 0.5;

    // How high over the pockets plates float that are let in from there, mm: clear of the sections, near enough to be seen as theirs.
    private const double Lifted = 12;

    /// <summary>The sections where they are drawn.</summary>
    public IReadOnlyList<Mesh> Sections { get; }

    /// <summary>Inlays and strips in them, where they stand right way up.</summary>
    public IReadOnlyList<Mesh> Laid { get; }

    /// <summary>Dowels and plates between them.</summary>
    public IReadOnlyList<LoosePiece> Loose { get; }

    /// <summary>Direction to the eye of an isometric view from the track's side: all three axes are foreshortened alike (ISO 5456-3).</summary>
    public Point3 Toward { get; }

    /// <summary>Whether chainage rises to the right.</summary>
    public bool Rising { get; }

    /// <summary>Where a point of a section is drawn.</summary>
    /// <param name="section">Index of the section, from 0.</param>
    /// <param name="point">The point in the layout.</param>
    public Point3 Place(int section, Point3 point) => placed[section].Apply(point);

    private IEnumerable<LoosePiece> Dowels(IReadOnlyList<PlatformSection> sections, int joint)
    {
        var leaving = sections[joint].Bores.Where(b => b.Chainage == sections[joint].To).ToArray();
        var entering = sections[joint + 1].Bores.Where(b => b.Chainage == sections[joint].To).ToArray();
        foreach (var bore in leaving)
        {
            var other = entering.MinBy(b => (b.Mouth - bore.Mouth).Length);
            if (other is not null)
            {
                Point3 from = Place(joint, bore.Mouth), to = Place(joint + 1, other.Mouth), middle = (from + to) * 0.5;
                yield return new(joint, LooseBodies.Rod(middle, to - from, bore.Diameter / 2, bore.Depth), from, to) { Ways = (middle, middle) };
            }
        }
    }

    // Two pockets belong together that lie so near that one plate fills both.
    private IEnumerable<LoosePiece> Plates(SectionSet set, int joint, double lift)
    {
        double level = set.Joint.PlateThickness / 2;
        var entering = set.Sections[joint + 1].Pockets.Select(p => Middle(p, level)).ToArray();
        foreach (var here in set.Sections[joint].Pockets.Select(p => Middle(p, level)))
        {
            if (entering.Where(p => (p - here).Length < set.Joint.DowelLength).Select(p => (Point3?)p).FirstOrDefault() is { } there)
            {
                Point3 from = Place(joint, here), to = Place(joint + 1, there), middle = ((from + to) * 0.5) + new Point3(0, 0, lift);
                var half = (to - from) * (set.Joint.DowelLength / 2 / (to - from).Length);
                yield return new(joint, LooseBodies.Strip(middle, half, set.Joint.PlateWidth / 2, level), from, to) { Ways = (middle - half, middle + half) };
            }
        }
    }

    private static Point3 Middle(IReadOnlyList<Point2> ring, double level) => new(ring.Average(p => p.X), ring.Average(p => p.Y), level);

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
}
