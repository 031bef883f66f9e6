using System.Globalization;
using PlatformForge.Platforms;

namespace PlatformForge.Exports.Tables;

/// <summary>The posts of a fence and what stands between them, as a CSV file.</summary>
public static class FenceTable
{
    /// <summary>What a bay is called in tables and lists.</summary>
    public static string Called(FenceBayKind kind) => kind switch
    {
        FenceBayKind.Gate => "gate",
        FenceBayKind.Odd => "odd panel",
        _ => "panel",
    };

    /// <summary>A row a post: where it stands, and from it to the next what stands there, its length found and the length asked for.</summary>
    public static byte[] Of(PlatformPlan plan)
    {
        var fence = plan.Fence ?? throw new ArgumentException("The platform has no fence.", nameof(plan));
        var csv = new CsvText(
            "post", "chainage_mm", "reach_from_track_middle_mm", "layout_x_mm", "layout_y_mm", "pin_mm", "hole_mm", "hole_depth_mm", "along_fence_mm", "next", "next_length_mm", "next_asked_mm");
        double along = 0;
        for (int i = 0; i < fence.Posts.Count; i++)
        {
            var (hole, bay) = (fence.Posts[i], i < fence.Bays.Count ? fence.Bays[i] : null);
            var place = plan.ToLayout(hole.Chainage, hole.Reach);
            csv.Row(
                (i + 1).ToString(CultureInfo.InvariantCulture), N(hole.Chainage, 3), N(hole.Reach, 3), N(place.X, 3), N(place.Y, 3), N(plan.Spec.Fence?.PinDiameter, 2), N(hole.Diameter, 2),
                hole.Depth is null ? "through" : N(hole.Depth, 2), N(along, 3), bay is null ? "" : Called(bay.Kind), N(bay?.Length, 3), N(bay?.Asked, 3));
            along += bay?.Length ?? 0;
        }

        return csv.ToBytes();
    }

    private static string N(double? value, int digits) => value is { } v ? Drawings.Figures.Fixed(v, digits) : "";
}
