using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Plans.Fittings;
using PlatformForge.Solids;
using PlatformForge.Solids.Bodies.Walls;
using static System.FormattableString;

namespace PlatformForge.Exports.Workshop;

/// <summary>What is painted, with how much, and what is mixed from what.</summary>
internal static class PaintTables
{
    // Brushed acrylic covers about 10 m² a litre and coat, a primer from a can a quarter of that, mist and all: common practice, no source.
    private const double BrushCover = 100; // cm² a ml
    private const double SprayCover = 25;  // cm² a ml

    // What stays in brush and palette: common practice, no source.
    private const double Reserve = 1.5;

    // Amounts are told in steps of half a millilitre.
    private const double Step = 0.5;

    // A paved deck shows its own colour at the rim behind the coping and in a few corners: less than this share of all is no tarmac.
    private const double LeastDeck = 0.02;

    private static readonly (Paint Paint, string Name, int Coats)[] Plain =
    [
        (Paint.Deck, "deck", 2),
        (Paint.Coping, "coping", 2),
        (Paint.Line, "white line", 3),
        (Paint.Wall, "walls", 2),
        (Paint.Mortar, "joints of mortar", 1),
        (Paint.Stone, "stone", 2),
        (Paint.Timber, "timber", 2),
        (Paint.Concrete, "concrete and flags", 2),
        (Paint.Paver, "paving bricks", 2),
        (Paint.Turf, "bank", 1),
        (Paint.CopingBrick, "bricks of the coping", 2),
        (Paint.Render, "render", 2),
    ];

    private static readonly (string For, Paint Paint, IReadOnlyList<(int Parts, string Colour)> Of, string Why)[] Mixed =
    [
        ("white line", Paint.Line, [(3, "white"), (1, "light grey")], "pure white looks like paper beside everything else"),
        ("deck, fresh tarmac", Paint.Deck, [(3, "dark grey"), (1, "light grey")], "fresh tarmac is dark: work both greys together while wet"),
        ("deck, worn tarmac", Paint.Deck, [(1, "dark grey"), (2, "light grey")], "worn tarmac is light; concrete goes the other way"),
        ("deck, ash", Paint.Deck, [(3, "dark grey"), (1, "brown")],
            "ashes are nearly black when fresh and browner with age: stipple them, and leave them matt"),
        ("joints of mortar", Paint.Mortar, [(3, "light grey"), (1, "sand")],
            "let it run into the joints, thinned, over the dry colour of bricks or stones, and wipe their faces"),
        ("stone", Paint.Stone, [(2, "light grey"), (1, "sand"), (1, "brown")], "pick out single stones in lighter and darker mixes of the same three"),
        ("timber", Paint.Timber, [(2, "dark grey"), (1, "brown")], "old timber is grey before it is brown; tarred sleepers are nearly black"),
        ("concrete and flags", Paint.Concrete, [(3, "light grey"), (1, "sand")],
            "streak it with thinned dark grey, from joints and posts down; pick out single flags"),
        ("render", Paint.Render, [(5, "white"), (1, "sand")],
            "lime wash and cement paint are off-white and darker at the foot: streak it with thinned brown from the coping down"),
        ("bank, under scatter", Paint.Turf, [(2, "brown"), (1, "sand")],
            "earth shows between grass: lay scatter or fibres into the wet paint or into thinned glue"),
    ];

    // Surfaces in the order of their paints: of walls and decks, and of what stands before walls.
    private static IEnumerable<(Paint Paint, string Name, int Coats)> Surfaces(IReadOnlyList<FittingRow> fittings) =>
        Plain.Concat(Painted(fittings).Select(f => (f.Paint, f.Name, f.As.Coats))).OrderBy(s => s.Item1);

    // Mixes of walls and decks and of what stands before walls; the ground comes last.
    private static IEnumerable<(string For, Paint Paint, IReadOnlyList<(int Parts, string Colour)> Of, string Why)> Recipes(
        IReadOnlyList<FittingRow> fittings) => [.. Mixed.SkipLast(1), .. Painted(fittings).Select(f => (f.Name, f.Paint, f.As.Mix, f.As.Why)), Mixed[^1]];

    // Kinds of one paint are painted as one.
    private static IEnumerable<(Paint Paint, string Name, FittingPainting As)> Painted(IReadOnlyList<FittingRow> fittings) =>
        fittings.Where(r => r.Painting is not null).GroupBy(r => FittingBlocks.PaintOf(r.Face))
            .Select(g => (g.Key, string.Join(" and ", g.Select(r => r.Plural).Distinct()), g.First().Painting!));

    /// <summary>Areas that are seen, by colour, and what they take.</summary>
    /// <param name="areas">mm² for each paint.</param>
    /// <param name="fittings">What stands before the walls.</param>
    public static WorkTable Amounts(double[] areas, IReadOnlyList<FittingRow> fittings)
    {
        double all = areas.Sum() / 100;
        var rows = new List<IReadOnlyList<TableCell>> { Row("all, primer from a can", all, 1, SprayCover, 1) };
        rows.AddRange(Surfaces(fittings).Where(s => areas[(int)s.Paint] > 0).Select(s => Row(s.Name, areas[(int)s.Paint] / 100, s.Coats, BrushCover, Reserve)));
        return new(
            "paint", "Paint",
            [new("surface", "surface"), new("area, cm²", "area_cm2"), new("coats", "coats"), new("a coat, ml", "ml_a_coat"),
                new("all coats, ml", "ml_all_coats"), new("have ready, ml", "ml_to_have_ready")],
            rows,
            "areas from the triangles of the sections: the top, the coping's edge, the outer walls and the platform's own ends, "
                + "and of a retaining wall or kerb on them what is over the deck, but for a wall's back, where the ground is; "
                + Invariant($"{BrushCover:0} cm² to a ml brushed and {SprayCover:0} sprayed, coats, and half as much again left in brush and palette ")
                + "are common practice, no source");
    }

    private static IReadOnlyList<TableCell> Row(string name, double area, int coats, double cover, double reserve) =>
    [
        name, TableCell.Of(area, 1), TableCell.Of(coats, 0), TableCell.Of(area / cover, 2), TableCell.Of(coats * area / cover, 2),
            TableCell.Of(HaveReady(area, coats, cover, reserve), 1),
    ];

    private static double HaveReady(double area, int coats, double cover, double reserve) => Math.Ceiling(coats * area / cover * reserve / Step) * Step;

    /// <summary>Mixes by volume, each colour's share of what is to be ready.</summary>
    /// <param name="areas">mm² for each paint.</param>
    /// <param name="fittings">What stands before the walls.</param>
    public static WorkTable Mixes(double[] areas, IReadOnlyList<FittingRow> fittings)
    {
        var rows = new List<IReadOnlyList<TableCell>>();
        foreach (var recipe in Recipes(fittings).Where(r => areas[(int)r.Paint] > (r.Paint == Paint.Deck ? LeastDeck * areas.Sum() : 0)))
        {
            var surface = Surfaces(fittings).First(s => s.Paint == recipe.Paint);
            double ready = HaveReady(areas[(int)recipe.Paint] / 100, surface.Coats, BrushCover, Reserve);
            int parts = recipe.Of.Sum(o => o.Parts);
            rows.AddRange(recipe.Of.Select(o => (IReadOnlyList<TableCell>)[recipe.For, TableCell.Of(o.Parts, 0), o.Colour,
                TableCell.Of(ready * o.Parts / parts, 2), recipe.Why]));
        }

        return new(
            "mixes", "Mixes, by parts of volume",
            [new("for", "for"), new("parts", "parts"), new("of", "of"), new("ml", "ml"), new("why", "why")],
            rows, "common practice, no source; ml are shares of what is to be ready by the table of paint");
    }
}
