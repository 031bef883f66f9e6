using PlatformForge.Geometry;
using PlatformForge.Track;

namespace PlatformForge.Clearance.Sweeping;

/// <summary>
/// One vehicle, one way round, run once along its track: corners leave traces, edges are drawn where they slide along themselves.
/// Nothing is allocated while it runs.
/// </summary>
internal sealed class SweepPass
{
    private readonly Centreline ride;
    private readonly SweptForm form;
    private readonly SweepBounds bounds;
    private readonly ChartTable table;
    private readonly FormCorner[] corners;
    private readonly double[][] left;
    private readonly double[][] right;
    private readonly Mark[] marks;

    // +1 when the track runs the way of the chart, −1 when it runs against it and the vehicle's left is the chart's right.
    private int sense = 1;

    public SweepPass(Centreline ride, SweepBounds bounds, ChartTable table)
    {
        (this.ride, this.bounds, this.table) = (ride, bounds, table);
        form = bounds.Form;
        corners = form.Corners;
        left = Blank(form.Vehicle.Parts.Count, table.Count);
        right = Blank(form.Vehicle.Parts.Count, table.Count);
        marks = new Mark[corners.Length];
    }

    /// <summary>Reach to the left of each part at each station.</summary>
    public double[][] Left => left;

    /// <summary>Reach to the right.</summary>
    public double[][] Right => right;

    /// <summary>Greatest amount added anywhere for a kink between stations, mm.</summary>
    public double KinkAllowance { get; private set; }

    /// <summary>Greatest error of any reach at a station before kinks, mm: an edge's allowance once, since its poses are real; a corner's
    /// twice, since its trace may have passed on either side of the chord.</summary>
    public double Allowance { get; private set; }

    /// <summary>Leading chainage of the pose that could not be placed; null when all could.</summary>
    public double? Stuck { get; private set; }

    /// <summary>Runs the vehicle from end to end.</summary>
    public void Run()
    {
        var gear = new RunningGear(ride, form.Centres, form.LeadingBase, form.TrailingBase);
        double[] events = KinkPoses();
        int nextEvent = 0;
        double u = bounds.First, stepBefore = 0;
        bool whole = true, kinked = false;
        SetOut();
        while (true)
        {
            if (!gear.Place(u, out var pose))
            {
                Stuck = u;
                return;
            }

            while (nextEvent < events.Length && events[nextEvent] <= u)
            {
                nextEvent++;
            }

            double next = Math.Min(u + bounds.Step(u), bounds.Last);
            bool kinkAhead = nextEvent < events.Length && events[nextEvent] <= next;
            next = kinkAhead ? events[nextEvent] : next;
            bool end = u >= bounds.Last;
            MoveCorners(pose);
            if (stepBefore > 0)
            {
                TraceCorners(bounds.CornerAllowance(u - stepBefore, stepBefore, table.Spacing));
            }

            DrawEdges(u, stepBefore, end ? 0 : next - u, whole || end || kinked);
            if (end)
            {
                return;
            }

            Keep(kinked);
            (stepBefore, u, whole, kinked) = (next - u, next, false, kinkAhead);
        }
    }

    private static double[][] Blank(int parts, int stations)
    {
        var rows = new double[parts][];
        for (int i = 0; i < parts; i++)
        {
            rows[i] = new double[stations];
            Array.Fill(rows[i], double.NegativeInfinity);
        }

        return rows;
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
                var gear = new RunningGear(ride, form.Centres, form.LeadingBase, form.TrailingBase);
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
        var gear = new RunningGear(ride, form.Centres, form.LeadingBase, form.TrailingBase);
        gear.Place(bounds.First, out var pose);
        return pose;
    }

    private void MoveCorners(in VehiclePose pose)
    {
        for (int i = 0; i < corners.Length; i++)
        {
            ref readonly var corner = ref corners[i];
            ref var mark = ref marks[i];
            var p = pose.Of(corner.Carrier).Apply(new(corner.X, corner.Y));
            (mark.Before, mark.PlaceBefore, mark.KnownBefore) = (mark.Now, mark.Place, mark.Known);
            mark.Now = p;
            mark.Known = table.Locate(p, ref mark.Entry, out mark.Place);
        }
    }

    private void Keep(bool kinked)
    {
        for (int i = 0; i < marks.Length; i++)
        {
            marks[i].SlopeBefore = kinked ? marks[i].Slope : double.NaN;
        }
    }

    private void TraceCorners(double allowance)
    {
        Allowance = Math.Max(Allowance, 2 * allowance);
        for (int i = 0; i < corners.Length; i++)
        {
            ref var mark = ref marks[i];
            int side = corners[i].CornerSide == 2 ? 2 : corners[i].CornerSide * sense;
            if (!(mark.Known && mark.KnownBefore))
            {
                continue;
            }

            double run = mark.Place.Chainage - mark.PlaceBefore.Chainage;
            mark.Slope = (mark.Place.Offset - mark.PlaceBefore.Offset) / run;
            if (side > 0)
            {
                Trace(left[corners[i].Part], mark, 1, allowance);
            }

            if (side is -1 or 2)
            {
                Trace(right[corners[i].Part], mark, -1, allowance);
            }
        }
    }

    private void Trace(double[] reach, in Mark mark, int sign, double allowance)
    {
        var (from, to) = mark.Place.Chainage >= mark.PlaceBefore.Chainage ? (mark.PlaceBefore, mark.Place) : (mark.Place, mark.PlaceBefore);
        double a = (from.Chainage - table.From) / table.Spacing, b = (to.Chainage - table.From) / table.Spacing;
        int k0 = (int)Math.Max(0, Math.Ceiling(a)), k1 = (int)Math.Min(reach.Length - 1, Math.Floor(b));
        double perStation = b > a ? sign * (to.Offset - from.Offset) / (b - a) : 0;
        double at = (sign * from.Offset) + ((k0 - a) * perStation) + allowance;
        for (int k = k0; k <= k1; k++, at += perStation)
        {
            if (at > reach[k])
            {
                reach[k] = at;
            }
        }

        if (!double.IsNaN(mark.SlopeBefore))
        {
            Peak(reach, mark, sign, allowance);
        }
    }

    // A kink leaves a peak in the trace; when it lies between two stations both are raised so that their join passes over it.
    private void Peak(double[] reach, in Mark mark, int sign, double allowance)
    {
        double place = (mark.PlaceBefore.Chainage - table.From) / table.Spacing;
        int k = (int)Math.Floor(place);
        double share = place - k, run = mark.Place.Chainage - mark.PlaceBefore.Chainage;
        double fall = sign * Math.Sign(run) * (mark.SlopeBefore - mark.Slope);
        if (fall <= 0 || k < 0 || k + 1 >= reach.Length)
        {
            return;
        }

        double excess = fall * share * (1 - share) * table.Spacing, peak = sign * mark.PlaceBefore.Offset;
        KinkAllowance = Math.Max(KinkAllowance, excess);
        double slopeBack = run > 0 ? mark.SlopeBefore : mark.Slope, slopeOn = run > 0 ? mark.Slope : mark.SlopeBefore;
        reach[k] = Math.Max(reach[k], peak - (sign * slopeBack * share * table.Spacing) + excess + allowance);
        reach[k + 1] = Math.Max(reach[k + 1], peak + (sign * slopeOn * (1 - share) * table.Spacing) + excess + allowance);
    }

    // An edge bounds what is swept only at points that move along it. Where the motion between poses brings them is told by how
    // fast its two ends leave it.
    private void DrawEdges(double u, double stepBefore, double stepAfter, bool whole)
    {
        double step = Math.Max(stepBefore, stepAfter), drift = bounds.EdgeDrift(u, stepBefore, stepAfter);
        double allowance = bounds.EdgeAllowance(u, stepBefore, stepAfter, table.Spacing);
        Allowance = Math.Max(Allowance, allowance);
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
            double length = edge.Length, first = 0, last = 1;
            if (!whole)
            {
                double leaveA = Point2.Cross(edge, a.Before - a.Now) / length, leaveB = Point2.Cross(edge, b.Before - b.Now) / length;
                double turn = leaveB - leaveA, window = (drift * stepBefore) + (Math.Abs(turn) * step / length) + (SweepBounds.RoundingShare * allowance);
                if (Math.Min(leaveA, leaveB) > window || Math.Max(leaveA, leaveB) < -window)
                {
                    continue;
                }

                if (turn != 0)
                {
                    double x = (window - leaveA) / turn, y = (-window - leaveA) / turn;
                    (first, last) = (Math.Max(0, Math.Min(x, y)), Math.Min(1, Math.Max(x, y)));
                }
            }

            if (a.Known && b.Known)
            {
                int side = corner.EdgeSide * sense;
                double[] reach = side > 0 ? left[corner.Part] : right[corner.Part];
                Draw(reach, a.Now, edge, StationsOf(a.Place.Chainage, b.Place.Chainage, first, last), side, allowance);
                if (whole && bounds.Halts)
                {
                    Close(reach, a.Place, side, allowance);
                    Close(reach, b.Place, side, allowance);
                }
            }
        }
    }

    // Stations, inside the edge, from the last one before a part of it to the first one after.
    private (int First, int Last) StationsOf(double chainageA, double chainageB, double first, double last)
    {
        double a = (chainageA - table.From) / table.Spacing, b = (chainageB - table.From) / table.Spacing;
        double from = a + ((b - a) * first), to = a + ((b - a) * last);
        return (
            (int)Math.Max(0, Math.Max(Math.Ceiling(Math.Min(a, b)), Math.Floor(Math.Min(from, to)))),
            (int)Math.Min(table.Count - 1, Math.Min(Math.Floor(Math.Max(a, b)), Math.Ceiling(Math.Max(from, to)))));
    }

    // Where a vehicle halts, its end lies between two stations; both are held to its corner.
    private void Close(double[] reach, TrackPlace corner, int sign, double allowance)
    {
        int k = (int)Math.Floor((corner.Chainage - table.From) / table.Spacing);
        for (int station = Math.Max(0, k); station <= Math.Min(k + 1, reach.Length - 1); station++)
        {
            reach[station] = Math.Max(reach[station], (sign * corner.Offset) + allowance);
        }
    }

    // The edge in the chart's coordinates: at every station it crosses, the offset at which it does.
    private void Draw(double[] reach, Point2 origin, Point2 edge, (int First, int Last) stations, int sign, double allowance)
    {
        for (int k = stations.First; k <= stations.Last; k++)
        {
            ref readonly var frame = ref table.AtStation(k);
            double along = (edge.X * frame.Tangent.X) + (edge.Y * frame.Tangent.Y);
            double dx = origin.X - frame.Position.X, dy = origin.Y - frame.Position.Y;
            double share = -((dx * frame.Tangent.X) + (dy * frame.Tangent.Y)) / along;
            dx += share * edge.X;
            dy += share * edge.Y;
            double at = (sign * ((dy * frame.Tangent.X) - (dx * frame.Tangent.Y))) + allowance;
            if (at > reach[k])
            {
                reach[k] = at;
            }
        }
    }

    private struct Mark
    {
        public Point2 Now;
        public Point2 Before;
        public TrackPlace Place;
        public TrackPlace PlaceBefore;
        public bool Known;
        public bool KnownBefore;
        public int Entry;
        public double Slope;
        public double SlopeBefore;
    }
}
