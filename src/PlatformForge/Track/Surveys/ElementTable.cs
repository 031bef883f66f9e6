using PlatformForge.Track.Surveys.Results;

namespace PlatformForge.Track.Surveys;

/// <summary>Elements, joints and the sharpest place of a line.</summary>
internal static class ElementTable
{
    public static IReadOnlyList<FittedElement> Of(Centreline line) =>
        [.. line.Elements.Select((e, i) => new FittedElement(
            Kind(StraightRule.Told(e.StartCurvature), StraightRule.Told(e.EndCurvature)),
            line.StartOf(i),
            line.StartOf(i + 1),
            StraightRule.Told(e.StartCurvature),
            StraightRule.Told(e.EndCurvature)))];

    private static FittedKind Kind(double start, double end) =>
        start != end ? FittedKind.Transition : start == 0 ? FittedKind.Straight : FittedKind.Curve;

    public static LeastRadius? Sharpest(Centreline line)
    {
        LeastRadius? least = null;
        for (int i = 0; i < line.Elements.Count; i++)
        {
            var e = line.Elements[i];
            bool start = Math.Abs(e.StartCurvature) >= Math.Abs(e.EndCurvature);
            double curvature = start ? e.StartCurvature : e.EndCurvature;
            double at = e.IsCircular ? line.StartOf(i) + (e.Length / 2) : start ? line.StartOf(i) : line.StartOf(i + 1);
            if (StraightRule.Told(curvature) != 0 && (least is null || 1 / Math.Abs(curvature) < least.Radius
                || (e.IsCircular && 1 / Math.Abs(curvature) <= least.Radius)))
            {
                least = new(1 / Math.Abs(curvature), at, curvature > 0 ? Hand.Left : Hand.Right);
            }
        }

        return least;
    }
}
