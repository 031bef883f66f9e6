using PlatformForge.Solids.Kernel.Lending;
using PlatformForge.Solids.Kernel.Noding;

namespace PlatformForge.Solids.Kernel.Meshing.Cutting;

/// <summary>
/// A line sweep over the nodes that adds the diagonals which make every bounded face monotone in the order of the nodes (de Berg
/// et al., Computational Geometry, chapter 3, done for all faces of the graph at once). A side effect worth having: whatever lay
/// loose inside a face, a post hole in a deck, is joined to what surrounds it, so every face has a single border.
/// </summary>
internal sealed class MonotoneSweep
{
    private readonly NodedPlan plan;
    private readonly int[] rightStart, right, leftCount, helper;
    private readonly bool[] helperMerges;
    private readonly GrowingArray<(int From, int To)> diagonals = new(64);
    private int[] status = new int[64];
    private int statusCount;

    private MonotoneSweep(NodedPlan plan)
    {
        this.plan = plan;
        (rightStart, right, leftCount) = RightEdges(plan);
        helper = new int[plan.EdgeCount];
        helperMerges = new bool[plan.EdgeCount];
    }

    /// <summary>The diagonals, or null where the graph turns out not to be planar.</summary>
    public static (int From, int To)[]? Diagonals(NodedPlan plan)
    {
        var sweep = new MonotoneSweep(plan);
        for (int node = 0; node < plan.NodeCount; node++)
        {
            if (!sweep.Visit(node))
            {
                return null;
            }
        }

        return sweep.diagonals.Span.ToArray();
    }

    private static (int[] Start, int[] Onward, int[] Ending) RightEdges(NodedPlan plan)
    {
        int[] start = new int[plan.NodeCount + 2], onward = new int[plan.EdgeCount], ending = new int[plan.NodeCount];
        for (int e = 0; e < plan.EdgeCount; e++)
        {
            start[plan.From[e] + 2]++;
            ending[plan.To[e]]++;
        }

        for (int i = 2; i < start.Length; i++)
        {
            start[i] += start[i - 1];
        }

        for (int e = 0; e < plan.EdgeCount; e++)
        {
            onward[start[plan.From[e] + 1]++] = e;
        }

        for (int node = 0; node < plan.NodeCount; node++)
        {
            for (int i = start[node] + 1; i < start[node + 1]; i++)
            {
                int edge = onward[i], j = i;
                for (; j > start[node] && plan.Turn(node, plan.To[onward[j - 1]], plan.To[edge]) < 0; j--)
                {
                    onward[j] = onward[j - 1];
                }

                onward[j] = edge;
            }
        }

        return (start, onward, ending);
    }

    private bool Visit(int node)
    {
        int left = leftCount[node], first = rightStart[node], count = rightStart[node + 1] - first;
        if (left == 0 && count == 0)
        {
            return true; // a point where nothing ends any more
        }

        int at = CountBelow(node);
        if (!EndsHere(node, at, left))
        {
            return false;
        }

        Join(node, at, left);
        Replace(at, left, first, count);
        for (int i = 0; i < count; i++)
        {
            helper[right[first + i]] = node;
            helperMerges[right[first + i]] = false;
        }

        if (at > 0)
        {
            helper[status[at - 1]] = node;
            helperMerges[status[at - 1]] = count == 0;
        }

        return true;
    }

    private int CountBelow(int node)
    {
        int low = 0, high = statusCount;
        while (low < high)
        {
            int middle = (low + high) >> 1, edge = status[middle];
            if (plan.Turn(plan.From[edge], plan.To[edge], node) > 0)
            {
                low = middle + 1;
            }
            else
            {
                high = middle;
            }
        }

        return low;
    }

    /// <summary>Whether exactly the edges that end at the node lie between what is below and what is above it.</summary>
    private bool EndsHere(int node, int at, int left)
    {
        if (at + left > statusCount)
        {
            return false;
        }

        for (int i = at; i < at + left; i++)
        {
            if (plan.To[status[i]] != node)
            {
                return false;
            }
        }

        int above = at + left;
        return above == statusCount || plan.Turn(plan.From[status[above]], plan.To[status[above]], node) < 0;
    }

    /// <summary>Adds the diagonals that end at the node, one for each gap between edges that needs it.</summary>
    private void Join(int node, int at, int left)
    {
        for (int below = at - 1; below < at + left; below++)
        {
            if (below < 0 || below + 1 >= statusCount)
            {
                continue; // outside of everything
            }

            int edge = status[below];
            if (left == 0 || helperMerges[edge])
            {
                diagonals.Add((helper[edge], node));
            }
        }
    }

    private void Replace(int at, int left, int first, int count)
    {
        int needed = statusCount - left + count;
        if (needed > status.Length)
        {
            Array.Resize(ref status, 2 * needed);
        }

        Array.Copy(status, at + left, status, at + count, statusCount - at - left);
        Array.Copy(right, first, status, at, count);
        statusCount = needed;
    }
}
