using PlatformForge.Exports.Drawings.Elevations;
using PlatformForge.Exports.Drawings.Elevations.Walls;
using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Files;
using PlatformForge.Exports.Paper;
using PlatformForge.Projects.Presets;
using PlatformForge.Projects.Runs;
using PlatformForge.Projects.Watches;
using PlatformForge.Tests.Projects;
using Xunit;

namespace PlatformForge.Tests.Masonry;

/// <summary>Elevations of faced walls.</summary>
public class ElevationTests
{
    private static readonly Lazy<Dossier> Designed = new(() => DesignRun.Design(
        Samples.Read(PresetShelf.Sample("tawnybrook")!, "platform[0].facing.front=stone", "platform[0].facing.back=panels",
            "platform[0].facing.ends=sleepers").Value!, RunWatch.None).Value!);

    private static PlatformDossier Platform => Designed.Value.Platforms[0];

    [Fact]
    public void Every_faced_wall_is_developed_to_its_length_in_the_order_in_which_it_is_seen()
    {
        var faces = ElevationFaces.Of(Platform).ToArray();
        Assert.Equal(["front of face 1", "end wall at the end", "back", "end wall at the start"], faces.Select(f => f.Name));
        Assert.Equal([1, 2, 3], faces[0].Slices.Select(s => s.Section)); // left of the track: chainage grows to the right
        Assert.Equal([3, 2, 1], faces[2].Slices.Select(s => s.Section));
        foreach (var face in faces)
        {
            // What is drawn is what was made: the same area of stones, less only what quoins of it show round a corner.
            var walls = Platform.Sections.Sections.SelectMany(s => s.Faced).Where(w => w.Stretches[0].Face == face.Name).ToArray();
            double made = walls.Sum(w => w.Area), drawn = face.Slices.SelectMany(s => s.Pieces())
                .Sum(p => new PlatformForge.Solids.Reliefs.ReliefField(p.Outline, 1).Area);
            Assert.NotEmpty(walls);
            Assert.Equal(made, drawn, 1e-6 * made);
        }
    }

    [Theory]
    [InlineData(50)]
    [InlineData(120)]
    [InlineData(1000)]
    public void Rows_keep_to_their_room_and_lose_nothing(double room)
    {
        var slices = ElevationFaces.Of(Platform).First().Slices;
        var rows = WallSlice.Rows(slices, room);
        Assert.All(rows, r => Assert.InRange(r.Sum(s => s.Length), 0, room + 1e-9));
        Assert.Equal(slices.Sum(s => s.Length), rows.Sum(r => r.Sum(s => s.Length)), 1e-9);
        Assert.Equal(slices.Count, rows.SelectMany(r => r).Count(s => s.Begins));
    }

    [Fact]
    public void The_sheet_has_every_face_by_name_with_its_length_and_the_joints_between_sections()
    {
        var sheet = ElevationDrawing.Draw(Designed.Value, Platform);
        string[] words = [.. sheet.Items.OfType<SheetText>().Select(t => t.Text)];
        double front = ElevationFaces.Of(Platform).First().Slices.Sum(s => s.Length);
        Assert.Contains(words, w => w == FormattableString.Invariant($"Front: stone, {front:F1} mm long"));
        Assert.Contains("coping 20.0 (+12.0)", words); // over the baseboard: 12 over rail top, which is 8 over it
        Assert.Equal(4, sheet.Items.OfType<SheetPath>().Count(p => p.Pen == HouseStyle.Cut)); // two cuts, on the front and on the back
        Assert.All(sheet.Items.OfType<SheetPath>(),
            p => Assert.All(p.Points, q => Assert.True(q.X >= 0 && q.X <= sheet.Width && q.Y >= 0 && q.Y <= sheet.Height)));
    }

    [Fact]
    public void Its_caption_names_joints_where_the_sheet_has_any()
    {
        bool Names(PlatformDossier platform) => ElevationDrawing.Draw(Designed.Value, platform).Items.OfType<SheetText>()
            .Any(t => t.Text.Contains("Red: joints", StringComparison.Ordinal));
        Assert.True(Names(Platform));
        Assert.False(Names(Platform with { Sections = Platform.Sections with { Sections = [Platform.Sections.Sections[0]] } }));
    }

    /// <summary>On full-size paper every row is the length that its words say, and all rows of a wall are the wall; nothing lies beyond the sheet's
    /// window.</summary>
    [Theory]
    [InlineData(210, 297)]
    [InlineData(148, 210)]
    public void Full_size_sheets_hold_every_faced_wall_whole(double width, double height)
    {
        var set = PaperSet.Of(Designed.Value, Platform, new() { SizeName = "", Size = new(width, height) }).Value!;
        Assert.NotEmpty(set.Elevations);
        double drawn = set.Elevations.SelectMany(s => s.Items.OfType<SheetPath>())
            .Where(p => !p.Closed && p.Pen == HouseStyle.Outline && p.Points[0].Y == p.Points[1].Y).Sum(p => p.Points[1].X - p.Points[0].X);
        var plan = Platform.Sections.Plan;
        double walls = ElevationFaces.Of(Platform).Where(f => f.Shapes.Count == 0).Sum(f => f.Slices.Sum(s => s.Length));
        // the deck with its coping lies over both
        double ends = new[] { plan.Stations[0], plan.Stations[^1] }.Sum(s => plan.Back.At(s) - plan.CopingFront.At(s));
        Assert.Equal(walls + ends, drawn, 0.01);
        foreach (var sheet in set.Elevations)
        {
            Assert.Contains(sheet.Items.OfType<SheetText>(), t => t.Text.Contains("measure between the ticks", StringComparison.Ordinal));
            Assert.All(sheet.Items.OfType<SheetPath>(),
                p => Assert.All(p.Points, q => Assert.True(q.X > 7.9 && q.Y > 7.9 && q.X < sheet.Width - 7.9 && q.Y < sheet.Height - 7.9)));
        }

        Assert.Contains("and elevations on", string.Join(" ", set.Key.Items.OfType<SheetText>().Select(t => t.Text)), StringComparison.Ordinal);
    }

    /// <summary>Joints of brickwork are scored on a strip's other face, mirrored: as many courses as the elevation has, at the same heights.</summary>
    [Fact]
    public void Joints_of_a_facing_are_scored_on_the_strips_other_face()
    {
        var stock = new PlatformForge.Exports.Stock.StockSpec { Size = new(420, 297) };
        var platform = BrickPlatform.Value.Platforms[0];
        var set = PlatformForge.Exports.Stock.StockSet.Of(platform, stock).Value!;
        foreach (var part in set.Parts.Where(p => p.Name.EndsWith(" wall", StringComparison.Ordinal)))
        {
            int section = part.Name[0] - '0';
            string face = part.Name.Contains("front", StringComparison.Ordinal) ? "front of face 1" : "back";
            var slice = ElevationFaces.Of(platform).Single(f => f.Name == face).Slices.Single(s => s.Section == section);
            double top = part.Lines[0].Points.Min(p => p.X) is var left ? part.Lines[0].Points.Max(p => p.X) - left : 0;
            double[] middles =
                [.. slice.Pieces().Where(p => p.Outline.Count(q => q.Y == p.Outline.Max(o => o.Y)) == 2
                    && p.Outline.Max(q => q.Y) < slice.Edge(slice.Wall.Wall.Top).Min(q => q.Y)
                    - 0.4).Select(p => p.Outline.Max(q => q.Y) + (slice.Wall.Joint / 2)).Distinct()];
            Assert.NotEmpty(middles);
            double[] scored = [.. part.Outside.Where(l => l.Points[0].Y == l.Points[1].Y).Select(l => l.Points[0].Y).Distinct()];
            Assert.All(middles, y => Assert.Contains(scored, s => Math.Abs(s - y) < 0.011));

            // Bricks are seen from outside, the strip from inside: a perpend at x from the wall's left end is at x from the strip's right end.
            double trim = (top - slice.Length) / 2;
            var brick = slice.Pieces().Where(p => p.Outline.Length == 4 && p.Outline.Max(q => q.Y) < 12).MinBy(p => p.Outline.Min(q => q.X));
            double right = brick.Outline.Max(q => q.X) + (slice.Wall.Joint / 2), high = brick.Outline.Average(q => q.Y);
            Assert.Contains(part.Outside, l => l.Points[0].X == l.Points[1].X && Math.Abs(top - trim - right - l.Points[0].X) < 0.01
                && Math.Min(l.Points[0].Y, l.Points[1].Y) < high && Math.Max(l.Points[0].Y, l.Points[1].Y) > high);
        }

        var sheet = set.Sheets.First(s => s.Kind == PlatformForge.Exports.Stock.StockKind.Strip);
        var other = PlatformForge.Exports.Stock.StockSet.Outside(sheet, stock);
        Assert.All(other.Parts, p => Assert.Equal(PlatformForge.Exports.Stock.CutLayer.Mark,
            Assert.Single(p.Lines, l => l.Layer != PlatformForge.Exports.Stock.CutLayer.Score).Layer));
        Assert.Equal(sheet.Parts[0].Outside[0].Points[0].X + other.Parts[0].Lines[0].Points[0].X, stock.Size.X, 1e-9);
    }

    private static readonly Lazy<Dossier> BrickPlatform =
        new(() => DesignRun.Design(Samples.Read(PresetShelf.Sample("tawnybrook")!).Value!, RunWatch.None).Value!);
}
