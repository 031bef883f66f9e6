using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Track;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Platforms.Islands;

/// <summary>
/// Lays the body between two faces on lines across that join their edges. Every vertex of either coping front has its line across and every boundary is
/// straight in
/// the layout between them, so that carrying moves nothing: both coping fronts are the very polylines that were proved clear of their own tracks.
/// </summary>
/// <remarks>The other boundaries of both faces meet those lines on their own polylines; what their corners lose is the versine of a facet over the little by
/// which a line
/// across leans there: below 0.001 mm at a wall, some hundredths at the inner edge of a coping.</remarks>
internal static class BodyCarrier
{
    /// <summary>
    /// Two stations nearer than this along the chart, mm, are one: the corner so left out is off the chord by no more than this, stretched to the edge,
    /// times the turn there:
    /// some ten-thousandths of a mm.
    /// </summary>
    public const double OnePlace = 0.01;

    // The chainage of the first face at which a line across meets a corner of the second is found in so many steps.
    private const int Rounds = 60;

    /// <summary>The body between two faces, told along the edge of the first; null where the second track bends back on itself, seen from the first, and
    /// where that is.</summary>
    public static (BodyPlan? Body, double Turned) Carry(FacePlan near, FacePlan far, CrossLadder ladder)
    {
        bool reversed = Reversed(near, far);
        var rungs = Rungs(near, far, ladder, reversed);
        for (int i = 0; i + 1 < rungs.Length; i++)
        {
            if (reversed ? rungs[i + 1].Second >= rungs[i].Second : rungs[i + 1].Second <= rungs[i].Second)
            {
                return (null, rungs[i].First);
            }
        }

        return (Body(near, far, rungs, reversed), 0);
    }

    /// <summary>Whether the second face's chainage falls while the first one's rises.</summary>
    public static bool Reversed(FacePlan near, FacePlan far)
    {
        var along = near.ToLayout(near.Stations[^1], 0) - near.ToLayout(near.Stations[0], 0);
        return Point2.Dot(along, far.ToLayout(far.Stations[^1], 0) - far.ToLayout(far.Stations[0], 0)) < 0;
    }

    private static BodyPlan Body(FacePlan near, FacePlan far, (double First, double Second)[] rungs, bool reversed)
    {
        double[] stations = Array.ConvertAll(rungs, r => r.First), front = Array.ConvertAll(stations, near.CopingFront.At), back = new double[rungs.Length];
        var lines = new CrossLine[rungs.Length];
        for (int i = 0; i < rungs.Length; i++)
        {
            Point2 a = OnEdge(near, rungs[i].First), b = OnEdge(far, rungs[i].Second), outward = near.Side.Outward(near.Chart.At(rungs[i].First).Tangent);
            double way = Point2.Dot(b - a, outward) < 0 ? -1 : 1, width = (b - a).Length;
            var away = width > 0 ? (b - a) * (way / width) : outward;
            back[i] = front[i] + (way * width);
            lines[i] = new(a - (away * front[i]), away);
        }

        PlanLine Own(PlanLine line) => new(stations, Met(lines, Corners(near, line), stations));
        PlanLine Other(PlanLine line) => new(stations, Met(lines, reversed ? ConvexRing.Reversed(Corners(far, line)) : Corners(far, line), stations));
        return new()
        {
            Stations = stations,
            Across = new(stations, Array.ConvertAll(lines, l => l.Origin), Array.ConvertAll(lines, l => l.Away), Array.ConvertAll(rungs, r => r.Second)),
            CopingFront = new(stations, front),
            CopingBack = Own(near.CopingBack),
            WallFace = Own(near.WallFace),
            WallBack = Own(near.WallBack),
            BackWallFace = Other(far.WallBack),
            FarWallFace = Other(far.WallFace),
            FarCopingBack = Other(far.CopingBack),
            Back = new(stations, back),
            Lines =
            [
                .. near.Lines.Select(line => line with { Near = Own(line.Near), Far = Own(line.Far) }),
                .. far.Lines.Select(other => other with { From = near.Profile.StartHead, To = near.Profile.EndHead, Near = Other(other.Far),
                    Far = Other(other.Near) }),
            ],
        };
    }

    // Where lines across run: through every corner of either edge, told by both chainages, rising along the first.
    private static (double First, double Second)[] Rungs(FacePlan near, FacePlan far, CrossLadder ladder, bool reversed)
    {
        double first = near.Stations[0], last = near.Stations[^1];
        var all = new List<(double First, double Second)>(near.Stations.Length + far.Stations.Length);
        double? guess = null;
        foreach (double s in near.Stations)
        {
            guess = Across(s, guess);
            all.Add((s, s == first ? far.Stations[reversed ? ^1 : 0] : s == last ? far.Stations[reversed ? 0 : ^1] : guess.Value));
        }

        for (int i = 1; i < far.Stations.Length - 1; i++)
        {
            if (Met(far.Stations[i]) is var s && s > first + OnePlace && s < last - OnePlace && near.Stations.All(n => Math.Abs(n - s) > OnePlace))
            {
                all.Add((s, far.Stations[i]));
            }
        }

        return [.. all.OrderBy(r => r.First)];

        double Across(double s, double? near) =>
            ladder.Across(s, near) ?? throw new BrokenInvariantException(Invariant($"Platforms: nothing lies across from chainage {s} of an island."));

        // Lines across move on along both tracks nearly alike, so that each step leaves a small share of what was off.
        double Met(double second)
        {
            double s = ladder.Swapped.Across(second) ?? (first + last) / 2, way = reversed ? -1 : 1, at = second;
            for (int round = 0; round < Rounds; round++)
            {
                at = Across(s, at);
                double step = (second - at) * way;
                s += step;
                if (Math.Abs(step) < Tolerances.Rounding / 10)
                {
                    break;
                }
            }

            return s;
        }
    }

    // The place on an edge as it is drawn: on the chord between two of its corners.
    private static Point2 OnEdge(FacePlan face, double chainage)
    {
        int found = Array.BinarySearch(face.Stations, chainage), i = Math.Clamp(found >= 0 ? found : ~found - 1, 0, face.Stations.Length - 2);
        Point2 Corner(int k) => face.ToLayout(face.Stations[k], face.CopingFront.Reach[k]);
        double share = (chainage - face.Stations[i]) / (face.Stations[i + 1] - face.Stations[i]);
        return share == 0 ? Corner(i) : share == 1 ? Corner(i + 1) : Corner(i) + ((Corner(i + 1) - Corner(i)) * share);
    }

    private static Point2[] Corners(FacePlan face, PlanLine line) => [.. line.Stations.Select((s, i) => face.ToLayout(s, line.Reach[i]))];

    // Reach at which each line across meets a polyline; beyond its ends, its first or last chord drawn on.
    internal static double[] Met(CrossLine[] across, Point2[] corners, double[] stations)
    {
        var met = new double[across.Length];
        for (int i = 0, chord = 0; i < met.Length; i++)
        {
            // The next corner lies beyond the line across as soon as it is to the side to which the chainage rises.
            double Ahead(Point2 p) => across[i].Beside(p) * Math.Sign(Point2.Cross(across[i].Away, corners[^1] - corners[0]));
            while (chord + 2 < corners.Length && Ahead(corners[chord + 1]) < 0)
            {
                chord++;
            }

            double a = across[i].Beside(corners[chord]), b = across[i].Beside(corners[chord + 1]);
            if (a == b)
            {
                throw new BrokenInvariantException(Invariant($"Platforms: a boundary runs along the line across at chainage {stations[i]}."));
            }

            met[i] = across[i].Reach(corners[chord] + ((corners[chord + 1] - corners[chord]) * (a / (a - b))));
        }

        return met;
    }
}
