using PlatformForge.Clearance;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Files;
using PlatformForge.Exports.Pictures.Bodies;
using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Track;

namespace PlatformForge.Exports.Pictures;

/// <summary>Where things stand in the picture of a finished platform, and where the eye is.</summary>
internal sealed class Stage(Dossier dossier, PlatformDossier platform)
{
    // mm of track shown beyond the platform, and how far beside it another track is still shown.
    private const double Before = 110, Beyond = 260, Beside = 320;

    // The eye: a person of this height, mm at full size, on the far side of the track, at shares of the platform's length before its start and off its edge.
    private const double EyeHeight = 2700, Back = 0.1, Off = 0.16, LeastOff = 55;

    // The eye looks at a place this share along the platform; the vehicle's middle stands at that.
    private const double LookAt = 0.42, VehicleAt = 0.66, OtherAt = 0.5, NearestEnd = 0.42;

    private const double Step = 4;

    private readonly PlatformPlan plan = platform.Plan;

    private double Length => plan.Spec.Face.To - plan.Spec.Face.From;

    /// <summary>All tracks beside the platform; stretches that two share are shown once.</summary>
    public IEnumerable<SceneBody> Tracks()
    {
        var own = platform.Ride ?? plan.Chart;
        foreach (var body in Track(own, Math.Max(0, plan.Spec.Face.From - Before), Math.Min(own.Length, plan.Spec.Face.To + Beyond)))
        {
            yield return body;
        }

        foreach (var ride in dossier.Tracks.Select(t => t.Ride).Where(r => r.Name != plan.Spec.Face.Track))
        {
            foreach (var (from, to) in Stretches(ride))
            {
                foreach (var body in Track(ride, from, to))
                {
                    yield return body;
                }
            }
        }
    }

    /// <summary>The first vehicle that governs at the edge, well along the platform so that it hides little, and one on each other track that has
    /// room.</summary>
    public IEnumerable<SceneBody> Vehicles() => Trains().SelectMany(t => t.Bodies);

    /// <summary>The same by their tracks.</summary>
    public IEnumerable<(string Track, IReadOnlyList<SceneBody> Bodies)> Trains()
    {
        var looks = new VehicleLooks(platform);
        foreach (var run in dossier.Tracks.Where(t => t.Vehicles.Count > 0))
        {
            var stock = new RollingStock(dossier.Scale.Ratio, dossier.Gauge, dossier.RailTopOf(run.Ride.Name));
            bool own = run.Ride.Name == plan.Spec.Face.Track;
            var vehicle = own ? Boarded([.. platform.Poses.Where(p => p.OtherTrack.Length == 0).Select(p => p.Vehicle), .. run.Vehicles])
                : Boarded([.. run.Vehicles.Reverse()]);
            double half = vehicle.Parts.SelectMany(p => p.Outline).Max(p => p.X), s = plan.Spec.Face.From
                + Math.Max(Length * (own ? VehicleAt : OtherAt), (Length * NearestEnd) + half), u = own ? s : run.Ride.Locate(plan.Chart.PointAt(s)).Chainage;
            bool apart = own || Math.Abs(plan.Chart.Locate(run.Ride.PointAt(Math.Clamp(u, 0, run.Ride.Length))).Offset) > 2 * dossier.Gauge;
            if (apart && PoseFinder.At(run.Ride, vehicle, u + (vehicle.PivotCentres / 2)) is { } pose)
            {
                // Of a set those bodies stand with it that are not nearer to the eye, which they would hide everything from.
                var set = PoseFinder.WithSet(run, pose);
                set = set with { Coupled = [.. set.Coupled.Where(c => plan.Chart.Locate(c.Pose.Body.Origin).Chainage > s)] };
                yield return (run.Ride.Name, [.. stock.Of(set, looks.Of(vehicle.Name, own ? "" : run.Ride.Name).Colour)]);
            }
        }
    }

    // The first that people board, or else the first of all.
    private static Vehicle Boarded(IReadOnlyList<Vehicle> vehicles) => vehicles.FirstOrDefault(v => v.Sill is not null) ?? vehicles[0];

    /// <summary>Where the eye is, and the direction to it from what it looks at.</summary>
    public (Point3 Eye, Point3 Toward) Eye(Point3 chord, Point3 away)
    {
        // On the right of what is seen lies the platform when the eye looks along a platform on the left, and the other way round.
        double s = plan.Spec.Face.From, off = Math.Max(LeastOff, Off * Length);
        var start = plan.ToLayout(s, plan.CopingFront.At(s));
        var target = plan.ToLayout(s + (LookAt * Length), plan.CopingFront.At(s + (LookAt * Length)));
        var eye = new Point3(start.X, start.Y, plan.Site.RailTop + (EyeHeight / dossier.Scale.Ratio)) - (chord * ((Back * Length) + 25)) - (away * off);
        var toward = eye - new Point3(target.X, target.Y, plan.Profile.Level);
        return (eye, toward * (1 / toward.Length));
    }

    /// <summary>What has to be in the picture: the platform's edges, and the room over them that fence and vehicles take.</summary>
    public IReadOnlyList<Point3> Framed()
    {
        double up = 3300 / dossier.Scale.Ratio;
        var outer = plan.Outer;
        return
        [
            .. plan.Stations.SelectMany(s => new[] { plan.CopingFront, outer }.Select(line => plan.ToLayout(s, line.At(s))))
                .Concat(plan.Bank?.Returns.SelectMany(r => r.Toe) ?? [])
                .SelectMany(p => new[] { new Point3(p.X, p.Y, 0), new Point3(p.X, p.Y, plan.Profile.Level + up) }),
        ];
    }

    private IEnumerable<SceneBody> Track(Centreline ride, double from, double to) =>
        TrackBodies.Of(ride, from, to, dossier.Scale.Ratio, dossier.Gauge, dossier.RailTopOf(ride.Name));

    // Where another track is beside the platform and apart from its own.
    private IEnumerable<(double From, double To)> Stretches(Centreline ride)
    {
        double? from = null;
        for (double u = 0; u <= ride.Length; u += Step)
        {
            var (s, d) = plan.Chart.Locate(ride.PointAt(u));
            bool shows = s > plan.Spec.Face.From - Before && s < plan.Spec.Face.To + Beyond && Math.Abs(d) is > 0.5 and < Beside;
            from ??= shows ? u : null;
            if (from is { } begun && (!shows || u + Step > ride.Length))
            {
                if (u - begun > 2 * Step)
                {
                    yield return (begun, u);
                }

                from = null;
            }
        }
    }
}
