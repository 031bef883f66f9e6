using System.Collections.Concurrent;
using PlatformForge.Geometry;
using PlatformForge.Track;

namespace PlatformForge.Verification.Distances;

/// <summary>Rough distance in plan to a track, quick for many points near one another. May be asked from several threads: what a cell holds depends on
/// nothing but the track.</summary>
internal sealed class RideField
{
    private const double Cell = 8;

    private readonly Point2[] samples;
    private readonly double[] chainages;
    private readonly (Point2 Middle, double Radius)[] blocks; // circles around samples in a row
    private readonly int block;
    private readonly ConcurrentDictionary<(int X, int Y), (double Distance, int Nearest)> cells = new();

    // What a bound by circles may be off by, of rounding, mm.
    private const double Slack = 1e-6;

    public RideField(Centreline ride)
    {
        int count = (int)Math.Ceiling(ride.Length / Cell) + 1;
        chainages = [.. Enumerable.Range(0, count).Select(i => ride.Length * i / Math.Max(1, count - 1))];
        samples = Array.ConvertAll(chainages, s => ride.At(s).Position);
        block = (int)Math.Ceiling(Math.Sqrt(count));
        blocks = [.. Enumerable.Range(0, (count + block - 1) / block).Select(Circle)];
    }

    /// <summary>What <see cref="Distance"/> may be wrong by, mm: half a cell's diagonal and half a step of the samples.</summary>
    public static double Roughness => (Cell * Math.Sqrt(0.5)) + (Cell / 2);

    /// <summary>Distance to the track, mm, within <see cref="Roughness"/>.</summary>
    public double Distance(Point2 p) => At(p).Distance;

    /// <summary>Chainage in mm of the nearest sample.</summary>
    public double Chainage(Point2 p) => chainages[At(p).Nearest];

    private (double Distance, int Nearest) At(Point2 p)
    {
        var key = ((int)Math.Floor(p.X / Cell), (int)Math.Floor(p.Y / Cell));
        if (!cells.TryGetValue(key, out var found))
        {
            var middle = new Point2((key.Item1 + 0.5) * Cell, (key.Item2 + 0.5) * Cell);
            found = cells.GetOrAdd(key, Nearest(middle));
        }

        return found;
    }

    // Blocks that can hold nothing nearer than another is sure to hold are passed over: the first of the nearest samples is found, as by looking at all.
    private (double Distance, int Nearest) Nearest(Point2 p)
    {
        double sure = double.PositiveInfinity;
        foreach (var (middle, radius) in blocks)
        {
            sure = Math.Min(sure, (middle - p).Length + radius);
        }

        var found = (Distance: double.PositiveInfinity, Nearest: 0);
        for (int b = 0; b < blocks.Length; b++)
        {
            if ((blocks[b].Middle - p).Length - blocks[b].Radius > Math.Min(sure, found.Distance) + Slack)
            {
                continue;
            }

            for (int i = b * block; i < Math.Min(samples.Length, (b + 1) * block); i++)
            {
                double distance = (samples[i] - p).Length;
                if (distance < found.Distance)
                {
                    found = (distance, i);
                }
            }
        }

        return found;
    }

    private (Point2 Middle, double Radius) Circle(int number)
    {
        var own = samples.AsSpan(number * block, Math.Min(block, samples.Length - (number * block)));
        var middle = own[own.Length / 2];
        double radius = 0;
        foreach (var p in own)
        {
            radius = Math.Max(radius, (p - middle).Length);
        }

        return (middle, radius);
    }
}
