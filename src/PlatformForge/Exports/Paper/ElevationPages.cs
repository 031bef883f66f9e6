using PlatformForge.Exports.Drawings.Elevations;
using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Files;
using PlatformForge.Geometry;
using PlatformForge.Solids.Bodies.Layers;
using static System.FormattableString;

namespace PlatformForge.Exports.Paper;

/// <summary>
/// All faces at full size on as many sheets as they take: each laid flat as seen from outside, in rows that fit the sheet,
/// to hold a print against or to mark sheet from.
/// </summary>
internal sealed class ElevationPages(string name, IReadOnlyList<ElevationFace> faces, PaperSpec paper, SheetRoom room, SheetOrigin origin)
{
    // mm: kept at both ends of a row, for a row's words, between two rows, between two side by side.
    private const double Rim = 4, Words = 7, Apart = 5, Beside = 8;

    // What stands on the deck is broken off so far over it, mm: its foot is what is set out by the sheet.
    internal const double Broken = 10;

    /// <summary>The walls and ends that go with one face of a platform: of an island the second face has its own wall alone.</summary>
    public static IReadOnlyList<ElevationFace> FacesOf(PlatformDossier platform, PlatformDossier face)
    {
        bool isFirst = platform.Faces.First().FaceName == face.FaceName;
        return [.. ElevationFaces.Of(platform).Where(f => isFirst != (f.Name == WallNames.FrontOf(2)))
            .Select(f => f with { Standing = [.. f.Standing.Select(m => m.Broken(Broken))] })];
    }

    /// <summary>What the key says of them after the sheets of the plan, a comma before it; empty where none is drawn.</summary>
    public string InWords(int sheets)
    {
        string drawn = sheets == 0 ? "" : Invariant($", and elevations on {sheets}");
        string left = string.Join(", ", faces.Where(f => !Fits(f)).Select(f => f.Name));
        return drawn + (left.Length == 0 ? "" : Invariant($"; higher than this paper, so not drawn: {left}"));
    }

    /// <summary>The sheets; none where the platform stands on bents alone.</summary>
    public IReadOnlyList<Sheet> Draw()
    {
        var pages = new List<List<Placed>>();
        double x = 0, y = double.PositiveInfinity, below = y, right = room.Window.Right - Rim;
        foreach (var (words, row) in Rows())
        {
            double takes = Words + row.Height;
            double wide = Math.Max(row.Length, Math.Min(TextStyle.Length(words, HouseStyle.Subheading), right - room.Window.Left - Rim));

            // Beside the last one where it fits, else under all so far, else on a sheet of its own.
            if (x + wide > right || y + takes > room.Window.Bottom)
            {
                (x, y) = (room.Window.Left + Rim, below);
                if (y + takes > room.Window.Bottom)
                {
                    pages.Add([]);
                    y = below = room.Window.Top + Rim;
                }
            }

            pages[^1].Add(new(words, row, new(x, y), wide));
            x += wide + Beside;
            below = Math.Max(below, y + takes + Apart);
        }

        return [.. pages.Select((page, i) => Page(page, i + 1, pages.Count))];
    }

    private bool Fits(ElevationFace face) => face.Rows(double.PositiveInfinity, 1).Max(r => r.Height) + Words + Rim <= room.Window.Height;

    private IEnumerable<(string Words, IElevationRow Row)> Rows()
    {
        foreach (var face in faces.Where(Fits))
        {
            double at = 0, all = face.Length;
            string called = char.ToUpperInvariant(face.Name[0]) + face.Name[1..] + (face.Words is { } words ? ", " + words : "");
            var rows = face.Rows(room.Window.Width - (2 * Rim), 1);
            foreach (var row in rows)
            {
                string part = rows.Count == 1 ? Figures.Mm(all) : Invariant($"{Figures.Mm(at)} to {Figures.Mm(at + row.Covers)} of {Figures.Mm(all)}");
                string high = row == rows[0] ? Invariant($", {Figures.Mm(row.Left[^1].Height)} high at its left end") : "";
                yield return (Invariant($"{called}, from outside: {part} mm{high}"), row);
                at += row.Covers;
            }
        }
    }

    private Sheet Page(IReadOnlyList<Placed> rows, int number, int count)
    {
        string title = Invariant($"{name}: elevations, sheet {number} of {count}");
        var sheet = new Sheet(room.Width, room.Height, title)
        {
            Stretch = paper.Stretch,
            HasGround = false,
            Description = "Faces at full size, laid flat as seen from outside: " + string.Join("; ", rows.Select(r => r.Words)) + ".",
        };
        foreach (var (words, row, at, wide) in rows)
        {
            var corner = at + new Point2(0, Words);
            sheet.Text(words, at + new Point2(0, 4), TitleBlock.Fitting(words, HouseStyle.Subheading, wide));
            row.DrawOn(sheet, corner);
            if (!row.Begins)
            {
                // The row before ends here.
                sheet.Line(new(corner.X, corner.Y - 1), new(corner.X, corner.Y + row.Height - row.Under + 1.5), PaperLooks.Join);
            }
        }

        sheet.Box(room.Window.Left, room.Window.Top, room.Window.Width, room.Window.Height, null, PaperLooks.Frame);
        ScaleBars.DrawOn(sheet, room);
        SheetFoot.DrawOn(sheet, room, paper, title, " The lower edge is the baseboard.", origin);
        return sheet;
    }

    private sealed record Placed(string Words, IElevationRow Row, Point2 At, double Wide);
}
