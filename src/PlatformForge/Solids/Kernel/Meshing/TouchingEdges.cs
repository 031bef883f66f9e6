using PlatformForge.Geometry;
using PlatformForge.Solids.Kernel.Lending;
using PlatformForge.Solids.Kernel.Meshing.Polygons;
using PlatformForge.Units;

namespace PlatformForge.Solids.Kernel.Meshing;

/// <summary>
/// Edges along which more than two polygons meet: the solid touches itself there. Its polygons are paired by angle, which is done at the lower of
/// the edge's two levels and holds for both.
/// </summary>
internal sealed class TouchingEdges(PolygonStore store, GrowingArray<Point3> places)
{
    private readonly Dictionary<int, int> twin = [];
    private Dictionary<(int From, int To), int>? sides;

    /// <summary>Pairs of opposite half-edges of triangles along such edges.</summary>
    public List<(int Forward, int Backward)> Tangles { get; } = [];

    /// <summary>Pairs the sides between a level and higher ones to which more than one leads, and makes sure that every side has an opposite.</summary>
    public void Pair(int level, ReadOnlySpan<LevelCorner> group)
    {
        var ends = new SortedDictionary<int, List<int>>(); // sides by the level of their other end
        foreach (var corner in group)
        {
            Enter(ends, corner.Onward, corner.Number);
            Enter(ends, corner.Back, store.Back(corner.Number));
        }

        foreach (var (end, meeting) in ends.Select(e => (e.Key, e.Value)).OrderBy(e => e.Value.Min()))
        {
            bool opposite = meeting.Count == 2 && store.Levels[meeting[0]] != store.Levels[meeting[1]];
            if (!opposite && end > level)
            {
                PairMany(level, end, meeting);
            }
        }
    }

    /// <summary>The corner of a level's at which its fan goes on.</summary>
    public int Next(ReadOnlySpan<LevelCorner> group, int corner)
    {
        bool many = twin.TryGetValue(store.Back(group[corner].Number), out int side);
        for (int i = 0; i < group.Length; i++)
        {
            if (many ? group[i].Number == side : group[i].Onward == group[corner].Back)
            {
                return i;
            }
        }

        var at = places[store.Levels[group[corner].Number]];
        throw new BrokenInvariantException($"Solids: a side at {at} mm has no opposite (law 1: every directed edge has one opposite).");
    }

    private static void Enter(SortedDictionary<int, List<int>> ends, int end, int side)
    {
        if (!ends.TryGetValue(end, out var meeting))
        {
            ends.Add(end, meeting = []);
        }

        meeting.Add(side);
    }

    /// <summary>
    /// Around an edge where more than two polygons meet, material lies between a polygon that has the edge backwards and the
    /// next counter-clockwise one that has it forwards: these two are paired, which parts the solids that touch.
    /// </summary>
    private void PairMany(int low, int high, List<int> along)
    {
        Point3 foot = places[low], axis = places[high] - foot, square = Square(axis), third = Point3.Cross(axis, square);
        double length = axis.Length * axis.Length;
        var meeting = along.Select(side => (Angle: Angle(places[store.Levels[Opposite(side)]] - foot), Side: side)).Order().ToList();
        int meetingCount = meeting.Count, balance = meeting.Sum(m => store.Levels[m.Side] == low ? 1 : -1);
        if (balance != 0)
        {
            throw new BrokenInvariantException(
                $"Solids: the {meetingCount} polygons along the edge from {foot} to {places[high]} mm do not close (law 1: "
                    + "every directed edge has one opposite).");
        }

        // Like brackets: a backward one opens material, a forward one closes it.
        var open = new Stack<int>();
        for (int i = 0; i < 2 * meetingCount; i++)
        {
            int c = meeting[i % meetingCount].Side;
            if (twin.ContainsKey(c))
            {
                continue;
            }

            if (store.Levels[c] != low)
            {
                if (i < meetingCount)
                {
                    open.Push(c);
                }
            }
            else if (open.TryPop(out int opener))
            {
                (twin[c], twin[opener]) = (opener, c);
                Tangles.Add((SideOf(c), SideOf(opener)));
            }
        }

        double Angle(Point3 p) => Math.Atan2(Point3.Dot(p, third) * axis.Length, Point3.Dot(p, square) * length);
    }

    /// <summary>The third corner of the triangle that has a side.</summary>
    private int Opposite(int side) => store.Triangles[SideOf(side) is var at && at % 3 == 0 ? at + 2 : at - 1];

    /// <summary>Where a side begins in the list of triangles.</summary>
    private int SideOf(int side)
    {
        if (sides is null)
        {
            var triangles = store.Triangles;
            sides = new(triangles.Length);
            for (int at = 0; at < triangles.Length; at++)
            {
                sides[(triangles[at], triangles[at % 3 == 2 ? at - 2 : at + 1])] = at;
            }
        }

        return sides[(side, store.Onward(side))];
    }

    /// <summary>A direction square to an axis, of the axis' length.</summary>
    private static Point3 Square(Point3 axis)
    {
        var away = Math.Abs(axis.X) < Math.Abs(axis.Z) || Math.Abs(axis.Y) < Math.Abs(axis.Z)
            ? (Math.Abs(axis.X) < Math.Abs(axis.Y) ? new Point3(1, 0, 0) : new Point3(0, 1, 0))
            : new Point3(0, 0, 1);
        var square = Point3.Cross(axis, away);
        return square * (axis.Length / square.Length);
    }
}
