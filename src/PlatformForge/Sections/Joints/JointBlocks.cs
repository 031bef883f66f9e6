using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Sections.Forms;
using PlatformForge.Solids;
using PlatformForge.Solids.Bodies;
using PlatformForge.Solids.Bodies.Layers;
using PlatformForge.Solids.Bodies.Trestles;
using PlatformForge.Solids.Bodies.Walls;

namespace PlatformForge.Sections.Joints;

/// <summary>What a joint brings to one section's end: the wall that closes it, a boss round each bore, the bores.</summary>
internal sealed class JointBlocks
{
    private readonly FacetedPlan chart;
    private readonly TopSurface top;
    private readonly JointSpec spec;
    private readonly double leastWall;
    private readonly List<(Point2[] Ring, HeightPlane Top)> bosses = [];
    private readonly List<(PlanLine Near, PlanLine Far)> collars = [];
    private readonly List<ColumnBlock> pockets = [];
    private readonly List<Point2[]> pocketOutlines = [];
    private readonly Point2 inward;
    private readonly double face;

    // On a trestle the cap of the bent beside the cut closes the section, and bosses hang under the deck.
    private readonly bool isHung;
    private readonly HeightPlane bossFoot;

    /// <param name="chart">The plan by its facets.</param>
    /// <param name="place">The cut.</param>
    /// <param name="spec">The joint.</param>
    /// <param name="leastWall">Least material round a bore, mm.</param>
    /// <param name="atStart">True where the section begins at the cut, false where it ends there.</param>
    /// <param name="dowels">False leaves the end plain, as at a joint in the baseboard.</param>
    public JointBlocks(FacetedPlan chart, JointPlace place, JointSpec spec, double leastWall, bool atStart, bool dowels)
    {
        (this.chart, this.spec, this.leastWall) = (chart, spec, leastWall);
        top = new(chart);
        isHung = chart.Plan.Trestle?.Stretch.Holds(place.Chainage + (atStart ? spec.EndTrim : -spec.EndTrim)) == true;
        bossFoot = isHung ? new(place.Height - (spec.BoreDiameter / 2) - spec.MouthChamfer - leastWall) : Layer.Baseboard;
        (From, To) = atStart ? (place.Chainage + spec.EndTrim, place.Chainage + spec.EndTrim + spec.EndWall)
            : (place.Chainage - spec.EndTrim - spec.EndWall, place.Chainage - spec.EndTrim);
        (inward, face) = (place.Forward * (atStart ? 1 : -1), atStart ? From : To);
        if (!dowels || spec.Kind == JointKind.None)
        {
            return;
        }

        if (spec.Kind == JointKind.Plate)
        {
            foreach (var middle in new[] { place.Round, place.Slotted })
            {
                var mouth = Mouth(middle);
                pockets.Add(PlateBlocks.Cut(mouth, inward, spec));
                pocketOutlines.Add(PlateBlocks.Ring(mouth, inward, 0, spec.BoreDepth, spec.PocketWidth / 2));
                AddBoss(place, mouth, (spec.PocketWidth / 2) + leastWall);
            }

            return;
        }

        Bores = [Bore(place, place.Round, 0), Bore(place, place.Slotted, spec.SlotPlay)];
        foreach (var (bore, share) in Bores.Zip([JointPlace.RoundShare, JointPlace.SlottedShare]))
        {
            double half = (bore.Diameter / 2) + (bore.Slot / 2) + leastWall;
            AddBoss(place, new(bore.Mouth.X, bore.Mouth.Y), half);
            if (isHung)
            {
                // Where no wall closes the section a collar stands round the mouth.
                var middle = chart.Plan.WallBack.Shifted(place.Clear * share);
                collars.Add((middle.Shifted(-half - spec.MouthChamfer), middle.Shifted(half + spec.MouthChamfer)));
            }
        }
    }

    /// <summary>Chainages between which the end wall stands, mm.</summary>
    public double From { get; }

    /// <inheritdoc cref="From"/>
    public double To { get; }

    public IReadOnlyList<Bore> Bores { get; } = [];

    /// <summary>Outlines of its pockets for plates, layout frame, mm.</summary>
    public IReadOnlyList<Point2[]> Pockets => pocketOutlines;

    /// <summary>Volume of its bores and their mouths, mm³.</summary>
    public double BoreVolume => Bores.Sum(b => BoreBlocks.Volume(b, spec.MouthChamfer)) + (pockets.Count * PlateBlocks.Volume(spec));

    /// <summary>How far behind the end face its bosses reach, mm; the end wall's thickness where there are none.</summary>
    public double Depth => bosses.Count > 0 ? Math.Max(spec.EndWall, spec.BoreDepth + leastWall) : spec.EndWall;

    /// <summary>End wall and bosses, reaching half into the deck.</summary>
    public IEnumerable<ColumnBlock> Added()
    {
        var blocks = new List<ColumnBlock>();
        var (near, far) = chart.Plan.Body.EndWalls;
        if (!isHung)
        {
            WallBlocks.Fill(chart, top, near, far, From, To, blocks);
            BankBlocks.Web(chart, top, From, To, blocks);
        }

        double half = chart.Plan.Spec.Deck.Thickness / 2;
        blocks.AddRange(Collars(half));
        return blocks.Concat(bosses.Select(b => Layer.Added(b.Ring, bossFoot, b.Top.Raised(-half), Shown)));
    }

    public IEnumerable<ColumnBlock> Removed() => Bores.SelectMany(b => BoreBlocks.Cut(b, spec.MouthChamfer)).Concat(pockets);

    /// <summary>What relieves the end face where it lies on the bed.</summary>
    /// <param name="deck">The piece may lie deck down.</param>
    /// <param name="foot">The piece may stand upright.</param>
    public IEnumerable<ColumnBlock> Relief(bool deck, bool foot) => JointRelief.Cut(chart, face, inward, spec.FaceRelief, deck, foot);

    /// <summary>
    /// The hollow that end wall and bosses fill, as blocks of their own: what they are under the deck, less the walls and ribs that stood there.
    /// </summary>
    /// <param name="standing">Blocks that the section has without joints.</param>
    public IEnumerable<ColumnBlock> Filling(BodyBlocks standing)
    {
        double deck = chart.Plan.Spec.Deck.Thickness;
        var (near, far) = chart.Plan.Body.EndWalls;
        foreach (var piece in isHung ? [] : top.Cover(near, far, From, To))
        {
            yield return Layer.Added(piece.Ring, Layer.Baseboard, piece.Top.Raised(-deck), Paint.Wall);
        }

        var web = new List<ColumnBlock>();
        BankBlocks.Web(chart, top, From, To, web);
        foreach (var block in isHung ? [] : web)
        {
            yield return block;
        }

        foreach (var collar in Collars(deck))
        {
            yield return collar;
        }

        foreach (var boss in bosses)
        {
            yield return Layer.Added(boss.Ring, bossFoot, boss.Top.Raised(-deck), Shown);
        }

        foreach (var block in standing.Added)
        {
            yield return block with { Action = BlockAction.Remove };
        }
    }

    private IEnumerable<ColumnBlock> Collars(double under) =>
        collars.SelectMany(c => top.Cover(c.Near, c.Far, From, To)).Select(p => Layer.Added(p.Ring, bossFoot, p.Top.Raised(-under), Shown));

    // What it shows: on a trestle what that is built of, elsewhere walls.
    private Paint Shown => isHung ? TrestleBlocks.PaintOf(chart.Plan.Spec.Trestle!) : Paint.Wall;

    // Where a line from a cut into the piece meets its end face: the trim is taken along the track, so askew to that a bore begins nearer to the cut.
    private Point2 Mouth(Point2 middle)
    {
        var (origin, across) = chart.CrossLine(face);
        return middle + (inward * (Point2.Cross(origin - middle, across) / Point2.Cross(inward, across)));
    }

    private Bore Bore(JointPlace place, Point2 middle, double slot)
    {
        var mouth = Mouth(middle);
        return new(place.Chainage, new(mouth.X, mouth.Y, place.Height), new(inward.X, inward.Y, 0), spec.BoreDiameter, spec.BoreDepth, slot);
    }

    private void AddBoss(JointPlace place, Point2 mouth, double half)
    {
        double inside = spec.EndWall / 2, end = spec.BoreDepth + leastWall;
        if (end <= spec.EndWall)
        {
            return; // the end wall alone is thick enough
        }

        double middle = place.Chainage + (((inside + end) / 2) * Math.Sign(Point2.Dot(inward, place.Forward)));
        bosses.Add((PlateBlocks.Ring(mouth, inward, inside, end, half), top.Along(Math.Clamp(middle, chart.Stations[0], chart.Stations[^1]))));
    }
}
