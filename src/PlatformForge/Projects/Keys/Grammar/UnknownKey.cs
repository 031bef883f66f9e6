using PlatformForge.Projects.Reading;
using PlatformForge.Units;

namespace PlatformForge.Projects.Keys.Grammar;

/// <summary>What is said of a key that means nothing where it stands.</summary>
internal static class UnknownKey
{
    // Beyond these nobody reads what each was meant to be, and comparing tens of thousands of names takes seconds.
    private const int MostCompared = 1000;

    /// <summary>Tells of it.</summary>
    /// <returns>The key of the table that was most likely meant; null when none was.</returns>
    public static string? Report(TreeEntry entry, string table, IReadOnlyList<KeyRule> known, KeyReading reading)
    {
        string key = table.Length == 0 ? entry.Name : table + "." + entry.Name;
        string where = table.Length == 0 ? "the " + reading.What.Name : table;
        string message = $"{where} has no key \"{Shortened(entry.Name)}\".";
        string? near = reading.Findings.Count < MostCompared ? NearestName.Of(entry.Name, known.Select(k => k.Name)) : null;
        string remedy = near is not null ? $"Did you mean {near}?"
            : known.OfType<TableRule>().FirstOrDefault(t => t.Keys.Any(k => k.Name == entry.Name)) is { } home
            ? $"It belongs under {(table.Length == 0 ? "" : table + ".")}{home.Name}."
            : "Known here: " + string.Join(", ", known.Select(k => k.Name)) + ".";
        reading.Fault("PF1006", key, entry.Place, message, remedy, near is not null ? Cure.Rename(key, near) : Cure.LeaveOut(key));
        return near;
    }

    private static string Shortened(string name) => name.Length > 40 ? name[..40] + "…" : name;
}
