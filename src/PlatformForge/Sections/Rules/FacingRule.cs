using PlatformForge.Masonry;
using PlatformForge.Masonry.Finishes;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Sections.Forms;
using PlatformForge.Solids.Bodies.Layers;
using PlatformForge.Solids.Bodies.Walls;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Sections.Rules;

/// <summary>What of a facing a printer can make, and what would help where it can't.</summary>
internal static class FacingRule
{
    // Thinnest layer that is advised, mm: common practice, no source.
    private const double ThinnestLayer = 0.08;

    // Nozzles that are sold, mm: common practice, no source.
    private static readonly double[] Nozzles = [0.2, 0.25, 0.3, 0.4, 0.5, 0.6, 0.8, 1];

    // Least step of a wall that a print shows, mm: what slicers close by themselves (a general slicer's usual closing radius of 0.049 mm on either side), and
    // about what a line's edge strays by (common practice, no source).
    private const double LeastShown = 0.1;

    private const double Rounding = Tolerances.Rounding;

    public static IEnumerable<Finding> Check(PlatformPlan plan, PrinterSpec printer, SectionSpec sections) =>
        ProfilePrintRule.Check(plan, printer, sections)
            .Concat(plan.Spec.Facing is not { } facing ? [] : WallNames.Faced(plan).Count > 0 ? OfFacing(plan, facing, printer, sections)
                : FittingPrintRule.Check(plan, printer));

    private static IEnumerable<Finding> OfFacing(PlatformPlan plan, FacingSpec facing, PrinterSpec printer, SectionSpec sections)
    {
        string key = plan.Spec.Key + ".facing";
        if (plan.Spec.IsIsland && facing.StatesBack)
        {
            yield return FacingFindings.NoBack(key);
        }

        foreach (var thin in Thin(plan.Spec, facing, printer))
        {
            yield return thin;
        }

        // Of a rebate for sheet nothing stands out.
        WallFinish[] finishes = [.. WallNames.Faced(plan).Select(w => w.Finish).Distinct()];
        if (facing.Depth > printer.Nozzle + Rounding && finishes.Any(f => f != WallFinish.Sheet))
        {
            yield return FacingFindings.JointTooDeep(key, facing.Depth, printer.Nozzle);
        }

        foreach (var found in Lost(facing, finishes, key))
        {
            yield return found;
        }

        foreach (var found in TooDeep(facing, plan.Site.Scale, [.. finishes.Where(f => !Pieces(plan, f, facing, printer).Any())], key))
        {
            yield return found;
        }

        foreach (var found in FittingPrintRule.Check(plan, printer)
            .Concat(finishes.Contains(WallFinish.Brick) ? Bricks(plan, facing, printer, sections, key) : [])
            .Concat(finishes.SelectMany(f => Pieces(plan, f, facing, printer)))
            .Concat(finishes.SelectMany(f => PieceRoomRule.Check(plan, f, Sizes(f, facing, printer).ToDictionary(p => p.Key, p => p.Least)))))
        {
            yield return found;
        }
    }

    // A rebate has a depth alone, and upright planks and panels their gaps.
    private static IEnumerable<Finding> Lost(FacingSpec facing, WallFinish[] finishes, string key)
    {
        bool hasJoints = finishes.Any(f => f != WallFinish.Sheet);
        (string Key, string What, double Figure, bool Is)[] figures =
        [
            ("depth", hasJoints ? "A depth of joints" : "A rebate", facing.Depth, true),
            ("joint", "A width of joints", facing.Joint, hasJoints),
        ];
        return figures.Where(f => f.Is && f.Figure < LeastShown - Rounding)
            .Select(f => FacingFindings.LostInPrint($"{key}.{f.Key}", f.What, f.Figure, LeastShown));
    }

    // At a corner what stands out is mitred by as much as it stands out.
    private static IEnumerable<Finding> TooDeep(FacingSpec facing, ModelScale scale, WallFinish[] finishes, string key)
    {
        double Least(WallFinish finish) => finish switch
        {
            WallFinish.Brick => BrickModule.Of(facing.Gauge, scale).Header,
            WallFinish.Stone => facing.StoneLength * StoneworkSpec.LeastStone,
            WallFinish.Rubble => facing.RubbleSize * StoneworkSpec.LeastStone,
            WallFinish.UprightPlanks => facing.PlankWidth,
            WallFinish.Panels => facing.PostWidth / 2, // of a post at a corner half stands on either wall
            _ => double.PositiveInfinity,
        };
        return finishes.Where(f => facing.Depth > Least(f) + Rounding).Take(1)
            .Select(f => FacingFindings.JointDeeperThanPieces(key, facing.Depth, f, Least(f)));
    }

    private static IEnumerable<Finding> Bricks(PlatformPlan plan, FacingSpec facing, PrinterSpec printer, SectionSpec sections, string key)
    {
        var fit = FacingFit.Of(facing, plan.Site.Scale, printer);
        if (facing.Joint >= Math.Min(fit.Module.Course, fit.Module.Header / 2) - Rounding)
        {
            yield return FacingFindings.JointTooWide(key, facing.Joint, fit.Module);
        }
        else if (!fit.Courses)
        {
            double layer = Math.Floor(fit.Module.Course / FacingFit.LeastLayers * 100) / 100;
            yield return FacingFindings.CoursesTooLow(key, (printer.Key, printer.Layer), (fit.Module.Course, FacingFit.LeastLayers),
                layer >= ThinnestLayer ? layer : null);
        }
        else if (!fit.Perpends)
        {
            double widest = (fit.Header / FacingFit.LeastLines) + Rounding;
            yield return FacingFindings.BedCoursesOnly(key, printer.Nozzle, fit.Header,
                Nozzles.Where(n => n <= widest).Select(n => (double?)n).LastOrDefault());
        }

        double course = Coursing.Even(fit.Module.Course, WallProfiles.Under(plan) - Coursing.Foot), layers = course / printer.Layer;
        if (fit.Courses && sections.Pose == PrintPose.Upright && Math.Abs(layers - Math.Round(layers)) > WholeLayers)
        {
            yield return FacingFindings.LayersNotWhole(key, course, printer.Layer, FacingFit.LeastLayers);
        }

        foreach (var drawn in fit.Courses ? CourseDrawRule.Check(plan, fit.Module.Course) : [])
        {
            yield return drawn;
        }
    }

    // Pieces of other finishes that would be lost between two lines of the nozzle or in four layers, each with its least figure.
    private static IEnumerable<Finding> Pieces(PlatformPlan plan, WallFinish finish, FacingSpec facing, PrinterSpec printer) =>
        Sizes(finish, facing, printer).Where(p => p.Figure < p.Least - Rounding && PieceRoomRule.HasRoom(plan, finish, p.Key, p.Least))
            .Select(p => FacingFindings.PieceTooSmall(Invariant($"{plan.Spec.Key}.facing.{p.Key}"), p.What,
                p.Figure, p.Least, (printer.Nozzle, printer.Layer, facing.Joint)));

    // Figures of what a finish lays, with the least that a printer shows.
    private static (string Key, string What, double Figure, double Least)[] Sizes(WallFinish finish, FacingSpec facing, PrinterSpec printer)
    {
        double lines = (FacingFit.LeastLines * printer.Nozzle) + facing.Joint;
        double layers = Math.Max(FacingFit.LeastLayers * printer.Layer, facing.Joint + printer.LeastWall);
        return finish switch
        {
            WallFinish.Stone =>
            [
                ("stone_course", "The lowest courses of stone", facing.StoneCourse, layers / StoneworkSpec.LeastCourse),
                ("stone_length", "The shortest stones", facing.StoneLength, lines / StoneworkSpec.LeastStone),
            ],
            WallFinish.Rubble => [("rubble_size", "The smaller stones of rubble", facing.RubbleSize, lines / StoneworkSpec.LeastStone)],
            WallFinish.Planks => [("plank_width", "Planks", facing.PlankWidth, layers), ("plank_length", "Planks", facing.PlankLength, 2 * lines)],
            WallFinish.UprightPlanks => [("plank_width", "Planks", facing.PlankWidth, lines)],
            WallFinish.Sleepers =>
                [("sleeper_width", "Sleepers", facing.SleeperWidth, layers), ("sleeper_length", "Sleepers", facing.SleeperLength, 2 * lines)],
            WallFinish.Panels =>
            [
                ("post_width", "Posts", facing.PostWidth, FacingFit.LeastLines * printer.Nozzle),
                ("panel_height", "Panels", facing.PanelHeight, layers),
                ("bay", "Panels", facing.Bay, facing.PostWidth + lines + facing.Joint),
            ],
            _ => [],
        };
    }

    // Courses that are whole layers but for this share of one look even.
    private const double WholeLayers = 0.02;

    // Behind the joints two lines of the nozzle have to stand.
    private static IEnumerable<Finding> Thin(PlatformSpec spec, FacingSpec facing, PrinterSpec printer)
    {
        (string Key, string What, double Thickness, bool Faced)[] walls =
        [
            ("front_thickness", "front wall", spec.Walls.FrontThickness, facing.Front != WallFinish.Plain),
            ("back_thickness", "back wall", spec.Walls.BackThickness, facing.Back != WallFinish.Plain && !spec.IsIsland),
            ("end_thickness", "end wall", spec.Walls.EndThickness, facing.Ends != WallFinish.Plain),
        ];
        return walls.Where(w => w.Faced && w.Thickness - facing.Depth < printer.LeastWall - Rounding)
            .Select(w => FacingFindings.WallTooThin(Invariant($"{spec.Key}.wall.{w.Key}"), w.What, w.Thickness, facing.Depth, printer.LeastWall,
                spec.Key + ".facing.depth", printer.Nozzle));
    }
}
