using PlatformForge.Clearance.Requests;
using PlatformForge.Clearance.Sweeping;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Geometry;
using PlatformForge.Track;

namespace PlatformForge.Clearance;

/// <summary>
/// Where the door sills of standing vehicles may be along a platform: the figures behind a gap table. Vehicles stand true, with no play.
/// </summary>
public static class SillSurvey
{
    /// <summary>Distance between the poses tried, mm: between them a sill moves by its versine, under 0.01 mm on a curve of 200 mm radius
    /// or more.</summary>
    private const double PoseStep = 4;

    /// <summary>
    /// Sill reach of every vehicle of the platform's own track that has a sill, in their order.
    /// </summary>
    /// <param name="request">The same request that was swept; it must have had no faults.</param>
    /// <param name="side">Side of the platform.</param>
    /// <param name="spacing">Greatest distance between stations, mm.</param>
    public static IReadOnlyList<SillReach> Over(EnvelopeRequest request, Side side, double spacing = 5)
    {
        int count = Math.Max(2, (int)Math.Ceiling((request.To - request.From) / spacing) + 1);
        var boarded = request.Runs[0].Vehicles.Where(v => v.Sill is not null).ToArray();
        double step = (request.To - request.From) / (count - 1), margin = boarded.Length == 0 ? 0 : boarded.Max(v => 3 * (v.Length + v.PivotCentres));
        var table = new ChartTable(request.Chart, request.From, step, count, margin);
        var reach = new SillReach[boarded.Length];
        Parallel.For(0, boarded.Length, i => reach[i] = Survey(request.Runs[0].Ride, table, boarded[i], side));
        return reach;
    }

    private static SillReach Survey(Centreline ride, ChartTable table, Vehicle vehicle, Side side)
    {
        double[] greatest = new double[table.Count], least = new double[table.Count];
        Array.Fill(greatest, double.NaN);
        Array.Fill(least, double.NaN);
        var sill = vehicle.Sill!;
        Run(ride, table, vehicle, (vehicle.LeadingWheelbase, vehicle.TrailingWheelbase), (sill.FromX, sill.ToX), side, greatest, least);
        if (vehicle.EitherWayRound && !(vehicle.LeadingWheelbase == vehicle.TrailingWheelbase && sill.FromX == -sill.ToX))
        {
            // A vehicle with equal ends was there already.
            Run(ride, table, vehicle, (vehicle.TrailingWheelbase, vehicle.LeadingWheelbase), (-sill.ToX, -sill.FromX), side, greatest, least);
        }

        return new(vehicle, sill.Height, table.From, table.Spacing, greatest, least);
    }

    private static void Run(Centreline ride, ChartTable table, Vehicle vehicle, (double Lead, double Trail) bases, (double From, double To) sill, Side side,
        double[] greatest, double[] least)
    {
        var gear = new RunningGear(ride, vehicle.PivotCentres, bases.Lead, bases.Trail);
        double reach = vehicle.Length + vehicle.PivotCentres, first = ride.Locate(table.AtStation(0).Position).Chainage - reach;
        double last = ride.Locate(table.AtStation(table.Count - 1).Position).Chainage + reach, y = (int)side * vehicle.Sill!.HalfWidth;
        TrackPlace backBefore = default, frontBefore = default;
        int back = table.EntryNear(table.From - (2 * reach)), front = back;
        bool known = false;
        for (double u = first; u <= last; u += PoseStep)
        {
            if (!gear.Place(u, out var pose))
            {
                known = false;
                continue;
            }

            Point2 a = pose.Body.Apply(new(sill.From, y)), b = pose.Body.Apply(new(sill.To, y));
            bool placed = table.Locate(a, ref back, out var backPlace) & table.Locate(b, ref front, out var frontPlace);
            if (placed && known)
            {
                Sweep(table, backBefore, backPlace, (int)side, greatest, least);
                Sweep(table, frontBefore, frontPlace, (int)side, greatest, least);
            }

            if (placed)
            {
                Stand(table, a, b, (backPlace.Chainage, frontPlace.Chainage), (int)side, greatest, least);
            }

            (known, backBefore, frontBefore) = (placed, backPlace, frontPlace);
        }
    }

    private static void Stand(ChartTable table, Point2 a, Point2 b, (double Back, double Front) chainages, int sign, double[] greatest, double[] least)
    {
        double low = (Math.Min(chainages.Back, chainages.Front) - table.From) / table.Spacing,
            high = (Math.Max(chainages.Back, chainages.Front) - table.From) / table.Spacing;
        for (int k = (int)Math.Max(0, Math.Ceiling(low)); k <= Math.Min(table.Count - 1, high); k++)
        {
            var frame = table.AtStation(k);
            if (StationCut.Offset(a - frame.Position, b - frame.Position, frame) is { } offset)
            {
                Note(greatest, least, k, sign * offset);
            }
        }
    }

    // An end of the sill between two poses: stations it passed see it on the straight join.
    private static void Sweep(ChartTable table, TrackPlace before, TrackPlace now, int sign, double[] greatest, double[] least)
    {
        double a = (before.Chainage - table.From) / table.Spacing, b = (now.Chainage - table.From) / table.Spacing;
        for (int k = (int)Math.Max(0, Math.Ceiling(Math.Min(a, b))); k <= Math.Min(table.Count - 1, Math.Max(a, b)) && a != b; k++)
        {
            Note(greatest, least, k, sign * (before.Offset + ((now.Offset - before.Offset) * (k - a) / (b - a))));
        }
    }

    private static void Note(double[] greatest, double[] least, int station, double reach)
    {
        greatest[station] = double.IsNaN(greatest[station]) ? reach : Math.Max(greatest[station], reach);
        least[station] = double.IsNaN(least[station]) ? reach : Math.Min(least[station], reach);
    }
}
