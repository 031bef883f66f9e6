using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using static System.FormattableString;

namespace PlatformForge.Platforms.Features.Kinds;

/// <summary>A fence that is set out, in the neutral words of a planned feature.</summary>
internal static class FenceWords
{
    private const string Legend = "fence";

    public static PlannedFeature Of(FenceSpec spec, PlanFence fence, FeatureSite site) => new("fence", site.Key)
    {
        Keepouts = [.. fence.Posts.Select(p => p.Keepout(site, $"{site.Key}.pitch"))],
        Prisms = [.. fence.Posts.SelectMany(p => p.Prisms(site))],
        Openings = [.. fence.Posts.Select(p => p.Opening($"{site.Key}.pin", "holes of the fence's posts are", spec.Fit))],
        Marks = [.. Marks(fence, site)],
        Stands = [.. fence.Posts.Select(p => p.Standing(site, $"{site.Key}.pitch") with { Inset = ($"{site.Key}.inset", spec.Inset, InsetFrom.Back) })],
        Shown = FenceLooks.Of(fence, site),
        Parts =
        [
            new("fence post", fence.Posts.Count, spec.PinDiameter),
            .. fence.Parts.Select(p => new PartLine(Called(p.Kind), p.Count, null, p.Length)),
        ],
        Made = [.. Made(spec, fence)],
        SetOuts = fence.Posts.Count == 1 ? [new(fence.Posts[0].Place.Chainage, "fence post")]
            : [new(fence.Posts[0].Place.Chainage, "fence post (first)"), new(fence.Posts[^1].Place.Chainage, "fence post (last)")],
        Tables = [Table(spec, fence, site)],
    };

    // What a bay is called in tables and lists.
    private static string Called(FenceBayKind kind) => kind switch
    {
        FenceBayKind.Gate => "gate",
        FenceBayKind.Odd => "odd panel",
        _ => "panel",
    };

    private static IEnumerable<PlanMark> Marks(PlanFence fence, FeatureSite site)
    {
        for (int i = 0; i < fence.Posts.Count; i++)
        {
            // The one in the middle bears the name of all.
            string? label = i == fence.Posts.Count / 2 ? Invariant($"{fence.Posts.Count} x {fence.Posts[i].Name}") : null;
            yield return new CircleMark("post hole", fence.Posts[i].Place, fence.Posts[i].Diameter) { InRow = true, Label = label };
        }

        for (int i = 0; i < fence.Bays.Count; i++)
        {
            PlanPlace from = fence.Posts[i].Place, to = fence.Posts[i + 1].Place;
            double wide = Math.Round((site.ToLayout(to) - site.ToLayout(from)).Length, 1);
            yield return fence.Bays[i].Kind == FenceBayKind.Gate
                ? new LeafMark("gate", from, to) { Label = Invariant($"gate {wide:F1} wide") }
                : new LineMark(Legend, from, to);
        }
    }

    private static IEnumerable<MadeLine> Made(FenceSpec spec, PlanFence fence)
    {
        string depth = spec.Depth is { } deep ? Invariant($"{Math.Round(deep, 3):0.###} deep") : "right through";
        yield return new(
            "fence posts, pins",
            Invariant($"{Math.Round(spec.PinDiameter, 3):0.###}"),
            Invariant($"holes of {fence.Posts[0].Diameter:F2}, {depth}"),
            fence.Posts.Count);
        foreach (var (kind, length, count) in fence.Parts.Where(p => p.Kind != FenceBayKind.Gate))
        {
            yield return new(
                $"fence {Called(kind)}",
                kind == FenceBayKind.Odd ? "" : Invariant($"{Math.Round(spec.Pitch, 3):0.###}"),
                Invariant($"{length:F2}"),
                count);
        }

        foreach (var (gate, i) in fence.Bays.Where(b => b.Kind == FenceBayKind.Gate).Select((b, i) => (b, i)))
        {
            yield return new(Invariant($"gate {i + 1}, at the fence"), Invariant($"{gate.Asked ?? 0:F2}"), Invariant($"{gate.Length:F2}"), 1);
        }
    }

    // A row a post: where it stands, and from it to the next what stands there, its length found and the length asked for.
    private static FeatureTable Table(FenceSpec spec, PlanFence fence, FeatureSite site)
    {
        var rows = new List<IReadOnlyList<TableCell>>();
        double along = 0;
        for (int i = 0; i < fence.Posts.Count; i++)
        {
            var (hole, bay) = (fence.Posts[i], i < fence.Bays.Count ? fence.Bays[i] : null);
            var place = site.ToLayout(hole.Place);
            rows.Add(
            [
                TableCell.Of(
                    i + 1,
                    0), TableCell.Of(hole.Place.Chainage, 3), TableCell.Of(hole.Place.Reach, 3), TableCell.Of(place.X, 3), TableCell.Of(place.Y, 3),
                TableCell.Of(
                    spec.PinDiameter,
                    2), TableCell.Of(hole.Diameter, 2), hole.Depth is { } deep ? TableCell.Of(deep, 2) : "through", TableCell.Of(along, 3),
                bay is null ? "" : Called(bay.Kind), TableCell.Of(bay?.Length, 3), TableCell.Of(bay?.Asked, 3),
            ]);
            along += bay?.Length ?? 0;
        }

        string[] headings =
        [
            "post", "chainage_mm", "reach_from_track_middle_mm", "layout_x_mm", "layout_y_mm", "pin_mm", "hole_mm", "hole_depth_mm", "along_fence_mm", "next",
            "next_length_mm", "next_asked_mm",
        ];
        return new("fence", headings, rows);
    }
}
