using System.Globalization;

namespace PlatformForge.Mutants;

/// <summary>
/// The files of one trial, which may be stopped and taken up again: mutants.tsv; reach.tsv (test, seconds, mutants that it comes past); intypes.tsv
/// (mutants of what is worked out once a process); results.tsv (mutant, verdict, by what or the tests that it survived).
/// </summary>
internal sealed class Trial(string folder)
{
    private string Listed => Path.Combine(folder, "mutants.tsv");

    private string Reach => Path.Combine(folder, "reach.tsv");

    private string Types => Path.Combine(folder, "intypes.tsv");

    private string Results => Path.Combine(folder, "results.tsv");

    private string Begun => Path.Combine(folder, "begun.txt");

    /// <summary>What the processes said.</summary>
    public string Log => Path.Combine(folder, "log.txt");

    public void Start(IEnumerable<Mutant> mutants)
    {
        foreach (string file in new[] { Reach, Types, Results, Begun, Log })
        {
            File.Delete(file);
        }

        File.WriteAllLines(Listed, mutants.Select(m => string.Join('\t', m.Id, m.Room, m.Key, m.File, m.ToString())));
    }

    /// <summary>Says what is under way, for the account of a process that does not come back.</summary>
    public void Begin(string what) => File.WriteAllText(Begun, what);

    public string TakeBegun()
    {
        string begun = File.Exists(Begun) ? File.ReadAllText(Begun) : "";
        File.Delete(Begun);
        return begun;
    }

    public List<(int Id, string Room, string Key, string File, string Text)> Mutants() => [.. Lines(Listed).Select(c => (Whole(c[0]), c[1], c[2], c[3], c[4]))];

    public Dictionary<string, Reach> Reached()
    {
        var reached = new Dictionary<string, Reach>(StringComparer.Ordinal);
        foreach (string[] c in Lines(Reach))
        {
            reached[c[0]] = new(double.Parse(c[1], CultureInfo.InvariantCulture), [.. c[2].Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(Whole)]);
        }

        return reached;
    }

    public HashSet<int> InTypes() => [.. Lines(Types).Select(c => Whole(c[0]))];

    /// <summary>The last word on each mutant, with all tests that it survived.</summary>
    public Dictionary<int, (string Word, string By, List<string> Tried)> Verdicts()
    {
        var verdicts = new Dictionary<int, (string Word, string By, List<string> Tried)>();
        foreach (string[] c in Lines(Results))
        {
            int id = Whole(c[0]);
            var tried = verdicts.TryGetValue(id, out var before) ? before.Tried : [];
            bool survived = c[1] == "survived";
            verdicts[id] = (c[1], survived ? "" : c[2], survived ? [.. tried, .. c[2].Split(' ', StringSplitOptions.RemoveEmptyEntries)] : tried);
        }

        return verdicts;
    }

    /// <summary>Mutants to try: those without a verdict, room by room in turn so that a run that is stopped has as many of each, then survivors
    /// again.</summary>
    public List<int> Open(Asked asked)
    {
        var verdicts = Verdicts();
        var inTurn = Mutants().Where(m => asked.Rooms.Contains(m.Room, StringComparer.Ordinal)).GroupBy(m => m.Room, StringComparer.Ordinal)
            .SelectMany(room => room.Select((m, i) => (m.Id, Rank: i))).OrderBy(m => m.Rank).Select(m => m.Id).ToList();
        return asked.Again
            ? [.. inTurn.Where(m => verdicts.TryGetValue(m, out var v) && v.Word == "survived")]
            : [.. inTurn.Where(m => !verdicts.ContainsKey(m))];
    }

    public void NoteReach(string test, double seconds, IEnumerable<int> passed, string failed) =>
        Append(Reach, $"{test}\t{seconds.ToString("F3", CultureInfo.InvariantCulture)}\t{string.Join(' ', passed)}\t{OneLine(failed)}");

    /// <summary>Tests that failed with no mutant on are noted again.</summary>
    public void ForgetFailed()
    {
        if (File.Exists(Reach))
        {
            File.WriteAllLines(Reach, File.ReadAllLines(Reach).Where(l => double.IsFinite(double.Parse(l.Split('\t')[1], CultureInfo.InvariantCulture))));
        }
    }

    public void NoteInTypes(IEnumerable<int> mutants)
    {
        foreach (int mutant in mutants)
        {
            Append(Types, mutant.ToString(CultureInfo.InvariantCulture));
        }
    }

    /// <summary>A mutant that is found: killed, or timed out.</summary>
    public void NoteKilled(int mutant, string word, string by) => Append(Results, $"{mutant}\t{word}\t{OneLine(by)}");

    public void NoteSurvivor(int mutant, IEnumerable<string> tried) => Append(Results, $"{mutant}\tsurvived\t{string.Join(' ', tried)}");

    private static void Append(string file, string line) => File.AppendAllText(file, line + "\n");

    private static string OneLine(string text) => text.ReplaceLineEndings(" ").Replace('\t', ' ');

    private static int Whole(string text) => int.Parse(text, CultureInfo.InvariantCulture);

    private static IEnumerable<string[]> Lines(string file) => File.Exists(file) ? File.ReadLines(file).Select(l => l.Split('\t')) : [];
}
