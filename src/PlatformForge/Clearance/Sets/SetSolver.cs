using PlatformForge.Clearance.Requests;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Geometry;
using PlatformForge.Track;
using PlatformForge.Units;

namespace PlatformForge.Clearance.Sets;

/// <summary>
/// Stands a whole set on a track, body by body from the foremost. A shared bogie stands once and carries both its bodies. Coupled
/// bodies keep their gap between the middles of their ends, measured along the mean of both bodies' directions, as buffers and drawbars do.
/// A body without wheels
/// hangs on the frames of the bodies ahead and behind.
/// </summary>
public static class SetSolver
{
    // The next body follows the coupling at nearly the same pace, so each round takes off two digits or more.
    private const int Rounds = 40;

    private const double Closeness = Tolerances.CentrelinePosition;

    /// <summary>
    /// Places a set.
    /// </summary>
    /// <param name="ride">Line the wheels follow.</param>
    /// <param name="set">The set.</param>
    /// <param name="leadingChainage">Leading pivot of the foremost body, mm, as <see cref="PoseSolver"/> tells it.</param>
    /// <param name="turned">Whether the last body leads.</param>
    /// <returns>A pose for each body in the set's own order, frames as the bodies are drawn; null where the set cannot stand.</returns>
    public static VehiclePose[]? Place(Centreline ride, VehicleSet set, double leadingChainage, bool turned = false)
    {
        int count = set.Bodies.Count;
        var poses = new VehiclePose[count];
        double u = leadingChainage;
        for (int i = 0; i < count; i++)
        {
            int at = turned ? count - 1 - i : i;
            var gear = Gear(ride, set.Bodies[at], turned);
            if (!gear.Place(u, out var pose))
            {
                return null;
            }

            poses[at] = pose;
            if (i == count - 1)
            {
                break;
            }

            var (next, joint) = turned ? (set.Bodies[at - 1], set.Joints[at - 1]) : (set.Bodies[at + 1], set.Joints[at]);
            double trailingBase = turned ? set.Bodies[at].LeadingWheelbase : set.Bodies[at].TrailingWheelbase;

            // The frames that a hinge is at are the bogie of the body that hangs there: it counts them from the middle of their axles.
            double? follows = joint.Kind switch
            {
                BodyJointKind.SharedBogie => u - gear.Behind(2) - (trailingBase / 2),
                BodyJointKind.Hinge => set.Bodies[at].Hangs ? u - gear.Behind(2) : u - ((turned ? next.TrailingWheelbase : next.LeadingWheelbase) / 2),
                _ => Coupled(ride, set.Bodies[at], pose, next, joint.Gap, turned),
            };
            if (follows is not { } behind)
            {
                return null;
            }

            u = behind;
        }

        return turned ? Array.ConvertAll(poses, PoseSolver.About) : poses;
    }

    /// <summary>The set with one of its bodies at a leading chainage; null where it cannot stand.</summary>
    public static VehiclePose[]? PlaceBody(Centreline ride, VehicleSet set, int body, double leadingChainage, bool turned = false)
    {
        double first = leadingChainage;
        for (int round = 0; round < Rounds; round++)
        {
            var poses = Place(ride, set, first, turned);
            if (poses is null || Math.Abs(leadingChainage - poses[body].LeadingChainage) < Closeness)
            {
                return poses;
            }

            first += leadingChainage - poses[body].LeadingChainage;
        }

        return null;
    }

    private static RunningGear Gear(Centreline ride, Vehicle body, bool turned) => RunningGear.Of(ride, body, turned);

    // Leading chainage of the body that is coupled behind one that stands.
    private static double? Coupled(Centreline ride, Vehicle ahead, in VehiclePose stands, Vehicle behind, double gap, bool turned)
    {
        double rear = RunningEnds(ahead, turned).Rear, front = RunningEnds(behind, turned).Front;
        var coupling = stands.Body.Apply(new(rear, 0));
        double u = stands.LeadingChainage - (ahead.PivotCentres / 2) + rear - gap - front + (behind.PivotCentres / 2);
        var gear = Gear(ride, behind, turned);
        for (int round = 0; round < Rounds; round++)
        {
            if (!gear.Place(u, out var pose))
            {
                return null;
            }

            var mean = stands.Body.Forward + pose.Body.Forward;
            double miss = (Point2.Dot(coupling - pose.Body.Apply(new(front, 0)), mean) / mean.Length) - gap;
            if (Math.Abs(miss) < Closeness)
            {
                return u;
            }

            u += miss;
        }

        return null;
    }

    // Ends of the box in the frame of a body as it runs.
    private static (double Front, double Rear) RunningEnds(Vehicle body, bool turned)
    {
        var (front, rear) = VehicleSet.Ends(body);
        return turned ? (-rear, -front) : (front, rear);
    }
}
