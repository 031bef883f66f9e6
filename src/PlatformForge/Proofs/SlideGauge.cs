using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Sections.Forms;
using PlatformForge.Solids;
using static System.FormattableString;

namespace PlatformForge.Proofs;

/// <summary>
/// A gauge that rides on both rails at one chainage and shows where the coping and the wall's foot belong there. It is drawn as it lies on the bed: x away from
/// the track's
/// middle, y above rail top, z along the track, so that its edges are as true as the printer's lines and nothing hangs free.
/// </summary>
internal sealed class SlideGauge(GaugePlace place, ProofSpec spec, PrinterSpec printer, double gauge, double railHead)
{
    /// <summary>Thickness of the blade and length of the shoes along the track, mm.</summary>
    public const double Blade = 3, Shoe = 12;

    // Widths and heights in mm: of what reaches over the coping, of a tongue, of the least finger, of the chamfer at the foot of faces that measure.
    private const double Arm = 8, ArmDepth = 5, Tongue = 3, Finger = 4, Relief = 0.3;

    // How deep tongues reach below rail top: the flange of a wheel to the usual model standards is 0.06 of the gauge (16.5 mm: 1.0; from memory), at least
    // this, mm.
    private const double FlangeShare = 0.06, LeastTongue = 0.6;

    // Height of the shoes, and what is kept free round lettering, mm.
    private const double ShoeHeight = 5, Clear = 0.8;

    // Kept under the shoes' level between rails and coping, beyond the rail heads, over the baseboard and beside sleepers, mm.
    private const double Relieved = 1, Beyond = 1.5, OverBoard = 0.5, BesideSleepers = 0.5;

    // Along the third axis the blade stands about its place, and the shoes reach on.
    private const double Back = -Blade / 2;

    /// <summary>Width over its tongues, mm.</summary>
    public double Between => Tongues.Near - Tongues.Far;

    /// <summary>From the coordinates that it is drawn in to the layout.</summary>
    public RigidTransform ToLayout => RigidTransform.Shift(0, 0, Back).Then(place.ToLayout);

    private (double Near, double Far) Tongues
    {
        get
        {
            var (near, far) = place.RailFaces(gauge, Back, Back + Shoe);
            return (near - spec.Play, far + spec.Play);
        }
    }

    // The wall that the finger meets: the foot of what stands before it within the gauge's length, or the wall between.
    private PlanLine Wall(PlatformPlan plan)
    {
        double? foot = plan.Fittings.SelectMany(r => r.Places)
            .Where(p => !p.IsFar && p.FootBack is not null && p.From <= place.Chainage - Back && p.To >= place.Chainage + Back).Min(p => p.FootBack);
        return plan.WallFace.Shifted(foot ?? plan.PanelDepthAt(place.Chainage));
    }

    /// <summary>Its blocks, and the figures that it shows; where it shows no wall, the room in mm that a finger would have had.</summary>
    public (IReadOnlyList<ColumnBlock> Blocks, IReadOnlyList<ProofFigure> Figures, double? NoFinger, IReadOnlyList<string> Engraved) Made(string mark,
        string name)
    {
        var plan = place.Plan;
        double rail = plan.Site.RailTop, top = place.CopingTop, under = top - plan.Spec.Coping.Thickness;
        var wallFoot = Wall(plan);
        double coping = place.At(plan.CopingFront), wall = place.At(wallFoot);

        // The least air is the one that is said: on a ramp or beside an edge that slants, at one side of the blade.
        double nose = place.Over(plan.CopingFront, Back, -Back).Least - spec.Air, arm = place.Highest(Back, -Back, Arm) + spec.Air;
        double toeTip = place.Over(wallFoot, Back, -Back).Least - spec.Air;
        var (near, far) = Tongues;
        double depth = Math.Max(LeastTongue, FlangeShare * gauge), outer = (gauge / 2) + railHead + Beyond, edge = Math.Min(outer, nose);
        double wide = coping + Arm + outer - (2 * Clear);
        string[] figures = [Invariant($"H{top:0.00}"), Invariant($"O{coping:0.00}"), Invariant($"W{wall:0.00}")], title = Title(mark, name, wide);
        if (Lettering.Room(figures, printer).X > nose + outer - (2 * Clear))
        {
            // A narrow gauge of a small scale: the figures stand over the arm, where it is wider.
            (figures, title) = ([], [.. title, .. figures.SelectMany(f => Lettering.Wrapped(f, wide, printer))]);
        }

        double written = ShoeHeight + Clear + (figures.Length > 0 ? Lettering.Room(figures, printer).Y + Clear : 0);
        double high = Math.Max(Math.Max(arm, Relieved) + ArmDepth, written + Lettering.Room(title, printer).Y + Clear);

        var form = new Form(near, far, Math.Min(Tongue, (near - far) / 2), depth, outer, nose, edge, arm, coping, high);
        List<ColumnBlock> blocks = [.. form.Bodies()], relief = [.. form.Reliefs()];
        double foot = OverBoard - rail, inner = Math.Max(Math.Max((spec.Sleepers / 2) + BesideSleepers, outer), nose - Finger),
            toe = Math.Min(under - depth - 0.7, foot + 4);
        bool fingered = nose - inner >= 3 * printer.Nozzle && toe - foot >= 3 * printer.Nozzle;
        if (fingered)
        {
            blocks.Add(Shape.Added(Shape.Box(inner, foot, nose, Relieved + 1), 0, Blade));
            blocks.Add(Shape.Added(Shape.Box(inner, foot, Math.Max(nose, toeTip), toe), 0, Blade));
            relief.Add(Shape.Relieved(new(toeTip, foot), new(toeTip, toe), Relief));
        }

        return ([.. blocks, .. relief,
            .. Lettering.Cut(figures, new(-outer + Clear, ShoeHeight + Clear), new(nose - Clear, written - Clear + Lettering.Spare), Blade, printer),
            .. Lettering.Cut(title, new(-outer + Clear, Math.Max(written, arm + Clear)), new(coping + Arm - Clear, high - Clear + Lettering.Spare),
                Blade, printer)],
                Figures(top, coping, wall, depth, fingered), fingered ? null : nose - inner, [.. title, .. figures]);
    }

    // Its mark and chainage whole, and of the platform's name what goes on two lines: the legend has all of it.
    private string[] Title(string mark, string name, double wide) =>
        [.. Lettering.Wrapped(Invariant($"{mark} {place.Chainage:0.#}"), wide, printer), .. Lettering.Wrapped(name, wide, printer).Take(NameLines)];

    private const int NameLines = 2;

    private List<ProofFigure> Figures(double top, double coping, double wall, double depth, bool fingered)
    {
        List<ProofFigure> figures =
        [
            new("chainage", place.Chainage), new("coping's top above rail top", top), new("coping from the track's middle", coping),
                new("coping from the running edge", coping - (gauge / 2)),
            new("wall's foot from the track's middle", wall), new(ProofFigure.Air, spec.Air), new(ProofFigure.Play, spec.Play),
                new("tongues below rail top", depth),
        ];
        return fingered ? figures : [.. figures.Where(f => f.What[0] != 'w')];
    }

    // Its sides away from the track's middle and heights above rail top, mm.
    private sealed record Form(
        double Near, double Far, double Tongue, double Depth, double Outer, double Nose, double Edge, double Arm, double Coping, double High)
    {
        // Blade and arm, shoes, tongues.
        public IEnumerable<ColumnBlock> Bodies() =>
        [
            Shape.Added(Shape.Box(-Outer, Relieved, Nose, High), 0, Blade),
            Shape.Added(Shape.Box(Nose - 1, Arm, Coping + SlideGauge.Arm, High), 0, Blade),
            Shape.Added(Shape.Box(Near - Tongue, 0, Edge, ShoeHeight), 0, Shoe),
            Shape.Added(Shape.Box(-Outer, 0, Far + Tongue, ShoeHeight), 0, Shoe),
            Shape.Added(Shape.Box(Near - Tongue, -Depth, Near, 1), 0, Shoe),
            Shape.Added(Shape.Box(Far, -Depth, Far + Tongue, 1), 0, Shoe),
        ];

        // Chamfers along the faces that measure and ride.
        public IEnumerable<ColumnBlock> Reliefs() =>
        [
            .. Arm > Relieved ? [Shape.Relieved(new(Nose, Relieved), new(Nose, Arm), Relief)] : Array.Empty<ColumnBlock>(),
            Shape.Relieved(new(Nose, Arm), new(Coping + SlideGauge.Arm, Arm), Relief),
            Shape.Relieved(new(Near, 0), new(Edge, 0), Relief),
            Shape.Relieved(new(-Outer, 0), new(Far, 0), Relief),
            Shape.Relieved(new(Near, -Depth), new(Near, 0), Relief),
            Shape.Relieved(new(Far, 0), new(Far, -Depth), Relief),
        ];
    }
}
