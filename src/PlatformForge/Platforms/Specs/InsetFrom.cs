namespace PlatformForge.Platforms.Specs;

/// <summary>From which edge of the platform an inset is measured.</summary>
public enum InsetFrom
{
    Back,
    Edge,
}
