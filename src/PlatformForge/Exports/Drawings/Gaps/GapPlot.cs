using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Files;
using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Exports.Drawings.Gaps;

/// <summary>The lower part of the gap plot: a band a vehicle from its nearest to its farthest door.</summary>
internal sealed class GapPlot(PlatformDossier platform, PlotFrame frame, EdgeStyle edge)
{
    private readonly IReadOnlyList<GapTrace> traces = OfStyle(platform.Plan, edge);
    private readonly VehicleLooks looks = new(platform);

    /// <summary>Gaps that a style of edge would leave: the chosen one's and the difference of the edges.</summary>
    public static IReadOnlyList<GapTrace> OfStyle(PlatformPlan plan, EdgeStyle style) => style == plan.Spec.Face.Edge ? plan.Gaps.Traces
        : [.. plan.Gaps.Traces.Select(t =>
    {
        double[] moved = [.. t.Stations.Select(s => plan.Alternatives[(int)style].At(s) - plan.CopingFront.At(s))];
        return t with { Nearest = [.. t.Nearest.Zip(moved, (gap, by) => gap + by)], Farthest = [.. t.Farthest.Zip(moved, (gap, by) => gap + by)] };
    })];

    /// <summary>Where the upright axis has to begin for traces to be shown whole, mm: nil, or below it where bodies stand over the edge.</summary>
    public static double LeastOf(IEnumerable<GapTrace> traces) =>
        Math.Min(0, Math.Floor(traces.SelectMany(t => t.Nearest).Where(double.IsFinite).DefaultIfEmpty(0).Min() * Room));

    /// <summary>Share of the outermost value at which an axis ends.</summary>
    public const double Room = 1.15;

    public void DrawOn(Sheet sheet, ModelScale scale)
    {
        frame.Grid(sheet);
        if (frame.LeastY < 0)
        {
            sheet.Line(frame.Of(frame.LeastX, 0), frame.Of(frame.MostX, 0), HouseStyle.Outline);
        }

        var labels = new GapLabels(frame);
        foreach (var trace in traces)
        {
            int vehicle = Math.Max(0, platform.Plan.Requirement.IndexOf(trace.Vehicle));
            var (colour, _) = looks[vehicle];
            var runs = Runs(trace).ToArray();
            foreach (var (from, to) in runs)
            {
                var low = Places(trace, trace.Nearest, from, to);
                var high = Places(trace, trace.Farthest, from, to);
                sheet.Area(low.Concat(high.Reverse()), new(colour, 0.13));
                sheet.Lines(low, new(0.55, colour));
                sheet.Lines(high, new(0.35, colour, 2.4, 1));
                Marks(sheet, low, vehicle);
                Marks(sheet, high, vehicle);
            }

            labels.Add(trace.Vehicle, false, colour, runs.Select(r => Places(trace, trace.Nearest, r.From, r.To)));
            labels.Add(trace.Vehicle, true, colour, runs.Select(r => Places(trace, trace.Farthest, r.From, r.To)));
        }

        double limit = scale.ToModel(SteppingLimit.Horizontal);
        sheet.Line(frame.Of(frame.LeastX, limit), frame.Of(frame.MostX, limit), new(0.4, HouseStyle.Accent, 5, 1.5));
        labels.NameLevel(sheet, Invariant($"stepping limit {SteppingLimit.Horizontal} mm full size = {Figures.Fine(limit)} mm"), HouseStyle.AccentLabel,
            frame.Y(limit));
        labels.DrawOn(sheet);
        if (traces.Count == 0)
        {
            sheet.Text("No vehicle has a door sill: no gap to show.", new((frame.Left + frame.Right) / 2, frame.Bottom - (frame.Height / 4)), HouseStyle.Label,
                TextAnchor.Middle);
        }

        frame.Axes(sheet, scale.Ratio, "gap to the door sill");
    }

    /// <summary>Marks on a line, a shape a vehicle, so that lines can be told apart without colour.</summary>
    private void Marks(Sheet sheet, Point2[] line, int vehicle)
    {
        const double Apart = 24, Size = 1.0;
        double next = line.Length > 0 ? line[0].X + (Apart * (0.4 + (0.13 * vehicle))) : 0;
        foreach (var at in line)
        {
            if (at.X >= next)
            {
                VehicleMark.Draw(sheet, at, Size, vehicle, looks[vehicle].Colour);
                next += Apart;
            }
        }
    }

    /// <summary>Stretches of stations where a door comes.</summary>
    private static IEnumerable<(int From, int To)> Runs(GapTrace trace)
    {
        int from = -1;
        for (int i = 0; i <= trace.Stations.Length; i++)
        {
            bool there = i < trace.Stations.Length && double.IsFinite(trace.Nearest[i]) && double.IsFinite(trace.Farthest[i]);
            if (there && from < 0)
            {
                from = i;
            }
            else if (!there && from >= 0)
            {
                yield return (from, i - 1);
                from = -1;
            }
        }
    }

    private Point2[] Places(GapTrace trace, double[] values, int from, int to) =>
        [.. Enumerable.Range(from, to - from + 1).Select(i => frame.Of(trace.Stations[i], values[i]))];
}
