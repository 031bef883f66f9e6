using PlatformForge.Solids.Kernel.Lending;
using PlatformForge.Solids.Kernel.Levels;
using PlatformForge.Solids.Kernel.Noding;

namespace PlatformForge.Solids.Kernel;

/// <summary>
/// Makes sure that along every edge the boundaries of the columns on either side have one order. Where they cross by more than
/// rounding can do, the point of crossing is reported: it must become a node.
/// </summary>
internal sealed class EdgeOrder(BlockTable blocks, PlanFaces faces, FaceColumns columns, NodeLevels levels)
{
    private readonly GrowingArray<(double U, double V)> crossings = new(4);

    /// <summary>Orders all edges; the points of true crossings are left for the plan to be noded anew.</summary>
    public ReadOnlySpan<(double U, double V)> Restore()
    {
        bool settled;
        do
        {
            settled = true;
            for (int edge = 0; edge < faces.Plan.EdgeCount; edge++)
            {
                settled &= Settle(edge);
            }
        }
        while (!settled);
        return crossings.Span;
    }

    private bool Settle(int edge)
    {
        int h = 2 * edge, twin = h + 1;
        var leftColumn = columns.Of(faces.Face[h]);
        var rightColumn = columns.Of(faces.Face[twin]);
        if (leftColumn.IsEmpty || rightColumn.IsEmpty)
        {
            return true;
        }

        ReadOnlySpan<int> leftNear = levels.Of(h), leftFar = levels.Of(faces.Next[h]);
        ReadOnlySpan<int> rightNear = levels.Of(faces.Next[twin]), rightFar = levels.Of(twin);
        for (int i = 0, j = 0; i < leftNear.Length && j < rightNear.Length;)
        {
            int near = leftNear[i] - rightNear[j], far = leftFar[i] - rightFar[j];
            if ((near < 0 && far > 0) || (near > 0 && far < 0))
            {
                Resolve(edge, leftColumn[i].Plane, rightColumn[j].Plane, (leftNear[i], rightNear[j]), (leftFar[i], rightFar[j]));
                return false;
            }

            if (near < 0 || (near == 0 && far <= 0))
            {
                i++;
            }
            else
            {
                j++;
            }
        }

        return true;
    }

    private void Resolve(int edge, int leftPlane, int rightPlane, (int Left, int Right) near, (int Left, int Right) far)
    {
        int a = faces.Plan.From[edge], b = faces.Plan.To[edge];
        double nearGap = levels.Height(near.Left) - levels.Height(near.Right), farGap = levels.Height(far.Left) - levels.Height(far.Right);
        double rounding = KernelLimits.SameLevel + (2 * (blocks.Planes[leftPlane].Slack + blocks.Planes[rightPlane].Slack));
        if (Math.Min(Math.Abs(nearGap), Math.Abs(farGap)) > rounding)
        {
            double part = nearGap / (nearGap - farGap);
            double u = faces.Plan.U[a] + (part * (faces.Plan.U[b] - faces.Plan.U[a])), v = faces.Plan.V[a] + (part * (faces.Plan.V[b] - faces.Plan.V[a]));
            crossings.Add((u, v));
        }

        if (Math.Abs(nearGap) <= Math.Abs(farGap))
        {
            levels.Merge(a, Math.Min(near.Left, near.Right), Math.Max(near.Left, near.Right));
        }
        else
        {
            levels.Merge(b, Math.Min(far.Left, far.Right), Math.Max(far.Left, far.Right));
        }
    }
}
