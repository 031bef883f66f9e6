using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Files;
using static System.FormattableString;

namespace PlatformForge.Exports.Drawings.Plans;

/// <summary>The plan: track, what is swept, platform with everything in it, cuts and sections.</summary>
public static class PlanDrawing
{
    private const double Width = 420; // the long side of A3
    private const double LeastHeight = 150;
    internal const double Above = 23; // for the legend
    internal const double Below = 12; // for the scale bar
    private const double TrackBeyond = 60; // mm of track drawn past either end

    public static Sheet Draw(Dossier dossier, PlatformDossier platform)
    {
        var plan = platform.Plan;
        var part = new PlanParts(dossier, platform, TrackBeyond);
        var points = part.Extent().ToArray();
        const double Labelled = 15; // room for chainages on one side, section numbers on the other
        double inner = Width - (2 * TitleBlock.Inset);
        var view = PlanView.Of(points, PlanView.ChordOf(plan), TitleBlock.Inset, TitleBlock.Margin + Above + Labelled, inner);
        double height = Math.Max(LeastHeight, TitleBlock.Margin + Above + (2 * Labelled) + view.Height + Below + TitleBlock.Depth + TitleBlock.Margin);
        double slack = (height - (TitleBlock.Margin + Above + (2 * Labelled) + view.Height + Below + TitleBlock.Depth + TitleBlock.Margin)) / 2;
        view = PlanView.Of(points, PlanView.ChordOf(plan), TitleBlock.Inset, TitleBlock.Margin + Above + Labelled + slack, inner);
        var sheet = new Sheet(Width, height, Invariant($"{platform.Name}: plan"))
        {
            Description = Invariant($"Plan of the platform {platform.Name} beside the track {plan.Chart.Name} from ")
                + Invariant($"chainage {Figures.Short(plan.Spec.Face.From)} to {Figures.Short(plan.Spec.Face.To)} mm, cut ")
                + Invariant($"into {platform.Sections.Sections.Count} sections."),
        };

        part.DrawOn(sheet, view);
        TitleBlock.Draw(sheet, dossier, platform.Name, "Plan with track, swept outline and sections", Invariant($"Scale {view.Scale}, all figures in mm of ")
            + "the model",
            Invariant($"Coping {Figures.Short(plan.Spec.Height)} above rail top; rail top {Figures.Short(plan.Site.RailTop)} over the baseboard."),
            "Chainages run along the track's middle. Offsets are square to it.");
        return sheet;
    }
}
