using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Solids.Bodies.Layers;

namespace PlatformForge.Solids.Bodies.Trestles;

/// <summary>Boarding between the posts of the front or the back: a thin wall behind their faces, with the joints of level planks engraved in it.</summary>
internal static class BoardBlocks
{
    /// <summary>How far boarding stands back behind the faces of the posts, mm, so that these read; a joint's height and depth, mm: less is lost in a line of
    /// the nozzle.</summary>
    public const double Recess = 0.4, Joint = 0.3, Depth = 0.3;

    // How far in mm a joint reaches out of the boarding.
    private const double Overshoot = 0.2;

    public static void Add(FacetedPlan chart, TopSurface top, double from, double to, List<ColumnBlock> blocks)
    {
        var (spec, trestle) = (chart.Plan.Spec.Trestle!, chart.Plan.Trestle!);
        foreach (bool isFar in (bool[])[false, true])
        {
            if (spec.Boarded == BoardedSides.Both || spec.Boarded == (isFar ? BoardedSides.Back : BoardedSides.Front))
            {
                double[] ends = [trestle.Stretch.From, .. trestle.Bents.SelectMany(b => new[] { b.From, b.To }), trestle.Stretch.To];
                for (int i = 0; i < ends.Length; i += 2)
                {
                    Bay(chart, top, isFar, (Math.Max(from, ends[i]), Math.Min(to, ends[i + 1])), blocks);
                }
            }
        }
    }

    private static void Bay(FacetedPlan chart, TopSurface top, bool isFar, (double From, double To) along, List<ColumnBlock> blocks)
    {
        var (spec, trestle) = (chart.Plan.Spec.Trestle!, chart.Plan.Trestle!);
        PlanLine Line(double behind) => isFar ? trestle.Rows[^1].Far.Shifted(-behind) : trestle.Rows[0].Near.Shifted(behind);
        PostRow Strip(double outer, double inner) => isFar ? new(Line(inner), Line(outer)) : new(Line(outer), Line(inner));
        if (along.To <= along.From)
        {
            return;
        }

        TrestleBlocks.Hang(chart, top, Strip(Recess, Recess + spec.Boards), along, null, blocks);
        var joint = Strip(Recess - Overshoot, Recess + Depth);
        double highest = Hung(chart.Plan);
        foreach (var piece in top.Cover(joint.Near, joint.Far, along.From, along.To))
        {
            for (int k = 0; highest - (k * spec.Plank) > Joint; k++)
            {
                double z = highest - (k * spec.Plank);
                blocks.Add(Layer.Removed(piece.Ring, new(z - Joint), new(z), TrestleBlocks.PaintOf(spec)));
            }
        }
    }

    // The underside of the bearers between the ramps: planks hang from it, level all along.
    private static double Hung(PlatformPlan plan) => plan.Profile.Level - plan.Spec.Deck.Thickness - plan.Spec.Trestle!.Bearer;
}
