using PlatformForge.Platforms.Edges;
using PlatformForge.Platforms.Furniture;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Requests;
using PlatformForge.Track;
using PlatformForge.Units;

namespace PlatformForge.Platforms.Islands;

/// <summary>Holds what stands on an island to the second face: to its vehicles at all heights, and to the clear width beside its edge.</summary>
internal static class StandingRule
{
    public static void Check(PlatformRequest second, FacePlan near, FacePlan far, Spine spine, PlannedFurniture furniture, List<Finding> findings)
    {
        var trace = far.Requirement;
        double[] full = CopingRequirement.FullHeight(second, trace);
        double spacing = trace.Stations[1] - trace.Stations[0], least = second.Site.Scale.ToModel(Features.Insets.LeastClear);
        foreach (var stands in furniture.Features.SelectMany(f => f.Stands))
        {
            // What it needs on the near side it needs on the far side too.
            var middle = furniture.Features.SelectMany(f => f.Openings).FirstOrDefault(o =>
                o.Name == stands.Name && o.Middle.Chainage >= stands.From && o.Middle.Chainage <= stands.To)?.Middle
                ?? new(stands.Middle, stands.Near);
            double reach = middle.Reach, half = Math.Max(0, reach - stands.Near), chainage = middle.Chainage;
            var (name, key) = (stands.Name, stands.Key + ".inset");
            var stood = spine.ToLayout(chainage, reach);
            TrackPlace place = far.Chart.Locate(stood), first = near.Chart.Locate(stood, chainage);
            double at = far.Side.Reach(place.Offset) - half, clear = at - far.CopingFront.At(place.Chainage),
                own = near.Side.Reach(first.Offset) - half - near.CopingFront.At(first.Chainage);
            int station = Math.Clamp((int)Math.Round((place.Chainage - trace.Stations[0]) / spacing), 0, full.Length - 1);
            if (full[station] + second.Budget.Margin - at is > 0 and var lack)
            {
                findings.Add(IslandFindings.FoulsOther(key, name, far.Spec.Track, place.Chainage, lack));
            }
            else if (Math.Min(clear, own) < least - Tolerances.Rounding)
            {
                bool other = clear < own;
                findings.Add(IslandFindings.ClearWidth(key, name, other ? far.Spec.Track : near.Spec.Track,
                    other ? place.Chainage : chainage, Math.Min(clear, own), clear + own, least));
            }
        }
    }
}
