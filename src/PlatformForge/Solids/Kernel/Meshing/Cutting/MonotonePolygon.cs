using PlatformForge.Solids.Kernel.Lending;

namespace PlatformForge.Solids.Kernel.Meshing.Cutting;

/// <summary>
/// Cuts a polygon that is monotone in the order of its corners (by X, then Y) into triangles. Corners that are in line but for rounding are
/// kept together until a corner across sees them all, so that no sliver is cut from a straight side.
/// </summary>
internal sealed class MonotonePolygon
{
    private long[] x = new long[64], y = new long[64];
    private int[] order = new int[64], waiting = new int[64];
    private bool[] isUpper = new bool[64];

    public int Count { get; private set; }

    /// <summary>Triangles as corner numbers, counter-clockwise.</summary>
    public GrowingArray<(int A, int B, int C)> Triangles { get; } = new(64);

    public void Clear() => Count = 0;

    /// <summary>Appends a corner, counter-clockwise.</summary>
    public void Add(long atX, long atY)
    {
        if (Count == x.Length)
        {
            Array.Resize(ref x, 2 * Count);
            Array.Resize(ref y, 2 * Count);
            Array.Resize(ref order, 2 * Count);
            Array.Resize(ref waiting, 2 * Count);
            Array.Resize(ref isUpper, 2 * Count);
        }

        (x[Count], y[Count]) = (atX, atY);
        Count++;
    }

    /// <summary>False where the polygon is not monotone, or so flat that rounding turns triangles over.</summary>
    public bool Cut()
    {
        Triangles.Clear();
        return Count == 3 ? Keep(0, 1, 2) : Count == 4 ? CutFour() : Merge() && (Sweep(straight: 1) || Sweep(straight: 0));
    }

    public void GiveBack() => Triangles.GiveBack();

    private bool Keep(int a, int b, int c)
    {
        Triangles.Add((a, b, c));
        return Turn(a, b, c) > 0;
    }

    /// <summary>Of the two ways the one whose flatter triangle is the larger.</summary>
    private bool CutFour()
    {
        long first = Math.Min(Turn(0, 1, 2), Turn(0, 2, 3)), second = Math.Min(Turn(1, 2, 3), Turn(1, 3, 0));
        if (first >= second)
        {
            Triangles.Add((0, 1, 2));
            Triangles.Add((0, 2, 3));
        }
        else
        {
            Triangles.Add((1, 2, 3));
            Triangles.Add((1, 3, 0));
        }

        return Math.Max(first, second) > 0;
    }

    private long Turn(int a, int b, int c) => ((x[b] - x[a]) * (y[c] - y[a])) - ((y[b] - y[a]) * (x[c] - x[a]));

    private bool Before(int a, int b) => x[a] < x[b] || (x[a] == x[b] && y[a] < y[b]);

    /// <summary>Brings the lower and the upper chain into one order, and finds out whether they are chains.</summary>
    private bool Merge()
    {
        int first = 0, n = Count;
        for (int i = 1; i < n; i++)
        {
            first = Before(i, first) ? i : first;
        }

        int low = Onward(first), high = Back(first);
        (order[0], isUpper[0]) = (first, false);
        int lastLow = first, lastHigh = first;
        for (int i = 1; i < n; i++)
        {
            bool upper = i < n - 1 && Before(high, low);
            int corner = upper ? high : low, last = upper ? lastHigh : lastLow;
            if (!Before(last, corner))
            {
                return false;
            }

            (order[i], isUpper[i]) = (corner, upper);
            (low, lastLow, high, lastHigh) = upper ? (low, lastLow, Back(high), corner) : (Onward(low), corner, high, lastHigh);
        }

        return Before(lastHigh, order[n - 1]);
    }

    private int Onward(int corner) => corner + 1 == Count ? 0 : corner + 1;

    private int Back(int corner) => corner == 0 ? Count - 1 : corner - 1;

    private bool Sweep(long straight)
    {
        Triangles.Clear();
        bool sound = true;
        int depth = 2;
        (waiting[0], waiting[1]) = (0, 1);
        for (int i = 2; i < Count; i++)
        {
            if (isUpper[i] != isUpper[waiting[depth - 1]] || i == Count - 1)
            {
                bool fromUpper = isUpper[waiting[depth - 1]];
                for (int k = 0; k + 1 < depth; k++)
                {
                    sound &= Put(waiting[k], waiting[k + 1], i, fromUpper);
                }

                (waiting[0], waiting[1]) = (waiting[depth - 1], i);
                depth = 2;
                continue;
            }

            while (depth > 1 && Sees(waiting[depth - 2], waiting[depth - 1], i, straight))
            {
                sound &= Put(waiting[depth - 2], waiting[depth - 1], i, isUpper[i]);
                depth--;
            }

            waiting[depth++] = i;
        }

        return sound;
    }

    private bool Sees(int a, int b, int c, long straight)
    {
        int i = order[a], j = order[b], k = order[c];
        long turn = isUpper[c] ? -Turn(i, j, k) : Turn(i, j, k);
        return turn > straight * (x[k] - x[i] + Math.Abs(y[k] - y[i]));
    }

    private bool Put(int a, int b, int c, bool clockwise) =>
        clockwise ? Keep(order[a], order[c], order[b]) : Keep(order[a], order[b], order[c]);
}
