using PlatformForge.Exports.Files;
using PlatformForge.Exports.LineArt;
using static System.FormattableString;

namespace PlatformForge.Exports.Drawings.Ink;

/// <summary>The whole platform in isometric projection, as it stands beside the track.</summary>
public static class IsometricDrawing
{
    private const double Width = 420;
    private const double Height = 297;

    /// <summary>Draws it.</summary>
    public static Sheet Draw(Dossier dossier, PlatformDossier platform, CancellationToken cancel = default)
    {
        var row = new ExplodedRow(platform, 0, turnedOver: false);
        double top = TitleBlock.Margin + 18, bottom = Height - TitleBlock.Margin - TitleBlock.Depth - 6;
        var art = new LineArtSheet(row, new(TitleBlock.Inset + 4, top + 12), new(Width - (2 * TitleBlock.Inset) - 8, bottom - top - 12));
        int count = platform.Sections.Sections.Count;
        var sheet = new Sheet(Width, Height, Invariant($"{platform.Name}: isometric view"))
        {
            Description = Invariant($"The platform's {count} sections together, in isometric projection from the track's side, with their numbers."),
        };
        sheet.Text("The platform as it stands", new(TitleBlock.Inset, TitleBlock.Margin + 9), HouseStyle.Heading);
        sheet.Text(
            "Isometric projection from the track's side. Only what is printed is drawn; hidden lines are left out.",
            new(TitleBlock.Inset, TitleBlock.Margin + 14.5), HouseStyle.Small);
        art.Draw(sheet, cancel);
        art.Number(sheet, platform.Sections.Sections.Select(s => s.Number));
        TitleBlock.Draw(
            sheet, dossier, platform.Name, "Isometric view", art.ScaleInWords,
            count == 1 ? "In one piece." : Invariant($"{count} sections, numbered as underneath."), "Not for measuring: use the setting-out table.");
        return sheet;
    }
}
