using PlatformForge.Exports.Pictures;
using PlatformForge.Exports.Workshop;
using PlatformForge.Geometry;
using PlatformForge.Projects;
using PlatformForge.Projects.Runs;
using PlatformForge.Projects.Watches;
using PlatformForge.Solids;
using PlatformForge.Tests.Fixtures;
using Xunit;

namespace PlatformForge.Tests.Projects;

/// <summary>Platforms as they look when they are finished (presets/finished): large, so that they are shaped and held against their vehicles here and not
/// written.</summary>
public class FinishedSampleTests
{
    [Theory]
    [InlineData("pendlewick-brick", "brick", 5)]
    [InlineData("oxenwharf", "brick", 6)]
    [InlineData("wrenlow", "sheet", 4)]
    [InlineData("ollingshaw", null, 3)]
    [InlineData("marrowby-stone", "stone", 4)]
    public void They_are_sound_faced_and_clear(string name, string? finish, int sections)
    {
        var design = Designed(name);
        var platform = Assert.Single(design.Platforms);
        Assert.Equal(sections, platform.Sections.Sections.Count);
        Assert.Equal(finish is null ? [] : [finish], platform.Sections.Facing?.Finishes.Select(f => PlatformForge.Masonry.FacingSpec.Name(f.Work.Finish))
            .Distinct() ?? []);
        Assert.True(TrialVerdict.Of(design).IsClear);
    }

    /// <summary>Samples whose areas are held to rays: brick walls and a braced trestle, and three more where more cases are asked for.</summary>
    public static TheoryData<string> Painted => [.. Simulations.TellsRates ? Every : Every[..2]];

    private static string[] Every => ["pendlewick-brick", "wrenlow", "oxenwharf", "marrowby-stone", "ollingshaw"];

    /// <summary>Areas to be painted, against what rays find free on the written pieces of each finished sample.</summary>
    [Theory]
    [MemberData(nameof(Painted))]
    public void Areas_to_be_painted_are_what_is_seen_of_the_written_pieces(string name)
    {
        var platform = Assert.Single(Designed(name).Platforms);
        var bents = platform.Sections.Plan.Spec.Trestle is { } trestle ? PlatformForge.Solids.Bodies.Trestles.TrestleBlocks.PaintOf(trestle) : (Paint?)null;
        double[] told = SurfaceAreas.Of(platform.Sections), seen = new SeenSurfaces(platform.Sections) { Bents = bents }.Areas(Outward(platform.Sections.Plan));

        // In the angle beside a pier's side the ground, as wide as joints are deep, and a joint more, lies behind the bricks that turn there: mortar runs in,
        // no ray comes out.
        var plan = platform.Sections.Plan;
        double high = plan.Spec.Height + plan.Site.RailTop;
        double angles = plan.Spec.Facing is { } facing ? 2 * plan.Piers.Count * high * (facing.Depth + (facing.Joint / 2)) : 0;

        // Floors of sockets are seen from straight above, and want no paint.
        double floors = plan.Features.SelectMany(f => f.Prisms).Where(p => p.Act == PlatformForge.Platforms.Plans.PrismAct.Remove)
            .Sum(p => Math.Abs(ConvexRing.Area(p.Ring)));

        // Ledges lie under the coping, where no ray from above comes: they are held by closed form elsewhere.
        foreach (var (shown, area) in platform.Sections.Sections.SelectMany(s => LedgeAreas.Of(plan, s)))
        {
            told[(int)shown] -= area;
        }

        // What sheet covers wants no paint.
        Assert.Equal(0, told[(int)Paint.Bare]);
        Assert.Equal(plan.Spec.Facing?.Front == PlatformForge.Masonry.WallFinish.Sheet, seen[(int)Paint.Bare] > 100);
        Assert.All(Enum.GetValues<Paint>().Where(p => p != Paint.Bare), p => Assert.True(
            Math.Abs(told[(int)p] - seen[(int)p]) <= (0.01 * seen[(int)p]) + 10 + (p == Paint.Mortar ? angles : p == Paint.Deck ? floors : 0),
            $"{name}, {p}: {told[(int)p] / 100:0.00} cm² told, {seen[(int)p] / 100:0.00} seen"));
    }

    /// <summary>The picture from near by shows wall, coping and deck, each a good part of it; a platform with smooth walls has none.</summary>
    [Fact]
    public void From_near_the_wall_is_seen_with_its_coping_and_deck()
    {
        var brick = Assert.Single(Designed("pendlewick-brick").Platforms);
        Assert.True(PlatformPictures.TellsFromNear(brick));
        Assert.False(PlatformPictures.TellsFromNear(Exports.HandDossier.Pendlewick().Platforms[0]));
        var image = PlatformPictures.FromNear(brick, 300);
        var pixels = Enumerable.Range(0, image.Width * image.Height)
            .Select(i => (R: image.Pixels[3 * i], G: image.Pixels[(3 * i) + 1], B: image.Pixels[(3 * i) + 2])).ToArray();
        double Share(Func<(byte R, byte G, byte B), bool> seen) => pixels.Count(seen) / (double)pixels.Length;
        Assert.InRange(Share(p => p.R > p.G + 35 && p.R > p.B + 45), 0.15, 0.6); // brick
        Assert.InRange(Share(p => p.R > p.B + 25 && p.R <= p.G + 35 && p.R > 120), 0.05, 0.35); // coping and mortar
        Assert.InRange(Share(p => Math.Abs(p.R - p.B) < 20 && p.R is > 100 and < 205), 0.12, 0.5); // flags
    }

    /// <summary>Stone is stone at its joints and inside too, as brick is brick.</summary>
    [Theory]
    [InlineData("marrowby-stone", Paint.Stone, false)]
    [InlineData("oxenwharf", Paint.Wall, true)]
    public void Joint_faces_show_what_the_front_is_made_of(string name, Paint body, bool hasWall)
    {
        var sections = Assert.Single(Designed(name).Platforms).Sections.Sections;
        Assert.Equal(hasWall, sections.Any(s => s.Solid.Mesh.Paints.Contains((byte)Paint.Wall)));
        Assert.All(sections, s => Assert.True(s.Solid.Mesh.Paints.All(p => Enum.IsDefined((Paint)p))));
        foreach (var section in sections.Take(sections.Count - 1))
        {
            // Upright faces square to the track at the cut, over the baseboard and under the deck.
            var plan = Assert.Single(Designed(name).Platforms).Sections.Plan;
            var (mesh, at) = (section.Solid.Mesh, plan.ToLayout(section.To, plan.CopingFront.At(section.To)));
            var across = plan.ToLayout(section.To, plan.Back.At(section.To)) - at;
            var faces = Enumerable.Range(0, mesh.TriangleCount).Where(t => Enumerable.Range(3 * t, 3).All(i => mesh.Vertices[mesh.Triangles[i]] is var v
                && v.Z < plan.TopAt(section.To, plan.Back.At(section.To)) - plan.Spec.Deck.Thickness + 0.01
                && Math.Abs(Point2.Cross(across, new Point2(v.X, v.Y) - at)) < 0.2 * across.Length)).ToList();
            Assert.True(faces.Count > 2);
            Assert.All(faces, t => Assert.Contains((Paint)mesh.Paints[t], new[] { body, Paint.Mortar }));
        }
    }

    /// <summary>What the file asks for of Marrowby Cross in stone is told on its elevations: kinds, how many, that cables go through; and full-size plans have
    /// every opening and pier under the edge.</summary>
    [Fact]
    public void Openings_are_told_on_elevations_and_drawn_on_full_size_plans()
    {
        var dossier = Designed("marrowby-stone");
        var platform = Assert.Single(dossier.Platforms);
        var faces = PlatformForge.Exports.Drawings.Elevations.ElevationFaces.Of(platform).ToArray();
        string front = string.Join(" ", PlatformForge.Exports.Drawings.Elevations.FaceWords.Of(faces[0]));
        Assert.Contains("Refuges (4): ", front, StringComparison.Ordinal);
        Assert.Contains("Openings for cables (2, right through): ", front, StringComparison.Ordinal);

        // Under the rows each has the figure of its middle, written upright.
        var plan = platform.Sections.Plan;
        var sheet = PlatformForge.Exports.Drawings.Elevations.ElevationDrawing.Draw(dossier, platform);
        string[] figures = [.. sheet.Items.OfType<PlatformForge.Exports.Drawings.Ink.SheetText>().Where(t => t.Angle == -90).Select(t => t.Text)];
        Assert.True(figures.Length >= plan.WallOpenings.Count, FormattableString.Invariant($"{figures.Length} figures for {plan.WallOpenings.Count} openings"));

        var paper = PlatformForge.Exports.Paper.FullSize.PlanFigures.Of(dossier, platform);
        int below = plan.Features.SelectMany(f => f.Marks).OfType<PlatformForge.Platforms.Plans.HiddenMark>().Count() + plan.WallOpenings.Count
            + plan.Piers.Count;
        Assert.Equal(below, paper.Lines.Count(l => l.Kind == PlatformForge.Exports.Paper.FullSize.FullSizeLine.Below));
    }

    internal static PlatformForge.Exports.Files.Dossier Designed(string name) => Once.GetOrAdd(name, n =>
    {
        var project = ProjectReader.ReadFile(Path.Combine(House.SourceTree.Root, "presets", "finished", n + ".toml"));
        Assert.NotNull(project.Value);
        var design = DesignRun.Design(project.Value, RunWatch.None);
        Assert.NotNull(design.Value);
        return design.Value;
    });

    private static readonly System.Collections.Concurrent.ConcurrentDictionary<string, PlatformForge.Exports.Files.Dossier> Once = [];

    // Away from the track, at the station that is nearest in plan.
    private static Func<Point3, Point2> Outward(PlatformForge.Platforms.Plans.PlatformPlan plan)
    {
        var across = plan.Body.Stations.Select(s => (At: plan.ToLayout(s, plan.CopingFront.At(s)), To: plan.ToLayout(s, plan.Back.At(s)))).ToArray();
        return p =>
        {
            var (at, to) = across.MinBy(a => (new Point2(p.X, p.Y) - ((a.At + a.To) * 0.5)).Length);
            return (to - at) * (1 / (to - at).Length);
        };
    }
}
