using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;

namespace PlatformForge.Platforms.Features.Kinds;

/// <summary>
/// What pictures show in sockets: by their sizes a building, a seat, or a post; two posts near one another carry a name board. Sizes are at full size, from
/// memory; nothing is made from them.
/// </summary>
internal static class SocketLooks
{
    // mm at full size: what is longer than this in plan is a seat, and what is this deep too a building; posts nearer than this carry one board.
    private const double Seat = 900, Building = 2200, BuildingDeep = 1300, BoardSpan = 4500;

    public static IReadOnlyList<ShownBody> Of(SocketSpec socket, FeatureSite site, PlanPlace place)
    {
        double along = site.Ground.Scale.ToFullSize(socket.Along + socket.Fit), across = site.Ground.Scale.ToFullSize(socket.Across + socket.Fit);
        return along > Building && across > BuildingDeep ? [.. House(
            socket,
            site,
            place)] : along > Seat ? [.. Bench(socket, site, place)] : [.. Post(socket, site, place)];
    }

    private static IEnumerable<ShownBody> Post(SocketSpec socket, FeatureSite site, PlanPlace place)
    {
        double M(double fullSize) => site.Ground.Scale.ToModel(fullSize);
        double size = Math.Min(socket.Along, socket.Across) + socket.Fit;
        yield return new(Finish.Iron, [Block(place, FeatureSite.Oblong(site.ToLayout(place), new(1, 0), size, size), 0, M(2700))]);
        if (Partner(socket, site) is not { } partner)
        {
            yield break;
        }

        // The board reaches beyond its posts.
        double beyond = M(350) / (site.ToLayout(place) - site.ToLayout(partner)).Length;
        ShownBeam Beam(
            double share,
            double up,
            double wide,
            double tall) => new(new(partner, place, -share), new(partner, place, 1 + share), M(up), M(wide), M(tall));
        yield return new(Finish.Iron, [Beam(beyond, 1700, 110, 800)]);
        yield return new(Finish.Cream, [Beam(beyond * 0.75, 1790, 150, 620)]);
    }

    // The post before this one that no post between the two has taken.
    private static PlanPlace? Partner(SocketSpec socket, FeatureSite site)
    {
        PlanPlace? first = null;
        foreach (var other in site.Spec.Features.OfType<SocketSpec>().Where(s => site.Ground.Scale.ToFullSize(s.Along + s.Fit) <= Seat)
            .OrderBy(s => s.Chainage))
        {
            var place = new PlanPlace(other.Chainage, site.Reach(other.Chainage, other.Inset, other.From));
            bool paired = first is { } before && site.Ground.Scale.ToFullSize((site.ToLayout(place) - site.ToLayout(before)).Length) < BoardSpan;
            if (ReferenceEquals(other, socket))
            {
                return paired ? first : null;
            }

            first = paired ? null : place;
        }

        return null;
    }

    private static IEnumerable<ShownBody> Bench(SocketSpec socket, FeatureSite site, PlanPlace place)
    {
        double M(double fullSize) => site.Ground.Scale.ToModel(fullSize);
        double along = socket.Along + socket.Fit, across = socket.Across + socket.Fit;
        var back = site.ToLayout(place) + (site.Away(place.Chainage) * (across * 0.45));
        yield return new(
            Finish.Timber,
            [Block(place, site.Oblong(place, along, across), M(380), M(450)), Block(place, site.Oblong(place, along * 0.85, across * 0.5), 0, M(380))]);
        yield return new(Finish.Timber, [Block(place, FeatureSite.Oblong(back, site.Tangent(place.Chainage), along, across * 0.14), M(450), M(900))]);
    }

    private static IEnumerable<ShownBody> House(SocketSpec socket, FeatureSite site, PlanPlace place)
    {
        double M(double fullSize) => site.Ground.Scale.ToModel(fullSize);
        double along = socket.Along + socket.Fit, across = socket.Across + socket.Fit, eaves = M(2800);
        var (middle, tangent) = (site.ToLayout(place), site.Tangent(place.Chainage));
        var towards = site.Away(place.Chainage) * -1;
        yield return new(Finish.Stone, [Block(place, site.Oblong(place, along * 0.98, across * 0.96), -socket.Depth, eaves)]);
        yield return new(Finish.Slate, [new ShownLoft(
            place,
            site.Oblong(place, along * 1.05, across * 1.25),
            eaves,
            site.Oblong(place, along * 0.95, across * 0.06),
            eaves + (across * 0.42))]);
        int bays = Math.Max(2, (int)(along / M(1900)));
        yield return new(Finish.Iron, [.. Enumerable.Range(0, bays).Select(i =>
        {
            var at = middle + (tangent * (along * 0.9 * (((i + 0.5) / bays) - 0.5))) + (towards * (across * 0.48));
            bool door = i == bays / 2;
            return Block(place, FeatureSite.Oblong(at, tangent, M(door ? 1000 : 800), M(60)), M(door ? 0 : 900), M(2150));
        })]);
    }

    private static ShownLoft Block(PlanPlace place, Point2[] ring, double low, double high) => new(place, ring, low, ring, high);
}
