using PlatformForge.Clearance.Requests;
using PlatformForge.Exports.Drawings.Plans;
using PlatformForge.Exports.Files;
using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Track;
using static System.FormattableString;

namespace PlatformForge.Exports.Paper.FullSize;

/// <summary>
/// Reads a platform through and through and tells it as full-size figures. The only part of the room that knows how platforms are planned.
/// </summary>
internal sealed partial class PlanFigures(Dossier dossier, PlatformDossier platform)
{
    private const double Beyond = 60; // mm of track shown past either end
    // full size, mm, from memory: where sleepers lie is not known, so their ends are a guide only
    private const double SleeperPitch = 760, SleeperLength = 2590, SleeperWidth = 254;
    private const double Tick = 10, LongTick = 50; // mm of chainage
    private const double Behind = 14, Before = 5; // mm of paper beyond the platform's back, for names, and beyond what the vehicles sweep
    private const double AreaPiece = 20; // mm of coping in one area
    private const double OtherTrackWithin = 60, OtherTrackNamed = 150; // mm: farther tracks are left out; how often others are named
    private const double Own = 0.5, SamePlace = 0.001; // mm: nearer than the first to the platform's own track a line is that track

    private readonly PlatformPlan plan = platform.Plan;
    private readonly PlanLine farthest = platform.Plan.Outer;
    private readonly Centreline chart = platform.Plan.Chart;
    private readonly Centreline ride = platform.Ride ?? platform.Plan.Chart;
    private readonly ReachLine away = platform.Envelope.Composite(platform.Plan.Side == PlatformForge.Track.Side.Left ? PlatformForge.Track.Side.Right
        : PlatformForge.Track.Side.Left);
    private readonly ReachLine towards = platform.Envelope.Composite(platform.Plan.Side);
    private readonly List<FigureLine> lines = [];
    private readonly List<FigureMark> marks = [];
    private readonly List<FigureWords> words = [];
    private Point2[] trackBed = [], outline = [];

    private double From => plan.Spec.Face.From;

    private double To => plan.Spec.Face.To;

    private (double From, double To) Range => (Math.Max(0, From - Beyond), Math.Min(chart.Length, To + Beyond));

    private int Side => (int)plan.Side;

    private double HalfSleeper => dossier.Scale.ToModel(SleeperLength) / 2;

    /// <param name="dossier">All that is known.</param>
    /// <param name="platform">The platform by the face whose track the sheets follow.</param>
    /// <param name="first">The same by its first face, along which body, cuts and what stands on the deck are told; null where that is the one.</param>
    public static FullSizeFigures Of(Dossier dossier, PlatformDossier platform, PlatformDossier? first = null) =>
        new PlanFigures(dossier, platform).Read(first is null || ReferenceEquals(first, platform) ? null : new PlanFigures(dossier, first));

    private FullSizeFigures Read(PlanFigures? first)
    {
        var whole = first ?? this;
        whole.Body();
        Rails();
        OtherTracks();
        Swept();
        whole.Divisions();
        whole.Fittings();
        Chainages();
        if (first is not null)
        {
            // One track may run against the other: words are written for who reads along this one.
            double middle = (From + To) / 2, way = Point2.Dot(chart.At(middle).Tangent, first.chart.At(first.chart.Locate(Front(middle)).Chainage).Tangent);
            lines.AddRange(first.lines);
            marks.AddRange(first.marks);
            words.AddRange(first.words.Select(w => way < 0 ? w with { Along = w.Along * -1, Text = string.Join(" | ", w.Text.Split(" | ").Reverse()) } : w));
        }

        return new()
        {
            Name = platform.FaceName,
            Lines = [.. lines.OrderBy(l => l.Kind)],
            Marks = marks,
            Words = words,
            Ground = (trackBed, whole.outline),
            Track = plan.Spec.Face.Track,
            Range = Range,
            PlaceOf = (s, d) => chart.PointAt(s, d),
            Across = Across,
        };
    }

    // Offsets that the sheets have to hold: what is swept and the sleepers on one side, the back with room for names on the other.
    private (double Least, double Greatest) Across(double s)
    {
        static double Finite(double reach) => double.IsFinite(reach) ? reach : 0;
        double near = Math.Max(HalfSleeper, Finite(away.At(s))) + Before;
        double far = Math.Max(HalfSleeper, Finite(towards.At(s))) + Before;
        far = s < From || s > To ? far : Math.Max(far, farthest.At(s) + Behind);
        return Side > 0 ? (-near, far) : (-far, near);
    }

    private void Line(FullSizeLine kind, IEnumerable<Point2> points) => lines.Add(new(kind, [.. points]));

    private void Area(FullSizeLine kind, IEnumerable<Point2> ring) => lines.Add(new(kind, [.. ring], IsArea: true));

    private IEnumerable<Point2> Along(PlanLine line, double from, double to) =>
        plan.Stations.Where(s => s > from && s < to).Prepend(from).Append(to).Select(s => plan.ToLayout(s, line.At(s)));

    private void Rails()
    {
        double half = dossier.Gauge / 2, start = ride.Locate(chart.PointAt(Range.From), Range.From).Chainage,
            end = ride.Locate(chart.PointAt(Range.To), Range.To).Chainage;
        double[] stations = [.. LineFacets.Steps(ride, start, end)];
        foreach (double side in (double[])[1, -1])
        {
            Line(FullSizeLine.Rail, stations.Select(s => ride.PointAt(s, side * half)));
            Line(FullSizeLine.Rail, stations.Select(s => ride.PointAt(s, side * (half + dossier.RailHead))));
        }

        trackBed = [.. stations.Select(s => ride.PointAt(s, HalfSleeper)), .. stations.Reverse().Select(s => ride.PointAt(s, -HalfSleeper))];
        Line(FullSizeLine.Middle, stations.Select(s => ride.PointAt(s)));
        double pitch = dossier.Scale.ToModel(SleeperPitch), width = dossier.Scale.ToModel(SleeperWidth) / 2;
        foreach (var ring in LineFacets.SleeperEnds(ride, start, end, (pitch, width), (HalfSleeper, (HalfSleeper - half) / 3)))
        {
            Line(FullSizeLine.SleeperEnd, ring);
        }
    }

    private void OtherTracks()
    {
        foreach (var other in dossier.Tracks.Select(t => t.Ride).Where(r => r.Name != plan.Spec.Face.Track))
        {
            double? guess = null;
            double least = -Range.To;
            var near = LineFacets.Steps(other, 0, other.Length).Where(u =>
            {
                var at = other.PointAt(u);
                var place = guess is { } g ? chart.Locate(at, g) : chart.Locate(at);
                guess = place.Chainage;
                var (low, high) = Across(place.Chainage);
                return place.Chainage > Range.From && place.Chainage < Range.To && place.Offset > low - OtherTrackWithin
                    && place.Offset < high + OtherTrackWithin && Math.Abs(place.Offset) > Own;
            }).ToArray();
            for (int i = 0; i + 1 < near.Length; i++)
            {
                if (near[i + 1] - near[i] > LineFacets.Longest + Units.Tolerances.Rounding)
                {
                    continue;
                }

                foreach (double rail in (double[])[dossier.Gauge / 2, -dossier.Gauge / 2])
                {
                    Line(FullSizeLine.OtherRail, [other.PointAt(near[i], rail), other.PointAt(near[i + 1], rail)]);
                }

                if (near[i] > least)
                {
                    var at = other.At(near[i]);
                    words.Add(new(Invariant($"track '{other.Name}'"), at.Position, at.Tangent, default, FigureType.Small));
                    least = near[i] + OtherTrackNamed;
                }
            }
        }
    }

    private void Swept()
    {
        foreach (var line in (ReachLine[])[away, towards])
        {
            var run = new List<Point2>();
            for (int i = 0; i <= line.Count; i++)
            {
                if (i < line.Count && double.IsFinite(line.Reach[i]) && line.ChainageOf(i) >= Range.From && line.ChainageOf(i) <= Range.To)
                {
                    run.Add(chart.PointAt(line.ChainageOf(i), (int)line.Side * line.Reach[i]));
                }
                else if (run.Count > 0)
                {
                    Line(FullSizeLine.Swept, run);
                    run.Clear();
                }
            }
        }
    }

    private void Fittings()
    {
        FittingView.Rings(platform.Sections.Plan).ToList().ForEach(ring => Line(FullSizeLine.Below, ring));
        foreach (var feature in plan.Features)
        {
            // Of a row of holes each has its number, and the first says what they are; a way through at either side makes no new row.
            bool isRow = feature.Marks.OfType<CircleMark>().Skip(2).Any();
            int hole = 0;
            foreach (var mark in feature.Marks)
            {
                switch (mark)
                {
                    case CircleMark circle:
                        Hole(feature, circle, isRow ? ++hole : 0);
                        break;
                    case AreaMark area:
                        Line(FullSizeLine.Fitting, [.. area.Ring, area.Ring[0]]);
                        marks.Add(new(Place(area.Middle), 0));
                        if (area.Inner is var (ring, _))
                        {
                            Line(FullSizeLine.Fitting, [.. ring, ring[0]]);
                        }

                        Named(Invariant($"{area.Label ?? feature.Name}, {area.Along:0.##} x {area.Across:0.##}")
                            + (area.Inner is var (_, within) ? ", " + within : ""), area.Middle);
                        break;
                    case HiddenMark hidden:
                        Line(FullSizeLine.Below, [.. hidden.Ring, hidden.Ring[0]]);
                        break;
                    case LineMark line:
                        Line(FullSizeLine.PostRow, [Place(line.From), Place(line.To)]);
                        break;
                    case LeafMark leaf:
                        Named(leaf.Label ?? leaf.Legend, new((leaf.From.Chainage + leaf.To.Chainage) / 2, (leaf.From.Reach + leaf.To.Reach) / 2));
                        break;
                    default:
                        throw new ArgumentOutOfRangeException(mark.GetType().Name);
                }
            }
        }
    }

    private void Hole(PlannedFeature feature, CircleMark circle, int number)
    {
        marks.Add(new(Place(circle.Middle), circle.Diameter));
        string name = Invariant($"{feature.Name}, Ø {circle.Diameter:0.##}");
        if (number > 0)
        {
            double s = circle.Middle.Chainage;
            words.Add(new(number == 1 ? "1: " + name : Invariant($"{number}"), Place(circle.Middle), chart.At(s).Tangent, Outward(s),
                FigureType.Small)
            { Off = [-4, -5, 4, 5] });
        }
        else
        {
            Named(circle.Label is { } label ? Invariant($"{label}, Ø {circle.Diameter:0.##}") : name, circle.Middle);
        }
    }

    private void Chainages()
    {
        double half = dossier.Gauge / 2;
        for (double k = Math.Ceiling(Range.From / Tick); k * Tick <= Range.To; k++)
        {
            double s = k * Tick;
            bool isLong = Math.Abs(Math.IEEERemainder(s, LongTick)) < SamePlace;
            Line(FullSizeLine.Tick, [chart.PointAt(s), chart.PointAt(s, Side * half * (isLong ? 0.6 : 0.25))]);
            if (isLong)
            {
                words.Add(new(Invariant($"{s:0}"), chart.PointAt(s), chart.At(s).Tangent, chart.At(s).Tangent.Left * -Side,
                    FigureType.Small)
                { Off = [half / 2] });
            }
        }

        for (int i = 1; i < chart.Elements.Count; i++)
        {
            double s = chart.StartOf(i);
            if (s > Range.From && s < Range.To)
            {
                Line(FullSizeLine.ElementJoint, [chart.PointAt(s, half + 2), chart.PointAt(s, -half - 2)]);
                words.Add(new(Invariant($"{PlanParts.Say(chart.Elements[i - 1])} | {PlanParts.Say(chart.Elements[i])}"), chart.PointAt(s), chart.At(s).Tangent,
                    chart.At(s).Tangent.Left * -Side, FigureType.Small)
                { Off = [HalfSleeper - 1, HalfSleeper + 3] });
            }
        }
    }

    // Behind the platform first, then on the deck.
    private void Named(string name, PlanPlace at)
    {
        double s = at.Chainage, toBack = plan.Back.At(s) - at.Reach;
        words.Add(new(name, Place(at), chart.At(s).Tangent, Outward(s), FigureType.Plain)
        {
            Off = [toBack + 4, toBack + 7.5, toBack + 11, -5, -8.5, -12],
            IsLed = true
        });
    }

    private Point2 Place(PlanPlace at) => plan.ToLayout(at.Chainage, at.Reach);

    private Point2 Front(double s) => plan.ToLayout(s, plan.CopingFront.At(s));

    private Point2 Back(double s) => plan.ToLayout(s, plan.Back.At(s));

    private Point2 Outward(double s) => chart.At(s).Tangent.Left * Side;

    private Point2 OnDeck(double s, double share) => Front(s) + ((Back(s) - Front(s)) * share);
}
