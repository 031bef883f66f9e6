using System.Text.Json;
using PlatformForge.Geometry;

namespace PlatformForge.Outside.Tests;

/// <summary>
/// How far vehicles reach from a track's middle towards a platform, found by running them along it in small steps: bogies stand with both axles on the middle
/// line, the body on both pivots, each corner is followed from pose to pose and each side cut with the squares to the track. No play. From the design copy,
/// with nothing of the program's.
/// </summary>
internal static class OwnSweep
{
    // mm of run: between two poses a corner is taken to go straight, which misses its bow of Step²/8R, 0.0008 mm on 600 mm.
    private const double Step = 2;

    /// <summary>Farthest and least reach at each chainage of one part, or of the door sill: not a number where it never comes.</summary>
    public sealed record Reach(string Vehicle, string Part, double[] Most, double[] Least);

    /// <summary>All parts of a track's vehicles, and their door sills under the name "sill".</summary>
    public static IReadOnlyList<Reach> Of(JsonElement vehicles, OwnTrack ride, OwnTrack chart, int side, double[] stations)
    {
        var all = new List<Reach>();
        foreach (var v in vehicles.EnumerateArray())
        {
            var shapes = v.GetProperty("parts").EnumerateArray()
                .Select(p => (Name: p.Text("name"), Carrier: p.Text("carrier"), Ring: p.GetProperty("outline").EnumerateArray()
                    .Select(q => new Point2(q[0].GetDouble(), q[1].GetDouble())).ToArray())).ToList();
            if (v.GetProperty("sill") is { ValueKind: JsonValueKind.Object } sill)
            {
                double y = side * sill.Number("half_width");
                shapes.Add(("sill", "body", [new(sill.Number("from_x"), y), new(sill.Number("to_x"), y)]));
            }

            double[] gear = [v.Number("pivot_centres"), v.Number("leading_wheelbase"), v.Number("trailing_wheelbase"), v.Number("leading_pivot_ahead"),
                v.Number("trailing_pivot_ahead")];
            Reach[] reach = [.. shapes.Select(s => new Reach(v.Text("name"), s.Name, Unknown(stations.Length), Unknown(stations.Length)))];
            Run(gear, [.. shapes.Select(s => (s.Carrier, s.Ring))], reach, ride, chart, side, stations);
            if (v.GetProperty("either_way_round").GetBoolean() && !IsSame(gear, shapes))
            {
                // Turned end for end: a sill stays on the platform's side.
                Run([gear[0], gear[2], gear[1], -gear[4], -gear[3]],
                    [.. shapes.Select(s => (Other(s.Carrier), s.Ring.Select(p => new Point2(-p.X, s.Name == "sill" ? p.Y : -p.Y)).ToArray()))], reach, ride,
                    chart, side, stations);
            }

            all.AddRange(reach);
        }

        return all;
    }

    // Turned end for end it is what it was.
    private static bool IsSame(double[] gear, List<(string Name, string Carrier, Point2[] Ring)> shapes) => gear[1] == gear[2] && gear[3] == -gear[4]
        && shapes.All(s => s.Carrier == "body" && s.Ring.All(p => s.Ring.Contains(new(-p.X, s.Name == "sill" ? p.Y : -p.Y))));

    private static string Other(string carrier) => carrier switch { "leading_bogie" => "trailing_bogie", "trailing_bogie" => "leading_bogie", _ => carrier };

    private static double[] Unknown(int count) => [.. Enumerable.Repeat(double.NaN, count)];

    private static void Run(double[] gear, (string Carrier, Point2[] Ring)[] shapes, Reach[] reach, OwnTrack ride, OwnTrack chart, int side, double[] stations)
    {
        var frames = stations.Select(chart.At).ToArray();
        double far = shapes.Max(s => s.Ring.Max(p => Math.Abs(p.X))) + gear[0] + gear[1] + gear[2];
        double from = Math.Max(gear[0] + gear[1] + gear[2] + 1, ride.Locate(frames[0].Place).Chainage - far),
            to = Math.Min(ride.Length - gear[1], ride.Locate(frames[^1].Place).Chainage + far);
        var before = new (double Chainage, double Left)[shapes.Length][];
        for (double u = from; u <= to; u += Step)
        {
            var carriers = Place(ride, gear, u);
            for (int i = 0; i < shapes.Length; i++)
            {
                var (origin, along) = shapes[i].Carrier switch { "leading_bogie" => carriers[1], "trailing_bogie" => carriers[2], _ => carriers[0] };
                Point2[] ring = [.. shapes[i].Ring.Select(p => origin + (along * p.X) + (along.Left * p.Y))];
                var places = new (double Chainage, double Left)[ring.Length];
                for (int k = 0; k < ring.Length; k++)
                {
                    places[k] = before[i] is { } old ? chart.Locate(ring[k], old[k].Chainage) : chart.Locate(ring[k]);
                    if (before[i] is { } last)
                    {
                        Follow(last[k], places[k], side, stations, reach[i]);
                    }
                }

                for (int k = 0; k < (ring.Length == 2 ? 1 : ring.Length); k++)
                {
                    int next = (k + 1) % ring.Length;
                    Cut(ring[k], ring[next], (places[k].Chainage, places[next].Chainage), side, stations, frames, reach[i]);
                }

                before[i] = places;
            }
        }
    }

    // Body, leading bogie, trailing bogie: the middle between the pivots and the direction from the trailing to the leading one.
    private static (Point2 Origin, Point2 Along)[] Place(OwnTrack ride, double[] gear, double u)
    {
        var lead = Bogie(ride, gear[1], gear[3], u + (gear[1] / 2));
        double at = u - gear[0] + (gear[2] / 2);
        var trail = Bogie(ride, gear[2], gear[4], at);
        for (int i = 0; i < 30 && Math.Abs((lead.Origin - trail.Origin).Length - gear[0]) > 1e-10; i++)
        {
            at += (lead.Origin - trail.Origin).Length - gear[0];
            trail = Bogie(ride, gear[2], gear[4], at);
        }

        var join = lead.Origin - trail.Origin;
        return [((lead.Origin + trail.Origin) * 0.5, join * (1 / join.Length)), lead, trail];
    }

    // Its front axle at a chainage.
    private static (Point2 Origin, Point2 Along) Bogie(OwnTrack ride, double wheelbase, double ahead, double front)
    {
        var (place, along) = ride.At(front);
        if (wheelbase == 0)
        {
            return (place + (along * ahead), along);
        }

        double at = front - wheelbase;
        var rear = ride.At(at).Place;
        for (int i = 0; i < 30 && Math.Abs((place - rear).Length - wheelbase) > 1e-11; i++)
        {
            at += (place - rear).Length - wheelbase;
            rear = ride.At(at).Place;
        }

        var way = (place - rear) * (1 / (place - rear).Length);
        return (((place + rear) * 0.5) + (way * ahead), way);
    }

    private static void Follow((double Chainage, double Left) from, (double Chainage, double Left) to, int side, double[] stations, Reach reach)
    {
        double low = Math.Min(from.Chainage, to.Chainage), high = Math.Max(from.Chainage, to.Chainage);
        for (int k = FirstFrom(stations, low); k < stations.Length && stations[k] <= high && high > low; k++)
        {
            Note(reach, k, side * (from.Left + ((to.Left - from.Left) * (stations[k] - from.Chainage) / (to.Chainage - from.Chainage))));
        }
    }

    private static void Cut(Point2 a, Point2 b, (double A, double B) chainages, int side, double[] stations, (Point2 Place, Point2 Along)[] frames, Reach reach)
    {
        double low = Math.Min(chainages.A, chainages.B), high = Math.Max(chainages.A, chainages.B);
        for (int k = FirstFrom(stations, low); k < stations.Length && stations[k] <= high; k++)
        {
            double p = Point2.Dot(a - frames[k].Place, frames[k].Along), q = Point2.Dot(b - frames[k].Place, frames[k].Along);
            if (p != q)
            {
                var at = a + ((b - a) * Math.Clamp(p / (p - q), 0, 1));
                Note(reach, k, side * Point2.Cross(frames[k].Along, at - frames[k].Place));
            }
        }
    }

    private static int FirstFrom(double[] stations, double low) => Array.BinarySearch(stations, low) is var i && i < 0 ? ~i : i;

    private static void Note(Reach reach, int k, double r)
    {
        reach.Most[k] = double.IsNaN(reach.Most[k]) ? r : Math.Max(reach.Most[k], r);
        reach.Least[k] = double.IsNaN(reach.Least[k]) ? r : Math.Min(reach.Least[k], r);
    }
}
