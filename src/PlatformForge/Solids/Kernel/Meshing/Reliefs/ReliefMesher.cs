using PlatformForge.Geometry;
using PlatformForge.Solids.Kernel.Lending;
using PlatformForge.Solids.Kernel.Levels;
using PlatformForge.Solids.Kernel.Meshing.Polygons;
using PlatformForge.Solids.Kernel.Noding;
using PlatformForge.Solids.Reliefs;
using PlatformForge.Units;

namespace PlatformForge.Solids.Kernel.Meshing.Reliefs;

/// <summary>
/// Puts reliefs in the place of named wall faces' plain panels. A relief has the panel's border, vertex for vertex, so it closes with what is
/// around it; what it stands out or is sunk is counted in closed form.
/// </summary>
internal sealed class ReliefMesher(BlockTable blocks, NodedPlan plan, NodeLevels levels, IReadOnlyDictionary<string, IWallRelief> reliefs)
{
    // Sine of the turn from which a bend towards whoever stands before a wall is an inner corner.
    private const double InnerCorner = 0.5;

    private readonly List<FlatPanel> flats = [];
    private readonly List<ReliefOutline> through = [];

    /// <summary>What reliefs add to plain walls, mm³.</summary>
    public double Volume { get; private set; }

    /// <summary>Area in mm² of the panels taken.</summary>
    public double Area { get; private set; }

    public bool Takes(int face) => Of(face) is not null;

    /// <summary>Whether two faces are one round a bend: the same, or both taken by one relief.</summary>
    public bool AreOne(int a, int b) => a == b || (Of(a) is { } relief && ReferenceEquals(relief, Of(b)));

    public void Add(FlatPanel panel) => flats.Add(panel);

    /// <summary>The plain panels, for their volume.</summary>
    public void MeshPlain(PolygonStore store)
    {
        var sweep = new RegionSweep();
        foreach (var flat in flats)
        {
            var piece = Piece(flat, 0);
            sweep.Clear();
            for (int i = 0; i < flat.Corners.Length; i++)
            {
                sweep.Add(flat.Corners[i], piece.Along(i), piece.Up(i));
            }

            sweep.Close();
            if (!sweep.Cut(store, isBottom: false, flat.Paint))
            {
                throw new BrokenInvariantException("Solids: a wall panel's border crosses itself.");
            }
        }

        sweep.GiveBack();
    }

    /// <summary>Meshes all reliefs; places of new vertices follow those of the levels.</summary>
    public void Mesh(WallPanels panels, PolygonStore store, GrowingArray<Point3> places)
    {
        foreach (var (relief, pieces, panel) in Told(panels))
        {
            Volume += Meshed(pieces, panel, [.. relief.Fields(panel)], relief.Ground, store, places);
            for (int i = 0; i < pieces.Count; i++)
            {
                Area += AreaOf(pieces[i]);
            }
        }

        foreach (var flat in flats.Where(f => Of(f.Face)!.IsBehind))
        {
            Open(flat, store, places);
        }
    }

    /// <summary>The panels that reliefs are told, without meshing them.</summary>
    public List<(IWallRelief Relief, WallPanel Panel)> Panels(WallPanels panels) => [.. Told(panels).Select(t => (t.Relief, t.Panel))];

    // What each relief is told, in the order in which panels are found.
    private IEnumerable<(IWallRelief Relief, PanelPieces Pieces, WallPanel Panel)> Told(WallPanels panels)
    {
        var flatOf = new Dictionary<int, int>();
        for (int i = 0; i < flats.Count; i++)
        {
            flatOf[flats[i].First] = flatOf[flats[i].Last] = i;
        }

        var done = flats.Select(f => Of(f.Face)!.IsBehind).ToArray();
        for (int i = 0; i < flats.Count; i++)
        {
            if (!done[i])
            {
                var (chain, isRing) = Chain(i, panels, flatOf, done);
                var (pieces, panel) = Unrolled(chain, isRing);
                yield return (Of(chain[0].Face)!, new(pieces, isRing), panel);
            }
        }
    }

    // What fields come out in a wall behind others leave of it.
    private void Open(FlatPanel flat, PolygonStore store, GrowingArray<Point3> places)
    {
        string name = blocks.FaceNames[flat.Face - 1];
        var piece = Piece(flat, 0);
        var panel = new WallPanel([(name, 0, piece.End)], Border([piece]), [0, piece.End], false) { Plan = [(piece.Left, piece.Right)] };
        var run = new ReliefRun(new([piece], false), panel, store, places, null);
        run.Open([.. through.Where(f => f.Behind!.Left == piece.Left && f.Behind.Right == piece.Right)]);
        run.Mesh();
        Area += AreaOf(piece);
    }

    private static double AreaOf(ReliefPiece piece) => (piece.End - piece.Start) * (piece.Corners.Max(c => c.Place.Y) - piece.Corners.Min(c => c.Place.Y));

    // The wall that a field comes out in, flat and in one piece.
    private ReliefPiece? Behind(ReliefField field)
    {
        if (field.Behind is not { } name)
        {
            return null;
        }

        var found = flats.Where(f => blocks.FaceNames[f.Face - 1] == name).ToArray();
        return found.Length == 1 && Of(found[0].Face)!.IsBehind ? Piece(found[0], 0)
            : throw new ArgumentException($"A relief's field comes out in '{name}', which is {found.Length} walls and not one: {ReliefOutline.Told(field)}.");
    }

    /// <summary>All flat panels that go on from one another round bends, from left to right, and whether they go all the way round.</summary>
    private (List<FlatPanel> Chain, bool IsRing) Chain(int start, WallPanels panels, Dictionary<int, int> flatOf, bool[] done)
    {
        int first = start;
        while (Beyond(flats[first].LeftEnd) is >= 0 and var left && left != start)
        {
            first = left;
        }

        bool isRing = Beyond(flats[first].LeftEnd) >= 0;
        var chain = new List<FlatPanel>();
        for (int at = isRing ? start : first; at >= 0 && !done[at]; at = Beyond(flats[at].RightEnd))
        {
            done[at] = true;
            chain.Add(flats[at]);
        }

        return (isRing ? Opened(chain) : chain, isRing);

        int Beyond((int Strip, bool Far) end) => panels.Beyond(end.Strip, end.Far) is >= 0 and var strip ? flatOf.GetValueOrDefault(strip, -1) : -1;
    }

    /// <summary>A ring from where the first of its faces begins.</summary>
    private static List<FlatPanel> Opened(List<FlatPanel> ring)
    {
        int at = Enumerable.Range(0, ring.Count).Where(i => ring[i].Face != ring[(i + ring.Count - 1) % ring.Count].Face).OrderBy(i => ring[i].Face)
            .FirstOrDefault();
        return [.. ring.Skip(at), .. ring.Take(at)];
    }

    private (List<ReliefPiece> Pieces, WallPanel Panel) Unrolled(List<FlatPanel> chain, bool isRing)
    {
        var pieces = new List<ReliefPiece>();
        var stretches = new List<(string Face, double From, double To)>();
        foreach (var flat in chain)
        {
            var piece = Piece(flat, pieces.Count == 0 ? 0 : pieces[^1].End);
            pieces.Add(piece);
            string name = blocks.FaceNames[flat.Face - 1];
            if (stretches is [.., var last] && last.Face == name)
            {
                stretches[^1] = last with { To = piece.End };
            }
            else
            {
                stretches.Add((name, piece.Start, piece.End));
            }
        }

        var panel = new WallPanel(stretches, Border(pieces), [0, .. pieces.Select(p => p.End)], isRing)
        {
            Plan = [.. pieces.Select(p => (p.Left, p.Right))],
            Inside = [.. Enumerable.Range(0, isRing ? pieces.Count : pieces.Count - 1)
                .Where(i => Point2.Cross(pieces[i].Ahead, pieces[(i + 1) % pieces.Count].Ahead) < -InnerCorner).Select(i => pieces[i].End)],
        };
        return (pieces, panel);
    }

    // Courses by their rows; what is not laid in rows, or not soundly, by the sweep alone, which tells what is wrong.
    private double Meshed(PanelPieces pieces, WallPanel panel, ReliefField[] fields, byte? ground, PolygonStore store, GrowingArray<Point3> places)
    {
        int known = places.Count;
        var run = new ReliefRun(pieces, panel, store, places, ground) { Behind = Behind };
        var layout = new CourseLayout(pieces, places);
        if (layout.Take(fields, run))
        {
            var courses = new CourseMesher(pieces, layout, store, ground);
            run.Mesh(layout.Swept);
            courses.Mesh();
            through.AddRange(run.Through);
            return courses.Volume + run.Volume;
        }

        places.Shrink(known);
        run = new(pieces, panel, store, places, ground) { Behind = Behind };
        foreach (var field in fields)
        {
            run.Enter(field);
        }

        run.Mesh();
        through.AddRange(run.Through);
        return run.Volume;
    }

    private IWallRelief? Of(int face) => face > 0 ? reliefs.GetValueOrDefault(blocks.FaceNames[face - 1]) : null;

    private ReliefPiece Piece(FlatPanel flat, double start)
    {
        var places = flat.Corners.Select(level => (Level: level, Plan: blocks.Frame.ToPlan(plan.U[levels.NodeOf(level)], plan.V[levels.NodeOf(level)])))
            .ToArray();

        // The border begins with its foot at one end: the left one, or for a wall seen from the other side, whose corners came the other way round, the last
        // corner's.
        Point2 left = places[flat.FacesRight ? 0 : ^1].Plan, right = places.MaxBy(p => (p.Plan - left).Length).Plan;
        double length = (right - left).Length;
        if (!flat.FacesRight)
        {
            (left, right) = (right, left);
        }

        var ahead = (right - left) * (1 / length);
        return new(left, right, start, Of(flat.Face)?.Face ?? flat.Paint,
            [.. places.Select(p => new ReliefCorner(p.Level, new(start + Point2.Dot(p.Plan - left, ahead), levels.Height(p.Level))))]);
    }

    /// <summary>The whole border counter-clockwise: feet from left to right, the right end, tops from right to left, the left end.</summary>
    private static List<Point2> Border(List<ReliefPiece> pieces)
    {
        var feet = new List<Point2>();
        var tops = new List<Point2>();
        for (int i = 0; i < pieces.Count; i++)
        {
            var piece = pieces[i];
            var foot = piece.Foot.Select(c => c.Place);
            var rest = piece.AboveFoot.Select(c => c.Place).ToList();
            feet.AddRange(i == 0 ? foot : foot.Skip(1));

            // Between pieces, what stands over the right end's foot is the next one's to tell, and the left end's upright is not border.
            var top = i + 1 < pieces.Count ? rest.Skip(1) : rest;
            tops.InsertRange(0, top);
        }

        return [.. feet, .. tops];
    }
}
