using PlatformForge.Units;

namespace PlatformForge.Platforms;

/// <summary>Front door of the room: plans platforms.</summary>
public static class PlatformPlanner
{
    /// <summary>The plan of a platform, or every fault found in what was asked.</summary>
    public static Outcome<PlatformPlan> Plan(PlatformRequest request) =>
        throw new BrokenInvariantException($"Platforms: nothing plans {request.Spec.Key} yet.");
}
