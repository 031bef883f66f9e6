using System.Text.Json;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Exports.Manifests;

/// <summary>Design copies to and from their file.</summary>
public static class DesignForm
{
    public static byte[] ToBytes(DesignCopy design) => JsonForms.ToBytes(DesignDocument.Of(design), ManifestJson.Forms.DesignDocument);

    /// <summary>Reads a design copy; PF7402 when it is of another form, or a figure is missing, impossible or of the wrong kind.</summary>
    public static Outcome<DesignCopy> Read(ReadOnlySpan<byte> bytes, string name)
    {
        if (JsonBounds.Fault(bytes) is { } beyond)
        {
            return Fault(name, beyond);
        }

        if (ManifestForm.OtherFormat(bytes, DesignDocument.OurFormat) is { } other)
        {
            return Fault(name, Invariant($"is not of {Manifest.OurTool}, format {DesignDocument.OurFormat}{other}"));
        }

        try
        {
            var design = JsonForms.Read(bytes, ManifestJson.Forms.DesignDocument).ToCopy();
            return Faults(design) is { } what ? Fault(name, what) : Outcome.Of(design);
        }
        catch (JsonException fault)
        {
            return Fault(name, JsonFault.Words(fault));
        }
    }

    private static string? Faults(DesignCopy design)
    {
        if (DesignLimits.Fault(design) is { } beyond)
        {
            return beyond;
        }

        return design.Platforms.SelectMany(p => p.Faces)
            .FirstOrDefault(p => p.Chart.Count == 0 || design.Tracks.All(t => t.Name != p.Face.Track)) is { } platform
            ? Invariant($"lacks the track of platform '{platform.Name}'")
            : null;
    }

    private static Outcome<DesignCopy> Fault(string name, string what) =>
        Outcome.Fault<DesignCopy>(Finding.Error("PF7402", "", Invariant($"The design copy '{name}' {what}."), "Build the project again into an empty folder.",
            FaultKind.Mesh));
}
