namespace PlatformForge.Mutants;

/// <summary>
/// Which tests a mutant is tried on and in what order: those that have killed its neighbours in the file, then those that come past little else and
/// take little: a test of one thing tells more of it than a whole run does.
/// </summary>
internal sealed class TestOrder
{
    private const int Favourites = 4;

    // What starting a test costs beside the test itself, seconds.
    private const double Start = 0.02;

    private readonly Asked asked;
    private readonly Dictionary<string, Reach> reached;
    private readonly Dictionary<int, HashSet<string>> tried;
    private readonly Dictionary<int, string> files;
    private readonly Dictionary<string, Dictionary<string, int>> kills = new(StringComparer.Ordinal);

    public TestOrder(Asked asked, Trial trial)
    {
        this.asked = asked;
        reached = trial.Reached();
        files = trial.Mutants().ToDictionary(m => m.Id, m => m.File);
        var verdicts = trial.Verdicts();
        tried = verdicts.ToDictionary(v => v.Key, v => v.Value.Tried.ToHashSet(StringComparer.Ordinal));
        foreach (var (mutant, verdict) in verdicts.Where(v => v.Value.Word == "killed"))
        {
            Killed(mutant, verdict.By.Split(':')[0]);
        }
    }

    public void Killed(int mutant, string test)
    {
        if (files.TryGetValue(mutant, out string? file) && reached.ContainsKey(test))
        {
            var counts = kills.TryGetValue(file, out var known) ? known : kills[file] = new(StringComparer.Ordinal);
            counts[test] = counts.GetValueOrDefault(test) + 1;
        }
    }

    /// <summary>
    /// Tests not yet tried, as many as take the seconds that a mutant is given. What is worked out once a process is passed by whoever asks first, so
    /// all that come past its file count.
    /// </summary>
    public List<(string Test, double Seconds)> For(int mutant, bool inType)
    {
        var neighbours = inType ? files.Where(f => f.Value == files[mutant]).Select(f => f.Key).ToHashSet() : [mutant];
        var counts = kills.GetValueOrDefault(files[mutant]) ?? [];
        var before = tried.GetValueOrDefault(mutant) ?? [];
        double spent = before.Sum(t => reached.TryGetValue(t, out var r) ? r.Seconds : 0);
        var open = reached.Where(r => asked.Concerns(r.Key) && r.Value.Passed.Overlaps(neighbours) && r.Value.Seconds <= asked.Most && !before.Contains(r.Key))
            .ToList();
        var first = open.Where(r => counts.ContainsKey(r.Key)).OrderByDescending(r => counts[r.Key] / (Start + r.Value.Seconds)).Take(Favourites).ToList();
        var chosen = new List<(string, double)>();
        foreach (var (test, reach) in first.Concat(open.Except(first).OrderBy(r => (Start + r.Value.Seconds) * r.Value.Passed.Count)))
        {
            if (spent + reach.Seconds <= asked.Most)
            {
                spent += reach.Seconds;
                chosen.Add((test, reach.Seconds));
            }
        }

        return chosen;
    }
}

/// <summary>What one test costs and comes past.</summary>
internal sealed record Reach(double Seconds, HashSet<int> Passed);
