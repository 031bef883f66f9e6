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

    private readonly TrackFrame[] frames;

    /// <param name="chart">A line without kinks.</param>
    /// <param name="from">Chainage of station 0, mm.</param>
    /// <param name="spacing">Distance between stations, mm.</param>
    /// <param name="count">Number of stations.</param>
    /// <param name="margin">How far the table goes on either side of the stations, mm.</param>
    public ChartTable(Centreline chart, double from, double spacing, int count, double margin)
    {
        Chart = chart;
        (From, Spacing, Count) = (from, spacing, count);
        Lead = (int)Math.Ceiling(margin / spacing);
        frames = new TrackFrame[count + (2 * Lead)];
        for (int i = 0; i < frames.Length; i++)
        {
            frames[i] = chart.At(from + ((i - Lead) * spacing));
        }
    }

    public Centreline Chart { get; }

    public double From { get; }

    public double Spacing { get; }

    /// <summary>Number of stations.</summary>
    public int Count { get; }

    /// <summary>Number of table entries before station 0.</summary>
    public int Lead { get; }

    public int Entries => frames.Length;

    /// <summary>Frame at a station.</summary>
    public ref readonly TrackFrame AtStation(int station) => ref frames[station + Lead];

    public double ChainageOfEntry(int entry) => From + ((entry - Lead) * Spacing);

    public int EntryNear(double chainage) => Math.Clamp((int)Math.Round((chainage - From) / Spacing) + Lead, 0, frames.Length - 1);

    /// <summary>
    /// Chainage and offset of a point.
    /// </summary>
    /// <param name="p">The point, layout frame.</param>
    /// <param name="entry">Entry to begin at; the nearest one afterwards.</param>
    /// <param name="place">Where it is.</param>
    /// <returns>False when the point lies beyond the table or near the centre of curvature.</returns>
    public bool Locate(Point2 p, ref int entry, out TrackPlace place)
    {
        for (int round = 0; round < Rounds; round++)
        {
            ref readonly var frame = ref frames[entry];
            double dx = p.X - frame.Position.X, dy = p.Y - frame.Position.Y;
            double along = (dx * frame.Tangent.X) + (dy * frame.Tangent.Y), aside = (dy * frame.Tangent.X) - (dx * frame.Tangent.Y);
            double k = frame.Curvature, slope = 1 - (k * aside);
            if (slope < LeastSlope)
            {
                break;
            }

            double step = along / slope;
            if (Math.Abs(step) <= Hold * Spacing)
            {
                double turn = k * step, kAlong = k * along;
                double root = Math.Sqrt((kAlong * kAlong) + (slope * slope));
                place = new(ChainageOfEntry(entry) + (step * (1 - (turn * turn / 3))), ((2 * aside) - (k * ((along * along) + (aside * aside)))) / (1 + root));
                return true;
            }

            int to = Math.Clamp(entry + (int)Math.Round(Math.Clamp(step / Spacing, -frames.Length, frames.Length)), 0, frames.Length - 1);
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
