using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Files;
using static System.FormattableString;

namespace PlatformForge.Exports.Drawings.Gaps;

/// <summary>Every vehicle in the pose in which it comes nearest to the coping: a panel each, with the tight place enlarged.</summary>
public static class TightDrawing
{
    private const double Width = 420; // the long side of A3
    private const double Gap = 8;
    private const int Columns = 2;

    public static Sheet Draw(Dossier dossier, PlatformDossier platform)
    {
        double panel = (Width - (2 * TitleBlock.Inset) - (Gap * (Columns - 1))) / Columns, y = TitleBlock.Margin + 22;
        var places = platform.Tightest.Where(t => Shows(platform, t)).ToArray();
        var panels = places.Select(t => new TightPanel(dossier, platform, t, panel)).ToArray();
        int columns = panels.Length == 1 ? 1 : Columns;
        var rows = panels.Chunk(columns).ToArray();
        double height = Math.Max(148, y + rows.Sum(r => r.Max(p => p.Height) + Gap) + TitleBlock.Depth + TitleBlock.Margin);
        var sheet = new Sheet(Width, height, Invariant($"{platform.FaceName}: tightest places"))
        {
            Description = Invariant($"Where each vehicle comes nearest to {platform.FaceName}. ") + string.Join("; ",
                places.Select(t => Invariant($"{t.Called} ({t.Part}): {Figures.Fine(t.Left)} mm at chainage {Figures.Fixed(t.Chainage, 0)}"))) + ".",
        };
        sheet.Text("Where each vehicle comes nearest", new(TitleBlock.Inset, TitleBlock.Margin + 9), HouseStyle.Heading);
        sheet.Text("Each vehicle as it stands in its tightest place: body and parts, bogies darker, axles as bars. Dashed: "
            + "the farthest it reaches, play included; "
            + "the figure is from there to the "
            + $"coping.{(places.Length < platform.Tightest.Count ? " A truck is shown where it comes nearer than its engine." : "")}",
            new(TitleBlock.Inset, TitleBlock.Margin + 14.5), HouseStyle.Small);
        foreach (var row in rows)
        {
            for (int i = 0; i < row.Length; i++)
            {
                double left = columns == 1 ? (Width - panel) / 2 : TitleBlock.Inset + (i * (panel + Gap));
                row[i].DrawOn(sheet, left, y);
            }

            y += row.Max(p => p.Height) + Gap;
        }

        TitleBlock.Draw(sheet, dossier, platform.FaceName, "Vehicles in their tightest places", "Scale as said at each, all figures in mm of the model",
            Invariant($"Budget kept beyond the reach: {Figures.Fine(platform.Budget.Margin)} mm."),
            "Chainages run along the track's middle. Offsets are square to it.");
        return sheet;
    }

    private static bool Shows(PlatformDossier platform, TightPlace place) =>
        place.Pose.Vehicle.TruckOf is not { } engine || platform.Tightest.FirstOrDefault(t => t.Pose.Vehicle.Name == engine
            && t.Pose.OtherTrack == place.Pose.OtherTrack) is not { } own || place.Left < own.Left;
}
