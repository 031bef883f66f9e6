namespace PlatformForge.Projects.Presets;

/// <summary>How well a figure of a preset is founded, the best first.</summary>
public enum SourceStanding
{
    /// <summary>Printed somewhere, which is named.</summary>
    Published,

    /// <summary>Widely known, not checked against a drawing.</summary>
    FromMemory,

    /// <summary>What is usually done, without a source.</summary>
    CommonPractice,
}
