namespace PlatformForge.Verification;

/// <summary>Front door of the room for meshes that were read back: pure, no files.</summary>
public static class SectionsVerifier
{
    /// <summary>
    /// Checks every section by itself (sound mesh, bed, walls), where it stands, and the least distance to every vehicle
    /// over poses of the room's own choosing.
    /// </summary>
    public static Verdict Verify(IReadOnlyList<WrittenSection> sections, DesignFacts facts) => throw new NotSupportedException("verification");
}
