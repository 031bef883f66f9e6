using System.Globalization;

namespace PlatformForge.Mutants;

/// <summary>
/// The files of one trial, which may be stopped and taken up again: mutants.tsv, reach.tsv (class of tests, seconds, mutants that it comes
/// past) and results.tsv (mutant, killed or survived, by what).
/// </summary>
internal sealed class Trial(string folder)
{
    private readonly Lock gate = new();

    private string Listed => Path.Combine(folder, "mutants.tsv");

    private string Reach => Path.Combine(folder, "reach.tsv");

    private string Results => Path.Combine(folder, "results.tsv");

    public void Begin(IEnumerable<Mutant> mutants)
    {
        File.WriteAllLines(Listed, mutants.Select(m => string.Join('\t', m.Id, m.Room, m.Key, m.ToString())));
        File.Delete(Reach);
        File.Delete(Results);
    }

    public List<(int Id, string Room, string Key, string Text)> Mutants() =>
        [.. Lines(Listed).Select(c => (int.Parse(c[0], CultureInfo.InvariantCulture), c[1], c[2], c[3]))];

    public Dictionary<string, (double Seconds, HashSet<int> Passed)> Reached() => Lines(Reach).ToDictionary(
        c => c[0],
        c => (double.Parse(c[1], CultureInfo.InvariantCulture), c[2].Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(i => int.Parse(i, CultureInfo.InvariantCulture)).ToHashSet()),
        StringComparer.Ordinal);

    /// <summary>The last word on each mutant.</summary>
    public Dictionary<int, (string Verdict, string By)> Verdicts()
    {
        var verdicts = new Dictionary<int, (string, string)>();
        foreach (string[] cells in Lines(Results))
        {
            verdicts[int.Parse(cells[0], CultureInfo.InvariantCulture)] = (cells[1], cells[2]);
        }

        return verdicts;
    }

    public void NoteReach(string type, double seconds, string reached) => Append(Reach, $"{type}\t{seconds.ToString("F2", CultureInfo.InvariantCulture)}\t{reached}");

    public void NoteVerdict(int id, string verdict, string by) => Append(Results, $"{id}\t{verdict}\t{by.ReplaceLineEndings(" ").Replace('\t', ' ')}");

    private void Append(string file, string line)
    {
        lock (gate)
        {
            File.AppendAllText(file, line + "\n");
        }
    }

    private static IEnumerable<string[]> Lines(string file) => File.Exists(file) ? File.ReadLines(file).Select(l => l.Split('\t')) : [];
}
