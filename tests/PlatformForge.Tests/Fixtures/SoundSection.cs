using PlatformForge.Sections.Forms;
using PlatformForge.Tests.Meshes;

namespace PlatformForge.Tests.Fixtures;

/// <summary>What every section has to be, whatever stands on its walls.</summary>
internal static class SoundSection
{
    /// <summary>One closed body, as it lies on the bed too; of the volume that is told, and with nothing that hangs free.</summary>
    public static void Check(PlatformSection section)
    {
        var report = MeshCheck.Inspect(section.Solid.Mesh);
        Assert.True(report is { IsClosed: true, DegenerateTriangles: 0, Components: 1 }, $"{section.Name}: {report}");
        Assert.InRange(section.Volumes.Finished / report.Volume, 1 - 2e-5, 1 + 2e-5);
        Assert.True(MeshCheck.Inspect(section.PrintMesh()) is { IsClosed: true, DegenerateTriangles: 0 }, section.Name);
        Assert.InRange(section.Overhangs.Unsupported, 0, 0.2);
    }

    /// <summary>The same, with walls that are faced or not.</summary>
    public static void Check(PlatformSection section, bool faced)
    {
        Check(section);
        Assert.Equal(faced, section.Faced.Count > 0);
    }
}
