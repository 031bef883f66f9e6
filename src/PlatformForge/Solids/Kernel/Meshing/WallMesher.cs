using PlatformForge.Solids.Kernel.Noding;

namespace PlatformForge.Solids.Kernel.Meshing;

/// <summary>
/// Walls: where material on one side of an edge faces air on the other. A wall's two ends run through every level in use at its
/// nodes, so neighbours share all their corners.
/// </summary>
internal sealed class WallMesher(PlanFaces faces, FaceColumns columns, NodeLevels levels, GrowingArray<LevelTriangle> mesh)
{
    private readonly GrowingArray<WallStrip> strips = new(2 * faces.EdgeCount);

    public void Mesh()
    {
        for (int edge = 0; edge < faces.Plan.EdgeCount; edge++)
        {
            FindStrips(2 * edge);
        }

        var used = new bool[levels.Count];
        foreach (ref readonly var t in mesh.Span)
        {
            used[t.A] = used[t.B] = used[t.C] = true;
        }

        foreach (ref readonly var s in strips.Span)
        {
            used[s.NearLow] = used[s.NearHigh] = used[s.FarLow] = used[s.FarHigh] = true;
        }

        foreach (ref readonly var s in strips.Span)
        {
            Fill(s, used);
        }

        strips.GiveBack();
    }

    /// <summary>Climbs both columns at once and notes each stretch in which just one side is material.</summary>
    private void FindStrips(int h)
    {
        int twin = h + 1;
        var left = columns.Of(faces.Face[h]);
        var right = columns.Of(faces.Face[twin]);
        if ((left.IsEmpty && right.IsEmpty) || left.SequenceEqual(right))
        {
            return;
        }

        ReadOnlySpan<int> leftNear = levels.Of(h), leftFar = levels.Of(faces.Next[h]);
        ReadOnlySpan<int> rightNear = levels.Of(faces.Next[twin]), rightFar = levels.Of(twin);
        byte onLeft = 0, onRight = 0;
        int near = 0, far = 0;
        for (int i = 0, j = 0; i < left.Length || j < right.Length;)
        {
            bool fromLeft = j == right.Length
                || (i < left.Length && (leftNear[i] < rightNear[j] || (leftNear[i] == rightNear[j] && leftFar[i] <= rightFar[j])));
            var (nextNear, nextFar) = fromLeft ? (leftNear[i], leftFar[i]) : (rightNear[j], rightFar[j]);
            if ((onLeft == 0) != (onRight == 0) && (near != nextNear || far != nextFar))
            {
                Note(h, near, nextNear, far, nextFar, onLeft, onRight);
            }

            (near, far) = (nextNear, nextFar);
            if (fromLeft)
            {
                onLeft = left[i++].Above;
            }
            else
            {
                onRight = right[j++].Above;
            }
        }
    }

    private void Note(int h, int near, int nextNear, int far, int nextFar, byte onLeft, byte onRight)
    {
        bool faceRight = onLeft != 0;
        byte paint = (byte)((faceRight ? onLeft : onRight) - 1);
        if (strips.Count > 0)
        {
            ref var last = ref strips[strips.Count - 1];
            if (last.HalfEdge == h && last.NearHigh == near && last.FarHigh == far && last.FacesRight == faceRight && last.Paint == paint)
            {
                last = last with { NearHigh = nextNear, FarHigh = nextFar };
                return;
            }
        }

        strips.Add(new(h, near, nextNear, far, nextFar, faceRight, paint));
    }

    private void Fill(in WallStrip strip, bool[] used)
    {
        int near = strip.NearLow, far = strip.FarLow;
        int nextNear = After(near, strip.NearHigh, used), nextFar = After(far, strip.FarHigh, used);
        while (nextNear >= 0 || nextFar >= 0)
        {
            bool climbNear = nextFar < 0 || (nextNear >= 0 && levels.Height(nextNear) <= levels.Height(nextFar));
            int third = climbNear ? nextNear : nextFar;
            mesh.Add(strip.FacesRight ? new(near, far, third, strip.Paint) : new(far, near, third, strip.Paint));
            if (climbNear)
            {
                near = nextNear;
                nextNear = After(near, strip.NearHigh, used);
            }
            else
            {
                far = nextFar;
                nextFar = After(far, strip.FarHigh, used);
            }
        }
    }

    private static int After(int level, int high, bool[] used)
    {
        if (level >= high)
        {
            return -1;
        }

        do
        {
            level++;
        }
        while (!used[level]);
        return level;
    }

    private readonly record struct WallStrip(int HalfEdge, int NearLow, int NearHigh, int FarLow, int FarHigh, bool FacesRight, byte Paint);
}
