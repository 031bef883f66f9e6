using PlatformForge.Masonry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Plans.Fittings;
using PlatformForge.Platforms.Rules;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Platforms.WallFittings;

/// <summary>What openings come to: refuges, openings for cables, weep holes.</summary>
internal sealed class OpeningFittings : FittingKind
{
    // The least width of a voussoir is that of a brick on edge, mm in full size.
    private const double Voussoir = 75;

    public override IEnumerable<FittingRow> Rows(FittingSite site) => (site.Plan.Spec.Facing?.Openings ?? []).Select((spec, i) =>
        new FittingRow(OpeningSpec.Name(spec.Kind), Plural(spec.Kind), Key(site.Plan, i))
        {
            Places = [.. site.Plan.WallOpenings.Index().Where(o => ReferenceEquals(o.Item.Spec, spec)).Select(o => Place(site.Plan, o.Item, o.Index + 1))],
            IsMinor = spec.Kind == OpeningKind.Weep,
        });

    public override IEnumerable<FittingFault> Printed(PlatformPlan plan, PrintFigures printer)
    {
        var spec = plan.Spec;
        var profile = WallProfiles.Of(plan);
        for (int i = 0; i < (spec.Facing?.Openings.Count ?? 0); i++)
        {
            var opening = spec.Facing!.Openings[i];
            string key = Key(plan, i);
            bool isBack = opening.IsBack && !spec.IsIsland;
            if (isBack && !spec.Back.ShowsWall)
            {
                continue; // told where the back is looked at
            }

            if (profile.IsParted(opening.Sill, opening.Height))
            {
                yield return OpeningFaults.Parted(key, spec.Key + ".facing", opening, profile.FrontHead!.Value);
            }

            var finish = isBack ? spec.Facing.Back : spec.Facing.Front;
            double wall = isBack ? spec.Walls.BackThickness : spec.Walls.FrontThickness, deepest = wall - printer.LeastWall,
                size = Math.Min(opening.Width, opening.Height);
            if (finish is not (WallFinish.Brick or WallFinish.Stone or WallFinish.Rubble or WallFinish.Plain))
            {
                yield return OpeningFaults.NoMasonry(key, spec.Key + ".facing", isBack ? "back" : "front", FacingSpec.Name(finish));
            }
            else if (!opening.IsThrough && (opening.Depth > deepest + Tolerances.Rounding || opening.Depth <= spec.Facing.FaceDepth(isBack)))
            {
                yield return OpeningFaults.Depth(
                    key, opening.Depth, (spec.Facing.FaceDepth(isBack), deepest),
                    spec.Key + (isBack ? ".wall.back_thickness" : ".wall.front_thickness"), printer.LeastWall);
            }
            else if (opening.IsThrough && opening.Width > printer.LongestBridge + Tolerances.Rounding)
            {
                yield return OpeningFaults.TooWideToBridge(key, opening.Width, printer.LongestBridge);
            }
            else if (size < printer.Lines - Tolerances.Rounding)
            {
                yield return OpeningFaults.TooSmall(key + (opening.Width < opening.Height ? ".width" : ".height"), size, printer.Lines);
            }
        }
    }

    private static string Key(PlatformPlan plan, int index) => Invariant($"{plan.Spec.Key}.facing.opening[{index}]");

    private static WallFitting Place(PlatformPlan plan, PlannedOpening opening, int number)
    {
        var spec = opening.Spec;
        double half = spec.Width / 2 / plan.Spine.Stretch(opening.Chainage, plan.Panels(opening.IsFar).At(opening.Chainage));
        double from = opening.Chainage - half, to = opening.Chainage + half;
        return new(number, opening.IsFar, opening.Chainage, from, to, spec.Width)
        {
            Footprint = new(from, to, 0, spec.IsThrough ? null : spec.Depth),
            Hole = new(
                spec.Sill, spec.Height, spec.Rise, spec.IsThrough ? null : spec.Depth, OpeningRule.Ring(plan.Spec, spec), Voussoir / spec.Ratio,
                (spec.PadHalf, OpeningSpec.PadDepth))
            {
                Bearing = spec.Bearing,
                Least = spec.LeastSize,
            },
        };
    }

    private static string Plural(OpeningKind kind) => kind switch
    {
        OpeningKind.Cable => "openings for cables",
        OpeningKind.Weep => "weep holes",
        _ => "refuges",
    };
}
