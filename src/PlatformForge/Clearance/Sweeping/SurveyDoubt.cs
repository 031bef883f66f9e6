using PlatformForge.Clearance.Requests;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Track;
using PlatformForge.Track.Surveys.Admissible;

namespace PlatformForge.Clearance.Sweeping;

/// <summary>
/// What a survey leaves uncertain of the reach of every part of every vehicle, at every station: the reach of the part on the line of
/// the survey that brings it farthest,
/// and on the one that keeps it nearest, less its reach on the stated line. In the layout frame: a platform is one stiff body, printed
/// to one line.
/// </summary>
/// <remarks>
/// A pose's places move, to first order, by weighted sums of the line's offsets at the axles. For one pose the greatest such sum is a
/// convex function of the place along the
/// body, so that straight joins between three places are on the safe side; what the line bows between two poses is added.
/// </remarks>
public static class SurveyDoubt
{
    /// <summary>Distance between poses and between stations, mm.</summary>
    public const double Step = 10;

    // Distance between places along a body that are followed, mm.
    private const double Along = 20;

    /// <summary>The doubt of all parts of the vehicles of one run; those that never come near have none.</summary>
    /// <param name="request">What was swept.</param>
    /// <param name="run">Index of the run whose track was surveyed.</param>
    /// <param name="line">What its survey leaves uncertain.</param>
    public static IReadOnlyList<PartDoubt> Of(EnvelopeRequest request, int run, LineDoubt line)
    {
        PartRun[][] parts = [.. request.Runs[run].Vehicles.SelectMany(v => Parts(request, run, v))];
        PartRun[] runs = [.. parts.SelectMany(p => p)];

        // All at once: what bounds one part often bounds another.
        LineMeasure[][] measures = [.. runs.Select(r => r.Measures().ToArray())];
        var ranges = line.Bound([.. measures.SelectMany(m => m)]);
        int first = 0;
        for (int i = 0; i < runs.Length; i++)
        {
            var own = runs[i];
            own.Ranges = ranges.AsMemory(first, measures[i].Length);
            own.Bow = line.Bow(measures[i][^own.Poses.Count..], Step);
            first += measures[i].Length;
        }

        var found = new PartDoubt[parts.Length];
        Parallel.For(0, parts.Length, p =>
        {
            var sheet = new DoubtSheet(request.From, request.To, Step);
            foreach (var own in parts[p])
            {
                own.AddTo(sheet);
            }

            found[p] = sheet.Of(run, parts[p][0].Vehicle, parts[p][0].Part);
        });
        return found;
    }

    // Every part of a vehicle, for each way round that it runs.
    private static IEnumerable<PartRun[]> Parts(EnvelopeRequest request, int run, Vehicle vehicle)
    {
        var ways = DoubtPoses.Of(request, request.Runs[run].Ride, vehicle, Step);
        return vehicle.Parts.Select(part =>
        {
            var outline = new PartOutline(part.Outline, Along, Off(GuidedPoints.Of(vehicle, part.Carrier, request.Play)));
            return ways.Select(poses => new PartRun(request.Chart, vehicle, part, outline, poses)).ToArray();
        });
    }

    /// <summary>The measure of a part, in some pose that reaches a chainage, whose greatest value is largest, signed for reach to a
    /// side; null where the part cannot stand there.</summary>
    /// <param name="request">What was swept.</param>
    /// <param name="run">Index of the run whose track was surveyed.</param>
    /// <param name="vehicle">The vehicle.</param>
    /// <param name="part">Its part.</param>
    /// <param name="side">Side of the chart.</param>
    /// <param name="chainage">Chart chainage, mm.</param>
    /// <param name="line">What the survey leaves uncertain.</param>
    public static LineMeasure? Widest(EnvelopeRequest request, int run, Vehicle vehicle, VehiclePart part, Side side, double chainage, LineDoubt line)
    {
        var outline = new PartOutline(part.Outline, Along, _ => 0);
        var near = new List<LineMeasure>();
        foreach (var pose in DoubtPoses.Of(request with { From = chainage - (Step / 2), To = chainage + (Step / 2) }, request.Runs[run].Ride, vehicle, Step)
            .SelectMany(p => p))
        {
            foreach (double x in outline.Ends)
            {
                var trace = pose.Place(request.Chart, part.Carrier, x, 0, 0, new(0, 1));
                if (Math.Abs(trace.LeftAt - chainage) <= Step)
                {
                    double sign = (side == Side.Left ? 1 : -1) * Math.Sign(trace.Moves.Most + trace.Moves.Least);
                    var measure = pose.Measure(part.Carrier, x);
                    near.Add(new(measure.At, [.. measure.Weights.Select(w => sign * w)]));
                }
            }
        }

        return near.Count == 0 ? null : near.Zip(line.Bound(near)).MaxBy(p => p.Second.Most).First;
    }

    // How far play puts a place off, which decides with the curve what place of a part reaches farthest.
    private static Func<double, double> Off(GuidedPoints points) => x =>
        (Math.Abs(0.5 + (x / points.Apart)) * points.Leading.Most) + (Math.Abs(0.5 - (x / points.Apart)) * points.Trailing.Most);
}

/// <summary>What a survey leaves uncertain of the reach of one part, at even stations.</summary>
/// <param name="Run">Index of the run.</param>
/// <param name="Vehicle">The vehicle.</param>
/// <param name="Part">Its part.</param>
/// <param name="From">Chart chainage of the first station, mm.</param>
/// <param name="Spacing">Distance between stations, mm.</param>
/// <param name="Left">By how much it may reach farther to the left than on the stated line, mm, and by how much less far (nil or below).</param>
/// <param name="Right">The same to the right.</param>
public sealed record PartDoubt(int Run, Vehicle Vehicle, VehiclePart Part, double From, double Spacing, IReadOnlyList<LineRange> Left,
    IReadOnlyList<LineRange> Right)
{
    /// <summary>Whether a part, or a piece of one between two levels, is the one that is told of.</summary>
    public bool IsOf(VehiclePart part) => part.Name == Part.Name && ReferenceEquals(part.Outline, Part.Outline);

    /// <summary>The ranges on a side.</summary>
    public IReadOnlyList<LineRange> On(Side side) => side == Side.Left ? Left : Right;

    /// <summary>The range at a chainage on the straight join of stations; beyond the ends, that of the end.</summary>
    public LineRange At(Side side, double chainage)
    {
        var own = On(side);
        double place = Math.Clamp((chainage - From) / Spacing, 0, own.Count - 1);
        int i = Math.Min((int)place, own.Count - 2);
        double share = place - i;
        return new(own[i].Least + (share * (own[i + 1].Least - own[i].Least)), own[i].Most + (share * (own[i + 1].Most - own[i].Most)));
    }
}
