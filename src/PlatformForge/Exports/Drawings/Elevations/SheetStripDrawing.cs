using PlatformForge.Exports.Drawings.Elevations.Walls;
using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Files;
using PlatformForge.Geometry;
using PlatformForge.Masonry;
using PlatformForge.Masonry.Finishes;
using static System.FormattableString;

namespace PlatformForge.Exports.Drawings.Elevations;

/// <summary>The pieces of bought sheet for a platform's rebates, each laid flat at full size, to cut by: one a wall and section.</summary>
public static class SheetStripDrawing
{
    private const double Width = 420; // the long side of A3
    private const double Apart = 9, Title = 8, Between = 4;

    /// <summary>Draws all strips, in rows that are no longer than the sheet.</summary>
    public static Sheet Draw(Dossier dossier, PlatformDossier platform)
    {
        double room = Width - (2 * TitleBlock.Inset);
        var faces = ElevationFaces.Faced(platform)
            .Select(f => (f.Name, Rows: WallSlice.Rows(Strips(f), room - (Between * f.Slices.Count))))
            .Where(f => f.Rows.Count > 0).ToArray();
        double height = TitleBlock.Margin + 22 + faces.Sum(f => Title + f.Rows.Sum(r => r.Max(s => s.Height) + Apart)) + TitleBlock.Depth + TitleBlock.Margin
            + 4;
        var sheet = new Sheet(Width, Math.Max(148, height), Invariant($"{platform.Name}: strips"))
        {
            Description = Invariant($"{Of(platform).Count()} pieces of sheet for the walls of {platform.Name}, laid flat at full size."),
        };
        sheet.Text("Strips of sheet", new(TitleBlock.Inset, TitleBlock.Margin + 9), HouseStyle.Heading);
        sheet.Text("One for each wall and section, its face up. Round a corner two edges meet: cut one of them longer by the sheet's thickness.",
            new(TitleBlock.Inset, TitleBlock.Margin + 14.5), HouseStyle.Small);
        double y = TitleBlock.Margin + 20;
        foreach (var (name, rows) in faces)
        {
            sheet.Text(char.ToUpperInvariant(name[0]) + name[1..], new(TitleBlock.Inset, y + 4), HouseStyle.Subheading);
            y += Title;
            foreach (var row in rows)
            {
                double tall = row.Max(s => s.Height), x = TitleBlock.Inset;
                foreach (var slice in row)
                {
                    Strip(sheet, slice, new(x, y + tall));
                    x += slice.Length + Between;
                }

                y += tall + Apart;
            }
        }

        double depth = platform.Sections.Facing!.Finishes.First(f => f.Work is SheetSpec).Work.Laying.Depth;
        TitleBlock.Draw(sheet, dossier, platform.Name, "Strips of sheet for the walls", "Scale 1:1, full size of the model",
            Invariant($"For sheet no thicker than its rebate, {Figures.Fine(depth)} mm."), "A thicker one takes from the clearance what it stands out.");
        return sheet;
    }

    /// <summary>All strips of a platform, as they are drawn.</summary>
    internal static IEnumerable<WallSlice> Of(PlatformDossier platform) =>
        ElevationFaces.Faced(platform).SelectMany(Strips);

    // Of a wall in parts, one a part.
    private static IEnumerable<WallSlice> Strips(ElevationFace face) =>
        face.Slices.SelectMany(s => s.Parts()).Select(p => p.Part).Where(s => s.Wall.Finish == WallFinish.Sheet);

    // Its outline, with its section's number and its measures: length, and height at both ends.
    private static void Strip(Sheet sheet, WallSlice slice, Point2 foot)
    {
        Point2 At(Point2 p) => new(foot.X + p.X, foot.Y - p.Y);
        var (top, low) = (slice.Edge(slice.Wall.Wall.Top), slice.Edge(slice.Wall.Wall.Foot));
        sheet.Area(low.Concat(top.Reverse()).Select(At), new(HouseStyle.White), HouseStyle.Outline);
        double left = top[0].Y - low[0].Y, right = top[^1].Y - low[^1].Y;
        string high = Math.Abs(left - right) < 0.05 ? Figures.Mm(left) : Invariant($"{Figures.Mm(left)} to {Figures.Mm(right)}");
        sheet.Text(Invariant($"{slice.Section}: {Figures.Mm(slice.Length)} x {high}"), new(foot.X, foot.Y + 4), HouseStyle.Small);
    }
}
