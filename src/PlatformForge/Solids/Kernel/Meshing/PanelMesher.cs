using PlatformForge.Solids.Kernel.Noding;

namespace PlatformForge.Solids.Kernel.Meshing;

/// <summary>Meshes panels of wall. Unrolled, a panel is monotone along its line: a foot and a top between two uprights.</summary>
internal sealed class PanelMesher(PlanFaces faces, NodeLevels levels, LevelCreases creases, WallPanels panels, PolygonStore store, ReliefMesher? reliefs)
{
    /// <summary>Steps of height in a millimetre: fine enough to keep levels apart, coarse enough for exact areas in 64 bits.</summary>
    private const double HeightSteps = 1 << 17;

    private readonly MonotonePolygon polygon = new();
    private readonly GrowingArray<int> top = new(64), ring = new(64);

    /// <summary>Triangles, from one to before another, of panels that run over several edges of the plan: they may enclose something between their feet
    /// and the grid's nodes. A quadrangle over one edge adds nothing.</summary>
    public List<(int From, int End)> Bent { get; } = [];

    /// <summary>Meshes all panels.</summary>
    public void Mesh()
    {
        var strips = panels.Strips;
        for (int s = 0; s < strips.Length; s++)
        {
            if (panels.Begins(s))
            {
                Panel(strips, s);
            }
        }
    }

    /// <summary>Finds the panels that reliefs take, and leaves all others.</summary>
    public void Find()
    {
        var strips = panels.Strips;
        for (int s = 0; s < strips.Length; s++)
        {
            if (panels.Begins(s) && reliefs?.Takes(strips[s].Face) == true)
            {
                Panel(strips, s);
            }
        }
    }

    public void GiveBack()
    {
        polygon.GiveBack();
        top.GiveBack();
        ring.GiveBack();
    }

    private void Panel(ReadOnlySpan<WallStrip> strips, int first)
    {
        ref readonly var strip = ref strips[first];
        bool taken = reliefs?.Takes(strip.Face) == true;
        if (!taken && panels.IsPlain(first))
        {
            Quad(strip.NearLow, strip.FarLow, strip.FarHigh, strip.NearHigh, strip.FacesRight, strip.Paint);
            return;
        }

        ring.Clear();
        top.Clear();
        var (facesRight, paint) = (strip.FacesRight, strip.Paint);
        ring.Add(strip.NearLow);
        for (int level = panels.After(strip.NearLow); level <= strip.NearHigh; level = panels.After(level))
        {
            top.Add(level); // up the near end
        }

        int s = first;
        for (; panels.Next(s) >= 0; s = panels.Next(s))
        {
            AddIfNeeded(ring, strips[s].FarLow);
            AddIfNeeded(top, strips[s].FarHigh);
        }

        ring.Add(strips[s].FarLow);
        for (int level = panels.After(strips[s].FarLow); level <= strips[s].FarHigh; level = panels.After(level))
        {
            ring.Add(level); // up the far end, whose last is the top's end
        }

        for (int i = top.Count - 1; i >= 0; i--)
        {
            ring.Add(top[i]);
        }

        if (taken)
        {
            reliefs!.Add(new(first, s, strip.Face, facesRight, paint, facesRight ? ring.Span.ToArray() : [.. ring.Span.ToArray().Reverse()]));
            return;
        }

        Emit(facesRight, paint);
    }

    private void AddIfNeeded(GrowingArray<int> chain, int level)
    {
        if (creases.Needs(level))
        {
            chain.Add(level);
        }
    }

    /// <summary>
    /// A panel with nothing between its four corners: cut from the far foot to the near top, or from the near foot to the far top where that is the lower one.
    /// </summary>
    private void Quad(int nearLow, int farLow, int farHigh, int nearHigh, bool facesRight, byte paint)
    {
        bool nearTop = levels.Height(nearHigh) <= levels.Height(farHigh);
        if (facesRight)
        {
            store.AddQuad(nearLow, farLow, farHigh, nearHigh, paint, apex: nearTop ? 3 : 0, first: 1);
        }
        else
        {
            store.AddQuad(nearHigh, farHigh, farLow, nearLow, paint, apex: nearTop ? 0 : 3, first: 2);
        }
    }

    private void Emit(bool facesRight, byte paint)
    {
        var corners = ring.Span;
        int start = store.Count, firstTriangle = store.TriangleCount, n = corners.Length;
        if (n < 3)
        {
            return; // merged levels left nothing between its neighbours, which meet one another
        }

        if (n == 4 && levels.NodeOf(corners[0]) == levels.NodeOf(corners[3]) && levels.NodeOf(corners[1]) == levels.NodeOf(corners[2]))
        {
            Quad(corners[0], corners[1], corners[2], corners[3], facesRight, paint);
            return;
        }

        for (int i = 0; i < n; i++)
        {
            store.Add(corners[facesRight ? i : n - 1 - i]);
        }

        store.Close(start);
        Lay(corners);
        polygon.Cut();
        foreach (var (a, b, c) in polygon.Triangles.Span)
        {
            if (facesRight)
            {
                store.AddTriangle(start + a, start + b, start + c, paint);
            }
            else
            {
                store.AddTriangle(start + n - 1 - a, start + n - 1 - c, start + n - 1 - b, paint);
            }
        }

        Bent.Add((firstTriangle, store.TriangleCount));
    }

    /// <summary>Unrolls a panel: along its line, and up.</summary>
    private void Lay(ReadOnlySpan<int> corners)
    {
        int[] u = faces.Plan.U, v = faces.Plan.V;
        int origin = levels.NodeOf(corners[0]), last = -1;
        long along = 0;
        polygon.Clear();
        foreach (int level in corners)
        {
            int node = levels.NodeOf(level);
            if (node != last)
            {
                along = Math.Abs((long)u[node] - u[origin]) + Math.Abs((long)v[node] - v[origin]);
                last = node;
            }

            polygon.Add(along, (long)Math.Round(levels.Height(level) * HeightSteps));
        }
    }
}
