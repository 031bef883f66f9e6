using PlatformForge.Exports.Stock;
using PlatformForge.Projects.Keys.Grammar;
using PlatformForge.Units;

namespace PlatformForge.Projects.Keys;

/// <summary>Keys of <c>[sheet]</c>.</summary>
internal static class SheetKeys
{
    public static KeyTable<StockSpec> Table { get; } = new KeyTable<StockSpec>(_ => new())
        .Length(
            "thickness", NumberRange.From(0.2, 20), "Thickness of what deck, ribs and end walls are cut from; every joint allows for it.",
            s => s.Thickness, (s, v) => s with { Thickness = v })
        .Length(
            "wall_thickness", NumberRange.From(0.1, 10), "Thickness of the strips that walls are bent from.",
            s => s.WallThickness, (s, v) => s with { WallThickness = v })
        .Numbers("size", NumberRange.From(20, 5000), "mm", "Width and height of a sheet.", (s, v) => s with { Size = new(v[0], v[1]) }, 2, 2)
        .Example("[297, 210]")
        .Length("margin", NumberRange.From(0, 100), "Strip along a sheet's edges that is left.", s => s.Margin, (s, v) => s with { Margin = v })
        .Length("gap", NumberRange.From(0, 50), "Between two parts.", s => s.Gap, (s, v) => s with { Gap = v })
        .Length("slot", NumberRange.From(0.05, 10), "Width of a relief slot: what your saw or blade takes away.", s => s.Slot, (s, v) => s with { Slot = v })
        .Length("versine", NumberRange.From(0.02, 5), "How far a wall's line may rise over the flat between two relief slots.", s => s.Versine, (s, v) =>
            s with { Versine = v })
        .Length("fit", NumberRange.From(0, 2), "A halving slot is wider than the material by this.", s => s.Fit, (s, v) => s with { Fit = v });
}
