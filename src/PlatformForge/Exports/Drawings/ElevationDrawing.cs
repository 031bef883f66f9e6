using PlatformForge.Geometry;
using PlatformForge.Masonry;
using PlatformForge.Platforms;
using PlatformForge.Solids;
using PlatformForge.Solids.Bodies;
using static System.FormattableString;

namespace PlatformForge.Exports.Drawings;

/// <summary>The elevations of a platform's faced walls, developed to their lengths, with courses, sections' joints and heights.</summary>
public static class ElevationDrawing
{
    private const double Width = 420; // the long side of A3
    private const double Scaled = 30; // mm for dimensions to the left of each face
    private const double Apart = 6, Title = 8;

    // mm of a wall below which its dimensions have their arrows outside, and how far these reach.
    private const double Low = 7, Arrows = 5;

    // A sheet of full-size rows that would be taller than this, mm, is drawn at half size.
    private const double Tallest = 1200;

    /// <summary>Draws all faced walls, each in rows of whole sections.</summary>
    public static Sheet Draw(Dossier dossier, PlatformDossier platform)
    {
        double room = Width - (2 * TitleBlock.Inset) - Scaled;
        var faces = Faces(platform).ToArray();
        double full = faces.SelectMany(f => WallSlice.Rows(f.Slices, room).Select(r => new ElevationRow(r, 1, f.Slab, f.Paint))).Sum(r => r.Height + Apart);
        double reduction = full > Tallest ? 2 : 1;
        var rows = faces.SelectMany(f => WallSlice.Rows(f.Slices, room * reduction).Select((r, i) => (Face: f, First: i == 0, Slices: r,
            Row: new ElevationRow(r, 1 / reduction, f.Slab, f.Paint)))).ToArray();
        double height = TitleBlock.Margin + 20 + rows.Sum(r => r.Row.Height + Over(r.Slices, r.Face.Slab) + Apart + (r.First ? Title : 0)) + TitleBlock.Depth + TitleBlock.Margin + 4;
        var sheet = new Sheet(Width, Math.Max(148, height), Invariant($"{platform.Name}: elevations"))
        {
            Description = "The faced walls as seen from outside, laid flat: "
                + string.Join("; ", faces.Select(f => Invariant($"{f.Name}, {Figures.Mm(f.Slices.Sum(s => s.Length))} mm"))) + ".",
        };
        sheet.Text("Elevations", new(TitleBlock.Inset, TitleBlock.Margin + 9), HouseStyle.Heading);
        sheet.Text("Each wall as seen from outside, developed to its length. Heights are over the baseboard. "
                + "Upright lines in red: joints between sections, whose numbers stand below.",
            new(TitleBlock.Inset, TitleBlock.Margin + 14.5), HouseStyle.Small);
        double y = TitleBlock.Margin + 20;
        foreach (var (face, first, slices, row) in rows)
        {
            if (first)
            {
                sheet.Text(Called(face, platform.Plan), new(TitleBlock.Inset, y + 4), HouseStyle.Subheading);
                y += Title;
            }

            y += Over(slices, face.Slab);
            Point2 corner = new(TitleBlock.Inset + Scaled, y);
            row.DrawOn(sheet, corner);
            Heights(sheet, slices[0], corner, y + row.Height - 5.5, (1 / reduction, face.Slab));
            y += row.Height + Apart;
        }

        TitleBlock.Draw(sheet, dossier, platform.Name, "Elevations of faced walls", reduction > 1 ? "Scale 1:2 of the model"
            : "Scale 1:1, full size of the model",
            platform.Sections.Facing!.Finishes.SelectMany(f => Notes(f.Work)).Take(1).Append("All figures in mm of the model.").ToArray());
        return sheet;
    }

    /// <summary>The faced walls, each with what lies on it.</summary>
    internal static IEnumerable<ElevationFace> Faces(PlatformDossier platform)
    {
        var plan = platform.Plan;
        bool rising = plan.Side == Track.Side.Left;
        foreach (string name in WallNames.AllRound(plan))
        {
            // A face with a coping is seen from its track, the far one from the other side.
            bool isFront = name == WallNames.FrontOf(1) || name == WallNames.FrontOf(2);
            var slices = WallSlice.Of(platform.Sections, name, name == WallNames.FrontOf(1) ? rising : !rising);
            if (slices.Count > 0)
            {
                yield return new(name, slices, plan.Spec.Deck.Thickness, isFront ? CopingGrooves.PaintOf(plan) : Paint.Deck);
            }
        }
    }

    private static string Called(ElevationFace face, PlatformPlan plan)
    {
        var finishes = face.Slices.Select(s => FacingSpec.Name(s.Wall.Finish)).Distinct();
        string name = !plan.Spec.IsIsland && face.Name == WallNames.FrontOf(1) ? "Front" : char.ToUpperInvariant(face.Name[0]) + face.Name[1..];
        return Invariant($"{name}: {string.Join(", ", finishes)}, {Figures.Mm(face.Slices.Sum(s => s.Length))} mm long");
    }

    // Of walls so low that the arrows of their heights stand over and under them, a row has room over it.
    private static double Over(IReadOnlyList<WallSlice> slices, double slab) => slices[0].Top[0].Y + slab < Low ? Arrows : 0;

    private static void Heights(Sheet sheet, WallSlice first, Point2 corner, double foot, (double Scale, double Slab) by)
    {
        double wall = first.Top[0].Y, x = corner.X - 1;
        Point2 At(double height) => new(x, foot - (by.Scale * height));
        Dimensions.Between(sheet, At(0), At(wall + by.Slab), -16, Figures.Mm(wall + by.Slab));
        if (wall > 2)
        {
            Dimensions.Between(sheet, At(0), At(wall), -8, Figures.Mm(wall));
        }
    }

    private static IEnumerable<string> Notes(WallWork work) => work switch
    {
        BrickworkSpec b => [Invariant($"Bond: {FacingSpec.Name(b.Bond)}, courses of {Figures.Fine(b.Module.Course)}, ")
            + Invariant($"joints {Figures.Fine(b.Laying.Joint)} wide and {Figures.Fine(b.Laying.Depth)} deep.")],
        _ => [Invariant($"Joints {Figures.Fine(work.Laying.Joint)} wide and {Figures.Fine(work.Laying.Depth)} deep.")],
    };
}

/// <summary>A face of a platform that is drawn.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Slices">Its walls from left to right.</param>
/// <param name="Slab">Thickness of what lies on them, mm.</param>
/// <param name="Paint">What that shows.</param>
internal sealed record ElevationFace(string Name, IReadOnlyList<WallSlice> Slices, double Slab, Paint Paint);
