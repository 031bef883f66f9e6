using System.Text.Json;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Exports.Manifests;

/// <summary>Manifests to and from their file.</summary>
public static class ManifestForm
{
    public static byte[] ToBytes(Manifest manifest) => JsonForms.ToBytes(manifest);

    /// <summary>Reads a manifest; PF7401 when it is none of ours, of another form, or names files outside its folder.</summary>
    public static Outcome<Manifest> Read(ReadOnlySpan<byte> bytes, string name)
    {
        Manifest? manifest;
        try
        {
            manifest = JsonSerializer.Deserialize<Manifest>(bytes, JsonForms.Options);
        }
        catch (JsonException fault)
        {
            return Fault(name, Invariant($"breaks at {fault.Path ?? "its start"}, line {(fault.LineNumber ?? 0) + 1}"));
        }

        if (manifest is null || manifest.Tool != Manifest.OurTool || manifest.Format != Manifest.OurFormat)
        {
            return Fault(name, Invariant($"is not of {Manifest.OurTool}, format {Manifest.OurFormat}"));
        }

        var paths = manifest.Files.Select(f => f.Path).ToHashSet(StringComparer.Ordinal);
        var named = manifest.Sections.SelectMany(s => new[] { s.Stl, s.Plate });
        if (paths.FirstOrDefault(p => !IsInside(p)) is { } outside)
        {
            return Fault(name, Invariant($"names '{outside}', which is no path below its folder"));
        }

        return named.FirstOrDefault(f => !paths.Contains(f)) is { } missing
            ? Fault(name, Invariant($"has a section in '{missing}', which is not among its files"))
            : Outcome.Of(manifest);
    }

    /// <summary>Whether a path leads below the folder it is given for, by plain steps only.</summary>
    public static bool IsInside(string path) =>
        path.Length is > 0 and < 1000 && !path.Contains('\\', StringComparison.Ordinal) && !path.Contains(':', StringComparison.Ordinal)
        && !path.Contains('\0', StringComparison.Ordinal) && path.Split('/').All(step => step.Length > 0 && step is not ("." or ".."));

    private static Outcome<Manifest> Fault(string name, string what) =>
        Outcome.Fault<Manifest>(Finding.Error("PF7401", "", Invariant($"The manifest '{name}' {what}."), "Build the project again into an empty folder.", FaultKind.Mesh));
}
