using System.Text.Json;

namespace PlatformForge.Outside.Tests;

/// <summary>What tests need of a JSON line.</summary>
internal static class Written
{
    public static JsonElement Parse(string line)
    {
        using var document = JsonDocument.Parse(line);
        return document.RootElement.Clone();
    }

    public static JsonElement[] Parse(IEnumerable<string> lines) => [.. lines.Select(Parse)];

    public static double Number(this JsonElement element, string name) => element.GetProperty(name).GetDouble();

    public static double[] Numbers(this JsonElement element, string name) => [.. element.GetProperty(name).EnumerateArray().Select(e => e.GetDouble())];

    public static string Text(this JsonElement element, string name) => element.GetProperty(name).GetString()!;
}
