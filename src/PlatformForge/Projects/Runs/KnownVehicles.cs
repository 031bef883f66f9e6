using PlatformForge.Clearance.Requests;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Units.Memories;

namespace PlatformForge.Projects.Runs;

/// <summary>
/// Puts the objects of earlier runs in the place of vehicles that hold the same. What was remembered speaks of those, and a body is found
/// in its set, and a vehicle among
/// those drawn, by being the same object.
/// </summary>
internal static class KnownVehicles
{
    /// <summary>The project with them.</summary>
    public static ProjectSpec In(ProjectSpec project, Memory memory)
    {
        // A set and its bodies belong together: a body that is as before comes back with a set that is as before, or not at all.
        var known = new Dictionary<Vehicle, Vehicle>(ReferenceEqualityComparer.Instance);
        var sets = new List<VehicleSet>();
        foreach (var set in project.Sets)
        {
            // What is remembered may speak of one body alone.
            var original = memory.Same(set, s => s.Bodies);
            sets.Add(original);
            foreach (var (body, before) in set.Bodies.Zip(original.Bodies))
            {
                known[body] = before;
            }
        }

        return project with
        {
            Sets = sets,
            Vehicles = [.. project.Vehicles.Select(v => known.TryGetValue(v, out var before) ? before : v.SetName is null ? memory.Same(v) : v)],
        };
    }
}
