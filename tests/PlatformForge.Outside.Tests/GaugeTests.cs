using System.Text.Json;
using PlatformForge.Geometry;

namespace PlatformForge.Outside.Tests;

/// <summary>
/// Slide gauges as their STL files have them, put on rails that are known from the track's own plan and nothing of the program: straight along x, or a circle.
/// </summary>
public sealed class GaugeTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("platformforge-gauges-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    /// <summary>Straight along x from the origin: 16.5 mm gauge, rail top 8, a coach 34 wide with 0.7 of air.</summary>
    [Fact]
    public void On_straight_track_gauges_ride_go_between_the_rails_and_show_where_the_platform_is() =>
        Held("straight-halt", 16.5, 8, p => p.Y, 17 + 0.7);

    /// <summary>
    /// 200 mm along x, then a circle of 900 mm to the left about (200, 900), the platform outside it: 9 mm gauge, rail top 2.6. A railcar of 150 by 18 mm with
    /// pivots 106 apart reaches out by its end: pivots on the circle, its middle line at √(R² − 53²), its corner at 75 along and 9 out from that (Pythagoras).
    /// </summary>
    [Fact]
    public void On_a_circle_they_do_too()
    {
        const double radius = 900;
        double corner = double.Hypot(75, Math.Sqrt((radius * radius) - (53 * 53)) + 9) - radius;
        Held("sandhope", 9, 2.6, p => double.Hypot(p.X - 200, p.Y - radius) - radius, corner + 0.5);
    }

    // Everything by the offset of a place from the track's middle, towards the platform.
    private void Held(string sample, double gauge, double railTop, Func<Point3, double> off, double reach)
    {
        var said = WrittenSamples.CommandLine("build", WrittenSamples.SampleFile(sample), "--output", folder, "--sets", "prints,gauges", "--no-pictures",
            "--quiet");
        Assert.True(said.Exit == 0, said.All);
        Point3[] platform = [.. WrittenSolid.Of(folder).SelectMany(s => s.OnLayout().Triangles).SelectMany(t => t)];
        var told = Written.Parse(File.ReadAllText(Path.Combine(folder, "gauges", "figures.json"))).GetProperty("proofs").EnumerateArray()
            .ToDictionary(p => p.Text("name"));
        JsonElement[] gauges = [.. Written.Parse(File.ReadAllText(Path.Combine(folder, "manifest.json"))).GetProperty("proofs").EnumerateArray()
            .Where(p => p.Text("kind") == "slide gauge")];
        Assert.Equal(3, gauges.Length);
        foreach (var proof in gauges)
        {
            double Told(string what) => told[proof.Text("name")].GetProperty("figures").EnumerateArray().Single(f => f.Text("what") == what).Number("value");
            Point3[] corners = [.. WrittenSolid.Gauge(folder, proof).SelectMany(t => t)];

            // It stands on both rails at rail top, and what is lower is between them with the play that is told, or beside the track.
            double half = gauge / 2, play = Told("play between the rails, each side");
            foreach (int side in (int[])[-1, 1])
            {
                Assert.Equal(railTop, corners.Where(p => side * off(p) > half && side * off(p) < half + 3).Min(p => p.Z), 0.02);
                Point3[] tongue = [.. corners.Where(p => p.Z < railTop - 0.1 && side * off(p) > 0 && Math.Abs(off(p)) < half + 1)];
                Assert.Equal(half - play, tongue.Max(p => side * off(p)), 0.03);
            }

            // The platform beside it: edge, wall's foot and height as they are engraved. Corners stand where facets meet, within 20 mm of it.
            Point3 middle = new((corners.Min(p => p.X) + corners.Max(p => p.X)) / 2, (corners.Min(p => p.Y) + corners.Max(p => p.Y)) / 2, 0);
            double air = Told("air at coping and wall"), edge = Told("coping from the track's middle"), top = Told("coping's top above rail top");
            Point3[] near = [.. platform.Where(p => double.Hypot(p.X - middle.X, p.Y - middle.Y) < 60)];
            Assert.Equal(edge, near.Min(off), 0.03);
            Assert.Equal(railTop + top, near.Where(p => off(p) < edge + 2).Max(p => p.Z), 0.03);
            Assert.True(edge >= reach, $"{proof.Text("name")}: {edge} where a vehicle reaches to {reach}");

            // As much air as it says between blade and coping, and over the coping: it touches neither.
            Point3[] blade = [.. corners.Where(p => p.Z > railTop + 0.9 && p.Z < railTop + top && off(p) > half)];
            Assert.InRange(edge - blade.Max(off), air - 0.03, air + 0.1);
            double arm = corners.Where(p => off(p) > edge + 1 && p.Z > railTop + top).Min(p => p.Z);
            Assert.InRange(arm - railTop - top, air - 0.03, air + 0.1);
        }
    }
}
