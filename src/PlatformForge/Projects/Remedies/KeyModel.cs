using PlatformForge.Projects.Keys;
using PlatformForge.Projects.Keys.Grammar;
using PlatformForge.Projects.Overrides;
using PlatformForge.Projects.Schemas;

namespace PlatformForge.Projects.Remedies;

/// <summary>What the key model knows of a key as findings name it.</summary>
internal static class KeyModel
{
    /// <summary>The rule of a key such as <c>platform[0].deck.width</c>; null when there is no such key.</summary>
    public static KeyRule? RuleOf(string key)
    {
        KeyRule? rule = ProjectKeys.Root;
        foreach (string name in KeyPath.Split(key) ?? [])
        {
            rule = rule switch
            {
                TableRule table => table.Keys.FirstOrDefault(k => k.Name == name),
                ListRule list when IsIndex(name) => list.Item,
                ListRule { Item: TableRule item } => item.Keys.FirstOrDefault(k => k.Name == name),
                EitherRule { Second: ListRule list } when IsIndex(name) => list.Item,
                _ => null,
            };
        }

        return rule;
    }

    /// <summary>The value that the starting file shows for a key; null when there is none.</summary>
    public static string? ExampleOf(string key) =>
        RuleOf(key)?.Example ?? StartingFile.Example(string.Join('.', (KeyPath.Split(key) ?? []).Where(n => !IsIndex(n))));

    private static bool IsIndex(string name) => name.All(char.IsAsciiDigit);
}
