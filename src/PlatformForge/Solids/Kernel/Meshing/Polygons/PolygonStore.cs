using PlatformForge.Solids.Kernel.Lending;

namespace PlatformForge.Solids.Kernel.Meshing.Polygons;

/// <summary>
/// The solid's surface as flat polygons between levels: corners in loops, counter-clockwise from outside, and the triangles that each
/// polygon was cut into, which have its corners as theirs.
/// </summary>
internal sealed class PolygonStore(int corners)
{
    private readonly GrowingArray<int> level = new(corners);
    private readonly GrowingArray<PolygonLoop> loops = new(corners / 4);
    private readonly GrowingArray<int> triangle = new(2 * corners);
    private readonly GrowingArray<byte> paint = new(corners);

    /// <summary>Level of each corner.</summary>
    public ReadOnlySpan<int> Levels => level.Span;

    public ReadOnlySpan<PolygonLoop> Loops => loops.Span;

    /// <summary>Three corners a triangle.</summary>
    public ReadOnlySpan<int> Triangles => triangle.Span;

    /// <summary>What each triangle shows.</summary>
    public ReadOnlySpan<byte> Paints => paint.Span;

    public int TriangleCount => paint.Count;

    /// <summary>How many corners there are.</summary>
    public int Count => level.Count;

    /// <summary>Adds corners that follow one another, to be closed into a loop.</summary>
    public void Add(int ofLevel) => level.Add(ofLevel);

    /// <summary>Closes the corners from one on into a loop; told backwards where they came clockwise.</summary>
    public void Close(int from, bool backwards = false) => loops.Add(new(from, Count - from, backwards));

    public void AddTriangle(int a, int b, int c, byte shown)
    {
        var three = triangle.Extend(3);
        (three[0], three[1], three[2]) = (a, b, c);
        paint.Add(shown);
    }

    /// <summary>
    /// A convex quadrangle, or two triangles that meet at a bend, cut from one of its corners (0 to 3); the triangle with the side that is
    /// 1 or 2 onward from there comes first.
    /// </summary>
    public void AddQuad(int a, int b, int c, int d, byte shown, int apex = 0, int first = 1)
    {
        int start = Count, second = 3 - first;
        var four = level.Extend(4);
        (four[3], four[2], four[1], four[0]) = (d, c, b, a);
        loops.Add(new(start, 4, false));
        var six = triangle.Extend(6);
        (six[5], six[4], six[3]) = (start + ((apex + second + 1) & 3), start + ((apex + second) & 3), start + apex);
        (six[2], six[1], six[0]) = (start + ((apex + first + 1) & 3), start + ((apex + first) & 3), start + apex);
        var two = paint.Extend(2);
        (two[1], two[0]) = (shown, shown);
    }

    /// <summary>A convex polygon of any number of corners, none of them straight.</summary>
    public void AddFan(ReadOnlySpan<int> levels, byte shown)
    {
        int start = Count;
        levels.CopyTo(level.Extend(levels.Length));
        Close(start);
        for (int i = 1; i + 1 < levels.Length; i++)
        {
            AddTriangle(start, start + i, start + i + 1, shown);
        }
    }

    /// <summary>The corner that follows another along its loop.</summary>
    public int Onward(int corner) => LoopOf(corner) is var loop && !loop.Backwards ? loop.After(corner) : loop.Before(corner);

    /// <summary>The corner before another along its loop.</summary>
    public int Back(int corner) => LoopOf(corner) is var loop && !loop.Backwards ? loop.Before(corner) : loop.After(corner);

    public void Clear()
    {
        level.Clear();
        loops.Clear();
        triangle.Clear();
        paint.Clear();
    }

    public void GiveBack()
    {
        level.GiveBack();
        loops.GiveBack();
        triangle.GiveBack();
        paint.GiveBack();
    }

    private PolygonLoop LoopOf(int corner)
    {
        int low = 0, high = loops.Count - 1;
        while (low < high)
        {
            int middle = (low + high + 1) >> 1;
            (low, high) = loops[middle].Start <= corner ? (middle, high) : (low, middle - 1);
        }

        return loops[low];
    }
}

/// <summary>Corners of a polygon that follow one another and close, in the order in which they were told or backwards.</summary>
internal readonly record struct PolygonLoop(int Start, int Count, bool Backwards)
{
    public int After(int corner) => corner + 1 == Start + Count ? Start : corner + 1;

    public int Before(int corner) => corner == Start ? Start + Count - 1 : corner - 1;
}
