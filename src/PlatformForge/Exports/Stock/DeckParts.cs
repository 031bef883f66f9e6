using PlatformForge.Exports.Looks;
using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Sections.Forms;
using static System.FormattableString;

namespace PlatformForge.Exports.Stock;

/// <summary>
/// The deck of each section as the flat piece that it is: seen square to its own plane, so that a ramp comes out as long as its slope. Coping, slabs
/// and the joints of a paving are scored,
/// the white line is marked, holes that go through are cut.
/// </summary>
internal sealed class DeckParts(StockBody body)
{
    // Farther from one plane than this, mm, a deck is not one piece of sheet.
    private const double Flat = 0.3;

    private readonly PlatformPlan plan = body.Plan;

    /// <summary>How far a section's top is from one plane, mm.</summary>
    public double OffPlane(PlatformSection section)
    {
        var frame = FrameOf(section);
        return Corners(section).Max(p => Math.Abs(frame.Height(p)));
    }

    /// <summary>Whether its deck can be one flat piece.</summary>
    public bool IsFlat(PlatformSection section) => OffPlane(section) <= Flat;

    public CutPart Of(PlatformSection section)
    {
        var frame = FrameOf(section);
        double[] stations = body.Stations(section);
        Point2 Place(double s, double t) => frame.Of(body.OnTop(s, t));
        Point2[] Along(PlanLine line, double from, double to) =>
            [.. stations.Where(s => s > from && s < to).Prepend(from).Append(to).Select(s => Place(s, line.At(s)))];
        Point2[] All(PlanLine line) => Along(line, section.From, section.To);

        var lines = new List<CutLine> { new(CutLayer.Cut, [.. All(plan.CopingFront), .. All(plan.Back).Reverse()]) };
        lines.AddRange(Recesses(section, Place));
        lines.Add(new(CutLayer.Score, All(plan.CopingBack), IsClosed: false));
        if (plan.Body.FarCopingBack is { } far)
        {
            lines.Add(new(CutLayer.Score, All(far), IsClosed: false));
        }

        lines.AddRange(SlabJoints(section, frame));
        lines.AddRange(CopingScores(section, frame));
        lines.AddRange(PavingJoints(section, Place));

        foreach (var white in plan.Body.Lines)
        {
            double from = Math.Max(white.From, section.From), to = Math.Min(white.To, section.To);
            PlanLine[] edges = from < to ? [white.Near, white.Far] : [];
            lines.AddRange(edges.Select(edge => new CutLine(CutLayer.Mark, Along(edge, from, to), IsClosed: false)));
        }

        var rounds = Within(section).Where(o => o.IsRound && GoesThrough(o))
            .Select(o => new CutRound(CutLayer.Cut, Place(o.Middle.Chainage, o.Middle.Reach), o.Along));
        double middle = (section.From + section.To) / 2;
        var words = new CutWords(Invariant($"{section.Number}  deck"), Place(middle, (plan.CopingBack.At(middle) + plan.Back.At(middle)) / 2), 4);
        bool isPaved = PavingLines.Of(plan).Any();
        string name = Invariant($"{section.Number} deck");
        return CutPart.AtOrigin(new(name, StockKind.Frame, lines)
        {
            Rounds = [.. rounds],
            Words = [words],
            IsSeenAllOver = isPaved,
            Note = isPaved ? "top face up; its name stands below it on the sheet" : "top face up"
        });
    }

    private IEnumerable<CutLine> CopingScores(PlatformSection section, PlaneFrame frame) =>
        plan.Faces.SelectMany(f => CopingLines.Of(f, plan.Spec.Coping)).Concat(CopingLines.OfReturns(plan)).Concat(CopingLines.InnerEdges(plan))
            .SelectMany(l => OnSection(l, section))
            .Select(l => new CutLine(CutLayer.Score, [.. l.Select(frame.Over)], IsClosed: false));

    // A joint between two slabs of any face's coping, told along its own track.
    private IEnumerable<CutLine> SlabJoints(PlatformSection section, PlaneFrame frame) =>
        from face in plan.Faces
        from joint in face.CopingJoints
        let front = face.ToLayout(joint, face.CopingFront.At(joint))
        let at = plan.Spine.Locate(front, (section.From + section.To) / 2).Chainage
        where at > section.From + MarkRoom.Margin && at < section.To - MarkRoom.Margin // one at the end is the cut itself
        select new CutLine(CutLayer.Score, [frame.Over(front), frame.Over(face.ToLayout(joint, face.CopingBack.At(joint)))], IsClosed: false);

    // What of a line on the layout lies within a section, clear of its cuts.
    private IEnumerable<Point2[]> OnSection(Point2[] line, PlatformSection section)
    {
        double first = section.From + MarkRoom.Margin, last = section.To - MarkRoom.Margin, near = (section.From + section.To) / 2;
        double[] at = [.. line.Select(p => plan.Spine.Locate(p, near).Chainage)];
        var run = new List<Point2>();
        for (int i = 0; i + 1 < line.Length; i++)
        {
            double a = at[i], b = at[i + 1], step = b - a;
            double from = step == 0 ? 0 : Math.Clamp(((step > 0 ? first : last) - a) / step, 0, 1);
            double to = step == 0 ? 1 : Math.Clamp(((step > 0 ? last : first) - a) / step, 0, 1);
            double middle = a + (step * (from + to) / 2);
            if (from < to && middle > first && middle < last)
            {
                var d = line[i + 1] - line[i];
                run.AddRange(run.Count == 0 ? [line[i] + (d * from), line[i] + (d * to)] : [line[i] + (d * to)]);
            }
        }

        if (run.Count > 1)
        {
            yield return [.. run];
        }
    }

    // What of the paving's joints lies on a section: those across it as they are, those along it cut to it.
    private IEnumerable<CutLine> PavingJoints(PlatformSection section, Func<double, double, Point2> place)
    {
        double first = section.From + MarkRoom.Margin, last = section.To - MarkRoom.Margin;
        foreach (var joint in PavingLines.Of(plan))
        {
            if (joint[0].Chainage == joint[^1].Chainage)
            {
                if (joint[0].Chainage > first && joint[0].Chainage < last)
                {
                    yield return Score(joint, place);
                }

                continue;
            }

            double from = Math.Max(section.From, joint[0].Chainage), to = Math.Min(section.To, joint[^1].Chainage);
            if (from < to)
            {
                PlanPlace Cut(double s) => new(s, ReachAt(joint, s));
                yield return Score([Cut(from), .. joint.Where(p => p.Chainage > from && p.Chainage < to), Cut(to)], place);
            }
        }
    }

    private static CutLine Score(PlanPlace[] joint, Func<double, double, Point2> place) =>
        new(CutLayer.Score, [.. joint.Select(p => place(p.Chainage, p.Reach))], IsClosed: false);

    private static double ReachAt(PlanPlace[] line, double s)
    {
        int after = Math.Clamp(Array.FindIndex(line, p => p.Chainage >= s), 1, line.Length - 1);
        PlanPlace a = line[after - 1], b = line[after];
        return a.Reach + ((b.Reach - a.Reach) * (s - a.Chainage) / (b.Chainage - a.Chainage));
    }

    private IEnumerable<PlatformForge.Platforms.Plans.Opening> Within(PlatformSection section) =>
        plan.Openings.Where(o => o.Middle.Chainage > section.From && o.Middle.Chainage < section.To);

    private bool GoesThrough(PlatformForge.Platforms.Plans.Opening opening) => opening.Depth is not { } depth || depth >= body.Stock.Thickness;

    private IEnumerable<CutLine> Recesses(PlatformSection section, Func<double, double, Point2> place)
    {
        foreach (var o in Within(section).Where(o => !o.IsRound || !GoesThrough(o)))
        {
            double s = o.Middle.Chainage, t = o.Middle.Reach, a = o.Along / 2, b = o.Across / 2;
            var layer = GoesThrough(o) ? CutLayer.Cut : CutLayer.Mark;
            yield return new(layer, [place(s - a, t - b), place(s + a, t - b), place(s + a, t + b), place(s - a, t + b)]);
        }
    }

    private IEnumerable<Point3> Corners(PlatformSection section) =>
        body.Stations(section).SelectMany(s => (Point3[])[body.OnTop(s, plan.CopingFront.At(s)), body.OnTop(s, plan.Back.At(s))]);

    private PlaneFrame FrameOf(PlatformSection section) => PlaneFrame.Through(
        body.OnTop(section.From, plan.CopingFront.At(section.From)), body.OnTop(section.To, plan.CopingFront.At(section.To)),
        body.OnTop((section.From + section.To) / 2, plan.Back.At((section.From + section.To) / 2)));
}

/// <summary>A plane in space with two unit directions in it, so that what lies in it keeps its size on a flat sheet.</summary>
internal readonly record struct PlaneFrame(Point3 Origin, Point3 Along, Point3 Across, Point3 Up)
{
    /// <summary>The plane through three points, its first direction from the first to the second, seen from above.</summary>
    public static PlaneFrame Through(Point3 a, Point3 b, Point3 c)
    {
        var along = (b - a) * (1 / (b - a).Length);
        var up = Point3.Cross(along, c - a);
        up *= (up.Z < 0 ? -1 : 1) / up.Length;
        return new(a, along, Point3.Cross(up, along), up);
    }

    public Point2 Of(Point3 p) => new(Point3.Dot(p - Origin, Along), Point3.Dot(p - Origin, Across));

    /// <summary>The place of the plane over a point in plan.</summary>
    public Point2 Over(Point2 p) => Of(new(p.X, p.Y, Origin.Z - (((Up.X * (p.X - Origin.X)) + (Up.Y * (p.Y - Origin.Y))) / Up.Z)));

    public double Height(Point3 p) => Point3.Dot(p - Origin, Up);
}
