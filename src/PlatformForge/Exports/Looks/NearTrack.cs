using PlatformForge.Exports.Files;
using PlatformForge.Platforms.Plans;
using PlatformForge.Track;

namespace PlatformForge.Exports.Looks;

/// <summary>Another track that runs along a platform: where it comes nearest.</summary>
/// <param name="Track">Its name.</param>
/// <param name="Behind">Whether it runs behind the platform, so that its back edge is what it comes near.</param>
/// <param name="Chainage">Where, mm along the platform's own track.</param>
/// <param name="Distance">From its middle to the coping edge or the back edge there, mm.</param>
/// <param name="Vehicles">Names of the vehicles on it.</param>
public sealed record NearTrack(string Track, bool Behind, double Chainage, double Distance, IReadOnlyList<string> Vehicles)
{
    // mm: places looked at along a track; nearer to the platform's own track than this a line is that track.
    private const double Step = 2, Own = 0.5;

    // A track farther off than this, mm at full size, is none of the platform's business: five tracks' width of 12 ft.
    private const double Beside = 5 * 3658;

    /// <summary>The other tracks beside a platform, in the project's order; one that leaves the platform's own only beyond its ends is left out.</summary>
    public static IReadOnlyList<NearTrack> All(Dossier dossier, PlatformPlan plan) =>
        [.. dossier.Tracks.Where(t => t.Ride.Name != plan.Spec.Face.Track && t.Ride.Name != plan.Spec.OtherFace?.Track)
            .Select(t => Nearest(t.Ride, [.. t.Vehicles.Select(v => v.Name)], plan, dossier.Scale.ToModel(Beside))).OfType<NearTrack>()];

    private static NearTrack? Nearest(Track.Centreline ride, IReadOnlyList<string> vehicles, PlatformPlan plan, double within)
    {
        NearTrack? nearest = null;
        for (double u = 0; u <= ride.Length; u += Step)
        {
            var (chainage, offset) = plan.Chart.Locate(ride.PointAt(u));
            double reach = plan.Side.Reach(offset);
            if (chainage < plan.Spec.Face.From || chainage > plan.Spec.Face.To || Math.Abs(offset) < Own)
            {
                continue;
            }

            bool behind = reach > plan.CopingFront.At(chainage);
            double distance = behind ? reach - plan.Back.At(chainage) : plan.CopingFront.At(chainage) - reach;
            nearest = distance < (nearest?.Distance ?? within) ? new(ride.Name, behind, chainage, distance, vehicles) : nearest;
        }

        return nearest;
    }
}
