using PlatformForge.Projects.Keys;
using PlatformForge.Projects.Keys.Grammar;
using PlatformForge.Projects.Reading;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Projects;

/// <summary>Whether what a project refers to by name is there, and every name is given once.</summary>
internal static class References
{
    public static void Check(ProjectDraft draft, SourceMap places, KeyReading reading)
    {
        string[] tracks = [.. draft.Tracks.Select(t => t.Name)], vehicles = [.. draft.Vehicles.Select(v => v.Name)];
        Once("track", tracks, places, reading);
        Once("vehicle", vehicles, places, reading);
        Once("platform", [.. draft.Platforms.Select(p => p.Name)], places, reading);
        for (int i = 0; i < draft.Platforms.Count; i++)
        {
            var platform = draft.Platforms[i];
            foreach (var face in platform.Faces)
            {
                Known("track", face.Track, tracks, Invariant($"platform[{i}].{face.Key}.track"), places, reading);
            }

            string[] faces = [.. platform.Faces.Select(f => f.Track)];
            foreach (var kind in platform.Features.GroupBy(f => f.Word))
            {
                foreach (var (feature, k) in kind.Select((f, k) => (f, k)).Where(p => p.f.Face is not null))
                {
                    string key = feature.IsSingle ? kind.Key : Invariant($"{kind.Key}[{k}]");
                    Known("face on track", feature.Face!, faces, Invariant($"platform[{i}].{key}.face"), places, reading);
                }
            }
        }

        for (int i = 0; i < (draft.Gauges?.Vehicles?.Count ?? 0); i++)
        {
            Known("vehicle", draft.Gauges!.Vehicles![i], [.. vehicles, .. draft.Vehicles.SelectMany(v => v.ToVehicles()).Select(v => v.Name)],
                Invariant($"gauges.throw_boards[{i}]"), places, reading);
        }

        for (int i = 0; i < draft.Tracks.Count; i++)
        {
            for (int k = 0; k < (draft.Tracks[i].Vehicles?.Count ?? 0); k++)
            {
                Known("vehicle", draft.Tracks[i].Vehicles![k], vehicles, Invariant($"track[{i}].vehicles[{k}]"), places, reading);
            }
        }
    }

    /// <summary>The project with tracks' vehicles by their names: one that goes by its preset's title may be meant by the preset's name too.</summary>
    public static ProjectDraft Spoken(ProjectDraft draft)
    {
        string Name(string asked) => draft.Vehicles.Any(v => v.Name == asked)
            || draft.Vehicles.Where(v => string.Equals(v.Preset, asked, StringComparison.OrdinalIgnoreCase)).ToArray() is not [var only]
            ? asked
            : only.Name;
        return draft with { Tracks = [.. draft.Tracks.Select(t => t.Vehicles is { } names ? t with { Vehicles = [.. names.Select(Name)] } : t)] };
    }

    private static void Once(string what, string[] names, SourceMap places, KeyReading reading)
    {
        for (int i = 1; i < names.Length; i++)
        {
            if (Array.FindIndex(names, n => string.Equals(n, names[i], StringComparison.OrdinalIgnoreCase)) < i)
            {
                string key = Invariant($"{what}[{i}].name");
                reading.Fault("PF1015", key, places.Find(key), $"There is another {what} of the name \"{names[i]}\".", $"Give each {what} a name of its own.",
                    Cure.Text(key, Free(names, names[i])));
            }
        }
    }

    // The name with the first number that no other has.
    private static string Free(string[] names, string name) =>
        Enumerable.Range(2, names.Length).Select(n => Invariant($"{name} {n}")).First(n => !names.Contains(n, StringComparer.OrdinalIgnoreCase));

    private static void Known(string what, string name, string[] names, string key, SourceMap places, KeyReading reading)
    {
        if (!names.Contains(name, StringComparer.Ordinal))
        {
            string? near = NearestName.Of(name, names);
            reading.Fault("PF1016", key, places.Find(key), $"There is no {what} \"{name}\".",
                near is null ? $"Known: {string.Join(", ", names.Distinct(StringComparer.Ordinal).Select(n => $"\"{n}\""))}." : $"Did you mean \"{near}\"?",
                names.Length > 0 ? Cure.Text(key, near ?? names[0]) : null);
        }
    }
}
