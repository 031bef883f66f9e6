using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Sections.Forms;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Exports.Stock;

/// <summary>What can be cut from sheets.</summary>
internal static class StockRule
{
    // Lower than this, mm, nothing stands between board and deck that could be glued.
    private const double LeastWall = 3;

    // Narrower than this, as a share of the material, a slot is a crease: no saw or blade makes it.
    private const double LeastSlot = 0.1;

    public static IReadOnlyList<Finding> Check(StockSpec stock) => [.. Faults(stock)];

    private static IEnumerable<Finding> Faults(StockSpec stock)
    {
        double room = Math.Min(stock.Size.X, stock.Size.Y) - (2 * stock.Margin);
        if (room < LeastRoom)
        {
            double most = Math.Floor((Math.Min(stock.Size.X, stock.Size.Y) - LeastRoom) / 2);
            yield return most > 0
                ? Finding.Error(
                    "PF7530", stock.Key + ".margin",
                    Invariant($"Margins of {stock.Margin:0.###} mm leave {Math.Max(0, room):0.#} mm of a sheet of {SizeOf(stock)} mm."),
                    Invariant($"Give {most:0} mm or less.")).Curing(most)
                : Finding.Error(
                    "PF7530", stock.Key + ".size", Invariant($"On a sheet of {SizeOf(stock)} mm no part has room."),
                    Invariant($"Give sheets of {LeastRoom + (2 * stock.Margin):0} mm or more either way, such as [297, 210]."))
                    .Curing(stock.Key + ".size", "[297, 210]");
        }

        if (stock.Slot > stock.WallThickness)
        {
            yield return Finding.Error(
                "PF7531", stock.Key + ".slot",
                Invariant($"Relief slots of {stock.Slot:0.###} mm are wider than their strip of {stock.WallThickness:0.###} mm is thick: ")
                    + "it breaks there instead of bending.",
                Invariant($"Give the width of a narrower saw or blade, {stock.WallThickness:0.##} mm or less.")).Curing(stock.WallThickness);
        }

        if (stock.Slot < LeastSlot * stock.WallThickness)
        {
            yield return Finding.Error(
                "PF7531", stock.Key + ".slot",
                Invariant($"Relief slots of {stock.Slot:0.###} mm are too narrow for a strip of {stock.WallThickness:0.###} mm: ")
                    + "nothing cuts them two thirds deep.",
                Invariant($"Give the width of your saw or blade, {LeastSlot * stock.WallThickness:0.##} mm or more."))
                .Curing(Math.Round(LeastSlot * stock.WallThickness, 2));
        }
    }

    // Slots that are as near as they may be, and flats that leave the wall's line by more than was asked all the same: the worst of them.
    private static IEnumerable<Finding> Flats(string platform, StockBody body, SectionSet sections)
    {
        var walls = new WallParts(body);
        var stock = body.Stock;
        var worst = (from s in sections.Sections
                     from isFar in body.HasFarStrip ? (bool[])[false, true] : [false]
                     let line = walls.Bent(s, isFar)
                     let slots = BendRule.Slots(line, stock.WallThickness, stock.Slot, stock.Versine)
                     where slots > 0
                     let most = Math.Min(slots, BendRule.Most(line, stock.Slot))
                     select (Off: BendRule.OffLine(line, most), Section: s.Number)).DefaultIfEmpty().MaxBy(w => w.Off);
        if (worst.Off > stock.Versine)
        {
            double least = Math.Ceiling(worst.Off * 100) / 100;
            yield return Finding.Error(
                "PF7535", stock.Key + ".versine",
                Invariant($"With relief slots of {stock.Slot:0.###} mm as near as they may be, a wall of {platform}, section {worst.Section}, leaves its line ")
                    + Invariant($"by {worst.Off:0.00} mm between two of them; {stock.Versine:0.##} is asked."),
                Invariant($"Give {least:0.##} mm, or slots of a finer saw.")).Curing(least);
        }
    }

    /// <summary>What of a platform cannot be made from this sheet.</summary>
    public static IEnumerable<Finding> Check(string platform, StockBody body, SectionSet sections) => body.Plan.Spec.Trestle is not null
        ? [OnTrestle(platform, body.Plan.Spec.Key)]
        : Leaning(platform, body.Plan.Spec).Concat(Low(platform, body)).Concat(Narrow(platform, body))
            .Concat(Flats(platform, body, sections)).Concat(Bent(platform, body, sections));

    private static Finding OnTrestle(string platform, string key) => Finding.Error(
        "PF7536", key + ".trestle",
        Invariant($"{platform} stands on a trestle: posts and braces are no parts of sheet."),
        "Build its bents from strip by drawings/NAME-trestle.svg, or leave the trestle out.").Curing(Cure.LeaveOut(key + ".trestle"));

    private static IEnumerable<Finding> Leaning(string platform, PlatformSpec spec)
    {
        if (spec.Facing is { Batter: > 0 } leaning)
        {
            yield return Finding.Error(
                "PF7542", spec.Key + ".facing.batter",
                Invariant($"The walls of {platform} lean by {leaning.Batter:0.##} mm: a strip of sheet stands upright; ")
                    + "one that leans is longer than its wall is high, under a narrower deck.",
                "Give 0: strips then stand where the wall's foot does.").Curing(0);
        }
    }

    // Walls that have no height left under the deck.
    private static IEnumerable<Finding> Low(string platform, StockBody body)
    {
        double middle = (body.Plan.Stations[0] + body.Plan.Stations[^1]) / 2, stands = body.UndersideAt(middle, body.NearInside.At(middle));
        if (stands < LeastWall)
        {
            double most = Math.Floor(10 * (body.Stock.Thickness + stands - LeastWall)) / 10;
            yield return Finding.Error(
                "PF7532", body.Stock.Key + ".thickness",
                Invariant($"Under a deck of {body.Stock.Thickness:0.###} mm {platform} has {Math.Max(0, stands):0.0} mm for walls and ribs; ")
                    + Invariant($"{LeastWall:0} is the least."),
                most > 0 ? Invariant($"Give sheet of {most:0.#} mm or less.") : "Print it: it is too low to be made from sheet.")
                .Curing(most > 0 ? Cure.Set(body.Stock.Key + ".thickness", most) : null);
        }
    }

    private static IEnumerable<Finding> Narrow(string platform, StockBody body)
    {
        double wide = body.Plan.Stations.Min(s => body.FarInside.At(s) - body.NearInside.At(s));
        if (wide <= 0)
        {
            yield return Finding.Error(
                "PF7532", body.Stock.Key + ".wall_thickness",
                Invariant($"Strips of {body.Stock.WallThickness:0.###} mm leave no room between the walls of {platform}."), "Give thinner strips.");
        }
    }

    // Sections whose deck is not one plane.
    private static IEnumerable<Finding> Bent(string platform, StockBody body, SectionSet sections)
    {
        var deck = new DeckParts(body);
        foreach (var section in sections.Sections.Where(s => !deck.IsFlat(s)))
        {
            yield return Finding.Error(
                "PF7533", body.Stock.Key,
                Invariant($"The deck of section {section.Number} of {platform} is not one plane: it leaves it by {deck.OffPlane(section):0.0} mm, ")
                    + "and sheet cannot follow.",
                HeadsIn(body.Plan, section) is { Length: > 0 } heads
                    ? Invariant($"Cut at the head of the ramp: {body.Plan.Spec.Key}.cuts = [{heads}].") : "Give shorter sections.");
        }
    }

    /// <summary>A part that no sheet holds: the largest.</summary>
    public static Finding? Check(string platform, IReadOnlyList<CutPart> parts, StockSpec stock)
    {
        if (parts.Where(p => !StockNesting.Fits(p, stock)).MaxBy(p => Math.Max(p.Size.X, p.Size.Y)) is not { } part)
        {
            return null;
        }

        double longer = Math.Ceiling(parts.Max(p => Math.Max(p.Size.X, p.Size.Y)) + (2 * stock.Margin));
        double shorter = Math.Ceiling(parts.Max(p => Math.Min(p.Size.X, p.Size.Y)) + (2 * stock.Margin));
        return Finding.Error(
            "PF7534", stock.Key + ".size",
            Invariant($"'{part.Name}' of {platform} is {part.Size.X:0.0} by {part.Size.Y:0.0} mm; a sheet of {SizeOf(stock)} with margins ")
                + Invariant($"of {stock.Margin:0.###} has no room for it."),
            Invariant($"Give sheets of {longer:0} by {shorter:0} mm or more, or more cuts (cuts)."))
            .Curing(stock.Key + ".size", Invariant($"[{longer:0}, {shorter:0}]"));
    }

    // The heads of ramps within a section, after the cuts that are stated already.
    private static string HeadsIn(PlatformPlan plan, PlatformSection section)
    {
        double[] heads = [.. plan.Profile.HeadsBetween(section.From, section.To)];
        return heads.Length == 0 ? "" : string.Join(", ", plan.Spec.ForcedCuts.Concat(heads).Distinct().Order().Select(c => Invariant($"{c:0.###}")));
    }

    private static string SizeOf(StockSpec stock) => Invariant($"{stock.Size.X:0.###} by {stock.Size.Y:0.###}");

    // A rib or a short end has this size at least, mm.
    private const double LeastRoom = 40;
}
