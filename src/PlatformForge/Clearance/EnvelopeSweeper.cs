using System.Collections.Concurrent;
using PlatformForge.Clearance.Requests;
using PlatformForge.Clearance.Sweeping;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Units;

namespace PlatformForge.Clearance;

/// <summary>
/// Front door of the room: sweeps vehicles over their tracks, either way round, from well before the first station to well after the
/// last. Error and safety of the answer are told by <see cref="SweptEnvelope"/>.
/// </summary>
public static class EnvelopeSweeper
{
    /// <summary>
    /// The reach of every part at every station of the request. Impossible vehicles, tracks too tight for them, and too little
    /// track beyond the stations are errors.
    /// </summary>
    public static Outcome<SweptEnvelope> Sweep(EnvelopeRequest request)
    {
        if (request.Chart.Kinks.Count > 0)
        {
            throw new BrokenInvariantException($"Clearance: the chart '{request.Chart.Name}' has kinks; plan coordinates need a smooth line.");
        }

        var findings = RequestRule.Findings(request);
        if (findings.Any(f => f.Severity == Severity.Error))
        {
            return Outcome.Fault<SweptEnvelope>(findings);
        }

        var stocks = Stocks(request);
        var forms = stocks.SelectMany(s => s.Forms.Select(f => (s.Run, Form: f))).ToArray();
        double margin = forms.Max(f => SweepBounds.Margin(f.Form));
        double around = request.Beyond > 0 ? request.Beyond + request.Spacing : 0;
        var spans = request.Runs.Select(r => new RunSpan(r, request.Chart, request.From - around, request.To + around, margin)).ToArray();
        findings.AddRange(request.Runs.SelectMany((run, i) => TrackFitRule.Findings(run, spans[i], around, request)));
        if (findings.Any(f => f.Severity == Severity.Error))
        {
            return Outcome.Fault<SweptEnvelope>(findings);
        }

        var bounds = Array.ConvertAll(forms, f => new SweepBounds(spans[f.Run], f.Form, request.Tolerance));
        var (from, spacing, count) = Stations(request, bounds);
        var table = new ChartTable(request.Chart, from, spacing, count, margin);
        var passes = bounds.Select((b, i) => new SweepPass(request.Runs[forms[i].Run].Ride, b, table)).ToArray();
        RunAll(passes, i => bounds[i].Poses * forms[i].Form.Corners.Length);
        findings.AddRange(passes.Zip(forms).Where(p => p.First.Stuck is not null)
            .Select(p => TrackFitRule.Stuck(request.Runs[p.Second.Run], p.Second.Form.Vehicle, p.First.Stuck!.Value)));
        if (findings.Any(f => f.Severity == Severity.Error))
        {
            return Outcome.Fault<SweptEnvelope>(findings.DistinctBy(f => (f.Code, f.Key)));
        }

        var parts = Merge(request, stocks, forms.Zip(passes).ToDictionary(p => p.First.Form, p => p.Second));
        return Outcome.Of(new SweptEnvelope(from, spacing, count, parts, passes.Max(p => p.ErrorBound)), findings);
    }

    // Stations as near to one another as asked, and as the most curved form needs; so many beyond either end as are asked for.
    private static (double From, double Spacing, int Count) Stations(EnvelopeRequest request, SweepBounds[] bounds)
    {
        double spacing = Math.Min(request.Spacing, bounds.Min(b => b.Spacing));
        int count = Math.Max(2, (int)Math.Ceiling((request.To - request.From) / spacing) + 1);
        spacing = (request.To - request.From) / (count - 1);
        int beyond = (int)Math.Ceiling(request.Beyond / spacing);
        return (request.From - (beyond * spacing), spacing, count + (2 * beyond));
    }

    // The one that takes longest begins first, so that no processor waits for it at the end.
    private static void RunAll(SweepPass[] passes, Func<int, double> work)
    {
        var longestFirst = Enumerable.Range(0, passes.Length).OrderByDescending(work).Select(i => passes[i]);
        Parallel.ForEach(Partitioner.Create(longestFirst, EnumerablePartitionerOptions.NoBuffering), pass => pass.Run());
    }

    // What is swept of every vehicle, in order of runs and vehicles.
    private static List<SweptStock> Stocks(EnvelopeRequest request) =>
        [.. request.Runs.SelectMany((run, i) => run.Vehicles.Select(v => new SweptStock(
            i, v, SweptShape.Of(v, request.Play, request.EdgeOf(run)), request.Play, run.StartsAtBuffers || run.EndsAtBuffers)))];

    // All forms and both ways round of a vehicle become one reach per shape.
    private static List<PartReach> Merge(EnvelopeRequest request, List<SweptStock> stocks, Dictionary<SweptForm, SweepPass> passes)
    {
        var parts = new List<PartReach>();
        foreach (var stock in stocks)
        {
            var reach = new (double[] Left, double[] Right)[stock.Shapes.Length];
            foreach (var form in stock.Forms)
            {
                foreach (var (shape, outline) in form.Shows)
                {
                    var (left, right) = (passes[form].Left[outline], passes[form].Right[outline]);
                    reach[shape] = reach[shape].Left is null ? (left, right) : (Greater(reach[shape].Left, left), Greater(reach[shape].Right, right));
                }
            }

            parts.AddRange(stock.Shapes.Select((shape, i) => new PartReach(stock.Run, stock.Vehicle, shape.Part, reach[i].Left, reach[i].Right)
            {
                Track = request.Runs[stock.Run].Ride.Name,
                Above = request.Runs[stock.Run].Above,
                Lowest = shape.Lowest + request.Runs[stock.Run].Above,
                Highest = shape.Highest + request.Runs[stock.Run].Above,
            }));
        }

        return parts;
    }

    private static double[] Greater(double[] a, double[] b)
    {
        var greater = new double[a.Length];
        for (int i = 0; i < greater.Length; i++)
        {
            greater[i] = Math.Max(a[i], b[i]);
        }

        return greater;
    }

    // A vehicle with what is swept of it.
    private sealed record SweptStock(int Run, Vehicle Vehicle, SweptShape[] Shapes, RunningPlay Play, bool Halts)
    {
        public IReadOnlyList<SweptForm> Forms { get; } = [.. SweptForm.WaysRound(Vehicle, Shapes, Play, Halts)];
    }
}
