using PlatformForge.Geometry;
using PlatformForge.Sections.Beds;
using PlatformForge.Sections.Cuts;
using PlatformForge.Sections.Forms;
using PlatformForge.Sections.Joints;
using PlatformForge.Sections.Marks;
using PlatformForge.Sections.Poses;
using PlatformForge.Solids;
using PlatformForge.Solids.Bodies;
using PlatformForge.Solids.Bodies.Layers;
using PlatformForge.Units;
using PlatformForge.Units.Memories;

namespace PlatformForge.Sections;

/// <summary>
/// Shapes one section: body between two cuts, joints, engraving, pose; and gives account of it: volumes, overhangs, forecast, remarks. Sections know nothing
/// of one
/// another. The blocks are laid anew in every run, which is quick; what is made of them is remembered by the blocks.
/// </summary>
internal sealed class SectionShaper(FacetedPlan chart, PrinterSpec printer, SectionSpec spec, BedShape bed, string platform, string shortName,
    PrintedFacing? facing, Memory memory,
    CancellationToken cancel)
{
    private readonly SectionOutline outline = new(chart, spec.Pose);

    /// <param name="number">From 1.</param>
    /// <param name="count">Sections of the platform.</param>
    /// <param name="start">Cut at its lower end; null at the platform's end.</param>
    /// <param name="end">Cut at its upper end; null at the platform's end.</param>
    /// <param name="from">Lower end, mm.</param>
    /// <param name="to">Upper end, mm.</param>
    public ShapedSection Shape(int number, int count, CutJoint? start, CutJoint? end, double from, double to)
    {
        var joint = spec.Joint;
        double a = start is null ? from : from + joint.EndTrim, b = end is null ? to : to - joint.EndTrim;
        var body = PlatformBody.Blocks(chart, a, b);
        JointBlocks[] joints = [.. Ends(start, end)];
        double markFrom = joints.Where(_ => start is not null).Take(1).Select(j => MarkLimit(j, true)).FirstOrDefault(a);
        double markTo = end is null ? b : MarkLimit(joints[^1], false);
        var engraving = Engraving.Of(chart, markFrom, markTo, number, count, shortName, spec, printer);
        ColumnBlock[] blocks = [.. body.Added, .. joints.SelectMany(j => j.Added()), .. body.Removed, .. joints.SelectMany(j => j.Removed()),
            .. joints.SelectMany(j => Relief(j, from, to)), .. engraving.Removed];
        var raised = memory.Of("section", new RaiseInput(blocks, facing) { Front = chart.Plan.Spec.Facing?.Front }, RaisedSection.Of, cancel);
        var form = memory.Of(
            "section on its bed",
            new LyingInput(raised, [.. outline.Surfaces(from, to)], outline.Along(from, to), spec.Pose, printer.Bed, printer.Margin, printer.Layer,
                body.Engraved),
            SectionForm.Of,
            cancel);
        return new(number, count, from, to, a, b, form, body, joints, engraving);
    }

    /// <summary>What there is to tell of a section once it is shaped; a picture does not wait for it.</summary>
    public (PlatformSection Section, IReadOnlyList<Finding> Findings) Account(ShapedSection shaped)
    {
        var (form, joints, from, to) = (shaped.Form, shaped.Joints, shaped.From, shaped.To);
        var account = SectionAccount.Of(form, Parts(shaped), printer, memory, cancel);
        var section = new PlatformSection(
            platform, shaped.Number, shaped.Count, from, to, form.Raised.Shown, form.ToLayout, account.Volumes, form.Pose, form.Hull, form.Size,
            account.Estimate, account.Overhangs)
        {
            Bores = [.. joints.SelectMany(j => j.Bores)],
            Pockets = [.. joints.SelectMany(j => j.Pockets)],
            Faced = form.Raised.Faced,
            Brim = to - from > Slender * OverhangMeter.LeastWidth(form.Hull) ? SectionFindings.SlenderBrim : 0,
        };
        return (section, Remarks(section, shaped.Engraving, from, to));
    }

    private IEnumerable<JointBlocks> Ends(CutJoint? start, CutJoint? end)
    {
        if (start is { } s)
        {
            yield return new(chart, s.Place, spec.Joint, printer.LeastWall, true, s.Dowels);
        }

        if (end is { } e)
        {
            yield return new(chart, e.Place, spec.Joint, printer.LeastWall, false, e.Dowels);
        }
    }

    // Lettering keeps off the end wall and the bosses behind it.
    private double MarkLimit(JointBlocks joint, bool start)
    {
        return start ? joint.From + joint.Depth : joint.To - joint.Depth;
    }

    // Which edge lies on the bed is certain but for a piece with part of a ramp, whose pose is measured on the solid.
    private IEnumerable<ColumnBlock> Relief(JointBlocks joint, double from, double to)
    {
        bool mixed = outline.Shape(from, to) == SectionShape.Mixed;
        bool lies = spec.Pose == PrintPose.DeckDown || (spec.Pose == PrintPose.Automatic && !mixed), stands = spec.Pose == PrintPose.Upright;
        return joint.Relief(!stands, !lies);
    }

    // The blocks whose volumes tell how the section's comes about.
    private VolumeParts Parts(ShapedSection shaped)
    {
        var (joints, from, to) = (shaped.Joints, shaped.From, shaped.To);
        var reliefs = new List<ReliefPart>();
        foreach (var joint in joints)
        {
            // What a relief takes, from slices of the end with and without it.
            var slice = PlatformBody.Blocks(chart, joint.From, joint.To);
            ColumnBlock[] relief = [.. Relief(joint, from, to)];
            if (relief.Length > 0)
            {
                reliefs.Add(new([.. slice.Added, .. joint.Added(), .. slice.Removed], relief));
            }
        }

        return new(
            [.. PlatformBody.Blocks(chart, from, to).All],
            shaped.A > from ? [.. PlatformBody.Blocks(chart, from, shaped.A).All] : [],
            shaped.B < to ? [.. PlatformBody.Blocks(chart, shaped.B, to).All] : [],
            [.. joints.Select(j => Touching([.. j.Filling(shaped.Body)]).ToArray())],
            [.. shaped.Engraving.Removed.Select(Within)],
            reliefs,
            joints.Sum(j => j.BoreVolume));

        // The part of a letter's cut that lies in the deck, as material.
        ColumnBlock Within(ColumnBlock cut) =>
            cut with { Action = BlockAction.Add, Lower = cut.Upper.Raised(-Engraving.DepthIn(chart.Plan.Spec.Deck.Thickness, spec, printer)) };
    }

    // What is taken from the filling matters only where it meets the filling.
    private static IEnumerable<ColumnBlock> Touching(ColumnBlock[] filling)
    {
        var (low, high) = Box(filling.Where(b => b.Action == BlockAction.Add).SelectMany(b => b.Outline));
        return filling.Where(b => Box(b.Outline) is var (l, h) && l.X < high.X && h.X > low.X && l.Y < high.Y && h.Y > low.Y);
    }

    private static (Point2 Low, Point2 High) Box(IEnumerable<Point2> points)
    {
        Point2 low = new(double.PositiveInfinity, double.PositiveInfinity), high = low * -1;
        foreach (var p in points)
        {
            low = new(Math.Min(low.X, p.X), Math.Min(low.Y, p.Y));
            high = new(Math.Max(high.X, p.X), Math.Max(high.Y, p.Y));
        }

        return (low, high);
    }

    // The chainage of a place on a section, by halves.
    private double ChainageOf(Point3 place, double from, double to)
    {
        for (int i = 0; i < ChainageHalvings; i++)
        {
            double middle = (from + to) / 2;
            bool beyond = Point2.Dot(new Point2(place.X, place.Y) - chart.CrossLine(middle).Origin, chart.Forward(middle)) > 0;
            (from, to) = beyond ? (middle, to) : (from, middle);
        }

        return (from + to) / 2;
    }

    // Of a section's length, less than a tenth of a millimetre is left.
    private const int ChainageHalvings = 14;

    private List<Finding> Remarks(PlatformSection section, Engraving engraving, double from, double to)
    {
        List<Finding> findings = [.. BeyondBed(section, from, to)];
        (string, Cure?)? cut = null;
        if (spec.Pose != PrintPose.Upright && outline.Shape(from, to) == SectionShape.Mixed)
        {
            cut = new HeadCuts(chart, printer, spec).For(from, to);
            findings.Add(SectionFindings.FlatCutMissing(spec.Key, section.Name, section.Pose == PrintPose.Upright, cut.Value));
        }

        if (spec.Engrave && engraving.Removed.Count == 0)
        {
            findings.Add(SectionFindings.EngravingLeftOut(spec.Key, section.Name, engraving.Height, Engraving.LeastHeight(printer)));
        }

        if (spec.Engrave && section.Number == 1 && Engraving.LeftOut(shortName) is { Count: > 0 } left)
        {
            findings.Add(SectionFindings.LettersLeftOut(chart.Plan.Spec.Key, left, Engraving.Drawable(shortName)));
        }

        if (section.Overhangs.Unsupported > OverhangMeter.Worth)
        {
            findings.Add(Hanging(section, from, to, cut));
        }

        double width = OverhangMeter.LeastWidth(section.Hull);
        if (section.Length > Slender * width)
        {
            findings.Add(SectionFindings.SlenderSection(spec.Key, section.Name, section.Length, width));
        }

        return findings;
    }

    // What hangs free, with what is there, and what of the platform made the section stand upright.
    private Finding Hanging(PlatformSection section, double from, double to, (string, Cure?)? cut)
    {
        var hangs = section.Overhangs;
        var place = section.ToLayout.Apply(hangs.LargestAt);
        double at = ChainageOf(place, from, to);
        string? turned = section.Pose == PrintPose.Upright && spec.Pose == PrintPose.Automatic && cut is null
            ? Cause.OfTurning(chart.Plan, [.. outline.Surfaces(from, to)], section.Solid.Mesh, (from + to) / 2) : null;
        return SectionFindings.Unsupported(
            spec.Key,
            section.Name,
            hangs.Unsupported,
            (hangs.Largest, at, Cause.At(chart.Plan, new(place.X, place.Y), at)),
            section.PoseInWords + (turned is null ? "" : $" because of the {turned}"),
            cut);
    }

    // A piece that the printer has no room for.
    private IEnumerable<Finding> BeyondBed(PlatformSection section, double from, double to)
    {
        if (section.Size.Z > printer.Height)
        {
            yield return SectionFindings.PieceTooTall(printer.Key, from, to, section.Size.Z, printer.Height);
        }

        double room = bed.Best(section.Hull).Room;
        if (room < 0)
        {
            yield return SectionFindings.PieceTooLarge(
                printer, (from, to), (1, 1), (section.Size.X, section.Size.Y), -2 * room, section.Length + (2 * room), section.Size.Y + (2 * room));
        }
    }

    /// <summary>Length over width from which a piece is likely to warp (common practice, no published source).</summary>
    private const double Slender = 10;
}

/// <summary>A section shaped, with what its account is given from.</summary>
/// <param name="Number">From 1.</param>
/// <param name="Count">Sections of the platform.</param>
/// <param name="From">Lower end before trim, mm.</param>
/// <param name="To">Upper end before trim, mm.</param>
/// <param name="A">Lower end after trim, mm.</param>
/// <param name="B">Upper end after trim, mm.</param>
/// <param name="Form">What it is.</param>
/// <param name="Body">The body's blocks.</param>
/// <param name="Joints">Its joints.</param>
/// <param name="Engraving">Its lettering.</param>
internal sealed record ShapedSection(
    int Number, int Count, double From, double To, double A, double B, SectionForm Form, BodyBlocks Body, JointBlocks[] Joints, Engraving Engraving);
