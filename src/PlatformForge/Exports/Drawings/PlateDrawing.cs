using PlatformForge.Geometry;
using PlatformForge.Platforms;
using PlatformForge.Sections;
using static System.FormattableString;

namespace PlatformForge.Exports.Drawings;

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
        sheet.Text("Sections as they lie on the bed, seen from above. The dashed line is the margin to keep.", new(TitleBlock.Inset, TitleBlock.Margin + 14.5), HouseStyle.Small);
        double used = (columns * room) + (Gap * (columns - 1)), left = (Width - used) / 2;
        for (int i = 0; i < plates.Count; i++)
        {
            var corner = new Point2(left + ((i % columns) * (room + Gap)), TitleBlock.Margin + 20 + ((i / columns) * (tall + Caption)));
            Point2 Of(Point2 p) => corner + new Point2((p.X - x0) / reduction, (y1 - p.Y) / reduction);
            Plate(sheet, dossier, platform, plates[i], Of, corner, new(room, tall));
        }

        var total = platform.Sections.Estimate;
        TitleBlock.Draw(sheet, dossier, platform.Name, "Plates and sections", Invariant($"Scale 1:{Figures.Fine(reduction)}, bed {Figures.Short(x1 - x0)} x {Figures.Short(y1 - y0)} mm"),
            Invariant($"All plates: {Figures.Fixed(total.Grams, 0)} g, {Figures.Fixed(total.Metres, 1)} m, {Figures.Time(total.LeastHours)} to {Figures.Time(total.MostHours)}, estimated."),
            "Printing gives off fine particles and vapours: ventilate, and do not leave it unattended.");
        return sheet;
    }

    private static void Plate(Sheet sheet, Dossier dossier, PlatformDossier platform, Plate plate, Func<Point2, Point2> of, Point2 corner, Point2 size)
    {
        sheet.Area(dossier.Printer.Bed.Select(of), new(HouseStyle.White), HouseStyle.Outline);
        double x0 = dossier.Printer.Bed.Min(p => p.X), x1 = dossier.Printer.Bed.Max(p => p.X), y0 = dossier.Printer.Bed.Min(p => p.Y), y1 = dossier.Printer.Bed.Max(p => p.Y), m = dossier.Printer.Margin;
        if (dossier.Printer.Bed.Count == 4)
        {
            sheet.Area(((Point2[])[new(x0 + m, y0 + m), new(x1 - m, y0 + m), new(x1 - m, y1 - m), new(x0 + m, y1 - m)]).Select(of), null, new(0.12, HouseStyle.Quiet, 2, 1.2));
        }

        foreach (var placed in plate.Sections)
        {
            Section(sheet, platform.Plan, placed, of);
        }

        sheet.Text(Invariant($"Plate {plate.Number}"), corner + new Point2(0, size.Y + 4.6), HouseStyle.Subheading);
        string sections = (plate.Sections.Count == 1 ? "section " : "sections ") + string.Join(", ", plate.Sections.Select(p => Invariant($"{p.Section.Number}")));
        sheet.Text(sections, corner + new Point2(16, size.Y + 4.6), TitleBlock.Fitting(sections, HouseStyle.Label, size.X - 16));
        string print = Invariant($"{Figures.Fixed(plate.Estimate.Grams, 0)} g, {Figures.Time(plate.Estimate.LeastHours)} to {Figures.Time(plate.Estimate.MostHours)}");
        sheet.Text(print, corner + new Point2(0, size.Y + 9), HouseStyle.Small);
    }

    private static void Section(Sheet sheet, PlatformPlan plan, PlacedSection placed, Func<Point2, Point2> of)
    {
        var section = placed.Section;
        var toBed = section.ToLayout.Inverse().Then(placed.ToBed);
        Point2 Place(double s, double t)
        {
            var p = plan.ToLayout(s, t);
            var q = toBed.Apply(new(p.X, p.Y, plan.TopAt(s, t)));
            return of(new(q.X, q.Y));
        }

        var stations = plan.Stations.Where(s => s > section.From && s < section.To).Prepend(section.From).Append(section.To).ToArray();
        var front = stations.Select(s => Place(s, plan.CopingFront.At(s))).ToArray();
        var back = stations.Select(s => Place(s, plan.Back.At(s))).ToArray();
        sheet.Area(front.Concat(back.Reverse()), new(HouseStyle.Deck), HouseStyle.Outline);
        sheet.Area(front.Concat(stations.Select(s => Place(s, plan.CopingBack.At(s))).Reverse()), new(HouseStyle.Coping), HouseStyle.Thin);
        foreach (var rib in plan.Ribs.Where(r => r.From < section.To && r.To > section.From))
        {
            var along = stations.Where(s => s > rib.From && s < rib.To).Prepend(Math.Max(rib.From, section.From)).Append(Math.Min(rib.To, section.To)).ToArray();
            sheet.Area(along.Select(s => Place(s, rib.Near.At(s))).Concat(along.Reverse().Select(s => Place(s, rib.Far.At(s)))), null, HouseStyle.Hidden with { Width = 0.1 });
        }

        double middle = (section.From + section.To) / 2, t = (plan.CopingBack.At(middle) + plan.Back.At(middle)) / 2;
        var at = Place(middle, t);
        sheet.Circle(at, 3.1, new(HouseStyle.Accent));
        string size = Invariant($"{Figures.Mm(section.Size.X)} x {Figures.Mm(section.Size.Y)} x {Figures.Mm(section.Size.Z)}");
        double words = TextStyle.Length(size, HouseStyle.Small);
        sheet.Box(at.X - (words / 2) - 0.8, at.Y + 3.6, words + 1.6, 3.2, new(HouseStyle.Deck));
        sheet.Text(size, at + new Point2(0, 6), HouseStyle.Small with { Colour = HouseStyle.Ink }, TextAnchor.Middle);
        sheet.Text(Invariant($"{section.Number}"), at + new Point2(0, 1.15), HouseStyle.Strong with { Size = 3.2, Colour = HouseStyle.White }, TextAnchor.Middle);
    }
}
