using PlatformForge.Clearance.Vehicles;
using PlatformForge.Geometry;

namespace PlatformForge.Clearance.Sweeping;

/// <summary>
/// What is swept of a vehicle as one piece: a part or, where it leans, what of it is below an edge, at the edge's own heights, or above
/// them, so that what happens low down is not mixed
/// with how far a roof leans, nor a side that sinks with one that rises.
/// </summary>
/// <param name="Part">The part, between the heights of the piece as far as it has those while it stands upright.</param>
/// <param name="Outline">Its outline, leaning as far as it can.</param>
/// <param name="Lowest">Lowest height above rail top in mm that anything of the piece comes to.</param>
/// <param name="Highest">Greatest height.</param>
internal sealed record SweptShape(VehiclePart Part, IReadOnlyList<Point2> Outline, double Lowest, double Highest)
{
    private static readonly (double Low, double High) Everywhere = (double.NegativeInfinity, double.PositiveInfinity);

    /// <summary>The shapes of a vehicle in the order of its parts, from below.</summary>
    /// <param name="vehicle">The vehicle.</param>
    /// <param name="play">What it leans by.</param>
    /// <param name="edge">Heights of the edge above rail top, mm; null tells every part as a whole.</param>
    public static SweptShape[] Of(Vehicle vehicle, RunningPlay play, (double Low, double High)? edge) =>
        [.. vehicle.Parts.SelectMany(part => Pieces(part, vehicle, play, edge))];

    private static IEnumerable<SweptShape> Pieces(VehiclePart part, Vehicle vehicle, RunningPlay play, (double Low, double High)? edge)
    {
        var lean = play.Lean(part.Carrier);
        double lowest = play.Lowest(part, vehicle), highest = play.Highest(part, vehicle);
        (double Low, double High)[] windows = edge is { } heights && !lean.IsUpright
            ? [(double.NegativeInfinity, heights.Low), heights, (heights.High, double.PositiveInfinity)]
            : [Everywhere];
        foreach (var window in windows)
        {
            // A piece that is all of the part needs no window.
            bool all = window.Low <= lowest && window.High >= highest;
            if (window.High > lowest && window.Low < highest && LeantOutline.Of(part, lean, all ? Everywhere : window) is { } outline)
            {
                yield return new(Between(part, window), outline, Math.Max(lowest, window.Low), Math.Min(highest, window.High));
            }
        }
    }

    private static VehiclePart Between(VehiclePart part, (double Low, double High) window)
    {
        double low = Math.Max(part.ZLow, window.Low), high = Math.Min(part.ZHigh, window.High);
        return low < high && (low > part.ZLow || high < part.ZHigh) ? part with { ZLow = low, ZHigh = high } : part;
    }
}
