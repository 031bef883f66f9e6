using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Sections.Beds;
using PlatformForge.Sections.Forecasts;
using PlatformForge.Sections.Forms;
using PlatformForge.Sections.Plates;
using PlatformForge.Sections.Poses;
using PlatformForge.Solids;
using PlatformForge.Solids.Bodies;
using PlatformForge.Solids.Bodies.Layers;
using PlatformForge.Solids.Bodies.Walls;
using PlatformForge.Solids.Kernel;
using PlatformForge.Units.Memories;

namespace PlatformForge.Sections;

/// <summary>Makes inlays and strips of a platform's lines, and banks that are prints of their own, one a line and section, and lays what is loose on
/// beds.</summary>
internal static class LineMaker
{
    /// <param name="chart">The plan that the sections are made from.</param>
    /// <param name="sections">The sections as they are written.</param>
    /// <param name="printer">The printer, in millimetres as they come out.</param>
    /// <param name="trim">Taken off each section at a cut, mm.</param>
    /// <param name="memory">What earlier runs made.</param>
    /// <param name="cancel">Stops between two pieces.</param>
    public static LineSet Of(FacetedPlan chart, IReadOnlyList<PlatformSection> sections, PrinterSpec printer, double trim, Memory memory,
        CancellationToken cancel)
    {
        LineBand[] lines = [.. chart.Plan.Body.Lines];
        bool hasBank = chart.Plan.Bank is { IsApart: true };
        if (!hasBank && !Array.Exists(lines, l => l.Made.IsPrinted))
        {
            return LineSet.None;
        }

        var pieces = new List<LinePiece>();
        var facing = PrintedFacing.OfRetaining(chart.Plan, printer, trim);
        foreach (var section in sections)
        {
            var (from, to) = section.Trimmed(trim);
            for (int i = 0; i < lines.Length; i++)
            {
                ColumnBlock[] blocks = lines[i].Made.IsPrinted ? [.. LineBlocks.Of(chart, lines[i], from, to)] : [];
                if (blocks.Length > 0)
                {
                    double middle = (Math.Max(from, lines[i].From) + Math.Min(to, lines[i].To)) / 2;
                    var input = new LineInput(blocks, lines[i].Made.Form, lines[i].Made.Wall is not null,
                        lines[i].Made.Wall?.LevelTop is { } level ? new(level) : chart.Plan.Surface.At(middle), chart.Forward(middle),
                        section.ToLayout, printer, lines[i].Made.Wall is null ? null : facing);
                    pieces.Add(Piece(section, i + 1, lines[i].Made, input, memory, cancel));
                }
            }

            if (hasBank && BankBlocks.Alone(chart, from, to) is { Count: > 0 } bank)
            {
                // It stands on its foot, level.
                var input = new LineInput([.. bank], LineForm.Strip, false, default, chart.Forward((from + to) / 2), section.ToLayout, printer, null);
                pieces.Add(Piece(section, lines.Length + 1, chart.Plan.Spec.Back.BankMake, input, memory, cancel));
            }
        }

        return Laid(pieces, printer);
    }

    private static LinePiece Piece(PlatformSection section, int line, LineMake made, LineInput input, Memory memory, CancellationToken cancel)
    {
        var (solid, toLayout, hull, size, estimate, faced) = memory.Of("line", input, static (given, _) => Form(given), cancel);
        return new(section.Number, line, made, solid, toLayout, hull, size, estimate) { Stretch = section.Stretch, Faced = faced };
    }

    private sealed record LineInput(
        ColumnBlock[] Blocks, LineForm Made, bool OnItsTop, HeightPlane Surface, Point2 Along, RigidTransform Section, PrinterSpec Printer,
        PrintedFacing? Facing);

    private sealed record LineFormed(Solid Solid, RigidTransform ToLayout, Point2[] Hull, Point3 Size, PrintEstimate Estimate,
        IReadOnlyList<FacedWall> Faced);

    // An inlay keeps the place that it has in its section's file; a strip is stood on the bed, a wall on its coping, and turned to lie best on it.
    private static LineFormed Form(LineInput input)
    {
        var reliefs = input.Facing?.Reliefs();
        var solid = SolidRaiser.Raise(input.Blocks, reliefs?.ByName);
        solid = input.Facing is { } shown ? WallPaints.Shown(solid, shown.Front) : solid;
        var motion = input.Section.Inverse();
        if (input.Made == LineForm.Strip)
        {
            var upright = input.OnItsTop ? PrintTurn.Lying(input.Surface, input.Along) : PrintTurn.Standing(input.Surface, input.Along);
            motion = upright.Then(RigidTransform.AboutZ(new BedShape(input.Printer).Best(Hull(solid.Mesh.Moved(upright))).Turn));
            var (low, _) = solid.Mesh.Moved(motion).Box();
            motion = motion.Then(RigidTransform.Shift(-low.X, -low.Y, -low.Z));
        }

        var lying = solid.Mesh.Moved(motion);
        var (least, most) = lying.Box();
        return new(solid, motion.Inverse(), Hull(lying), most - least, PrintForecast.Of(lying, solid.ColumnVolume, input.Printer),
            [.. (reliefs?.All ?? []).SelectMany(r => r.Walls)]);
    }

    private static Point2[] Hull(Mesh mesh) => ConvexRing.Hull(mesh.Vertices.Select(v => new Point2(v.X, v.Y)));

    private static LineSet Laid(List<LinePiece> pieces, PrinterSpec printer)
    {
        int[] loose = [.. Enumerable.Range(0, pieces.Count).Where(i => !pieces[i].IsInlay)];
        var beds = PlatePacker.Pack([.. loose.Select((p, i) => new PieceToPack(pieces[p].Hull, pieces[p].Size.X, i, pieces[p].Estimate.Volume))], printer);
        var plates = new List<StripPlate>();
        foreach (var bed in beds)
        {
            var placed = new List<(LinePiece Piece, RigidTransform ToBed)>();
            foreach (var p in bed.OrderBy(p => p.Piece))
            {
                var (piece, toBed) = Corrected(pieces[loose[p.Piece]], p.ToBed, printer.Stretch);
                pieces[loose[p.Piece]] = piece;
                placed.Add((piece, toBed));
            }

            plates.Add(new(plates.Count + 1, placed, PrintEstimate.Sum(placed.Select(p => p.Piece.Estimate), printer)));
        }

        return new(pieces, plates);
    }

    // What the printer gets wrong is taken in as a strip lies on its bed; without that a strip keeps its turn.
    private static (LinePiece Piece, RigidTransform ToBed) Corrected(LinePiece piece, RigidTransform toBed, Point2 by)
    {
        if (by == new Point2(1, 1))
        {
            return (piece, toBed);
        }

        var (turn, corner) = BedCorrection.AsItLies(piece.Hull, toBed);
        Point2[] hull = [.. piece.Hull.Select(p => turn.Apply(new(p.X, p.Y, 0))).Select(p => new Point2(p.X, p.Y))];
        var turned = piece with
        {
            ToLayout = turn.Inverse().Then(piece.ToLayout),
            Hull = hull,
            Size = new(hull.Max(p => p.X), hull.Max(p => p.Y), piece.Size.Z),
            Stretch = by,
        };
        return (turned, RigidTransform.Shift(corner.X * by.X, corner.Y * by.Y, 0));
    }
}
