using PlatformForge.Platforms.Furniture;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Specs;
using PlatformForge.Units;

namespace PlatformForge.Platforms.Faces;

/// <summary>What planners of one face and of two put their plans together with.</summary>
internal static class PlanAssembly
{
    /// <summary>A plan of faces, a body and what stands on it.</summary>
    public static PlatformPlan Assembled(PlatformSpec spec, PlatformSite site, IReadOnlyList<FacePlan> faces, BodyPlan body,
        PlannedFurniture furniture) => new()
        {
            Spec = spec,
            Site = site,
            Faces = faces,
            Body = body with
            {
                Lines = [.. body.Lines.Count > 0 ? body.Lines : faces.Take(1).SelectMany(f => f.Lines), .. BackStrips.Of(spec, faces[0], body)],
                Ground = WallGrounds.Of(spec, faces[0], body),
            },
            Ribs = furniture.Ribs.Ribs,
            RibPitch = furniture.Ribs.Pitch,
            Features = furniture.Features,
            CutCandidates = furniture.Cuts,
        };

    /// <summary>A plan on the bents that its ribs were set for, if it stands on any.</summary>
    public static PlatformPlan OnBents(PlatformPlan plan, RibPitch pitch, IReadOnlyList<double> cuts) =>
        plan with { Trestle = BentPlanner.Of(plan, cuts, pitch) };

    /// <summary>Whether there is no plan to go on with.</summary>
    public static bool HasErrors(List<Finding> findings) => findings.Exists(f => f.Severity == Severity.Error);
}
