using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Files;
using PlatformForge.Geometry;
using PlatformForge.Sections.Forms;
using static System.FormattableString;

namespace PlatformForge.Exports.Drawings.Plans;

/// <summary>The print plates with the sections as they lie on them.</summary>
public static class PlateDrawing
{
    private const double Width = 420;
    private const double Gap = 10;
    private const double Caption = 17;

    public static Sheet Draw(Dossier dossier, PlatformDossier platform)
    {
        var bed = dossier.Printer.Bed;
        double x0 = bed.Min(p => p.X), x1 = bed.Max(p => p.X), y0 = bed.Min(p => p.Y), y1 = bed.Max(p => p.Y);
        var plates = platform.Sections.Plates;
        int columns = Math.Clamp(plates.Count, 1, 4), rows = Math.Max(1, (plates.Count + columns - 1) / columns);
        double room = Math.Min(130, (Width - (2 * TitleBlock.Inset) - (Gap * (columns - 1))) / columns), reduction = (x1 - x0) / room;
        double tall = (y1 - y0) / reduction, height = TitleBlock.Margin + 22 + (rows * (tall + Caption)) + 4 + TitleBlock.Depth + TitleBlock.Margin;
        var sheet = new Sheet(Width, height, Invariant($"{platform.Name}: plates"))
        {
            Description = Invariant($"{plates.Count} print plates with {platform.Sections.Sections.Count} sections."),
        };
        sheet.Text("Plates", new(TitleBlock.Inset, TitleBlock.Margin + 9), HouseStyle.Heading);
        sheet.Text("Sections as they lie on the bed, seen from above: those that lie deck down show walls and ribs, and their coping (dashed) is underneath. "
            + "The arrow runs towards higher chainage. The dashed frame is the margin to keep.",
            new(TitleBlock.Inset, TitleBlock.Margin + 14.5), HouseStyle.Small);
        double used = (columns * room) + (Gap * (columns - 1)), left = (Width - used) / 2;
        for (int i = 0; i < plates.Count; i++)
        {
            var corner = new Point2(left + ((i % columns) * (room + Gap)), TitleBlock.Margin + 20 + ((i / columns) * (tall + Caption)));
            Point2 Of(Point2 p) => corner + new Point2((p.X - x0) / reduction, (y1 - p.Y) / reduction);
            Plate(sheet, dossier, platform, plates[i], Of, corner, new(room, tall));
        }

        var total = platform.Sections.Estimate;
        TitleBlock.Draw(sheet, dossier, platform.Name, "Plates and sections", Invariant($"Scale 1:{Figures.Fine(reduction)}, bed {Figures.Short(x1 - x0)} ")
            + Invariant($"x {Figures.Short(y1 - y0)} mm"),
            Invariant($"All plates: {Figures.Fixed(total.Grams, 0)} g, {Figures.Fixed(total.Metres, 1)} m, about {Figures.Time(total.Hours)}, estimated."),
            "Printing gives off fine particles and vapours: ventilate, and do not leave it unattended.");
        return sheet;
    }

    private static void Plate(Sheet sheet, Dossier dossier, PlatformDossier platform, Plate plate, Func<Point2, Point2> of, Point2 corner, Point2 size)
    {
        sheet.Area(dossier.Printer.Bed.Select(of), new(HouseStyle.White), HouseStyle.Outline);
        double x0 = dossier.Printer.Bed.Min(p => p.X), x1 = dossier.Printer.Bed.Max(p => p.X), y0 = dossier.Printer.Bed.Min(p => p.Y),
            y1 = dossier.Printer.Bed.Max(p => p.Y), m = dossier.Printer.Margin;
        if (dossier.Printer.Bed.Count == 4)
        {
            sheet.Area(((Point2[])[new(x0 + m, y0 + m), new(x1 - m, y0 + m), new(x1 - m, y1 - m), new(x0 + m, y1 - m)]).Select(of), null,
                new(0.12, HouseStyle.Quiet, 2, 1.2));
        }

        foreach (var placed in plate.Sections)
        {
            new PlatePiece(platform.Plan, placed, of).DrawOn(sheet);
        }

        sheet.Text(Invariant($"Plate {plate.Number}"), corner + new Point2(0, size.Y + 4.6), HouseStyle.Subheading);
        string sections = (plate.Sections.Count == 1 ? "section " : "sections ")
            + string.Join(", ", plate.Sections.Select(p => Invariant($"{p.Section.Number}")));
        sheet.Text(sections, corner + new Point2(16, size.Y + 4.6), TitleBlock.Fitting(sections, HouseStyle.Label, size.X - 16));
        string print = Invariant($"{Figures.Fixed(plate.Estimate.Grams, 0)} g, about {Figures.Time(plate.Estimate.Hours)}");
        sheet.Text(print, corner + new Point2(0, size.Y + 9), HouseStyle.Small);
    }
}
