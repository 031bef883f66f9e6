using PlatformForge.Clearance;
using PlatformForge.Platforms.Edges;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Requests;

namespace PlatformForge.Platforms.Accounts;

/// <summary>Takes a requirement to pieces.</summary>
internal static class AllowanceCosts
{
    public static AllowanceTrace Of(PlatformRequest request, HeightProfile profile, RequirementTrace trace)
    {
        double[][] swept = [.. request.LessPlay.Select(step => OnStations(
            CopingRequirement.Trace(request with { Envelope = step.Without }, profile),
            trace.Stations)), trace.Swept];

        // With less lean a body may pass over that does not with more, and nothing else be there: then its whole reach is no cost of anything.
        for (int k = swept.Length - 2; k >= 0; k--)
        {
            swept[k] = [.. swept[k].Zip(swept[k + 1], (less, more) => double.IsFinite(less) ? less : more)];
        }

        var costs = request.LessPlay.Select((step, k) => new AllowanceCost(
            step.Allowance,
            [.. swept[k + 1].Zip(swept[k], (with, without) => with - without)])).ToList();
        int count = trace.Stations.Length;
        costs.AddRange(Shares(request.Budget).Where(s => s.Amount != 0).Select(s => new AllowanceCost(s.Name, [.. Enumerable.Repeat(s.Amount, count)])));
        double[] around = [.. Enumerable.Range(0, count).Select(i => trace.Required(i) - (trace.Swept[i] + trace.Budget))];
        if (around.Any(a => a > Told))
        {
            costs.Add(new(AllowanceCost.EveryDirection, around));
        }

        return new(swept[0], costs);
    }

    // A sweep with less play may need other stations.
    private static double[] OnStations(RequirementTrace less, double[] stations)
    {
        var line = new PlanLine(less.Stations, less.Swept);
        return [.. stations.Select(line.At)];
    }

    /// <summary>
    /// What each entry adds to the reach, mm. Under the root of squares a tolerance takes its square's share of the root, so that the shares add up to it.
    /// </summary>
    public static IEnumerable<(string Name, double Amount)> Shares(ClearanceBudget budget)
    {
        double squares = budget.Lines.Where(l => l.Placing == BudgetPlacing.Added).Sum(l => l.AmountMm * l.AmountMm);
        foreach (var line in budget.Lines.Where(l => l.Placing != BudgetPlacing.Swept))
        {
            bool whole = line.Placing == BudgetPlacing.Wanted || budget.Rule == BudgetRule.Sum || squares <= 0;
            yield return (line.Name, whole ? line.AmountMm : line.AmountMm * line.AmountMm / Math.Sqrt(squares));
        }
    }

    // Less than this everywhere, mm, is not worth a line.
    private const double Told = 0.002;
}
