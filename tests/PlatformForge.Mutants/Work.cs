using System.Diagnostics;
using System.Globalization;

namespace PlatformForge.Mutants;

/// <summary>The two parts of a trial: making the mutated library, and running tests against its mutants.</summary>
internal static class Work
{
    private const double Longest = 300; // seconds of processor for one class of tests

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
        trial.Begin(chosen);
        Console.WriteLine($"chosen: {chosen.Count}");
    }

    /// <summary>Finds out which tests come past which mutants, then runs those of each mutant, quickest first, until one fails.</summary>
    public static void Go(Asked asked, Trial trial)
    {
        var clock = Stopwatch.StartNew();
        bool Late() => clock.Elapsed.TotalMinutes > asked.Minutes;
        var parallel = new ParallelOptions { MaxDegreeOfParallelism = asked.Jobs };
        var mutants = trial.Mutants();
        string[] rooms = [.. mutants.Select(m => m.Room).Distinct(StringComparer.Ordinal)];
        var known = trial.Reached();
        var types = ClassRun.Names().Where(t => !known.ContainsKey(t) && !Rooms.IsHouse(t) && (asked.Wide || rooms.Any(r => Rooms.Answers(r, t))));
        Parallel.ForEach(types, parallel, type =>
        {
            if (!Late())
            {
                Note(asked, trial, type);
            }
        });
        var reached = trial.Reached();
        var verdicts = trial.Verdicts();

        // Room by room in turn, so that a run that is stopped has as many of each.
        var inTurn = mutants.GroupBy(m => m.Room, StringComparer.Ordinal).SelectMany(room => room.Select((m, i) => (Mutant: m, Rank: i))).OrderBy(m => m.Rank).Select(m => m.Mutant);
        var open = inTurn.Where(m => !verdicts.TryGetValue(m.Id, out var v) || (asked.Wide && v.Verdict == "survived"));
        Parallel.ForEach(open, parallel, mutant =>
        {
            if (!Late())
            {
                Try(asked, trial, mutant, reached);
            }
        });
        Console.WriteLine($"{trial.Verdicts().Count} of {mutants.Count} mutants have an answer after {clock.Elapsed.TotalMinutes:F1} minutes.");
    }

    private static void Note(Asked asked, Trial trial, string type)
    {
        var (exit, said) = Child.Start(asked.Folder, Child.Noting, [type], Longest);
        bool passed = exit == 0;
        trial.NoteReach(type, passed ? double.Parse(said[1], CultureInfo.InvariantCulture) : double.PositiveInfinity, passed ? said[2] : "");
        if (!passed)
        {
            Console.WriteLine($"left out, fails without a mutant: {type} ({exit}): {string.Join(' ', said)}");
        }
    }

    private static void Try(
        Asked asked, Trial trial, (int Id, string Room, string Key, string Text) mutant, Dictionary<string, (double Seconds, HashSet<int> Passed)> reached)
    {
        var types = reached.Where(r => r.Value.Passed.Contains(mutant.Id) && r.Value.Seconds <= asked.Longest && Rooms.Answers(mutant.Room, r.Key) != asked.Wide)
            .OrderBy(r => r.Value.Seconds).ToList();
        if (types.Count == 0)
        {
            trial.NoteVerdict(mutant.Id, asked.Wide ? "survived everything" : "survived", "no test comes past it");
            return;
        }

        double limit = 10 + (4 * types.Sum(t => t.Value.Seconds));
        var (exit, said) = Child.Start(asked.Folder, mutant.Id, types.Select(t => t.Key), limit);
        string verdict = exit == 0 ? (asked.Wide ? "survived everything" : "survived") : "killed";
        trial.NoteVerdict(mutant.Id, verdict, exit switch { 0 => $"{types.Count} classes", null or Child.TookTooLong => "took too long", Child.TestFailed => said[0], _ => $"ended with {exit}" });
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
