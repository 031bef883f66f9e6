using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Files;
using PlatformForge.Exports.LineArt;
using PlatformForge.Geometry;
using PlatformForge.Sections.Forms;
using static System.FormattableString;

namespace PlatformForge.Exports.Drawings.Plans;

/// <summary>The sections turned over and drawn apart: which meets which, with what between them, and which way round.</summary>
public static class AssemblyDrawing
{
    private const double Width = 420;
    private const double Height = 297;
    private const double Row = 4.2;

    // Of the mean length of a section: how far apart they are drawn; never less than a dowel and a half.
    private const double Apart = 0.16;

    // As many joints as the sheet has room for beside the drawing.
    private const int MostListed = 24;

    private static readonly Pen Axis = new(0.18, HouseStyle.Accent, 3, 0.8, 0.6, 0.8);

    /// <summary>Draws it.</summary>
    public static Sheet Draw(Dossier dossier, PlatformDossier platform, CancellationToken cancel = default)
    {
        var sections = platform.Sections.Sections;
        double dowel = platform.Sections.Dowels.Select(d => d.Length).DefaultIfEmpty(0).Max();
        var row = new ExplodedRow(platform, Math.Max(1.5 * dowel, Apart * sections.Average(s => s.Length)), turnedOver: true);
        double top = TitleBlock.Margin + 18, bottom = Height - TitleBlock.Margin - TitleBlock.Depth - 6;
        var art = new LineArtSheet(row, new(TitleBlock.Inset + 4, top + 12), new(Width - (2 * TitleBlock.Inset) - 8, bottom - top - 12));
        var sheet = new Sheet(Width, Height, Invariant($"{platform.Name}: assembly"))
        {
            Description = Invariant($"The {sections.Count} sections drawn apart, lying on their decks, with what joins them, a letter to each joint, and a ")
                + "list of the joints.",
        };
        sheet.Text("How the sections go together", new(TitleBlock.Inset, TitleBlock.Margin + 9), HouseStyle.Heading);
        sheet.Text(
            "Lying on their decks on a flat surface, as they are joined. Numbers are those underneath. Two faces with one letter meet; "
                + "arrows on dash-dotted lines: where dowels or plates go in.",
            new(TitleBlock.Inset, TitleBlock.Margin + 14.5), HouseStyle.Small);
        art.Draw(sheet, cancel);
        foreach (var loose in row.Loose)
        {
            LineArtSheet.Arrow(sheet, art.Of(loose.Ways.ToFrom), art.Of(loose.From), Axis);
            LineArtSheet.Arrow(sheet, art.Of(loose.Ways.ToTo), art.Of(loose.To), Axis);
        }

        art.Number(sheet, sections.Select(s => s.Number));
        foreach (int i in Enumerable.Range(0, Math.Min(sections.Count - 1, MostListed)))
        {
            var plan = platform.Plan;
            double cut = sections[i].To, reach = plan.CopingFront.At(cut);
            var plain = plan.ToLayout(cut, reach);
            Point3 edge = new(plain.X, plain.Y, plan.TopAt(cut, reach));
            art.Letter(sheet, LetterOf(i), row.Place(i, edge), row.Place(i + 1, edge));
        }

        Arrow(sheet, row, top);
        Joints(sheet, platform, bottom);
        TitleBlock.Draw(
            sheet, dossier, platform.Name, "Assembly", art.ScaleInWords,
            "Try every joint dry before anything is glued.", "Instant glue and solvents: fresh air, gloves, no flames; read the label.");
        return sheet;
    }

    // As many letters as joints that are listed: one of the alphabet each.
    private static string LetterOf(int joint) => ((char)('A' + joint)).ToString();

    // The corner over the row is empty: the row rises to the right.
    private static void Arrow(Sheet sheet, ExplodedRow row, double top)
    {
        Point2 low = new(TitleBlock.Inset + 4, top + 24), along = new(Math.Sqrt(3) / 2, -0.5);
        var (from, to) = row.Rising ? (low, low + (along * 30)) : (low + (along * 30), low);
        LineArtSheet.Arrow(sheet, from, to, new(0.4, HouseStyle.Accent));
        sheet.Text("rising chainage, as the arrows underneath", low + new Point2(0, 6), HouseStyle.AccentLabel);
    }

    private static void Joints(Sheet sheet, PlatformDossier platform, double bottom)
    {
        var sections = platform.Sections.Sections;
        var lines = new List<(string Which, string At, string How)>(
            sections.SkipLast(1).Take(MostListed)
            .Select((s, i) => (Invariant($"{LetterOf(i)}   {s.Number} to {s.Number + 1}"), "at " + Figures.Mm(s.To), Between(platform, s))));
        if (sections.Count - 1 > MostListed)
        {
            lines.Add(("", "", Invariant($"and {sections.Count - 1 - MostListed} more in the same way")));
        }

        if (lines.Count == 0)
        {
            return;
        }

        double which = lines.Max(l => TextStyle.Length(l.Which, HouseStyle.Label)) + 3, at = lines.Max(l => TextStyle.Length(l.At, HouseStyle.Label)) + 4;
        double how = lines.Max(l => TextStyle.Length(l.How, HouseStyle.Label));
        Point2 corner = new(Width - TitleBlock.Inset - which - at - how - 2, bottom - (Row * lines.Count) - 3);
        sheet.Text("Joints, by chainage in mm", corner, HouseStyle.Subheading);
        for (int i = 0; i < lines.Count; i++)
        {
            double y = Row * (i + 1.2);
            sheet.Text(lines[i].Which, corner + new Point2(0, y), HouseStyle.Label);
            sheet.Text(lines[i].At, corner + new Point2(which, y), HouseStyle.Label);
            sheet.Text(lines[i].How, corner + new Point2(which + at, y), HouseStyle.Label);
        }
    }

    private static string Between(PlatformDossier platform, PlatformSection section)
    {
        int dowels = section.Bores.Count(b => b.Chainage == section.To);
        var cut = platform.Sections.Dowels is [var first, ..] ? first : null;
        return dowels > 0 && cut is not null ? Invariant($"{dowels} x {cut.What}, {Figures.Short(cut.Length)} long")
            : section.Pockets.Count > 0 && cut is not null ? Invariant($"2 x {cut.What}, {Figures.Short(cut.Length)} long, let in from below")
            : "butted and glued";
    }
}
