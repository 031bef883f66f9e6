using PlatformForge.Exports.Manifests;
using PlatformForge.Geometry;
using PlatformForge.Track;
using PlatformForge.Units;
using PlatformForge.Verification.Written;
using static System.FormattableString;

namespace PlatformForge.Verification.Rules;

/// <summary>
/// Nothing of a section stands over the walking surface but what is planned to. Between its corners a mesh is nowhere higher than at them, so that corners are
/// held: each against the plane of the surface that it lies over, coping included, and what stands there as planned.
/// </summary>
internal static class OverDeckRule
{
    // What a corner may be off, mm: floats in the file, the plan grid, a surface refitted between cuts.
    private const double Off = 0.05;

    // Beside a break either plane may be meant, so far from it along the track, mm: lines across an island or a skew end lie off the square, others do not.
    private const double Askew = 200, Square = 2;

    /// <param name="sections">Sections as written.</param>
    /// <param name="placed">Their meshes in place, in their order.</param>
    /// <param name="facts">What they are held to.</param>
    public static IEnumerable<Finding> Check(IReadOnlyList<WrittenSection> sections, IReadOnlyList<Mesh> placed, DesignFacts facts)
    {
        if (facts.Deck is not { } deck || facts.Stretches.Count == 0)
        {
            yield break;
        }

        for (int i = 0; i < sections.Count; i++)
        {
            if (Highest(placed[i], deck, facts.Stretches[0]) is { } worst)
            {
                yield return Finding.Error("PF8055", "",
                    Invariant($"{sections[i].Name} stands {worst.Over:F2} mm over its deck at chainage {worst.At.Chainage:F1} mm of track ")
                        + Invariant($"'{facts.Stretches[0].Track.Name}', {Math.Abs(worst.At.Offset):F1} mm from its middle, where nothing is planned to."),
                    "Its file is not as it was designed: build the folder again, and if it comes again tell those who make the program.", FaultKind.Mesh);
            }
        }
    }

    // The corner that stands highest over what is planned there; null where none does.
    private static (double Over, TrackPlace At)? Highest(Mesh mesh, DesignDeck deck, PlatformStretch stretch)
    {
        var (from, to) = Extent(mesh, stretch.Track);
        double apart = stretch.IsSkew ? Askew : Square;
        HeightPlane[] own = [.. Between(deck, from - apart, to + apart)];
        (double Over, TrackPlace At)? worst = null;
        double guess = from;
        foreach (var v in mesh.Vertices)
        {
            var plan = new Point2(v.X, v.Y);
            double lowest = double.PositiveInfinity;
            foreach (var plane in own)
            {
                lowest = Math.Min(lowest, plane.At(plan));
            }

            if (v.Z <= lowest + Off)
            {
                continue;
            }

            var place = stretch.Track.Locate(plan, guess);
            guess = place.Chainage;
            double surface = own.Length == 1 ? lowest : Between(deck, place.Chainage - apart, place.Chainage + apart).Max(p => p.At(plan));
            double over = v.Z - surface;
            if (over > Off && over > (worst?.Over ?? 0) && over > Planned(deck, plan) + Off)
            {
                worst = (over, place);
            }
        }

        return worst;
    }

    // Chainages that a mesh may have at most: about its middle, on the inside of a curve twice as far as places are apart.
    private static (double From, double To) Extent(Mesh mesh, Centreline track)
    {
        var (low, high) = mesh.Box();
        var middle = (low + high) * 0.5;
        double about = track.Locate(new(middle.X, middle.Y)).Chainage, within = new Point2(high.X - low.X, high.Y - low.Y).Length;
        return (about - within, about + within);
    }

    // The planes that a stretch of chainage touches; beyond the ends those at the ends.
    private static IEnumerable<HeightPlane> Between(DesignDeck deck, double from, double to)
    {
        for (int i = 0; i < deck.Planes.Count; i++)
        {
            if ((i == 0 || deck.Breaks[i] <= to) && (i == deck.Planes.Count - 1 || deck.Breaks[i + 1] >= from))
            {
                yield return deck.Planes[i];
            }
        }
    }

    // How high something is planned to stand at a place, mm.
    private static double Planned(DesignDeck deck, Point2 place) => deck.Stands.Where(s => Holds(s.Ring, place)).Select(s => s.Rise).DefaultIfEmpty(0).Max();

    private static bool Holds(IReadOnlyList<Point2> ring, Point2 place)
    {
        for (int i = 0; i < ring.Count; i++)
        {
            var along = ring[(i + 1) % ring.Count] - ring[i];
            if (Point2.Cross(along, place - ring[i]) < -Off * along.Length)
            {
                return false;
            }
        }

        return true;
    }
}
