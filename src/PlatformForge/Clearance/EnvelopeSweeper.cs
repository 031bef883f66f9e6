using System.Collections.Concurrent;
using PlatformForge.Clearance.Sweeping;
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

        var forms = Forms(request);
        double margin = forms.Max(f => SweepBounds.Margin(f.Form));
        var spans = request.Runs.Select(r => new RunSpan(r, request.Chart, request.From, request.To, margin)).ToArray();
        findings.AddRange(request.Runs.SelectMany((run, i) => TrackFitRule.Findings(run, spans[i], request)));
        if (findings.Any(f => f.Severity == Severity.Error))
        {
            return Outcome.Fault<SweptEnvelope>(findings);
        }

        var bounds = forms.Select(f => new SweepBounds(spans[f.Run], f.Form, request.Tolerance)).ToArray();
        double spacing = Math.Min(request.Spacing, bounds.Min(b => b.Spacing));
        int count = Math.Max(2, (int)Math.Ceiling((request.To - request.From) / spacing) + 1);
        spacing = (request.To - request.From) / (count - 1);
        var table = new ChartTable(request.Chart, request.From, spacing, count, margin);
        var passes = bounds.Select((b, i) => new SweepPass(request.Runs[forms[i].Run].Ride, b, table)).ToArray();
        var longestFirst = Enumerable.Range(0, passes.Length).OrderByDescending(i => bounds[i].Poses * forms[i].Form.Corners.Length).Select(i => passes[i]);
        Parallel.ForEach(Partitioner.Create(longestFirst, EnumerablePartitionerOptions.NoBuffering), pass => pass.Run());
        for (int i = 0; i < passes.Length; i++)
        {
            if (passes[i].Stuck is { } chainage)
            {
                findings.Add(TrackFitRule.Stuck(request.Runs[forms[i].Run], forms[i].Form.Vehicle, chainage));
            }
        }

        double error = passes.Max(p => p.ErrorBound);
        return findings.Any(f => f.Severity == Severity.Error)
            ? Outcome.Fault<SweptEnvelope>(findings.DistinctBy(f => (f.Code, f.Key)))
            : Outcome.Of(new SweptEnvelope(request.From, spacing, count, Merge(request, forms, passes), error), findings);
    }

    private static List<(int Run, SweptForm Form)> Forms(EnvelopeRequest request)
    {
        var forms = new List<(int, SweptForm)>();
        for (int i = 0; i < request.Runs.Count; i++)
        {
            var run = request.Runs[i];
            foreach (var vehicle in run.Vehicles)
            {
                forms.AddRange(SweptForm.WaysRound(vehicle, request.Play, run.StartsAtBuffers || run.EndsAtBuffers).Select(form => (i, form)));
            }
        }

        return forms;
    }

    // Both ways round of a vehicle become one reach per part.
    private static List<PartReach> Merge(EnvelopeRequest request, List<(int Run, SweptForm Form)> forms, SweepPass[] passes)
    {
        var parts = new List<PartReach>();
        for (int i = 0; i < passes.Length; i++)
        {
            var (run, form) = forms[i];
            bool again = i + 1 < passes.Length && forms[i + 1].Form.Turned;
            var other = again ? passes[i + 1] : passes[i];
            for (int part = 0; part < form.Vehicle.Parts.Count; part++)
            {
                double[] left = passes[i].Left[part], right = passes[i].Right[part];
                int about = form.About[part];
                if (again || about != part)
                {
                    (left, right) = (Greater(left, other.Left[about]), Greater(right, other.Right[about]));
                }

                parts.Add(new(run, form.Vehicle, form.Vehicle.Parts[part], left, right) { Track = request.Runs[run].Ride.Name });
            }

            i += again ? 1 : 0;
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
}
