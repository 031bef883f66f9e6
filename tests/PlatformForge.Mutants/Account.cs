namespace PlatformForge.Mutants;

/// <summary>What came of a trial, and the survivors with what is said for each in survivors.md.</summary>
internal static class Account
{
    public static int Print(Asked asked, Trial trial)
    {
        var verdicts = trial.Verdicts();
        var mutants = trial.Mutants();
        string argued = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "survivors.md"));
        bool enough = true;
        foreach (var room in mutants.GroupBy(m => m.Room, StringComparer.Ordinal))
        {
            var answered = room.Where(m => verdicts.ContainsKey(m.Id)).ToList();
            var left = answered.Where(m => verdicts[m.Id].Verdict != "killed").ToList();
            double share = answered.Count == 0 ? 0 : 100.0 * (answered.Count - left.Count) / answered.Count;
            enough &= answered.Count == room.Count() && share >= asked.Least;
            Console.WriteLine($"{room.Key}: {answered.Count} of {room.Count()} tried, {answered.Count - left.Count} killed, {share:F1} %");
            foreach (var mutant in left)
            {
                Console.WriteLine($"  {(argued.Contains(mutant.Key, StringComparison.Ordinal) ? "argued " : "")}{mutant.Text}   [{verdicts[mutant.Id].By}]");
            }
        }

        return enough ? 0 : 1;
    }
}
