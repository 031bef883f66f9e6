using PlatformForge.Exports.Drawings.Elevations;
using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Looks;
using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Sections.Forms;
using PlatformForge.Solids;
using PlatformForge.Solids.Bodies.Layers;
using PlatformForge.Tests.Fixtures;
using PlatformForge.Tests.Sections;
using PlatformForge.Track;
using Xunit;

namespace PlatformForge.Tests.Backs;

/// <summary>Returns of banks in elevations, against the meshes: at places all over them the drawing has turf where somebody before it sees turf.</summary>
public class ReturnElevationTests
{
    // What lies so near to a border of the drawing, mm, is not asked.
    private const double Border = 0.06;

    private const double Length = 150;

    [Theory]
    [InlineData(Side.Left, BankReturns.Both, 0, false)]
    [InlineData(Side.Right, BankReturns.Start, 5, false)]
    [InlineData(Side.Right, BankReturns.End, 0, true)]
    public void A_return_is_drawn_at_the_end_of_the_back(Side side, BankReturns returns, double ground, bool apart)
    {
        var set = Made(side, returns, ground, apart);
        var row = Assert.Single(new BackSight(set).Rows(1000, 1, []));
        int way = side == Side.Left ? -1 : 1;
        double first = set.Sections[0].From, last = set.Sections[^1].To;
        bool AtLeft(BankReturn turn) => turn.IsAtEnd == (way < 0);
        double before = set.Plan.Bank!.Returns.Where(AtLeft).Sum(r => r.Radius), after = set.Plan.Bank.Returns.Where(r => !AtLeft(r)).Sum(r => r.Radius);
        Assert.Equal(before + Length + after, row.Length, 1e-6);
        Assert.Equal(before, row.Left[^1].In, 1e-9);
        int beyond = Compare(row, set, way, m => m, x => (way < 0 ? last : first) + (way * (x - before)), x => x < before || x > before + Length);
        Assert.True(beyond > 500 * set.Plan.Bank.Returns.Count);
    }

    [Theory]
    [InlineData(Side.Left, BankReturns.Both, 0, false)]
    [InlineData(Side.Right, BankReturns.Start, 5, true)]
    public void A_return_is_drawn_at_the_end_that_it_turns_round(Side side, BankReturns returns, double ground, bool apart)
    {
        var set = Made(side, returns, ground, apart);
        foreach (var face in ElevationFaces.Of(set).Where(f => f.Name is WallNames.AtStart or WallNames.AtEnd))
        {
            // Turned so that who looks along the track looks along y: at the start from less x to more.
            bool isStart = face.Name == WallNames.AtStart, backIsLeft = side == Side.Left == isStart;
            var row = new ElevationRow([.. face.Slices], 1, face);
            double edge = set.Plan.CopingFront.Reach[0], length = row.Length;
            double Across(double x) => (side == Side.Left ? -1 : 1) * (edge + (backIsLeft ? length - x : x));
            var turn = RigidTransform.AboutZ(Math.PI / 2);
            Assert.True(Compare(row, set, isStart ? 1 : -1, m => m.Moved(turn), Across, _ => true) > 1000);
        }
    }

    // How many places were asked that count.
    private static int Compare(IElevationRow row, SectionSet set, int way, Func<Mesh, Mesh> turned, Func<double, double> place, Func<double, bool> counts)
    {
        var sheet = new Sheet(row.Length + 1, row.Height + 1, "row");
        row.DrawOn(sheet, new(0, 0));
        var drawn = new DrawnSheet(sheet, _ => false);
        double foot = row.Height - row.Under;
        Mesh[] meshes = [.. set.Sections.Select(s => s.Solid.Mesh), .. set.Lines.Pieces.Select(p => p.Solid.Mesh)];
        SeenAlongY[] seen = [.. meshes.Select(m => new SeenAlongY(turned(m), way, way * 1000))];
        int asked = 0;
        for (double x = 0.3; x < row.Length - 0.3; x += 0.713)
        {
            for (double z = 0.13; z < foot; z += 0.371)
            {
                bool[] looks = [.. new[] { (-1, -1), (-1, 1), (1, -1), (1, 1), (0, 0) }
                    .Select(d => drawn.At(new(x + (Border * d.Item1), foot - z + (Border * d.Item2))) == Palette.Of(Paint.Turf)).Distinct()];
                if (looks.Length == 1)
                {
                    var met = seen.Select(m => m.At(place(x), z)).Where(m => m is not null).OrderBy(m => way * m!.Value.Y).FirstOrDefault();
                    Assert.True(looks[0] == (met?.Paint == Paint.Turf), FormattableString.Invariant($"{x:0.00} along, {z:0.00} high: turf drawn {looks[0]}, ")
                        + FormattableString.Invariant($"on the mesh {met}"));
                    asked += counts(x) ? 1 : 0;
                }
            }
        }

        return asked;
    }

    private static SectionSet Made(Side side, BankReturns returns, double ground, bool apart) => Workbench.Made(
        Workbench.Straight(Length, side,
            s => s with { Back = new() { Kind = BackKind.Bank, Returns = returns, Ground = ground, Apart = apart, Slope = apart ? 1.5 : 0.95 } }),
        Workbench.Printer, new());
}
