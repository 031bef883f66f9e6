using PlatformForge.Geometry;
using PlatformForge.Track;
using PlatformForge.Units;
using PlatformForge.Verification.Written;
using static System.FormattableString;

namespace PlatformForge.Verification.Rules;

/// <summary>
/// Sections put back by the manifest's motions stand on the baseboard, on the platform's side of its track, and follow one
/// another from its first to its last chainage. A motion written in rows for columns, or of another section, fails here.
/// </summary>
internal static class PlaceRule
{
    /// <summary>What a place may be off by, mm: floats in the file, facets of a curved end.</summary>
    private const double Slack = 0.02;

    /// <summary>A motion's rows are of unit length and square to one another within this.</summary>
    internal const double Squareness = 1e-6;

    /// <summary>The corner of an edge is looked for so far from the end of its section, mm: of a section that is turned, the back corner may be the farther
    /// one along the track.</summary>
    private const double EndZone = 10;

    /// <summary>By how much a place must be nearer to the track for each mm that it is farther from the end, to be the corner: more than edges slant, less
    /// than ends do.</summary>
    private const double Slant = 0.3;

    /// <summary>Greatest step in the edge from one section to the next, mm; an edge turns little over the trim of a joint.</summary>
    private const double GreatestStep = 0.1;

    /// <summary>Along an edge the gap between two ends that lie half a right angle askew is so much longer.</summary>
    private const double Askew = 1.4143;

    /// <summary>Motions that are none of a solid thing.</summary>
    public static IEnumerable<Finding> Bent(IEnumerable<WrittenSection> bodies) => bodies.Where(b => !IsRigid(b.ToLayout)).Select(b => Finding.Error(
        "PF8031", "", Invariant($"The motion of {b.Name} to the layout bends or mirrors it."),
        "The manifest is damaged: build the folder again.", FaultKind.Mesh));

    /// <param name="sections">Sections as written.</param>
    /// <param name="placed">Their meshes in place, in their order; what follows after them is not looked at.</param>
    /// <param name="facts">What they are held to.</param>
    public static IEnumerable<Finding> Check(IReadOnlyList<WrittenSection> sections, IReadOnlyList<Mesh> placed, DesignFacts facts)
    {
        for (int i = 0; i < sections.Count; i++)
        {
            foreach (var bent in Bent([sections[i]]))
            {
                yield return bent;
            }

            double floor = placed[i].Box().Low.Z;
            if (Math.Abs(floor) > Slack)
            {
                yield return Finding.Error("PF8032", "", Invariant($"{sections[i].Name} stands {Math.Abs(floor):F2} mm {(floor > 0 ? "over" : "below")} the ")
                    + "baseboard when put in place.",
                    "Its underside belongs on the baseboard: its file is not as it was made, or its motion in the manifest is wrong. Build the folder again.",
                    FaultKind.Mesh);
            }
        }

        foreach (var stretch in facts.Stretches)
        {
            var own = Enumerable.Range(0, sections.Count).Where(i => sections[i].Platform == stretch.Platform)
                .Select(i => Lie(sections[i].Name, placed[i], stretch)).OrderBy(l => l.From).ToArray();
            foreach (var finding in Check(stretch, own))
            {
                yield return finding;
            }
        }
    }

    private static IEnumerable<Finding> Check(PlatformStretch stretch, Span[] own)
    {
        foreach (var lie in own.Where(l => l.Nearest <= 0))
        {
            yield return Across(lie, stretch);
        }

        if (own.Length == 0)
        {
            yield return Misplaced(Invariant($"'{stretch.Platform}' has no section, ")
                + Invariant($"from chainage {stretch.From:F2} to {stretch.To:F2} mm of track '{stretch.Track.Name}'."));
            yield break;
        }

        double reached = stretch.From;
        for (int i = 0; i < own.Length; i++)
        {
            var lie = own[i];
            double gap = lie.From - reached, room = i == 0 ? Slack : (stretch.IsSkew ? stretch.Joint * Askew : stretch.Joint) + Slack;
            if (gap > room || gap < -Slack)
            {
                yield return Misplaced(Invariant($"{lie.Name} begins at chainage {lie.From:F2} mm of track '{stretch.Track.Name}', ")
                    + Invariant($"but {(i == 0 ? "the platform begins" : "what is before it ends")} at {reached:F2} mm."));
            }

            if (i > 0 && Step(own[i - 1], lie) is { } step)
            {
                yield return step;
            }

            reached = Math.Max(reached, lie.To);
        }

        if (Math.Abs(reached - stretch.To) > Slack)
        {
            yield return Misplaced(Invariant($"The sections of '{stretch.Platform}' end at chainage {reached:F2} mm of track '{stretch.Track.Name}' ")
                + Invariant($"instead of {stretch.To:F2} mm."));
        }
    }

    private static Finding Across(Span lie, PlatformStretch stretch) => Finding.Error("PF8033", "",
        Invariant($"{lie.Name} lies across or beyond the middle of track '{stretch.Track.Name}', by {-lie.Nearest:F1} mm."),
        "Its motion in the manifest is wrong: build the folder again.", FaultKind.Mesh);

    // The edge of a section that does not go on where the one before it ended.
    private static Finding? Step(Span before, Span lie)
    {
        double step = lie.EdgeFrom - before.EdgeTo;
        return Math.Abs(step) > GreatestStep
            ? Finding.Error("PF8035", "",
                Invariant($"The edge steps by {Math.Abs(step):F2} mm {(step < 0 ? "towards" : "away from")} the track ")
                    + Invariant($"from {before.Name} to {lie.Name} at chainage {lie.From:F1} mm."),
                "One of the two files is not as it was made, or its motion in the manifest is wrong: build the folder again.", FaultKind.Mesh)
            : null;
    }

    private static Finding Misplaced(string what) =>
        Finding.Error("PF8034", "", what,
            "A section is missing, its file is not as it was made, or its motion in the manifest is wrong: build the folder again.", FaultKind.Mesh);

    private static Span Lie(string name, Mesh mesh, PlatformStretch stretch)
    {
        // From one vertex to the next is never far, so the last place is a good first guess.
        var places = new TrackPlace[mesh.Vertices.Length];
        double guess = mesh.Vertices.Length > 0 ? stretch.Track.Locate(new(mesh.Vertices[0].X, mesh.Vertices[0].Y)).Chainage : 0;
        for (int i = 0; i < places.Length; i++)
        {
            places[i] = stretch.Track.Locate(new(mesh.Vertices[i].X, mesh.Vertices[i].Y), guess);
            guess = places[i].Chainage;
        }

        double nearest = places.Select(p => stretch.Side.Reach(p.Offset)).DefaultIfEmpty(0).Min();
        if (stretch.IsSkew)
        {
            // Its ends may lie up to half a right angle askew: of all that it has, the corners of its edge lie farthest out in both ways together.
            var start = places.DefaultIfEmpty().MinBy(p => p.Chainage + stretch.Side.Reach(p.Offset));
            var end = places.DefaultIfEmpty().MinBy(p => stretch.Side.Reach(p.Offset) - p.Chainage);
            return new(name, start.Chainage, end.Chainage, nearest, stretch.Side.Reach(start.Offset), stretch.Side.Reach(end.Offset));
        }

        double from = places.Select(p => p.Chainage).DefaultIfEmpty(0).Min(), to = places.Select(p => p.Chainage).DefaultIfEmpty(0).Max();
        double Corner(double end) => places.Where(p => Math.Abs(p.Chainage - end) <= EndZone)
            .Select(p => (Offset: stretch.Side.Reach(p.Offset), Off: Math.Abs(p.Chainage - end)))
            .DefaultIfEmpty().MinBy(p => p.Offset + (Slant * p.Off)).Offset;
        return new(name, from, to, nearest, Corner(from), Corner(to));
    }

    private static bool IsRigid(RigidTransform motion)
    {
        var (a, b, c, t) = motion;
        bool isSquare = Math.Abs(Point3.Dot(a, a) - 1) + Math.Abs(Point3.Dot(b, b) - 1) + Math.Abs(Point3.Dot(a, b)) < Squareness;
        return isSquare && (Point3.Cross(a, b) - c).Length < Squareness && double.IsFinite(t.Length);
    }

    private sealed record Span(string Name, double From, double To, double Nearest, double EdgeFrom, double EdgeTo);
}
