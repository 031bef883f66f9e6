using System.Diagnostics;

namespace PlatformForge.Mutants;

/// <summary>Which tests come past which mutants, and what each costs: every test once, with none on.</summary>
internal static class Noting
{
    public static int Run(Asked asked, Trial trial)
    {
        var clock = Stopwatch.StartNew();
        var known = trial.Reached();
        Switch.Note();
        using var run = new TestRun();
        foreach (string test in run.All().Where(t => !known.ContainsKey(t) && !Rooms.IsHouse(t) && asked.Concerns(t)).Order(StringComparer.Ordinal))
        {
            if (clock.Elapsed.TotalMinutes > asked.Minutes)
            {
                break;
            }

            trial.Begin(test);
            Switch.Note();
            var (failed, seconds) = Child.Within(asked.Longest, () => run.Run(test, Switch.Off));
            trial.NoteReach(test, failed is null ? seconds : double.PositiveInfinity, failed is null ? Switch.Passed() : [], failed ?? "");
        }

        trial.NoteInTypes(Switch.InTypes());
        return Child.Ready;
    }
}
