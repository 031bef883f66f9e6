using System.Diagnostics;

namespace PlatformForge.Mutants;

/// <summary>Switches mutants on one after another, and runs the tests that come past each, until one fails.</summary>
internal static class Trying
{
    public static int Run(Asked asked, Trial trial)
    {
        var clock = Stopwatch.StartNew();
        var order = new TestOrder(asked, trial);
        var inTypes = trial.InTypes();
        bool fresh = true;
        TestRun? run = null;
        foreach (int mutant in trial.Open(asked).OrderBy(inTypes.Contains))
        {
            if (clock.Elapsed.TotalMinutes > asked.Minutes)
            {
                break;
            }

            var tests = order.For(mutant, inTypes.Contains(mutant));
            if (tests.Count == 0)
            {
                trial.NoteSurvivor(mutant, []);
                continue;
            }

            if (inTypes.Contains(mutant) && !fresh)
            {
                return Child.Again;
            }

            Switch.Active = mutant; // before anything of the library is touched, for what is worked out once a process
            run ??= new TestRun();
            if (!Settled(trial, run, order, mutant, tests, fresh))
            {
                return Child.Again;
            }

            if (inTypes.Contains(mutant))
            {
                return Child.Again;
            }

            fresh = false;
        }

        run?.Dispose();
        return Child.Ready;
    }

    // Whether there is a verdict. There is none when a test fails that would also fail without the mutant, after what others have left in this process.
    private static bool Settled(Trial trial, TestRun run, TestOrder order, int mutant, List<(string Test, double Seconds)> tests, bool fresh)
    {
        foreach (var (test, seconds) in tests)
        {
            trial.Begin($"{mutant}\t{test}");
            double given = 5 + (5 * seconds);
            var (failed, _) = Child.Within(given, () => run.Run(test, mutant));
            if (failed is null)
            {
                continue;
            }

            if (!fresh && Child.Within(given, () => run.Run(test, Switch.Off)).Failed is not null)
            {
                return false;
            }

            trial.NoteKilled(mutant, "killed", $"{test}: {failed}");
            order.Killed(mutant, test);
            return true;
        }

        trial.NoteSurvivor(mutant, tests.Select(t => t.Test));
        return true;
    }
}
