using PlatformForge.Platforms.Specs;
using PlatformForge.Sections.Forms;
using PlatformForge.Solids.Bodies.Layers;
using PlatformForge.Units;

namespace PlatformForge.Sections.Joints;

/// <summary>Whether a joint goes into the platform's end at a cut.</summary>
internal static class JointRule
{
    public static IEnumerable<Finding> Check(JointPlace place, JointSpec spec, PrinterSpec printer)
    {
        if (spec.Kind != JointKind.Dowel)
        {
            foreach (var finding in spec.Kind == JointKind.Plate ? CheckPlate(place, spec, printer) : [])
            {
                yield return finding;
            }

            yield break;
        }

        double least = printer.LeastWall, around = spec.Fit + (2 * (spec.MouthChamfer + least));
        double high = place.Headroom - around;
        if (LargestFit(place, spec, least) is var loosest && spec.Fit > loosest && loosest >= new JointSpec().Fit)
        {
            // With a usual fit the dowel goes in: the platform is as high as it need be.
            yield return SectionFindings.FitTooLarge(spec.Key, place.Chainage, (spec.DowelDiameter, spec.Fit), loosest);
            yield break;
        }

        if (spec.DowelDiameter > high)
        {
            // Tried, not guessed: plates are offered where they go in.
            var plates = spec with { Kind = JointKind.Plate };
            yield return SectionFindings.DowelTooLarge(spec.Key, place.Chainage, spec.DowelDiameter, high, "between baseboard and deck",
                CheckPlate(place, plates, printer).Any() ? null : plates);
        }

        // Two bosses side by side, and positions that miss when the piece is turned end for end.
        double wide = (place.Clear * (JointPlace.SlottedShare - JointPlace.RoundShare)) - around - spec.SlotPlay;
        wide = place.IsWalled ? wide : Math.Min(wide, (2 * place.Clear * (1 - JointPlace.SlottedShare)) - around - spec.SlotPlay);
        double turned = place.Mismatch - spec.SlotPlay - spec.Fit;
        if (spec.DowelDiameter > wide || turned < spec.Fit)
        {
            yield return SectionFindings.DowelTooLarge(spec.Key, place.Chainage, spec.DowelDiameter, turned < spec.Fit ? 0 : wide,
                "between front and back wall");
        }
    }

    // The largest fit with which bores of a diameter go in, mm: what Check asks, solved for it.
    private static double LargestFit(JointPlace place, JointSpec spec, double least)
    {
        double beside = spec.DowelDiameter + (2 * (spec.MouthChamfer + least));
        double wide = (place.Clear * (JointPlace.SlottedShare - JointPlace.RoundShare)) - beside - spec.SlotPlay;
        return Math.Min(Math.Min(place.Headroom - beside, wide), (place.Mismatch - spec.SlotPlay) / 2);
    }

    // A plate needs its pocket's height and two lines of plastic over it, and walls of two lines beside it.
    private static IEnumerable<Finding> CheckPlate(JointPlace place, JointSpec spec, PrinterSpec printer)
    {
        double least = printer.LeastWall, thick = place.Headroom + place.Deck - spec.Fit - least;
        if (spec.PlateThickness > thick)
        {
            yield return SectionFindings.PlateTooLarge(spec.Key + ".plate_thickness", place.Chainage, "thickness", spec.PlateThickness, thick);
        }

        // Between the two pockets, and between the outer one and the back wall.
        double wide = Math.Min(place.Clear * (JointPlace.SlottedShare - JointPlace.RoundShare), 2 * place.Clear * (1 - JointPlace.SlottedShare)) - spec.Fit
            - least;
        if (spec.PlateWidth > wide)
        {
            yield return SectionFindings.PlateTooLarge(spec.Key + ".plate_width", place.Chainage, "width", spec.PlateWidth, wide);
        }
    }

    /// <summary>Whether a section between two cuts, null at the platform's ends, holds what they bring without one reaching into the other or out of
    /// it.</summary>
    public static IEnumerable<Finding> CheckRoom(FacetedPlan chart, (double At, CutJoint? Joint) start, (double At, CutJoint? Joint) end, JointSpec spec,
        PrinterSpec printer)
    {
        bool[] joints = [.. new[] { start.Joint, end.Joint }.Where(j => j is not null).Select(j => j!.Dowels && spec.Kind != JointKind.None)];
        double room = JointRoom.Between(chart, start.At, end.At), needed = joints.Sum(d => JointRoom.Depth(spec, printer, d));
        if (JointRoom.IsEnough(room, needed))
        {
            yield break;
        }

        // Half a dowel, its allowance and the wall behind it fill what the plain joints leave, shared by the bores.
        int bored = joints.Count(d => d);
        double plain = JointRoom.Depth(spec, printer, false), share = (room - ((joints.Length - bored) * plain)) / Math.Max(1, bored);
        double dowel = bored > 0 && share >= plain ? 2 * (share - spec.DepthAllowance - printer.LeastWall) : 0;
        yield return SectionFindings.SectionTooShort(spec.Key, start.At, end.At, room, needed, dowel);
    }

    /// <summary>Walls of the platform and of the joint that are thinner than two lines of the nozzle.</summary>
    public static IEnumerable<Finding> CheckWalls(PlatformSpec platform, JointSpec joint, PrinterSpec printer)
    {
        (string Key, string What, double Thickness)[] walls =
        [
            (platform.Key + ".wall.front_thickness", "front wall", platform.Walls.FrontThickness),
            (platform.Key + ".wall.back_thickness", "back wall", platform.Walls.BackThickness),
            (platform.Key + ".wall.end_thickness", "end wall of the platform", platform.Walls.EndThickness),
            (platform.Key + ".ribs.thickness", "transverse rib", platform.Ribs.Pitch > 0 ? platform.Ribs.Thickness : double.PositiveInfinity),
            (platform.Key + ".ribs.lengthwise_thickness", "longitudinal rib", platform.Ribs.LongitudinalCount > 0 ? platform.Ribs.LongitudinalThickness
                : double.PositiveInfinity),
            (joint.Key + ".end_wall", "end wall at a joint", joint.EndWall),
        ];
        return walls.Where(w => w.Thickness < printer.LeastWall - Rounding)
            .Select(w => SectionFindings.WallTooThin(w.Key, w.What, w.Thickness, printer.LeastWall));
    }

    /// <summary>A wall of exactly two lines is thick enough, however its figure was rounded, mm.</summary>
    private const double Rounding = Tolerances.Rounding;
}
