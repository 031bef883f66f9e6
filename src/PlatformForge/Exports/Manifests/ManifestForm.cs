using System.Security.Cryptography;
using System.Text.Json;
using PlatformForge.Geometry;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Exports.Manifests;

/// <summary>Manifests to and from their file.</summary>
public static class ManifestForm
{
    public static byte[] ToBytes(Manifest manifest) => JsonForms.ToBytes(manifest, ManifestJson.Forms.Manifest);

    /// <summary>Reads a manifest; PF7401 when it is none of ours, of another form, or names files outside its folder.</summary>
    public static Outcome<Manifest> Read(ReadOnlySpan<byte> bytes, string name)
    {
        if (JsonBounds.Fault(bytes) is { } beyond)
        {
            return Fault(name, beyond);
        }

        if (OtherFormat(bytes) is { } other)
        {
            return Fault(name, Invariant($"is not of {Manifest.OurTool}, format {Manifest.OurFormat}{other}"));
        }

        Manifest manifest;
        try
        {
            manifest = JsonForms.Read(bytes, ManifestJson.Forms.Manifest);
        }
        catch (JsonException fault)
        {
            return Fault(name, JsonFault.Words(fault));
        }

        return (OutOfBounds(manifest) ?? FarOff(manifest) ?? BadFile(manifest) ?? OutOfRow(manifest)) is { } wrong ? Fault(name, wrong) : Outcome.Of(manifest);
    }

    // What of a manifest's own figures no build of ours has, in words; null where nothing is.
    private static string? OutOfBounds(Manifest manifest) =>
        !IsHash(manifest.InputHash) ? "has no SHA-256 of what it was made from, 64 small hexadecimal digits"
        : manifest.Files.Count > InputLimits.FolderFiles
        ? Invariant($"lists {manifest.Files.Count} files, over the limit of {InputLimits.FolderFiles}")
        : !(IsStretch(manifest.Stretch.X) && IsStretch(manifest.Stretch.Y))
        ? Invariant($"makes prints longer by {manifest.Stretch.X:0.###} and {manifest.Stretch.Y:0.###}, which is no printer's fault")
        : null;

    // The first part that a motion puts beyond every layout, in words; null where none is.
    private static string? FarOff(Manifest manifest) =>
        manifest.Sections.FirstOrDefault(s => IsFar(s.ToLayout)) is { } far
        ? Invariant($"puts '{far.Name}' farther off than any layout reaches")
        : manifest.Proofs.FirstOrDefault(p => p.ToLayout is { } place && IsFar(place)) is { } off
        ? Invariant($"puts '{off.Name}' farther off than any layout reaches")
        : null;

    // The first file that cannot be one of the folder, or is named by a part and not listed, in words; null where none is.
    private static string? BadFile(Manifest manifest)
    {
        if (manifest.Files.FirstOrDefault(f => f.Bytes < 0) is { } none)
        {
            return Invariant($"says that '{none.Path}' is {none.Bytes} bytes long");
        }

        var paths = new HashSet<string>(StringComparer.Ordinal);
        if (manifest.Files.FirstOrDefault(f => !paths.Add(f.Path)) is { } again)
        {
            return Invariant($"lists '{again.Path}' twice");
        }

        if (paths.FirstOrDefault(p => !IsInside(p)) is { } outside)
        {
            return Invariant($"names '{outside}', which is no path below its folder");
        }

        return FilesOfParts(manifest).FirstOrDefault(f => !paths.Contains(f)) is { } missing
            ? Invariant($"has a part in '{missing}', which is not among its files")
            : null;
    }

    private static IEnumerable<string> FilesOfParts(Manifest manifest) => manifest.Sections.SelectMany(s => new[] { s.Stl, s.Plate, s.AllPlates })
        .Concat(manifest.Lines.SelectMany(l => new[] { l.Stl, l.Plate, l.AllPlates }))
        .Concat(manifest.Proofs.SelectMany(p => new[] { p.Stl, p.Plate })).OfType<string>();

    // Sections of a platform stand in a row, each with a number of its own. What is wrong with that, in words; null where nothing is.
    private static string? OutOfRow(Manifest manifest)
    {
        var numbers = new HashSet<(string, int)>();
        return manifest.Sections.FirstOrDefault(s => !numbers.Add((s.Platform, s.Number))) is { } twice
            ? Invariant($"has two sections of number {twice.Number} of platform '{twice.Platform}'")
            : manifest.Sections.FirstOrDefault(s => !(s.From < s.To)) is { } turned
            ? Invariant($"has '{turned.Name}' end at chainage {turned.To:0.###} mm, not after its beginning at {turned.From:0.###}")
            : null;
    }

    /// <summary>The files that a manifest of ours lists, whatever its format; null when it is no manifest of ours.</summary>
    internal static IReadOnlyList<(string Path, string Sha256)>? ListedFiles(ReadOnlySpan<byte> bytes)
    {
        try
        {
            var reader = new Utf8JsonReader(bytes);
            using var document = JsonDocument.ParseValue(ref reader);
            return document.RootElement.GetProperty("tool").GetString() == Manifest.OurTool
                ? [.. document.RootElement.GetProperty("files").EnumerateArray()
                    .Select(f => (f.GetProperty("path").GetString()!, f.GetProperty("sha256").GetString()!))
                    .Where(f => f.Item1 is not null && f.Item2 is not null)]
                : null;
        }
        catch (Exception fault) when (fault is JsonException or InvalidOperationException or KeyNotFoundException)
        {
            return null;
        }
    }

    /// <summary>What tool and format a file says it is of, where that is not ours: an empty text where it says nothing of the kind; null where it is ours or
    /// cannot be
    /// read so far.</summary>
    internal static string? OtherFormat(ReadOnlySpan<byte> bytes, int format = Manifest.OurFormat)
    {
        try
        {
            var reader = new Utf8JsonReader(bytes);
            using var document = JsonDocument.ParseValue(ref reader);
            if (document.RootElement.ValueKind != JsonValueKind.Object
                || !document.RootElement.TryGetProperty("tool", out var tool) || tool.ValueKind != JsonValueKind.String || tool.GetString() != Manifest.OurTool
                || !document.RootElement.TryGetProperty("format", out var said) || said.ValueKind != JsonValueKind.Number || !said.TryGetInt32(out int number))
            {
                return "";
            }

            return number == format ? null : Invariant($", but of format {number}");
        }
        catch (Exception fault) when (fault is JsonException or InvalidOperationException)
        {
            return null;
        }
    }

    private static bool IsHash(string text) => text.Length == 2 * SHA256.HashSizeInBytes && text.All(char.IsAsciiHexDigitLower);

    private static bool IsFar(RigidTransform motion) => !(motion.Apply(default).Length <= InputLimits.MotionCoordinate);

    // What a strip may have measured, and a little more for rounding.
    private static bool IsStretch(double by) => by is >= 0.95 and <= 1.05;

    /// <summary>Whether a path leads below the folder it is given for, by plain steps only.</summary>
    public static bool IsInside(string path) =>
        path.Length is > 0 and < 1000 && !path.Contains('\\', StringComparison.Ordinal) && !path.Contains(':', StringComparison.Ordinal)
        && !path.Contains('\0', StringComparison.Ordinal) && path.Split('/').All(step => step.Length > 0 && step is not ("." or ".."));

    private static Outcome<Manifest> Fault(string name, string what) =>
        Outcome.Fault<Manifest>(Finding.Error("PF7401", "", Invariant($"The manifest '{name}' {what}."), "Build the project again into an empty folder.",
            FaultKind.Mesh));
}
