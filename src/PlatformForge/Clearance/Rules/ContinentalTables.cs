using System.Collections.Frozen;

namespace PlatformForge.Clearance.Rules;

/// <summary>Vehicle groups of NEM 103 (2016), by body length and pivot distance at full size: A up to 20.0 and 14.0 m, B 24.2 and 17.2 m, C
/// 27.2 and 19.5 m.</summary>
public enum VehicleGroup
{
    A,
    B,
    C,
}

/// <summary>
/// One nominal size of the continental model standards: clearance gauge on straight track (NEM 102, 2017: full width BL1 and platform-level
/// width BL2, mm), platform figures (the German federation's planning aid "Bahnsteige und Laderampen", 2005: greatest heights over rail top
/// for full-size 960, 760, 550 and 380 mm, and least distance of the edge from the track's centre), all mm of the model.
/// </summary>
/// <param name="Name">Nominal size.</param>
/// <param name="Gauge">Gauge, mm.</param>
/// <param name="Ratio">Ratio that reproduces the body lengths of NEM 103: 43.5 for size 0, whose scale is 1:45 elsewhere.</param>
/// <param name="FullWidth">BL1, mm.</param>
/// <param name="LowWidth">BL2, mm.</param>
/// <param name="Heights">Platform heights for 960, 760, 550 and 380 mm.</param>
/// <param name="EdgeDistance">A min, edge to track centre on straight track.</param>
public sealed record ContinentalSize(string Name, double Gauge, double Ratio, double FullWidth, double LowWidth, IReadOnlyList<double> Heights,
    double EdgeDistance);

/// <summary>Tables of the continental model railway standards. Figures only; see each member for the publication.</summary>
public static class ContinentalTables
{
    private const double N = double.NaN;

    private static readonly string[] Order = ["Z", "N", "TT", "H0", "S", "0", "I", "II"];

    /// <summary>The nominal sizes, smallest first. Sources: see <see cref="ContinentalSize"/>.</summary>
    public static FrozenDictionary<string, ContinentalSize> Sizes { get; } = new ContinentalSize[]
    {
        new("Z", 6.5, 220, 20, 14, [4, 3.5, 2.5, 1.7], 8.5),
        new("N", 9, 160, 27, 18, [6, 4.8, 3.5, 2.4], 11.5),
        new("TT", 12, 120, 36, 24, [8, 6.3, 4.6, 3.2], 15),
        new("H0", 16.5, 87, 48, 32, [11, 8.7, 6.3, 4.4], 20),
        new("S", 22.5, 64, 66, 44, [15, 12, 8.6, 6], 27),
        new("0", 32, 43.5, 94, 63, [21, 17, 12, 8.5], 39),
        new("I", 45, 32, 130, 87, [30, 24, 17, 12], 55),
        new("II", 64, 22.5, 184, 124, [43, 34, 24.5, 17], 74),
    }.ToFrozenDictionary(s => s.Name);

    /// <summary>Names of the sizes, smallest first.</summary>
    public static IReadOnlyList<string> SizeNames => Order;

    /// <summary>Body length and pivot distance at full size of a vehicle group, mm (NEM 103, 2016).</summary>
    public static (double Length, double Pivots) Limits(VehicleGroup group) => group switch
    {
        VehicleGroup.A => (20000, 14000),
        VehicleGroup.B => (24200, 17200),
        _ => (27200, 19500),
    };

    /// <summary>Radii of the rows of NEM 103, mm.</summary>
    public static IEnumerable<double> Radii => Widening.Select(r => r[0]);

    /// <summary>
    /// Extra width E on either side of the clearance gauge on a curve, mm (NEM 103, 2016). Between rows the greater of both is taken, above the
    /// last row the last.
    /// </summary>
    /// <returns>Null where the standard gives none because the radius is below its least.</returns>
    public static double? ExtraWidth(string size, VehicleGroup group, double radius)
    {
        int row = Array.FindLastIndex(Widening, r => r[0] <= radius);
        double extra = row < 0 ? N : Widening[row][1 + (3 * Array.IndexOf(Order, size)) + (int)group];
        return double.IsNaN(extra) ? null : extra;
    }

    // NEM 103, 2016, pages 1 and 2: radius, then groups A, B, C of each size in order; N where the standard is blank.
    private static readonly double[][] Widening =
    [
        [175, 2, 3, 5, 4, N, N, N, N, N, N, N, N, N, N, N, N, N, N, N, N, N, N, N, N],
        [200, 2, 3, 4, 4, N, N, N, N, N, N, N, N, N, N, N, N, N, N, N, N, N, N, N, N],
        [225, 2, 2, 4, 3, 5, N, N, N, N, N, N, N, N, N, N, N, N, N, N, N, N, N, N, N],
        [250, 1, 2, 3, 3, 5, 6, 6, N, N, N, N, N, N, N, N, N, N, N, N, N, N, N, N, N],
        [275, 1, 2, 3, 3, 4, 6, 5, N, N, N, N, N, N, N, N, N, N, N, N, N, N, N, N, N],
        [300, 1, 2, 3, 2, 4, 5, 5, 7, N, N, N, N, N, N, N, N, N, N, N, N, N, N, N, N],
        [325, 1, 1, 2, 2, 3, 5, 4, 6, N, N, N, N, N, N, N, N, N, N, N, N, N, N, N, N],
        [350, 1, 1, 2, 2, 3, 4, 4, 6, 8, 8, N, N, N, N, N, N, N, N, N, N, N, N, N, N],
        [400, 0, 1, 2, 1, 2, 4, 3, 5, 7, 7, 11, N, N, N, N, N, N, N, N, N, N, N, N, N],
        [450, 0, 1, 1, 1, 2, 3, 3, 4, 6, 6, 9, 12, 12, N, N, N, N, N, N, N, N, N, N, N],
        [500, 0, 0, 1, 1, 1, 3, 2, 4, 5, 5, 8, 11, 10, N, N, N, N, N, N, N, N, N, N, N],
        [550, 0, 0, 1, 0, 1, 2, 2, 3, 4, 4, 7, 10, 9, 14, N, N, N, N, N, N, N, N, N, N],
        [600, 0, 0, 1, 0, 1, 2, 1, 3, 4, 4, 6, 9, 8, 13, 17, 19, N, N, N, N, N, N, N, N],
        [700, 0, 0, 0, 0, 0, 2, 1, 2, 3, 3, 5, 7, 7, 11, 15, 16, N, N, N, N, N, N, N, N],
        [800, 0, 0, 0, 0, 0, 1, 0, 2, 3, 3, 4, 6, 6, 9, 13, 14, 22, N, N, N, N, N, N, N],
        [900, 0, 0, 0, 0, 0, 1, 0, 1, 2, 2, 3, 5, 5, 8, 11, 12, 19, 25, 23, N, N, N, N, N],
        [1000, 0, 0, 0, 0, 0, 0, 0, 1, 2, 2, 3, 4, 4, 7, 9, 10, 17, 22, 20, 31, N, N, N, N],
        [1200, 0, 0, 0, 0, 0, 0, 0, 0, 1, 1, 2, 3, 3, 5, 7, 8, 14, 18, 16, 25, 34, 37, N, N],
        [1400, 0, 0, 0, 0, 0, 0, 0, 0, 1, 1, 2, 2, 2, 4, 6, 7, 11, 15, 13, 21, 28, 31, N, N],
        [1600, 0, 0, 0, 0, 0, 0, 0, 0, 1, 0, 1, 2, 2, 3, 5, 6, 9, 13, 11, 18, 24, 26, 41, N],
        [1800, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1, 1, 1, 2, 4, 5, 8, 11, 9, 15, 21, 23, 36, 47],
        [2000, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1, 1, 2, 3, 4, 7, 9, 7, 13, 18, 20, 32, 42],
        [2500, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1, 2, 3, 5, 7, 5, 10, 13, 15, 24, 32],
        [3000, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1, 1, 2, 3, 5, 3, 7, 10, 11, 19, 26],
        [3500, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1, 1, 2, 4, 2, 5, 8, 9, 16, 21],
        [4000, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1, 3, 1, 4, 6, 6, 13, 18]
    ];
}
