using PlatformForge.Solids.Kernel.Lending;
using PlatformForge.Solids.Kernel.Levels;
using PlatformForge.Solids.Kernel.Meshing.Cutting;
using PlatformForge.Solids.Kernel.Meshing.Polygons;
using PlatformForge.Solids.Kernel.Meshing.Reliefs;
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

        int last = GoRound(strips, first);
        var (facesRight, paint) = (strip.FacesRight, strip.Paint);
        if (taken)
        {
            reliefs!.Add(new(first, last, strip.Face, facesRight, paint, facesRight ? ring.Span.ToArray() : [.. ring.Span.ToArray().Reverse()]));
            return;
        }

        Emit(facesRight, paint);
    }

    // Puts a panel's border into the ring, from the near foot along its foot; gives the panel's last strip.
    private int GoRound(ReadOnlySpan<WallStrip> strips, int first)
    {
        ref readonly var strip = ref strips[first];
        ring.Clear();
        top.Clear();
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

        return s;
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
        if (n > 4 && CutBetweenEnds(corners, facesRight, paint))
        {
            return;
        }

        Lay(corners);
        polygon.Cut();
        foreach (var (a, b, c) in polygon.Triangles.Span)
        {
            AddTriangle(n, a, b, c, facesRight, paint);
        }

        Bent.Add((firstTriangle, store.TriangleCount));
    }

    /// <summary>
    /// Cuts a panel over one edge, with corners at its two ends alone, as the sweep would: from the far foot to each stretch of the near end, then from the
    /// near top to each stretch of the far end. False, with nothing cut, where it has other corners or stretches too small to be told apart.
    /// </summary>
    private bool CutBetweenEnds(ReadOnlySpan<int> corners, bool facesRight, byte paint)
    {
        // The foot of the near end comes first, then the far end upwards, then the near end downwards.
        int near = levels.NodeOf(corners[0]), far = levels.NodeOf(corners[1]), nearTop = 1;
        while (nearTop < corners.Length && levels.NodeOf(corners[nearTop]) == far)
        {
            nearTop++;
        }

        if (!AreApart(corners, nearTop, near, far))
        {
            return false;
        }

        for (int from = 0, to = corners.Length - 1; to >= nearTop; from = to--)
        {
            AddTriangle(corners.Length, from, 1, to, facesRight, paint);
        }

        for (int i = 1; i + 1 < nearTop; i++)
        {
            AddTriangle(corners.Length, nearTop, i, i + 1, facesRight, paint);
        }

        return true;
    }

    /// <summary>Whether a panel's corners lie at its two ends, each over the one before it by as much as the sweep asks for.</summary>
    private bool AreApart(ReadOnlySpan<int> corners, int nearTop, int near, int far)
    {
        long below = Step(corners[0]);
        for (int i = corners.Length - 1; i >= nearTop; i--)
        {
            long here = Step(corners[i]);
            if (levels.NodeOf(corners[i]) != near || here <= below)
            {
                return false;
            }

            below = here;
        }

        long nearHighest = below, along = Along(near, far);
        below = Step(corners[1]);
        for (int i = 2; i < nearTop; i++)
        {
            long here = Step(corners[i]);
            if (here <= below || along * (here - below) <= along + Math.Abs(here - nearHighest))
            {
                return false;
            }

            below = here;
        }

        return nearTop < corners.Length;
    }

    /// <summary>A triangle of a panel's corners, which are the last that were stored.</summary>
    private void AddTriangle(int corners, int a, int b, int c, bool facesRight, byte paint)
    {
        int start = store.Count - corners;
        if (facesRight)
        {
            store.AddTriangle(start + a, start + b, start + c, paint);
        }
        else
        {
            int last = store.Count - 1;
            store.AddTriangle(last - a, last - c, last - b, paint);
        }
    }

    private long Step(int level) => (long)Math.Round(levels.Height(level) * HeightSteps);

    private long Along(int from, int to) => Math.Abs((long)faces.Plan.U[to] - faces.Plan.U[from]) + Math.Abs((long)faces.Plan.V[to] - faces.Plan.V[from]);

    /// <summary>Unrolls a panel: along its line, and up.</summary>
    private void Lay(ReadOnlySpan<int> corners)
    {
        int origin = levels.NodeOf(corners[0]), last = -1;
        long along = 0;
        polygon.Clear();
        foreach (int level in corners)
        {
            int node = levels.NodeOf(level);
            if (node != last)
            {
                along = Along(origin, node);
                last = node;
            }

            polygon.Add(along, Step(level));
        }
    }
}
