using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Files;
using PlatformForge.Platforms.Plans;
using static System.FormattableString;

namespace PlatformForge.Exports.Drawings.Sections;

/// <summary>A cross-section at a chainage: track, platform, the governing vehicle's reach, dimensions.</summary>
public static class CrossSectionDrawing
{
    private const double Width = 420, Height = 297; // A3

    // mm of reach that nobody can see on a drawing
    private const double AsGood = 0.02;

    /// <summary>The chainage in mm where the requirement is greatest along the level part: the place worth looking at.</summary>
    public static double Telling(PlatformPlan plan)
    {
        var need = plan.Requirement;
        var level = Enumerable.Range(0, need.Stations.Length).Where(i => need.Stations[i] >= plan.Profile.StartHead && need.Stations[i] <= plan.Profile.EndHead)
            .ToArray();
        if (level.Length == 0)
        {
            return (plan.Spec.Face.From + plan.Spec.Face.To) / 2;
        }

        // On a long curve many places are as good as the best: the first of them, at a whole mm.
        double most = level.Max(i => need.Swept[i]);
        return Math.Min(plan.Profile.EndHead, Math.Ceiling(need.Stations[level.First(i => need.Swept[i] > most - AsGood)]));
    }

    public static Sheet Draw(Dossier dossier, PlatformDossier platform, double chainage)
    {
        var sheet = new Sheet(Width, Height, Invariant($"{platform.FaceName}: cross-section at {Figures.Mm(chainage)}"))
        {
            Description = Invariant($"Cross-section of {platform.FaceName} square to the track at chainage {Figures.Mm(chainage)} mm, with the vehicles' ")
                + "reach.",
        };
        var section = new CrossSection(dossier, platform, chainage);
        section.DrawOn(sheet, TitleBlock.Margin + 26, Height - TitleBlock.Margin - TitleBlock.Depth - 34);
        sheet.Text(Invariant($"Cross-section at chainage {Figures.Mm(chainage)} mm"), new(TitleBlock.Inset, TitleBlock.Margin + 9), HouseStyle.Heading);
        sheet.Text("Seen along increasing chainage. The governing vehicle is drawn as it stands when it reaches farthest here; "
            + "dashed, the farthest it ever reaches; grey, those that reach beyond it somewhere; both sides, play included.",
            new(TitleBlock.Inset, TitleBlock.Margin + 14.5), HouseStyle.Small);
        TitleBlock.Draw(sheet, dossier, platform.FaceName, "Cross-section with the vehicles' reach",
            Invariant($"Scale {section.Scale}, all figures in mm of the model"),
            "Figures in brackets are full size. Heights are over rail top unless said otherwise.",
            Invariant($"Between reach and coping: {Figures.Fine(platform.Budget.Margin)} mm of budget asked, {Figures.Fine(section.Spare)} mm there."));
        return sheet;
    }
}
