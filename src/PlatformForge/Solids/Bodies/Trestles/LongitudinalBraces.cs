using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Solids.Bodies.Layers;

namespace PlatformForge.Solids.Bodies.Trestles;

/// <summary>A brace along a platform, in the plane of a row of posts.</summary>
/// <param name="Row">Which row, from 0 at the front.</param>
/// <param name="From">Chainage of the face of the post that it rises from, mm.</param>
/// <param name="To">That of the post that it rises towards; less where it rises against the chainage.</param>
/// <param name="Line">How it lies between them.</param>
/// <param name="Soffit">The underside of the bearer over it.</param>
public sealed record LongitudinalBrace(int Row, double From, double To, BraceLine Line, Soffit Soffit)
{
    /// <summary>The face of the post that it rises from, in the middle of the row.</summary>
    public required Point2 Origin { get; init; }

    /// <summary>Unit direction in plan in which it rises.</summary>
    public required Point2 Ahead { get; init; }

    /// <summary>Chainage at a distance from its post, mm.</summary>
    public double At(double along) => From + (along / Wide * (To - From));

    /// <summary>Clear room between the two posts, mm.</summary>
    public required double Wide { get; init; }

    /// <summary>Its place in plan between two distances from its post, so much to either side of its middle: counter-clockwise.</summary>
    public Point2[] Ring(double from, double to, double half)
    {
        Point2 Place(double along, double aside) => Origin + (Ahead * along) + (Ahead.Left * aside);
        return [Place(from, -half), Place(to, -half), Place(to, half), Place(from, half)];
    }
}

/// <summary>
/// The braces along a platform: between the posts of neighbouring bents of a section, from the foot of one up to the bearer, at 45 degrees to the deck or
/// steeper. Between the two bents at a cut there is no room, and none is set beyond the last ones.
/// </summary>
public sealed class LongitudinalBraces
{
    // A bay shorter than this, mm, is a cut's.
    private const double NoBay = 0.5;

    private readonly FacetedPlan chart;
    private readonly TrestleSpec spec;
    private readonly Prism[] holes;

    private LongitudinalBraces(FacetedPlan chart, TrestleSpec spec)
    {
        (this.chart, this.spec) = (chart, spec);
        holes = [.. chart.Plan.Features.SelectMany(f => f.Prisms).Where(p => p.Act == PrismAct.Remove)];
    }

    /// <summary>Those of a platform that stands on bents and has any.</summary>
    /// <param name="chart">The platform.</param>
    /// <param name="leftOut">How many are not set, since what goes through the deck stands in their way.</param>
    public static IReadOnlyList<LongitudinalBrace> Of(FacetedPlan chart, out int leftOut)
    {
        leftOut = 0;
        if (chart.Plan is not { Trestle: { } trestle, Spec.Trestle: { Longitudinal: not LongitudinalForm.None } spec })
        {
            return [];
        }

        var found = new LongitudinalBraces(chart, spec);
        var bays = trestle.Bents.Zip(trestle.Bents.Skip(1)).ToArray();
        var all = found.Rows(trestle).SelectMany(row => bays.SelectMany((bay, i) => found.Bay(row, i, bay.First, bay.Second))).ToArray();
        LongitudinalBrace[] free = [.. all.Where(found.IsFree)];
        leftOut = all.Length - free.Length;
        return free;
    }

    /// <summary>How far before or behind the middle of its row of posts a bay's straight line from post to post lies at most, mm: nothing on
    /// straights.</summary>
    public static double Bow(FacetedPlan chart, PostRow row, PlannedBent one, PlannedBent next)
    {
        var (middle, a, b) = (Middle(row), chart.On(Middle(row), one.To), chart.On(Middle(row), next.From));
        var ahead = (b - a) * (1 / (b - a).Length);
        return chart.Chainages(one.To, next.From).Max(s => Math.Abs(Point2.Cross(ahead, chart.On(middle, s) - a)));
    }

    private IEnumerable<int> Rows(PlanTrestle trestle) => spec.Braced switch
    {
        BracedRows.Front => [0],
        BracedRows.Back => [trestle.Rows.Count - 1],
        BracedRows.Both => [0, trestle.Rows.Count - 1],
        _ => Enumerable.Range(0, trestle.Rows.Count),
    };

    private IEnumerable<LongitudinalBrace> Bay(int row, int number, PlannedBent one, PlannedBent next)
    {
        if (next.From - one.To < NoBay)
        {
            yield break;
        }

        bool raking = spec.Longitudinal == LongitudinalForm.Raking;
        foreach (bool onward in (bool[])[true, false])
        {
            if ((!raking || number % 2 == 0 == onward)
                && (onward ? Brace(row, one.To, next.From) : Brace(row, next.From, one.To)) is { } brace)
            {
                yield return brace;
            }
        }
    }

    private LongitudinalBrace? Brace(int row, double from, double to)
    {
        var line = Middle(chart.Plan.Trestle!.Rows[row]);
        Point2 a = chart.On(line, from), b = chart.On(line, to);
        double wide = (b - a).Length, below = chart.Plan.Spec.Deck.Thickness + spec.Bearer;
        var ahead = (b - a) * (1 / wide);
        double low = Math.Min(from, to), high = Math.Max(from, to);
        double[] bends = [low, .. chart.Plan.Surface.Breaks.Where(s => s > low && s < high), high];
        bends = from < to ? bends : [.. bends.Reverse()];

        // A break lies on a line across; a height is that of the plane before it and behind it.
        var soffit = new Soffit([.. bends.Select((s, i) => Point((s - from) / (to - from) * wide, (i == 0 ? from + bends[1] : s + bends[i - 1]) / 2))]);
        (double, double) Point(double along, double chainage) => (along, chart.Plan.Surface.At(chainage).At(a + (ahead * along)) - below);
        return BraceLine.Along(spec, wide, soffit) is { } lies ? new(row, from, to, lies, soffit) { Origin = a, Ahead = ahead, Wide = wide } : null;
    }

    // What is let into the deck deeper than the bearer would cut a brace in two, and what it leaves at the foot would print in the air.
    private bool IsFree(LongitudinalBrace brace)
    {
        double most = Math.Min(brace.Wide, brace.Line.Run);
        var strip = brace.Ring(0, most, spec.Brace / 2);
        return !holes.Any(h =>
        {
            var met = h.Ring;
            for (int i = 0; i < strip.Length && met.Length > 0; i++)
            {
                met = ConvexRing.LeftOf(met, strip[i], strip[(i + 1) % strip.Length]);
            }

            double along = met.Select(p => Point2.Dot(p - brace.Origin, brace.Ahead)).DefaultIfEmpty(0).Max();
            return met.Length > 0 && Floor(h) < Math.Min(brace.Soffit.At(along), brace.Line.Foot + (brace.Line.Rise * along) + brace.Line.Deep);
        });
    }

    // The lower end of what is taken out, in its middle.
    private double Floor(Prism hole)
    {
        double top = chart.Plan.TopAt(hole.Middle.Chainage, hole.Middle.Reach);
        return hole.Lower.Offset + hole.Lower.From switch
        {
            Datum.Baseboard => 0,
            Datum.DeckUnderside => top - chart.Plan.Spec.Deck.Thickness,
            _ => top,
        };
    }

    private static PlanLine Middle(PostRow row) => row.Near with { Reach = [.. row.Near.Reach.Zip(row.Far.Reach, (a, b) => (a + b) / 2)] };
}
