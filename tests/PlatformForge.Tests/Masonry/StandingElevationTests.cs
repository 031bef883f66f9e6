using PlatformForge.Exports.Drawings.Elevations;
using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Looks;
using PlatformForge.Geometry;
using PlatformForge.Platforms.Specs;
using PlatformForge.Sections.Forms;
using PlatformForge.Solids;
using PlatformForge.Solids.Bodies.Layers;
using PlatformForge.Tests.Fixtures;
using PlatformForge.Tests.Sections;
using PlatformForge.Track;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Masonry;

/// <summary>What stands on decks in elevations: at its place, by its name, behind what lies before it.</summary>
public class StandingElevationTests
{
    private static readonly ModelScale Scale = new(76.2);

    private static readonly FenceSpec Fence = new() { Pitch = 25, Gaps = [new(320, 345)] };

    private static readonly FeatureSpec[] Furniture =
    [
        Fence, new LampSpec(250, 20) { Channel = 0 }, new LampSpec(400, 20) { Channel = 0 },
        new SocketSpec(282, 10) { Name = "running-in board, first post" }, new SocketSpec(304, 10) { Name = "running-in board, second post" },
    ];

    public static TheoryData<Side, BackKind> Platforms =>
        new() { { Side.Left, BackKind.Wall }, { Side.Right, BackKind.Wall }, { Side.Left, BackKind.Bank }, { Side.Right, BackKind.Bank } };

    /// <summary>Every post of the fence's table stands where that says, on the front and mirrored on the back; 1350 mm at full size high, as in
    /// pictures.</summary>
    [Theory]
    [MemberData(nameof(Platforms))]
    public void Posts_stand_where_their_table_has_them(Side side, BackKind back)
    {
        var set = Made(side, back);
        var table = set.Plan.Features.SelectMany(f => f.Tables).Single(t => t.Name == "fence");
        int column = table.Headings.ToList().IndexOf("layout_x_mm");
        double[] posts = [.. table.Rows.Select(r => r[column].Figure!.Value)];
        double wide = Scale.ToModel(130), high = Scale.ToModel(1350);
        foreach (var face in Faces(set))
        {
            bool rising = side == Side.Left == (face.Name != WallNames.Back);
            double left = rising ? set.Plan.Stations[0] : set.Plan.Stations[^1], deck = set.Plan.Profile.Level;
            var row = face.Rows(1000, 1)[0];
            double foot = row.Height - row.Under;
            double[] drawn = [.. Standing(row).Where(r => Math.Abs(Width(r) - wide) < 1e-3 && Math.Abs(foot - r.Min(p => p.Y) - deck - high) < 1e-6)
                .Select(r => left + ((rising ? 1 : -1) * r.Average(p => p.X))).Order()];

            // Walls are laid side by side as they are printed, each shorter by what is trimmed off its joint.
            double trim = face.Back is null ? 2 * set.Joint.EndTrim : 0;
            double Laid(double x) => x - ((rising ? 1 : -1) * trim * set.Sections.SkipLast(1).Count(s => rising ? s.To < x : s.To > x));
            Assert.Equal(posts.Length, drawn.Length);
            Assert.All(posts.Select(Laid).Order().Zip(drawn), p => Assert.Equal(p.First, p.Second, 2e-3));
        }
    }

    [Theory]
    [MemberData(nameof(Platforms))]
    public void Each_is_named_once_a_row_and_no_name_meets_another_or_what_stands_there(Side side, BackKind back)
    {
        foreach (var face in Faces(Made(side, back)))
        {
            foreach (double room in (double[])[1000, 130])
            {
                var rows = face.Rows(room, 1);
                foreach (var row in rows)
                {
                    var sheet = Drawn(row);
                    SheetText[] names = [.. sheet.Items.OfType<SheetText>().Where(t => t.Text.Any(char.IsLetter))];
                    Assert.All(names, n => Assert.All(n.Box(), p => Assert.True(p.Y > 0 && p.X > -0.01 && p.X < row.Length + 0.01)));
                    Assert.All(names, n => Assert.DoesNotContain(names, o => o != n && Meet(n.Box(), o.Box())));
                    Assert.All(names, n => Assert.DoesNotContain(Standing(row), r => Meet(n.Box(), r)));
                    if (rows.Count == 1)
                    {
                        Assert.Equal(["fence", "fence", "gate", "lamp", "lamp", "running-in board"], names.Select(n => n.Text).Order());
                    }
                }
            }
        }
    }

    /// <summary>A board that stands over a joint between two rows is in both, as much of it as each has.</summary>
    [Fact]
    public void What_stands_over_the_end_of_a_row_goes_on_in_the_next()
    {
        var face = Faces(Made(Side.Left, BackKind.Wall)).First();
        double whole = Area(face.Rows(1000, 1));
        Assert.Equal(whole, Area(face.Rows(93, 1)), 1e-6 * whole); // 93: in the middle of the board
        static double Area(IReadOnlyList<IElevationRow> rows) => rows.SelectMany(Standing).Sum(r => Math.Abs(ConvexRing.Area(r)));
    }

    [Fact]
    public void Walls_and_coping_hide_what_stands_behind_them()
    {
        var set = Made(Side.Left, BackKind.Wall, s => s with { Deck = s.Deck with { Crossfall = 30 } });
        var face = Faces(set).First();
        var row = face.Rows(1000, 1)[0];
        double foot = row.Height - row.Under, coping = foot - set.Plan.Profile.Level;
        Assert.Contains(Standing(row), r => r.Max(p => p.Y) > coping + 1); // its foot is 2 lower, at the back
        var drawn = new DrawnSheet(Drawn(row), _ => false);
        for (double x = 3; x < row.Length - 3; x += 0.7)
        {
            Assert.Equal(Palette.Of(Paint.Coping), drawn.At(new(x, coping + 0.6)));
        }
    }

    [Fact]
    public void On_full_size_paper_it_is_broken_off_over_the_deck()
    {
        var face = Faces(Made(Side.Left, BackKind.Wall)).First();
        var row = (face with { Standing = [.. face.Standing.Select(m => m.Broken(10))] }).Rows(1000, 1)[0];
        double deck = row.Height - row.Under - 20;
        Assert.NotEmpty(Standing(row));
        Assert.All(Standing(row), r => Assert.InRange(r.Min(p => p.Y), deck - 10 - 1e-9, deck));
    }

    private static IEnumerable<ElevationFace> Faces(SectionSet set) => ElevationFaces.Of(set).Where(f => f.Name is not (WallNames.AtStart or WallNames.AtEnd));

    private static Sheet Drawn(IElevationRow row)
    {
        var sheet = new Sheet(row.Length + 1, row.Height + 1, "row");
        row.DrawOn(sheet, new(0, 0));
        return sheet;
    }

    private static IReadOnlyList<Point2>[] Standing(IElevationRow row) =>
        [.. Drawn(row).Items.OfType<SheetPath>().Where(p => p.Closed && p.Pen == HouseStyle.Fine).Select(p => p.Points)];

    private static double Width(IReadOnlyList<Point2> ring) => ring.Max(p => p.X) - ring.Min(p => p.X);

    private static bool Meet(IReadOnlyList<Point2> a, IReadOnlyList<Point2> b) =>
        a.Min(p => p.X) < b.Max(p => p.X) && b.Min(p => p.X) < a.Max(p => p.X) && a.Min(p => p.Y) < b.Max(p => p.Y) && b.Min(p => p.Y) < a.Max(p => p.Y);

    private static SectionSet Made(Side side, BackKind back, Func<PlatformSpec, PlatformSpec>? change = null) => Workbench.Made(
        Workbench.Straight(260, side, s => (change ?? (x => x))(s with { Back = new() { Kind = back }, Features = Furniture })), Workbench.Printer, new());
}
