using System.Diagnostics;
using PlatformForge.Benchmarks;
using PlatformForge.Geometry.Meshes;
using PlatformForge.Solids;

foreach (bool brick in new[] { false, true })
{
    foreach (double turn in new[] { 0.0, 0.5, 1, 1.5, 2, 2.5, 3, 3.5, 4, 4.5 })
    {
        var solid = SolidRaiser.Raise(ReferenceSection.Blocks(brick, turn));
        var r = MeshCheck.Inspect(solid.Mesh);
        Console.WriteLine($"{turn} {solid.Mesh.TriangleCount} {solid.ColumnVolume - (brick ? ReferenceSection.BrickVolume : ReferenceSection.PlainVolume):F4} {r}");
    }

    var blocks = ReferenceSection.Blocks(brick);
    var times = new List<double>();
    for (int i = 0; i < 100; i++)
    {
        var clock = Stopwatch.StartNew();
        SolidRaiser.Raise(blocks);
        times.Add(clock.Elapsed.TotalMilliseconds);
    }

    times.Sort();
    Console.WriteLine($"median {times[50]:F2} ms, least {times[0]:F2} ms");
}
