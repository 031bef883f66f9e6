using PlatformForge.Solids.Kernel.Lending;
using PlatformForge.Solids.Kernel.Noding;

namespace PlatformForge.Solids.Kernel.Meshing.Cutting;

/// <summary>
/// Cuts a face whose border is monotone in the order of nodes into triangles with the face's own nodes as corners, all of them,
/// also those in line with their neighbours. No triangle has zero area: a node could only be in line with two others of the chain
/// that waits for it if it lay on an edge, which noding has ruled out.
/// </summary>
internal sealed class MonotoneTriangulator(PlanFaces faces)
{
    private int[] border = new int[64], order = new int[64], waiting = new int[64];
    private bool[] isUpper = new bool[64];

    /// <summary>Appends the triangles as the half-edges that start at their corners, counter-clockwise.</summary>
    public void Cut(int face, GrowingArray<(int A, int B, int C)> triangles)
    {
        int size = faces.FaceSize[face], first = faces.FaceStart[face];
        if (size == 3)
        {
            int second = faces.Next[first];
            triangles.Add((first, second, faces.Next[second]));
            return;
        }

        Merge(first, size);
        int depth = 2;
        (waiting[0], waiting[1]) = (0, 1);
        for (int i = 2; i < size; i++)
        {
            bool other = isUpper[i] != isUpper[waiting[depth - 1]];
            if (other || i == size - 1)
            {
                // The chain that waited lies across: a fan. (The last node ends both chains.)
                bool fromUpper = isUpper[waiting[depth - 1]];
                for (int k = 0; k + 1 < depth; k++)
                {
                    Add(triangles, waiting[k], waiting[k + 1], i, fromUpper);
                }

                (waiting[0], waiting[1]) = (waiting[depth - 1], i);
                depth = 2;
            }
            else
            {
                while (depth > 1 && Sees(waiting[depth - 2], waiting[depth - 1], i))
                {
                    Add(triangles, waiting[depth - 2], waiting[depth - 1], i, isUpper[i]);
                    depth--;
                }

                waiting[depth++] = i;
            }
        }
    }

    /// <summary>Brings the lower and the upper chain into one order.</summary>
    private void Merge(int first, int size)
    {
        if (order.Length < size)
        {
            border = new int[2 * size];
            order = new int[2 * size];
            waiting = new int[2 * size];
            isUpper = new bool[2 * size];
        }

        for (int i = 0, h = first; i < size; i++, h = faces.Next[h])
        {
            border[i] = h;
        }

        int low = 1, high = size - 1;
        (order[0], isUpper[0]) = (border[0], false);
        for (int i = 1; i < size; i++)
        {
            bool upper = low > high || (low < high && faces.Origin[border[high]] < faces.Origin[border[low]]);
            (order[i], isUpper[i]) = upper ? (border[high--], true) : (border[low++], false);
        }
    }

    private bool Sees(int a, int b, int c)
    {
        long turn = faces.Plan.Turn(faces.Origin[order[a]], faces.Origin[order[b]], faces.Origin[order[c]]);
        return isUpper[c] ? turn < 0 : turn > 0;
    }

    private void Add(GrowingArray<(int A, int B, int C)> triangles, int a, int b, int c, bool clockwise) =>
        triangles.Add(clockwise ? (order[a], order[c], order[b]) : (order[a], order[b], order[c]));
}
