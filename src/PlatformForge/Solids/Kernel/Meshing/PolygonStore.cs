namespace PlatformForge.Solids.Kernel.Meshing;

/// <summary>
/// The solid's surface as flat polygons between levels: corners in loops, counter-clockwise from outside, and the triangles that each
/// polygon was cut into, which have its corners as theirs.
/// </summary>
internal sealed class PolygonStore(int corners)
{
    public GrowingArray<int> Level { get; } = new(corners);

    /// <summary>The corner that follows along a loop, and the one before.</summary>
    public GrowingArray<int> Next { get; } = new(corners);

    public GrowingArray<int> Last { get; } = new(corners);

    /// <summary>Three corners a triangle.</summary>
    public GrowingArray<int> Triangle { get; } = new(6 * corners);

    public GrowingArray<byte> Paint { get; } = new(2 * corners);

    public int Count => Level.Count;

    public void Add(int level)
    {
        int at = Level.Count;
        Level.Add(level);
        Next.Add(at + 1);
        Last.Add(at - 1);
    }

    /// <summary>Closes the corners from one on into a loop.</summary>
    public void Close(int from)
    {
        Next[Count - 1] = from;
        Last[from] = Count - 1;
    }

    public void AddTriangle(int a, int b, int c, byte paint)
    {
        Triangle.Add(a);
        Triangle.Add(b);
        Triangle.Add(c);
        Paint.Add(paint);
    }

    /// <summary>A convex quadrangle, or two triangles that meet at a bend from its first corner to its third.</summary>
    public void AddQuad(int a, int b, int c, int d, byte paint)
    {
        int start = Count;
        Add(a);
        Add(b);
        Add(c);
        Add(d);
        Close(start);
        AddTriangle(start, start + 1, start + 2, paint);
        AddTriangle(start, start + 2, start + 3, paint);
    }

    /// <summary>A convex polygon of any number of corners, none of them straight.</summary>
    public void AddFan(ReadOnlySpan<int> levels, byte paint)
    {
        int start = Count;
        foreach (int level in levels)
        {
            Add(level);
        }

        Close(start);
        for (int i = 1; i + 1 < levels.Length; i++)
        {
            AddTriangle(start, start + i, start + i + 1, paint);
        }
    }

    public void Clear()
    {
        Level.Clear();
        Next.Clear();
        Last.Clear();
        Triangle.Clear();
        Paint.Clear();
    }

    public void GiveBack()
    {
        Level.GiveBack();
        Next.GiveBack();
        Last.GiveBack();
        Triangle.GiveBack();
        Paint.GiveBack();
    }
}
