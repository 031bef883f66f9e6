using System.Runtime.CompilerServices;
using PlatformForge.Exports.Pictures.Bodies;
using PlatformForge.Geometry;

namespace PlatformForge.Exports.Pictures.Light;

/// <summary>A sun that throws shadows and a sky of many weak lights that darkens corners.</summary>
internal sealed class Lighting
{
    private const double SunShare = 0.95;
    private const double SkyShare = 0.62;
    private const int SkyLights = 24;

    // Cells of the grids a pixel: the sun's shadows have edges, the sky's have none.
    private const double SkyCells = 0.28;
    private const double SunCells = 2.5;

    // Share of the sky's light that comes from all round, off the ground too, where none of it is seen; from near by more, as the eye is used to the shade
    // there.
    private const double Dark = 0.12, NearDark = 0.26;

    private readonly double least;
    private readonly ShadowMap sun;
    private readonly SkyLight sky;
    private readonly Point3 pole;

    /// <param name="bodies">What stands in the light.</param>
    /// <param name="sunward">Direction to the sun.</param>
    /// <param name="pole">Middle of the sky: up, or down for a picture from below.</param>
    /// <param name="level">The bodies' longest direction.</param>
    /// <param name="pixels">Pixels of the picture.</param>
    /// <param name="threads">Most threads.</param>
    /// <param name="seen">Corners of what is seen; null for all.</param>
    public Lighting(
        IReadOnlyList<SceneBody> bodies, Point3 sunward, Point3 pole, Point3 level, int pixels, int threads, IReadOnlyList<Point3>? seen = null)
    {
        (this.pole, least) = (pole, seen is null ? Dark : NearDark);
        var maps = new ShadowMap[SkyLights + 1];
        int largest = bodies.Count == 0 ? 0 : bodies.Max(b => b.Mesh.Vertices.Length);
        Parallel.For(0, maps.Length, new ParallelOptions { MaxDegreeOfParallelism = threads }, () => new Point3[largest], (i, _, on) =>
        {
            var (toward, cells) = i == SkyLights ? (sunward, SunCells) : (SkyDirection(i), SkyCells);
            maps[i] = new(bodies, toward, level, cells * pixels, seen, on);
            return on;
        }, static _ => { });
        sun = maps[SkyLights];
        sky = new(maps[..SkyLights], isSoft: seen is not null);
    }

    /// <summary>Light on a surface of unit normal, about 0 to 1.5.</summary>
    /// <param name="point">The place.</param>
    /// <param name="normal">Which way the surface faces there.</param>
    /// <param name="open">Share of the sky that it sees, by <see cref="Open"/>.</param>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public double At(Point3 point, Point3 normal, double open)
    {
        double facing = Point3.Dot(normal, sun.Toward);
        double direct = facing > 0 ? facing * sun.Share(point, normal) : 0;
        return (SunShare * direct) + (SkyShare * open);
    }

    /// <summary>How much a level ground that shows nothing but its shadows is darkened, 1 where nothing stands near.</summary>
    /// <param name="point">The place.</param>
    /// <param name="open">Share of the sky that it sees, by <see cref="Open"/>.</param>
    public double OnGround(Point3 point, double open) => (0.45 * sun.Share(point, Up)) + 0.1 + (0.45 * ((open - least) / (1 - least)));

    /// <summary>Which way level ground faces.</summary>
    public static Point3 Up => new(0, 0, 1);

    /// <summary>Share of the sky that a surface sees, those parts it faces counting most.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public double Open(Point3 point, Point3 normal)
    {
        var (seen, all) = sky.Seen(point, normal);

        // What faces away from the sky still gets some light from all around.
        double lean = 0.5 + (0.5 * Point3.Dot(normal, pole));
        return all > 0 ? (least + ((1 - least) * seen / all)) * (0.45 + (0.55 * lean)) : 0.25;
    }

    // Even over the half sphere: steps of the golden angle around the pole, even steps of height.
    private Point3 SkyDirection(int i)
    {
        double height = 0.08 + (0.9 * (i + 0.5) / SkyLights), radius = Math.Sqrt(1 - (height * height));
        var (s, c) = Math.SinCos(i * Math.PI * (3 - Math.Sqrt(5)));
        return new(radius * c, radius * s, height * Math.Sign(pole.Z));
    }
}
