namespace PlatformForge.Platforms.Islands;

/// <summary>An island as its second face sees it: the same platform in that track's chainage and reach, for what is told face by face.</summary>
public static class FaceViews
{
    /// <summary>
    /// The platform on the chart of its second face. Ribs, features and places for cuts are matters of the spine and left out; the planes of the
    /// surface are carried over.
    /// </summary>
    public static PlatformPlan Second(PlatformPlan plan)
    {
        var (near, far) = (plan.Faces[0], plan.Faces[1]);
        bool reversed = BodyCarrier.Reversed(near, far);
        double Along(double s) => Chainage(plan, s);
        double[] breaks = Array.ConvertAll(plan.Surface.Breaks, Along);
        var planes = plan.Surface.Planes;
        if (reversed)
        {
            Array.Reverse(breaks);
            planes = [.. planes.Reverse()];
        }

        return plan with
        {
            Spec = plan.Spec with
            {
                Face = far.Spec,
                OtherFace = near.Spec,
                StartRamp = reversed ? plan.Spec.EndRamp : plan.Spec.StartRamp,
                EndRamp = reversed ? plan.Spec.StartRamp : plan.Spec.EndRamp,
            },
            Faces = [far, near],
            Body = BodyCarrier.Carry(far, near),
            Surface = new(breaks, planes),
            Waist = plan.Waist is { } w ? new(w.Width, w.Second, w.First) : null,
            Ribs = [],
            CutCandidates = [],
            Features = [],
        };
    }

    /// <summary>The chainage of the second face at which the line across at a chainage of the spine meets its edge, mm.</summary>
    public static double Chainage(PlatformPlan plan, double s)
    {
        var far = plan.Faces[1];
        return far.Chart.Locate(plan.ToLayout(s, plan.Back.At(s))).Chainage;
    }
}
