using System.Runtime.CompilerServices;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Geometry;
using PlatformForge.Track;

namespace PlatformForge.Clearance.Sweeping;

/// <summary>
/// One vehicle run along its track, once for each way in which it is off the middle: corners leave traces, edges are drawn where they slide
/// along themselves. Where
/// the vehicle only glides, on a straight or one circular curve, one pose stands for all and is moved along. Nothing is allocated while it runs.
/// </summary>
internal sealed class SweepPass
{
    // A glide shorter than this, mm, is not worth drawing all edges at both its ends.
    private const double ShortestGlide = 2 * SweepBounds.LongestStep;

    private readonly Centreline ride;
    private readonly SweptForm form;
    private readonly SweepBounds bounds;
    private readonly ChartTable table;
    private readonly ReachSheet sheet;
    private readonly Mark[] marks;
    private PlayState state;
    private FormCorner[] corners = [];

    private double cornerError;
    private double edgeError;
    private double kinkError;

    // +1 when the track runs the way of the chart, −1 when it runs against it and the vehicle's left is the chart's right.
    private int sense = 1;

    public SweepPass(Centreline ride, SweepBounds bounds, ChartTable table)
    {
        (this.ride, this.bounds, this.table) = (ride, bounds, table);
        form = bounds.Form;
        sheet = new(table, form.Outlines);
        marks = new Mark[form.Corners.Length];
    }

    /// <summary>Reach to the left of each outline of the form at each station.</summary>
    public double[][] Left => sheet.Left;

    /// <summary>Reach to the right.</summary>
    public double[][] Right => sheet.Right;

    /// <summary>Greatest error of any reach at a station, mm. A station holds the greatest of what was written to it, and each of these is over the
    /// truth by no more than its own error: an edge's allowance, once, since its poses are real; twice a corner's, since its trace may have
    /// passed on either side of the chord, and what holds it over the peak of a kink.</summary>
    public double ErrorBound => Math.Max(edgeError, cornerError + kinkError) + bounds.Between;

    /// <summary>Leading chainage of the pose that could not be placed; null when all could.</summary>
    public double? Stuck { get; private set; }

    /// <summary>Runs the vehicle from end to end in all its states.</summary>
    public void Run()
    {
        foreach (var way in bounds.States)
        {
            state = way;
            corners = form.Points.IsLoose ? FormCorner.Deciding(form.Corners, state, form.Points) : form.Corners;
            Array.Clear(marks);
            if (corners.Length > 0)
            {
                RunOnce();
            }
        }

        sheet.Raise(bounds.Between);
    }

    private void RunOnce()
    {
        var gear = form.Gear(ride, state);
        double[] events = KinkPoses();
        int nextEvent = 0;
        double u = bounds.First, stepBefore = 0;
        bool start = true, onKink = false, offKink = false, glided = false;
        SetOut();
        while (gear.Place(u, out var pose))
        {
            nextEvent = After(events, nextEvent, u);
            bool end = u >= bounds.Last, glide = bounds.GlideEnd(u) - u > ShortestGlide;
            double next = glide ? bounds.GlideEnd(u) : Math.Min(u + bounds.Step(u), bounds.Last);
            bool kinkAhead = nextEvent < events.Length && events[nextEvent] <= next;
            next = kinkAhead ? events[nextEvent] : next;
            MoveCorners(pose, glided ? stepBefore : 0);
            if (stepBefore > 0)
            {
                TraceCorners(bounds.CornerAllowance(u - stepBefore, stepBefore, table.Spacing), offKink);
            }

            DrawEdges(u, glided ? 0 : stepBefore, end || glide ? 0 : next - u, start || end || onKink || glide || glided, halts: start || end);
            if (end)
            {
                return;
            }

            if (glide)
            {
                TraceEdgePeaks(u, next - u);
            }

            (stepBefore, u, start, glided, offKink, onKink) = (next - u, next, false, glide, onKink, kinkAhead);
        }

        Stuck = u;
    }

    // The first event from one on that lies beyond a chainage.
    private static int After(double[] events, int from, double u)
    {
        int next = from;
        while (next < events.Length && events[next] <= u)
        {
            next++;
        }

        return next;
    }

    // Leading chainages at which an axle stands on a kink, in order.
    private double[] KinkPoses()
    {
        if (ride.Kinks.Count == 0)
        {
            return [];
        }

        var poses = new List<double>();
        foreach (var kink in ride.Kinks)
        {
            for (int axle = 0; axle < 4; axle++)
            {
                var gear = form.Gear(ride, state);
                double u = kink.Chainage + gear.Behind(axle);
                for (int round = 0; round < KinkRounds && gear.Place(u, out _); round++)
                {
                    u = kink.Chainage + gear.Behind(axle);
                }

                if (u > bounds.First && u < bounds.Last)
                {
                    poses.Add(u);
                }
            }
        }

        poses.Sort();
        return [.. poses.Distinct()];
    }

    // How far an axle is behind hardly changes with the pose, so putting the pose right by it converges fast.
    private const int KinkRounds = 12;

    private void SetOut()
    {
        var first = PoseAtStart();
        sense = Point2.Dot(first.Body.Forward, table.Chart.At(table.Chart.Locate(first.Body.Origin).Chainage).Tangent) < 0 ? -1 : 1;
        for (int i = 0; i < corners.Length; i++)
        {
            marks[i].Entry = table.EntryNear(table.Chart.Locate(first.Of(corners[i].Carrier).Apply(new(corners[i].X, corners[i].Y))).Chainage);
        }
    }

    private VehiclePose PoseAtStart()
    {
        var gear = form.Gear(ride, state);
        gear.Place(bounds.First, out var pose);
        return pose;
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void MoveCorners(in VehiclePose pose, double glided)
    {
        int stations = (int)Math.Round(glided / table.Spacing);
        for (int i = 0; i < corners.Length; i++)
        {
            ref readonly var corner = ref corners[i];
            ref var mark = ref marks[i];
            (mark.Before, mark.StationBefore, mark.OffsetBefore, mark.KnownBefore) = (mark.Now, mark.Station, mark.Offset, mark.Known);
            mark.Now = pose.Of(corner.Carrier).Apply(new(corner.X, corner.Y));
            mark.Entry = Math.Clamp(mark.Entry + stations, 0, table.Entries - 1);
            mark.Known = table.Locate(mark.Now, ref mark.Entry, out var place);
            (mark.Station, mark.Offset) = (table.StationsTo(place.Chainage), place.Offset);
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void TraceCorners(double allowance, bool offKink)
    {
        cornerError = Math.Max(cornerError, 2 * allowance);
        for (int i = 0; i < corners.Length; i++)
        {
            ref var mark = ref marks[i];
            if (!(mark.Known && mark.KnownBefore))
            {
                continue;
            }

            int outline = corners[i].Outline, side = corners[i].CornerSide == 2 ? 2 : corners[i].CornerSide * sense;
            if (side > 0)
            {
                Trace(sheet.Left[outline], mark, 1, allowance, offKink);
            }

            if (side is -1 or 2)
            {
                Trace(sheet.Right[outline], mark, -1, allowance, offKink);
            }

            if (ride.Kinks.Count > 0)
            {
                mark.SlopeBefore = mark.Slope;
            }
        }
    }

    private void Trace(double[] row, in Mark mark, int sign, double allowance, bool offKink)
    {
        double before = (sign * mark.OffsetBefore) + allowance, now = (sign * mark.Offset) + allowance;
        ReachSheet.Trace(row, mark.StationBefore, before, mark.Station, now);
        if (offKink)
        {
            bool forward = mark.Station > mark.StationBefore;
            double back = sign * (forward ? mark.SlopeBefore : mark.Slope), on = sign * (forward ? mark.Slope : mark.SlopeBefore);
            kinkError = Math.Max(kinkError, ReachSheet.Peak(row, mark.StationBefore, before, back, on));
        }
    }

    // While a vehicle glides on a circular curve, an edge that looks at its centre reaches farthest where the square from the centre meets it.
    // All other edges reach farthest at a corner, and corners leave traces anyhow.
    private void TraceEdgePeaks(double u, double glide)
    {
        double allowance = bounds.EdgeAllowance(u, 0, 0, table.Spacing);
        for (int i = 0; i < corners.Length; i++)
        {
            ref readonly var mark = ref marks[i];
            var frame = table.AtEntry(mark.Entry);
            int side = corners[i].EdgeSide * sense;
            if (!mark.Known || side * frame.Curvature <= 0)
            {
                continue;
            }

            var edge = marks[corners[i].Next].Now - mark.Now;
            double share = Point2.Dot(frame.At(1 / frame.Curvature) - mark.Now, edge) / Point2.Dot(edge, edge);
            int entry = mark.Entry;
            if (share is > 0 and < 1 && table.Locate(mark.Now + (edge * share), ref entry, out var place))
            {
                double from = table.StationsTo(place.Chainage), reach = (side * place.Offset) + allowance;
                ReachSheet.Trace(sheet.Row(corners[i].Outline, side), from, reach, from + (glide / table.Spacing), reach);
            }
        }
    }

    // An edge bounds what is swept only at points that move along it. Where the motion between poses brings them is told by how
    // fast its two ends leave it.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void DrawEdges(double u, double stepBefore, double stepAfter, bool whole, bool halts)
    {
        double step = Math.Max(stepBefore, stepAfter), drift = bounds.EdgeDrift(u, stepBefore, stepAfter);
        double allowance = bounds.EdgeAllowance(u, stepBefore, stepAfter, table.Spacing);
        edgeError = Math.Max(edgeError, allowance);
        for (int i = 0; i < corners.Length; i++)
        {
            ref readonly var corner = ref corners[i];
            if (corner.EdgeSide == 0)
            {
                continue;
            }

            ref readonly var a = ref marks[i];
            ref readonly var b = ref marks[corner.Next];
            var edge = b.Now - a.Now;
            (double First, double Last) part = (0, 1);
            if (!whole && !MovesAlong(a, b, drift * stepBefore, step, SweepBounds.RoundingShare * allowance, ref part))
            {
                continue;
            }

            if (a.Known && b.Known)
            {
                int side = corner.EdgeSide * sense;
                double[] row = sheet.Row(corner.Outline, side);
                sheet.Draw(row, a.Now, edge, StationsOf(a.Station, b.Station, part.First, part.Last), side, allowance);
                if (halts && bounds.Halts)
                {
                    // Its ends lie between two stations.
                    ReachSheet.Hold(row, a.Station, (side * a.Offset) + allowance);
                    ReachSheet.Hold(row, b.Station, (side * b.Offset) + allowance);
                }
            }
        }
    }

    // Which part of an edge, in shares of it, moves along it between two poses; false where none does.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static bool MovesAlong(in Mark a, in Mark b, double drift, double step, double rounding, ref (double First, double Last) part)
    {
        var edge = b.Now - a.Now;
        double length = edge.Length, leaveA = Point2.Cross(edge, a.Before - a.Now) / length, leaveB = Point2.Cross(edge, b.Before - b.Now) / length;
        double turn = leaveB - leaveA, window = drift + (Math.Abs(turn) * step / length) + rounding;
        if (Math.Min(leaveA, leaveB) > window || Math.Max(leaveA, leaveB) < -window)
        {
            return false;
        }

        if (turn != 0)
        {
            double x = (window - leaveA) / turn, y = (-window - leaveA) / turn;
            part = (Math.Max(0, Math.Min(x, y)), Math.Min(1, Math.Max(x, y)));
        }

        return true;
    }

    // Stations, inside the edge, from the last one before a part of it to the first one after.
    private (int First, int Last) StationsOf(double a, double b, double first, double last)
    {
        double from = a + ((b - a) * first), to = a + ((b - a) * last);
        return (
            (int)Math.Max(0, Math.Max(Math.Ceiling(Math.Min(a, b)), Math.Floor(Math.Min(from, to)))),
            (int)Math.Min(table.Count - 1, Math.Min(Math.Floor(Math.Max(a, b)), Math.Ceiling(Math.Max(from, to)))));
    }

    // A corner of the vehicle at this pose and the one before: its place along the chart is counted in stations, offsets are in mm.
    private struct Mark
    {
        public Point2 Now;
        public Point2 Before;
        public double Station;
        public double StationBefore;
        public double Offset;
        public double OffsetBefore;
        public bool Known;
        public bool KnownBefore;
        public int Entry;
        public double SlopeBefore;

        // Rise of its trace since the pose before, mm a station.
        public readonly double Slope => (Offset - OffsetBefore) / (Station - StationBefore);
    }
}
