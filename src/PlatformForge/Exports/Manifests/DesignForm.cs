using System.Text.Json;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Exports.Manifests;

/// <summary>Design copies to and from their file.</summary>
public static class DesignForm
{
    public static byte[] ToBytes(DesignCopy design) => JsonForms.ToBytes(DesignDocument.Of(design));

    /// <summary>Reads a design copy; PF7402 when it is of another form, or a figure is missing, impossible or of the wrong kind.</summary>
    public static Outcome<DesignCopy> Read(ReadOnlySpan<byte> bytes, string name)
    {
        if (ManifestForm.OtherFormat(bytes, DesignDocument.OurFormat) is { } other)
        {
            return Fault(name, Invariant($"is not of {Manifest.OurTool}, format {DesignDocument.OurFormat}{other}"));
        }

        try
        {
            var design = JsonForms.Read<DesignDocument>(bytes).ToCopy();
            return Faults(design) is { } what ? Fault(name, what) : Outcome.Of(design);
        }
        catch (JsonException fault)
        {
            return Fault(name, ManifestForm.Broken(fault));
        }
    }

    private static string? Faults(DesignCopy design)
    {
        if (!(design.Ratio > 0 && design.Gauge > 0))
        {
            return "has a scale or gauge that is not above 0";
        }

        foreach (var element in design.Tracks.SelectMany(t => t.Elements).Concat(design.Platforms.SelectMany(p => p.Chart)))
        {
            if (!(element.Length > 0))
            {
                return Invariant($"has a track element of length {element.Length}");
            }
        }

        foreach (var track in design.Tracks)
        {
            if (track.Elements.Count == 0)
            {
                return Invariant($"has no elements in track '{track.Name}'");
            }

            if (track.Vehicles.FirstOrDefault(v => v.Parts.Any(p => p.Outline.Count < 3) || !(v.PivotCentres > 0)) is { } vehicle)
            {
                return Invariant($"has a part without an outline, or no pivots, in vehicle '{vehicle.Name}'");
            }
        }

        return design.Platforms.FirstOrDefault(p => p.Chart.Count == 0 || design.Tracks.All(t => t.Name != p.Face.Track)) is { } platform
            ? Invariant($"lacks the track of platform '{platform.Name}'")
            : null;
    }

    private static Outcome<DesignCopy> Fault(string name, string what) =>
        Outcome.Fault<DesignCopy>(Finding.Error("PF7402", "", Invariant($"The design copy '{name}' {what}."), "Build the project again into an empty folder.", FaultKind.Mesh));
}
