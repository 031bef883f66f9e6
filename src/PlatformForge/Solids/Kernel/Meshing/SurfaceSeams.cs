using PlatformForge.Solids.Kernel.Lending;
using PlatformForge.Solids.Kernel.Levels;
using PlatformForge.Solids.Kernel.Meshing.Polygons;
using PlatformForge.Solids.Kernel.Noding;

namespace PlatformForge.Solids.Kernel.Meshing;

/// <summary>
/// Climbs the columns on both sides of every edge of the plan at once. Where a surface runs on over the edge its two halves are linked;
/// where just one side is material there is a strip of wall; everything else that meets there makes a crease.
/// </summary>
internal sealed class SurfaceSeams
{
    private readonly PlanFaces faces;
    private readonly FaceColumns columns;
    private readonly NodeLevels levels;
    private readonly int[] link, parent;
    private readonly LevelCreases creases;

    /// <param name="faces">The plan.</param>
    /// <param name="columns">Its columns.</param>
    /// <param name="levels">Its levels.</param>
    /// <param name="creases">Takes the creases.</param>
    public SurfaceSeams(PlanFaces faces, FaceColumns columns, NodeLevels levels, LevelCreases creases)
    {
        (this.faces, this.columns, this.levels, this.creases) = (faces, columns, levels, creases);
        link = Lent<int>.Rent(levels.Corner.Length);
        parent = Lent<int>.Rent(columns.Total);
        link.AsSpan(0, levels.Corner.Length).Fill(-1);
        for (int i = 0; i < columns.Total; i++)
        {
            parent[i] = i;
        }

        Strips = new(2 * faces.EdgeCount);
        for (int edge = 0; edge < faces.EdgeCount; edge++)
        {
            Visit(edge);
        }
    }

    /// <summary>Strips of wall, edge by edge.</summary>
    public GrowingArray<WallStrip> Strips { get; }

    /// <summary>
    /// For a corner (half-edge and boundary of its face's column, as numbered by the levels) the corner that starts the same edge's other
    /// half in the same surface, or −1 where the surface ends at the edge.
    /// </summary>
    public int Across(int corner) => link[corner];

    /// <summary>The surface that a column's boundary is part of, named by one of its boundaries.</summary>
    public int Surface(int boundary)
    {
        while (parent[boundary] != boundary)
        {
            boundary = parent[boundary] = parent[parent[boundary]];
        }

        return boundary;
    }

    public void GiveBack()
    {
        Lent<int>.GiveBack(link);
        Lent<int>.GiveBack(parent);
        Strips.GiveBack();
    }

    private void Visit(int edge)
    {
        int h = 2 * edge, twin = h + 1;
        var left = columns.Of(faces.Face[h]);
        var right = columns.Of(faces.Face[twin]);
        if (left.IsEmpty && right.IsEmpty)
        {
            return;
        }

        if (ColumnBoundary.AreSame(left, right))
        {
            for (int k = 0; k < left.Length; k++)
            {
                if (left[k].IsSurface)
                {
                    Join(h, k, k);
                }
            }

            return;
        }

        new Climb(this, edge, left, right).Run();
    }

    private void Join(int h, int k, int m)
    {
        int here = levels.CornerStart[h] + k, there = levels.CornerStart[h + 1] + m;
        (link[here], link[there]) = (there, here);
        int a = Surface(columns.Start[faces.Face[h]] + k), b = Surface(columns.Start[faces.Face[h + 1]] + m);
        parent[Math.Max(a, b)] = Math.Min(a, b); // so that the lowest names it in the end
    }

    /// <summary>One edge, from below upwards, a pair of levels at a time.</summary>
    private ref struct Climb(SurfaceSeams seams, int edge, ReadOnlySpan<ColumnBoundary> left, ReadOnlySpan<ColumnBoundary> right)
    {
        private readonly ReadOnlySpan<ColumnBoundary> left = left, right = right;
        private readonly ReadOnlySpan<int> leftNear = seams.levels.Of(2 * edge), leftFar = seams.levels.Of(seams.faces.Next[2 * edge]);
        private readonly ReadOnlySpan<int> rightNear = seams.levels.Of(seams.faces.Next[(2 * edge) + 1]), rightFar = seams.levels.Of((2 * edge) + 1);
        private byte onLeft, onRight;
        private bool standing, facesRight;
        private byte paint;
        private int lowNear, lowFar;

        public void Run()
        {
            // Locals: the loop below is the innermost of the kernel.
            ReadOnlySpan<ColumnBoundary> ls = left, rs = right;
            ReadOnlySpan<int> lNear = leftNear, lFar = leftFar, rNear = rightNear, rFar = rightFar;
            int i = 0, j = 0;
            while (i < ls.Length || j < rs.Length)
            {
                bool fromLeft = j == rs.Length
                    || (i < ls.Length && (lNear[i] < rNear[j] || (lNear[i] == rNear[j] && lFar[i] <= rFar[j])));
                var (near, far) = fromLeft ? (lNear[i], lFar[i]) : (rNear[j], rFar[j]);
                int onL = 0, onR = 0, k = -1, m = -1;
                for (; i < ls.Length && lNear[i] == near && lFar[i] == far; i++)
                {
                    (onL, k) = ls[i].IsSurface ? (onL + 1, i) : (onL, k);
                    onLeft = ls[i].Above;
                }

                for (; j < rs.Length && rNear[j] == near && rFar[j] == far; j++)
                {
                    (onR, m) = rs[j].IsSurface ? (onR + 1, j) : (onR, m);
                    onRight = rs[j].Above;
                }

                if (onL == 1 && onR == 1 && ls[k].RunsOnAs(rs[m]))
                {
                    seams.Join(2 * edge, k, m);
                }
                else if (Pass(near, far) || onL + onR > 0)
                {
                    int line = seams.faces.Plan.Line[edge] + 1;
                    seams.creases.Leave(near, line);
                    seams.creases.Leave(far, -line);
                }
            }
        }

        /// <summary>Ends the strip below and begins the one above, unless they are one; tells whether anything ended or began.</summary>
        private bool Pass(int near, int far)
        {
            bool wall = (onLeft == 0) != (onRight == 0), onRightSide = onLeft != 0;
            byte shown = (byte)((onRightSide ? onLeft : onRight) - 1);
            if (standing && wall && onRightSide == facesRight && shown == paint)
            {
                return false;
            }

            bool ended = standing;
            if (standing)
            {
                var plan = seams.faces.Plan;
                var name = facesRight ? plan.OnRight[edge] : plan.OnLeft[edge];
                seams.Strips.Add(new(edge, lowNear, near, lowFar, far, facesRight, paint, name.Paint == paint ? name.Face : 0));
            }

            (standing, facesRight, paint, lowNear, lowFar) = (wall, onRightSide, shown, near, far);
            return ended || wall;
        }
    }
}
