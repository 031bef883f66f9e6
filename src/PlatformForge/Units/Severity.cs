namespace PlatformForge.Units;

/// <summary>How much a <see cref="Finding"/> matters.</summary>
public enum Severity
{
    /// <summary>Worth knowing; nothing has to change.</summary>
    Note,

    /// <summary>The work goes on, but a published figure or good practice is missed.</summary>
    Warning,

    /// <summary>The work stops here.</summary>
    Error,
}
