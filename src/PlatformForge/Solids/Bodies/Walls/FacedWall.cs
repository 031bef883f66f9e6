using PlatformForge.Geometry;
using PlatformForge.Masonry;
using PlatformForge.Solids.Reliefs;

namespace PlatformForge.Solids.Bodies.Walls;

/// <summary>A faced wall laid flat, as it was made.</summary>
/// <param name="Finish">What it is faced with.</param>
/// <param name="Joint">Width of its joints, mm.</param>
/// <param name="Stretches">Names of the faces it runs over, each with where it begins and ends, mm.</param>
/// <param name="Wall">Its edges, corners and bends.</param>
/// <param name="Regions">What stands out of it.</param>
/// <param name="Draw">How much longer than their gauge its pieces are at most, as a share.</param>
public sealed record FacedWall(
    WallFinish Finish, double Joint, IReadOnlyList<(string Face, double From, double To)> Stretches, FlatWall Wall, IReadOnlyList<WallRegion> Regions,
        double Draw)
{
    /// <summary>The part of the wall's height that it is.</summary>
    public WallZone Zone { get; init; } = WallProfile.Flat.Zones[0];

    /// <summary>What its face shows.</summary>
    public Paint Shows { get; init; } = Paint.Wall;

    /// <summary>Its flat pieces in plan, each with where it begins along the wall, mm.</summary>
    public IReadOnlyList<(double From, Point2 Left, Point2 Right)> Plan { get; init; } = [];

    /// <summary>The place in plan at a place along it.</summary>
    public Point2 Place(double along)
    {
        var (from, left, right) = Plan.LastOrDefault(p => p.From <= along, Plan[0]);
        return left + ((right - left) * ((along - from) / (right - left).Length));
    }

    /// <summary>Area of the upper sides of what stands out, mm²: they look up, and are no part of a walking surface.</summary>
    public double Ledges => Regions.Sum(r => Length(r.Outline) * Math.Abs(r.Out));

    /// <summary>Area of what stands out, mm² on the ground it stands on.</summary>
    public double Area => Regions.Where(r => r.Out > 0).Sum(r => new ReliefField(r.Outline, r.Out).Area);

    private static double Length(Point2[] outline)
    {
        double low = double.PositiveInfinity, high = double.NegativeInfinity;
        foreach (var p in outline)
        {
            (low, high) = (Math.Min(low, p.X), Math.Max(high, p.X));
        }

        return high - low;
    }
}
