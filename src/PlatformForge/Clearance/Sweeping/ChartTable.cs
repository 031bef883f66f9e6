using System.Runtime.CompilerServices;
using PlatformForge.Geometry;
using PlatformForge.Track;

namespace PlatformForge.Clearance.Sweeping;

/// <summary>
/// Frames of the chart line at its stations and for some way before and after, to turn points near a known station into chainage and
/// offset in a few operations: the line is replaced by its circle of curvature within half a spacing of a station, which on a clothoid is
/// wrong by κ'·δ³/6 and across a jump of curvature by Δκ·δ²/2, far below a thousandth of a millimetre.
/// </summary>
internal sealed class ChartTable
{
    // Beyond this share of the way to the centre of curvature the foot of a square to the line is not told reliably.
    private const double LeastSlope = 0.1;

    // A point stays with its station a little past half-way, so that rounding cannot toss it to and fro.
    private const double Hold = 0.55;

    private const int Rounds = 64;

    // A row for each figure of the frames, so that several stations can be worked at once.
    private readonly double[] x;
    private readonly double[] y;
    private readonly double[] tangentX;
    private readonly double[] tangentY;
    private readonly double[] curvature;
    private readonly double perSpacing;

    /// <param name="chart">A line without kinks.</param>
    /// <param name="from">Chainage of station 0, mm.</param>
    /// <param name="spacing">Distance between stations, mm.</param>
    /// <param name="count">Number of stations.</param>
    /// <param name="margin">How far the table goes on either side of the stations, mm.</param>
    public ChartTable(Centreline chart, double from, double spacing, int count, double margin)
    {
        Chart = chart;
        (From, Spacing, Count) = (from, spacing, count);
        perSpacing = 1 / spacing;
        Lead = (int)Math.Ceiling(margin / spacing);
        Entries = count + (2 * Lead);
        (x, y, tangentX, tangentY, curvature) = (new double[Entries], new double[Entries], new double[Entries], new double[Entries], new double[Entries]);
        for (int i = 0; i < Entries; i++)
        {
            var frame = chart.At(from + ((i - Lead) * spacing));
            (x[i], y[i]) = (frame.Position.X, frame.Position.Y);
            (tangentX[i], tangentY[i]) = (frame.Tangent.X, frame.Tangent.Y);
            curvature[i] = frame.Curvature;
        }
    }

    public Centreline Chart { get; }

    public double From { get; }

    public double Spacing { get; }

    /// <summary>Number of stations.</summary>
    public int Count { get; }

    /// <summary>Number of table entries before station 0.</summary>
    public int Lead { get; }

    public int Entries { get; }

    /// <summary>Points of the chart at the stations: x, mm.</summary>
    public ReadOnlySpan<double> X => x.AsSpan(Lead, Count);

    /// <summary>Points of the chart at the stations: y, mm.</summary>
    public ReadOnlySpan<double> Y => y.AsSpan(Lead, Count);

    /// <summary>Directions of the chart at the stations: x of the unit tangent.</summary>
    public ReadOnlySpan<double> TangentX => tangentX.AsSpan(Lead, Count);

    /// <summary>Directions of the chart at the stations: y of the unit tangent.</summary>
    public ReadOnlySpan<double> TangentY => tangentY.AsSpan(Lead, Count);

    /// <summary>Frame at a station.</summary>
    public TrackFrame AtStation(int station) => AtEntry(station + Lead);

    /// <summary>Frame at an entry of the table.</summary>
    public TrackFrame AtEntry(int entry) => new(new(x[entry], y[entry]), new(tangentX[entry], tangentY[entry]), curvature[entry]);

    public double ChainageOfEntry(int entry) => From + ((entry - Lead) * Spacing);

    public int EntryNear(double chainage) => Math.Clamp((int)Math.Round((chainage - From) * perSpacing) + Lead, 0, Entries - 1);

    /// <summary>A chainage counted in stations, parts of one included.</summary>
    public double StationsTo(double chainage) => (chainage - From) * perSpacing;

    /// <summary>
    /// Chainage and offset of a point.
    /// </summary>
    /// <param name="p">The point, layout frame.</param>
    /// <param name="entry">Entry to begin at; the nearest one afterwards.</param>
    /// <param name="place">Where it is.</param>
    /// <returns>False when the point lies beyond the table or near the centre of curvature.</returns>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public bool Locate(Point2 p, ref int entry, out TrackPlace place)
    {
        for (int round = 0; round < Rounds; round++)
        {
            double tx = tangentX[entry], ty = tangentY[entry], k = curvature[entry];
            double dx = p.X - x[entry], dy = p.Y - y[entry];
            double along = (dx * tx) + (dy * ty), aside = (dy * tx) - (dx * ty), slope = 1 - (k * aside);
            if (slope < LeastSlope)
            {
                if (Math.Abs(along) <= Spacing)
                {
                    break;
                }

                // Within the bend of a rounded kink: walk on along the tangent, or the point would be looked for here for ever.
                slope = 1;
            }

            double step = along / slope;
            if (Math.Abs(step) <= Hold * Spacing)
            {
                double turn = k * step, kAlong = k * along;
                double root = Math.Sqrt((kAlong * kAlong) + (slope * slope));
                place = new(ChainageOfEntry(entry) + (step * (1 - (turn * turn / 3))), ((2 * aside) - (k * ((along * along) + (aside * aside)))) / (1 + root));
                return true;
            }

            int to = Math.Clamp(entry + (int)Math.Round(Math.Clamp(step * perSpacing, -Entries, Entries)), 0, Entries - 1);
            if (to == entry)
            {
                break;
            }

            entry = to;
        }

        place = default;
        return false;
    }
}
