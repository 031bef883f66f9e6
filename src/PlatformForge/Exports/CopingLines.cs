using PlatformForge.Geometry;
using PlatformForge.Platforms;
using PlatformForge.Solids.Bodies;

namespace PlatformForge.Exports;

/// <summary>
/// What a coping has between the joints of its slabs, joints of bricks or lines beside tooled margins, as lines along the middles of what
/// a print has engraved.
/// </summary>
internal static class CopingLines
{
    /// <summary>Each line of a face by its places on the layout, one at least at every station between its ends.</summary>
    public static IEnumerable<Point2[]> Of(FacePlan face, CopingSpec coping)
    {
        double half = coping.JointWidth / 2;
        foreach (var groove in CopingGrooves.Of(face, coping))
        {
            // The one of margins ends where the others' middles are; a joint of bricks goes right across.
            if (groove.To - groove.From <= coping.JointWidth * 1.001)
            {
                double at = (groove.From + groove.To) / 2, near = Math.Max(0, groove.Near - half), far = Math.Min(coping.Width, groove.Far + half);
                yield return [Place(at, near), Place(at, far)];
                continue;
            }

            double from = groove.From + half, to = groove.To - half, reach = (groove.Near + groove.Far) / 2;
            yield return [.. face.Stations.Where(s => s > from && s < to).Prepend(from).Append(to).Select(s => Place(s, reach))];
        }

        Point2 Place(double s, double behind) => face.ToLayout(s, face.CopingFront.At(s) + behind);
    }
}
