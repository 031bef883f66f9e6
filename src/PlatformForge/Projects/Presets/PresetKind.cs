namespace PlatformForge.Projects.Presets;

/// <summary>What a preset is for; each kind has a folder of its own.</summary>
public enum PresetKind
{
    Scales,
    Vehicles,
    Printers,
    Samples,
}
