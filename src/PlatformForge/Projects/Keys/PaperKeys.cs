using PlatformForge.Exports.Paper;
using PlatformForge.Geometry;
using PlatformForge.Projects.Keys.Grammar;
using PlatformForge.Projects.Reading;
using PlatformForge.Units;

namespace PlatformForge.Projects.Keys;

/// <summary>Keys of <c>[paper]</c>.</summary>
internal static class PaperKeys
{
    private static readonly TextRule Named = new("", "Name of a size.", [.. PaperSizes.All.Select(s => s.Name)]);

    // The longest side of a page that readers of PDF take (ISO 32000-1, annex C: 14 400 points).
    private static readonly NumberRule Stated = new("", "Its width or height.", NumberRange.From(PaperSpec.LeastSide, 5080), "mm");

    private static readonly ListRule Pair = new("", "Width and height.", Stated, 2, 2);

    private static readonly EitherRule Size =
        new("size", $"Paper that full-size sheets are printed on: {string.Join(", ", PaperSizes.All.Take(5).Select(s => s.Name))}, or its [width, height].",
            Named, Pair)
        { Default = "\"A4\"" };

    public static KeyTable<PaperSpec> Table { get; } = new KeyTable<PaperSpec>(_ => new())
        .Own(Size, ReadSize)
        .Choice(
            "layout",
            "How the plan is divided: sheet after sheet along the track, or rows and columns of one large page.",
            p => p.Layout,
            (p, v) => p with { Layout = v },
            [("track", PaperLayout.Track), ("page", PaperLayout.Page)])
        .Choice(
            "orientation",
            "Which way sheets lie; automatic takes fewer.",
            p => p.Turn,
            (p, v) => p with { Turn = v },
            [("automatic", PaperTurn.Automatic), ("portrait", PaperTurn.Upright), ("landscape", PaperTurn.Lying)])
        .Length(
            "margin",
            NumberRange.From(0, 100),
            "Strip along the paper's edges that your printer leaves white.",
            p => p.Margin,
            (p, v) => p with { Margin = v })
        .Length("overlap", NumberRange.From(0, 200), "Width that two neighbouring sheets both show.", p => p.Overlap, (p, v) => p with { Overlap = v })
        .Numbers(
            "bars",
            NumberRange.From(0, 5000),
            "mm",
            "What the two bars of 100 mm measure on a sheet printed without this key, across and up: sheets are then drawn to come out true.",
            (p, v) => p with { MeasuredBars = new(v[0], v[1]) },
            2,
            2);

    private static PaperSpec ReadSize(PaperSpec paper, TreeNode node, string key, KeyReading reading)
    {
        if (node is TreeList { Items: [TreeNumber { Value: var across }, TreeNumber { Value: var up }] }
            && !(Stated.Range.Holds(across) && Stated.Range.Holds(up)))
        {
            // Both sides may be wrong: no one figure mends that, a size does.
            reading.Fault("PF1008", key, node.Place, FormattableString.Invariant($"size is {across:0.###} by {up:0.###} mm."),
                FormattableString.Invariant($"Give {PaperSpec.LeastSide + (2 * paper.Margin):0.###} to 5080 mm for each side, or a size by name such as ")
                    + "\"A4\".", Cure.Text(key, "A4"));
            return paper;
        }

        if (node is TreeList)
        {
            return reading.List(Pair, node, key) is [var first, var second]
                && reading.Number(Stated, first, key + "[0]") is { } a && reading.Number(Stated, second, key + "[1]") is { } b
                ? paper with { SizeName = "", Size = new Point2(Math.Min(a, b), Math.Max(a, b)) }
                : paper;
        }

        if (node is not TreeText)
        {
            reading.Fault("PF1007", key, node.Place, $"size is {node.Kind}.", $"Give {Size.Wanted}.", Cure.Text(key, "A4"));
            return paper;
        }

        return reading.Text(Named, node, key) is { } name ? paper with { SizeName = name, Size = PaperSizes.Of(name)!.Value } : paper;
    }
}
