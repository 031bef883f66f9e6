using System.Diagnostics;
using System.Globalization;

namespace PlatformForge.Mutants;

/// <summary>The parts of a trial: making the mutated library, and running tests against its mutants.</summary>
internal static class Work
{
    /// <summary>Compiles the chosen mutants into a copy of the library that stands among copies of the tests.</summary>
    public static void Prepare(Asked asked, Trial trial)
    {
        string here = AppContext.BaseDirectory;
        Directory.CreateDirectory(asked.Folder);
        foreach (string file in Directory.EnumerateFiles(here))
        {
            File.Copy(file, Path.Combine(asked.Folder, Path.GetFileName(file)), overwrite: true);
        }

        string library = Library(here);
        var plain = MutatedLibrary.Plain(library);
        List<List<Mutant>> rooms = [.. asked.Rooms.Select(room => SourceSites.Of(room, plain, library, asked.Seed))];
        foreach (var (room, all) in asked.Rooms.Zip(rooms))
        {
            Console.WriteLine($"{room}: {all.Count} mutants");
        }

        if (asked.Keys.Length > 0)
        {
            rooms = [.. rooms.Select(r => r.Where(m => asked.Keys.Contains(m.Key, StringComparer.Ordinal)).ToList())];
        }

        var chosen = MutatedLibrary.Write(plain, rooms, asked.Count, Path.Combine(asked.Folder, "PlatformForge.dll"));
        trial.Start(chosen);
        Console.WriteLine($"chosen: {chosen.Count}");
    }

    /// <summary>Copies tests that have been built again beside the mutated library: only those with new names are noted, and those that failed.</summary>
    public static void Renew(Asked asked, Trial trial)
    {
        trial.ForgetFailed();
        foreach (string file in Directory.EnumerateFiles(AppContext.BaseDirectory, "PlatformForge.*").Where(f =>
            Path.GetFileNameWithoutExtension(f) != "PlatformForge"))
        {
            File.Copy(file, Path.Combine(asked.Folder, Path.GetFileName(file)), overwrite: true);
        }
    }

    /// <summary>Finds out which tests come past which mutants, then tries the mutants.</summary>
    public static void Go(Asked asked, Trial trial)
    {
        var clock = Stopwatch.StartNew();
        double Left() => asked.Minutes - clock.Elapsed.TotalMinutes;
        foreach (string command in new[] { "note", "try" })
        {
            int exit = -1;
            while (exit != Child.Ready && Left() > 0)
            {
                exit = Child.Start(asked.Folder, asked.ForChild(command, Left()), trial.Log);
                string begun = trial.TakeBegun();
                if (exit is not (Child.Ready or Child.Again) && begun.Length > 0)
                {
                    NoteLost(command, begun, exit, trial);
                }
                else if (exit is not (Child.Ready or Child.Again))
                {
                    throw new InvalidOperationException($"The tests did not begin (exit {exit}); see {trial.Log}.");
                }
            }
        }

        var mutants = trial.Mutants();
        var verdicts = trial.Verdicts();
        Console.WriteLine($"{verdicts.Count} of {mutants.Count} mutants have an answer, {verdicts.Values.Count(v => v.Word == "survived")} of them "
            + $"survive; {clock.Elapsed.TotalMinutes:F1} minutes.");
    }

    // A process that did not come back: an endless loop, an overflow of the stack, no memory left.
    private static void NoteLost(string command, string begun, int exit, Trial trial)
    {
        if (command == "note")
        {
            trial.NoteReach(begun, double.PositiveInfinity, [], $"ended with {exit}");
            return;
        }

        string[] parts = begun.Split('\t');
        trial.NoteKilled(int.Parse(parts[0], CultureInfo.InvariantCulture), exit == Child.TookTooLong ? "timed out" : "killed",
            $"{parts[1]}: ended with {exit}");
    }

    private static string Library(string here)
    {
        for (var folder = new DirectoryInfo(here); folder is not null; folder = folder.Parent)
        {
            string library = Path.Combine(folder.FullName, "src", "PlatformForge");
            if (Directory.Exists(library))
            {
                return library;
            }
        }

        throw new DirectoryNotFoundException("The library's source is not above this program.");
    }
}
