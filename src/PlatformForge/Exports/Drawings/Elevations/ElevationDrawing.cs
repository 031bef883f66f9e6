using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Files;
using PlatformForge.Geometry;
using PlatformForge.Masonry;
using PlatformForge.Masonry.Finishes;
using PlatformForge.Platforms.Plans;
using PlatformForge.Solids.Bodies.Layers;
using static System.FormattableString;

namespace PlatformForge.Exports.Drawings.Elevations;

/// <summary>The elevations of a platform's faces, developed to their lengths, with courses, what is in and before them, sections' joints and heights.</summary>
public static class ElevationDrawing
{
    private const double Width = 420; // the long side of A3
    private const double Apart = 6, Title = 8, Line = 4.2;

    // A sheet of full-size rows that would be taller than this, mm, is drawn at half size.
    private const double Tallest = 1200;

    /// <summary>Draws all faces, each in rows of whole sections.</summary>
    public static Sheet Draw(Dossier dossier, PlatformDossier platform)
    {
        double room = Width - (2 * TitleBlock.Inset) - (2 * RowLevels.Room);
        var faces = ElevationFaces.Of(platform).ToArray();
        double full = faces.SelectMany(f => f.Rows(room, 1)).Sum(r => r.Height + Apart);
        double reduction = full > Tallest ? 2 : 1;
        var rows = faces.SelectMany(f => f.Rows(room * reduction, 1 / reduction).Select((r, i) => (Face: f, First: i == 0, Row: r))).ToArray();
        double all = rows.Sum(r => Depth(r.Row, 1 / reduction) + (r.First ? Above(r.Face) : 0));
        double height = TitleBlock.Margin + 20 + all + TitleBlock.Depth + TitleBlock.Margin + 4;
        var sheet = new Sheet(Width, Math.Max(148, height), Invariant($"{platform.Name}: elevations"))
        {
            Description = "The faces as seen from outside, laid flat: "
                + string.Join("; ", faces.Select(f => Invariant($"{f.Name}, {Figures.Mm(f.Length)} mm"))) + ".",
        };
        double y = TitleBlock.Margin + 20;
        foreach (var (face, first, row) in rows)
        {
            y += first ? Above(face) : 0;
            if (first)
            {
                Titled(sheet, face, platform.Plan, y - Above(face));
            }

            Draw(sheet, row, y, 1 / reduction, platform.Plan.Site.RailTop);
            y += Depth(row, 1 / reduction);
        }

        Head(sheet, platform.Plan, sheet.Items.OfType<SheetPath>().Any(p => p.Pen == HouseStyle.Cut));
        TitleBlock.Draw(sheet, dossier, platform.Name, "Elevations", reduction > 1 ? "Scale 1:2 of the model" : "Scale 1:1, full size of the model",
            (platform.Sections.Facing?.Finishes ?? []).SelectMany(f => Notes(f.Work)).Take(1).Append("All figures in mm of the model.").ToArray());
        return sheet;
    }

    // Words on what is drawn, joints among it where any lies within a row.
    private static void Head(Sheet sheet, PlatformPlan plan, bool joins)
    {
        sheet.Text("Elevations", new(TitleBlock.Inset, TitleBlock.Margin + 9), HouseStyle.Heading);
        string words = "Each face as seen from outside, developed to its length. Heights are over the baseboard, in brackets over the rails. "
            + (joins ? "Red: joints between sections, whose numbers and lengths stand below." : "Numbers and lengths of sections stand below.")
            + (plan.Holes.Any(h => h.Place.Hole!.IsThrough) ? " Black: right through; grey: a recess." : "")
            + (plan.Features.Any(f => f.Shown.Count > 0) ? " What stands on the deck is shown by its place; its shape is an example." : "");
        sheet.Text(words, new(TitleBlock.Inset, TitleBlock.Margin + 14.5),
            TitleBlock.Fitting(words, HouseStyle.Small, sheet.Width - (2 * TitleBlock.Inset)));
    }

    // A row from the sheet's left edge on, with the heights at both its ends.
    private static void Draw(Sheet sheet, IElevationRow row, double y, double scale, double rail)
    {
        Point2 corner = new(TitleBlock.Inset + RowLevels.Room, y + Beyond(row, scale).Over);
        row.DrawOn(sheet, corner);
        Point2 zero = new(corner.X, corner.Y + row.Height - row.Under + (scale * row.Span.Base));
        RowLevels.Draw(sheet, row.Left, zero, scale, rail);
        RowLevels.Draw(sheet, row.Right, zero + new Point2(row.Length, 0), scale, rail, onRight: true);
    }

    // Height of a row with what its heights take over and under it, and what is kept to the next.
    private static double Depth(IElevationRow row, double scale) =>
        Beyond(row, scale) is var (over, under) ? over + row.Height + Math.Max(0, under - row.Under) + Apart : 0;

    private static (double Over, double Under) Beyond(IElevationRow row, double scale)
    {
        var (left, right) = (RowLevels.Beyond(row.Left, scale, row.Span), RowLevels.Beyond(row.Right, scale, row.Span));
        return (Math.Max(left.Over, right.Over), Math.Max(left.Under, right.Under));
    }

    private static double Above(ElevationFace face) => Title + (Line * FaceWords.Of(face).Count);

    private static void Titled(Sheet sheet, ElevationFace face, PlatformPlan plan, double y)
    {
        sheet.Text(Called(face, plan), new(TitleBlock.Inset, y + 4), HouseStyle.Subheading);
        foreach (var (words, i) in FaceWords.Of(face).Select((w, i) => (w, i)))
        {
            sheet.Text(words, new(TitleBlock.Inset, y + 4 + (Line * (i + 1))), TitleBlock.Fitting(words, HouseStyle.Small, Width - (2 * TitleBlock.Inset)));
        }
    }

    private static string Called(ElevationFace face, PlatformPlan plan)
    {
        var finishes = face.Slices.Select(s => FacingSpec.Name(s.Wall.Finish)).Distinct();
        string name = !plan.Spec.IsIsland && face.Name == WallNames.FrontOf(1) ? "Front" : char.ToUpperInvariant(face.Name[0]) + face.Name[1..];
        return Invariant($"{name}: {string.Join(", ", face.Words is { } words ? finishes.Append(words) : finishes)}, {Figures.Mm(face.Length)} mm long");
    }

    private static IEnumerable<string> Notes(WallWork work) => work switch
    {
        BrickworkSpec b => [Invariant($"Bond: {FacingSpec.Name(b.Bond)}, courses of {Figures.Fine(b.Course)}, ")
            + Invariant($"joints {Figures.Fine(b.Laying.Joint)} wide and {Figures.Fine(b.Laying.Depth)} deep.")],
        _ => [Invariant($"Joints {Figures.Fine(work.Laying.Joint)} wide and {Figures.Fine(work.Laying.Depth)} deep.")],
    };
}
