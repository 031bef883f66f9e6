namespace PlatformForge.Clearance.Sweeping;

/// <summary>
/// How far apart the poses of one vehicle may be, place by place, and what has to be added to what they show so that the poses between
/// are covered too. The bounds are argued in docs/decisions/0010-swept-envelope.md.
/// </summary>
internal sealed class SweepBounds
{
    /// <summary>Greatest distance between poses, mm: on straight track nothing else limits it.</summary>
    public const double LongestStep = 12;

    // On track so bad that the tolerance would ask for less, mm, the error stated grows instead of the work.
    private const double ShortestStep = 0.05, LeastSpacing = 0.05;

    // Shares of the tolerance. A corner's trace may lie off its chord to either side, so its share counts twice.
    private const double CornerShare = 0.28, EdgeShare = 0.6, StationCornerShare = 0.08, StationEdgeShare = 0.25, KinkShare = 0.2;

    /// <summary>Share of the tolerance for rounding: pose closeness, the chart table's circles, sums.</summary>
    public const double RoundingShare = 0.03;

    // Share of the tolerance that may be left to ways off the middle between two states, and the most steps of a side of their square.
    private const double BetweenShare = 0.2;
    private const int MostSteps = 4;

    // Arc over chord of what stands within the greatest slew, with a little over.
    private const double ArcOverChord = 1.2;

    // Slews are below 45°, so the cosine never falls under this; the bound stops growing there.
    private const double LeastCosine = 0.7;

    private readonly Place[] places;
    private readonly double[] uniformUntil;
    private readonly double first;
    private readonly double tolerance;

    public SweepBounds(RunSpan span, SweptForm form, double tolerance)
    {
        Form = form;
        Halts = span.Run.StartsAtBuffers || span.Run.EndsAtBuffers;
        double behind = ((form.Centres / 2) + form.HalfLength + Math.Max(0, -form.LeadingAhead)) * ArcOverChord,
            ahead = Math.Max(form.LeadingBase / 2, form.HalfLength - (form.Centres / 2) + Math.Max(0, form.LeadingAhead)) * ArcOverChord;
        (first, Last) = Range(span, behind, ahead);
        places = new Place[Math.Max(1, (int)Math.Ceiling((Last - first) / RunSpan.Bin) + 1)];
        uniformUntil = new double[places.Length];
        double curving = 0;
        for (int i = places.Length - 1; i >= 0; i--)
        {
            double u = first + (i * RunSpan.Bin);
            var under = span.Over(u - behind - LongestStep, u + RunSpan.Bin + ahead + LongestStep);
            places[i] = Bound(under, form, span);
            curving = Math.Max(curving, places[i].Curving);
            bool uniform = span.IsChart && under.IsUniform;
            uniformUntil[i] = !uniform ? u : i + 1 < places.Length && uniformUntil[i + 1] > u + RunSpan.Bin ? uniformUntil[i + 1] : u + RunSpan.Bin;
        }

        double most = Math.Max(form.Points.Leading.Most, form.Points.Trailing.Most), between = curving * most * most / 2;
        int steps = Math.Clamp((int)Math.Ceiling(Math.Sqrt(between / (BetweenShare * tolerance))), 1, MostSteps);
        States = PlayState.Of(form.Points, steps);
        Between = between / (steps * steps);
        this.tolerance = Math.Max(tolerance - Between, tolerance / 2);
    }

    public SweptForm Form { get; }

    /// <summary>The ways off the middle of the track in which the form is swept.</summary>
    public IReadOnlyList<PlayState> States { get; }

    /// <summary>How much farther anything may reach in a way between two states, mm.</summary>
    public double Between { get; }

    /// <summary>Leading chainage of the first pose, mm.</summary>
    public double First => first;

    /// <summary>Leading chainage of the last pose, mm.</summary>
    public double Last { get; }

    /// <summary>Whether the vehicle halts before buffer stops instead of running on.</summary>
    public bool Halts { get; }

    /// <summary>How far a vehicle is swept beyond the stations, mm, on either side.</summary>
    public static double Margin(SweptForm form) => (4 * form.HalfLength * ArcOverChord) + (4 * LongestStep);

    /// <summary>Greatest distance of stations for which this vehicle keeps the tolerance, mm.</summary>
    public double Spacing
    {
        get
        {
            double spacing = double.PositiveInfinity;
            foreach (var p in places)
            {
                double corner = Math.Sqrt(8 * StationCornerShare * tolerance / p.Corner), edge = Math.Sqrt(2 * StationEdgeShare * tolerance / p.Edge);
                double kink = 4 * KinkShare * tolerance / (p.Kink * Form.Lever);
                spacing = Math.Min(spacing, Math.Min(kink, Math.Min(corner, edge)));
            }

            return Math.Max(LeastSpacing, spacing);
        }
    }

    /// <summary>About how many poses it takes: those of glides do not count.</summary>
    public double Poses => States.Count * Enumerable.Range(0, places.Length)
        .Sum(i => uniformUntil[i] > first + (i * RunSpan.Bin) ? 0 : RunSpan.Bin / StepAt(places[i]));

    /// <summary>Distance in mm from a pose to the next one.</summary>
    public double Step(double u) => StepAt(At(u));

    /// <summary>Leading chainage in mm up to which the vehicle only glides: its ride line is the chart and a straight or one circular curve under
    /// and around it, so that it keeps its place relative to the chart. Not above <paramref name="u"/> where it does not.</summary>
    public double GlideEnd(double u) => Math.Min(Last, uniformUntil[IndexAt(u)]);

    /// <summary>What is added to the chord of a corner's trace over a step, mm.</summary>
    public double CornerAllowance(double u, double step, double spacing) =>
        (At(u).Corner * ((step * step) + (spacing * spacing)) / 8) + (RoundingShare * tolerance);

    /// <summary>What is added to an edge at a pose, mm: enough for the poses skipped before it and after it.</summary>
    public double EdgeAllowance(double u, double stepBefore, double stepAfter, double spacing)
    {
        double before = At(u - stepBefore).Edge, after = At(u).Edge;
        return (Math.Max(before * stepBefore * stepBefore, after * stepAfter * stepAfter) / 8) + (Math.Max(before, after) * spacing * spacing / 2)
            + (RoundingShare * tolerance);
    }

    /// <summary>How much the speed at which a point of the vehicle leaves its own edge may change, per mm of run, over the steps beside a
    /// pose.</summary>
    public double EdgeDrift(double u, double stepBefore, double stepAfter) => Math.Max(At(u - stepBefore).Rate * stepBefore, At(u).Rate * stepAfter);

    // A vehicle is swept until it has left the stations for good; before buffer stops it halts with its end at the end of the track.
    private (double First, double Last) Range(RunSpan span, double behind, double ahead)
    {
        double start = span.From - ahead - (2 * LongestStep), end = span.To + behind + (2 * LongestStep);
        if (span.Run.StartsAtBuffers)
        {
            start = Math.Max(start, (Form.Centres / 2) - Form.LeadingAhead - Form.Rear);
        }

        if (span.Run.EndsAtBuffers)
        {
            end = Math.Min(end, span.Run.Ride.Length + (Form.Centres / 2) - Form.LeadingAhead - Form.Front);
        }

        return (start, Math.Max(start, end));
    }

    private static Place Bound(in CurvatureSpan under, SweptForm form, RunSpan span)
    {
        double kinks = under.KinkTurn / form.Guide;
        double k = Math.Max(Math.Abs(under.Least), Math.Abs(under.Most)) + kinks, spread = under.Most - under.Least + kinks;

        // A ride line beside the chart has another centre, even where it bends alike.
        double skew = span.IsChart ? 0 : span.Skew + (spread * form.HalfLength);
        spread += k * ((k * span.Offset) + (skew * skew));
        double aside = form.Lever * Math.Max(form.Points.Leading.Most, form.Points.Trailing.Most);
        double reach = span.Offset + form.HalfWidth + aside + (k * form.HalfLength * form.HalfLength / 2);
        double sine = Math.Min((k * form.Slew) + skew, Math.Sqrt(1 - (LeastCosine * LeastCosine)));
        double shrink = Math.Sqrt(1 - (sine * sine)) * Math.Max(LeastCosine, 1 - (k * reach));
        double factor = 1 / (shrink * shrink * shrink * shrink);
        double slope = Math.Min(1, (2 * form.Lever * spread * form.HalfLength) + skew);
        double twist = under.Rate * reach * slope;
        return new(
            factor * (((form.Lever + 1) * spread) + twist),
            factor * (k + ((form.Lever + 2) * spread) + twist),
            factor * (form.Lever + 2) * spread,
            under.KinkTurn,
            factor * ((form.HalfWidth / (form.Centres * form.Centres)) + (k * (1 + (form.OverPoints * form.OverPoints)) / 4)));
    }

    private double StepAt(in Place p)
    {
        double step = Math.Min(Math.Sqrt(8 * CornerShare * tolerance / p.Corner), Math.Sqrt(8 * EdgeShare * tolerance / p.Edge));
        return Math.Clamp(step, ShortestStep, LongestStep);
    }

    private ref readonly Place At(double u) => ref places[IndexAt(u)];

    private int IndexAt(double u) => Math.Clamp((int)((u - first) / RunSpan.Bin), 0, places.Length - 1);

    // Bounds, 1/mm: on the second derivative of a corner's trace; on that of an edge against the pose; on the rate of leaving; kinks in
    // radians; and on the second
    // derivative of a reach against how far a guided point is off.
    private readonly record struct Place(double Corner, double Edge, double Rate, double Kink, double Curving);
}
