using PlatformForge.Geometry;
using PlatformForge.Masonry;
using PlatformForge.Platforms;
using PlatformForge.Sections;
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
        double full = faces.SelectMany(f => f.Rows(room, 1)).Sum(r => r.Height + Apart);
        double reduction = full > Tallest ? 2 : 1;
        var rows = faces.SelectMany(f => f.Rows(room * reduction, 1 / reduction).Select((r, i) => (Face: f, First: i == 0, Row: r))).ToArray();
        double all = rows.Sum(r => r.Row.Height + Over(r.Row) + Apart + (r.First ? Title : 0));
        double height = TitleBlock.Margin + 20 + all + TitleBlock.Depth + TitleBlock.Margin + 4;
        var sheet = new Sheet(Width, Math.Max(148, height), Invariant($"{platform.Name}: elevations"))
        {
            Description = "The faced walls as seen from outside, laid flat: "
                + string.Join("; ", faces.Select(f => Invariant($"{f.Name}, {Figures.Mm(f.Length)} mm"))) + ".",
        };
        sheet.Text("Elevations", new(TitleBlock.Inset, TitleBlock.Margin + 9), HouseStyle.Heading);
        sheet.Text("Each wall as seen from outside, developed to its length. Heights are over the baseboard, or over the deck for what stands on it. "
                + "Upright lines in red: joints between sections, whose numbers stand below."
                + (platform.Plan.WallOpenings.Any(o => o.Spec.IsThrough) ? " Black: right through; grey: a recess." : ""),
            new(TitleBlock.Inset, TitleBlock.Margin + 14.5), HouseStyle.Small);
        double y = TitleBlock.Margin + 20;
        foreach (var (face, first, row) in rows)
        {
            if (first)
            {
                sheet.Text(Called(face, platform.Plan), new(TitleBlock.Inset, y + 4), HouseStyle.Subheading);
                y += Title;
            }

            y += Over(row);
            Point2 corner = new(TitleBlock.Inset + Scaled, y);
            row.DrawOn(sheet, corner);
            Heights(sheet, row, corner, y + row.Height - 5.5, 1 / reduction);
            y += row.Height + Apart;
        }

        TitleBlock.Draw(sheet, dossier, platform.Name, "Elevations of faced walls", reduction > 1 ? "Scale 1:2 of the model"
            : "Scale 1:1, full size of the model",
            (platform.Sections.Facing?.Finishes ?? []).SelectMany(f => Notes(f.Work)).Take(1).Append("All figures in mm of the model.").ToArray());
        return sheet;
    }

    /// <summary>Whether there is anything to draw: a faced wall, or a back that is no wall.</summary>
    internal static bool IsOf(PlatformDossier platform) =>
        platform.Sections.Facing is not null || (!platform.Plan.Spec.IsIsland && platform.Plan.Spec.Back.Kind != BackKind.Wall);

    /// <summary>The faced walls, each with what lies on it, and a back that is no wall.</summary>
    internal static IEnumerable<ElevationFace> Faces(PlatformDossier platform)
    {
        var (plan, set) = (platform.Sections.Plan, platform.Sections);
        bool rising = plan.Side == Track.Side.Left;
        foreach (string name in WallNames.AllRound(plan))
        {
            // A face with a coping is seen from its track, the far one from the other side.
            bool isFront = name == WallNames.FrontOf(1) || name == WallNames.FrontOf(2);
            var slices = WallSlice.Of(set, name, name == WallNames.FrontOf(1) ? rising : !rising);
            if (slices.Count > 0)
            {
                yield return new(name, slices, plan.Spec.Deck.Thickness, isFront ? CopingGrooves.PaintOf(plan) : Paint.Deck)
                {
                    Over = name == WallNames.Back ? [.. Standing(plan)] : [],
                };
            }

            if (name == WallNames.Back && plan.Spec.Back.Kind != BackKind.Wall)
            {
                yield return new(name, [], 0, Paint.Deck)
                {
                    Back = new(set),
                    Words = plan.Bank is { } bank ? Invariant($"bank of 1 in {Figures.Short(bank.Slope)}") : "open, as from the backscene",
                };
            }

            if (name == WallNames.FrontOf(1) && Retaining(set, rising) is { Slices.Count: > 0 } wall)
            {
                yield return wall;
            }
        }
    }

    /// <summary>The face of a retaining wall over the deck: its pieces, coping and plinth; without slices where there is none, or it is plain.</summary>
    internal static ElevationFace Retaining(SectionSet set, bool rising)
    {
        LinePiece[] pieces = [.. set.Lines.Pieces.Where(p => p.Made.Wall is not null)];
        WallSlice[] slices = [.. (rising ? pieces : pieces.Reverse())
            .SelectMany(p => p.Faced.Select(w => new WallSlice(w, p.Section, 0, w.Wall.Length, true)))];
        var made = pieces.FirstOrDefault()?.Made.Wall;
        double foot = slices.SelectMany(s => s.Wall.Wall.Foot).Select(p => p.Y).DefaultIfEmpty(0).Min();
        return new(WallNames.Retaining, slices, made?.Coping ?? 0, Paint.Coping)
        {
            Base = foot - (made?.Plinth ?? 0),
            Plinth = made?.Plinth ?? 0,
            Words = "over the deck",
        };
    }

    // What stands on the deck along the back, as it is seen from behind.
    private static IEnumerable<StandingBand> Standing(PlatformPlan plan)
    {
        foreach (var line in plan.Body.Lines.Where(l => l.Made.Name is LineMake.Retaining or LineMake.Kerb))
        {
            Point2 from = plan.ToLayout(line.From, line.Far.At(line.From)), to = plan.ToLayout(line.To, line.Far.At(line.To));
            double coping = line.Made.Wall?.Coping ?? 0;
            yield return new(from, to, 0, line.Made.Rise - coping, LineLooks.Of(line.Made, plan.Spec));
            if (coping > 0)
            {
                yield return new(from, to, line.Made.Rise - coping, line.Made.Rise, Palette.Of(Paint.Coping));
            }
        }
    }

    private static string Called(ElevationFace face, PlatformPlan plan)
    {
        var finishes = face.Slices.Select(s => FacingSpec.Name(s.Wall.Finish)).Distinct();
        string name = !plan.Spec.IsIsland && face.Name == WallNames.FrontOf(1) ? "Front" : char.ToUpperInvariant(face.Name[0]) + face.Name[1..];
        return Invariant($"{name}: {string.Join(", ", face.Words is { } words ? finishes.Append(words) : finishes)}, {Figures.Mm(face.Length)} mm long");
    }

    // Of walls so low that the arrows of their heights stand over and under them, a row has room over it.
    private static double Over(IElevationRow row) => row.Left.All < Low ? Arrows : 0;

    private static void Heights(Sheet sheet, IElevationRow row, Point2 corner, double foot, double scale)
    {
        var (wall, all) = row.Left;
        double x = corner.X - 1;
        Point2 At(double height) => new(x, foot - (scale * height));
        Dimensions.Between(sheet, At(0), At(all), -16, Figures.Mm(all));
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
