using PlatformForge.Geometry;

namespace PlatformForge.Masonry.Finishes;

/// <summary>Cuts oblongs of courses by the edges of their wall: by a slope over it, by its foot.</summary>
/// <param name="bends">Bends of the wall, ascending.</param>
/// <param name="least">Pieces lower or shorter are left out, mm.</param>
internal sealed class CourseCut(IEnumerable<double> bends, double least)
{
    /// <summary>Bricks do not end nearer to a bend than this, mm: their sides lean with it. A tenth of a joint at most.</summary>
    public const double OffBends = 0.02;

    // What would be cut less than this, mm, is not cut: a bed may be so much thinner.
    private const double Hair = 1e-3;

    /// <summary>What such an edge may leave of a course, as a share of its height: a brick is split in two at most (common practice, no source). Where less is
    /// left the bed over the course below is as much higher.</summary>
    public const double LeastSplit = 0.5;

    // An edge that rises by less of its length is level or a deck's fall; ramps are steeper.
    private const double Fall = 0.04;

    private readonly double[] bends = [.. bends];
    private readonly List<double> places = [], marks = [];
    private readonly List<Point2> ring = [];

    /// <summary>Adds what is left of an oblong, as outlines counter-clockwise.</summary>
    /// <param name="top">What it stays under.</param>
    /// <param name="foot">What it stays over.</param>
    /// <param name="box">The oblong, mm.</param>
    /// <param name="into">Takes the outlines.</param>
    public void Cut(EdgeLine top, EdgeLine foot, in CourseBox box, List<Point2[]> into)
    {
        bool whole = top.Lowest >= box.High - Hair && foot.Highest <= box.Low + Hair;
        whole = whole || (top.Range(box.From, box.To).Low >= box.High - Hair && foot.Range(box.From, box.To).High <= box.Low + Hair);
        if (whole)
        {
            into.Add([new(box.From, box.Low), new(box.To, box.Low), new(box.To, box.High), new(box.From, box.High)]);
            return;
        }

        var room = new Room(top, foot, box.Low, box.High);
        if (box.IsCourse && Slivers(room, box) is { Count: > 0 } slivers)
        {
            double from = box.From;
            foreach (var (a, b) in box.IsBand ? slivers.Append((box.To, box.To)) : [])
            {
                Cut(room, box with { From = from, To = a }, into);
                from = b;
            }

            return;
        }

        Cut(room, box, into);
    }

    // Adds what its edges leave of an oblong, however little.
    private void Cut(in Room room, in CourseBox box, List<Point2[]> into)
    {
        if (box.To - box.From < least)
        {
            return;
        }

        Mark(room, box);
        for (int i = 0; i + 1 < marks.Count; i++)
        {
            int end = i;
            while (end + 1 < marks.Count && room.Between((marks[end] + marks[end + 1]) / 2) > least)
            {
                end++;
            }

            if (end > i)
            {
                if (Outline(room, i, end))
                {
                    into.Add([.. ring]);
                }

                i = end - 1;
            }
        }
    }

    // Where a level edge over it, or the fall of a deck, leaves less than half of a piece of a course: no ramp excuses a sliver there. What the back of
    // an arch takes from below is none of this: beside its ring a piece is laid as far as it goes.
    private List<(double From, double To)> Slivers(in Room room, in CourseBox box)
    {
        var found = new List<(double From, double To)>();
        places.Clear();
        room.Top.Within(box.From, box.To, places);
        places.Sort();
        places.Add(box.To);
        double a = box.From;
        foreach (double b in places)
        {
            bool isLevel = b - a > least && Math.Abs(room.Top.At(b) - room.Top.At(a)) < Math.Max(Hair, Fall * (b - a));
            if (isLevel && room.High((a + b) / 2) - box.Low < LeastSplit * (box.High - box.Low))
            {
                found.Add((a, b));
            }

            a = b;
        }

        return found;
    }

    // Between the places at which an edge bends or crosses a side of the oblong, both edges of what is left are straight.
    private void Mark(in Room room, in CourseBox box)
    {
        places.Clear();
        room.Top.Within(box.From, box.To, places);
        room.Foot.Within(box.From, box.To, places);
        places.Sort();
        places.Add(box.To);
        marks.Clear();
        marks.Add(box.From);
        double a = box.From;
        foreach (double b in places)
        {
            if (b == a)
            {
                continue; // a point of both edges
            }

            double last = marks[^1];
            double one = Crossing(a, b, room.Top.At(a) - box.High, room.Top.At(b) - box.High);
            double two = Crossing(a, b, room.Foot.At(a) - box.Low, room.Foot.At(b) - box.Low);
            (one, two) = two < one ? (two, one) : (one, two);
            Mark(room, one, last);
            Mark(room, two, last);
            Mark(room, b, last);
            a = b;
        }
    }

    // Marks a place, and one before it at which what is left becomes too low; what is no number lies beyond nothing.
    private void Mark(in Room room, double x, double beyond)
    {
        if (!(x > beyond))
        {
            return;
        }

        double last = marks[^1], cut = Crossing(last, x, room.Between(last) - least, room.Between(x) - least);
        if (cut > last && cut < x)
        {
            marks.Add(cut);
        }

        marks.Add(x);
    }

    // Lays the ring of what is left between two marks; false where that is too short.
    private bool Outline(in Room room, int first, int last)
    {
        double from = Clear(marks[first], 1), to = Clear(marks[last], -1);
        if (to - from < least)
        {
            return false;
        }

        places.Clear();
        places.Add(from);
        for (int i = first + 1; i < last; i++)
        {
            if (marks[i] > from && marks[i] < to && !IsBesideBend(marks[i]))
            {
                places.Add(marks[i]);
            }
        }

        places.Add(to);
        ring.Clear();
        for (int i = 0; i < places.Count; i++)
        {
            ring.Add(new(places[i], room.Low(places[i])));
        }

        for (int i = places.Count - 1; i >= 0; i--)
        {
            ring.Add(new(places[i], room.High(places[i])));
        }

        Straighten();
        return true;
    }

    /// <summary>A place a hair off all bends to one side: also where two of them lie that near to one another.</summary>
    /// <param name="at">The place, mm.</param>
    /// <param name="inward">1 to move on, -1 to move back.</param>
    public double Clear(double at, int inward)
    {
        int first = Beyond(at - (inward * OffBends));
        for (int i = inward > 0 ? first : first - 1; i >= 0 && i < bends.Length && (bends[i] - at) * inward < OffBends; i += inward)
        {
            at = Math.Abs(at - bends[i]) < OffBends - Units.Tolerances.Rounding ? bends[i] + (inward * OffBends) : at;
        }

        return at;
    }

    // A crossing right beside a bend, which is a corner itself where the edge turns there.
    private bool IsBesideBend(double x)
    {
        for (int i = Beyond(x - OffBends); i < bends.Length && bends[i] < x + OffBends; i++)
        {
            if (bends[i] != x && Math.Abs(bends[i] - x) < OffBends)
            {
                return true;
            }
        }

        return false;
    }

    // How many bends lie before a place or at it.
    private int Beyond(double at)
    {
        int low = 0, high = bends.Length;
        while (low < high)
        {
            int middle = (low + high) >> 1;
            (low, high) = bends[middle] <= at ? (middle + 1, high) : (low, middle);
        }

        return low;
    }

    private static double Crossing(double a, double b, double atA, double atB) => (atA < 0) == (atB < 0) || atA == atB ? double.NaN
        : a + ((b - a) * atA / (atA - atB));

    // Takes corners on one line with their neighbours out of the ring, one after another: of two at one place one stays.
    private void Straighten()
    {
        for (int i = 0, sound = 0; sound < ring.Count && ring.Count > 3;)
        {
            int n = ring.Count;
            if (OnLine(ring[(i + n - 1) % n], ring[i % n], ring[(i + 1) % n]))
            {
                ring.RemoveAt(i % n);
                (i, sound) = (i % n, 0);
            }
            else
            {
                (i, sound) = ((i + 1) % n, sound + 1);
            }
        }
    }

    private static bool OnLine(Point2 a, Point2 b, Point2 c)
    {
        double length = (c - a).Length;
        return length <= Hair || Math.Abs(Point2.Cross(b - a, c - a)) <= Hair * length;
    }

    /// <summary>What an oblong and the edges of its wall leave over a place.</summary>
    private readonly record struct Room(EdgeLine Top, EdgeLine Foot, double Lowest, double Highest)
    {
        public double High(double x) => Math.Min(Highest, Top.At(x));

        public double Low(double x) => Math.Max(Lowest, Foot.At(x));

        public double Between(double x) => High(x) - Low(x);
    }
}

/// <summary>An oblong of a course, mm along the wall and of height.</summary>
internal readonly record struct CourseBox(double From, double To, double Low, double High)
{
    /// <summary>Whether it is a piece of one course of several, and not as high as its wall.</summary>
    public bool IsCourse { get; init; }

    /// <summary>Whether it is a whole course without joints, which a level edge cuts off where it lies too low; of others it takes the piece.</summary>
    public bool IsBand { get; init; }
}
