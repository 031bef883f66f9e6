using PlatformForge.Exports;
using PlatformForge.Exports.Drawings;
using PlatformForge.Projects.Presets;
using PlatformForge.Projects.Runs;
using PlatformForge.Tests.Projects;
using Xunit;

namespace PlatformForge.Tests.Masonry;

/// <summary>Elevations of faced walls.</summary>
public class ElevationTests
{
    private static readonly Lazy<Dossier> Designed = new(() => DesignRun.Design(
        Samples.Read(PresetShelf.Sample("tawnybrook")!, "platform[0].facing.front=stone", "platform[0].facing.back=panels", "platform[0].facing.ends=sleepers").Value!, RunWatch.None).Value!);

    private static PlatformDossier Platform => Designed.Value.Platforms[0];

    [Fact]
    public void Every_faced_wall_is_developed_to_its_length_in_the_order_in_which_it_is_seen()
    {
        var faces = ElevationDrawing.Faces(Platform).ToArray();
        Assert.Equal(["front of face 1", "end wall at the end", "back", "end wall at the start"], faces.Select(f => f.Name));
        Assert.Equal([1, 2, 3], faces[0].Slices.Select(s => s.Section)); // left of the track: chainage grows to the right
        Assert.Equal([3, 2, 1], faces[2].Slices.Select(s => s.Section));
        foreach (var face in faces)
        {
            // What is drawn is what was made: the same area of stones, less only what quoins of it show round a corner.
            var walls = Platform.Sections.Sections.SelectMany(s => s.Faced).Where(w => w.Stretches[0].Face == face.Name).ToArray();
            double made = walls.Sum(w => w.Area), drawn = face.Slices.SelectMany(s => s.Pieces()).Sum(p => new PlatformForge.Solids.Reliefs.ReliefField(p.Outline, 1).Area);
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
        var slices = ElevationDrawing.Faces(Platform).First().Slices;
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
        double front = ElevationDrawing.Faces(Platform).First().Slices.Sum(s => s.Length);
        Assert.Contains(words, w => w == FormattableString.Invariant($"Front of face 1: stone, {front:F1} mm long"));
        Assert.Contains("20.0", words); // over the baseboard: 12 over rail top, which is 8 over it
        Assert.Equal(4, sheet.Items.OfType<SheetPath>().Count(p => p.Pen == HouseStyle.Cut)); // two cuts, on the front and on the back
        Assert.All(sheet.Items.OfType<SheetPath>(), p => Assert.All(p.Points, q => Assert.True(q.X >= 0 && q.X <= sheet.Width && q.Y >= 0 && q.Y <= sheet.Height)));
    }
}
