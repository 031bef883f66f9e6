using PlatformForge.Geometry;
using PlatformForge.Track;

namespace PlatformForge.Verification.Distances;

/// <summary>Rough distance in plan to a track, quick for many points near one another.</summary>
internal sealed class RideField
{
    private const double Cell = 8;

    private readonly Point2[] samples;
    private readonly double[] chainages;
    private readonly Dictionary<(int X, int Y), (double Distance, int Nearest)> cells = [];

    public RideField(Centreline ride)
    {
        int count = (int)Math.Ceiling(ride.Length / Cell) + 1;
        chainages = [.. Enumerable.Range(0, count).Select(i => ride.Length * i / Math.Max(1, count - 1))];
        samples = Array.ConvertAll(chainages, s => ride.At(s).Position);
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
            found = (double.PositiveInfinity, 0);
            for (int i = 0; i < samples.Length; i++)
            {
                double distance = (samples[i] - middle).Length;
                if (distance < found.Distance)
                {
                    found = (distance, i);
                }
            }

            cells.Add(key, found);
        }

        return found;
    }
}
