namespace PlatformForge.Track.Surveys;

/// <summary>Elements, joints and the sharpest place of a line.</summary>
internal static class ElementTable
{
    public static IReadOnlyList<FittedElement> Of(Centreline line) =>
        [.. line.Elements.Select((e, i) => new FittedElement(
            e.IsStraight ? FittedKind.Straight : e.IsCircular ? FittedKind.Curve : FittedKind.Transition,
            line.StartOf(i),
            line.StartOf(i + 1),
            Told(e.StartCurvature),
            Told(e.EndCurvature)))];

    // What rounding leaves of a straight: a radius of a thousand kilometres and more, 1/mm.
    private const double Nothing = 1e-9;

    private static double Told(double curvature) => Math.Abs(curvature) < Nothing ? 0 : curvature;

    public static LeastRadius? Sharpest(Centreline line)
    {
        LeastRadius? least = null;
        for (int i = 0; i < line.Elements.Count; i++)
        {
            var e = line.Elements[i];
            bool start = Math.Abs(e.StartCurvature) >= Math.Abs(e.EndCurvature);
            double curvature = start ? e.StartCurvature : e.EndCurvature;
            double at = e.IsCircular ? line.StartOf(i) + (e.Length / 2) : start ? line.StartOf(i) : line.StartOf(i + 1);
            if (Told(curvature) != 0 && (least is null || 1 / Math.Abs(curvature) < least.Radius || (e.IsCircular && 1 / Math.Abs(curvature) <= least.Radius)))
            {
                least = new(1 / Math.Abs(curvature), at, curvature > 0 ? Hand.Left : Hand.Right);
            }
        }

        return least;
    }
}
