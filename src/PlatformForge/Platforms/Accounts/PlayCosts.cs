using PlatformForge.Clearance;
using PlatformForge.Clearance.Requests;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Platforms.Requests;

namespace PlatformForge.Platforms.Accounts;

/// <summary>Sweeps again with less play, so that it can be told what each play costs at each chainage.</summary>
internal static class PlayCosts
{
    /// <summary>One step for each play there is, from none at all upwards, under the names of the budget.</summary>
    public static IReadOnlyList<PlayStep> Steps(EnvelopeRequest request)
    {
        var all = request.Play;
        var steps = new List<PlayStep>();
        var sofar = RunningPlay.None with { RollCentreHeight = all.RollCentreHeight };
        foreach (var (name, amount, with) in new (string Name, double Amount, Func<RunningPlay, RunningPlay> With)[]
        {
            ("wheelset play", all.Wheelset, p => p with { Wheelset = all.Wheelset }),
            ("pivot play", all.Pivot, p => p with { Pivot = all.Pivot }),
            ("suspension roll", all.Roll, p => p with { Roll = all.Roll }),
            ("cant", all.Cant, p => p with { Cant = all.Cant }),
        })
        {
            if (amount != 0 && EnvelopeSweeper.Sweep(request with { Play = sofar }).Value is { } without)
            {
                steps.Add(new(name, without));
                sofar = with(sofar);
            }
        }

        return steps;
    }
}
