using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Plans.Fittings;

namespace PlatformForge.Platforms.Islands;

/// <summary>An island as its second face sees it: the same platform in that track's chainage and reach, for what is told face by face.</summary>
public static class FaceViews
{
    /// <summary>
    /// The platform on the chart of its second face. Ribs, features and places for cuts are matters of the spine and left out; the planes of the
    /// surface and the lines across are the same.
    /// </summary>
    public static PlatformPlan Second(PlatformPlan plan)
    {
        var (near, far) = (plan.Faces[0], plan.Faces[1]);
        bool reversed = BodyCarrier.Reversed(near, far);
        double[] breaks = Array.ConvertAll(plan.Surface.Breaks, s => Chainage(plan, s));
        var planes = plan.Surface.Planes;
        if (reversed)
        {
            Array.Reverse(breaks);
            planes = [.. planes.Reverse()];
        }

        return plan with
        {
            Spec = IslandTracks.Turned(plan.Spec, far.Spec, near.Spec, reversed, far.RailTop - near.RailTop),
            Site = plan.Site with { RailTop = far.RailTop },
            Faces = [far, near],
            Body = Turned(plan, reversed),
            Surface = new(breaks, planes),
            Waist = plan.Waist is { } w ? new(w.Width, w.Second, w.First) : null,
            Ribs = [],
            CutCandidates = [],
            Features = [],
            Fittings = [.. plan.Fittings.Select(r => r with { Places = [.. r.Places.Select(p => Turned(plan, p))] })],
        };
    }

    /// <summary>The chainage of the second face at which the line across at a chainage of the first meets its edge, mm.</summary>
    public static double Chainage(PlatformPlan plan, double s) => plan.Body.Across!.SecondAt(s);

    // The wall that is far from one face is the near one of the other.
    private static WallFitting Turned(PlatformPlan plan, WallFitting fitting)
    {
        var (from, to) = Span(fitting.From, fitting.To);
        var (begins, ends) = Span(fitting.Footprint.From, fitting.Footprint.To);
        return fitting with
        {
            IsFar = !fitting.IsFar,
            Middle = Chainage(plan, fitting.Middle),
            From = from,
            To = to,
            Cut = fitting.Cut is { } cut ? Chainage(plan, cut) : null,
            Footprint = fitting.Footprint with { From = begins, To = ends },
        };

        (double From, double To) Span(double a, double b) =>
            (Math.Min(Chainage(plan, a), Chainage(plan, b)), Math.Max(Chainage(plan, a), Chainage(plan, b)));
    }

    // The same lines across and the same boundaries, told from the second edge.
    private static BodyPlan Turned(PlatformPlan plan, bool reversed)
    {
        var (body, across, edge) = (plan.Body, plan.Body.Across!, plan.Faces[1].CopingFront);
        T[] Order<T>(IEnumerable<T> of) => reversed ? [.. of.Reverse()] : [.. of];
        double[] stations = Order(across.Second), front = Array.ConvertAll(across.Second, edge.At);
        Point2[] aways = Array.ConvertAll(across.Aways, a => a * -1);
        PlanLine Told(PlanLine line) => new(stations, Order(line.Reach.Select((t, i) => front[i] + (body.Back.Reach[i] - t))));
        return new()
        {
            Stations = stations,
            Across = new(
                stations,
                Order(across.Origins.Select((o, i) => o + (across.Aways[i] * body.Back.Reach[i]) - (aways[i] * front[i]))),
                Order(aways),
                Order(across.Stations)),
            CopingFront = Told(body.Back),
            CopingBack = Told(body.FarCopingBack!),
            WallFace = Told(body.FarWallFace),
            WallBack = Told(body.BackWallFace),
            BackWallFace = Told(body.WallBack),
            FarWallFace = Told(body.WallFace),
            FarCopingBack = Told(body.CopingBack),
            Back = Told(body.CopingFront),
            Lines = [.. body.Lines.Select(Band)],
        };

        LineBand Band(LineBand line)
        {
            double a = across.SecondAt(line.From), b = across.SecondAt(line.To);
            return line with { From = Math.Min(a, b), To = Math.Max(a, b), Near = Told(line.Far), Far = Told(line.Near) };
        }
    }
}
