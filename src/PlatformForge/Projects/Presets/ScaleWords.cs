namespace PlatformForge.Projects.Presets;

/// <summary>What is said where a scale is called by a name that several have.</summary>
public static class ScaleWords
{
    public static string Ambiguous(string name, IReadOnlyList<Preset> meant) =>
        $"\"{name}\" may mean {meant.Count} scales: {string.Join("; ", meant.Select(p => $"{p.Name} ({p.Title})"))}.";

    public static string Choose(IReadOnlyList<Preset> meant) => $"Say which: {string.Join(" or ", meant.Select(p => $"\"{p.Name}\""))}.";
}
