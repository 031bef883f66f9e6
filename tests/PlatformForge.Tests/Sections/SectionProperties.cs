using FsCheck.Xunit;
using PlatformForge.Exports.Stl;
using PlatformForge.Platforms.Specs;
using PlatformForge.Sections.Beds;
using PlatformForge.Sections.Forms;
using PlatformForge.Tests.Meshes;
using PlatformForge.Tests.Platforms;
using Xunit;

namespace PlatformForge.Tests.Sections;

/// <summary>Sections of platforms along random tracks, on random beds, with random joints.</summary>
public class SectionProperties
{
    /// <summary>Seeds that had left flat triangles: fins beside a coping's joint at a cut, corners near to one another along an edge, borders of
    /// paint.</summary>
    [Theory]
    [InlineData(63)]
    [InlineData(99)]
    [InlineData(100)]
    [InlineData(194)]
    [InlineData(258)]
    [InlineData(700)]
    public void What_had_slivers_once_is_sound(int seed) => Whatever_is_cut_fits_its_bed_is_sound_and_keeps_account_of_its_volume(seed);

    [Property(MaxTest = 4)]
    public void Whatever_is_cut_fits_its_bed_is_sound_and_keeps_account_of_its_volume(int seed)
    {
        var random = new Random(seed);
        var plan = Bench.Plan(Bench.Request(seed, (EdgeStyle)random.Next(3), s => (s with
        {
            Deck = s.Deck with { Crossfall = random.Next(2) * 80 },
            StartRamp = random.Next(2) == 0 ? null : new(Gradient: 8),
            EndRamp = random.Next(2) == 0 ? null : new(Length: 70 + (random.NextDouble() * 50)),
            Ribs = s.Ribs with { LongitudinalCount = random.Next(3) },
        }).With<FenceSpec>(random.Next(2) == 0 ? [] : [new()])));
        var printer = PrinterSpec.Oblong(180 + (random.NextDouble() * 120), 180 + (random.NextDouble() * 120), 100)
            with
        { Nozzle = random.Next(2) == 0 ? 0.4 : 0.6 };
        var spec = new SectionSpec
        {
            Joint = new()
            {
                DowelDiameter = 1.5 + random.NextDouble(),
                DowelLength = 8 + (random.NextDouble() * 8),
                EndTrim = random.NextDouble() * 0.2
            }
        };
        var set = Workbench.Made(plan, printer, spec);
        var bed = new BedShape(printer);
        foreach (var section in set.Sections)
        {
            var report = MeshCheck.Inspect(section.PrintMesh());
            Assert.True(report is { IsClosed: true, DegenerateTriangles: 0, Components: 1 }, report.ToString());
            Assert.InRange(SliverMenderTests.FlattestOf(StlReader.Read(StlWriter.ToBytes(section.PrintMesh(), ""), "").Value!.Mesh), 1e-4, 100);
            Assert.True(bed.Fits(section.Hull) && section.Size.Z <= printer.Height);
            Assert.Equal(section.Volumes.Finished, section.Solid.ColumnVolume, section.Solid.ColumnVolume * 3e-5);
            Assert.Contains(set.Plates, p => p.Sections.Any(s => s.Section.Number == section.Number));
        }

        Assert.Equal(set.Cuts.Count * 2, set.Dowels.Sum(d => d.Count));
    }
}
