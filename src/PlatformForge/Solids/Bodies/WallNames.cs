using PlatformForge.Platforms;

namespace PlatformForge.Solids.Bodies;

/// <summary>Names of the wall faces that a body's blocks make: the door by which a relief finds them.</summary>
public static class WallNames
{
    /// <summary>The far wall where no second face is.</summary>
    public const string Back = "back";

    /// <summary>The wall under a face's coping; faces are counted from 1.</summary>
    public static string FrontOf(int face) => FormattableString.Invariant($"front of face {face}");

    /// <summary>Names for the sides of a strip's ring: as many along its near line as along its far one, an end between them.</summary>
    internal static IReadOnlyList<string?> Of(FacetedPlan chart, PlanLine near, PlanLine far, int corners)
    {
        var body = chart.Plan.Body;
        string? nearName = ReferenceEquals(near, body.WallFace) ? FrontOf(1) : null;
        string? farName = ReferenceEquals(far, body.FarWallFace) ? body.FarCopingBack is null ? Back : FrontOf(2) : null;
        if (nearName is null && farName is null)
        {
            return [];
        }

        // On the right-hand side the ring runs the other way round, so its far line comes first.
        var (first, second) = chart.RunsLeft ? (nearName, farName) : (farName, nearName);
        int half = corners / 2;
        return [.. Enumerable.Range(0, corners).Select(i => i % half == half - 1 ? null : i < half ? first : second)];
    }
}
