namespace PlatformForge.Mutants;

/// <summary>What came of a trial: a table, and the survivors with what is said for each in survivors.md.</summary>
internal static class Account
{
    public static int Print(Asked asked, Trial trial)
    {
        var verdicts = trial.Verdicts();
        string argued = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "survivors.md"));
        bool IsArgued(string key) => argued.Contains(key, StringComparison.Ordinal);
        bool enough = true;
        var left = new List<string>();
        Console.WriteLine("| room | mutants | killed | timed out | survived | argued | found of those not argued |");
        Console.WriteLine("|---|---|---|---|---|---|---|");
        foreach (var room in trial.Mutants().GroupBy(m => m.Room, StringComparer.Ordinal))
        {
            var answered = room.Where(m => verdicts.ContainsKey(m.Id)).ToList();
            int Count(string word) => answered.Count(m => verdicts[m.Id].Word == word);
            var survived = answered.Where(m => verdicts[m.Id].Word == "survived").ToList();
            int arguedHere = survived.Count(m => IsArgued(m.Key));
            double share = 100.0 * (answered.Count - survived.Count) / Math.Max(1, answered.Count - arguedHere);
            enough &= answered.Count == room.Count() && share >= asked.Least;
            string mutants = answered.Count == room.Count() ? $"{answered.Count}" : $"{answered.Count} of {room.Count()}";
            Console.WriteLine($"| {room.Key} | {mutants} | {Count("killed")} | {Count("timed out")} | {survived.Count - arguedHere} | {arguedHere} "
                + $"| {share:F1} % |");
            left.AddRange(survived.OrderBy(m => m.Text[11..], StringComparer.Ordinal)
                .Select(m => $"{(IsArgued(m.Key) ? "argued   " : "survived ")}{m.Text}   [{verdicts[m.Id].Tried.Count} tests]"));
        }

        Console.WriteLine();
        left.ForEach(Console.WriteLine);
        return enough ? 0 : 1;
    }
}
