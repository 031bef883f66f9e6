using PlatformForge.Clearance;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Specs;

namespace PlatformForge.Platforms.Gaps;

/// <summary>Measures the gap from an edge to where door sills lie.</summary>
internal static class GapMeasurer
{
    public static GapTable Measure(PlatformRequest request, HeightProfile profile, IReadOnlyList<PlanLine> alternatives)
    {
        var rows = new List<GapRow>();
        foreach (var style in Enum.GetValues<EdgeStyle>())
        {
            foreach (var sill in request.Sills)
            {
                if (Row(request, profile, alternatives[(int)style], style, sill) is { } row)
                {
                    rows.Add(row);
                }
            }
        }

        var chosen = alternatives[(int)request.Spec.Face.Edge];
        return new(rows, [.. request.Sills.Select(s => Trace(request.Spec.Face, chosen, s))]);
    }

    // Nobody boards from a ramp, so rows are of the level part only.
    private static GapRow? Row(PlatformRequest request, HeightProfile profile, PlanLine edge, EdgeStyle style, SillReach sill)
    {
        double least = double.PositiveInfinity, largest = double.NegativeInfinity, sum = 0, leastAt = 0, largestAt = 0;
        int count = 0;
        for (int i = 0; i < sill.Greatest.Length; i++)
        {
            double s = sill.From + (i * sill.Spacing);
            if (s < profile.StartHead || s > profile.EndHead || double.IsNaN(sill.Greatest[i]) || double.IsNaN(sill.Least[i]))
            {
                continue;
            }

            double at = edge.At(s), near = at - sill.Greatest[i], far = at - sill.Least[i];
            if (near < least)
            {
                (least, leastAt) = (near, s);
            }

            if (far > largest)
            {
                (largest, largestAt) = (far, s);
            }

            sum += (near + far) / 2;
            count++;
        }

        return count == 0 ? null : new(
            style,
            sill.Vehicle.Name,
            least,
            leastAt,
            sum / count,
            largest,
            largestAt,
            sill.Height - request.Spec.Height,
            request.Site.Scale.Ratio);
    }

    private static GapTrace Trace(FaceSpec face, PlanLine edge, SillReach sill)
    {
        int first = Math.Max(0, (int)Math.Ceiling((face.From - sill.From) / sill.Spacing));
        int last = Math.Min(sill.Greatest.Length - 1, (int)Math.Floor((face.To - sill.From) / sill.Spacing));
        int count = Math.Max(0, last - first + 1);
        double[] stations = new double[count], nearest = new double[count], farthest = new double[count];
        for (int i = 0; i < count; i++)
        {
            stations[i] = sill.From + ((first + i) * sill.Spacing);
            double at = edge.At(stations[i]);
            nearest[i] = at - sill.Greatest[first + i];
            farthest[i] = at - sill.Least[first + i];
        }

        return new(sill.Vehicle.Name, stations, nearest, farthest);
    }
}
